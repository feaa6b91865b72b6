"""Errors in Python: every code has a class of its own subject, every error can be sent on."""

from __future__ import annotations

import copy
import pickle

import pytest
import scalepan
from error_codes import codes
from scalepan.errors import CommandError, make_error

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
