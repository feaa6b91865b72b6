"""The stub of the core: parameters as the core has them, values as the core gives them."""

from __future__ import annotations

import ast
import re
from collections import Counter
from types import FunctionType

import pytest
import scalepan
import stub
from displayed import displayed, recipe, with_base
from scalepan import _core

SIGNATURE = re.compile(r"^(?:\d+\. )?(\w+\(.*\) -> .*)$", re.MULTILINE)
MOST_OF_A_KIND = 8
DISH = """\
name = "Night watch broth"
serves = 4
lines = ["700 g leeks, trimmed", "240 g butter beans, drained"]
method = [{ text = "Sweat the leeks.", uses = ["leeks"], time = "12 min" }]
"""
BOUGHT = {
    "trial": ("1", "", 1, 1),
    "what": ("bought", "", 1, 3),
    "part": ("leeks", "", 1, 10),
    "weight": ("4 kg", "", 1, 16),
}
EDIBLE = BOUGHT | {"what": ("edible", "", 2, 3)}
PRICES = """\
item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.10,GBP,no
butter beans,drained,240 g,0.90,GBP,yes
white sauce,AP,500 g,2.40,GBP,no
butter,AP,250 g,2.20,GBP,yes
plain flour,AP,1 kg,0.80,GBP,yes
milk,AP,1 L,1.10,GBP,no
"""


def bound_functions() -> dict[str, list[ast.FunctionDef]]:
    """Of the stub: functions, and methods by the class that the core has them in."""
    found: dict[str, list[ast.FunctionDef]] = {}
    scopes = {"": stub.tree(), **{name: stub.classes()[name] for name in stub.classes_there()}}
    for name, scope in scopes.items():
        there = vars(vars(_core)[name]) if name else vars(_core)
        for one in stub.functions(scope):
            known = there.get(one.name)
            # What tells wrong arguments wraps the core's own.
            of_python = isinstance(known, FunctionType) and not hasattr(known, "__wrapped__")
            if one.name in there and not of_python and not stub.is_property(one):
                found.setdefault(f"{name}.{one.name}".lstrip("."), []).append(one)
    return found


def told_by_the_core(name: str) -> list[ast.FunctionDef]:
    """The signatures that pybind11 writes into docstrings; a default may be no Python there."""
    bound: object = _core
    for part in name.split("."):
        bound = vars(bound)[part]
    text = re.sub(r"<[^<>]*>", "...", str(bound.__doc__))
    parsed = [ast.parse(f"def {one}: ...").body[0] for one in SIGNATURE.findall(text)]
    return [one for one in parsed if isinstance(one, ast.FunctionDef)]


FUNCTIONS = bound_functions()
# Python's own slot, which no docstring of pybind11's tells; there from Python 3.12 on.
BUFFER = "ExactColumn.__buffer__"


def test_nearly_all_functions_have_a_signature_to_be_held_to() -> None:
    assert len(FUNCTIONS) > 100
    without = {name for name in FUNCTIONS if not told_by_the_core(name)}
    assert without == {BUFFER} & set(FUNCTIONS)


@pytest.mark.parametrize("name", sorted(set(FUNCTIONS) - {BUFFER}))
def test_parameters_are_those_of_the_core(name: str) -> None:
    bound = "." in name
    there = [stub.parameters(one, bound=bound) for one in told_by_the_core(name)]
    here = [stub.parameters(one, bound=bound) for one in FUNCTIONS[name]]
    if any(re.fullmatch(r"arg\d+", parameter) for told in there for parameter, *_ in told):
        assert {len(told) for told in there} == {len(said) for said in here}
        kinds = {kind for said in here for _, kind, _ in said}
        assert kinds == {"by place"} or name.rpartition(".")[2].startswith("__")
    else:
        assert all(told in here for told in there), there
        assert all(said in there for said in here), there


def things() -> list[object]:
    """With what these hold and give, one of every class of the core."""
    catalog = scalepan.bundled_catalog()
    prices = scalepan.parse_prices(PRICES)
    stock = scalepan.parse_stock("item,stage,amount,value,currency\nleeks,AP,300 g,0.60,GBP\n")
    costing = scalepan.cost(scalepan.parse_recipe(DISH).scale(portions=40), prices, stock=stock)
    sheet = costing.sheet
    made = scalepan.cost(with_base(), prices)
    function = scalepan.cover_function([("400 g", "2.10"), ("1 kg", "4.10")])
    return [
        *displayed().values(),
        catalog.facts("leeks"),
        costing,
        stock,
        recipe().lines,
        costing.recipe.method,
        costing.curve(range(1, 30)).dominated(),
        costing.most_portions("50 GBP"),
        costing.least_spend(40),
        costing.pack_prices("leeks"),
        made.make_or_buy("white_sauce", "white sauce"),
        [list(change.values()) for _, change in sheet.changes().listed()],
        list(sheet.sweep("portions", [4, 40], ["till"])),
        function.steps("0 g", "2 kg"),
        scalepan.break_even("7 kg", ("5 kg"), [("1 kg", "1")]),
        scalepan.cash_total("1.23 CHF"),
        scalepan.measure_sets()["metric spoons"],
        scalepan.NumberColumn([1, "1/3"]),
        _core.make_yield_test([BOUGHT, EDIBLE], ""),
        scalepan.Text("leek"),
        scalepan.Formula("1 kg"),
    ]


def held_in(value: object) -> list[object]:
    """Things of the core in a value."""
    if isinstance(value, list | tuple):
        return [one for part in value[:MOST_OF_A_KIND] for one in held_in(part)]
    return [value] if isinstance(value, tuple(stub.classes_there().values())) else []


def test_values_are_what_the_stub_says() -> None:
    waiting = [one for thing in things() for one in held_in(thing)]
    seen: Counter[str] = Counter()
    while waiting:
        thing = waiting.pop()
        for name in stub.kinds_of(thing):
            seen[name] += 1
        if seen[stub.kinds_of(thing)[0]] > MOST_OF_A_KIND:
            continue
        for name, value, said in stub.values_of(thing):
            assert stub.is_of(value, said), (name, value, said)
            waiting += held_in(value)
    assert set(stub.classes_there()) - set(seen) == set()
