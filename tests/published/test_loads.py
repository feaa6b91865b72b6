"""Loads against print.

Sources: Market Forge 40P-STGL operating instructions, Table 4.1 (batches an hour and portions a
batch in a 30-gallon braising pan); T. Jones, Culinary Calculations, ch. 6; an oven maker's manual
(portions in a steam-table pan); Cleveland steamer manuals 21CET16, p. 22, and 21CET3A, p. 37.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan import loads, pan, quantity

# Market Forge, Table 4.1: batches an hour, pounds a batch, portions of 3 oz a batch.
BRAISING = {
    "canned vegetables": (6, 30, 125),
    "fresh carrots": (2, 35, 150),
    "potatoes": (2, 40, 200),
    "broccoli": (3, 25, 125),
}


def test_five_hundred_portions_of_carrots() -> None:
    an_hour, pounds, portions = BRAISING["fresh carrots"]
    split = loads("500 portions", f"{portions} portions")
    assert split.count == 4
    assert split.text == "3 loads of 150 portions and one of 50 portions"
    assert split.in_turn(quantity(Fraction(60, an_hour), "min")) == quantity("2 h")
    # The same by weight: 500 portions are 10/3 of 150, so 116 2/3 lb at 35 lb a load.
    weight = quantity(Fraction(pounds * 500, portions), "lb")
    assert loads(weight, f"{pounds} lb").count == 4


@pytest.mark.parametrize("vegetable", BRAISING)
def test_an_hour_of_batches_makes_the_portions_printed(vegetable: str) -> None:
    an_hour, _, portions = BRAISING[vegetable]
    split = loads(an_hour * portions, portions)
    assert (split.count, split.full) == (an_hour, an_hour)
    assert split.in_turn(quantity(Fraction(60, an_hour), "min")) == quantity("1 h")


def test_four_pans_cut_four_by_six_are_96_portions() -> None:
    """Jones, lasagne."""
    split = loads("96 portions", quantity(4 * 6, "portion"))
    assert (split.count, split.full) == (4, 4)
    assert split.short == quantity("0 portions")


def test_two_gallons_in_portions_of_eight_fluid_ounces() -> None:
    """Jones, soup: 32."""
    split = loads("2 gal", "8 fl oz", measures="us")
    assert (split.count, split.full, split.text) == (32, 32, "32 loads of 8 fl oz")


# The manual: 240 fl oz are so many portions of so many ounces.
@pytest.mark.parametrize(
    ("portions", "ounces"), [(24, 10), (30, 8), (40, 6), (60, 4), (120, 2), (240, 1)]
)
def test_portions_in_a_full_steam_table_pan(portions: int, ounces: int) -> None:
    volume = pan("steam-table full 2-1/2 inch").volume
    assert volume is not None
    split = loads(volume, quantity(ounces, "fl_oz_us"))
    assert (split.count, split.full) == (portions, portions)


# Cleveland: frozen vegetables in one 12 x 20 x 2-1/2 in perforated pan, servings of 3 oz.
@pytest.mark.parametrize(
    ("pounds", "printed", "full", "left"),
    [("10", {50}, 53, "1 oz"), ("7.5", {30, 35}, 40, "0 oz"), ("5", {25}, 26, "2 oz")],
)
def test_two_printings_of_one_table_differ_and_both_lie_below_arithmetic(
    pounds: str, printed: set[int], full: int, left: str
) -> None:
    split = loads(f"{pounds} lb", "3 oz")
    assert split.full == full
    assert split.short == quantity(left)
    assert all(servings < full for servings in printed)


def test_the_two_printings_are_told_apart() -> None:
    """30 servings of 7.5 lb would be 4 oz each, 35 would be 3 3/7 oz; neither is the 3 oz said."""
    assert loads("7.5 lb", "4 oz").count == 30
    assert loads("7.5 lb", quantity(Fraction(24, 7), "oz")).count == 35
    assert scalepan.loads("7.5 lb", "3 oz").count == 40
