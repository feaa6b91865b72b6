"""Where the money of a dish goes."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.plots.bars import LEGEND_ROOM, Bar, draw_bars, height_of
from scalepan.plots.lettering import listed
from scalepan.plots.pictures import (
    finish,
    headed,
    in_unit,
    money,
    named_x,
    nothing_drawn,
    one_panel,
)

if TYPE_CHECKING:
    from matplotlib.axes import Axes

    from scalepan._core import Costing
    from scalepan.plots.pictures import GivenAxes

_KINDS = ("used", "thrown")
_MOST_ROWS = 30


def plot_shares(costing: Costing, *, title: str = "", axes: GivenAxes = None) -> Axes:
    """What each item takes of what a dish bears: the part used and the part thrown away.

    The dearest item is on top; beside it stand what it bears and its share, rounded half up. Of
    more than 30 items the cheapest are one row. Where lines have no price, what the dish bears is
    told as "at least".

    Args:
        costing: of ``scalepan.cost``; figures changed on its sheet count as changed.
        title: above the picture.
        axes: one to draw into.

    Returns:
        The axes drawn into, money along x.

    Raises:
        PlotError: ``plot.library``, ``plot.axes``, ``plot.too_large``.
    """
    bars = _bars(costing)
    drawn = one_panel(axes, height_of(len(bars)), "a plot of shares")
    headed(drawn, title, _said(costing), room=LEGEND_ROOM if bars else 0)
    if not bars:
        nothing_drawn(drawn, "no line of the dish has a price")
        return drawn
    draw_bars(drawn, bars, _KINDS)
    named_x(drawn, in_unit("borne", costing.borne.unit))
    finish(drawn, "x")
    return drawn


def _bars(costing: Costing) -> list[Bar]:
    parts = _parts_of_items(costing)
    dearest = sorted(parts, key=lambda item: (-sum(parts[item]), item))
    if len(dearest) > _MOST_ROWS:
        rest = dearest[_MOST_ROWS - 1 :]
        dearest = dearest[: _MOST_ROWS - 1]
        name = f"{len(rest)} others"
        parts[name] = [sum((parts[item][i] for item in rest), Fraction(0)) for i in range(2)]
        dearest.append(name)
    return [
        Bar(item, list(zip(_KINDS, parts[item], strict=True)), _told(costing, sum(parts[item])))
        for item in dearest
    ]


def _parts_of_items(costing: Costing) -> dict[str, list[Fraction]]:
    """Used and thrown of each item: the sums over its lines, whose cells stand in their order."""
    sheet = costing.sheet
    found: dict[str, list[Fraction]] = {}
    for i, kind in enumerate(_KINDS):
        cells = iter([name for name in costing.cells if _is_of_a_line(name, kind)])
        for row in costing.shopping:
            parts = found.setdefault(row.item, [Fraction(0), Fraction(0)])
            for _ in row.lines:
                figure = sheet.value(next(cells))
                assert isinstance(figure, _core.Quantity)
                parts[i] += figure.value
    return found


def _is_of_a_line(cell: str, kind: str) -> bool:
    return cell.endswith(f".{kind}") and not cell.startswith("per_portion.")


def _told(costing: Costing, borne: Fraction | int) -> str:
    told = money(Fraction(borne), costing.borne.unit)
    if not costing.borne:
        return told
    share = Fraction(borne) / costing.borne.value * 100
    return f"{told}, {_core.fixed_text(share, 1)} %"


def _said(costing: Costing) -> str:
    at_least = "at least " if costing.unpriced else ""
    said = f"borne: {at_least}{costing.borne.told_money}"
    if costing.thrown:
        said += f", of which {costing.thrown.told_money} thrown"
    return f"{said}\nnot priced: {listed(costing.unpriced)}" if costing.unpriced else said
