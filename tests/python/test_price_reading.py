"""What a price book says, read; and the view of a date and of shops. Prices are invented."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from scalepan import quantity

HEAD = "item,sold_as,pack,price,currency,keeps,shop,date\n"


def only(row: str, **given: str) -> scalepan.Offer:
    (offer,) = scalepan.parse_prices(f"{HEAD}{row}\n", **given).offers
    return offer


def test_a_row_is_read_whole() -> None:
    offer = only("leeks,AP,1 kg,2.10,EUR,no,market,2026-11-20")
    assert (offer.item, offer.sold_as, offer.pack) == ("leeks", "AP", "1 kg")
    assert (offer.content, offer.price) == (quantity("1 kg AP"), quantity("2.10 EUR"))
    assert (offer.keeps, offer.keeps_days) == (False, None)
    assert (offer.shop, offer.date) == ("market", "2026-11-20")


@pytest.mark.parametrize(
    ("pack", "content"),
    [
        ("1.5 kg", "1.5 kg AP"),
        ("6", "6 piece AP"),
        ("1 dozen", "12 piece AP"),
        ("2 x 400 g", "800 g AP"),
        ("1 1/2 kg bag", "1.5 kg AP"),
        ("1 L carton", "1 L AP"),
    ],
)
def test_packs(pack: str, content: str) -> None:
    assert only(f"x,AP,{pack},1,,yes,,").content == quantity(content)


@pytest.mark.parametrize(
    ("keeps", "kept", "days"),
    [("yes", True, None), ("no", False, None), ("3", True, 3), ("3 days", True, 3)],
)
def test_keeping(keeps: str, kept: bool, days: int | None) -> None:
    offer = only(f"x,AP,1 kg,1,,{keeps},,")
    assert (offer.keeps, offer.keeps_days) == (kept, days)


def test_a_price_without_a_currency_is_held_in_none() -> None:
    assert only("x,AP,1 kg,1,,yes,,").price == quantity("1 XXX")


def test_a_currency_is_given_to_rows_that_name_none() -> None:
    text = f"{HEAD}x,AP,1 kg,1,,yes,,\ny,AP,1 kg,1,GBP,yes,,\n"
    offers = scalepan.parse_prices(text, currency="EUR").offers
    assert [offer.price for offer in offers] == [quantity("1 EUR"), quantity("1 GBP")]


def test_measures_say_which_pint() -> None:
    offer = only("milk,AP,1 pint,0.65,GBP,3 days,,", measures="imperial")
    assert offer.content.to("mL").value == Fraction("568.26125")


def test_quotes_commas_and_lines_within_a_field() -> None:
    offer = only('"beans, ""big""\nand white",AP,"1 kg",1,,yes,"shop, corner",')
    assert offer.item == 'beans, "big"\nand white'
    assert offer.shop == "shop, corner"


def test_columns_stand_in_any_order_and_in_any_case() -> None:
    text = "Keeps, PRICE ,pack,Item,sold_as,note\nno,2.10,1 kg,leeks,AP,from town\n"
    (offer,) = scalepan.parse_prices(text).offers
    assert (offer.item, offer.price.value, offer.keeps) == ("leeks", Fraction("2.10"), False)


def test_empty_lines_and_spaces_do_not_count() -> None:
    text = "\n\nitem,sold_as,pack,price,keeps\n\n leeks , AP , 1 kg , 2.10 , no \n\n"
    (offer,) = scalepan.parse_prices(text).offers
    assert (offer.item, offer.pack, offer.price.value) == ("leeks", "1 kg", Fraction("2.10"))


def test_a_file_with_a_byte_order_mark_and_old_line_ends(tmp_path: Path) -> None:
    path = tmp_path / "prices.csv"
    path.write_bytes(b"\xef\xbb\xbfitem,sold_as,pack,price,keeps\r\nleeks,AP,1 kg,2.10,no\r\n")
    assert len(scalepan.read_prices(path)) == 1


BOOK = (
    HEAD
    + "leeks,AP,1 kg,2.00,EUR,no,market,2026-01-01\n"
    + "leeks,AP,1 kg,2.50,EUR,no,market,2026-02-01\n"
    + "leeks,AP,1 kg,1.80,EUR,no,farm,2026-01-10\n"
    + "leeks,AP,500 g,1.20,EUR,no,market,2026-01-01\n"
)


@pytest.mark.parametrize(
    ("date", "shops", "prices"),
    [
        ("", [], ["2.50", "1.80", "1.20"]),
        ("2026-02-01", [], ["2.50", "1.80", "1.20"]),
        ("2026-01-31", [], ["2.00", "1.80", "1.20"]),
        ("2026-01-05", [], ["2.00", "1.20"]),
        ("2025-12-31", [], []),
        ("", ["farm"], ["1.80"]),
        ("2026-01-31", ["market"], ["2.00", "1.20"]),
    ],
)
def test_the_newest_row_of_a_pack_counts(date: str, shops: list[str], prices: list[str]) -> None:
    view = scalepan.parse_prices(BOOK).on(date, shops)
    assert [offer.price.value for offer in view.offers] == [Fraction(price) for price in prices]


def test_an_unknown_shop_is_told() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(BOOK).on(shops=["markt"])
    assert (caught.value.code, str(caught.value)) == (
        "price.shop",
        'no row is of the shop "markt" (nearest: market)',
    )


def test_a_day_that_is_none_is_told() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(BOOK).on("24.11.2026")
    assert caught.value.code == "price.date"
