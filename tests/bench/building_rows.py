"""Rows of building a sheet from texts, against Python's own parser and compiler on the same texts.

The texts are costings of invented items, in a dozen shapes. Ours are read, checked for dimensions,
compiled and worked out, and the peer's parsed and compiled alone. Python has neither units nor
`if ... then ... else` nor `^`: there a unit is a name times its number, `1.5 * kg`, a choice is
turned round, `a if c else b`, and a power is `**`.

`few shapes` has the same literals in every formula of a shape, so that they differ in names alone;
`other literals` has other ones in every formula.
"""

from __future__ import annotations

import ast
import statistics
import time
from collections.abc import Callable, Iterator
from fractions import Fraction
from functools import partial

import scalepan
from row import Row

_FORMULAS = 100_000
_RUNS = 9

# A name, and its formula: ours and Python's. {i} is the item, {a} to {c} are literals.
_SHAPES = (
    (
        "item{i}.need",
        "item{i}.amount * portions_made / serves",
        "item{i}.amount * portions_made / serves",
    ),
    ("item{i}.spare", "item{i}.need * {b}/100", "item{i}.need * {b}/100"),
    (
        "item{i}.wanted",
        "max(item{i}.need + item{i}.spare, {a} g EP)",
        "max(item{i}.need + item{i}.spare, {a} * g * EP)",
    ),
    ("item{i}.buy", "item{i}.wanted / item{i}.edible", "item{i}.wanted / item{i}.edible"),
    (
        "item{i}.lacking",
        "max(item{i}.buy - item{i}.stock, 0)",
        "max(item{i}.buy - item{i}.stock, 0)",
    ),
    (
        "item{i}.large",
        "item{i}.lacking > {a}00 g AP and portions_made >= {b}",
        "item{i}.lacking > {a}00 * g * AP and portions_made >= {b}",
    ),
    (
        "item{i}.rate",
        "if item{i}.large then item{i}.price * {b}/100 else item{i}.price",
        "item{i}.price * {b}/100 if item{i}.large else item{i}.price",
    ),
    (
        "item{i}.cost",
        "item{i}.lacking * item{i}.rate + {c} EUR",
        "item{i}.lacking * item{i}.rate + {c} * EUR",
    ),
    ("item{i}.each", "item{i}.cost / portions_made", "item{i}.cost / portions_made"),
    (
        "item{i}.sold",
        "min(item{i}.each * {c}, item{i}.each + {c} EUR) * (1 + {b}/100)",
        "min(item{i}.each * {c}, item{i}.each + {c} * EUR) * (1 + {b}/100)",
    ),
)
_ITEMS = _FORMULAS // len(_SHAPES)


def _texts(vary: bool) -> Iterator[tuple[str, str, str]]:
    for i in range(_ITEMS):
        for place, (name, ours, peer) in enumerate(_SHAPES):
            k = i * len(_SHAPES) + place if vary else place
            slots = {"i": i, "a": 50 + k, "b": 3 + k, "c": f"{1 + k // 100}.{k % 100:02}"}
            yield name.format(**slots), ours.format(**slots), peer.format(**slots)


def _given() -> scalepan.Changes:
    changes = scalepan.Changes()
    changes.set("portions_made", 40)
    changes.set("serves", 4)
    for i in range(_ITEMS):
        changes.set(f"item{i}.amount", f"{100 + i % 400} g EP")
        changes.set(f"item{i}.edible", f"{40 + i % 60}/100 EP/AP")
        changes.set(f"item{i}.stock", f"{i % 7} kg AP")
        changes.set(f"item{i}.price", f"{50 + i % 900}/100 EUR/(kg AP)")
    return changes


def _expected_cost(i: int) -> Fraction:
    """In EUR, where literals do not vary."""
    need = Fraction(100 + i % 400) * 40 / 4
    buy = max(need + need * 4 / 100, Fraction(52)) / Fraction(40 + i % 60, 100)
    lacking = max(buy - 1000 * (i % 7), Fraction(0))
    rate = Fraction(50 + i % 900, 100) * (Fraction(9, 100) if lacking > 5500 else 1)
    return lacking / 1000 * rate + Fraction(107, 100)


def _timed(action: Callable[[], object]) -> int:
    start = time.process_time_ns()
    action()
    return time.process_time_ns() - start


def _compile_all(formulas: list[str]) -> None:
    for formula in formulas:
        compile(ast.parse(formula, mode="eval"), "<sheet>", "eval")


def _expect_costs(sheet: scalepan.Sheet) -> None:
    for i in range(_ITEMS):
        cost = sheet.value(f"item{i}.cost")
        if cost != scalepan.quantity(f"{_expected_cost(i)} EUR"):
            raise AssertionError(f"item{i}.cost is {cost}, not {_expected_cost(i)} EUR")


def _building_row(name: str, vary: bool) -> Row:
    given = _given()
    defined = scalepan.Changes()
    for cell, formula, _ in _texts(vary):
        defined.define(cell, formula)
    peers = [peer for _, _, peer in _texts(vary)]
    pairs = []
    for _ in range(_RUNS):
        sheet = scalepan.Sheet()
        sheet.apply(given)
        pairs.append((_timed(partial(sheet.apply, defined)), _timed(partial(_compile_all, peers))))
        if not vary:
            _expect_costs(sheet)
    ours, peer = (statistics.median(times) / _FORMULAS for times in zip(*pairs, strict=True))
    return Row(name, ours, "ast.parse, compile", peer, 1 / 20)


ROWS: list[Callable[[], Row]] = [
    lambda: _building_row("sheet/build, few shapes", vary=False),
    lambda: _building_row("sheet/build, other literals", vary=True),
]
