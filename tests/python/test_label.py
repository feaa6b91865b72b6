"""Label text against an independent sort with fractions, and the allergens through bases."""

from __future__ import annotations

from fractions import Fraction

import scalepan
from hypothesis import given
from hypothesis import strategies as st

# Foods bought and used whole, so that a weight as purchased is the weight that goes in.
FOODS = ("butter", "granulated sugar", "pearl barley", "olive oil", "plain flour", "whole milk")


def recipe(lines: list[str], more: str = "") -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(
        f'name = "x"\nserves = 4\nmeasures = "metric"\nlines = [{listed}]\n{more}'
    )


def mixed(amount: Fraction) -> str:
    whole, rest = divmod(amount, 1)
    return f"{whole} {rest}" if rest else str(whole)


def names(items: list[scalepan.LabelItem]) -> list[str]:
    return [item.name for item in items]


AMOUNTS = st.lists(st.fractions(1, 40, max_denominator=8), min_size=1, max_size=len(FOODS))


@given(AMOUNTS, st.integers(1, 90))
def test_the_order_is_that_of_an_independent_sort(amounts: list[Fraction], portions: int) -> None:
    lines = [f"{mixed(amount)} kg {food}" for amount, food in zip(amounts, FOODS, strict=False)]
    label = scalepan.label(recipe(lines).scale(portions=portions))
    weights = dict(zip(FOODS, amounts, strict=False))
    expected = sorted(weights, key=weights.__getitem__, reverse=True)  # stable: ties keep order
    assert names(label.items) == expected
    grams = {food: amount * 1000 * portions / 4 for food, amount in weights.items()}
    assert {item.name: item.grams for item in label.items} == grams


def test_the_whole_text() -> None:
    label = scalepan.label(
        recipe(["150 g plain flour", "2 tbsp sea tangle", "200 g butter", "30 g margarine"])
    )
    assert str(label) == label.text
    assert label.text == (
        "Ingredients by falling weight as they go in: butter (MILK), plain flour (GLUTEN, WHEAT), "
        "margarine (check the pack), sea tangle (check the pack).\n"
        "Weight not known, so perhaps too far down: sea tangle.\n"
        "Allergens, EU list: gluten, milk; US list: milk, wheat.\n"
        "Check the pack of: margarine, sea tangle.\n"
        "A draft: whoever answers for the label follows local food law. Order after Regulation "
        "(EU) 1169/2011 Art. 18, capitals after Art. 21."
    )
    assert label.unknown == ["margarine", "sea tangle"]


def test_the_order_follows_the_size_where_lines_scale_unlike() -> None:
    dish = recipe(["100 g butter | fixed", "60 g granulated sugar"])
    assert names(scalepan.label(dish).items) == ["butter", "granulated sugar"]
    # At 8 portions 100 g of butter and 120 g of sugar.
    assert names(scalepan.label(dish.scale(portions=8)).items) == ["granulated sugar", "butter"]


def test_a_base_in_a_base_is_told_inside_it_with_its_allergens() -> None:
    dish = recipe(
        ["1/2 of the filling", "100 g granulated sugar"],
        '[bases.filling]\nname = "Filling"\nserves = 2\nlines = ["300 g pearl barley", '
        '"all of the cream"]\n[bases.filling.bases.cream]\nname = "Cream"\nserves = 2\n'
        'lines = ["20 g butter", "80 g plain flour"]\n',
    )
    label = scalepan.label(dish)
    # Half of 300 g barley and 100 g cream: 200 g.
    filling = label.items[0]
    assert (filling.name, filling.grams) == ("filling", 200)
    assert names(filling.parts) == ["pearl barley", "cream"]
    assert names(filling.parts[1].parts) == ["plain flour", "butter"]
    assert label.text.startswith(
        "Ingredients by falling weight as they go in: filling [pearl barley (GLUTEN), cream "
        "[plain flour (GLUTEN, WHEAT), butter (MILK)]], granulated sugar.\n"
    )
    assert (label.allergens_eu, label.allergens_us) == (["gluten", "milk"], ["milk", "wheat"])


def test_optional_lines_are_marked() -> None:
    label = scalepan.label(recipe(["100 g butter", "20 g granulated sugar (optional)"]))
    assert "butter (MILK), granulated sugar (optional)." in label.text
