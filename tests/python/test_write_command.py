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
          "  write a weight, a volume or a count; or have another line read: replace={\"a glass of "
          'sherry": "..."}']),
        (["prices.csv", "prices.jsonld"],
         ["scalepan: prices.jsonld: a price book of 1 row cannot be written in the form of this "
          "name [file.form]", "  write it to .csv, .xlsx, .json"]),
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
    arguments = [*arguments, *(["--measures", "us"] if arguments[0] == "page.html" else [])]
    assert said(capsys, *arguments, status=1) == lines
    assert not Path(arguments[1]).exists()
