"""Everything that can be wrong in a price book: class, code, place and the whole text."""

from __future__ import annotations

import pytest
import scalepan

HEAD = "item,sold_as,pack,price,currency,keeps,shop,date\n"
COLUMNS = (
    "columns: item, sold_as, pack, price, keeps; also currency, shop, date, note, "
    "offer, least, limit, tax, deposit, measures"
)
BARE = (
    "p.csv: no rows stand below the header (write a row below it, with a field for each of "
    "item,sold_as,pack,price,currency,keeps,shop,date)"
)
PACKS = "write a pack as 1 kg, 6, or 400 g tin (240 g drained)"
PRICE = scalepan.PriceError
NUMBER = scalepan.NumberError
MEASURE = scalepan.MeasureError


def refusal(text: str) -> tuple[type[scalepan.Error], str, str]:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_prices(text, file="p.csv")
    return type(caught.value), caught.value.code, str(caught.value)


@pytest.mark.parametrize(
    ("text", "code", "message"),
    [
        ("", "price.no_rows", f"p.csv: the file is empty ({COLUMNS})"),
        (HEAD, "price.no_rows", BARE),
        (HEAD + "\n , ,\n", "price.no_rows", BARE),
        (
            "item,pack\nleeks,1 kg\n",
            "price.column",
            f"p.csv:1: the header has no column sold_as ({COLUMNS})",
        ),
        (
            "item,item,sold_as,pack,price,keeps\n",
            "price.column",
            f"p.csv:1:6: the column item is there twice ({COLUMNS})",
        ),
        (
            "item,colour,sold_as,pack,price,keeps\n",
            "price.column",
            f'p.csv:1:6: unknown column "colour" ({COLUMNS})',
        ),
        (
            HEAD + "leeks,AP,400 g tin, drained,2.10,,no,,\n",
            "price.fields",
            "p.csv:2: the row has 9 fields, the header 8 (numbers have a decimal point, as 2.10; "
            'a field with a comma stands in quotes: "400 g tin, drained")',
        ),
        (
            HEAD + 'leeks,AP,1 kg,2,,no,,"open\n',
            "price.syntax",
            "p.csv:2: not CSV: unexpected end of data",
        ),
        (
            HEAD + 'leeks,AP,"1 kg"x,2,,no,,\n',
            "price.syntax",
            "p.csv:2: not CSV: ',' expected after '\"'",
        ),
        (
            HEAD + "leeks,AP,1 kg,2,,no,a,\nleeks,AP,1 kg,3,,no,a,\n",
            "price.duplicate",
            "p.csv:3:1: the pack 1 kg of leeks is priced twice, here and at p.csv:2:1 "
            "(give the rows different shops or dates, or take one out)",
        ),
    ],
)
def test_the_file_as_a_whole(text: str, code: str, message: str) -> None:
    assert refusal(text) == (PRICE, code, message)


# The columns at which fields begin are counted in the row.
@pytest.mark.parametrize(
    ("row", "kind", "code", "message"),
    [
        (",AP,1 kg,2,,no,,", PRICE, "price.missing", "1: the row has no item"),
        (
            "leeks,,1 kg,2,,no,,",
            PRICE,
            "price.missing",
            "7: the row has no sold_as (sold_as is one of AP, EP, cooked, drained, served)",
        ),
        ("leeks,AP,,2,,no,,", PRICE, "price.missing", f"10: the row has no pack ({PACKS})"),
        (
            "leeks,AP,1 kg,,,no,,",
            PRICE,
            "price.missing",
            "15: the row has no price (write what a pack costs, or 0 where nothing is paid)",
        ),
        (
            "leeks,AP,1 kg,2,,,,",
            PRICE,
            "price.missing",
            "18: the row has no keeps (keeps is yes, no, or a number of days)",
        ),
        (
            "leeks,raw,1 kg,2,,no,,",
            PRICE,
            "price.stage",
            '7: "raw" is no stage to sell at (sold_as is one of AP, EP, cooked, drained, served)',
        ),
        (
            "leeks,AP,0 kg,2,,no,,",
            PRICE,
            "price.pack",
            "10: a pack must hold more than nothing",
        ),
        (
            "leeks,AP,kg,2,,no,,",
            PRICE,
            "price.pack",
            f'10: no amount is written in "kg" ({PACKS})',
        ),
        ("leeks,AP,1 to 2 kg,2,,no,,", PRICE, "price.pack", "10: a pack cannot hold a range"),
        (
            "leeks,AP,400 g 3 tin,2,,no,,",
            PRICE,
            "price.pack",
            f'15: "3 tin" is no word for a container ({PACKS})',
        ),
        (
            "leeks,AP,400 g tin (240 g drained,2,,no,,",
            PRICE,
            "price.pack",
            "20: a bracket is not closed",
        ),
        (
            "leeks,AP,400 g tin (240 g drained) net,2,,no,,",
            PRICE,
            "price.pack",
            "35: text follows the bracket of a pack",
        ),
        (
            "leeks,AP,400 g tin (240 g wet),2,,no,,",
            PRICE,
            "price.stage",
            '26: "wet" is no stage (write (240 g drained))',
        ),
        (
            "leeks,EP,400 g tin (240 g drained),2,,no,,",
            PRICE,
            "price.stage",
            "20: the pack is sold as EP, but its bracket says drained "
            "(sold_as is AP, or the stage in the bracket)",
        ),
        (
            "leeks,AP,1 cup,2,,no,,",
            MEASURE,
            "unit.which_measures",
            "12: which cup is meant is not stated (measures = one of: us 236.6 mL, "
            "imperial 284.1 mL, metric 250.0 mL, au 250.0 mL)",
        ),
        (
            "leeks,AP,1/0 kg,2,,no,,",
            NUMBER,
            "number.zero_denominator",
            "12: the denominator of a fraction is zero",
        ),
        (
            "leeks,AP,1 kg,-2.10,,no,,",
            PRICE,
            "price.negative",
            "15: the price -2.10 is below zero",
        ),
        (
            "leeks,AP,1 kg,free,,no,,",
            PRICE,
            "price.unreadable",
            '15: "free" is no price '
            "(write a number such as 1.05, and the currency's code in its own column)",
        ),
        (
            "leeks,AP,1 kg,2 EUR,,no,,",
            PRICE,
            "price.unreadable",
            '15: "2 EUR" is no price '
            "(write a number such as 1.05, and the currency's code in its own column)",
        ),
        (
            'leeks,AP,1 kg,"2,10",,no,,',
            PRICE,
            "price.unreadable",
            '16: "2,10" is no price '
            "(write a number such as 1.05, and the currency's code in its own column)",
        ),
        (
            "leeks,AP,1 kg,2,euro,no,,",
            PRICE,
            "price.currency",
            '17: "euro" is no currency of ISO 4217 (write its three capital letters, such as EUR)',
        ),
        (
            "leeks,AP,1 kg,2,,maybe,,",
            PRICE,
            "price.keeps",
            '18: "maybe" does not say whether the rest keeps '
            "(keeps is yes, no, or a number of days)",
        ),
        (
            "leeks,AP,1 kg,2,,0 days,,",
            PRICE,
            "price.keeps",
            '18: "0 days" does not say whether the rest keeps '
            "(keeps is yes, no, or a number of days)",
        ),
        (
            "leeks,AP,1 kg,2,,no,,24.11.2026",
            PRICE,
            "price.date",
            '22: "24.11.2026" is no date (write it as 2026-11-24)',
        ),
        (
            "leeks,AP,1 kg,2,,no,,2026-13-01",
            PRICE,
            "price.date",
            '22: "2026-13-01" is no date (write it as 2026-11-24)',
        ),
        (
            "leeks,AP,1 kg,2,,no,,2026-02-30",
            PRICE,
            "price.date",
            '22: "2026-02-30" is no date (write it as 2026-11-24)',
        ),
    ],
)
def test_rows(row: str, kind: type[scalepan.Error], code: str, message: str) -> None:
    assert refusal(f"{HEAD}{row}\n") == (kind, code, f"p.csv:2:{message}")


def test_a_misspelt_unit_is_no_container() -> None:
    """`1 kq` must not be read as one piece in a container called kq."""
    kind, code, message = refusal(f"{HEAD}leeks,AP,1 kq,2,,no,,\n")
    assert (kind, code) == (MEASURE, "unit.unknown")
    assert message.startswith('p.csv:2:12: unknown unit "kq"')


@pytest.mark.parametrize("end", ["\n", "\r\n", ""])
def test_an_empty_last_field_has_its_place_too(end: str) -> None:
    text = f"item,sold_as,pack,price,keeps\nleeks,AP,1 kg,2,{end}"
    hint = "(keeps is yes, no, or a number of days)"
    assert refusal(text)[2] == f"p.csv:2:17: the row has no keeps {hint}"


def test_spaces_in_front_do_not_move_the_place() -> None:
    text = "item,sold_as,pack,price,keeps\nleeks,AP,1 kg,  2x,no\n"
    assert refusal(text)[2] == (
        'p.csv:2:17: "2x" is no price '
        "(write a number such as 1.05, and the currency's code in its own column)"
    )


def test_a_field_over_two_lines_moves_the_line_not_the_column() -> None:
    text = HEAD + '"leeks\nfrom town",AP,1 kg,2,,no,,\nonions,AP,1 kg,-2,,no,,\n'
    assert refusal(text)[2] == "p.csv:4:16: the price -2 is below zero"


def test_a_quoted_field_stands_behind_its_quote() -> None:
    text = HEAD + '"leeks, white","AP","1 kg","-2","","no","",""\n'
    assert refusal(text)[2] == "p.csv:2:29: the price -2 is below zero"


def test_lines_that_end_as_in_old_files() -> None:
    text = HEAD.replace("\n", "\r\n") + "\r\nleeks,AP,1 kg,-2,,no,,\r\n"
    assert refusal(text)[2] == "p.csv:3:15: the price -2 is below zero"


@pytest.mark.parametrize("odd", ["\u2028", "\x85"])
def test_odd_signs_that_end_no_line_move_nothing(odd: str) -> None:
    text = f"{HEAD}leeks{odd}of old,AP,1 kg,2,,no,,\nleeks,AP,1 kg,-2,,no,,\n"
    assert refusal(text)[2] == "p.csv:3:15: the price -2 is below zero"


def test_a_currency_given_for_all_rows_must_exist() -> None:
    with pytest.raises(PRICE) as caught:
        scalepan.parse_prices(f"{HEAD}leeks,AP,1 kg,2,,no,,\n", file="p.csv", currency="euro")
    assert str(caught.value) == (
        'p.csv:2: "euro" is no currency of ISO 4217 (write its three capital letters, such as EUR)'
    )


def test_measures_must_exist() -> None:
    with pytest.raises(MEASURE) as caught:
        scalepan.parse_prices(f"{HEAD}milk,AP,1 pint,2,,no,,\n", measures="uk")
    assert str(caught.value) == (
        'no measures are called "uk" (there are: metric, us, imperial, au)'
    )


# Covers without a price book.
@pytest.mark.parametrize(
    ("need", "packs", "code", "message"),
    [
        ("1 kg", [], "cover.no_packs", "there is no pack to choose from"),
        (
            "1 kg",
            [("0 g", "1")],
            "cover.pack_size",
            "the size of a pack must be above zero",
        ),
        ("1 kg", [("1 g", "-1")], "cover.price", "the price of a pack is below zero"),
        (
            "1 kg",
            [("1 L", "1")],
            "cover.dimension",
            "a pack cannot meet the need: 1 kg and 1 L: weight and volume",
        ),
        (
            "1 kg",
            [("1 kg", "1 kg")],
            "cover.money",
            "the price 1 kg is not in money (write an ISO 4217 code after it: 4.10 EUR)",
        ),
        (
            "1 kg",
            [("1 kg", "1 EUR"), ("1 kg", "1 GBP")],
            "cover.money",
            "prices meet in two currencies: 1 EUR and 1 GBP: money in EUR and money in GBP",
        ),
    ],
)
def test_covers(need: str, packs: list[tuple[str, str]], code: str, message: str) -> None:
    with pytest.raises(PRICE) as caught:
        scalepan.cover(need, packs)
    assert (caught.value.code, str(caught.value)) == (code, message)


COMMAS = "item;sold_as;pack;price;currency;keeps;offer\n"


def test_a_file_parted_by_semicolons_has_decimal_commas() -> None:
    text = COMMAS + 'leeks;AP;1,5 kg;2,10;EUR;no;3 for 5,40\n"cheese; hard";AP;250 g;4;EUR;yes;\n'
    leeks, cheese = scalepan.parse_prices(text, file="p.csv").offers
    assert leeks.content == scalepan.quantity("1.5 kg AP")
    assert leeks.price == scalepan.quantity("2.10 EUR")
    assert leeks.terms == ["3 for 5.40"]
    assert (cheese.item, cheese.price) == ("cheese; hard", scalepan.quantity("4 EUR"))
    stock = scalepan.parse_stock("item;stage;amount;value;currency\nleeks;AP;0,5 kg;1,05;EUR\n")
    assert stock.items[0].amount == scalepan.quantity("500 g AP")
    assert stock.items[0].value == scalepan.quantity("1.05 EUR")


@pytest.mark.parametrize(
    ("row", "column", "told"),
    [
        ("leeks;AP;1 kg;2.10;EUR;no;", 15,
         '"2.10" has a decimal point, but a file with semicolons has decimal commas '
         '(write "2,10", or separate the fields by commas)'),
        ("leeks;AP;1.5 kg;2,10;EUR;no;", 10,
         '"1.5 kg" has a decimal point, but a file with semicolons has decimal commas '
         '(write "1,5 kg", or separate the fields by commas)'),
        ("saffron;AP;1 kg;1.200,50;EUR;no;", 17,
         '"1.200,50" has a decimal point, but a file with semicolons has decimal commas '
         '(write "1200,50", or separate the fields by commas)'),
    ],
)  # fmt: skip
def test_a_point_in_such_a_file_may_part_thousands_and_is_refused(
    row: str, column: int, told: str
) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(COMMAS + row + "\n", file="p.csv")
    assert str(caught.value) == f"p.csv:2:{column}: {told}"
    assert caught.value.code == "price.decimal"


@pytest.mark.parametrize(
    ("text", "hint"),
    [
        ("| item | sold_as | pack |\n|---|---|---|\n",
         "the fields are separated by bars; save the file with commas"),
        ("item\tsold_as\tpack\n", "the fields are separated by tabs; save the file with commas"),
        ("prices.csv", "this is the name of a file: read_prices, read_stock and so on read files"),
        ('name = "Soup"\nserves = 4\n',
         "this is no table but a file of keys, such as a recipe: read_recipe reads those"),
    ],
)  # fmt: skip
def test_what_is_no_price_book_is_told(text: str, hint: str) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(text, file="p.csv")
    assert caught.value.hint == hint
