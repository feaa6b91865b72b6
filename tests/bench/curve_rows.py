"""Rows of curves: the till of a million portions of twenty lines against the same sums in NumPy.

Amounts, packs and prices are invented, and seeded. Ours starts from the recipe and its price book
and ends with an int64 array; the peer is given each line as the fraction of a pack that a portion
takes, in lowest terms, and works in place. Its integers are exact here; how many points its floats
get wrong stands below the table.
"""

from __future__ import annotations

import math
import random
import statistics
import time
from collections.abc import Callable
from dataclasses import dataclass

import numpy as np
import numpy.typing as npt
import scalepan
from row import Row

POINTS = 1_000_000
_RUNS = 15
_FOODS = [
    *("leeks", "onions", "carrots", "celery", "potatoes", "parsnips", "turnips", "pumpkin"),
    *("tomatoes", "spinach", "fennel", "mushrooms", "pearl barley", "lentils", "chickpeas"),
    *("butter beans", "flour", "butter", "rice", "oats"),
]

Whole = npt.NDArray[np.int64]


@dataclass(frozen=True)
class Line:
    food: str
    half_grams: int  # a portion
    pack: int  # g
    pence: int

    @property
    def share(self) -> tuple[int, int]:
        """Packs a portion, in lowest terms."""
        common = math.gcd(self.half_grams, 2 * self.pack)
        return self.half_grams // common, 2 * self.pack // common


def lines_of(packs: tuple[int, ...]) -> list[Line]:
    draw = random.Random(20)
    return [
        Line(food, draw.randrange(10, 400), draw.choice(packs), draw.randrange(50, 900))
        for food in _FOODS
    ]


def costing_of(lines: list[Line]) -> scalepan.Costing:
    recipe = ", ".join(f'"{line.half_grams / 2} g {line.food}"' for line in lines)
    rows = "".join(f"{x.food},AP,{x.pack} g,{x.pence}/100,EUR,no\n" for x in lines)
    return scalepan.cost(
        scalepan.parse_recipe(f'name = "Twenty"\nserves = 1\nlines = [{recipe}]\n'),
        scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\n" + rows),
    )


def in_integers(lines: list[Line], n: Whole) -> Whole:
    total = np.zeros_like(n)
    packs = np.empty_like(n)
    for line in lines:
        top, bottom = line.share
        np.multiply(n, -top, out=packs)
        np.floor_divide(packs, bottom, out=packs)
        packs *= -line.pence
        total += packs
    return total


def in_floats(lines: list[Line], n: Whole) -> Whole:
    total = np.zeros(len(n))
    for line in lines:
        top, bottom = line.share
        total += line.pence * np.ceil(n * (top / bottom))
    return total.astype(np.int64)


def _time_of(action: Callable[[], object]) -> float:
    """Of the processor: both run in one thread, and what else runs meanwhile counts for neither."""
    start = time.process_time_ns()
    action()
    return float(time.process_time_ns() - start)


def curve_row(name: str, packs: tuple[int, ...]) -> Row:
    lines = lines_of(packs)
    costing = costing_of(lines)
    n = np.arange(1, POINTS + 1, dtype=np.int64)

    def ours() -> Whole:
        return np.asarray(costing.curve(range(1, POINTS + 1)).column("till"))

    def peer() -> Whole:
        return in_integers(lines, n)

    pairs = [(_time_of(ours), _time_of(peer)) for _ in range(_RUNS)]
    curve = costing.curve(range(1, POINTS + 1))
    column = curve.column("till")
    pence = np.asarray(column) * int(column.step * 100)
    wrong = int(np.count_nonzero(pence != peer()))
    wrong_floats = int(np.count_nonzero(pence != in_floats(lines, n)))
    note = (
        f"{name}: {wrong:,} of {POINTS:,} points wrong, {wrong_floats:,} by floats "
        f"(ceil(n * (a / b))); {curve.kernel}"
    )
    ours_time, peer_time = (statistics.median(times) for times in zip(*pairs, strict=True))
    return Row(name, ours_time, "numpy int64", peer_time, 1 / 8, note)


ROWS: list[Callable[[], Row]] = [
    lambda: curve_row("curve/mixed packs", (250, 400, 500, 1000, 2500)),
    lambda: curve_row("curve/coarse packs", (2500, 4000, 5000, 10000, 25000)),
]
