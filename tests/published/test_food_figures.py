"""Conversions of foods against figures printed elsewhere.

SR28: USDA National Nutrient Database for Standard Reference, release 28.
"""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
import scalepan


def grams(amount: str, food: str, unit: str = "g", state: str | None = None) -> Fraction:
    return scalepan.convert(amount, unit, food=food, measures="us", state=state).value


def test_four_cups_of_milk_weigh_the_printed_quart() -> None:
    """SR28 01077 prints cup 244 g and quart 976 g."""
    assert grams("1 cup", "milk") == 244
    assert grams("4 cup", "milk") == grams("1 quart", "milk") == 976


def test_a_large_egg_of_the_us_class_gives_the_edible_egg_of_sr28() -> None:
    """AMS shell egg classes: large is 24 oz a dozen, so 2 oz in shell; SR28 01123 has refuse 12 %
    and prints 50 g for the large egg without shell, in whole grams.
    """
    edible = grams("2 oz AP", "egg", "g EP")
    assert edible == 2 * Fraction(45359237, 1600000) * Fraction(88, 100)
    printed = scalepan.convert("1 piece AP", "g EP", food="egg", size="large").value
    assert printed == 50
    assert abs(edible - printed) <= Fraction(1, 2)


def test_a_kilogram_of_chopped_onion_is_ten_medium_onions() -> None:
    """SR28 11282: medium onion 110 g edible; 1000 / 110 = 9.09, so ten whole ones."""
    onions = scalepan.convert("1 kg EP", "piece AP", food="onion", size="medium").value
    assert onions == Fraction(1000, 110)
    assert ceil(onions) == 10


def test_a_kilogram_of_chopped_onion_is_bought_as_ten_onions() -> None:
    """As above; the price is invented."""
    recipe = scalepan.parse_recipe('name = "x"\nserves = 1\nlines = ["1 kg onions, chopped"]\n')
    prices = scalepan.parse_prices("item,sold_as,pack,price,keeps\nonions,AP,1,0.20,yes\n")
    (row,) = scalepan.cost(recipe, prices).shopping
    assert row.packs == [(10, "1")]
    assert row.price.value == 2


# SR28 edible weights over (100 - refuse) / 100: whole medium apple and banana, one decimal.
@pytest.mark.parametrize(("food", "whole"), [("apple", "202.2"), ("banana", "184.4")])
def test_whole_fruit_behind_its_edible_weight(food: str, whole: str) -> None:
    found = scalepan.convert("1 piece AP", "g AP", food=food, size="medium").value
    assert abs(found - Fraction(whole)) <= Fraction(1, 20)


def test_a_pound_of_onions_gives_408_grams() -> None:
    """SR28 11282, refuse 10 %: 453.59237 x 0.9 = 408.2."""
    assert abs(grams("1 lb AP", "onion", "g EP") - Fraction("408.2")) <= Fraction(1, 20)


def test_two_cups_of_sugar_weigh_400_grams() -> None:
    """SR28 19335: cup 200 g; GNU units 2.22 has the same figure."""
    assert grams("2 cup", "granulated sugar") == 400


# SR28 tablespoons against the cup of the same food: sibling measures of one liquid differ by a few
# percent in print, so 3 % is allowed.
@pytest.mark.parametrize(
    ("food", "tablespoon"),
    [
        ("olive oil", "13.5"),
        ("butter", "14.2"),
        ("honey", "21"),
        ("maple syrup", "20"),
        ("heavy cream", "15"),
    ],
)
def test_spoons_and_cups_of_one_liquid_agree(food: str, tablespoon: str) -> None:
    assert abs(grams("1 tbsp", food) / Fraction(tablespoon) - 1) <= Fraction(3, 100)


# SR28 refuse in percent, as printed in FOOD_DES.txt.
@pytest.mark.parametrize(
    ("food", "refuse"),
    [
        ("leek", 56),
        ("onion", 10),
        ("carrot", 11),
        ("celery", 11),
        ("garlic", 13),
        ("spring onion", 4),
        ("broccoli", 39),
        ("mushroom", 3),
        ("pineapple", 49),
        ("spinach", 28),
    ],
)
def test_edible_shares_are_what_refuse_leaves(food: str, refuse: int) -> None:
    whole = scalepan.convert("1 kg EP", "g AP", food=food).value
    assert whole == Fraction(100_000, 100 - refuse)
    edible = scalepan.convert("1 kg AP", "g EP", food=food).value
    assert edible == 1000 * Fraction(100 - refuse, 100)
