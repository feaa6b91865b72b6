"""Baker's percentages in recipe files, in and out."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st

PERCENTS = st.fractions(Fraction(1, 100), 100, max_denominator=100)


def dough(lines: list[str], flour: str = "10 kg", more: str = "") -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    text = f'name = "Bread"\nserves = 40\nflour = "{flour}"\n{more}lines = [{listed}]\n'
    return scalepan.parse_recipe(text, file="bread.toml")


def refusal(of: str) -> tuple[str, str]:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_recipe(of, file="bread.toml")
    return caught.value.code, str(caught.value)


@given(st.lists(PERCENTS, min_size=2, max_size=2), st.fractions(Fraction(1, 9), 99))
def test_there_and_back_is_exact(percents: list[Fraction], factor: Fraction) -> None:
    water, salt = percents
    bread = dough(["80 % bread flour", "20 % rye flour", f"{water} % water", f"{salt} % salt"])
    out = dict(bread.scale(factor=factor).bakers_percents(["bread_flour", "rye_flour"]))
    assert out == {"bread_flour": 80, "rye_flour": 20, "water": water, "salt": salt}


def test_a_dough_of_a_weight() -> None:
    """Flour is what is wanted over the sum of percents: 16 kg / 1.6 = 10 kg."""
    bread = dough(["100 % bread flour", "58 % water", "2 % salt"], "1 kg")
    sized = bread.scale(raw_batch="16 kg")
    assert [line.amount.to("g AP").value for line in sized.lines] == [10000, 5800, 200]


def test_a_decimal_comma() -> None:
    bread = dough(["100 % bread flour", "1,75 % salt"], more='decimal = "comma"\n')
    assert bread.lines[1].amount.to("g AP").value == 175


def test_percents_beside_bases() -> None:
    """A share of a base says `of`; a bare percent could be of either whole."""
    base = '[bases.starter]\nname = "Starter"\nserves = 1\nlines = ["1 kg rye flour"]\n'
    head = 'name = "Bread"\nserves = 40\nflour = "10 kg"\n'
    bread = scalepan.parse_recipe(
        head + 'lines = ["100 % bread flour", "20 % of the starter"]\n' + base
    )
    assert bread.lines[0].amount.to("kg AP").value == 10
    assert bread.lines[1].amount.to("g").value == 200
    assert refusal(head + 'lines = ["100 % bread flour", "20 % starter"]\n' + base) == (
        "base.percent",
        'bread.toml:4:32: 20 % could be of the flour or of the starter (write "20 % of the '
        'starter", or its weight: 2 kg starter)',
    )


def test_errors() -> None:
    text = 'name = "Bread"\nserves = 40\nflour = "{}"\nlines = ["58 % water"]\n'
    assert refusal(text.format("3 L")) == (
        "recipe.flour",
        'bread.toml:3:10: "3 L" is no weight of flour (write the weight of all flours together: '
        'flour = "10 kg")',
    )
    bread = dough(["100 % bread flour", "58 % water", "2 stars"])
    for flours, message in (
        ([], 'it is not said which lines are flour (name them: flours=["bread_flour"])'),
        (["rye"], "no line of the recipe is rye"),
        (
            ["bread_flour"],
            "bread.toml:4:46: no fact gives the weight of stars (write it by weight, or add a fact "
            "of your own)",
        ),
    ):
        with pytest.raises(scalepan.RecipeError) as caught:
            bread.bakers_percents(flours)
        assert str(caught.value) == message
