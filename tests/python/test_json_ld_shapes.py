"""Shapes of schema.org ``Recipe`` that pages have: read, refused or told, never misread.

The pages are invented.
"""

from __future__ import annotations

import json

import pytest
import scalepan
from published_pages import page_of
from scalepan import parse_json_ld, quantity


def test_few_objects_that_name_each_other_make_no_endless_method() -> None:
    """Ten to the fifteenth steps, in two kilobytes."""
    graph: list[object] = [{**json.loads(page_of()), "step": {"@id": "#0"}}]
    graph += [{"@id": f"#{n}", "step": [{"@id": f"#{n + 1}"}] * 10} for n in range(15)]
    page = json.dumps({"@graph": [*graph, {"@id": "#15", "text": "Mix."}]})
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page, file="f")
    assert (caught.value.code, str(caught.value)) == (
        "recipe.too_many_lines",
        "f:1:13: the recipe has more than 2000 steps",
    )


@pytest.mark.parametrize(
    ("published", "read"),
    [
        ("1<sup>1</sup>/<sub>2</sub> L milk", "1 1/2 L milk"),
        ("<span>1</span><span>1/2</span> L milk", "1 1/2 L milk"),
        ("1<i></i><b>1/2</b> L milk", "1 1/2 L milk"),
        ("<td>1/2</td><td>L</td><td>milk</td>", "1/2 L milk"),
        ("<b>1/2</b>&nbsp;L&#8203; mi&shy;lk", "1/2 L milk"),
        ("1/2 L milk, hot \ud83c", "1/2 L milk, hot \ufffd"),
    ],
)
def test_tags_part_numbers_and_what_nobody_sees_is_taken_off(published: str, read: str) -> None:
    (line,) = parse_json_ld(page_of(recipeIngredient=[published])).lines
    assert line.text == read
    assert line.amount == quantity("1 1/2 L AP" if read.startswith("1 ") else "1/2 L AP")


def test_numbers_of_two_cells_are_not_one() -> None:
    page = page_of(recipeIngredient=["<td>1</td><td>2 eggs</td>"])
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page)
    assert (caught.value.code, caught.value.message) == (
        "line.no_food",
        '"2 eggs" cannot be read as a food; understood so far: 1',
    )


def test_a_raised_letter_is_a_degree() -> None:
    """180 x 9/5 + 32 = 356."""
    made = parse_json_ld(page_of(recipeInstructions="Bake at 180<sup>o</sup>C."))
    assert made.method[0].text == "Bake at 180 °C (356 °F)."


LOST = [
    ([{"@type": "ListItem", "item": {"@type": "HowToStep", "text": "Mix."}}], ["Mix."]),
    ([{"@type": "ListItem", "item": "Mix."}], ["Mix."]),
    ([{"name": "Mix.", "item": "https://example.org/mix"}], ["Mix."]),
    ([{"@type": "HowToStep", "description": "Mix."}], ["Mix."]),
    ({"@list": ["Mix.", "Bake."]}, ["Mix.", "Bake."]),
    ({"@type": "HowToSection", "name": "Cake", "steps": ["Mix."]}, ["Cake: Mix."]),
    ({"@type": "HowTo", "step": [{"text": "Mix."}]}, ["Mix."]),
    (["Mix.", {"@type": "HowToStep", "text": ""}], ["Mix."]),
]


@pytest.mark.parametrize(("form", "steps"), LOST)
def test_steps_wherever_a_page_has_them(form: object, steps: list[str]) -> None:
    made = parse_json_ld(page_of(recipeInstructions=form))
    assert [step.text for step in made.method] == steps
    assert "# not read" not in scalepan.recipe_text(made)


@pytest.mark.parametrize(
    ("step", "told"),
    [
        ({"@id": "#gone"}, "@id"),
        ({"@type": "HowToStep", "text": {"en": "Mix."}}, "@type, text"),
        ({}, "nothing"),
    ],
)
def test_a_step_that_is_not_read_is_told(step: object, told: str) -> None:
    made = parse_json_ld(page_of(recipeInstructions=["Bake.", step]))
    assert scalepan.recipe_text(made).splitlines()[0] == f"# not read: a step of {told}"


def test_lines_under_both_names_are_the_same_lines() -> None:
    made = parse_json_ld(page_of(ingredients="2 eggs"))
    assert [line.text for line in made.lines] == ["2 eggs"]
    page = page_of(ingredients=["3 eggs"])
    place = page.index('["3 eggs"') + 1
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page, file="f")
    assert (caught.value.code, str(caught.value)) == (
        "recipe.json_ld",
        f"f:1:{place}: recipeIngredient and ingredients list different "
        "lines (leave one of them out)",
    )


def test_a_property_under_two_names_is_refused() -> None:
    page = page_of(**{"schema:recipeIngredient": ["3 eggs"]})
    place = page.index('["3 eggs"') + 1
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page, file="f")
    assert (caught.value.code, str(caught.value)) == (
        "recipe.json_ld",
        f"f:1:{place}: the recipe has recipeIngredient twice, as "
        "recipeIngredient and as schema:recipeIngredient",
    )


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"name": "2 eggs", "requiredQuantity": "3"}, "name, requiredQuantity"),
        ({"@type": "PropertyValue", "name": "milk", "value": "2", "unitText": "L"},
         "name, value, unitText"),
        ({"name": "Eggs", "text": "2 eggs"}, "name, text"),
        ({}, "nothing"),
    ],
)  # fmt: skip
def test_an_ingredient_that_says_more_than_a_text_is_refused(given: object, told: str) -> None:
    page = page_of(recipeIngredient=[given])
    place = page.index("[{") + 2
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page, file="f")
    assert (caught.value.code, str(caught.value)) == (
        "recipe.type",
        f"f:1:{place}: an ingredient is an object of {told}, not a text",
    )


@pytest.mark.parametrize(
    ("given", "told"),
    [
        ({"@type": "QuantitativeValue", "value": 2, "unitCode": "KGM"}, "2 KGM"),
        ({"value": 24, "name": "cookies"}, "24 cookies"),
        ({"value": 4, "unitText": "servings", "maxValue": 6}, "4 servings 6"),
        ("4/0", "4/0"),
        ("\uff14", "\uff14"),
        ("4<b>0</b>", "4 0"),
    ],
)
def test_a_yield_is_portions_only_if_all_of_it_says_so(given: object, told: str) -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page_of(recipeYield=given))
    assert (caught.value.code, caught.value.message) == (
        "recipe.yield",
        f'the yield "{told}" does not say one number of portions',
    )
    assert caught.value.line == 1


def test_an_error_of_the_recipe_is_not_told_of_a_line() -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page_of(recipeYield=0), file="f", draft=True)
    assert str(caught.value) == (
        "f:1:1: serves is 0, but must be above zero (write the number of portions the amounts are "
        "for)"
    )


def test_a_recipe_that_is_there_twice_is_one_and_a_reference_is_none() -> None:
    reference = '{"@type": "Recipe", "@id": "#broth"}'
    assert parse_json_ld(f"\ufeff[{page_of()}, {reference}, {page_of()}]").name == "Broth"


@pytest.mark.parametrize("number", [10**5000, "9" * 5000], ids=["number", "text"])
def test_a_size_of_too_many_digits_is_refused(number: int | str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        parse_json_ld(page_of(), serves=number)
    assert caught.value.code == "number.too_many_digits"
    with pytest.raises(scalepan.Error) as told:
        parse_json_ld(page_of(recipeYield="9" * 5000))
    assert len(str(told.value)) < 1000
