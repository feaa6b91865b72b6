"""``scalepan write``: one file out of another. All prices are invented."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
import scalepan
from scalepan import quantity
from scalepan_command.start import main

PAGE = """<script type="application/ld+json">
{"@type": "Recipe", "name": "Ginger cake", "recipeYield": "8 servings",
 "recipeIngredient": ["2 cups plain flour", "a glass of sherry", "3 eggs"]}
</script>
"""
PRICES = "item,sold_as,pack,price,currency,keeps\neggs,AP,6,1.50,EUR,no\n"


@pytest.fixture(autouse=True)
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    Path("page.html").write_text(PAGE, encoding="utf-8")
    Path("prices.csv").write_text(PRICES, encoding="utf-8")
    return tmp_path


def said(capsys: pytest.CaptureFixture[str], *arguments: str, status: int = 0) -> list[str]:
    assert main(["write", *arguments]) == status
    out = capsys.readouterr()
    return (out.err if status else out.out).splitlines()


def test_a_page_becomes_a_recipe_a_page_and_a_workbook(capsys: pytest.CaptureFixture[str]) -> None:
    assert said(capsys, "page.html", "cake.toml", "--measures", "us", "--draft") == [
        "cake.toml: Ginger cake, 8 portions, 2 lines",
        "To check",
        '  - not read: a glass of sherry ("glass" has no agreed size)',
    ]
    assert said(capsys, "cake.toml", "cake.jsonld", "--portions", "20")[0] == (
        "cake.jsonld: Ginger cake, 20 portions, 2 lines"
    )
    # 2 cups and 3 eggs for 8: 5 cups and 7 1/2 eggs for 20.
    again = scalepan.read_json_ld("cake.jsonld", measures="us")
    assert [line.amount for line in again.lines] == [
        quantity("5 cup AP", measures="us"),
        quantity("7.5 piece AP"),
    ]
    pytest.importorskip("xlsxwriter")
    said(capsys, "cake.toml", "cake.xlsx")
    assert Path("cake.xlsx").read_bytes()[:2] == b"PK"


def test_json_and_back(capsys: pytest.CaptureFixture[str]) -> None:
    said(capsys, "page.html", "cake.toml", "--measures", "us", "--draft")
    said(capsys, "cake.toml", "cake.json")
    said(capsys, "cake.json", "again.toml")
    assert Path("again.toml").read_bytes() == Path("cake.toml").read_bytes()
    assert main(["write", "prices.csv", "prices.json", "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == {
        "schema": "scalepan/1",
        "written": "prices.json",
        "what": "a price book of 1 row",
        "to_check": [],
    }
    said(capsys, "prices.json", "again.csv")
    assert Path("again.csv").read_bytes().replace(b"\r\n", b"\n") == (
        b"item,sold_as,pack,price,keeps,currency\neggs,AP,6,1.50,no,EUR\n"
    )


def test_a_kept_costing_becomes_json(capsys: pytest.CaptureFixture[str]) -> None:
    Path("cake.toml").write_text('name = "Cake"\nserves = 4\nlines = ["3 eggs"]\n')
    assert main(["cost", "cake.toml", "--prices", "prices.csv", "--save", "kept.toml"]) == 0
    capsys.readouterr()
    assert said(capsys, "kept.toml", "kept.json") == ["kept.json: the costing of Cake, 4 portions"]
    kept = scalepan.from_json(Path("kept.json").read_text(encoding="utf-8"))
    assert kept.till == quantity("1.50 EUR")


def test_a_recipe_file_is_told_at_the_size_it_has(capsys: pytest.CaptureFixture[str]) -> None:
    Path("pot.toml").write_text('name = "Pot"\nserves = 4\nlines = ["3 eggs"]\n')
    forty = ["pot.json: Pot, 40 portions, 1 line"]
    assert said(capsys, "pot.toml", "pot.json", "--portions", "40") == forty
    assert said(capsys, "pot.json", "again.toml") == ["again.toml: Pot, 4 portions, 1 line"]
    assert Path("again.toml").read_bytes() == Path("pot.toml").read_bytes()


@pytest.mark.parametrize(
    ("arguments", "lines"),
    [
        (["page.html", "cake.toml", "--measures", "us"],
         ['scalepan: page.html:3:48: "glass" has no agreed size [line.no_measure]',
          "  write a weight, a volume or a count; or --draft, which makes remarks of lines that "
          "cannot be read"]),
        (["page.html", "cake.toml"],
         ["scalepan: page.html:3:26: which cup is meant is not stated [unit.which_measures]",
          "  --measures, one of: us 236.6 mL, imperial 284.1 mL, metric 250.0 mL, au 250.0 mL; or "
          "--draft, which makes remarks of lines that cannot be read; not read either: a glass of "
          "sherry"]),
        (["two.html", "cake.toml"],
         ["scalepan: two.html: more than one recipe is there [recipe.json_ld]",
          "  --name, one of: Ginger cake; Ginger loaf"]),
        (["cookies.html", "cake.toml"],
         ['scalepan: cookies.html:2:60: the yield "8 cookies" does not say one number of portions '
          "[recipe.yield]", "  say how many portions: --serves 4"]),
        (["prices.csv", "prices.jsonld"],
         ["scalepan: prices.jsonld: a price book of 1 row cannot be written in the form of this "
          "name [file.form]", "  write it to .toml, .csv, .xlsx, .json"]),
        (["pot.toml", "pot"],
         ["scalepan: pot: Pot, 4 portions, 1 line cannot be written in the form of this name "
          "[file.form]", "  write it to .toml, .jsonld, .xlsx, .json"]),
        (["pot.toml", "forty.toml", "--portions", "40"],
         ["scalepan: forty.toml: a recipe file has the size its lines are written for [file.form]",
          "  leave --portions out, or write it to .jsonld, .xlsx or .json"]),
        (["notes.txt", "cake.toml"],
         ["scalepan: notes.txt: the name of the source says no form [file.form]",
          "  it ends in .html, .jsonld, .json, .toml or .csv"]),
    ],
)  # fmt: skip
def test_what_cannot_be_written(
    arguments: list[str], lines: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    Path("notes.txt").write_text("2 eggs", encoding="utf-8")
    Path("pot.toml").write_text('name = "Pot"\nserves = 4\nlines = ["3 eggs"]\n')
    Path("two.html").write_text(PAGE + PAGE.replace("Ginger cake", "Ginger loaf"), encoding="utf-8")
    Path("cookies.html").write_text(PAGE.replace("servings", "cookies"), encoding="utf-8")
    assert said(capsys, *arguments, status=1) == lines
    assert not Path(arguments[1]).exists()


def test_a_price_book_becomes_toml_and_comes_back(capsys: pytest.CaptureFixture[str]) -> None:
    book = (
        "item,sold_as,pack,price,keeps,currency,shop,note,offer,measures\n"
        "eggs,AP,6,1.50,21 days,EUR,hill shop,by the door,3 for 4.00,\n"
        '"cream ""thick""",AP,1 pt,2.10,no,EUR,,,,imperial\n'
    )
    Path("book.csv").write_text(book, encoding="utf-8")
    assert said(capsys, "book.csv", "book.toml") == ["book.toml: a price book of 2 rows"]
    # Notes are no part of a price book.
    assert Path("book.toml").read_text(encoding="utf-8") == (
        "prices = [\n"
        '  { item = "eggs", sold_as = "AP", pack = "6", price = "1.50", keeps = "21 days", '
        'currency = "EUR", shop = "hill shop", offer = "3 for 4.00" },\n'
        '  { item = "cream \\"thick\\"", sold_as = "AP", pack = "1 pt", price = "2.10", '
        'keeps = "no", currency = "EUR", measures = "imperial" },\n'
        "]\n"
    )
    assert said(capsys, "book.toml", "again.csv") == ["again.csv: a price book of 2 rows"]
    assert Path("again.csv").read_bytes().replace(b"\r\n", b"\n").decode() == (
        "item,sold_as,pack,price,keeps,currency,shop,offer,measures\n"
        "eggs,AP,6,1.50,21 days,EUR,hill shop,3 for 4.00,\n"
        '"cream ""thick""",AP,1 pt,2.10,no,EUR,,,imperial\n'
    )
    larder = scalepan.parse_stock("item,stage,amount,value,currency\neggs,AP,5,1.25,EUR\n")
    scalepan.write_stock(larder, "larder.TOML")
    assert Path("larder.TOML").read_text(encoding="utf-8") == (
        'stock = [\n  { item = "eggs", stage = "AP", amount = "5", value = "1.25", '
        'currency = "EUR" },\n]\n'
    )
    assert scalepan.read_stock("larder.TOML").items[0].row == {
        **larder.items[0].row,
        "at": "larder.TOML:2:13",
    }


def test_a_file_that_is_there_is_kept(capsys: pytest.CaptureFixture[str]) -> None:
    mine = '# By hand.\nname = "Cake"\nserves = 4\nlines = ["3 eggs"]\n'
    Path("cake.toml").write_text(mine, encoding="utf-8")
    arguments = ("page.html", "cake.toml", "--measures", "us", "--draft")
    assert said(capsys, *arguments, status=1) == [
        "scalepan: cake.toml: the file is there already, so nothing is written [file.exists]",
        "  give another name, or --overwrite",
    ]
    assert Path("cake.toml").read_text(encoding="utf-8") == mine
    assert said(capsys, *arguments, "--overwrite")[0] == (
        "cake.toml: Ginger cake, 8 portions, 2 lines"
    )
    assert "By hand" not in Path("cake.toml").read_text(encoding="utf-8")
    # A link to no file is there too.
    Path("gone.json").symlink_to("elsewhere.json")
    assert said(capsys, "prices.csv", "gone.json", status=1)[0] == (
        "scalepan: gone.json: the file is there already, so nothing is written [file.exists]"
    )
