"""Errors in Python: every code has a class of its own subject, every error can be sent on."""

from __future__ import annotations

import copy
import pickle
import re
from pathlib import Path

import pytest
import scalepan
from scalepan.errors import CommandError, make_error

ROOT = Path(__file__).resolve().parents[2]
SUFFIXES = {".cpp", ".hpp", ".py"}

# Codes stand in quotes, in calls of fail, fail_at, fail_dimensions, make_error or an error class.
CALL = re.compile(
    r"\b(?:fail|fail_at|fail_dimensions|expect_same_dimension|make_error|_error|[A-Z]\w*Error)"
    r'\([^";]{0,80}"([a-z]+\.[a-z_]+)"'
)
# Tables of any subject share a reader, which puts the subject in front of its codes.
SUBJECT = re.compile(r'\bColumns\(\s*"([a-z]+)"')
PART = re.compile(r'\bcolumns\.error\(\s*"([a-z_]+)"|\.subject\}\.([a-z_]+)"')


def codes() -> dict[str, str]:
    """Every code with a file that uses it."""
    found: dict[str, str] = {}
    subjects: set[str] = set()
    parts: set[str] = set()
    for folder in (ROOT / "cpp", ROOT / "python"):
        for path in sorted(folder.rglob("*")):
            if path.suffix in SUFFIXES:
                text = path.read_text(encoding="utf-8")
                found |= dict.fromkeys(CALL.findall(text), str(path.relative_to(ROOT)))
                subjects |= set(SUBJECT.findall(text))
                parts |= {a or b for a, b in PART.findall(text)}
    tables = {f"{subject}.{part}" for subject in subjects for part in parts}
    return found | dict.fromkeys(tables, "a table")


CODES = codes()


def test_the_search_finds_codes_of_every_layer() -> None:
    expected = {
        "number.float",
        "number.division_by_zero",
        "unit.unknown",
        "quantity.add",
        "quantity.compare",
        "quantity.convert",
        "food.ambiguous",
        "convert.no_fact",
        "price.negative",
        "price.column",
        "cover.dimension",
        "recipe.syntax",
        "line.no_food",
        "fact.column",
        "rule.unit",
        "cost.stage",
        "why.unknown_cell",
        "file.unreadable",
    }
    assert expected <= set(CODES)


@pytest.mark.parametrize("code", sorted(CODES))
def test_every_code_has_a_class_of_its_subject(code: str) -> None:
    error = make_error(code, "message")
    assert type(error) is not scalepan.Error, CODES[code]
    assert isinstance(error, scalepan.Error)


@pytest.mark.parametrize(
    "kind",
    [
        scalepan.ArgumentError,
        CommandError,
        scalepan.CostError,
        scalepan.FileError,
        scalepan.FoodError,
        scalepan.MeasureError,
        scalepan.NumberError,
        scalepan.PlotError,
        scalepan.PriceError,
        scalepan.RecipeError,
        scalepan.SheetError,
    ],
)
def test_every_class_is_ours_and_has_codes(kind: type[scalepan.Error]) -> None:
    assert issubclass(kind, scalepan.Error)
    assert [code for code in CODES if type(make_error(code, "")) is kind]


def test_an_error_tells_place_message_and_hint() -> None:
    error = make_error("recipe.serves", "what is wrong", "what to do", "pot.toml", 4, 10)
    assert str(error) == "pot.toml:4:10: what is wrong (what to do)"
    assert error.place == "pot.toml:4:10"


@pytest.mark.parametrize(
    ("file", "line", "column", "cell", "place"),
    [
        ("", 0, 0, "", ""),
        ("pot.toml", 0, 0, "", "pot.toml"),
        ("pot.toml", 4, 0, "", "pot.toml:4"),
        ("", 4, 10, "", "line 4:10"),
        ("", 4, 0, "", "line 4"),
        ("pot.toml", 4, 10, "leeks.buy", "leeks.buy"),
        ("", 0, 15, "leeks.buy", "leeks.buy:15"),
    ],
)
def test_places(file: str, line: int, column: int, cell: str, place: str) -> None:
    error = make_error("recipe.serves", "wrong", "", file, line, column, cell)
    assert error.place == place
    assert str(error) == (f"{place}: wrong" if place else "wrong")


def from_the_core() -> scalepan.Error:
    with pytest.raises(scalepan.MeasureError) as caught:
        scalepan.quantity("5 tbps")
    return caught.value


def from_a_file() -> scalepan.Error:
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe("][", file="pot.toml")
    return caught.value


@pytest.mark.parametrize("error", [from_the_core(), from_a_file()], ids=["core", "file"])
def test_errors_survive_pickling_and_copying(error: scalepan.Error) -> None:
    fields = ("code", "message", "hint", "file", "line", "column", "cell")
    for twin in (pickle.loads(pickle.dumps(error)), copy.copy(error), copy.deepcopy(error)):
        assert type(twin) is type(error)
        assert [getattr(twin, name) for name in fields] == [getattr(error, name) for name in fields]
        assert str(twin) == str(error)


def test_errors_of_the_core_chain_nothing_foreign() -> None:
    error = from_the_core()
    assert error.__cause__ is None
    assert error.__context__ is None
