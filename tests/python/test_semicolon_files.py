"""Files parted by semicolons are told of in their own decimal mark, word for word."""

import pytest
import scalepan

SEMICOLONS = "item;sold_as;pack;price;currency;keeps\n"
COMMAS = "item,sold_as,pack,price,currency,keeps\n"


def refused(text: str) -> str:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(text, file="p.csv")
    return str(caught.value)


@pytest.mark.parametrize(
    ("row", "told"),
    [
        ("leeks;AP;1 kg;€ 2,35;EUR;no",
         '2:15: "€ 2,35" is no price (write a number such as 1,05, and the currency\'s code in its '
         "own column)"),
        ("leeks;AP;1 kg;2,3 5;EUR;no",
         '2:15: "2,3 5" is no price (write a number such as 1,05, and the currency\'s code in its '
         "own column)"),
        ("leeks;AP;1 kg;2;Euro 1.5;no",
         '2:17: "Euro 1.5" is no currency of ISO 4217 (write its three capital letters, such as '
         "EUR)"),
        ("leeks;AP;1 kg;2,35;EUR;no;x",
         "2: the row has 7 fields, the header 6 (a field with a semicolon stands in quotes: "
         '"400 g tin; drained")'),
        ("leeks;AP;1 kg;2,35;EUR",
         "2: the row has 5 fields, the header 6 (a field with a semicolon stands in quotes: "
         '"400 g tin; drained")'),
    ],
)  # fmt: skip
def test_what_is_wrong_is_told_as_it_is_written(row: str, told: str) -> None:
    assert refused(f"{SEMICOLONS}{row}\n") == f"p.csv:{told}"


def test_stock_is_told_so_too() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_stock("item;stage;amount;value\nleeks;AP;1,5 kg;2,3 5\n", file="l.csv")
    assert str(caught.value) == (
        'l.csv:2:17: "2,3 5" is no price (write a number such as 1,05, and the currency\'s code in '
        "its own column)"
    )


@pytest.mark.parametrize(
    ("row", "hint"),
    [
        ("leeks,AP,1,5 kg,2.10,EUR,no", "numbers have a decimal point: write 1.5 kg, not 1,5 kg"),
        ("leeks,AP,1 kg,2,10,EUR,no", "numbers have a decimal point: write 2.10, not 2,10"),
        # 10 for 2,30, or 10,2 for 30: which is meant is not known.
        ("eggs,AP,10,2,30,EUR,no",
         'numbers have a decimal point, as 2.10; a field with a comma stands in quotes: "400 g '
         'tin, drained"'),
        ("leeks,AP,1 kg,2,EUR", 'a field with a comma stands in quotes: "400 g tin, drained"'),
    ],
)  # fmt: skip
def test_a_decimal_comma_in_a_file_parted_by_commas_is_told(row: str, hint: str) -> None:
    fields = row.count(",") + 1
    told = f"p.csv:2: the row has {fields} fields, the header 6 ({hint})"
    assert refused(f"{COMMAS}{row}\n") == told


def test_a_header_alone_says_what_belongs_below_it() -> None:
    below = "write a row below it, with a field for each of"
    for text in (COMMAS, SEMICOLONS):
        told = f"p.csv: no rows stand below the header ({below} {text.strip()})"
        assert refused(text) == told
