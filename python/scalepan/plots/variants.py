"""Variants of a sheet side by side."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from scalepan._core import Interval, Quantity
from scalepan.plots.bars import Row, filled, height_of, name_rows
from scalepan.plots.colours import CYCLE, HATCHES
from scalepan.plots.lettering import lettered
from scalepan.plots.pictures import (
    finish,
    headed,
    ink,
    named_x,
    nothing_drawn,
    number_in,
    panels,
    share_a_scale,
    to_draw,
)
from scalepan.sheet_comparison import AS_IT_IS, signed, told

if TYPE_CHECKING:
    from collections.abc import Sequence

    from matplotlib.axes import Axes

    from scalepan.plots.pictures import GivenAxes
    from scalepan.sheet_comparison import Comparison, Outcome

_GAP = 0.5
_BAR = 0.75
_WORDS_WIDTH = 42


def plot_variants(comparison: Comparison, *, title: str = "", axes: GivenAxes = None) -> list[Axes]:
    """Cells of a sheet as it is and in its variants, with the differences.

    Cells of one kind and size share a panel, others have panels of their own, in the unit of their
    first figure. Of a total that is known only as "at least", the bar goes to its least, and an
    arrow on from there; of an interval a stroke goes on to its end. Texts, flags and errors are
    told beside empty rows.

    Args:
        comparison: of ``sheet.compare(["till", "leeks.buy"])``.
        title: above the picture.
        axes: as many to draw into as there are panels.

    Returns:
        Axes from the top down, the figures along x.

    Raises:
        PlotError: ``plot.library``, ``plot.axes``, ``plot.too_large``.
    """
    blocks = _blocks(comparison)
    groups = _grouped(blocks)
    rows_of = 1 + _GAP + 1 + len(comparison.variants)
    heights = [height_of(len(group) * rows_of) for group in groups]
    drawn = panels(axes, heights or [height_of(0)], what="a plot of variants")
    headed(drawn[0], title)
    if not groups:
        nothing_drawn(drawn[0], "no cell is compared")
    for panel, group in zip(drawn, groups, strict=False):
        _draw(panel, group)
    return drawn


class _Block(NamedTuple):
    """One cell: what it comes out as in each variant and how much more that is; the kind and the
    unit it is drawn in, empty where it has no amount."""

    cell: str
    outcomes: list[tuple[str, Outcome, Quantity | None]]
    kind: str
    unit: str

    def largest(self) -> Fraction:
        figures = [_low(outcome, self) for _, outcome, _ in self.outcomes]
        return max((abs(figure) for figure in figures if figure is not None), default=Fraction(0))


def _blocks(comparison: Comparison) -> list[_Block]:
    found = []
    for cell in comparison.cells:
        outcomes: list[tuple[str, Outcome, Quantity | None]] = [
            (name, comparison.outcome(cell, name), comparison.difference(cell, name))
            for name in comparison.variants
        ]
        outcomes.insert(0, (AS_IT_IS, comparison.outcome(cell), None))
        amounts = [amount for _, one, _ in outcomes if (amount := _amount(one)) is not None]
        kind, unit = (amounts[0].dimension, amounts[0].unit) if amounts else ("", "")
        found.append(_Block(cell, outcomes, kind, unit))
    return found


def _amount(outcome: Outcome) -> Quantity | None:
    """Where its bar ends."""
    if isinstance(outcome, Interval):
        return outcome.low
    return outcome if isinstance(outcome, Quantity) else None


def _low(outcome: Outcome, block: _Block) -> Fraction | None:
    amount = _amount(outcome)
    if amount is None or amount.dimension != block.kind:
        return None
    return number_in(amount, block.unit)


def _grouped(blocks: Sequence[_Block]) -> list[list[_Block]]:
    """Together what can be read off one axis, in the order of the cells."""
    groups: list[list[_Block]] = []
    for block in blocks:
        home = next((group for group in groups if _fits(block, group)), None)
        if home is None:
            groups.append([block])
        else:
            home.append(block._replace(unit=home[0].unit))
    return groups


def _fits(block: _Block, group: Sequence[_Block]) -> bool:
    if block.kind != group[0].kind:
        return False
    sizes = [one._replace(unit=group[0].unit).largest() for one in (*group, block)]
    return share_a_scale(sizes)


def _draw(axes: Axes, group: Sequence[_Block]) -> None:
    rows: list[Row] = []
    place = 0.0
    for block in group:
        rows.append(Row(place, block.cell, "", heads=True))
        for i, (variant, outcome, more) in enumerate(block.outcomes):
            place += 1
            rows.append(Row(place, variant, _told(outcome, more)))
            _draw_bar(axes, block, outcome, place, i)
        place += 1 + _GAP
    name_rows(axes, rows)
    if group[0].kind:
        axes.axvline(0, color=ink(), linewidth=0.8)
        named_x(axes, group[0].unit or "plain number")
    else:
        axes.set_xticks([])
        axes.spines[["left", "bottom"]].set_visible(False)
    finish(axes, "x")


def _draw_bar(axes: Axes, block: _Block, outcome: Outcome, place: float, variant: int) -> None:
    low = _low(outcome, block)
    if low is None:
        return
    colour = CYCLE[variant % len(CYCLE)]
    look = filled(axes, colour, HATCHES[variant % len(HATCHES)])
    axes.barh([place], [to_draw(low)], height=_BAR, **look)
    if not isinstance(outcome, Interval):
        return
    if outcome.high is None:
        axes.plot([to_draw(low)], [place], marker=">", color=colour, markersize=7, clip_on=False)
    else:
        ends = [to_draw(low), to_draw(number_in(outcome.high, block.unit))]
        axes.plot(ends, [place, place], marker="|", color=ink())


def _told(outcome: Outcome, more: Quantity | None) -> str:
    """Of what is no figure a long text is cut."""
    text = told(outcome)
    if _amount(outcome) is None:
        return lettered(text, _WORDS_WIDTH)
    return f"{text} ({signed(more)})" if more else text
