"""What is bought and shared out, as textbooks and extension services print it.

UF: Hillan and Penuela, FCS8718, "Compare the Cost per Serving", whose servings a pound are those of
Burson, UNL G89-947. CCW: a worksheet of child-care menus, studylib 11084619. NFSMI: Food Purchasing
for Child Care Centers, section 4. GIS: W. Gisslen, Professional Cooking.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from dishes import HEAD
from scalepan._core import round_to_multiple


def half_up(x: Fraction, step: str) -> Fraction:
    value: Fraction = round_to_multiple(x, Fraction(step), "half up")[0]
    return value


def dish(name: str, line: str) -> scalepan.Recipe:
    text = f'name = "{name}"\nserves = 1\nmeasures = "us"\nlines = ["{line}"]\n'
    return scalepan.parse_recipe(text)


def serving_of(food: str, servings: str, per_pound: str) -> scalepan.Costing:
    """One serving, where so many come from a pound: used, not the pack."""
    each = 1 / Fraction(servings)
    recipe = dish("Plate", f"{each.numerator}/{each.denominator} lb {food}")
    prices = scalepan.parse_prices(HEAD + f"{food},AP,1 lb,{per_pound},USD,yes\n")
    return scalepan.cost(recipe, prices)


def test_breast_is_cheaper_to_serve_than_wings() -> None:
    """UF, left blank there: wings 1.99 a pound of 1-1/2 servings, breast with bone 2.99 of 2-1/2.

    So they are 1.3267 and 1.196 a serving.
    """
    wings = serving_of("chicken wings", "3/2", "1.99")
    breast = serving_of("chicken breast", "5/2", "2.99")
    assert wings.used.value == Fraction("1.99") * 2 / 3
    assert half_up(wings.used.value, "0.0001") == Fraction("1.3267")
    assert breast.used.value == Fraction("1.196")
    assert breast.used < wings.used


def test_the_price_at_which_wings_and_breast_come_out_even() -> None:
    """The same figures: five servings are 2 lb of breast for 5.98, or 3-1/3 lb of wings."""
    even = scalepan.break_even("5 portions", "3/2 portions", [("5/2 portions", "2.99 USD")])
    assert even.by_size is not None
    assert even.by_size.value == Fraction("1.196") * Fraction(3, 2)
    assert even.by_size < scalepan.quantity("1.99 USD")
    # In whole pounds four are needed, or two beside one of breast.
    assert even.price is not None
    assert even.price.value == Fraction("5.98") / 4


@pytest.mark.parametrize(("pounds", "melons"), [("15", 6), ("15.1", 7), ("16.2", 7), ("17.1", 8)])
def test_melons_are_rounded_up_twice(pounds: str, melons: int) -> None:
    """CCW: pounds are rounded up, then x 16 oz / 40 oz a melon is rounded up again, to 7 there,
    which 16 and 17 whole pounds give and no others do."""
    whole, _ = round_to_multiple(Fraction(pounds), Fraction(1), "up")
    ((count, _),) = scalepan.cover(scalepan.quantity(whole * 16, "oz"), [("40 oz", "3.00")]).packs
    assert count == melons


def test_needs_of_two_days_are_added_before_pints_are_rounded() -> None:
    """NFSMI: 7.90 pints of strawberries by division, then the pint of another day's dish: 8.90, so
    9; each rounded up by itself is 8 and 1 as well, but 7.30 and 1.40 would be 10 in place of 9."""
    prices = scalepan.parse_prices(HEAD + "strawberries,AP,1 pint,2.50,USD,no\n", measures="us")
    for first, second, pints, apart in (("7.90", "1", 9, 9), ("7.30", "1.40", 9, 10)):
        dishes = [
            dish("Shortcake", f"{first} pints strawberries"),
            dish("Breakfast", f"{second} pints strawberries"),
        ]
        bought = scalepan.basket(dishes, prices)
        ((count, _),) = bought.shopping[0].packs
        assert count == pints
        assert bought.apart_till.value == apart * Fraction("2.50")
        assert bought.saving.value == (apart - pints) * Fraction("2.50")


@pytest.mark.parametrize(
    ("allowance", "total"), [("0.05", "2.10"), ("0.08", "2.16"), ("0.12", "2.24")]
)
def test_an_allowance_for_seasonings(allowance: str, total: str) -> None:
    """GIS: a dish of 2.00 with 5 % for seasonings is 2.10; for hidden costs 8 to 12 % are usual."""
    cost = scalepan.quantity("2.00 USD")
    assert cost * (1 + Fraction(allowance)) == scalepan.quantity(f"{total} USD")
