"""What the trials of a yield test left, each beside the others and beside what is published."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan.errors import FoodError
from scalepan.foods import bundled_catalog
from scalepan.plots.bars import Row, height_of, name_rows
from scalepan.plots.colours import BLUE, GREEN, ORANGE, PURPLE
from scalepan.plots.lettering import NOTE_WIDTH, lettered
from scalepan.plots.pictures import finish, headed, named_x, nothing_drawn, panels, to_draw
from scalepan.yield_tests import MEAN_OF_RATIOS, RATIO_OF_SUMS

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction
    from typing import TypeAlias

    from matplotlib.axes import Axes

    from scalepan._core import Catalog, Fact, Quantity, YieldShare, YieldTrial
    from scalepan.plots.pictures import GivenAxes
    from scalepan.yield_tests import YieldTest

    # Name, kind, share, spread.
    _Summary: TypeAlias = tuple[str, str, Fraction, tuple[Fraction, Fraction] | None]

_TRIAL, _PUBLISHED = "trial", "published"
_LOOKS = {
    _TRIAL: ("o", BLUE, 6),
    MEAN_OF_RATIOS: ("s", ORANGE, 7),
    RATIO_OF_SUMS: ("^", GREEN, 8),
    _PUBLISHED: ("D", PURPLE, 7),
}
_WEIGHTS = {
    "AP": "bought",
    "EP": "edible",
    "drained": "drained",
    "cooked": "cooked",
    "served": "served",
}
_MOST_SOURCES = 3
# More trials than these share the room of so many, and are named no more.
_MOST_NAMED = 16


def plot_trials(
    test: YieldTest,
    *,
    shares: Sequence[YieldShare] | None = None,
    catalog: Catalog | None = None,
    title: str = "",
    axes: GivenAxes = None,
) -> list[Axes]:
    """The shares of a yield test: every trial as a dot, their two means, and what is published.

    A panel for each share, in its unit: ``EP/AP``, ``cooked/EP`` and so on. A band goes from the
    lowest to the highest trial. A diamond is a published figure, of the bundled facts or of a
    dataset, with its source; its own range is a line where one is published.

    Args:
        test: of ``scalepan.read_yield_test``.
        shares: those to draw, such as ``[test.share("EP", of="AP")]``; left out, all.
        catalog: in which the food of the test is looked up; left out, the bundled one.
        title: above the picture.
        axes: as many to draw into as there are shares.

    Returns:
        Axes in the order of the shares, the ratio along x.

    Raises:
        PlotError: ``plot.library``, ``plot.axes``.
    """
    wanted = test.shares if shares is None else list(shares)
    facts, unknown = _published(test.food, bundled_catalog() if catalog is None else catalog)
    points = [_points(test.trials, share, facts) for share in wanted]
    heights = [height_of(int(max(point.row.place for point in one)) + 1) for one in points]
    drawn = panels(axes, heights or [height_of(0)], what="a plot of trials")
    for panel, share, found in zip(drawn, wanted, points, strict=False):
        _draw(panel, share, found)
    heading = title or (f"yield test of {test.food}" if test.food else "")
    for i, (panel, share) in enumerate(zip(drawn, wanted, strict=False)):
        said = _sources(facts, share) or (unknown if i == 0 else "")
        headed(panel, heading if i == 0 else "", said)
    if not wanted:
        headed(drawn[0], heading)
        nothing_drawn(drawn[0], "the yield test weighed no share")
    return drawn


class Point(NamedTuple):
    row: Row
    kind: str
    share: Fraction
    spread: tuple[Fraction, Fraction] | None = None


def _points(trials: Sequence[YieldTrial], share: YieldShare, facts: Sequence[Fact]) -> list[Point]:
    own = [
        (trial.name, ratio)
        for trial in trials
        if (ratio := ratio_of(trial, share.stage, share.of)) is not None
    ]
    step = min(1.0, _MOST_NAMED / len(own))
    points = [
        Point(_row(i * step, f"trial {name}", ratio), _TRIAL, ratio)
        for i, (name, ratio) in enumerate(own)
    ]
    below = points[-1].row.place + 1
    summaries = [*_means(share), *_of_facts(facts, share)]
    for i, (name, kind, ratio, spread) in enumerate(summaries):
        points.append(Point(_row(below + i, name, ratio), kind, ratio, spread))
    return points


def _means(share: YieldShare) -> list[_Summary]:
    """Of a single trial both are that trial."""
    ratio = share.share
    if ratio.trials == 1:
        return []
    spread = (ratio.low.value, ratio.high.value)
    return [
        (MEAN_OF_RATIOS, MEAN_OF_RATIOS, ratio.mean_of_ratios.value, spread),
        (RATIO_OF_SUMS, RATIO_OF_SUMS, ratio.ratio_of_sums.value, None),
    ]


def _of_facts(facts: Sequence[Fact], share: YieldShare) -> list[_Summary]:
    return [
        (
            f"{_PUBLISHED}, {fact.state}" if fact.state else _PUBLISHED,
            _PUBLISHED,
            fact.value.value,
            (fact.low.value, fact.high.value) if fact.low and fact.high else None,
        )
        for fact in _about(facts, share)
    ]


def _sources(facts: Sequence[Fact], share: YieldShare) -> str:
    """A line each."""
    about = _about(facts, share)
    told = [f"{_PUBLISHED} {_number(fact.value.value)}: {fact.source}" for fact in about]
    lines = [lettered(line, NOTE_WIDTH) for line in told[:_MOST_SOURCES]]
    return "\n".join([*lines, f"and {len(told) - _MOST_SOURCES} more"][: len(told)])


def _about(facts: Sequence[Fact], share: YieldShare) -> list[Fact]:
    return [fact for fact in facts if fact.value.unit == f"{share.stage}/{share.of}"]


def _row(place: float, name: str, ratio: Fraction) -> Row:
    return Row(place, name, _number(ratio))


def _number(ratio: Fraction) -> str:
    """The axis has the unit."""
    return _core.quantity(ratio).told


def _published(food: str, catalog: Catalog) -> tuple[list[Fact], str]:
    """The facts of others about the food, and why there are none where its name is no help."""
    try:
        found = catalog.food_of(food) if food else None
        facts = catalog.facts(found) if found else []
    except FoodError as error:
        return [], f"no published share: {error.message}"
    return [fact for fact in facts if fact.layer != "own"], ""


def ratio_of(trial: YieldTrial, stage: str, of: str) -> Fraction | None:
    """The trial's own share; None where it lacks a weight.

    Of what was bought, only the part that went into the pan stands behind what was cooked.
    """
    above: Quantity | None = getattr(trial, _WEIGHTS[stage])
    below: Quantity | None = trial.into_the_pan if of == "EP" else getattr(trial, _WEIGHTS[of])
    if above is None or below is None:
        return None
    ratio = (above / below).to(f"{stage}/{of}").value
    if of == "AP" and stage in ("cooked", "served") and trial.edible and trial.into_the_pan:
        ratio *= (trial.edible / trial.into_the_pan).value
    return ratio


def _draw(axes: Axes, share: YieldShare, points: Sequence[Point]) -> None:
    trials = [point for point in points if point.kind == _TRIAL]
    if len(trials) > 1:
        low, high = (to_draw(end.value) for end in (share.share.low, share.share.high))
        axes.axvspan(low, high, color=BLUE, alpha=0.15, linewidth=0)
    for kind, (marker, colour, size) in _LOOKS.items():
        shown = [point for point in points if point.kind == kind]
        places = [point.row.place for point in shown]
        for point in shown:
            if point.spread:
                ends = [to_draw(end) for end in point.spread]
                axes.plot(ends, [point.row.place] * 2, color=colour, marker="|", linewidth=1.2)
        figures = [to_draw(point.share) for point in shown]
        axes.plot(figures, places, marker, color=colour, markersize=size, label=kind)
    name_rows(axes, _named([point.row for point in points], len(trials)))
    axes.set_ylim(bottom=points[-1].row.place + 0.6, top=-0.6)
    axes.margins(x=0.08)
    axes.locator_params(axis="x", nbins=6)
    named_x(axes, f"{share.stage}/{share.of}")
    finish(axes)


def _named(rows: list[Row], trials: int) -> list[Row]:
    """Very many trials are named together."""
    if trials <= _MOST_NAMED:
        return rows
    return [Row(_MOST_NAMED / 2, f"{trials} trials", ""), *rows[trials:]]
