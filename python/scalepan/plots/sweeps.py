"""What cells come out as over the values of one input."""

from __future__ import annotations

import itertools
from fractions import Fraction
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan._core import Interval, Quantity
from scalepan.errors import make_error
from scalepan.plots.colours import CYCLE, LINES, MARKERS
from scalepan.plots.lettering import as_written, lettered
from scalepan.plots.pictures import (
    ROW_HEIGHT,
    finish,
    headed,
    in_unit,
    ink,
    named_x,
    named_y,
    nothing_drawn,
    number_in,
    panels,
    share_a_scale,
    to_draw,
)
from scalepan.plots.stepping import draw_steps
from scalepan.sheet_comparison import told

if TYPE_CHECKING:
    from collections.abc import Collection, Sequence

    from matplotlib.axes import Axes

    from scalepan._core import SweptCell
    from scalepan.plots.pictures import GivenAxes
    from scalepan.sheet_studies import Sweep


_HEIGHT = 3.0
# Of more points than these the marks would cover the line.
_MOST_MARKED = 30
_MOST_WORDS = 12
_NONE = Fraction(0)


def plot_sweep(
    sweep: Sweep,
    *,
    steps: Collection[str] | None = None,
    title: str = "",
    axes: GivenAxes = None,
) -> list[Axes]:
    """Cells over the values of the input: flat steps where a figure goes in steps, else lines.

    A figure goes in steps where it stands still between some neighbouring values and jumps between
    others. What lies between two values was not worked out: a step turns half way, a line is
    straight, and up to 30 values are marked. Cells of one unit and size share a panel. Where a
    total is known only as "at least", its least is drawn; where a cell failed there is a gap with a
    cross on the axis. Texts and flags have a row for each that comes up.

    Args:
        sweep: of ``sheet.sweep("portions", range(1, 61), ["till", "leeks.buy"])``.
        steps: the cells that go in steps, where it is known better than the points show.
        title: above the picture.
        axes: as many to draw into as there are panels.

    Returns:
        Axes from the top down, the input along x.

    Raises:
        PlotError: ``plot.library``, ``plot.axes``, ``plot.too_large``.
        SheetError: ``sheet.unknown`` where ``steps`` names a cell that was not swept.
    """
    for name in steps or ():
        if name not in sweep.cells:
            hint = f"there are: {', '.join(sweep.cells)}"
            raise make_error("sheet.unknown", f'no cell "{name[:40]}" was swept', hint)
    lines = [_line(sweep, cell) for cell in sweep]
    groups = _grouped(lines)
    heights = [_height(group) for group in groups] or [_HEIGHT]
    drawn = panels(axes, heights, share_x=True, what="a plot of this sweep")
    for i, (panel, group) in enumerate(zip(drawn, groups, strict=False)):
        _draw(panel, group, steps)
        headed(panel, title if i == 0 else "", _named(group[0]) if len(group) == 1 else "")
    unit = sweep.values[0].unit if len(sweep) else ""
    named_x(drawn[-1], in_unit(sweep.name, unit))
    if not len(sweep) or not lines:
        headed(drawn[0], title)
        nothing_drawn(drawn[0], "no cell was swept" if len(sweep) else "no value was swept")
    return drawn


class _Line(NamedTuple):
    """One cell, in ascending order of the input; of a word, its place among ``words``."""

    name: str
    unit: str
    places: list[Fraction]
    figures: list[Fraction | None]
    words: list[str]
    at_least: bool

    def largest(self) -> Fraction:
        return max((abs(figure) for figure in self.figures if figure is not None), default=_NONE)


def _line(sweep: Sweep, cell: SweptCell) -> _Line:
    values = sweep.values
    unit = values[0].unit if values else ""
    figures = cell.figures
    points = sorted(
        ((number_in(value, unit), figure) for value, figure in zip(values, figures, strict=True)),
        key=lambda point: point[0],
    )
    places = [place for place, _ in points]
    words = list(dict.fromkeys(_word(figure) for _, figure in points if _is_word(figure)))
    drawn = [_figure(figure, cell.unit, words) for _, figure in points]
    at_least = any(isinstance(figure, Interval) for _, figure in points)
    return _Line(cell.name, cell.unit, places, drawn, words, at_least)


def _is_word(figure: object) -> bool:
    """Texts and flags, and what is told as a text: packs."""
    return not isinstance(figure, Quantity | Interval | Exception)


def _word(figure: object) -> str:
    return told(figure) if isinstance(figure, bool) else str(figure)


def _figure(figure: object, unit: str, words: Sequence[str]) -> Fraction | None:
    if _is_word(figure):
        return Fraction(words.index(_word(figure)))
    amount = figure.low if isinstance(figure, Interval) else figure
    return number_in(amount, unit) if isinstance(amount, Quantity) else None


def goes_in_steps(figures: Sequence[Fraction | None]) -> bool:
    """Whether it stands still and jumps by turns; a figure that only bends does not."""
    known = [figure for figure in figures if figure is not None]
    moves = [a != b for a, b in itertools.pairwise(known)]
    runs = [(moving, len(list(run))) for moving, run in itertools.groupby(moves)]
    jumps = [length for moving, length in runs if moving]
    return 0 < len(jumps) < len(runs) and (min(jumps) == 1 or len(runs) > 3)


def _grouped(lines: Sequence[_Line]) -> list[list[_Line]]:
    """Lines of one unit and size together; those of words each apart."""
    groups: list[list[_Line]] = []
    for line in lines:
        home = next((group for group in groups if _fits(line, group)), None)
        if home is None:
            groups.append([line])
        else:
            home.append(line)
    return groups


def _fits(line: _Line, group: Sequence[_Line]) -> bool:
    if line.words or group[0].words or line.unit != group[0].unit:
        return False
    return share_a_scale([one.largest() for one in (*group, line)])


def _height(group: Sequence[_Line]) -> float:
    words = min(len(group[0].words), _MOST_WORDS)
    return 1.0 + ROW_HEIGHT * words if words else _HEIGHT


def _draw(axes: Axes, group: Sequence[_Line], steps: Collection[str] | None) -> None:
    for i, line in enumerate(group):
        in_steps = goes_in_steps(line.figures) if steps is None else line.name in steps
        _draw_line(axes, line, i, in_steps or bool(line.words))
    if group[0].words:
        _name_words(axes, group[0])
    else:
        named_y(axes, group[0].unit or "plain number")
    if len(group) > 1:
        as_written(axes.legend(frameon=False).get_texts())
    finish(axes)


def _named(line: _Line) -> str:
    return f"{lettered(line.name)}{', at least' if line.at_least else ''}"


def _draw_line(axes: Axes, line: _Line, nth: int, in_steps: bool) -> None:
    colour, dash = CYCLE[nth % len(CYCLE)], LINES[nth % len(LINES)]
    marker = MARKERS[nth % len(MARKERS)]
    label = _named(line)
    for run in _unbroken(line):
        places, figures = [p for p, _ in run], [f for _, f in run]
        style: dict[str, Any] = {"color": colour, "linestyle": dash, "linewidth": 1.6}
        if in_steps:
            draw_steps(axes, places, figures, **style)
        else:
            axes.plot([to_draw(p) for p in places], [to_draw(f) for f in figures], **style)
    known = [(p, f) for p, f in zip(line.places, line.figures, strict=True) if f is not None]
    marks = marker if len(line.places) <= _MOST_MARKED else ""
    at, heights = [to_draw(p) for p, _ in known], [to_draw(f) for _, f in known]
    axes.plot(at, heights, color=colour, linestyle="", marker=marks, markersize=4)
    # What the legend shows: the line and its mark in one.
    axes.plot([], [], color=colour, linestyle=dash, marker=marks, markersize=4, label=label)
    failed = [to_draw(p) for p, f in zip(line.places, line.figures, strict=True) if f is None]
    if failed:
        across = axes.get_xaxis_transform()
        look: dict[str, Any] = {"color": ink(), "linestyle": "", "marker": "x", "clip_on": False}
        axes.plot(failed, [0] * len(failed), transform=across, **look)


def _unbroken(line: _Line) -> list[list[tuple[Fraction, Fraction]]]:
    """The stretches in which no point failed."""
    points = zip(line.places, line.figures, strict=True)
    runs = itertools.groupby(points, key=lambda point: point[1] is None)
    return [[(p, f) for p, f in run if f is not None] for failed, run in runs if not failed]


def _name_words(axes: Axes, line: _Line) -> None:
    """A row each, the first at the bottom; very many are not named."""
    if len(line.words) <= _MOST_WORDS:
        axes.set_yticks(range(len(line.words)), [lettered(word) for word in line.words])
        as_written(axes.get_yticklabels())
    else:
        axes.set_yticks([])
        named_y(axes, f"{len(line.words)} texts")
    axes.set_ylim(-0.5, len(line.words) - 0.5)
