"""Slips in a call are told in one short error with the way to write it."""

from __future__ import annotations

import inspect
import pickle
from pathlib import Path
from typing import TYPE_CHECKING, Any

import pytest
import scalepan
from scalepan import _core

if TYPE_CHECKING:
    from collections.abc import Callable

POT = scalepan.parse_recipe('name = "Pot"\nserves = 4\nlines = ["500 g leeks"]', file="pot.toml")
BOOK = scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2.10,EUR,no\n")
COSTING = scalepan.cost(POT, BOOK)
FILLED_WITH = ("add_food", "add_name", "add_fact", "add_release", "prefer", "choose", "part")
any_way: Any = scalepan  # calls that a type checker refuses


@pytest.mark.parametrize(
    ("call", "code", "told"),
    [
        (lambda: POT.scale(40), "by_name",
         "scale() takes its arguments by name, but is given 1 (write portions=40)"),
        (lambda: POT.scale(portion=40), "unknown",
         "scale() has no argument portion (write portions=40)"),
        (lambda: COSTING.override("leeks.edible", "0.75"), "missing",
         'override() needs why (say why="own trim, 3 cases")'),
        (lambda: COSTING.override("leeks.edible", "0.75", "own trim"), "by_name",
         "override() takes 2 arguments, and others by name, but is given 3 "
         '(write why="own trim")'),
        (lambda: COSTING.most_portions(50), "kind",
         "most_portions() takes an amount or a text as its spend, not the number 50 "
         '(write it with its unit: "50 EUR")'),
        (lambda: COSTING.curve(40), "kind",
         "curve() takes a list as its portions, not the number 40 "
         "(from one to so many: range(1, 41))"),
        (lambda: COSTING.save(), "missing",
         'save() needs path (name a file, as "dish_at_40.toml")'),
        (lambda: COSTING.refresh("prices.csv"), "kind",
         'refresh() takes a price book as its prices, not the text "prices.csv" '
         '(write scalepan.read_prices("prices.csv"))'),
        (lambda: COSTING.sheet.sweep("portions", 40, "till"), "kind",
         "sweep() takes a list as its values, not the number 40 "
         "(from one to so many: range(1, 41))"),
        (lambda: scalepan.Interval(), "missing",
         "Interval() needs low (write Interval(low); it also takes high)"),
        (lambda: any_way.cost(POT, "prices.csv"), "kind",
         'cost() takes a price book as its prices, not the text "prices.csv" '
         '(write scalepan.read_prices("prices.csv"))'),
        (lambda: any_way.cost("pot.toml", BOOK), "kind",
         'cost() takes a recipe, not the text "pot.toml" '
         '(write scalepan.read_recipe("pot.toml"))'),
        (lambda: any_way.cost(BOOK, POT), "kind",
         "cost() takes a recipe, not a price book "
         "(write cost(recipe, prices); it also takes strict, taxes, stock, day)"),
        (lambda: any_way.cost(POT, BOOK, True), "by_name",
         "cost() takes 2 arguments, and others by name, but is given 3 (write strict=True)"),
        (lambda: any_way.kitchen_page(COSTING), "kind",
         "kitchen_page() takes a recipe, not a costing (costing.recipe is its recipe)"),
        (lambda: any_way.shopping_page(POT), "kind",
         "shopping_page() takes a costing or a basket as its costing, not a recipe "
         "(cost it first: scalepan.cost(recipe, prices))"),
        (lambda: any_way.parse_recipe(POT.file[1], catalog="own.csv"), "kind",
         'parse_recipe() takes a catalogue of foods as its catalog, not the text "own.csv" '
         '(write scalepan.read_facts("own.csv"))'),
        (lambda: any_way.read_line(None), "kind",
         "read_line() takes a text, not nothing (None) "
         "(write read_line(text); it also takes measures, decimal, catalog)"),
    ],
)  # fmt: skip
def test_a_slip_is_told_with_the_way_to_write_it(
    call: Callable[[], object], code: str, told: str
) -> None:
    with pytest.raises(scalepan.ArgumentError) as caught:
        call()
    assert str(caught.value) == told
    assert caught.value.code == f"argument.{code}"
    assert isinstance(caught.value, TypeError)
    assert caught.value.__cause__ is None
    assert caught.value.__context__ is None


def public() -> list[Any]:
    names = {name: getattr(scalepan, name) for name in scalepan.__all__}
    # What a catalogue and a column of numbers are filled and summed with stays quick.
    quick = [scalepan.NumberColumn, *(getattr(scalepan.Catalog, name) for name in FILLED_WITH)]
    classes = [each for each in names.values() if isinstance(each, type) and each not in quick]
    methods = [
        value
        for each in classes
        for name, value in inspect.getmembers(each, callable)
        if not name.startswith("_") and value not in quick
    ]
    return [each for each in names.values() if inspect.isroutine(each)] + methods


@pytest.mark.parametrize("given", [(), (object(),), (object(),) * 20], ids=len)
def test_no_list_of_the_forms_of_a_function_reaches_the_user(given: tuple[object, ...]) -> None:
    called = public()
    assert len(called) > 140
    for function in called:
        told = ""
        try:
            function(*given)
        except Exception as problem:
            told = str(problem)
        assert "incompatible function arguments" not in told, function


def test_what_is_wrong_inside_a_function_is_not_taken_for_its_arguments() -> None:
    def broken(recipe: _core.Recipe) -> None:
        raise AttributeError("inside")

    with pytest.raises(AttributeError, match=r"^inside$"):
        scalepan.wrong_arguments.explained(broken)(POT)


def test_functions_keep_their_names_signatures_and_pickles() -> None:
    assert list(inspect.signature(scalepan.cost).parameters)[:2] == ["recipe", "prices"]
    for name in ("cost", "quantity", "read_recipe"):
        function = getattr(scalepan, name)
        assert pickle.loads(pickle.dumps(function)) is function
        assert (function.__name__, function.__module__) == (name, "scalepan")
        assert function.__doc__


def test_methods_say_what_they_do() -> None:
    assert _core.Recipe.scale.__name__ == "scale"
    assert "portions: object = None" in (_core.Recipe.scale.__doc__ or "")


def test_a_recipe_that_is_a_file_takes_a_catalogue(tmp_path: Path) -> None:
    path = tmp_path / "pot.toml"
    path.write_text('name = "Pot"\nserves = 4\nlines = ["500 g leeks"]', encoding="utf-8")
    with pytest.raises(scalepan.ArgumentError):
        scalepan.read_recipe(path, catalog="own.csv")  # type: ignore[arg-type]


def test_a_basket_of_what_is_no_dish() -> None:
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,EUR,no\n"
    )
    for given, said in (
        (
            "soup.toml",
            'a dish of a basket is a recipe or a Dish, and one given is "soup.toml" (write '
            'scalepan.read_recipe("soup.toml"))',
        ),
        (3, "a dish of a basket is a recipe or a Dish, and one given is of the type int"),
    ):
        with pytest.raises(scalepan.ArgumentError) as caught:
            scalepan.basket([given], prices)  # type: ignore[list-item]
        assert str(caught.value) == said


def test_one_cell_is_compared_by_its_name_alone() -> None:
    sheet = scalepan.Sheet()
    sheet.set("portions", 4)
    assert sheet.compare("portions").cells == ["portions"]
