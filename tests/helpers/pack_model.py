"""Packs chosen by trying every step of a grid: the other side of the property tests."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction
from math import ceil

# SR28 refuse, percent.
REFUSE = {"leeks": 56, "onions": 10, "carrots": 11, "celery": 11, "broccoli": 39, "pineapples": 49}
PACK_GRAMS = [100, 250, 400, 500, 750, 1000, 2500]
GRID = 50


@dataclass(frozen=True)
class Pack:
    grams: int
    pence: int


def cheapest(need: Fraction, packs: tuple[Pack, ...]) -> tuple[int, int]:
    """Pence and grams: the least price, then the least bought."""
    steps = ceil(need / GRID)
    best = [(0, 0)]
    for step in range(1, steps + 1):
        choices = []
        for pack in packs:
            pence, grams = best[max(0, step - pack.grams // GRID)]
            choices.append((pence + pack.pence, grams + pack.grams))
        best.append(min(choices))
    return best[steps]
