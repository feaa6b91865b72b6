"""Words that measure by convention, and the parts of a food that SR28 weighs."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan

HEAD = "item,sold_as,pack,price,currency,keeps\n"
FLUID_OUNCE = Fraction(473176473, 16000000)  # US, of 231 cubic inches a gallon


def costing(line: str, row: str) -> scalepan.Costing:
    """Prices invented."""
    recipe = scalepan.parse_recipe(f"name = 'x'\nserves = 4\nmeasures = 'us'\nlines = ['{line}']")
    return scalepan.cost(recipe, scalepan.parse_prices(f"{HEAD}{row}\n"))


def test_a_pinch_is_what_cldr_says_and_marked_a_convention() -> None:
    """Unicode CLDR 41 units.xml: pinch = fl oz / 128; SR28 02050 vanilla: cup 208 g."""
    spoon = scalepan.convert("1 piece", "mL AP", food="vanilla extract", size="pinch")
    assert spoon.value == FLUID_OUNCE / 128
    found = costing("2 pinches ground cinnamon", "ground cinnamon,AP,100 g,1.00,EUR,yes")
    (note,) = [text for text in found.to_check if "pinch" in text]
    assert "is a convention only [Unicode CLDR 41" in note
    assert found.unpriced == []


def test_a_word_that_the_food_weighs_itself_goes_before_the_convention() -> None:
    """SR28 02047: a dash of salt is 0.4 g."""
    assert scalepan.convert("1 piece", "g EP", food="salt", size="dash").value == Fraction(2, 5)


@pytest.mark.parametrize(("word", "pints"), [("teacup", (1, 3)), ("breakfastcup", (1, 2))])
def test_old_cups_are_parts_of_a_british_pint(word: str, pints: tuple[int, int]) -> None:
    """GNU units 2.22, brteacup; half a pint for the breakfast cup is common practice."""
    found = scalepan.convert("1 piece", "mL AP", food="milk", size=word)
    assert found.value == Fraction(*pints) * Fraction(56826125, 100000)


def test_a_word_without_a_convention_converts_to_nothing() -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.convert("1 piece", "g EP", food="salt", size="handful")
    assert caught.value.code == "convert.no_fact"


@pytest.mark.parametrize(
    ("line", "grams", "told"),
    [
        ("juice of 2 lemons", 96, "juice of 2 lemons, 96 g"),
        ("Juice 1 lime", 44, "Juice of 1 lime, 44 g"),
        ("the juice of 1 orange", 86, "juice of 1 orange, 86 g"),
    ],
)
def test_the_juice_of_a_fruit_is_what_sr28_weighs(line: str, grams: int, told: str) -> None:
    """SR28 09152 lemon yields 48 g, 09160 lime 44 g, 09206 fruit yields 86 g."""
    recipe = scalepan.parse_recipe(f"name = 'x'\nserves = 4\nlines = ['{line}']")
    (juice,) = recipe.lines
    assert juice.part_amount is not None
    assert (juice.part_amount.value, juice.part_amount.unit) == (grams, "g EP")
    assert juice.told == told
    assert recipe.scale(portions=40).lines[0].part_amount == juice.part_amount * 10
