"""Servings into packs, as the buying guides and textbooks print it.

FBG: USDA Food Buying Guide for Child Nutrition Programs: appendix B, slides and handouts of state
agencies, and a helper sheet (Texas, 4/2007). LYN: F. T. Lynch, The Book of Yields, ch. 2. SR28:
documentation of USDA SR28, p. 25. GNU: an example in GNU units.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan._core import round_to_multiple

TENTH, HUNDREDTH = Fraction(1, 10), Fraction(1, 100)


def half_up(x: Fraction, step: Fraction) -> Fraction:
    value: Fraction = round_to_multiple(x, step, "half up")[0]
    return value


def cans_for(need: Fraction) -> int:
    """Whole cans; the price moves nothing where there is one pack."""
    cover = scalepan.cover(scalepan.quantity(need, "piece"), [("1 piece", "1.00")])
    ((count, _),) = cover.packs
    return int(count)


def test_watermelon() -> None:
    """FBG, appendix B: 2 lb diced at a yield of 0.61 are 3.28 lb; buy 3.5."""
    fact = {
        "fact": "watermelon.edible.printed",
        "food": "watermelon",
        "kind": "edible",
        "from_stage": "AP",
        "to_stage": "EP",
        "value": "0.61 EP/AP",
        "source": "Food Buying Guide, appendix B",
    }
    need = scalepan.convert(
        "2 lb EP", "lb AP", food="watermelon", catalog=scalepan.catalog_with([fact])
    ).value
    assert need == Fraction(200, 61)
    assert half_up(need, HUNDREDTH) == Fraction("3.28")
    assert round_to_multiple(need, Fraction(1, 2), "up")[0] == Fraction("3.5")


def test_corn_in_no_10_cans() -> None:
    """FBG slides: 3.0 cans per 100 quarter-cups x 460/100 x (1/2)/(1/4) = 27.6, so 28."""
    need = 3 * Fraction(460, 100) * Fraction(1, 2) / Fraction(1, 4)
    assert need == Fraction("27.6")
    assert cans_for(need) == 28


def test_fries() -> None:
    """FBG slides: 8.0 x 3.8 x 2; the result is cut off there, it is 60.8 lb."""
    text = 'name = "x"\nserves = 100\nlines = ["8 lb french fries"]\n'
    (line,) = scalepan.parse_recipe(text).scale(portions=100 * Fraction("3.8") * 2).lines
    assert line.amount == scalepan.quantity("60.8 lb AP")


def test_green_beans_in_no_10_cans() -> None:
    """FBG handout: 2.3 x 2 x 1.6 = 7.36, so 8."""
    need = Fraction("2.3") * 2 * Fraction("1.6")
    assert need == Fraction("7.36")
    assert cans_for(need) == 8


def test_frozen_corn() -> None:
    """FBG handout: 9.1 lb x (3/8)/(1/4) x 18/100; blank there, it is 2.457 lb."""
    text = 'name = "x"\nserves = 100\nlines = ["9.1 lb frozen corn"]\n'
    portions = 18 * Fraction(3, 8) / Fraction(1, 4)
    (line,) = scalepan.parse_recipe(text).scale(portions=portions).lines
    assert line.amount == scalepan.quantity("2.457 lb AP")


# FBG helper sheet: quarter-cup servings a No. 10 can as 1/3, 3/8 and 1/2 cup; one decimal, half up.
@pytest.mark.parametrize(
    ("quarters", "third", "three_eighths", "half"),
    [
        ("45.3", "34.0", "30.2", "22.7"),
        ("38.9", "29.2", "25.9", "19.5"),
        ("42.4", "31.8", "28.3", "21.2"),
        ("47.6", "35.7", "31.7", "23.8"),
    ],
)
def test_servings_of_another_size(quarters: str, third: str, three_eighths: str, half: str) -> None:
    can = Fraction(quarters) * scalepan.quantity("1/4 cup", measures="us")
    for size, printed in (("1/3", third), ("3/8", three_eighths), ("1/2", half)):
        servings = (can / scalepan.quantity(f"{size} cup", measures="us")).value
        assert half_up(servings, TENTH) == Fraction(printed)


def test_drained_weight_a_jar() -> None:
    """LYN: 108 oz at 43 oz a jar are 2.51 jars, taken as 2-1/2 - which is 0.5 oz short; whole jars
    are 3."""
    jars = Fraction(108, 43)
    assert half_up(jars, HUNDREDTH) == Fraction("2.51")
    assert half_up(jars, Fraction(1, 2)) == Fraction("2.5")
    assert 108 - Fraction("2.5") * 43 == Fraction("0.5")
    cover = scalepan.cover("108 oz", [("43 oz", "1.00")])
    assert [count for count, _ in cover.packs] == [3]
    assert cover.leftover.to("oz").value == 21


def test_beets_as_part_of_a_can() -> None:
    """LYN: 2 cups at 5.3 oz are 10.6 oz, 0.146 of 72.4 oz, 14.6 %."""
    beets = scalepan.quantity("5.3 oz/cup", measures="us") * scalepan.quantity(
        "2 cup", measures="us"
    )
    assert beets == scalepan.quantity("10.6 oz")
    share = (beets / scalepan.quantity("72.4 oz")).value
    assert half_up(share, Fraction(1, 1000)) == Fraction("0.146")
    assert half_up(share * 100, TENTH) == Fraction("14.6")


def test_two_cups_of_sugar() -> None:
    """GNU: 400 g, at its 200 g a US cup (SR28 has 200 g a cup too)."""
    found = scalepan.convert("2 cup", "g", food="granulated sugar", measures="us")
    assert half_up(found.value, Fraction(1)) == 400


@pytest.mark.parametrize(
    ("per_100_g", "grams", "nutrient"), [("143", "50", "71.5"), ("3.9", "89", "3.471")]
)
def test_what_a_portion_holds(per_100_g: str, grams: str, nutrient: str) -> None:
    """SR28: N = V x W / 100."""
    value = scalepan.quantity(f"{per_100_g} g") / scalepan.quantity("100 g")
    held = value * scalepan.quantity(f"{grams} g")
    assert held.to("g").value == Fraction(nutrient)
