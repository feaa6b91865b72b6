"""One shop only, or free choice among several."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan

PRICES = """item,sold_as,pack,price,currency,keeps,shop,limit
fennel,AP,1 kg,3.20,EUR,no,market hall,
fennel,AP,1 kg,2.90,EUR,no,farm gate,
onions,AP,1 kg,1.30,EUR,yes,market hall,
onions,AP,1 kg,1.60,EUR,yes,farm gate,
salt,AP,500 g,0.45,EUR,yes,market hall,
fennel,AP,500 g,1.00,EUR,no,stall,2
"""


def dish(*lines: str) -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(f'name = "Night pan"\nserves = 4\nlines = [{listed}]\n')


def rows(*lines: str) -> list[tuple[str | None, Fraction | None, list[str]]]:
    found = scalepan.by_shop(dish(*lines), scalepan.parse_prices(PRICES))
    return [
        (
            row.shop,
            row.costing and row.costing.till.value,
            row.costing.unpriced if row.costing else [],
        )
        for row in found
    ]


def test_free_choice_first_then_shops_by_what_they_lack_and_by_their_till() -> None:
    assert rows("900 g AP fennel", "800 g AP onions", "10 g salt") == [
        (None, Fraction("2.00") + Fraction("1.30") + Fraction("0.45"), []),
        ("market hall", Fraction("4.95"), []),
        ("farm gate", Fraction("4.50"), ["salt"]),
        ("stall", Fraction("2.00"), ["onions", "salt"]),
    ]


def test_a_shop_that_sells_too_little_is_named_with_its_reason() -> None:
    found = scalepan.by_shop(dish("1.4 kg AP fennel"), scalepan.parse_prices(PRICES))
    assert [row.shop for row in found] == [None, "farm gate", "market hall", "stall"]
    assert found[-1].costing is None
    assert found[-1].problem == "of fennel at most 1 kg can be bought, but 1.4 kg is needed"


def test_shops_and_days_narrow_the_price_book() -> None:
    text = PRICES.replace("shop,limit", "shop,date").replace(",stall,2", ",stall,2026-11-20")
    prices = scalepan.parse_prices(text)
    assert {offer.shop for offer in prices.on("2026-11-19").offers} == {"market hall", "farm gate"}
    assert {offer.shop for offer in prices.on("2026-11-20", ["stall"]).offers} == {"stall"}


def test_the_newer_row_counts_where_two_spell_the_item_differently() -> None:
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps,shop,date\n"
        "onion,AP,1 kg,0.90,EUR,yes,market hall,2026-10-01\n"
        "onions,AP,1 kg,1.30,EUR,yes,market hall,2026-11-20\n"
    )
    found = scalepan.cost(dish("900 g AP onions"), prices)
    assert found.till.value == Fraction("1.30")
    assert found.to_check == [
        "onions: the pack 1 kg of onion is left out: the row of onions is newer"
    ]


def test_an_option_that_is_none() -> None:
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cost(dish("1 kg AP fennel"), scalepan.parse_prices(PRICES), taxes="half")
    assert str(caught.value) == 'prices are not counted "half" taxes (there are: with, without)'
