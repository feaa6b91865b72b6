"""Own facts, foods and names as rows, data frames and files; figures here are invented."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import scalepan

FACT = {"fact": "own.leek", "food": "leeks", "kind": "edible", "value": "0.50 EP/AP"}
NAN = float("nan")


class ToDictFrame:
    """As a data frame that hands out records when asked for them."""

    def __init__(self, rows: list[dict[str, Any]]) -> None:
        self.rows = rows

    def to_dict(self, orient: str) -> list[dict[str, Any]]:
        assert orient == "records"
        return self.rows


class ToDictsFrame(ToDictFrame):
    """As a data frame that lists its rows by default."""

    def to_dicts(self) -> list[dict[str, Any]]:
        return self.rows


class ToPylistFrame(ToDictFrame):
    """As an Arrow table."""

    def to_pylist(self) -> list[dict[str, Any]]:
        return self.rows


class NAType:
    """A missing value that refuses to say whether it equals itself."""

    def __ne__(self, other: object) -> bool:
        raise TypeError("boolean value of NA is ambiguous")


def edible_share(catalog: scalepan.Catalog, food: str = "leek") -> Fraction:
    return scalepan.convert("1 kg AP", "kg EP", food=food, catalog=catalog).value


@pytest.mark.parametrize("table", [list, tuple, iter, ToDictFrame, ToDictsFrame, ToPylistFrame])
def test_rows_come_from_mappings_and_frames(table: Any) -> None:
    assert edible_share(scalepan.catalog_with(table([FACT]))) == Fraction(1, 2)


@pytest.mark.parametrize(
    "blank",
    [None, NAN, Decimal("NaN"), NAType(), ""],
    ids=("none", "float", "decimal", "table", "empty"),
)
def test_missing_cells_are_blank(blank: object) -> None:
    row = {**FACT, "state": blank, "low": blank, "high": blank, "source": blank}
    assert edible_share(scalepan.catalog_with([row])) == Fraction(1, 2)


def test_exact_numbers_are_cells_too() -> None:
    """A number without a unit fits no fact, but is read."""
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.catalog_with([{**FACT, "value": Fraction(1, 2)}])
    assert str(caught.value) == (
        "row 1 of the fact table: fact own.leek: an edible share is in EP/AP, but 0.5 is written "
        "(write 0.5 EP/AP)"
    )


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        (
            [{**FACT, "value": 0.1 + 0.2}],
            "fact.float: row 1 of the fact table: value is the float 0.30000000000000004, which is "
            'no exact figure (write it as text with its unit, such as "0.50 EP/AP")',
        ),
        (
            [FACT, {**FACT, "fact": True}],
            "fact.cell: row 2 of the fact table: fact is of the type bool, but a text belongs "
            "there",
        ),
        (
            [{**FACT, "sauce": "x"}],
            'fact.column: row 1 of the fact table: unknown column "sauce" (columns: fact, food, '
            "kind, value; also state, size, from_stage, to_stage, low, high, source)",
        ),
        (
            [{"fact": "own", "food": "leek", "kind": "edible"}],
            "fact.column: row 1 of the fact table: the column value is missing or blank (columns: "
            "fact, food, kind, value; also state, size, from_stage, to_stage, low, high, source)",
        ),
        (
            "own.csv",
            "fact.table: rows belong here, but a str is given (a file is read by "
            'read_facts("own.csv"))',
        ),
        (
            [1],
            "fact.table: rows belong here, but a list is given (give mappings by column, or a data "
            "frame)",
        ),
        (
            [FACT, {**FACT, "fact": "own.other"}],
            "fact.duplicate: row 2 of the fact table: the facts own.leek and own.other say the "
            "same thing (leave one of them out)",
        ),
        (
            [{**FACT, "food": "leks"}],
            "food.unknown: row 1 of the fact table: the fact own.leek is about an unknown food "
            "leks (nearest: leeks, elk, leek; a food of your own needs a table with a column food: "
            "--foods FILE, or foods=)",
        ),
    ],
)
def test_what_is_wrong_with_a_row_is_said(rows: Any, said: str) -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.catalog_with(rows)
    assert f"{caught.value.code}: {caught.value}" == said


def test_an_own_food_has_names_facts_and_defaults() -> None:
    catalog = scalepan.catalog_with(
        [
            {
                "fact": "own.oca",
                "food": "oca",
                "kind": "piece",
                "size": "small",
                "value": "30 g EP/(piece AP)",
            },
            {
                "fact": "own.oca.edible",
                "food": "New Zealand yam",
                "kind": "edible",
                "value": "0.9 EP/AP",
            },
        ],
        foods=[{"food": "oca", "plural": "ocas", "default_size": "small"}],
        names=[{"name": "New Zealand yam", "region": "NZ", "food": "oca"}],
    )
    assert scalepan.convert("3 piece", "g EP", food="ocas", catalog=catalog).value == 90
    assert edible_share(catalog, "new zealand yam") == Fraction(9, 10)
    assert scalepan.bundled_catalog().food_of("oca") is None


def test_tables_are_laid_one_over_the_other() -> None:
    first = scalepan.catalog_with(foods=[{"food": "oca"}])
    second = scalepan.catalog_with([{**FACT, "food": "oca"}], catalog=first)
    assert edible_share(second, "oca") == Fraction(1, 2)


@pytest.mark.parametrize(
    ("tables", "said"),
    [
        (
            {"foods": [{"food": "leek"}]},
            "food.duplicate: row 1 of the food table: the food leek is there twice",
        ),
        (
            {"names": [{"name": "poireau", "food": "leke"}]},
            'food.unknown: row 1 of the name table: the name "poireau" belongs to an unknown food '
            "leke (nearest: leek, elk, leeks; a food of your own needs a table with a column food: "
            "--foods FILE, or foods=)",
        ),
        (
            {"names": [{"name": "poireau", "food": "leek", "match": "nearly"}]},
            'name.match: row 1 of the name table: "nearly" is no match (write same or near)',
        ),
        (
            {"prefer": ["carrot.edible.cards"]},
            'fact.unknown: no fact is called "carrot.edible.cards" (nearest: carrot.edible.afrs)',
        ),
    ],
)
def test_what_is_wrong_with_foods_and_names_is_said(tables: dict[str, Any], said: str) -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.catalog_with(**tables)
    assert f"{caught.value.code}: {caught.value}" == said


def written(folder: Path, name: str, text: str) -> Path:
    path = folder / name
    path.write_text(text, encoding="utf-8")
    return path


def test_foods_and_names_come_from_files_too(tmp_path: Path) -> None:
    catalog = scalepan.read_facts(
        written(tmp_path, "facts.csv", "fact,food,kind,value\nown,yam,edible,0.9 EP/AP\n"),
        foods=written(tmp_path, "foods.csv", "food,allergens_eu\noca,\n"),
        names=written(tmp_path, "names.csv", "name,food,match\nyam,oca,near\n"),
    )
    assert edible_share(catalog, "oca") == Fraction(9, 10)


def test_allergens_that_nobody_told_are_not_known() -> None:
    """A blank list is no word about allergens; ``none`` is one."""
    foods = [{"food": "oca"}, {"food": "xylk", "allergens_eu": "none", "allergens_us": "none"}]
    catalog = scalepan.catalog_with(foods=foods)
    dish = scalepan.parse_recipe(
        'name = "x"\nserves = 4\nlines = ["1 kg oca", "1 kg xylk"]', catalog=catalog
    )
    label = scalepan.label(dish)
    assert (label.unknown, label.allergens_eu, label.allergens_us) == (["oca"], [], [])
    book = scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\noca,AP,1 kg,1,EUR,no\n")
    assert any(
        text.startswith("Allergens on the EU list: check the pack (oca). On the US list: check the")
        for text, _, _ in scalepan.cost(dish, book).cautions
    )
    again = scalepan.from_json(scalepan.to_json(catalog))
    assert again == catalog


@pytest.mark.parametrize(
    ("foods", "said"),
    [
        ("food\nleek\n", "foods.csv:2: the food leek is there twice"),
        (
            "foods\nleek\n",
            "foods.csv:1: the header has no column food (columns: food; also name, plural, "
            "default_state, default_size, allergens_eu, allergens_us, cautions)",
        ),
    ],
)
def test_what_is_wrong_with_a_foods_file_is_said_with_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, foods: str, said: str
) -> None:
    written(tmp_path, "foods.csv", foods)
    monkeypatch.chdir(tmp_path)
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.read_facts(foods="foods.csv")
    assert str(caught.value) == said
