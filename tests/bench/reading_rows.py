"""Rows of reading: scalars against pint with fractions, recipe lines against a pattern."""

from __future__ import annotations

import re
import statistics
import time
from collections.abc import Callable
from fractions import Fraction
from typing import Any

import pint
import scalepan
from row import Row

_RUNS = 5
_SCALARS = 500
_LINES = 100_000

_WRITTEN = (
    "500 g leeks, trimmed",
    "2 x 400 g tins chickpeas, drained",
    "1 1/2 cups plain flour, sifted",
    "3 to 4 eggs",
    "1 large onion, chopped",
    "1/2 tsp salt",
    "1 lb 4 oz carrots, peeled",
    "2 tbsp olive oil (about 28 g)",
    "250 ml milk | fixed",
    "3 cloves garlic, crushed",
)

# What a careful programmer would write for these lines: all parts named, nothing looked up.
_NUMBER = r"\d+(?:\s+\d+/\d+|/\d+|\.\d+)?"
_UNIT = r"g|kg|ml|l|cups?|tsp|tbsp|lb|oz"
_PATTERN = re.compile(
    rf"\s*(?:(?P<count>\d+)\s*x\s*)?(?P<low>{_NUMBER})"
    rf"(?:\s*(?:to|-)\s*(?P<high>{_NUMBER}))?\s*(?P<unit>{_UNIT})?\b"
    rf"(?:\s*(?P<low2>\d+)\s*(?P<unit2>{_UNIT})\b)?\s*(?P<size>small|medium|large)?"
    r"\s*(?P<noun>cloves?|tins?|cans?|slices?)?\s*(?P<food>[^,(|]+?)"
    r"\s*(?:,\s*(?P<state>[^(|]+?))?\s*(?:\((?P<note>[^)]*)\))?\s*(?:\|\s*(?P<rule>.+))?"
)


def _medians(ours: Callable[[], object], peer: Callable[[], object]) -> tuple[float, float]:
    """In nanoseconds a run, in turns so that noise meets both."""

    def timed(action: Callable[[], object]) -> float:
        start = time.perf_counter_ns()
        action()
        return time.perf_counter_ns() - start

    pairs = [(timed(ours), timed(peer)) for _ in range(_RUNS)]
    return statistics.median(a for a, _ in pairs), statistics.median(b for _, b in pairs)


def scalar_row() -> Row:
    """Parse two amounts, convert one, add both: exact in both programs."""
    registry: Any = pint.UnitRegistry(non_int_type=Fraction)

    def ours() -> Fraction:
        total = scalepan.quantity("2.5 cup", measures="us").to("mL")
        return (total + scalepan.quantity("3 tbsp", measures="us")).to("mL").value

    def peer() -> Fraction:
        total = registry.Quantity("2.5 cup").to("mL")
        sum_of_both: Fraction = (total + registry.Quantity("3 tbsp")).to("mL").magnitude
        return sum_of_both

    if ours() != peer():
        raise AssertionError(f"{ours()} mL is not {peer()} mL")
    a, b = _medians(
        lambda: [ours() for _ in range(_SCALARS)], lambda: [peer() for _ in range(_SCALARS)]
    )
    return Row("scalar/read", a / _SCALARS, "pint", b / _SCALARS, 0.05)


def lines_row() -> Row:
    """100,000 lines read, foods looked up, against as many full matches of one pattern."""
    lines = [_WRITTEN[i % len(_WRITTEN)] for i in range(_LINES)]
    if not all(_PATTERN.fullmatch(line) for line in _WRITTEN):
        raise AssertionError("the pattern does not match every line")
    scalepan.read_lines(lines[:10], measures="us")
    a, b = _medians(
        lambda: scalepan.read_lines(lines, measures="us"),
        lambda: [_PATTERN.fullmatch(line) for line in lines],
    )
    return Row("lines/read", a / _LINES, "re", b / _LINES, 3.0)


ROWS: list[Callable[[], Row]] = [scalar_row, lines_row]
