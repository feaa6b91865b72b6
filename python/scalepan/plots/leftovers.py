"""What is left of the packs after a dish is cooked."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from scalepan.plots.bars import LEGEND_ROOM, Bar, draw_bars, height_of
from scalepan.plots.pictures import (
    finish,
    headed,
    in_unit,
    money,
    named_x,
    nothing_drawn,
    one_panel,
)
from scalepan.sheet_comparison import told

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from scalepan._core import Basket, Costing, Leftover
    from scalepan.plots.pictures import GivenAxes

_KINDS = ("kept", "thrown")
_MOST_ROWS = 30


def plot_leftovers(costing: Costing | Basket, *, title: str = "", axes: GivenAxes = None) -> Axes:
    """What is left of each item's packs, and of what was on hand: its value, kept or thrown.

    The dearest is on top; beside it stand its amount and its value, rounded half up. Of more than
    30 leftovers the cheapest are one row.

    Args:
        costing: of ``scalepan.cost`` or ``scalepan.basket``.
        title: above the picture.
        axes: one to draw into.

    Returns:
        The axes drawn into, money along x.

    Raises:
        PlotError: ``plot.library``, ``plot.axes``, ``plot.too_large``.
    """
    bars = _bars(costing)
    drawn = one_panel(axes, height_of(len(bars)), "a plot of leftovers")
    if not bars:
        headed(drawn, title)
        nothing_drawn(drawn, "nothing is left of what has a price")
        return drawn
    kept = f"kept: {costing.closing.told_money}, thrown: {costing.thrown.told_money}"
    headed(
        drawn, title, f"{kept}, of what has a price" if costing.unpriced else kept, room=LEGEND_ROOM
    )
    draw_bars(drawn, bars, _KINDS)
    named_x(drawn, in_unit("value of what is left", costing.till.unit))
    finish(drawn, "x")
    return drawn


def _bars(costing: Costing | Basket) -> list[Bar]:
    left = sorted(costing.left, key=lambda one: (-one.value.value, one.item))
    shown = left if len(left) <= _MOST_ROWS else left[: _MOST_ROWS - 1]
    bars = [Bar(one.item, [(_kind(one), one.value.value)], _told(one)) for one in shown]
    return [*bars, _others(left[len(shown) :])] if len(shown) < len(left) else bars


def _others(left: list[Leftover]) -> Bar:
    """Amounts of unlike things make no sum, their values do."""
    parts = [
        (kind, sum((one.value.value for one in left if _kind(one) == kind), Fraction(0)))
        for kind in _KINDS
    ]
    value = sum((length for _, length in parts), Fraction(0))
    return Bar(f"{len(left)} others", parts, money(value, left[0].value.unit))


def _kind(one: Leftover) -> str:
    return "kept" if one.keeps else "thrown"


def _told(one: Leftover) -> str:
    amount = told(one.amount)
    return f"{amount}{'' if one.bought else ' on hand'}, {one.value.told_money}"
