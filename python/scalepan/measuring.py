"""Measuring out: exact amounts told as what spoons, cups, jugs, scales and ladles give.

measure_out("47/12 tbsp", "us spoons and cups", measures="us").text
# 3 tbsp + 2 tsp + 1/2 tsp + 1/4 tsp
"""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan._core import MeasureSet, Quantity
from scalepan.conversion import convert
from scalepan.displays import displayed
from scalepan.errors import FoodError, make_error
from scalepan.measure_sets import set_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from scalepan._core import Catalog, Line, Recipe
    from scalepan.conversion import UsedFact

# What an amount is converted to by a food's facts, by the kind that a set measures.
_UNITS = {"weight": "g", "volume": "mL"}


@displayed
class MeasuredOut(NamedTuple):
    """An exact amount as measures give it.

    Attributes:
        text: ``3 tbsp + 2 tsp``.
        pieces: how many fills and readings of which measure, the largest first; empty where all
            measures are too large, and then ``text`` says so.
        amount: what they give.
        exact: what was asked for.
        error: ``amount`` less ``exact``.
        measures: the name of the set.
        facts: those that led from a weight to a volume or back.
    """

    text: str
    pieces: list[tuple[int, str]]
    amount: Quantity
    exact: Quantity
    error: Quantity
    measures: str
    facts: tuple[UsedFact, ...]

    @property
    def error_share(self) -> Fraction:
        """The error as a share of the exact amount; of no amount, 0."""
        return self.error.value / self.exact.value if self.exact else Fraction(0)

    @property
    def told_error(self) -> str:
        """``exact``, or ``2.3 g less than 172.3 g, 1.33 %``."""
        if not self.error:
            return "exact"
        if not self.pieces:
            return f"{_shown(self.exact)} left out"
        share = _percent(abs(self.error_share))
        return f"{abs(self.error).told} {self._way} than {_shown(self.exact)}, {share}"

    @property
    def told_share(self) -> str:
        """``exact``, or ``1.33 % less`` than the exact amount."""
        return f"{_percent(abs(self.error_share))} {self._way}" if self.error else "exact"

    @property
    def _way(self) -> str:
        return "more" if self.error > 0 else "less"

    def __str__(self) -> str:
        return f"{self.text} ({self.told_error})"


class MeasuredLine(NamedTuple):
    """A recipe's line by measures.

    Attributes:
        line: as the recipe has it.
        measured: None where the line stays as it is.
        note: why it does; else empty.
    """

    line: Line
    measured: MeasuredOut | None
    note: str

    @property
    def told(self) -> str:
        """The line as a cook is told it, without its error."""
        if self.measured is None:
            return self.line.told
        parts = (f"{self.measured.text} {self.line.food}", self.line.preparation)
        told = ", ".join(part for part in parts if part)
        note = f" ({self.line.note})" if self.line.note else ""
        return told + note + (" (optional)" if self.line.optional else "")

    @property
    def too_large(self) -> bool:
        """Whether the amount is less than half of the smallest measure, so that none gives it."""
        return self.measured is not None and not self.measured.pieces

    def doubt(self, allowed: Fraction) -> str:
        """What to check where measuring out moves the amount by more than a share of it."""
        if self.measured is None or abs(self.measured.error_share) <= allowed:
            return ""
        spoilt = self.line.rounding_spoils
        more = f"; {spoilt} is easily spoilt by it" if spoilt else ""
        return (
            f"{self.line.id}: measured out, {self.measured.told_error}, where rounding may change "
            f"{_percent(allowed)}{more}"
        )


def measure_out(
    amount: Quantity | str,
    measures_set: MeasureSet | str,
    *,
    measures: str | None = None,
    food: str | None = None,
    state: str | None = None,
    at_most: int | None = None,
    within: Quantity | str | Fraction | None = None,
    catalog: Catalog | None = None,
) -> MeasuredOut:
    """The nearest amount that real measures give, in fewest fills, with its exact error.

    Of two equally near amounts the larger is taken. Of equally short ways the one with the larger
    reading goes first, then the one with more of the larger measure.

    >>> scalepan.measure_out("47/12 tbsp", "us spoons and cups", measures="us").text
    '3 tbsp + 2 tsp + 1/2 tsp + 1/4 tsp'

    Args:
        amount: a weight or a volume, as a quantity or its text, ``"47/12 tbsp"``.
        measures_set: a set or the name of a bundled one (``measure_sets``).
        measures: ``us``, ``metric``, ``imperial`` or ``au``: which spoon ``amount`` means.
        food: by any of its names; leads from a weight to a volume or back.
        state: of the food's volume, ``"chopped"``; left out, the food's default.
        at_most: so many fills and readings at most; left out, any number.
        within: a share of the amount, ``"1 %"``: only the largest measures are used, as few of
            them as come so near; all of them where none do.
        catalog: left out, the bundled one.

    Raises:
        MeasureError: ``measure.unknown_set``, ``measure.kind``, ``measure.negative``,
            ``measure.pieces``, ``measure.within``, ``measure.too_many`` and what reading the
            amount raises.
        FoodError: what ``convert`` raises.
    """
    chosen = set_of(measures_set)
    exact = _core.quantity(amount, measures=measures) if isinstance(amount, str) else amount
    facts: tuple[UsedFact, ...] = ()
    if food is not None and _kind_of(exact) != chosen.dimension:
        unit = _UNITS[chosen.dimension]
        way = convert(exact, unit, food=food, measures=measures, state=state, catalog=catalog)
        exact, facts = way.amount, way.facts
    share = None if within is None else share_of(within)
    pieces, text, given, error = chosen.nearest(exact, at_most, share)
    return MeasuredOut(text, pieces, given, exact, error, chosen.name, facts)


def measure_out_recipe(
    recipe: Recipe,
    *,
    volumes: MeasureSet | str | None = None,
    weights: MeasureSet | str | None = None,
    within: Quantity | str | Fraction | None = None,
    catalog: Catalog | None = None,
) -> list[MeasuredLine]:
    """Every line of a recipe by the measures at hand: ``measure_out_lines`` of ``recipe.lines``,
    at the size wanted; by the facts it was read by, where no ``catalog`` is given."""
    own = recipe.catalog if catalog is None else catalog
    return measure_out_lines(
        recipe.lines, volumes=volumes, weights=weights, within=within, catalog=own
    )


def measure_out_lines(
    lines: Iterable[Line],
    *,
    volumes: MeasureSet | str | None = None,
    weights: MeasureSet | str | None = None,
    within: Quantity | str | Fraction | None = None,
    catalog: Catalog | None = None,
) -> list[MeasuredLine]:
    """Lines by the measures at hand, whatever they were written in.

    Args:
        lines: of a recipe, or what a step of its method uses.
        volumes: the set for volumes; left out, volumes are weighed where the food's facts allow.
        weights: the set for weights; left out, weights are measured by volume where the facts
            allow.
        within: a share, ``"1 %"``, as ``measure_out`` takes it.
        catalog: foods and facts; left out, the bundled ones.

    Lines that are counted, or whose food lacks the fact, stay as they are; their note says why.

    Raises:
        MeasureError: ``measure.unknown_set``, ``measure.kind``.
    """
    sets = {
        kind: set_of(given)
        for kind, given in (("volume", volumes), ("weight", weights))
        if given is not None
    }
    for kind, chosen in sets.items():
        if chosen.dimension != kind:
            message = f'the set for {kind}s is "{chosen.name}", which measures {chosen.dimension}'
            raise make_error("measure.kind", message, f"name it as the one for {chosen.dimension}s")
    return [_measured_line(line, sets, within, catalog) for line in lines]


def _measured_line(
    line: Line,
    sets: Mapping[str, MeasureSet],
    within: Quantity | str | Fraction | None,
    catalog: Catalog | None,
) -> MeasuredLine:
    if line.amount is None:
        return MeasuredLine(line, None, "no amount")
    kind = _kind_of(line.amount)
    if kind not in _UNITS:
        return MeasuredLine(line, None, "counted")
    if line.drained_later:
        return MeasuredLine(line, None, "counted, since it is drained later")
    if not sets:
        return MeasuredLine(line, None, "no set of measures is named")
    chosen = sets[kind] if kind in sets else next(iter(sets.values()))
    state = line.state or None
    try:
        measured = measure_out(
            line.amount, chosen, food=line.food, state=state, within=within, catalog=catalog
        )
    except FoodError as error:
        return MeasuredLine(line, None, error.message)
    return MeasuredLine(line, measured, "")


def share_of(within: Quantity | str | Fraction) -> Quantity:
    """``"1 %"`` or 1/100 as a plain quantity."""
    return _core.quantity(within) if isinstance(within, str | Fraction) else within


def _kind_of(amount: Quantity) -> str:
    """``weight`` or ``volume``, whatever the stage; another word for anything else."""
    return amount.dimension.split(" ")[0]


def _shown(amount: Quantity) -> str:
    """The exact figure where it is short."""
    longest = 20
    exact = str(amount)
    return exact if len(exact) <= longest else amount.told


def _percent(share: Fraction) -> str:
    """To a hundredth, rounded half up, but never to nothing."""
    least = Fraction(1, 100)
    percent = share * 100
    if percent < least:
        return "below 0.01 %"
    return f"{_core.fixed_text(percent, 2)} %"
