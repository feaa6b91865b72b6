"""What a recipe file says, read and scaled; every figure by hand."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import scalepan
from scalepan import quantity


def one(line: str, measures: str = "metric") -> scalepan.Line:
    text = f'name = "x"\nserves = 4\nmeasures = "{measures}"\nlines = ["{line}"]\n'
    (only,) = scalepan.parse_recipe(text).lines
    return only


def test_the_leek_pot_as_written(leek_pot: scalepan.Recipe) -> None:
    assert leek_pot.name == "Leek and barley pot"
    assert [leek_pot.serves, leek_pot.portions] == [4, 4]
    assert leek_pot.tested_at == [4]
    assert leek_pot.tested == "tested at 4"
    assert [line.id for line in leek_pot.lines] == ["leeks", "pearl_barley", "eggs", "chickpeas"]
    assert [line.food for line in leek_pot.lines] == ["leeks", "pearl barley", "eggs", "chickpeas"]
    assert [line.stage for line in leek_pot.lines] == ["EP", "AP", "AP", "drained"]
    assert [line.amount for line in leek_pot.lines] == [
        quantity("500 g EP"),
        quantity("220 g AP"),
        quantity("4 piece AP"),
        quantity("240 g drained"),
    ]


def test_the_leek_pot_for_forty(leek_pot: scalepan.Recipe) -> None:
    forty = leek_pot.scale(portions=40)
    assert forty.tested == "tested at 4; 40 is computed"
    assert [forty.portions, forty.serves] == [40, 4]
    assert [line.told for line in forty.lines] == [
        "5 kg leeks, trimmed",
        "2.2 kg pearl barley",
        "40 eggs",
        "2.4 kg chickpeas, drained",
    ]
    assert leek_pot.portions == 4


def test_a_scaled_recipe_scales_from_what_was_written(leek_pot: scalepan.Recipe) -> None:
    there_and_back = leek_pot.scale(portions=7).scale(portions=4)
    assert [line.amount for line in there_and_back.lines] == [
        line.amount for line in leek_pot.lines
    ]


@pytest.mark.parametrize("size", [12, "12", Fraction(12), 12.0])
def test_sizes_may_be_any_exact_number(leek_pot: scalepan.Recipe, size: Any) -> None:
    assert leek_pot.scale(portions=size).lines[0].amount == quantity("1.5 kg EP")


def test_a_factor_is_of_the_written_size(leek_pot: scalepan.Recipe) -> None:
    assert leek_pot.scale(factor="2.5").portions == 10


def test_the_rules() -> None:
    text = """
name = "Rules"
serves = 4
lines = [
  "500 g leeks",
  "10 g salt | fixed",
  "3 onions | whole",
  "1 bay leaf | one per 4 portions",
  { line = "2 eggs", rule = "two per 4 portions" },
]
"""
    five = scalepan.parse_recipe(text).scale(portions=5)
    assert [line.amount for line in five.lines] == [
        quantity("625 g AP"),
        quantity("10 g AP"),
        quantity("4 piece AP"),
        quantity("2 piece AP"),
        quantity("4 piece AP"),
    ]
    assert [line.exact for line in five.lines] == [
        quantity("625 g AP"),
        quantity("10 g AP"),
        quantity("15/4 piece AP"),
        quantity("5/4 piece AP"),
        quantity("5/2 piece AP"),
    ]
    assert [line.rule for line in five.lines] == [
        "in proportion",
        "fixed",
        "whole",
        "1 per 4 portions",
        "2 per 4 portions",
    ]


@pytest.mark.parametrize(
    ("line", "stage"),
    [
        ("500 g leeks", "AP"),
        ("500 g leeks, trimmed", "EP"),
        ("500 g trimmed leeks", "EP"),
        ("3 leeks, trimmed", "AP"),
        ("240 g chickpeas, drained", "drained"),
        ("300 g pasta, cooked and drained", "cooked"),
        ("1 cup onions, chopped", "EP"),
    ],
)
def test_stages_follow_the_preparation(line: str, stage: str) -> None:
    assert one(line).stage == stage


def test_a_stated_stage_wins() -> None:
    text = 'name = "x"\nserves = 4\nlines = [{ line = "5 g leeks, trimmed", stage = "AP" }]\n'
    assert scalepan.parse_recipe(text).lines[0].stage == "AP"


def test_a_range_keeps_both_ends_and_counts_high() -> None:
    line = one("2 to 3 onions")
    assert (line.low, line.amount) == (quantity("2 piece AP"), quantity("3 piece AP"))
    assert line.told == "2 to 3 onions"


def test_extras_of_a_table() -> None:
    text = """
name = "x"
serves = 4
[[lines]]
id = "top"
line = "30 g butter, melted"
note = "for the top"
optional = true
"""
    (line,) = scalepan.parse_recipe(text).lines
    assert (line.id, line.note, line.optional) == ("top", "for the top", True)
    assert line.told == "30 g butter, melted (for the top) (optional)"


def test_optional_in_brackets() -> None:
    line = one("1 bay leaf (optional)")
    assert (line.optional, line.food, line.note) == (True, "bay leaf", "")


def test_a_food_the_catalogue_does_not_have_is_kept_as_written() -> None:
    line = one("200 g samphire")
    assert (line.food, line.food_id) == ("samphire", None)


@pytest.mark.parametrize("tins", ["2 tins of tomatoes", "2 tins tomatoes"])
def test_counted_tins_stay_tins(tins: str) -> None:
    assert "tins" in one(tins).told


def test_tins_of_a_weight_are_told_whole() -> None:
    assert one("2 x 400 g tins chickpeas").told == "800 g chickpeas (2 x 400 g tins)"


@pytest.mark.parametrize(
    ("tested_at", "told"),
    [
        ("", "no tested size is stated; 8 is computed"),
        ("tested_at = 8\n", "tested at 8"),
        ("tested_at = [4, 12]\n", "tested at 4, 12; 8 is computed"),
        ("tested_at = [4, 8]\n", "tested at 4, 8"),
    ],
)
def test_tested_sizes(tested_at: str, told: str) -> None:
    text = f'name = "x"\nserves = 4\n{tested_at}lines = ["1 leek"]\n'
    assert scalepan.parse_recipe(text).scale(portions=8).tested == told


def test_a_decimal_of_portions_is_exact() -> None:
    recipe = scalepan.parse_recipe('name = "x"\nserves = 2.1\nlines = ["21 g leeks"]\n')
    assert recipe.serves == Fraction(21, 10)
    assert recipe.scale(portions=1).lines[0].amount == quantity("10 g AP")


def test_a_file_is_read_with_its_name_in_errors(tmp_path: Path) -> None:
    path = tmp_path / "dish.toml"
    path.write_bytes(b'\xef\xbb\xbfname = "x"\r\nserves = 4\r\nlines = ["1 leek"]\r\n')
    assert scalepan.read_recipe(path).name == "x"
    path.write_text('name = "x"\nserves = 4\nlines = ["leek"]\n', encoding="utf-8")
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.read_recipe(str(path))
    assert caught.value.place == f"{path}:3:11"


def test_a_catalogue_of_ones_own_is_used() -> None:
    own = scalepan.catalog_with(
        [
            {
                "fact": "leek.edible.own",
                "food": "leek",
                "kind": "edible",
                "from_stage": "AP",
                "to_stage": "EP",
                "value": "0.5 EP/AP",
                "source": "own trim, 3 cases",
            }
        ]
    )
    text = 'name = "x"\nserves = 4\nlines = ["500 g leeks, trimmed"]\n'
    prices = scalepan.parse_prices("item,sold_as,pack,price,keeps\nleeks,AP,1 kg,2.00,no\n")
    costing = scalepan.cost(scalepan.parse_recipe(text, catalog=own), prices)
    assert costing.shopping[0].need == quantity("1 kg AP")
    plain = scalepan.cost(scalepan.parse_recipe(text), prices)
    assert plain.shopping[0].need.value == Fraction(500, 440)
