"""Rows of bars: names on the left, figures in a column on the right, where no bar is."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan.plots.colours import COLOUR_OF, HATCH_OF
from scalepan.plots.lettering import as_written, lettered
from scalepan.plots.pictures import ROW_HEIGHT, to_draw

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from matplotlib.axes import Axes

# Fewer rows than these would leave no room for what stands around them.
_HEAD, _FEWEST = 1.3, 2
# No figure is cut.
_UNCUT = 200
_BELOW_HEAD = 0.9
_BAR = 0.7
# Of a row; the layout may yet take room for titles.
_OF_ROW = 0.7
_POINTS_AN_INCH = 72


class Bar(NamedTuple):
    """One row. ``parts`` stand one behind the other, each with its kind."""

    name: str
    parts: Sequence[tuple[str, Fraction]]
    told: str


class Row(NamedTuple):
    """What is told beside a row, whose middle is at ``place``; rows go down by 1.
    One that heads others is a little larger."""

    place: float
    name: str
    told: str
    heads: bool = False


def height_of(rows: float) -> float:
    """Of a figure with so many rows, in inches."""
    return _HEAD + ROW_HEIGHT * max(rows, _FEWEST)


def draw_bars(axes: Axes, bars: Sequence[Bar], kinds: Sequence[str]) -> None:
    """The first on top, with a legend of the kinds above."""
    for kind in kinds:
        _draw_kind(axes, bars, kind)
    name_rows(axes, [Row(row, bar.name, bar.told) for row, bar in enumerate(bars)])
    axes.set_xlim(left=0)
    style: dict[str, Any] = {"frameon": False, "borderaxespad": 0, "fontsize": "small"}
    axes.legend(loc="lower left", bbox_to_anchor=(0, 1.0), ncols=len(kinds), **style)


LEGEND_ROOM = 18


def filled(axes: Axes, colour: str, hatch: str) -> dict[str, Any]:
    """How a bar looks: its hatching is cut out of it, in the colour of the ground."""
    ground = axes.get_facecolor()
    return {"color": colour, "edgecolor": ground, "hatch": hatch, "linewidth": 0}


def name_rows(axes: Axes, rows: Sequence[Row]) -> None:
    """Names on the left, figures on the right."""
    places = [row.place for row in rows]
    axes.set_yticks(places, [lettered(row.name) for row in rows])
    axes.set_ylim(max(places, default=0) + 0.5, min(places, default=0) - 0.5)
    axes.tick_params(axis="y", length=0)
    column = axes.secondary_yaxis("right")
    column.set_yticks(places, [lettered(row.told, _UNCUT) for row in rows])
    column.tick_params(axis="y", length=0)
    column.spines["right"].set_visible(False)
    labels = [*axes.get_yticklabels(), *column.get_yticklabels()]
    as_written(labels)
    size = row_size(axes, len(rows))
    any_heads = any(row.heads for row in rows)
    for label, row in zip(labels, [*rows, *rows], strict=True):
        label.set_fontsize(size if row.heads or not any_heads else size * _BELOW_HEAD)


def _draw_kind(axes: Axes, bars: Sequence[Bar], kind: str) -> None:
    rows, starts, lengths = [], [], []
    for row, bar in enumerate(bars):
        start = to_draw(bar.parts[0][1] * 0)
        for name, length in bar.parts:
            if name == kind:
                rows.append(row)
                starts.append(start)
                lengths.append(to_draw(length))
            start += to_draw(length)
    look = filled(axes, COLOUR_OF[kind], HATCH_OF[kind])
    axes.barh(rows, lengths, left=starts, height=_BAR, label=kind, **look)


def row_size(axes: Axes, rows: int) -> float:
    """Of letters, in points: small enough for as many rows as there are."""
    from matplotlib import rcParams

    room = axes.get_window_extent().height / axes.figure.dpi * _POINTS_AN_INCH / max(rows, 1)
    return float(min(rcParams["font.size"], room * _OF_ROW))
