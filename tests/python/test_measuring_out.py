"""Measuring out: the nearest amount in fewest fills, against every way tried; its errors.

Expected amounts are worked out by hand beside each check; nothing is taken from what the package
prints. US spoons: 1 cup = 16 tbsp = 48 tsp (NIST SP 430).
"""

from __future__ import annotations

import json
from fractions import Fraction
from itertools import product
from pathlib import Path

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import MeasureSet, measure_out, measure_set, measure_sets
from scalepan_command.start import main

CUPS = "us spoons and cups"


def test_the_shortest_way_to_an_exact_amount() -> None:
    # 47/12 tbsp = 11 3/4 tsp = 9 + 2 + 1/2 + 1/4.
    out = measure_out("47/12 tbsp", CUPS, measures="us")
    assert out.text == "3 tbsp + 2 tsp + 1/2 tsp + 1/4 tsp"
    assert out.pieces == [(3, "tbsp"), (2, "tsp"), (1, "1/2 tsp"), (1, "1/4 tsp")]
    assert out.amount == out.exact == scalepan.quantity("47/12 tbsp", measures="us")
    assert out.error_share == 0
    assert str(out) == "3 tbsp + 2 tsp + 1/2 tsp + 1/4 tsp (exact)"


def test_the_error_is_exact_signed_and_told() -> None:
    out = measure_out("172.3 g", "scales 5 g")
    assert out.text == "170 g"
    assert out.error == scalepan.quantity("-2.3 g")
    assert out.error_share == Fraction(-23, 1723)
    # 2.3 / 172.3 = 1.3348... %.
    assert str(out) == "170 g (2.3 g less than 172.3 g, 1.33 %)"


def test_a_tie_goes_up() -> None:
    assert measure_out("2.5 g", "scales 5 g").text == "5 g"
    assert measure_out("0.125 oz", "scales 1/4 oz").text == "1/4 oz"


def test_what_is_too_small_is_said_never_told_as_nothing() -> None:
    out = measure_out("0.03 tsp", CUPS, measures="us")
    assert out.text == "less than half of the smallest measure (1/8 tsp)"
    assert out.pieces == []
    assert out.error_share == -1
    assert out.told_error == "0.03 tsp_us left out"
    assert measure_out("0 g", "scales 1 g").text == "nothing"
    assert measure_out("0 g", "scales 1 g").error_share == 0


def test_a_share_too_small_to_print_is_not_printed_as_zero() -> None:
    out = measure_out("10.0001 kg", "scales 5 g")
    assert out.told_error == "0.1 g less than 10.0001 kg, below 0.01 %"


def test_at_most_limits_fills() -> None:
    # 100 mL is 0.4227 US cup: no. 10 holds 0.4 cup, no. 8 half a cup.
    assert measure_out("100 mL", "dishers", at_most=1).text == "1 no. 10 disher"
    # 1 tbsp (3 tsp) is 4 tsp off, 1/4 cup (12 tsp) 5 tsp.
    assert measure_out("7 tsp", CUPS, measures="us", at_most=1).text == "1 tbsp"


def test_within_leaves_small_measures_in_the_drawer() -> None:
    out = measure_out("80.4 cup", CUPS, measures="us", within="1 %")
    assert out.text == "80 cups"
    assert measure_out("80.4 cup", CUPS, measures="us", within=Fraction(1, 100)).text == "80 cups"
    assert abs(out.error_share) == Fraction(1, 201)


def test_a_weight_is_measured_by_volume_through_the_facts_of_its_food() -> None:
    # USDA SR28 19335: a cup of granulated sugar weighs 200 g; 150 g are 3/4 cup.
    out = measure_out("150 g", CUPS, food="granulated sugar")
    assert out.text == "1/2 cup + 1/4 cup"
    assert out.error == scalepan.quantity("0 mL")
    assert [fact.source.split(",")[0] for fact in out.facts] == ["USDA SR28 19335"]
    back = measure_out("3/4 cup", "scales 5 g", measures="us", food="granulated sugar")
    assert back.text == "150 g"


def test_a_stage_is_kept() -> None:
    out = measure_out("5.002 kg EP", "scales 5 g")
    assert out.amount == scalepan.quantity("5 kg EP")
    assert out.error == scalepan.quantity("-2 g EP")


# 40 US gallons are 640 cups; 1/100 tsp is below half of 1/8 tsp.
@pytest.mark.parametrize("name", [name for name in measure_sets() if not name.startswith("scales")])
def test_any_amount_is_measured_within_half_of_the_smallest_measure(name: str) -> None:
    chosen = measure_sets()[name]
    for text in ("1/100 tsp", "1/16 tsp", "7/8 cup", "5.01 cup", "40 gal", "1000003/7 cup"):
        out = measure_out(text, chosen, measures="us")
        if all(most is None for _, _, _, most, _, _ in chosen.measures):
            assert abs(out.error) <= smallest(chosen) / 2
        assert out.amount - out.exact == out.error


def smallest(chosen: MeasureSet) -> scalepan.Quantity:
    sizes = [size for _, _, size, _, _, _ in chosen.measures]
    steps = [step for *_, marks, _ in chosen.measures for step, _, _ in marks]
    return min([*sizes, *steps])


def test_every_bundled_measure_has_a_source() -> None:
    for chosen in measure_sets().values():
        assert all(source for *_, source in chosen.measures)
        assert chosen.dimension in ("weight", "volume")


SIZES = st.lists(
    st.tuples(st.integers(1, 24), st.integers(1, 4), st.one_of(st.none(), st.integers(1, 2))),
    min_size=1,
    max_size=3,
)


def best_by_trying(
    sizes: list[tuple[Fraction, int | None]], wanted: Fraction
) -> tuple[Fraction, int]:
    """Error and pieces of the nearest sum, the larger of two, in fewest pieces."""
    largest = max(size for size, _ in sizes)
    counts = [
        range(min(int((wanted + largest) / size) + 1, 10**6 if most is None else most) + 1)
        for size, most in sizes
    ]
    ways = []
    for way in product(*counts):
        total = sum((n * size for n, (size, _) in zip(way, sizes, strict=True)), start=Fraction(0))
        ways.append((abs(total - wanted), -total, sum(way)))
    _, total, pieces = min(ways)
    return -total - wanted, pieces


@given(SIZES, st.integers(0, 300), st.integers(1, 7))
def test_as_every_way_tried_one_by_one(
    drawn: list[tuple[int, int, int | None]], top: int, bottom: int
) -> None:
    # Bounded so that the trying stays small: at most 30 of the smallest.
    sizes = [(Fraction(a, b), most) for a, b, most in drawn]
    wanted = min(Fraction(top, bottom), 30 * min(size for size, _ in sizes))
    rows = [
        {"measure": f"m{i}", "size": f"{size} mL", "most": "" if most is None else str(most)}
        for i, (size, most) in enumerate(sizes)
    ]
    out = measure_out(scalepan.quantity(wanted, "mL"), measure_set("drawn", rows))
    error, pieces = best_by_trying(sizes, wanted)
    assert out.error == scalepan.quantity(error, "mL")
    assert sum(count for count, _ in out.pieces) == pieces


@given(st.fractions(min_value=0, max_value=200_000, max_denominator=1000))
def test_scales_give_the_nearest_multiple_with_the_half_up(grams: Fraction) -> None:
    out = measure_out(scalepan.quantity(grams, "g"), "scales 5 g")
    assert out.amount == scalepan.quantity(5 * ((grams / 5 + Fraction(1, 2)).__floor__()), "g")


def test_a_set_of_your_own_from_rows_and_from_a_file(tmp_path: Path) -> None:
    rows = [
        {"measure": "mug", "plural": "mugs", "size": "300 mL"},
        {"measure": "jar lid", "plural": "jar lids", "size": "20 mL", "most": "2"},
    ]
    mine = measure_set("my kitchen", rows)
    assert measure_out("645 mL", mine).text == "2 mugs + 2 jar lids"
    file = tmp_path / "sets.csv"
    file.write_text(
        "set,measure,size,step,from\n"
        "my scales,scales,1 kg,1 g,\n"
        "my scales,scales,15 kg,5 g,1 kg\n"
        "my jug,jug,500 mL,25 mL,\n",
        encoding="utf-8",
    )
    sets = scalepan.read_measure_sets(file)
    assert list(sets) == ["my scales", "my jug"]
    assert measure_out("998 g", sets["my scales"]).text == "998 g"
    # Above a kilogram the marks lie 5 g apart, and 3003 lies nearer to 3005.
    assert measure_out("3003 g", sets["my scales"]).text == "3.005 kg"
    assert measure_out("1.23 L", sets["my jug"]).text == "2 x 500 mL + 225 mL"


def refusal(**row: str) -> str:
    with pytest.raises(scalepan.MeasureError) as caught:
        measure_set("mine", [row])
    return f"{caught.value.code}: {caught.value}"


COLUMNS = "columns: measure, plural, size, step, from, most, source"


def test_rows_that_cannot_be() -> None:
    assert refusal(measure="cup") == f"measure.column: a measure has no size ({COLUMNS})"
    assert (
        refusal(measure="cup", size="1 mL", colour="red")
        == f'measure.column: unknown column "colour" ({COLUMNS})'
    )
    assert refusal(measure="cup", size="1 cup").startswith("unit.which_measures: ")
    assert (
        refusal(measure="jug", size="1 L", **{"from": "1 mL"})
        == 'measure.step: "jug" has a lowest mark but no step (give the step)'
    )


def test_an_error_in_a_file_has_its_place(tmp_path: Path) -> None:
    file = tmp_path / "sets.csv"
    file.write_text("set,measure,size\nmine,cup,250 mL\nmine,tbsp,20 mj\n", encoding="utf-8")
    with pytest.raises(scalepan.MeasureError) as caught:
        scalepan.read_measure_sets(file)
    assert caught.value.place == f"{file}:3:11"
    assert caught.value.message == 'unknown unit "mj"'
    file.write_text("set,measure,size\nmine,cup,250 mL\nmine,scoop,20 g\n", encoding="utf-8")
    with pytest.raises(scalepan.MeasureError) as caught:
        scalepan.read_measure_sets(file)
    assert str(caught.value) == (
        f'{file}:2:1: the set "mine" has volume with "cup" and weight with "scoop" '
        "(make a set of each)"
    )


def error_of(amount: str, chosen: str, **more: str) -> str:
    with pytest.raises(scalepan.MeasureError) as caught:
        measure_out(amount, chosen, food=more.get("food"), within=more.get("within"))
    return f"{caught.value.code}: {caught.value}"


def test_amounts_that_cannot_be_measured() -> None:
    assert error_of("172.3 g", CUPS) == (
        'measure.kind: "us spoons and cups" measures volume, and 172.3 g is weight '
        "(choose a set of measures of that kind, or name the food)"
    )
    assert error_of("-1 g", "scales 1 g") == (
        "measure.negative: nothing below zero can be measured out, and -1 g is"
    )
    assert error_of("1 g", "spoonz") == (
        'measure.unknown_set: no set of measures is called "spoonz" '
        f"(sets: {'; '.join(measure_sets())})"
    )
    assert error_of("1 g", "scales 1 g", within="1 g") == (
        "measure.within: within 1 g is no share of an amount (write it as 1 %)"
    )


RECIPE = """name = "Oat bake"
serves = 4
measures = "us"
lines = ["7.3 tsp olive oil", "302 g granulated sugar", "2 eggs", "100 g zorbles"]
"""


def test_a_recipe_is_told_by_the_measures_at_hand() -> None:
    recipe = scalepan.parse_recipe(RECIPE)
    oil, sugar, eggs, _ = scalepan.measure_out_recipe(recipe, volumes=CUPS, weights="scales 5 g")
    # 7.3 tsp: two tbsp of 3 tsp, one tsp, and 1/4 tsp is the nearest eighth to the rest, 0.3.
    assert oil.told == "2 tbsp + 1 tsp + 1/4 tsp olive oil"
    assert oil.measured is not None
    assert oil.measured.error == scalepan.quantity("-0.05 tsp AP", measures="us")
    assert sugar.told == "300 g granulated sugar"
    assert (eggs.told, eggs.measured, eggs.note) == ("2 eggs", None, "counted")


def test_a_recipe_is_told_by_cups_alone_where_facts_allow() -> None:
    recipe = scalepan.parse_recipe(RECIPE)
    _, sugar, _, unknown = scalepan.measure_out_recipe(recipe, volumes=CUPS, within="1 %")
    # USDA SR28 19335: 200 g a cup; 302 g are 1.51 cups, and 1 1/2 come within 1 %.
    assert sugar.told == "1 cup + 1/2 cup granulated sugar"
    assert unknown.told == "100 g zorbles"
    assert unknown.note == 'no food is called "zorbles"'


def test_a_recipe_needs_a_set_of_the_right_kind() -> None:
    recipe = scalepan.parse_recipe(RECIPE)
    with pytest.raises(scalepan.MeasureError) as caught:
        scalepan.measure_out_recipe(recipe, volumes="scales 5 g")
    assert str(caught.value) == (
        'the set for volumes is "scales 5 g", which measures weight '
        "(name it as the one for weights)"
    )
    assert {line.note for line in scalepan.measure_out_recipe(recipe)} == {
        "no set of measures is named",
        "counted",
    }


def test_the_command_tells_measures_and_error(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["measure", "47/12 tbsp", CUPS, "--measures", "us"]) == 0
    assert capsys.readouterr().out == (
        "47/12 tbsp = 3 tbsp + 2 tsp + 1/2 tsp + 1/4 tsp\n  us spoons and cups: exact\n"
    )
    assert main(["measure", "172.3 g", "scales 5 g"]) == 0
    assert capsys.readouterr().out == (
        "172.3 g = 170 g\n  scales 5 g: 2.3 g less than 172.3 g, 1.33 %\n"
    )


def test_the_command_names_the_facts(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["measure", "150 g", CUPS, "--food", "granulated sugar"]) == 0
    out = capsys.readouterr().out
    assert out.startswith("150 g = 1/2 cup + 1/4 cup\n")
    assert "USDA SR28 19335" in out


def test_the_command_in_json_is_exact(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["measure", "172.3 g", "scales 5 g", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == "scalepan/1"
    assert document["pieces"] == [{"count": 1, "measure": "170 g"}]
    assert document["error"] == {"value": "-23/10", "unit": "g", "told": "-2.3 g"}
    assert document["error_share"] == "-23/1723"


def test_the_command_takes_own_sets_and_refuses_clearly(
    capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    file = tmp_path / "sets.csv"
    file.write_text("set,measure,plural,size\nmine,mug,mugs,300 mL\n", encoding="utf-8")
    assert main(["measure", "640 mL", "mine", "--sets", str(file), "--at-most", "3"]) == 0
    assert capsys.readouterr().out.startswith("640 mL = 2 mugs\n")
    assert main(["measure", "640 mL", CUPS, "--sets", str(file)]) == 1
    assert capsys.readouterr().err == (
        f'scalepan: no set of measures is called "{CUPS}" [measure.unknown_set]\n  sets: mine\n'
    )
    with pytest.raises(SystemExit) as leaving:
        main(["measure", "1 g"])
    assert leaving.value.code == 2


README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")


def test_the_own_sets_of_the_readme_are_read(tmp_path: Path) -> None:
    file = tmp_path / "my_sets.csv"
    file.write_text(README.split("`my_sets.csv`:\n\n```csv\n")[1].split("```")[0], "utf-8")
    assert list(scalepan.read_measure_sets(file)) == ["mine", "my scales"]


def test_a_recipe_is_measured_out_by_the_facts_it_was_read_by() -> None:
    own = scalepan.catalog_with(
        [{"fact": "own.oil", "food": "olive oil", "kind": "density", "value": "1 g/mL"}]
    )
    text = 'name = "Oil"\nserves = 4\nlines = ["30 g olive oil"]\n'
    (line,) = scalepan.measure_out_recipe(
        scalepan.parse_recipe(text, catalog=own), volumes="metric spoons"
    )
    # 30 g at 1 g a mL are 30 mL; by SR28 the oil would be lighter and fill more.
    assert line.measured is not None
    assert line.measured.text == "2 x 15 mL spoons"


def test_tins_that_are_drained_later_stay_tins() -> None:
    """800 g of drained chickpeas would be more than the tins hold."""
    dish = scalepan.parse_recipe(
        'name = "x"\nserves = 4\nlines = ["2 x 400 g tins chickpeas, drained", "1 kg rice"]'
    )
    tins, rice = scalepan.measure_out_recipe(dish.scale(portions=6), weights="scales 5 g")
    assert (tins.told, tins.measured, tins.note) == (
        "3 x 400 g tins chickpeas, drained",
        None,
        "counted, since it is drained later",
    )
    assert rice.told == "1.5 kg rice"
