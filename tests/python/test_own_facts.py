"""Facts of your own, laid over the bundled ones; shares and weights here are invented."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
import scalepan

HEADER = "fact,food,kind,value,source\n"


def facts_file(folder: Path, rows: str) -> Path:
    path = folder / "own.csv"
    path.write_text(rows, encoding="utf-8")
    return path


def test_an_own_share_goes_before_the_bundled_one(tmp_path: Path) -> None:
    path = facts_file(tmp_path, HEADER + 'own.leeks,leeks,edible,0.50 EP/AP,"own trim, 3 cases"\n')
    catalog = scalepan.read_facts(path)
    whole = scalepan.convert("5 kg EP", "kg AP", food="leeks", catalog=catalog)
    assert whole.value == Fraction(5) / Fraction(1, 2)
    assert [(fact.id, fact.source) for fact in whole.facts] == [("own.leeks", "own trim, 3 cases")]
    # The bundled catalogue is left as it was: USDA SR28 11246, refuse 56 %.
    bundled = scalepan.convert("5 kg EP", "kg AP", food="leeks")
    assert bundled.value == Fraction(5) / Fraction(44, 100)


def test_an_own_piece_weight_takes_its_stages_from_its_kind() -> None:
    catalog = scalepan.catalog_with(
        [{"fact": "own.bulb", "food": "fennel", "kind": "piece", "value": "300 g EP/(piece AP)"}]
    )
    pieces = scalepan.convert("900 g EP", "piece", food="fennel", catalog=catalog)
    assert pieces.value == 3


def test_a_whole_piece_weighed_in_the_kitchen_goes_before_a_peeled_one_of_a_table() -> None:
    """USDA SR28 11282: a medium onion weighs 110 g peeled, and 10 % of a whole one is refuse."""
    row = {"fact": "own.onion", "food": "onion", "kind": "piece", "size": "medium",
           "from_stage": "AP", "to_stage": "AP", "value": "150 g/piece"}  # fmt: skip
    catalog = scalepan.catalog_with([row])
    peeled = scalepan.convert("4 piece", "g EP", food="onion", size="medium", catalog=catalog)
    assert peeled.value == 4 * 150 * Fraction(90, 100)
    assert [fact.id for fact in peeled.facts] == ["own.onion", "onion.edible"]
    bundled = scalepan.convert("4 piece", "g EP", food="onion", size="medium")
    assert bundled.value == 4 * 110


@pytest.mark.parametrize(
    ("rows", "said"),
    [
        ("", "own.csv: the file is empty"),
        (HEADER, "own.csv: no rows stand below the header"),
        ("fact,food,kind\na,leeks,edible\n", "own.csv:1: the header has no column value"),
        ("fact,food,kind,value,sauce\n", 'own.csv:1:22: unknown column "sauce"'),
        (
            HEADER + "own,leeks,edible,0.5 EP/AP\n",
            "own.csv:2: the row has 4 fields, the header 5",
        ),
        (
            HEADER + "own,leaks,edible,0.5 EP/AP,x\n",
            "own.csv:2: the fact own is about an unknown food leaks",
        ),
        (
            HEADER + "own,leeks,edibel,0.5 EP/AP,x\n",
            'own.csv:2: no kind of fact is called "edibel"',
        ),
        (
            HEADER + "own,leeks,edible,0.5 g,x\n",
            "own.csv:2: fact own: an edible share is in EP/AP, but 0.5 g is written",
        ),
        (
            HEADER + "own,leeks,edible,1/0 EP/AP,x\n",
            "own.csv:2: the denominator of a fraction is zero",
        ),
        (
            HEADER + "leek.edible,leeks,edible,0.5 EP/AP,x\n",
            "own.csv:2: the fact leek.edible is there twice",
        ),
    ],
)
def test_what_is_wrong_with_a_facts_file_is_said_with_its_place(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, rows: str, said: str
) -> None:
    facts_file(tmp_path, rows)
    monkeypatch.chdir(tmp_path)
    with pytest.raises(scalepan.Error) as caught:
        scalepan.read_facts("own.csv")
    error = caught.value
    assert f"{error.place}: {error.message}" == said


def test_tables_parted_by_semicolons_are_read_as_price_books_are(tmp_path: Path) -> None:
    """Shares and weights are invented."""
    tables = {
        "own.csv": "fact;food;kind;size;value;low;high;source\n"
        "own.oca;ocas;piece;;33,5 g EP/(piece AP);30,25 g EP/(piece AP);36 g EP/(piece AP);a, b\n",
        "foods.csv": 'food;plural;allergens_eu\noca;ocas;"milk;eggs"\n',
        "names.csv": "name;food;match\nNew Zealand yam;oca;same\n",
    }
    for name, text in tables.items():
        (tmp_path / name).write_text(text, encoding="utf-8")
    catalog = scalepan.read_facts(
        tmp_path / "own.csv", foods=tmp_path / "foods.csv", names=tmp_path / "names.csv"
    )
    (fact,) = catalog.facts("New Zealand yam")
    assert (fact.value, fact.low, fact.high) == (
        scalepan.quantity("67/2 g EP/(piece AP)"),
        scalepan.quantity("121/4 g EP/(piece AP)"),
        scalepan.quantity("36 g EP/(piece AP)"),
    )
    assert fact.source == "a, b"
    (food,) = [row for row in catalog.food_rows if row[0][0] == "oca"]
    assert food[1] == ["milk", "eggs"]


def test_a_point_in_a_fact_of_such_a_table_is_refused(tmp_path: Path) -> None:
    path = tmp_path / "own.csv"
    path.write_text("fact;food;kind;value\nown;leek;edible;0.5 EP/AP\n", encoding="utf-8")
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.read_facts(path)
    assert str(caught.value) == (
        f'{path}:2:17: "0.5 EP/AP" has a decimal point, but a file with semicolons has decimal '
        'commas (write "0,5 EP/AP", or separate the fields by commas)'
    )
