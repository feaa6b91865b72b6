"""What a dish costs at each number of portions."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.plots.bars import row_size
from scalepan.plots.colours import COLOUR_OF
from scalepan.plots.lettering import as_written, lettered, listed
from scalepan.plots.pictures import (
    finish,
    headed,
    in_unit,
    ink,
    money,
    named_x,
    named_y,
    panels,
    to_draw,
)
from scalepan.plots.stepping import draw_steps, is_every_count

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from fractions import Fraction

    from matplotlib.axes import Axes

    from scalepan._core import CountRun, Curve
    from scalepan.plots.pictures import GivenAxes

_MEANINGS = {"till": "till: whole packs paid", "borne": "borne: used + thrown", "used": "used"}
# Told apart by their weight in grey print.
_STYLES = {"till": ("-", 1.2), "borne": ("-", 2.6), "used": (":", 1.4)}


def plot_curve(curve: Curve, *, title: str = "", axes: GivenAxes = None) -> list[Axes]:
    """Cost against portions: totals, a portion's share, and where the packs of each item change.

    Every count of portions is one flat step, since there is no half portion between two of them;
    where counts are left out, dots mark those that were costed. Below, each item has a row: a
    stroke where its packs change, a ring where they come out even.

    Args:
        curve: of ``costing.curve(range(1, 61))``.
        title: above the picture.
        axes: three to draw into.

    Returns:
        Three axes: the whole batch, a portion, and the packs.

    Raises:
        PlotError: ``plot.library``, ``plot.axes``, ``plot.too_large``.
        CostError: ``cost.curve`` where the packs change more than a million times.
    """
    items = [even.item for even in curve.even_counts]
    rows = 0.7 + 0.2 * len(items)
    drawn = panels(axes, (3.2, 3.2, rows), share_x=True, what="a curve")
    portions, costs = _in_order(curve)
    _totals(drawn[0], curve, portions, costs, title)
    _shares(drawn[1], curve, portions, costs)
    _packs(drawn[2], curve, items)
    for one in drawn:
        finish(one, "x" if one is drawn[2] else "both")
    return drawn


def _in_order(curve: Curve) -> tuple[list[Fraction], dict[str, list[Fraction]]]:
    """The points by portions, however they were asked for."""
    portions = curve.portions
    order = sorted(range(len(portions)), key=portions.__getitem__)
    costs = {name: getattr(curve, name) for name in _MEANINGS}
    sorted_costs = {name: [values[i] for i in order] for name, values in costs.items()}
    return [portions[i] for i in order], sorted_costs


def _totals(
    axes: Axes,
    curve: Curve,
    portions: Sequence[Fraction],
    costs: Mapping[str, Sequence[Fraction]],
    title: str,
) -> None:
    for name, totals in costs.items():
        _draw(axes, portions, totals, name)
    named_y(axes, in_unit(_at_least("whole batch", curve), curve.currency))
    headed(axes, title, f"not priced: {listed(curve.unpriced)}" if curve.unpriced else "")
    axes.set_ylim(bottom=0)
    if portions:
        axes.legend(frameon=False, loc="upper left")


def _shares(
    axes: Axes,
    curve: Curve,
    portions: Sequence[Fraction],
    costs: Mapping[str, Sequence[Fraction]],
) -> None:
    """A portion's; the till of very few portions would flatten all the rest, and is cut off."""
    for name, totals in costs.items():
        each = [total / p for total, p in zip(totals, portions, strict=True)]
        _draw(axes, portions, each, name)
        if name == "borne" and any(each):
            axes.set_ylim(top=to_draw(max(each)) * 1.15)
    axes.set_ylim(bottom=0)
    named_y(axes, in_unit(_at_least("one portion", curve), curve.currency))
    if (best := curve.cheapest("borne")) is not None:
        least = to_draw(best.per_portion)
        axes.plot([to_draw(best.portions)], [least], "o", color=COLOUR_OF["borne"])
        told = money(best.per_portion, curve.currency)
        where = _core.exact_text(best.portions)
        headed(axes, "", f"dot: least borne, {told} a portion at {where}")


def _at_least(what: str, curve: Curve) -> str:
    return f"{what}, at least" if curve.unpriced else what


def _draw(axes: Axes, portions: Sequence[Fraction], values: Sequence[Fraction], name: str) -> None:
    line, width = _STYLES[name]
    style: dict[str, Any] = {"color": COLOUR_OF[name], "linestyle": line, "linewidth": width}
    draw_steps(axes, portions, values, label=_MEANINGS[name], **style)
    if not is_every_count(portions):
        at = [to_draw(p) for p in portions]
        heights = [to_draw(value) for value in values]
        axes.plot(at, heights, "o", color=COLOUR_OF[name], markersize=5)


def _packs(axes: Axes, curve: Curve, items: Sequence[str]) -> None:
    """A row an item, the first on top."""
    before = dict(itertools.pairwise(reversed(curve.portions)))
    changed: dict[str, list[float]] = {item: [] for item in items}
    for point in curve.breakpoints:
        at = point.portions
        changed[point.item].append(to_draw((before.get(at, at) + at) / 2))
    colour = ink()
    for row, strokes in enumerate(changed.values()):
        axes.eventplot(strokes, lineoffsets=row, linelengths=0.7, colors=colour, alpha=0.7)
    for row, even in enumerate(curve.even_counts):
        rings = [to_draw(p) for run in even.counts for p in _counts(run)]
        style: dict[str, Any] = {
            "mfc": axes.get_facecolor(),
            "mec": COLOUR_OF["borne"],
            "markersize": 4,
        }
        axes.plot(rings, [row] * len(rings), "o", **style)
    axes.set_yticks(range(len(items)), [lettered(item) for item in items])
    as_written(axes.get_yticklabels())
    axes.tick_params(axis="y", labelsize=row_size(axes, len(items)))
    axes.set_ylim(max(len(items), 1) - 0.4, -0.6)
    named_x(axes, "portions")
    headed(axes, "", "packs change: stroke; come out even: ring")


def _counts(run: CountRun) -> list[Fraction]:
    steps = int((run.last - run.first) / run.every) if run.every else 0
    return [run.first + run.every * i for i in range(steps + 1)]
