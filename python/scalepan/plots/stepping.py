"""Figures that hold for one count each: flat steps, with the turn half way to the next count."""

from __future__ import annotations

import itertools
from fractions import Fraction
from typing import TYPE_CHECKING, Any

from scalepan.plots.pictures import to_draw

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes

_HALF = Fraction(1, 2)


def edges(places: Sequence[Fraction]) -> list[Fraction]:
    """From where to where each step goes; places ascend. The first and the last go on as far as
    they reach to their other side, a single one half to each."""
    if not places:
        return []
    between = [(a + b) * _HALF for a, b in itertools.pairwise(places)]
    first = places[0] - (between[0] - places[0] if between else _HALF)
    last = places[-1] + (places[-1] - between[-1] if between else _HALF)
    return [first, *between, last]


def draw_steps(
    axes: Axes, places: Sequence[Fraction], figures: Sequence[Fraction], **style: Any
) -> None:
    if places:
        turns = [to_draw(place) for place in edges(places)]
        heights = [to_draw(figure) for figure in figures]
        axes.stairs(heights, turns, baseline=None, **style)


def is_every_count(places: Sequence[Fraction]) -> bool:
    """Whether no whole number between the first and the last is missing, and none is broken."""
    return all(b - a == 1 for a, b in itertools.pairwise(places)) and all(
        place.denominator == 1 for place in places
    )
