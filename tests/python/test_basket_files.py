"""Files of dishes, and the command that buys them together. Dishes and prices are invented."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from scalepan_command.start import main

BROTH = """\
name = "Barley broth"
serves = 4
tested_at = [4]
makes = "2 kg"
tray = "GN 1/2 65"
bases = { stock = "stock.toml" }
lines = ["200 g pearl barley", "300 g leeks, trimmed", "800 g stock", "2 eggs"]
"""
PIE = """\
name = "Leek pie"
serves = 6
bases = { stock = "stock.toml" }
lines = ["900 g leeks, trimmed", "3 eggs", "200 g stock"]
"""
STOCK = """\
name = "Onion stock"
serves = 4
makes = "1 kg"
lines = ["600 g onions"]
"""
PRICES = """\
item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.10,EUR,no
pearl barley,AP,500 g,0.95,EUR,yes
eggs,AP,6,1.50,EUR,yes
onions,AP,1 kg,0.90,EUR,yes
"""
WEEK = """\
dishes = [
  { recipe = "broth.toml", portions = 12 },
  { recipe = "pie.toml", portions = 30, name = "Pie for the late watch" },
  { recipe = "pie.toml" },
]
"""


@pytest.fixture
def kitchen(tmp_path: Path) -> Path:
    files = {"broth": BROTH, "pie": PIE, "stock": STOCK, "week": WEEK}
    for name, text in files.items():
        (tmp_path / f"{name}.toml").write_text(text, encoding="utf-8")
    (tmp_path / "prices.csv").write_text(PRICES, encoding="utf-8")
    return tmp_path


def test_a_file_says_which_dishes_at_which_sizes(kitchen: Path) -> None:
    dishes = scalepan.read_dishes(kitchen / "week.toml")
    assert [(each.name, each.recipe.name, each.recipe.portions) for each in dishes] == [
        ("", "Barley broth", 12),
        ("Pie for the late watch", "Leek pie", 30),
        ("", "Leek pie", 6),
    ]
    bought = scalepan.basket(dishes, scalepan.read_prices(kitchen / "prices.csv"))
    assert [each.id for each in bought.dishes] == [
        "barley_broth",
        "pie_for_the_late_watch",
        "leek_pie",
    ]
    # 2.4 kg of stock for the broth and 1.2 kg for the pies, from 600 g of onions a kilogram.
    onions = next(row for row in bought.shopping if row.item == "onions")
    assert onions.need.to("g").value == 2160
    assert [each.need.to("g").value for each in onions.dishes] == [1440, 600, 120]
    assert onions.packs == [(3, "1 kg")]


@pytest.mark.parametrize(
    ("size", "portions"),
    [
        ("portions = 10", 10),
        ('portions = "2 1/2"', Fraction(5, 2)),
        ("portions = 10, spare = 2", 10),
        ('portions = 10, serving_loss = "5 %"', 10),
        ("factor = 2.5", 10),
        ('batch = "12 kg"', 24),
        ('stock = { eggs = "9" }', 18),
        ('tray = "GN 1/1 65", trays = 2, by = "area"', None),
        ('tray = "GN 1/1 65"', None),
    ],
)
def test_every_way_to_say_a_size(kitchen: Path, size: str, portions: Fraction | int | None) -> None:
    text = f'dishes = [{{ recipe = "broth.toml", {size} }}]'
    (dish,) = scalepan.parse_dishes(text, file=str(kitchen / "week.toml"))
    broth = scalepan.read_recipe(kitchen / "broth.toml")
    if portions is None:
        count = 2 if "trays" in size else 1
        portions = scalepan.fill_trays(broth, "GN 1/1 65", count).portions
    assert dish.recipe.portions == portions
    if "spare" in size:
        assert dish.recipe.made == 12


@pytest.mark.parametrize(
    ("text", "code", "message"),
    [
        (
            "dinners = []",
            "recipe.unknown_key",
            'week.toml:1:11: unknown key "dinners" (keys: dishes)',
        ),
        (
            "",
            "recipe.missing",
            "week.toml: the file has no dishes "
            '(dishes = [{ recipe = "broth.toml", portions = 40 }])',
        ),
        (
            "dishes = []",
            "basket.no_dishes",
            "week.toml:1:10: the file has no dishes "
            '(dishes = [{ recipe = "broth.toml", portions = 40 }])',
        ),
        (
            'dishes = "broth.toml"',
            "recipe.type",
            "week.toml:1:11: dishes is not a list "
            '(dishes = [{ recipe = "broth.toml", portions = 40 }])',
        ),
        (
            'dishes = [\n  "broth.toml",\n]',
            "recipe.type",
            "week.toml:2:4: dishes 1 is not a table "
            '(dishes = [{ recipe = "broth.toml", portions = 40 }])',
        ),
        (
            "dishes = [\n  { portions = 3 },\n]",
            "recipe.missing",
            "week.toml:2:3: a dish has no recipe "
            '(dishes = [{ recipe = "broth.toml", portions = 40 }])',
        ),
        (
            'dishes = [\n  { recipe = "broth.toml", people = 3 },\n]',
            "recipe.unknown_key",
            'week.toml:2:37: unknown key "people" (keys: recipe, name, portions, factor, batch, '
            "raw_batch, stock, tray, portion_size, spare, serving_loss, trays, by)",
        ),
        (
            'dishes = [\n  { recipe = "broth.toml", portions = 3, factor = 2 },\n]',
            "recipe.size",
            "week.toml:2:51: a size is given in two ways, by portions and by factor "
            "(write one of the two)",
        ),
        (
            'dishes = [\n  { recipe = "broth.toml", factor = 3, spare = 2 },\n]',
            "recipe.size",
            "week.toml:2:48: spare goes with portions, but the size is given by factor "
            "(write portions beside it)",
        ),
        (
            'dishes = [\n  { recipe = "broth.toml", by = "area" },\n]',
            "recipe.size",
            "week.toml:2:34: by goes with tray, but that is not given (write tray beside it)",
        ),
        (
            'dishes = [\n  { recipe = "broth.toml", portions = 0 },\n]',
            "recipe.portions",
            "week.toml:2:39: a recipe cannot be made for 0 portions "
            "(the number of portions must be above zero)",
        ),
        (
            'dishes = [\n  { recipe = "broth.toml", portions = true },\n]',
            "recipe.type",
            "week.toml:2:39: dishes 1 portions is not a number",
        ),
        (
            'dishes = [\n  { recipe = "broth.toml", stock = "9 eggs" },\n]',
            "recipe.type",
            'week.toml:2:37: stock is not a table (stock = { eggs = "30" })',
        ),
        (
            'dishes = [\n  { recipe = "soup.toml", portions = 3 },\n]',
            "file.unreadable",
            "week.toml:2:15: the recipe cannot be read: cannot read the file: "
            "No such file or directory (soup.toml) (looked in {here})",
        ),
        ("dishes = [", "recipe.syntax", "week.toml: not TOML: Invalid value"),
    ],
)
def test_files_that_are_wrong(
    kitchen: Path, monkeypatch: pytest.MonkeyPatch, text: str, code: str, message: str
) -> None:
    monkeypatch.chdir(kitchen)
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_dishes(text, file="week.toml")
    assert (caught.value.code, str(caught.value)) == (code, message.replace("{here}", str(kitchen)))


def test_an_error_in_a_recipe_stands_in_its_own_file(
    kitchen: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(kitchen)
    Path("broth.toml").write_text('name = "x"\nserves = 0\nlines = ["1 kg leeks"]')
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.read_dishes("week.toml")
    assert caught.value.place == "broth.toml:2:10"


def test_two_dishes_of_one_name_are_told_where(
    kitchen: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(kitchen)
    text = 'dishes = [\n  { recipe = "pie.toml" },\n  { recipe = "pie.toml", portions = 9 },\n]'
    dishes = scalepan.parse_dishes(text, file="week.toml")
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.basket(dishes, scalepan.read_prices("prices.csv"))
    assert (caught.value.code, str(caught.value)) == (
        "basket.name",
        'week.toml:3:3: two dishes have the id leek_pie: "Leek pie" and "Leek pie" '
        "(give one of them another name)",
    )


def test_the_command_prints_exact_figures(
    kitchen: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    week, book = str(kitchen / "week.toml"), str(kitchen / "prices.csv")
    assert main(["basket", week, "--prices", book, "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    bought = scalepan.basket(scalepan.read_dishes(week), scalepan.read_prices(book))
    assert Fraction(document["till"]["value"]) == bought.till.value
    assert Fraction(document["saving"]["till"]["value"]) == bought.saving.value
    assert [each["name"] for each in document["dishes"]] == [each.name for each in bought.dishes]
    for cost in ("till", "used", "thrown", "borne"):
        assert Fraction(document["costs"][cost]["value"]) == sum(
            Fraction(each["costs"][cost]["value"]) for each in document["dishes"]
        )
    (barley,) = (row for row in document["shopping"] if row["item"] == "pearl barley")
    assert [each["dish"] for each in barley["dishes"]] == ["Barley broth"]
    assert document["unpriced"] == []
    assert document["at_least"] is False


def test_the_command_prints_a_page_of_80_columns(
    kitchen: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    assert (
        main(["basket", str(kitchen / "week.toml"), "--prices", str(kitchen / "prices.csv")]) == 0
    )
    printed = capsys.readouterr().out
    assert max(len(line) for line in printed.splitlines()) <= 80
    heads = [line for line in printed.splitlines() if line and not line.startswith(" ")]
    assert heads == ["3 dishes, in EUR", "To buy", "Costs", "To check", "Cautions"]
    # Leeks, of which SR28 11246 has 44 % edible: (900 + 4500 + 900) / 0.44 g = 14.32 kg.
    leeks = next(line for line in printed.splitlines() if line.startswith("  leeks"))
    assert leeks.split()[1:7] == ["≈", "14.32", "kg", "AP", "15", "x"]
    assert "till apart" in printed
    assert "Allergens on the EU list: eggs (eggs)." in " ".join(printed.split())


def test_the_command_says_what_is_wrong(
    kitchen: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(kitchen)
    Path("week.toml").write_text('dishes = [{ recipe = "broth.toml", portions = "x" }]')
    assert main(["basket", "week.toml", "--prices", "prices.csv"]) == 1
    assert capsys.readouterr().err.startswith("scalepan: week.toml:1:48: ")


def test_the_command_says_which_totals_are_too_low(
    kitchen: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book = kitchen / "prices.csv"
    book.write_text(PRICES.replace("pearl barley,AP", "rice,AP"), encoding="utf-8")
    assert main(["basket", str(kitchen / "week.toml"), "--prices", str(book)]) == 0
    text = capsys.readouterr().out
    assert "  At least, since not all is priced: Barley broth.\n" in text
    assert "  not priced: barley_broth.pearl_barley\n" in text
    assert "  till at least " in text


def test_the_command_tells_why(kitchen: Path, capsys: pytest.CaptureFixture[str]) -> None:
    files = [str(kitchen / "week.toml"), "--prices", str(kitchen / "prices.csv")]
    assert main(["basket", *files, "--why", "leek_pie.eggs.buy"]) == 0
    assert capsys.readouterr().out.startswith("leek_pie.eggs.buy = 3 piece AP\n")


def test_prices_without_a_currency_have_none_in_the_title(
    kitchen: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    book = kitchen / "prices.csv"
    book.write_text(PRICES.replace(",EUR,", ",,"), encoding="utf-8")
    assert main(["basket", str(kitchen / "week.toml"), "--prices", str(book)]) == 0
    assert capsys.readouterr().out.startswith("3 dishes\n")
