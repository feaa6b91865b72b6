"""Sums printed in textbooks and extension sheets: yields, factors, cost per weight.

Arizona: apple sheet of the state's school meals agency. OpenWA: "Bakery and Business Math",
OpenWA Pressbooks, ch. 25. Hawaii: U. Hawaii Extension, ET-2 (1999).
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan._core import round_to_multiple

CENT = Fraction(1, 100)


def with_share(food: str, share: str) -> scalepan.Catalog:
    """The bundled foods, with one edible share as the source prints it."""
    fact = {
        "fact": f"{food}.edible.printed",
        "food": food,
        "kind": "edible",
        "from_stage": "AP",
        "to_stage": "EP",
        "value": f"{share} EP/AP",
        "source": "printed",
    }
    return scalepan.catalog_with([fact])


def test_an_apple_of_163_in_forty_pounds() -> None:
    """Arizona: 40 lb / 163 = .2453 lb an apple; the print cuts .24540 off, nearest is .2454."""
    apple = scalepan.quantity("40 lb") / scalepan.quantity("163 piece")
    pounds = (apple * scalepan.quantity("1 piece")).to("lb").value
    assert round_to_multiple(pounds, Fraction(1, 10000), "down")[0] == Fraction("0.2453")
    assert round_to_multiple(pounds, Fraction(1, 10000), "half up")[0] == Fraction("0.2454")


def test_an_apple_is_credited_down_to_three_quarters_of_a_cup() -> None:
    """Arizona: at 3.66 cups a pound; the print has .89, which is .898 cut off, not rounded."""
    cups = Fraction(40, 163) * Fraction("3.66")
    assert round_to_multiple(cups, CENT, "down")[0] == Fraction("0.89")
    assert round_to_multiple(cups, CENT, "half up")[0] == Fraction("0.90")
    assert round_to_multiple(cups, Fraction(1, 4), "down")[0] == Fraction(3, 4)


def test_the_factor_with_portion_sizes() -> None:
    """Arizona, method: (new portions x new size) / (old portions x old size); 100 to 80 is 0.8."""
    size = scalepan.quantity("3.49 oz")
    assert (80 * size) / (100 * size) == scalepan.quantity("0.8")
    text = 'name = "x"\nserves = 100\nlines = ["349 oz apples"]\n'
    (line,) = scalepan.parse_recipe(text).scale(portions=80).lines
    assert line.amount == scalepan.quantity("279.2 oz AP")


# OpenWA, ch. 25; the third is rounded half up at two decimals in print.
@pytest.mark.parametrize(
    ("food", "share", "given", "unit", "printed"),
    [
        ("courgette", "0.95", "3 lb AP", "lb EP", "2.85"),
        ("strawberry", "0.87", "5000 g AP", "g EP", "4350"),
        ("pear", "0.78", "32 oz EP", "oz AP", "41.03"),
    ],
)
def test_yields_of_the_open_textbook(
    food: str, share: str, given: str, unit: str, printed: str
) -> None:
    found = scalepan.convert(given, unit, food=food, catalog=with_share(food, share))
    assert round_to_multiple(found.value, CENT, "half up")[0] == Fraction(printed)
    assert [fact.id for fact in found.facts] == [f"{food}.edible.printed"]


def test_ten_pounds_of_taro_make_two_pounds_of_flour_at_2_50() -> None:
    """Hawaii: 10 lb at $0.50, 20 % recovery."""
    flour = scalepan.quantity("10 lb AP") * scalepan.quantity("0.20 EP/AP")
    assert flour.to("lb EP").value == 2
    paid = scalepan.quantity("0.50 USD/(lb AP)") * scalepan.quantity("10 lb AP")
    per_pound = paid / flour
    assert per_pound.to("USD/(lb EP)").value == Fraction("2.50")
