"""Plots with matplotlib, imported only when one is drawn (``pip install scalepan[plot]``)."""

from __future__ import annotations

import itertools
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

    from scalepan._core import CountRun, Curve

# Okabe and Ito's colours, told apart with any colour vision.
_COLOURS = {"till": "#D55E00", "borne": "#0072B2", "used": "#009E73"}
_MEANINGS = {"till": "till: whole packs paid", "borne": "borne: used + thrown", "used": "used"}


def plot_curve(curve: Curve, *, title: str = "") -> Figure:
    """Cost against portions: totals, a portion's share, and where the packs of each item change.

    Floats are made here, for drawing only. Every count of portions is one flat step, since there
    is no half portion between two of them. Below, each item has a row: a stroke where its packs
    change, a ring where they come out even.

    Returns:
        A matplotlib figure with three axes, not yet shown.
    """
    from matplotlib.figure import Figure

    items = [even.item for even in curve.even_counts]
    rows = 0.6 + 0.2 * len(items)
    figure = Figure(figsize=(8, 6.5 + rows), layout="constrained")
    above, below, changes = figure.subplots(3, 1, sharex=True, height_ratios=(3, 3, rows))
    portions = [float(p) for p in curve.portions]
    for name, values in (("till", curve.till), ("borne", curve.borne), ("used", curve.used)):
        _steps(above, portions, values, name)
        each = [value / p for value, p in zip(values, curve.portions, strict=True)]
        _steps(below, portions, each, name)
    _mark_least(below, curve)
    unit = "" if curve.currency == "XXX" else f" ({curve.currency})"
    at_least = ", priced lines only" if curve.unpriced else ""
    above.set_ylabel(f"whole batch{unit}{at_least}")
    below.set_ylabel(f"one portion{unit}{at_least}")
    _packs(changes, curve, items)
    changes.set_xlabel("portions")
    above.legend(frameon=False, loc="upper left")
    for axes in (above, below):
        axes.set_ylim(bottom=0, top=_top(axes, below, curve))
    for axes in (above, below, changes):
        axes.grid(visible=True, axis="x" if axes is changes else "both", alpha=0.3)
        axes.spines[["top", "right"]].set_visible(False)
    if title:
        above.set_title(title, loc="left")
    return figure


def _steps(axes: Axes, portions: Sequence[float], values: Sequence[Fraction], name: str) -> None:
    heights = [float(value) for value in values]
    width = 1.2 if name == "used" else 1.8
    style = ":" if name == "used" else "-"
    axes.step(
        portions,
        heights,
        where="mid",
        label=_MEANINGS[name],
        color=_COLOURS[name],
        linewidth=width,
        linestyle=style,
    )


def _packs(axes: Axes, curve: Curve, items: Sequence[str]) -> None:
    """A row an item, the first on top."""
    points = [float(p) for p in curve.portions]
    before = dict(itertools.pairwise(reversed(points)))
    changed: dict[str, list[float]] = {item: [] for item in items}
    for point in curve.breakpoints:
        x = float(point.portions)
        changed[point.item].append((before.get(x, x) + x) / 2)
    for row, strokes in enumerate(changed.values()):
        axes.eventplot(strokes, lineoffsets=row, linelengths=0.7, colors="#555555")
    for row, even in enumerate(curve.even_counts):
        at = [float(p) for run in even.counts for p in _counts(run)]
        axes.plot(at, [row] * len(at), "o", markersize=4, mfc="white", mec=_COLOURS["borne"])
    axes.set_yticks(range(len(items)), items)
    axes.set_ylim(max(len(items), 1) - 0.4, -0.6)
    axes.set_title("packs change: stroke; come out even: ring", loc="left", fontsize="medium")


def _counts(run: CountRun) -> list[Fraction]:
    steps = int((run.last - run.first) / run.every) if run.every else 0
    return [run.first + run.every * i for i in range(steps + 1)]


def _top(axes: Axes, below: Axes, curve: Curve) -> float | None:
    """Room for what a portion bears; the till of very few portions would flatten all the rest."""
    if axes is not below or not curve.portions:
        return None
    each = (borne / p for borne, p in zip(curve.borne, curve.portions, strict=True))
    return float(max(each)) * 1.15 or None


def _mark_least(axes: Axes, curve: Curve) -> None:
    """The count at which a portion bears least."""
    each = [borne / p for borne, p in zip(curve.borne, curve.portions, strict=True)]
    if not each:
        return
    best = min(range(len(each)), key=each.__getitem__)
    x, y = float(curve.portions[best]), float(each[best])
    axes.plot([x], [y], "o", color=_COLOURS["borne"])
    axes.annotate(
        f"least borne: {y:.2f} at {curve.portions[best]}",
        (x, y),
        xytext=(0, 14),
        textcoords="offset points",
        ha="right" if x > (float(curve.portions[0]) + float(curve.portions[-1])) / 2 else "left",
        color=_COLOURS["borne"],
    )
