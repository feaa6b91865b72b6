"""Objects as JSON, after the published schema, and inputs read back. All prices are invented."""

from __future__ import annotations

import importlib.util
import json
from fractions import Fraction
from pathlib import Path
from typing import Any

import displayed
import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import from_json, quantity, to_json
from scalepan_command.start import main

jsonschema = pytest.importorskip("jsonschema")

ROOT = Path(__file__).resolve().parents[2]
SCHEMA = json.loads((ROOT / "docs" / "scalepan.schema.json").read_text(encoding="utf-8"))
VALIDATOR = jsonschema.Draft202012Validator(SCHEMA)

BOOK = displayed.price_book()
COSTING = scalepan.cost(displayed.recipe(), BOOK)
BASKET = scalepan.basket([displayed.recipe().scale(portions=7), displayed.with_base()], BOOK)
STOCK = scalepan.parse_stock(
    "item,stage,amount,value,currency,use_by\nmilk,AP,1 pint,2,GBP,2026-11-30\n",
    measures="imperial",
    file="larder.csv",
)
OWN = scalepan.catalog_with(
    [{"fact": "own.leek", "food": "leek", "kind": "edible", "value": "0.5 EP/AP"}],
    foods=[{"food": "yuzu", "allergens_eu": "celery"}],
    names=[{"name": "yuz", "food": "yuzu"}],
    prefer=["carrot.edible"],
    region="GB",
    choose={"cornflour": "corn_starch"},
)
PACKS = [("2.5 kg", "4.10"), ("1 kg", "1.95")]
INPUTS: list[Any] = [
    quantity("1/3 cup", measures="us"),
    displayed.fact(),
    *(BOOK.offers[0], BOOK, STOCK, STOCK.items[0]),
    *(displayed.recipe(), scalepan.Dish(displayed.recipe(), "Late watch", "week.toml", 2, 3)),
    *(OWN, scalepan.bundled_catalog(), scalepan.Catalog()),
    *scalepan.measure_sets().values(),
    *scalepan.pans().values(),
    *(displayed.yield_test(), displayed.yield_test().trials[0], displayed.sheet(), COSTING),
    [quantity("2 g"), displayed.fact()],
]
RESULTS: list[Any] = [
    *(COSTING.shopping, COSTING.shopping[0], COSTING.curve(range(1, 5)), BASKET, BASKET.dishes[0]),
    *(BASKET.shopping[0], COSTING.explain("till"), displayed.with_base().bases[0]),
    *(displayed.recipe().lines[0], scalepan.label(displayed.recipe()), COSTING.left),
    *(scalepan.cover("6.3 kg", PACKS), scalepan.cover_function(PACKS), COSTING.drivers()),
    scalepan.convert("2 cup", "g", food="milk", measures="us"),
    *(scalepan.by_shop(displayed.recipe(), BOOK), scalepan.read_line("2 large eggs")),
    scalepan.measure_out("50 mL", "us spoons and cups"),
    scalepan.measure_out_lines(displayed.recipe().lines, volumes="us spoons and cups"),
    scalepan.selling_price("1 EUR", food_cost="30 %", tax="7 %"),
    scalepan.loads("13 kg", "4 kg"),
    displayed.sheet().sweep("portions", [1, 2], ["trays_needed"]),
    *(displayed.sheet().compare(["trays_needed"]), scalepan.NumberColumn(["1/3", 2])),
    *(COSTING.curve([4, 40]).column("till"), scalepan.Interval("3 kg", "5 kg")),
    *(COSTING.pack_prices("fennel"), displayed.error(), displayed.yield_test().shares),
]  # fmt: skip


def named(objects: list[Any]) -> list[Any]:
    return [pytest.param(one, id=f"{type(one).__name__}-{n}") for n, one in enumerate(objects)]


@pytest.mark.parametrize("shown", named([*INPUTS, *RESULTS]))
def test_every_object_is_written_after_the_schema(shown: object) -> None:
    document = json.loads(to_json(shown), parse_float=lambda text: pytest.fail(text))
    assert [error.message for error in VALIDATOR.iter_errors(document)] == []


@pytest.mark.parametrize("shown", named(INPUTS))
def test_inputs_are_read_back_the_same(shown: object) -> None:
    text = to_json(shown)
    again = from_json(text, file="x.json")
    assert again == shown
    assert to_json(again) == text


@pytest.mark.parametrize("shown", named(RESULTS))
def test_results_say_what_to_make_them_from(shown: Any) -> None:
    with pytest.raises(scalepan.FileError) as caught:
        from_json(to_json(shown), file="x.json")
    assert caught.value.code == "json.not_read"
    assert caught.value.hint.startswith("make it again from ")
    assert caught.value.line > 0


def test_the_error_of_a_result_in_full() -> None:
    with pytest.raises(scalepan.FileError) as caught:
        from_json(to_json(scalepan.label(displayed.recipe())), file="label.json")
    assert str(caught.value) == (
        'label.json:3:12: "label" is no input, so it is not read back (make it again from its '
        "recipe: scalepan.label(recipe); what is read: quantity; fact; offer; price book; stock "
        "item; stock; recipe; dish; catalog; measure set; pan; yield trial; yield test; sheet; "
        "costing; list)"
    )


def test_what_is_read_is_the_thing_itself() -> None:
    assert from_json(to_json(quantity("1/3 cup", measures="us"))) == quantity("1/3 cup_us")
    dish = from_json(to_json(scalepan.Dish(displayed.recipe(), "Late watch", "week.toml", 2, 3)))
    assert (dish.name, dish.file, dish.line, dish.column) == ("Late watch", "week.toml", 2, 3)
    assert dish.recipe.portions == 40
    costing = from_json(to_json(COSTING))
    assert [getattr(costing, n) for n in ("till", "used", "thrown", "borne")] == [
        getattr(COSTING, n) for n in ("till", "used", "thrown", "borne")
    ]
    catalog = from_json(to_json(OWN))
    assert catalog.facts("leek")[0].value == quantity("0.5 EP/AP")
    assert catalog.facts("carrot")[0].layer == "own"
    assert catalog.food_of("yuz") == "yuzu"
    assert catalog.choices == ("GB", {"cornflour": "corn_starch"})
    assert catalog.fact_count == OWN.fact_count


@given(st.fractions(), st.sampled_from(["g", "kg EP", "EUR/(kg AP)", "cup_us", "EP/AP", "piece"]))
def test_any_amount_goes_out_and_in(number: Fraction, unit: str) -> None:
    amount = quantity(number, unit)
    text = to_json(amount)
    assert json.loads(text)["value"] == str(number)
    again = from_json(text)
    assert (again, again.unit) == (amount, amount.unit)


def test_what_all_results_have_is_exact() -> None:
    shopping = json.loads(to_json(COSTING.shopping))
    assert shopping["till"] == {
        "value": str(COSTING.till.value),
        "unit": "EUR",
        "told": COSTING.till.told_money,
    }
    cover = json.loads(to_json(scalepan.cover("6.3 kg", PACKS)))
    # 4.10 + 4 x 1.95 = 11.90 for 6.5 kg; 2 x 4.10 + 2 x 1.95 = 12.10; 3 x 4.10 = 12.30.
    assert cover["packs"] == [{"count": 1, "pack": "2.5 kg"}, {"count": 4, "pack": "1 kg"}]
    assert cover["price"]["value"] == "119/10"
    assert Fraction(cover["leftover"]["value"]) == Fraction(1, 5)
    column = json.loads(to_json(COSTING.curve([4, 40]).column("till")))
    step = Fraction(column["step"])
    assert [step * count for count in column["counts"]] == COSTING.curve([4, 40]).till


def changed(shown: object, path: list[Any], value: object) -> str:
    document = json.loads(to_json(shown))
    inside = document
    for key in path[:-1]:
        inside = inside[key]
    if value is ...:
        del inside[path[-1]]
    else:
        inside[path[-1]] = value
    return json.dumps(document)


ZEST = scalepan.recipe("Zest", 4, ["500 g leeks, trimmed"])
ZEST_COSTING = scalepan.cost(
    ZEST,
    scalepan.price_book([{"item": "leeks", "sold_as": "AP", "pack": "1 kg", "price": "2.10",
                          "keeps": False, "currency": "EUR"}]),
)  # fmt: skip


@pytest.mark.parametrize(
    ("text", "code", "told"),
    [
        (changed(ZEST_COSTING, ["figures", "till", "value"], "9/2"), "json.figure",
         'figures till value is "9/2", but reading gives "21/5" (leave it out, or give what it was '
         "made from: from_json(text, catalog=...))"),
        (changed(ZEST_COSTING, ["figures", "leeks.extra"], "1"), "json.key",
         "figures has the unknown key leeks.extra"),
        (changed(ZEST, ["lines", 0, "amount", "value"], "501"), "json.figure",
         'lines 1 amount value is "501", but reading gives "500" (leave it out, or give what it '
         "was made from: from_json(text, catalog=...))"),
        (changed(BOOK, ["offers", 1, "row", "price"], "2.05"), "json.figure",
         'offers 2 price value is "21/20", but reading gives "41/20" (leave it out, or give what '
         "it was made from: from_json(text, catalog=...))"),
        (changed(BOOK, ["offers", 1, "keeps"], 1), "json.figure",
         "offers 2 keeps is 1, but reading gives false (leave it out, or give what it was made "
         "from: from_json(text, catalog=...))"),
        (changed(BOOK, ["offers", 1, "row", "pack"], "1 kgg"), "unit.unknown",
         'prices.csv:3:3: unknown unit "kgg" (nearest: kg)'),
        (changed(BOOK, ["offers", 0, "row"], ...), "json.missing", "offers 1 has no row"),
        (changed(BOOK, ["offers", 0, "row", "price"], 3), "json.type",
         "offers 1 row price is not a text"),
        (changed(BOOK, ["offers"], {}), "json.type", "offers is not a list"),
        (changed(BOOK, ["type"], ...), "json.missing", "the text has no type"),
        (changed(BOOK, ["type"], "price list"), "json.not_read",
         '"price list" is no input, so it is not read back'),
        (changed(BOOK, ["schema"], "scalepan/9"), "json.schema",
         'the schema is "scalepan/9", but this reads scalepan/1 (it begins with {"schema": '
         '"scalepan/1", "type": ...})'),
        ("[]", "json.schema",
         'the text names no schema, but this reads scalepan/1 (it begins with {"schema": '
         '"scalepan/1", "type": ...})'),
        ('{"schema": "scalepan/1",\n "type": "quantity", "value": "1/0", "unit": "g"}',
         "number.zero_denominator", ""),
        ('{"schema": "scalepan/1", "type": "quantity", "value": 1.5, "unit": "g"}', "json.type",
         "value is not a text"),
        ('{"schema": "scalepan/1", "type": "quantity", "value": "1", "unit": "gg"}',
         "unit.unknown", 'unknown unit "gg" (nearest: g, kg, mg)'),
        ('{"schema": "scalepan/1", "type": "list", "items": [{"type": "sheet", "text": "x"}]}',
         "sheet.syntax", "not TOML: "),
        ('{"schema": 1, "schema": 2}', "json.duplicate", 'one object has the key "schema" twice'),
        ("{", "json.syntax", "not JSON: "),
        ("[" * 100_000, "json.syntax", "not JSON: brackets nest too deeply"),
        ('{"a": ' + "9" * 5000 + "}", "json.syntax", "not JSON: a number has too many digits"),
        ("\0", "json.syntax", "not JSON: Expecting value"),
    ],
)  # fmt: skip
def test_what_is_wrong_is_told_with_its_place(text: str, code: str, told: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        from_json(text, file="x.json")
    assert caught.value.code == code
    place = f":{caught.value.line}:{caught.value.column}"
    assert caught.value.file == "x.json"
    if code != "json.schema":
        assert caught.value.line > 0
        assert str(caught.value).startswith(f"x.json{place}: {told}")
    else:
        assert told in str(caught.value)


@pytest.mark.parametrize(
    ("text", "code", "told"),
    [
        ('{"a": [{"b": 1},\n{"b": 2, "c": 3, "b": 4}], "b": 5}', "json.duplicate",
         '2:23: one object has the key "b" twice'),
        ("{" + '"a": 1,' * 100_000 + '"b": 2}', "json.duplicate",
         '1:14: one object has the key "a" twice'),
        ("{" + "".join(f'"{n}": 1,' for n in range(100_000)) + '"0": 2}', "json.duplicate",
         # One brace, 488,890 digits and 6 more signs for each key, and 5 before the last value.
         '1:1088897: one object has the key "0" twice'),
        ('{"schema": "scalepan/1",\n"type": "\\ud83c\\udf70 \\ud83c"}', "json.syntax",
         "2:10: not JSON: half a character, of a pair of surrogates"),
        ('{"\ud83c": 1}', "json.syntax",
         "1:3: not JSON: half a character, of a pair of surrogates"),
    ],
    ids=["nested", "at once", "late", "half", "half as it is"],
)  # fmt: skip
def test_a_key_twice_and_half_a_character_are_found_at_their_place(
    text: str, code: str, told: str
) -> None:
    with pytest.raises(scalepan.FileError) as caught:
        from_json(text, file="x.json")
    assert (caught.value.code, str(caught.value)) == (code, f"x.json:{told}")


def test_a_figure_that_differs_is_found_at_its_place() -> None:
    text = to_json(ZEST).replace('"value": "500"', '"value": "501"', 1)
    line = next(n for n, row in enumerate(text.splitlines(), 1) if '"501"' in row)
    column = text.splitlines()[line - 1].index("501") + 1
    with pytest.raises(scalepan.FileError) as caught:
        from_json(text, file="zest.json")
    assert caught.value.place == f"zest.json:{line}:{column}"


def test_a_recipe_by_other_facts_is_refused_unless_they_are_given() -> None:
    facts = [{"fact": "own.leek", "food": "leek", "kind": "piece", "size": "medium",
              "value": "200 g EP/(piece AP)"}]  # fmt: skip
    own = scalepan.catalog_with(facts)
    text = 'name = "x"\nserves = 4\nlines = ["2 medium leeks"]\n'
    made = scalepan.parse_recipe(text, catalog=own)
    assert made.batch == quantity("400 g")
    with pytest.raises(scalepan.FileError) as caught:
        from_json(to_json(made))
    assert caught.value.code == "json.figure"
    assert from_json(to_json(made), catalog=own).batch == made.batch


def test_the_bundled_catalogue_is_written_by_name_only() -> None:
    assert len(to_json(scalepan.bundled_catalog())) < 200


def test_what_is_no_object_of_ours_is_refused() -> None:
    for shown in (3, "text", object(), scalepan.Changes()):
        with pytest.raises(scalepan.FileError) as caught:
            to_json(shown)
        assert (caught.value.code, caught.value.message) == (
            "json.no_form",
            f"a {type(shown).__name__} is no object of Scalepan's that JSON can hold",
        )


def test_a_text_beyond_the_limit_is_refused() -> None:
    with pytest.raises(scalepan.FileError) as caught:
        from_json(" " * 10_000_001, file="x.json")
    assert str(caught.value) == "x.json: the text has more than 10000000 bytes"


def test_the_schema_is_the_one_its_tool_writes() -> None:
    spec = importlib.util.spec_from_file_location("tool", ROOT / "tools" / "build_json_schema.py")
    assert spec is not None
    assert spec.loader is not None
    tool = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(tool)
    assert tool.schema() == SCHEMA
    jsonschema.Draft202012Validator.check_schema(SCHEMA)


@pytest.mark.parametrize(
    ("path", "value"),
    [
        (["costs", "till", "value"], 4.2),
        (["costs", "till", "value"], "4.2"),
        (["costs", "till"], ...),
        (["shopping", 0, "packs", 0, "count"], "1"),
        (["shopping", 0, "keeps"], "no"),
        (["figures", "till", "value"], 0.5),
        (["text"], ...),
        (["schema"], "scalepan/2"),
        (["type"], "costings"),
    ],
)
def test_the_schema_refuses_what_is_not_exact_or_not_there(path: list[Any], value: object) -> None:
    assert not VALIDATOR.is_valid(json.loads(changed(ZEST_COSTING, path, value)))


RECIPE = 'name = "Leek pot"\nserves = 4\nlines = ["500 g leeks, trimmed", "4 eggs"]\n'
PRICES = (
    "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2.10,EUR,no\neggs,AP,6,1.50,EUR,no\n"
)
SIZED = ["pot.toml", "--prices", "prices.csv", "--portions", "40"]
COMMANDS = [
    ["scale", "pot.toml", "--portions", "7"],
    ["page", "pot.toml", "--portions", "7"],
    *([command, *SIZED] for command in ("buy", "shops", "cost")),
    ["price", *SIZED, "--food-cost", "30 %", "--tax", "7 %"],
    ["spend", *SIZED[:3], "--most", "50 EUR"],
    ["break-even", "pot.toml", "leeks", *SIZED[1:]],
    ["swap", *SIZED, "--swap", "leeks = 400 g leeks, trimmed"],
    ["curve", *SIZED[:3], "--portions", "1:9"],
    ["why", "pot.toml", "leeks.buy", *SIZED[1:]],
    ["convert", "2 cup", "g", "--food", "milk", "--measures", "us"],
    ["measure", "50 mL", "us spoons and cups"],
    ["loads", "13 kg", "4 kg"],
    ["read", "2 x 400 g tins chickpeas"],
    ["basket", "week.toml", "--prices", "prices.csv"],
    ["write", "pot.toml", "pot.jsonld"],
]


@pytest.mark.parametrize("arguments", COMMANDS, ids=lambda each: each[0])
def test_what_commands_print_is_after_the_schema(
    arguments: list[str],
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
    capsys: pytest.CaptureFixture[str],
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("pot.toml").write_text(RECIPE, encoding="utf-8")
    Path("prices.csv").write_text(PRICES, encoding="utf-8")
    Path("week.toml").write_text('dishes = [{ recipe = "pot.toml", portions = 9 }]')
    assert main([*arguments, "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert [error.message for error in VALIDATOR.iter_errors(document)] == []


SMALL = [
    *(quantity("1/3 cup", measures="us"), displayed.fact(), BOOK.offers[0], STOCK, OWN, ZEST),
    *(scalepan.measure_sets()["scales 5 g"], scalepan.pan("GN 1/1 65")),
    *(displayed.yield_test().trials[0], [quantity("2 g")]),
]
VALUES = st.sampled_from([None, 3, "x", [], {}, True, [3], {"value": "1", "unit": "g"}, "\0", ...])


@given(st.sampled_from(SMALL), st.data())
def test_a_text_with_anything_wrong_is_one_error_of_ours(
    shown: object, data: st.DataObject
) -> None:
    path: list[Any] = []
    inside = json.loads(to_json(shown))
    while isinstance(inside, dict | list) and inside and (not path or data.draw(st.booleans())):
        keys = list(inside) if isinstance(inside, dict) else list(range(len(inside)))
        path.append(data.draw(st.sampled_from(keys)))
        inside = inside[path[-1]]
    try:
        again = from_json(changed(shown, path, data.draw(VALUES)))
    except scalepan.Error:
        return
    assert type(again) is type(shown)
