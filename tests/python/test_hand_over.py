"""The page that hands a dish over: all of it, on one page, harmless whatever the recipe says."""

from __future__ import annotations

import json
import re
from pathlib import Path

import pytest
import scalepan
from scalepan.demo import demo_files
from scalepan_command.start import main

# A sheet of paper at ten characters and six lines an inch: 8 by 11 inches.
WIDTH, LENGTH = 80, 66

SETS = [
    {},
    {"volumes": "us spoons and cups", "weights": "scales 1 oz"},
    {"volumes": "metric spoons and jug", "weights": "scales 5 g"},
]

DISH = """\
name = "Leeks in white sauce"
serves = 6
measures = "metric"
tested_at = [6]
makes = "1.2 kg"
load = "12 portions"
lines = [
  "1 kg leeks, trimmed and sliced",
  "3/5 of the white sauce",
  "60 g granulated sugar (optional)",
]
method = [
  { text = "Stew the leeks.", uses = ["leeks"], time = "20 min" },
  { text = "Layer.", uses = ["white_sauce"], at = "190 °C", time = "25 min", each_load = true },
]
[bases.white_sauce]
name = "White sauce"
serves = 6
makes = "540 g"
tested_at = [6]
lines = ["500 mL whole milk", "40 g butter"]
method = [{ text = "Boil the milk.", uses = ["whole_milk"], time = "8 min" }]
"""


def demo(portions: int) -> scalepan.Recipe:
    return scalepan.read_recipe(demo_files()[0]).scale(portions=portions)


def plain(page: str) -> str:
    """One line, single spaces: where a table wraps does not matter."""
    return " ".join(page.split())


@pytest.mark.parametrize("sets", SETS)
@pytest.mark.parametrize("portions", [4, 40])
def test_the_demo_is_one_page(portions: int, sets: dict[str, str]) -> None:
    lines = scalepan.hand_over(demo(portions), **sets).split("\n")
    assert len(lines) <= LENGTH
    assert max(len(line) for line in lines) <= WIDTH


@pytest.mark.parametrize("portions", [4, 40])
def test_every_line_and_every_step_is_on_the_page(portions: int) -> None:
    recipe = demo(portions)
    page = scalepan.hand_over(recipe, width=200)
    for line in recipe.lines:
        assert line.told in page
    for number, step in enumerate(recipe.method, 1):
        assert f"{number}. {step.text}" in page
        for use in step.uses:
            assert use.told in page
        assert (step.time or "") in page
        assert (step.at or "") in page
    for text in scalepan.label(recipe).text.split("\n"):
        assert text in page


def test_the_demo_says_what_was_tested_and_that_times_are_not_scaled() -> None:
    page = plain(scalepan.hand_over(demo(40)))
    assert page.startswith("Fennel and butter bean bake, 40 portions Tested at 4; 40 is computed.")
    assert (
        "Times are those of the tested 4 portions and are not scaled: separate pieces take as long "
        "as one, big pots heat slower (common practice; Gisslen, Professional Cooking)."
    ) in page
    assert "not scaled" not in scalepan.hand_over(demo(4))


def test_no_line_of_the_demo_is_left_out_by_its_method() -> None:
    assert "no step of the method" not in scalepan.hand_over(demo(40))
    assert "use 1/" not in scalepan.hand_over(demo(40))


def test_temperatures_of_the_demo_are_in_both_scales() -> None:
    page = plain(scalepan.hand_over(demo(40)))
    # FoodSafety.gov: egg dishes 160 F, printed as 71 C.
    for pair in ("200 °C (392 °F)", "170 °C (338 °F)", "71 °C (160 °F)"):
        assert pair in page
    # Each other °C on the page has its °F behind it.
    alone = re.findall(r"°C(?! \(\d+(?: to \d+)? °F\))", page)
    assert alone == []


def test_a_kitchen_with_other_measures_keeps_the_exact_figure_beside() -> None:
    page = scalepan.hand_over(demo(4), volumes="us spoons and cups", weights="scales 1 oz")
    # 20 g is 0.705 oz, so 1 oz is 28.349523125 / 20 - 1 = 41.75 % more.
    assert re.search(r"\n  1 oz parsley, chopped +20 g, 41\.75 % more +edible portion\n", page)
    # 700 g are 24.69 oz: 25 oz, 1.25 % more, which is near enough to stand alone.
    assert re.search(r"1 lb 9 oz fennel, trimmed and sliced +700 g +edible portion", page)
    assert "\n  ≈ 1 oz parsley" in page
    assert "\n  1 lb 9 oz fennel" in page


def test_the_spoons_and_cups_of_the_recipe_are_named() -> None:
    # A US fluid ounce is 29.5735295625 mL, a US cup eight of them.
    source = (
        'name = "x"\nserves = 4\nmeasures = "us"\n'
        'lines = ["1 cup olive oil", "2 fl oz whole milk", "500 mL water"]\n'
    )
    page = scalepan.hand_over(scalepan.parse_recipe(source))
    assert "\nAs written: us cup ≈ 236.6 mL, fl oz ≈ 29.57 mL.\n" in page
    assert "As written: metric tbsp 15 mL, tsp 5 mL." in scalepan.hand_over(demo(4))
    assert "As written" not in scalepan.hand_over(scalepan.parse_recipe(DISH))


def test_what_the_measures_cannot_give_stays_as_it_is_written() -> None:
    page = scalepan.hand_over(demo(4), weights="scales 1/8 lb", volumes="us spoons and cups")
    assert re.search(r"\n  20 g parsley, chopped +edible portion\n", page)
    assert page.endswith("  - parsley: as written: scales 1/8 lb are too large for it")


def test_bases_come_first_with_their_amounts_and_method() -> None:
    page = scalepan.hand_over(scalepan.parse_recipe(DISH).scale(portions=40))
    first, rest = page.split("First make: ")
    assert plain(first) == (
        "Leeks in white sauce, 40 portions Tested at 6; 40 is computed. "
        "Makes 8 kg, 200 g a portion. 3 loads of 12 portions and one of 4 portions, or 4 loads of "
        "10 portions."
    )
    # 3/5 of 540 g are 324 g for 6 portions and 2.16 kg for 40: 4 times the base, 24 portions.
    assert plain(rest).startswith(
        "White sauce, 2.16 kg, 4 batches 2.16 kg for white sauce. Tested at 6; 24 is computed."
    )
    assert rest.index("2 L whole milk") < rest.index("Boil the milk. 8 min.")
    assert rest.index("Boil the milk. 8 min.") < rest.index("kg leeks, trimmed and sliced")
    assert "25 min, each of 4 loads; the amounts are for all." in plain(rest)
    assert "400 g granulated sugar (optional)" in page
    assert plain(page).endswith(
        "To check - granulated_sugar: is optional, and costed - white_sauce: its uses come to "
        "3/5 of one batch; the other 2/5 is not made - granulated_sugar: no step of the method "
        "uses it - white_sauce.butter: no step of the method uses it"
    )


def test_measured_lines_say_that_they_are_optional() -> None:
    dish = scalepan.parse_recipe(DISH)
    page = scalepan.hand_over(dish, weights="scales 5 g", volumes="metric spoons and jug")
    assert "60 g granulated sugar (optional)" in page
    assert "no food is called" not in page


HOSTILE = (
    "{braces} %s %(x)s <b>bold</b> & \\\\back",
    "A" * 500,
    "\\U0001F35D 漢字 e\\u0301",
)


@pytest.mark.parametrize("text", HOSTILE)
def test_hostile_texts_are_harmless(text: str) -> None:
    source = (
        'name = "x"\nserves = 4\nlines = [{ line = "100 g butter", note = "see" }]\n'
        f'method = [{{ text = "{text}", uses = ["butter"] }}]\n'
    )
    recipe = scalepan.parse_recipe(source)
    (step,) = recipe.method
    page = scalepan.hand_over(recipe)
    assert all(len(line) <= WIDTH for line in page.split("\n"))
    squeezed = "".join(page.split()).replace("100gbutter", "")
    assert "".join(step.text.split()) in squeezed


@pytest.mark.parametrize("sign", ["\\u001b[2J", "\\u202egnp.exe", "\\n\\n"])
def test_signs_that_move_a_terminal_do_not_reach_the_page(sign: str) -> None:
    source = f'name = "x"\nserves = 4\nlines = ["100 g butter"]\nmethod = ["Stir{sign}"]\n'
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(source)
    assert caught.value.code == "recipe.control_character"


def test_the_command_prints_the_page(capsys: pytest.CaptureFixture[str]) -> None:
    path = demo_files()[0]
    assert main(["page", path, "--portions", "40", "--volumes", "us spoons and cups"]) == 0
    page = scalepan.hand_over(demo(40), volumes="us spoons and cups")
    assert capsys.readouterr().out == page + "\n"


def test_the_command_as_a_document(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    path = tmp_path / "dish.toml"
    path.write_text(DISH, encoding="utf-8")
    assert main(["page", str(path), "--portions", "12", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    stew, layer = document["recipe"]["method"]
    assert layer["at"] == "190 °C (374 °F)"
    assert stew["uses"][0]["amount"] == {"value": "2", "unit": "kg EP", "told": "2 kg"}
    assert document["times"] == "times are those of the tested 6 portions and are not scaled"
    (sauce,) = document["recipe"]["bases"]
    assert sauce["recipe"]["method"][0]["time"] == "8 min"
    assert document["label"]["allergens_eu"] == ["milk"]
    assert document["label"]["items"][1]["parts"][0]["name"] == "whole milk"


def test_an_unknown_set_is_named_with_those_there_are() -> None:
    with pytest.raises(scalepan.MeasureError) as caught:
        scalepan.hand_over(demo(4), volumes="buckets")
    assert caught.value.code == "measure.unknown_set"
    assert str(caught.value).startswith('no set of measures is called "buckets" (sets: ')
