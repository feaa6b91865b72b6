"""``scalepan check``: everything that is wrong or doubtful in a folder, and no file that stops it.

Foods, prices and dishes are invented. Usual temperatures: US FoodSafety.gov, as the cautions say.
"""

from __future__ import annotations

import json
from pathlib import Path
from typing import Any

import pytest
from scalepan_command.start import main

PRICE_HEAD = "item,sold_as,pack,price,currency,keeps,date\n"
LEEKS = 'name = "Leeks"\nserves = 4\ntested_at = [4]\nlines = ["500 g leeks"]\n'


@pytest.fixture(autouse=True)
def in_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "100")


def write(**files: str) -> None:
    """Files by their names, in which the last underscore stands for the dot."""
    for name, text in files.items():
        Path(".".join(name.rsplit("_", 1))).write_text(text, encoding="utf-8")


def checked(capsys: pytest.CaptureFixture[str], *paths: str) -> tuple[int, str]:
    status = main(["check", *paths])
    shown = capsys.readouterr()
    assert shown.err == ""
    return status, shown.out


def finds(capsys: pytest.CaptureFixture[str], *paths: str) -> list[tuple[str, str, str]]:
    """Place, code and message of each find."""
    document = found(capsys, *paths)
    return [
        (find["place"], find["code"], find["message"])
        for file in document["files"]
        for find in file["finds"]
    ]


def found(capsys: pytest.CaptureFixture[str], *paths: str) -> dict[str, Any]:
    status = main(["check", "--json", *paths])
    shown = capsys.readouterr()
    assert shown.err == ""
    document = json.loads(shown.out)
    assert isinstance(document, dict)
    assert status == (1 if document["errors"] else 0)
    kinds = [find["error"] for file in document["files"] for find in file["finds"]]
    assert (document["errors"], document["doubts"]) == (kinds.count(True), kinds.count(False))
    return document


def test_the_report_of_a_kitchen(capsys: pytest.CaptureFixture[str]) -> None:
    write(
        pie_toml="""\
name = "Pie"
serves = 4
tested_at = [8]
bases = { stock = "stock.toml" }
lines = [
  "200 g leeks",
  "FOR THE TOP",
  "3 to 4 eggs",
  "500 g zurkle",
  { id = "wet", line = "1 kg of the stock" },
]
""",
        stock_toml='name = "Stock"\nserves = 4\ntested_at = 4\nmakes = "1 kg"\n'
        'lines = ["1.1 kg minced beef"]\n',
        prices_csv=PRICE_HEAD
        + "leeks,cooked,1 kg,2.00,EUR,no,2025-11-20\n"
        + "eggs,AP,6,1.50,,no,2026-11-20\n"
        + "minced beef,AP,1 kg,9.10,EUR,no,\n",
    )
    assert checked(capsys) == (
        1,
        """\
pie.toml
  pie.toml:3:13: it is not tested at the 4 it is written for, but at 8 [check.not_tested]
      cook it so, then write tested_at = [4]
  pie.toml:5:9: zurkle: the allergens are not known, or depend on the maker [check.allergens]
      read the packs
  pie.toml:8:4: eggs: a range is bought at its high end [check.line]
      scalepan read "3 to 4 eggs" shows how it is read
  pie.toml:8:4: eggs: Cook egg dishes through: 71 °C (160 °F). [check.caution]
      source: US FoodSafety.gov, safe minimum internal temperatures
  pie.toml:9:4: zurkle: the catalogue has no food "zurkle", so it has no facts, allergens or
    cautions [check.unknown_food]
      write one that scalepan foods lists, or add yours to a table of foods (--foods)

prices.csv
  prices.csv:2:1: leeks: the price is a year or more older than the newest, of 2026-11-20
    [check.old_price]
      ask for the price anew
  prices.csv:3:1: eggs: no currency is stated [check.no_currency]
      fill the column currency, as EUR
  prices.csv:4:1: minced beef: no date is stated [check.no_date]
      fill the column date, as 2026-11-24
  prices.csv:4:1: error: prices in no currency (eggs) and in EUR (minced beef) meet in one costing
    [cost.currencies]
      name the currency in every row, or once for all rows that name none

stock.toml
  stock.toml:5:11: minced_beef: Cook minced meat through: 71 °C (160 °F) in the middle.
    [check.caution]
      source: US FoodSafety.gov, safe minimum internal temperatures

1 price book, 2 recipes: 1 error, 9 to check.
  check.caution       2
  check.allergens     1
  check.line          1
  check.no_currency   1
  check.no_date       1
  check.not_tested    1
  check.old_price     1
  check.unknown_food  1
  cost.currencies     1
""",
    )


def test_what_is_not_priced_is_told_with_the_reason(capsys: pytest.CaptureFixture[str]) -> None:
    write(
        dish_toml='name = "Dish"\nserves = 4\ntested_at = 4\nlines = ["2 leeks", "10 g salt"]\n',
        prices_csv=PRICE_HEAD + "leeks,cooked,1 kg,2.00,EUR,no,2026-11-20\n",
    )
    assert finds(capsys) == [
        (
            "dish.toml:4:11",
            "check.no_fact",
            "leeks: no fact leads from count AP to weight cooked of leek: a cooked share "
            "is missing (known: leek.density, leek.edible, leek.piece, leek.piece.slice; add a "
            "fact of your own: food leek, kind cooked, value in cooked/EP)",
        ),
        ("dish.toml:4:22", "check.no_price", "salt: no price row is for salt"),
    ]
    write(
        facts_csv="fact,food,kind,value,source\nown.leek,leek,cooked,0.9 cooked/EP,own (invented)\n"
    )
    # The fact is laid over the bundled ones.
    assert [code for _, code, _ in finds(capsys)] == ["check.no_price"]


def test_without_a_price_book_nothing_is_said_of_prices(capsys: pytest.CaptureFixture[str]) -> None:
    write(dish_toml=LEEKS)
    assert checked(capsys) == (
        0,
        "1 recipe: nothing doubtful.\n"
        "No price book is among them, so what is not priced is not looked for.\n",
    )


def test_all_errors_are_told_not_only_the_first(capsys: pytest.CaptureFixture[str]) -> None:
    write(
        soup_toml="""\
name = "Soup"
serves = 4
lines = [
  "a glass of sherry",
  "200 g leeks",
  { line = "1-3 cup flour" },
  "1 10 oz package peas",
]
""",
        b_toml='name = "B"\nserves = 0\nlines = []\n',
        c_toml="lines = [\n",
        prices_csv=PRICE_HEAD
        + "leeks,AP,1 kg,x,EUR,no,2026-11-20\n"
        + "milk,AP,1 L,1.00,EUR,no,2026-11-20\n"
        + "eggs,AP,6,-1,EUR,no,2026-11-20\n",
        facts_csv="fact,food,kind,value,source\n"
        "own.a,leek,edible,0.5,own\nown.b,zurkle,edible,0.5 EP/AP,own\n",
    )
    # In place of each text only its place and code are compared: other tests hold the texts.
    assert [(place, code) for place, code, _ in finds(capsys)] == [
        ("b.toml:2:10", "recipe.serves"),
        ("c.toml", "recipe.syntax"),
        ("facts.csv:2", "fact.value"),
        ("facts.csv:3", "food.unknown"),
        ("prices.csv:2:15", "price.unreadable"),
        ("prices.csv:4:11", "price.negative"),
        ("soup.toml:4:6", "line.no_measure"),
        ("soup.toml:6:13", "amount.doubtful"),
        ("soup.toml:7:6", "line.two_numbers"),
    ]


def test_a_line_that_takes_from_a_base_is_no_error_beside_one(
    capsys: pytest.CaptureFixture[str],
) -> None:
    dish = """\
name = "Tray"
serves = 12
bases = { dough = "dough.toml" }
lines = [
  "3/4 of the dough",
  "rest of the dough, for the top",
  "2 tbps lemons",
  "half of the following",
]
"""
    base = 'name = "D"\nserves = 1\nmakes = "1 kg"\nlines = ["1 kg plain flour"]\n'
    write(tray_toml=dish, dough_toml=base)
    assert finds(capsys, "tray.toml") == [
        ("tray.toml:7:6", "unit.unknown", 'unknown unit "tbps"; understood so far: 2'),
        ("tray.toml:8:4", "line.refers", '"half of the following" refers to other lines'),
    ]
    # Where the base is wrong, only what any recipe refuses is told.
    write(dough_toml=base.replace("1 kg plain", "2 tbps"))
    assert [(place, code) for place, code, _ in finds(capsys, "tray.toml")] == [
        ("dough.toml:4:13", "unit.unknown"),
        ("tray.toml:7:6", "unit.unknown"),
    ]


def test_percentages_of_flour_are_no_errors_beside_one(
    capsys: pytest.CaptureFixture[str],
) -> None:
    write(
        loaf_toml="""\
name = "Loaf"
serves = 8
flour = "1 kg"
lines = [
  "100 % bread flour",
  "65 % water",
  "2 tbps olive oil",
  { line = "3 tbps malt" },
]
""",
    )
    assert finds(capsys) == [
        ("loaf.toml:7:6", "unit.unknown", 'unknown unit "tbps"; understood so far: 2'),
        ("loaf.toml:8:15", "unit.unknown", 'unknown unit "tbps"; understood so far: 3'),
    ]


def test_a_wrong_base_is_told_once_and_of_each_dish_that_needs_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    dish = 'name = "D"\nserves = 4\ntested_at = 4\nbases = { base = "base.toml" }\n'
    dish += 'lines = ["1 kg of the base"]\n'
    write(
        base_toml='name = "B"\nserves = 4\nlines = ["a glass of sherry"]\n',
        d_toml=dish,
        e_toml=dish,
    )
    wrong = '"glass" has no agreed size'
    assert finds(capsys) == [
        ("base.toml:3:13", "line.no_measure", wrong),
        ("d.toml", "line.no_measure", f"it cannot be made, since base.toml is wrong: {wrong}"),
        ("e.toml", "line.no_measure", f"it cannot be made, since base.toml is wrong: {wrong}"),
    ]
    # A base whose own file is not looked at is told of at the dish.
    base = 'name = "B"\nserves = 4\nmakes = "1 kg"\nlines = ["1 kg minced beef"]\n'
    write(base_toml=base)
    assert [(place, code) for place, code, _ in finds(capsys, "d.toml")] == [
        ("d.toml:4:19", "check.caution"),
    ]


def test_names_of_several_foods_are_an_error_with_the_choices(
    capsys: pytest.CaptureFixture[str],
) -> None:
    write(dish_toml=LEEKS.replace("leeks", "cornflour"))
    document = found(capsys)
    (find,) = document["files"][0]["finds"]
    assert find == {
        "error": True,
        "code": "food.ambiguous",
        "message": '"cornflour" means more than one food',
        "place": "dish.toml:4:17",
        "line": 4,
        "column": 17,
        "hint": "write one of: corn starch (GB), maize flour (US); or choose in the recipe: "
        'region = "GB", or names = { cornflour = "corn_starch" }',
    }


def test_an_item_with_a_name_of_several_foods(capsys: pytest.CaptureFixture[str]) -> None:
    rows = "leeks,AP,1 kg,2,EUR,no,2026-11-20\n" + "cornflour,AP,1 kg,2,EUR,no,2026-11-20\n"
    rows += "cornflour,AP,500 g,1,EUR,no,2026-11-20\n"
    write(prices_csv=PRICE_HEAD + rows)
    assert checked(capsys) == (
        0,
        """\
prices.csv
  prices.csv:3:1: "cornflour" means more than one food [check.several_foods]
      write one of: corn starch (GB), maize flour (US)

1 price book: 0 errors, 1 to check.
""",
    )


def test_books_by_semicolons_and_in_toml_are_checked_as_they_are_read(
    capsys: pytest.CaptureFixture[str],
) -> None:
    write(
        dish_toml=LEEKS.replace('"500 g leeks"', '"500 g leeks", "2 lemons", "1 L zurkle"'),
        preise_csv="item;sold_as;pack;price;currency;keeps;date\n"
        "leeks;AP;1,5 kg;2,10;EUR;no;2026-11-20\nleeks;AP;5 kg;-6,30;EUR;no;2026-11-20\n",
        shop_toml='[[prices]]\nitem = "lemons"\nsold_as = "AP"\npack = "6"\nprice = 1.50\n'
        'currency = "EUR"\nkeeps = false\ndate = "2026-11-20"\n\n'
        '[[prices]]\nitem = "lemons"\nsold_as = "raw"\npack = "10"\nprice = 2\nkeeps = true\n\n'
        '[[stock]]\nitem = "zurkle"\nstage = "AP"\namount = "much"\n',
        facts_csv="fact;food;kind;value;low\nown;zurkle;density;1,05 g/mL;1,02 g/mL\n",
        foods_csv="food;name\nzurkle;zurkle\n",
        names_csv="name;food;match\nZürkel;zurkle;same\n",
    )
    document = found(capsys)
    assert {file["file"]: file["kind"] for file in document["files"]} == {
        "dish.toml": "recipe",
        "facts.csv": "table of facts",
        "foods.csv": "table of foods",
        "names.csv": "table of names",
        "preise.csv": "price book",
        "shop.toml": "price book",
    }
    told = [
        (find["place"], find["code"], find["message"])
        for file in document["files"]
        for find in file["finds"]
        if find["code"] != "check.allergens"
    ]
    assert told == [
        ("dish.toml:4:38", "check.no_price", "zurkle: no price row is for zurkle"),
        ("preise.csv:3:15", "price.negative", "the price -6,30 is below zero"),
        ("shop.toml:12:12", "price.stage", '"raw" is no stage to sell at'),
        ("shop.toml:20:11", "price.pack", 'no amount is written in "much"'),
    ]


def test_a_pack_priced_twice_is_told_and_the_other_rows_count(
    capsys: pytest.CaptureFixture[str],
) -> None:
    twice = "leeks,AP,1 kg,2,EUR,no,2026-11-20\n" * 2
    write(dish_toml=LEEKS, prices_csv=PRICE_HEAD + twice)
    place = "prices.csv:2:1"
    assert finds(capsys) == [
        (
            "prices.csv:3:1",
            "price.duplicate",
            f"the pack 1 kg of leeks is priced twice, here and at {place}",
        )
    ]
    # Two books that price one pack are used one at a time.
    once = PRICE_HEAD + twice[: len(twice) // 2]
    write(prices_csv=once, others_csv=once)
    assert finds(capsys) == []


@pytest.mark.parametrize(
    ("name", "text", "code"),
    [
        ("week.toml", 'dishes = [{ recipe = "no.toml" }]\n', "file.unreadable"),
        ("week.toml", "dishes = []\n", "basket.no_dishes"),
        ("larder.csv", "item,stage,amount\nleeks,AP,much\n", "price.pack"),
        ("trials.csv", "trial,what,weight\n1,bougt,1 kg\n", "yield.what"),
        ("spoons.csv", "set,measure,size\nmine,mug,large\n", "amount.unreadable"),
        ("pans.csv", "pan,length,width\nmine,long,wide\n", "amount.unreadable"),
        ("foods.csv", "food,name\nleek,leek\n", "food.duplicate"),
        ("names.csv", "name,food,match\npoireau,zurkle,same\n", "food.unknown"),
        ("kept.toml", "scalepan_costing = 0\n", "sheet.version"),
        ("sheet.toml", "scalepan_sheet = 0\n", "sheet.version"),
        (
            "prices.csv",
            "item\tsold_as\tpack\tprice\tkeeps\nleeks\tAP\t1 kg\t2\tno\n",
            "price.column",
        ),
        ("prices.csv", "item;sold_as;pack;price;keeps\nleeks;AP;1.5 kg;2;no\n", "price.decimal"),
        ("prices.toml", 'prices = [{ item = "leeks", sold_as = "AP" }]\n', "price.column"),
        ("larder.toml", 'stock = [{ item = "leeks", stage = "AP" }]\n', "price.column"),
        ("facts.csv", "fact;food;kind;value\nown;leek;edible;0.5 EP/AP\n", "fact.decimal"),
    ],
)
def test_each_kind_of_file_is_known_and_read(
    name: str, text: str, code: str, capsys: pytest.CaptureFixture[str]
) -> None:
    Path(name).write_text(text, encoding="utf-8")
    document = found(capsys)
    assert [find["code"] for file in document["files"] for find in file["finds"]] == [code]
    assert document["files"][0]["kind"] is not None


def test_files_of_other_kinds_are_passed_over_and_refused_where_they_are_named(
    capsys: pytest.CaptureFixture[str],
) -> None:
    write(pyproject_toml="[project]\nname = 1\n", other_csv="a,b\n1,2\n", notes_md="# notes")
    assert checked(capsys) == (
        0,
        "Nothing to check here: no recipe, no price book, no table of your own.\n",
    )
    assert checked(capsys, "notes.md") == (
        1,
        "notes.md\n"
        "  notes.md: error: it is none of the files that are checked [file.kind]\n"
        "      recipes, dishes and what is kept are TOML; tables are CSV, prices and stock "
        "either\n\n"
        "1 file: 1 error, 0 to check.\n",
    )


def test_a_file_is_looked_at_once_however_often_it_is_named(
    capsys: pytest.CaptureFixture[str],
) -> None:
    write(dish_toml=LEEKS)
    Path("link.toml").symlink_to("dish.toml")
    assert len(found(capsys, ".", "dish.toml", "./dish.toml", "link.toml")["files"]) == 1
