"""Recipes as pages publish them, in and out. The words are those of https://schema.org/Recipe.

The pages are invented; the lines of the corpus have their sources in ``hand_lines.csv``.
"""

from __future__ import annotations

import csv
import json
from collections import Counter
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from displayed import recipe as supper
from displayed import with_base
from hypothesis import given, settings
from hypothesis import strategies as st
from published_pages import page_of
from scalepan import parse_json_ld, quantity
from scalepan.json_document import JsonText

DATA = Path(__file__).parent / "data"

PAGE = """\
<html><head><title>Night kitchen</title>
<script>var page = '<script type="application/ld+json">{"@type": "Recipe"}';</script>
<!-- <script type="application/ld+json">{"@type": "Recipe", "name": "Old"}</script> -->
<script type='application/ld+json' class="x">
{"@context": "https://schema.org", "@graph": [
 {"@type": "WebPage", "name": "Night kitchen"},
 {"@type": ["Recipe", "NewsArticle"], "name": "Ginger &amp; pear cake",
  "recipeYield": ["8", "8 servings"], "totalTime": "PT1H30M",
  "author": {"@type": "Person", "name": "Ines"},
  "nutrition": {"@type": "NutritionInformation", "calories": "240 calories"},
  "recipeIngredient": ["2 cups plain flour", "&frac12; tsp salt", "1 tsp salt",
     "3 pears, <b>peeled</b>", "&amp;frac14; cup milk"],
  "recipeInstructions": [
    {"@type": "HowToSection", "name": "Cake", "itemListElement": [
      {"@type": "HowToStep", "text": "Mix <b>well</b>."},
      {"@type": "HowToStep", "name": "Bake.", "text": "Bake. At 180&deg;C."}]},
    {"@id": "#cool"}]},
 {"@id": "#cool", "@type": "HowToStep", "text": "Cool."}
]}
</script></head><body>2 eggs</body></html>
"""


def test_a_page_gives_the_recipe_and_its_text() -> None:
    cake = parse_json_ld(PAGE, file="cake.html", measures="us")
    assert scalepan.recipe_text(cake) == (
        "# totalTime: PT1H30M\n# author: Ines\n# nutrition: not taken over\n"
        'name = "Ginger & pear cake"\nserves = 8\nmeasures = "us"\nlines = [\n'
        '  "2 cups plain flour",\n  "½ tsp salt",\n  { id = "salt_2", line = "1 tsp salt" },\n'
        '  "3 pears, peeled",\n  "¼ cup milk",\n]\nmethod = [\n'
        '  "Cake: Mix well.",\n  "Bake. At 180°C.",\n  "Cool.",\n]\n'
    )
    assert [line.amount for line in cake.lines] == [
        quantity("2 cup AP", measures="us"),
        quantity("1/2 tsp AP", measures="us"),
        quantity("1 tsp AP", measures="us"),
        quantity("3 piece AP"),
        quantity("1/4 cup AP", measures="us"),
    ]
    again = scalepan.parse_recipe(scalepan.recipe_text(cake))
    assert [line.amount for line in again.lines] == [line.amount for line in cake.lines]


@pytest.mark.parametrize(
    ("given", "serves"),
    [
        ("4 servings", 4),
        ("4", 4),
        (4, 4),
        (["4", "4 servings"], 4),
        ("Serves 6", 6),
        ("Makes 12 portions.", 12),
        ("For 2 people", 2),
        ("2.5 servings", Fraction(5, 2)),
        ("9 1/3 servings", Fraction(28, 3)),
        ({"@type": "QuantitativeValue", "value": 10, "unitText": "servings"}, 10),
        ([{"@value": "5 servings"}], 5),
    ],
)
def test_yields(given: object, serves: Fraction) -> None:
    assert parse_json_ld(page_of(recipeYield=given)).serves == serves


@pytest.mark.parametrize("given", ["4-6", "4 to 6 servings", "24 cookies", ["4", "24 cookies"], ""])
def test_a_yield_that_is_no_one_number_of_portions_is_asked_for(given: object) -> None:
    page = page_of(recipeYield=given)
    told = '", "'.join(given) if isinstance(given, list) else given
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page, file="b.jsonld")
    column = page.index('"recipeYield": ') + 16 + (0 if isinstance(given, list) else 1)
    assert (caught.value.code, str(caught.value)) == (
        "recipe.yield",
        f'b.jsonld:1:{column}: the yield "{told}" does not say one number of portions '
        "(say how many portions: serves=4)",
    )
    known = parse_json_ld(page, serves="5")
    assert known.serves == 5
    assert "# recipeYield:" in scalepan.recipe_text(known)


FORMS = [
    "Mix.\nBake.",
    "<p>Mix.</p><p>Bake.</p>",
    ["Mix.", "Bake."],
    [{"@type": "HowToStep", "text": "Mix."}, {"@type": "HowToStep", "name": "Bake."}],
    {"@type": "ItemList", "itemListElement": ["Mix.", {"@type": "HowToStep", "text": "Bake."}]},
]


@pytest.mark.parametrize("form", FORMS)
def test_steps_in_all_their_forms(form: object) -> None:
    made = parse_json_ld(page_of(recipeInstructions=form))
    assert [step.text for step in made.method] == ["Mix.", "Bake."]


EXPANDED = [{
    "@type": ["http://schema.org/Recipe"],
    "http://schema.org/name": [{"@value": "Broth"}],
    "http://schema.org/recipeYield": [{"@value": "4"}],
    "http://schema.org/recipeIngredient": [{"@value": "2 eggs"}, {"@value": "1 L milk"}],
}]  # fmt: skip


@pytest.mark.parametrize(
    "text",
    [
        json.dumps(EXPANDED),
        json.dumps({"mainEntity": {"@type": "schema:Recipe", "schema:name": "Broth", "yield": 4,
                                   "ingredients": "2 eggs\n1 L milk"}}),
        '<script type="application/ld&#x2B;json">//<![CDATA[\n'
        + json.dumps({"@type": "Recipe", "name": "Broth", "recipeYield": 4,
                      "recipeIngredient": ["2 eggs", "1 L milk"]})
        + "\n//]]></script>",
        '<SCRIPT TYPE="application/ld+json; charset=utf-8">{"broken": }</SCRIPT>'
        '<script type="application/ld+json">{"@type":"Recipe","name":"Broth","recipeYield":4,'
        '"recipeIngredient":{"@type":"ItemList","itemListElement":["2 eggs",{"name":"1 L milk"}]}}'
        "</script>",
    ],
)  # fmt: skip
def test_other_ways_to_say_the_same(text: str) -> None:
    broth = parse_json_ld(text)
    assert (broth.name, broth.serves) == ("Broth", 4)
    assert [line.amount for line in broth.lines] == [quantity("2 piece AP"), quantity("1 L AP")]


@pytest.mark.parametrize(
    ("text", "code", "told"),
    [
        ("<p>no recipe</p>", "recipe.json_ld",
         'f: no JSON-LD is in the file (a recipe is an object with "@type": "Recipe", which many '
         "pages have in a script)"),
        ("{}", "recipe.json_ld",
         'f: no recipe is in its JSON-LD (a recipe is an object with "@type": "Recipe", which many '
         "pages have in a script)"),
        ('[{"@type":"Recipe","name":"a"},{"@type":"Recipe","name":"b"}]', "recipe.json_ld",
         "f: more than one recipe is there (give name=, one of: a; b)"),
        ('{"@type":"Recipe"}', "recipe.missing", "f:1:1: the recipe has no name"),
        ('{"@type":"Recipe","name":"x"}', "recipe.missing",
         "f:1:1: the recipe has no recipeYield (say how many portions: serves=4)"),
        ('{"@type":"Recipe","name":"x","yield":4}', "recipe.missing",
         "f:1:1: the recipe has no lines (a recipe lists them as recipeIngredient)"),
        ('{"@type":"Recipe",\n"name":"x","yield":4,"ingredients":["2 eggs",3]}', "recipe.type",
         "f:2:46: an ingredient is a int, not a text"),
        ('{"@type":"Recipe",\n"name":"x","yield":4,"ingredients":["2 eggs"],"step":[1]}',
         "recipe.type", "f:2:55: a step is a int, not a text"),
        ('{"@type":"Recipe",\n"name":"x","yield":4,"ingredients":["2 eggs","salt and pepper"]}',
         "line.no_amount",
         'f:2:47: no amount is written in "salt and pepper" (write one, or say that it is left to '
         "the cook: salt and pepper, to taste; or have another line read: "
         'replace={"salt and pepper": "..."})'),
        ('{"@type":"Recipe",\n"name":"x","yield":4,"ingredients":["2 eggs","salt \\u0061nd pepper",'
         '"3 tbps oil"]}', "line.no_amount",
         'f:2: no amount is written in "salt and pepper" (write one, or say that it is left to '
         "the cook: salt and pepper, to taste; or have another line read: "
         'replace={"salt and pepper": "..."}; not read either: 3 tbps oil)'),
        ('{"@type": "Recipe"', "json.syntax",
         "f:1:19: not JSON: Expecting ',' delimiter"),
        ('{"@type": "Recipe", "a": NaN}', "json.syntax", "f:1:1: not JSON: NaN is no number"),
        ('{"a": 1, "a": 2}', "json.duplicate", 'f:1:15: one object has the key "a" twice'),
        ("[" * 100_000, "json.syntax", "f:1:1: not JSON: brackets nest too deeply"),
        ('<p>\n<script type="application/ld+json">\n{"@type": ]}</script>', "json.syntax",
         "f:3:11: not JSON: Expecting value"),
        (json.dumps({"@type": "Recipe", "name": "x", "yield": 4, "ingredients": ["2 eggs"] * 2001}),
         "recipe.too_many_lines", "f:1:1: the recipe has more than 2000 lines"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_told_with_its_place(text: str, code: str, told: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        parse_json_ld(text, file="f")
    assert (caught.value.code, str(caught.value)) == (code, told)


def test_steps_that_nest_too_deeply() -> None:
    step: object = "Mix."
    for _ in range(30):
        step = {"@type": "HowToSection", "itemListElement": [step]}
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(page_of(recipeInstructions=step))
    assert caught.value.message == "steps nest too deeply"


UNREAD = page_of(recipeIngredient=["2 eggs", "a glass of sherry", "1 L milk"])


def test_a_line_that_is_not_read_can_be_given_anew_or_left_to_a_draft() -> None:
    made = parse_json_ld(UNREAD, replace={"a glass of sherry": "100 mL sherry"})
    assert made.lines[1].amount == quantity("100 mL AP")
    draft = parse_json_ld(UNREAD, draft=True)
    assert [line.text for line in draft.lines] == ["2 eggs", "1 L milk"]
    first = scalepan.recipe_text(draft).splitlines()[0]
    assert first == '# not read: a glass of sherry ("glass" has no agreed size)'
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(UNREAD, replace={"a glas of sherry": "100 mL sherry"})
    assert caught.value.message == 'no line is "a glas of sherry"'
    assert "a glass of sherry" in caught.value.hint


def test_one_of_several_recipes_is_chosen_by_name() -> None:
    both = f"[{page_of(name='Broth')}, {page_of(name='Pie', recipeIngredient=['3 eggs'])}]"
    assert parse_json_ld(both, name="Pie").lines[0].amount == quantity("3 piece AP")
    with pytest.raises(scalepan.RecipeError) as caught:
        parse_json_ld(both, name="Cake", file="two.jsonld")
    assert str(caught.value) == (
        'two.jsonld: no recipe is called "Cake" (give name=, one of: Broth; Pie)'
    )


def test_a_derivation_points_into_the_page(leek_prices: scalepan.PriceBook) -> None:
    pot = parse_json_ld(page_of(recipeIngredient=["500 g leeks, trimmed"]), file="pot.jsonld")
    costing = scalepan.cost(pot, leek_prices)
    place = page_of(recipeIngredient=["500 g leeks, trimmed"]).index("500 g") + 1
    assert f'["500 g leeks, trimmed", pot.jsonld:1:{place}]' in costing.why("leeks.need")
    # A kept costing has the text of the recipe file, which is TOML.
    again = scalepan.parse_costing(costing.text())
    assert again.till == costing.till


# Out, and in again.


def meant(recipe: scalepan.Recipe) -> list[object]:
    made = [*(base.recipe for base in recipe.bases), recipe]
    return [
        (line.food_id or line.food, line.amount, line.low, line.stage)
        for one in made
        for line in one.lines
        if line.takes_from is None
    ]


@pytest.mark.parametrize("factor", [1, Fraction(7, 3), 10])
@pytest.mark.parametrize("dish", [supper(), with_base()])
def test_out_and_in_again_keeps_amounts_and_foods(dish: scalepan.Recipe, factor: Fraction) -> None:
    sized = dish.scale(factor=factor)
    again = parse_json_ld(scalepan.json_ld(sized), measures=sized.measures or None)
    assert meant(again) == meant(sized)
    assert again.serves == sized.made
    assert parse_json_ld(scalepan.json_ld(again)).lines[0].amount == again.lines[0].amount


def test_lines_of_the_corpus_go_out_and_in_again() -> None:
    counts: Counter[str] = Counter()
    with (DATA / "hand_lines.csv").open(encoding="utf-8", newline="") as stream:
        texts = [row["line"] for row in csv.DictReader(stream)]
    for text in texts[::3]:
        try:
            sized = scalepan.recipe("x", 4, [text], measures="us").scale(factor="7/3")
        except scalepan.Error:
            continue
        try:
            page = scalepan.json_ld(sized)
        except scalepan.RecipeError as error:
            counts[error.code] += 1
            continue
        counts["same"] += meant(parse_json_ld(page, measures="us")) == meant(sized)
        counts["out"] += 1
    assert counts["same"] == counts["out"] > 150
    assert set(counts) <= {"same", "out", "recipe.json_ld"}
    assert counts["recipe.json_ld"] < counts["out"] / 20


def test_what_goes_out() -> None:
    text = (
        'name = "Tart </script> night"\nserves = 4\nmeasures = "us"\n'
        'lines = ["1/3 cup milk", "For the top:", "3 to 4 pears, peeled", "salt, to taste"]\n'
        'method = [{ text = "Bake.", at = "180 °C", time = "40 min" }]\n'
    )
    out = scalepan.json_ld(scalepan.parse_recipe(text).scale(portions=7))
    assert "</script" not in out
    # 1/3 x 7/4 = 7/12; 3 x 7/4 = 5 1/4, 4 x 7/4 = 7.
    assert json.loads(out) == {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": "Tart </script> night",
        "recipeYield": "7 servings",
        "recipeIngredient": [
            "7/12 cup milk",
            "For the top:",
            "5 1/4 to 7 pears, peeled",
            "salt, to taste",
        ],
        "recipeInstructions": [{"@type": "HowToStep", "text": "Bake. (180 °C (356 °F), 40 min)"}],
    }


def test_a_line_that_no_text_says_exactly_is_refused() -> None:
    # Behind a number "loaf" is what is counted.
    syrup = scalepan.recipe("x", 3, ["one pound and a half of loaf sugar"])
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.json_ld(syrup.scale(portions=7))
    assert caught.value.code == "recipe.json_ld"
    assert str(caught.value) == (
        'no text says the line loaf_sugar exactly: "3.5 lb loaf sugar" '
        "(name its food and amount more plainly)"
    )


@pytest.mark.parametrize("factor", [1, Fraction(7, 4)])
def test_what_is_optional_stays_optional(factor: Fraction) -> None:
    lines = ["30 g butter", "2 to 3 pears, peeled", "salt, to taste"]
    given = [*({"line": line, "optional": True} for line in lines), "2 eggs (optional)", "1 L milk"]
    sized = scalepan.recipe("x", 4, given).scale(factor=factor)
    again = parse_json_ld(scalepan.json_ld(sized))
    assert meant(again) == meant(sized)
    assert [line.optional for line in again.lines] == [True, True, True, True, False]


@pytest.mark.parametrize(
    ("line", "portions", "told"),
    [
        ("2 x 400 g tins white beans, drained", 40, "20 x 400 g tins white beans, drained"),
        ("2 x 400 g tins white beans, drained", 5, "2 1/2 x 400 g tins white beans, drained"),
        ("2 x 400 g tins white beans, drained", 2, "1 x 400 g tin white beans, drained"),
        ("1 box (500 g) spaghetti", 12, "3 x 500 g boxes spaghetti"),
        ("one 14-oz can tomatoes", 6, "1 1/2 x 14-oz cans tomatoes"),
        ("4 x 150 g salmon fillets", 6, "6 x 150 g salmon fillets"),
        ("one 14-oz can tomatoes (optional)", 8, "2 x 14-oz cans tomatoes (optional)"),
        ("about 2 x 400 g tins tomatoes", 8, "about 4 x 400 g tins tomatoes"),
    ],
)
def test_a_line_in_tins_stays_in_tins(line: str, portions: int, told: str) -> None:
    made = scalepan.recipe("Pan", 4, [line], measures="metric").scale(portions=portions)
    page = scalepan.json_ld(made)
    assert json.loads(page)["recipeIngredient"] == [told]
    (read,) = parse_json_ld(page, measures="metric").lines
    # What the tins hold, by the factor of the portions.
    (written,) = scalepan.recipe("Pan", 4, [line], measures="metric").lines
    assert read.amount == written.amount * Fraction(portions, 4)
    assert (read.food_id, read.stage) == (written.food_id, written.stage)


def test_files(tmp_path: Path) -> None:
    scalepan.write_json_ld(supper(), tmp_path / "supper.jsonld")
    again = scalepan.read_json_ld(tmp_path / "supper.jsonld")
    assert meant(again) == meant(supper())


JSON = st.recursive(
    st.none() | st.booleans() | st.integers() | st.text(max_size=5),
    lambda inner: (
        st.lists(inner, max_size=3) | st.dictionaries(st.text(max_size=3), inner, max_size=3)
    ),
    max_leaves=12,
)  # fmt: skip


def paths_of(
    value: object, path: tuple[object, ...] = ()
) -> list[tuple[tuple[object, ...], object]]:
    found = [(path, value)]
    inside = enumerate(value) if isinstance(value, list) else []
    pairs = value.items() if isinstance(value, dict) else inside
    return found + [each for key, one in pairs for each in paths_of(one, (*path, key))]


@given(JSON, st.sampled_from([None, 1]), st.booleans())
@settings(max_examples=200)
def test_every_value_is_found_at_its_place(value: object, indent: int | None, plain: bool) -> None:
    text = json.dumps(value, indent=indent, ensure_ascii=plain)
    offsets = JsonText(text).offsets(())
    expected = paths_of(value)
    assert [path for path, _ in expected] == list(offsets)
    decoder = json.JSONDecoder()
    for path, one in expected:
        start = offsets[path] - isinstance(one, str)  # type: ignore[index]
        assert decoder.raw_decode(text, start)[0] == one


PAGE_DATA = json.loads(PAGE[PAGE.index("{", PAGE.index("class=")) : PAGE.rindex("</script>")])
VALUES = st.sampled_from([None, 3, 1.5, "x", "", [], {}, True, [[]], [{}], {"@id": "#cool"}, "\0"])


@given(st.data())
def test_a_page_with_anything_wrong_is_read_or_is_one_error_of_ours(data: st.DataObject) -> None:
    document = json.loads(json.dumps(PAGE_DATA))
    inside = document["@graph"]
    for _ in range(data.draw(st.integers(1, 5))):
        keys = list(inside) if isinstance(inside, dict) else list(range(len(inside)))
        key = data.draw(st.sampled_from(keys))
        if not isinstance(inside[key], dict | list) or not inside[key]:
            break
        holder, inside = inside, inside[key]
    else:
        inside, key = holder, key
    inside[key] = data.draw(VALUES)
    try:
        made = parse_json_ld(json.dumps(document), measures="us", draft=data.draw(st.booleans()))
    except scalepan.Error:
        return
    assert scalepan.parse_recipe(scalepan.recipe_text(made)).serves == made.serves
