"""Curves, as the command line prints them: each point, and what is worth knowing about them."""

from __future__ import annotations

from itertools import count
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import packs_document
from scalepan.command_line.report import bare_money, in_currency, packs_text
from scalepan.command_line.sections import NOTE, Rows, Section, Table, Texts, report_lines
from scalepan.costs import COSTS
from scalepan.errors import make_error
from scalepan.progress import progress_bar

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Sequence
    from fractions import Fraction

    from scalepan._core import CheapestCount, CountRun, Curve


def curve_lines(curve: Curve, width: int) -> Iterator[str]:
    """What the terminal is told, with a bar while it is long in the making."""
    with progress_bar(len(curve.portions), "curve") as bar:
        yield from report_lines(curve_sections(curve, bar), width)


def curve_sections(curve: Curve, progress: Callable[[int], None] | None = None) -> list[Section]:
    """The points, the breakpoints, and the numbers of portions to look for.

    ``progress`` is called with how many of the points are told.
    """
    return [
        _points_section(curve, progress),
        _cheapest_section(curve),
        _dominated_section(curve),
        _even_section(curve),
        _breakpoints_section(curve),
    ]


def curve_document(curve: Curve) -> dict[str, Any]:
    """All of it exact, for ``--json``."""
    return {
        "currency": curve.currency,
        "kernel": curve.kernel,
        "portions": _texts(curve.portions),
        **{name: _texts(getattr(curve, name)) for name in COSTS},
        "breakpoints": [
            {
                "portions": str(point.portions),
                "item": point.item,
                "packs_before": packs_document(point.packs_before),
                "packs": packs_document(point.packs),
            }
            for point in curve.breakpoints
        ],
        "even": [{"item": even.item, "portions": _runs(even.counts)} for even in curve.even_counts],
        "cheapest": {name: _cheapest(curve.cheapest(name)) for name in COSTS},
        "dominated": {name: _dominated(curve, name) for name in COSTS},
        "unpriced": curve.unpriced,
    }


def save_plot(curve: Curve, name: str, path: str) -> None:
    """Draws it into a file. Raises FileError (``file.plot``) and PlotError."""
    from scalepan.plots import plot_curve
    from scalepan.plots.pictures import figure_of

    figure = figure_of(plot_curve(curve, title=name)[0])
    try:
        figure.savefig(path, dpi=150)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or str(problem)
        raise make_error("file.plot", f"cannot write the plot: {reason}", file=path) from None


def _points_section(curve: Curve, progress: Callable[[int], None] | None) -> Section:
    points = list(
        zip(curve.portions, curve.till, curve.used, curve.thrown, curve.borne, strict=True)
    )
    header = ("portions", *COSTS, "till each", "borne each")
    told = count(1)

    def row(point: tuple[Fraction, ...]) -> tuple[str, ...]:
        if progress is not None:
            progress(next(told))
        return _point_row(curve, *point)

    rows = Rows(points, row)
    body = Table(header, rows, range(len(header)), whole="curve.portions, curve.till, ...")
    missing = f"At least: not priced: {', '.join(curve.unpriced)}."
    notes = Texts([missing] if curve.unpriced else [], NOTE)
    least = ", at least" if curve.unpriced else ""
    return Section(f"Costs by portions{least}{in_currency(curve.currency)}", (body, notes))


def _point_row(curve: Curve, portions: Fraction, *costs: Fraction) -> tuple[str, ...]:
    return (
        _core.exact_text(portions),
        *(_money(curve, cost) for cost in costs),
        _money(curve, costs[0] / portions),
        _money(curve, costs[3] / portions),
    )


def _breakpoints_section(curve: Curve) -> Section:
    rows = Rows(
        curve.breakpoints,
        lambda point: (
            _core.exact_text(point.portions),
            point.item,
            packs_text(point.packs_before),
            packs_text(point.packs),
        ),
    )
    body = Table(("from", "item", "packs before", "packs then"), rows, (0,), "curve.breakpoints")
    return _unless_empty("Where the packs change", body)


def _even_section(curve: Curve) -> Section:
    rows = [
        (even.item, "; ".join(str(run) for run in even.counts) or "at none of these")
        for even in curve.even_counts
    ]
    body = Table(("item", "portions"), rows, whole="curve.even_counts")
    return _unless_empty("Where packs come out even, with nothing left", body)


def _cheapest_section(curve: Curve) -> Section:
    rows = []
    for name in COSTS:
        if (best := curve.cheapest(name)) is not None:
            counts = "; ".join(str(run) for run in best.counts)
            rows.append((name, _money(curve, best.per_portion), counts))
    of_priced = ", of what has a price" if curve.unpriced else ""
    return _unless_empty(
        f"Least a portion{of_priced}", Table(("cost", "a portion", "at portions"), rows, (1,))
    )


def _dominated_section(curve: Curve) -> Section:
    rows = Rows(
        curve.dominated(),
        lambda point: (
            _core.exact_text(point.first)
            if point.first == point.last
            else f"{_core.exact_text(point.first)} to {_core.exact_text(point.last)}",
            _core.exact_text(point.by),
            _money(curve, point.costs),
        ),
    )
    header = ("portions", "so many cost no more", "till")
    body = Table(header, rows, (0, 1, 2), whole="curve.dominated()")
    return _unless_empty("Where a larger batch costs no more at the till", body)


def _unless_empty(title: str, body: Table) -> Section:
    return Section(title, (body,)) if body.rows else Section()


def _money(curve: Curve, amount: Fraction) -> str:
    return bare_money(_core.quantity(amount, curve.currency))


def _dominated(curve: Curve, name: str) -> list[dict[str, str]]:
    return [
        {
            "first": str(point.first),
            "last": str(point.last),
            "by": str(point.by),
            "costs": str(point.costs),
        }
        for point in curve.dominated(name)
    ]


def _cheapest(best: CheapestCount | None) -> dict[str, Any] | None:
    if best is None:
        return None
    return {
        "portions": str(best.portions),
        "per_portion": str(best.per_portion),
        "all": _runs(best.counts),
    }


def _runs(runs: Sequence[CountRun]) -> list[dict[str, str]]:
    return [
        {"first": str(run.first), "last": str(run.last), "every": str(run.every)} for run in runs
    ]


def _texts(values: Sequence[Fraction]) -> list[str]:
    return [str(value) for value in values]
