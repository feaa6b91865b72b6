"""A hundred thousand random operations across the border against gmpy2.mpq (GNU MP)."""

from __future__ import annotations

import random
from collections.abc import Callable
from fractions import Fraction
from operator import add, mul, sub, truediv
from typing import Any

import gmpy2
import pytest
import scalepan

CHAINS = 500
LENGTH = 50  # of each of four runs: 4 x 500 x 50 operations
WORD_EDGES = [2**31, 2**32, 2**62, 2**63 - 1, 2**63, 2**63 + 1, 2**64]


def whole(draw: random.Random) -> int:
    kind = draw.randrange(4)
    if kind == 0:
        return draw.choice(WORD_EDGES) + draw.randint(-2, 2)
    return draw.randint(1, (10, 10**6, 2**65)[kind - 1])


def number(draw: random.Random) -> Fraction:
    return Fraction(whole(draw) * draw.choice((1, -1)), whole(draw))


def same(ours: scalepan.Quantity, theirs: Any) -> bool:
    value = ours.value
    return (value.numerator, value.denominator) == (int(theirs.numerator), int(theirs.denominator))


@pytest.mark.parametrize("seed", range(4))
def test_chains_of_operations(seed: int) -> None:
    draw = random.Random(seed)
    steps: list[Callable[[Any, Any], Any]] = [add, sub, mul, truediv]
    for _ in range(CHAINS):
        start = number(draw)
        ours, theirs = scalepan.quantity(start, "g"), gmpy2.mpq(start)
        for _ in range(LENGTH):
            step, x = draw.choice(steps), number(draw)
            like = scalepan.quantity(x, "g") if step in (add, sub) else x
            ours, theirs = step(ours, like), step(theirs, gmpy2.mpq(x))
            assert same(ours, theirs)
            if theirs == 0 or abs(theirs.numerator) > 2**400:
                start = number(draw)
                ours, theirs = scalepan.quantity(start, "g"), gmpy2.mpq(start)
