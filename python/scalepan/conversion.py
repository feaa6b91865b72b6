"""Amounts in another unit, with the facts used and the spread these leave."""

from __future__ import annotations

from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan._core import Catalog, Quantity
from scalepan.displays import displayed
from scalepan.errors import MeasureError
from scalepan.foods import bundled_catalog

if TYPE_CHECKING:
    from fractions import Fraction


class OtherFact(NamedTuple):
    """Another figure on the very thing that a used fact is about.

    Attributes:
        id: what ``catalog_with(prefer=...)`` takes.
        value: in the fact's unit.
        source: where it is published.
    """

    id: str
    value: Quantity
    source: str

    def __str__(self) -> str:
        text = str(self.value)
        if "/" in _core.exact_text(self.value.value):
            text = f"≈ {_core.fixed_text(self.value.value, 4)} {self.value.unit}"
        return f"beside it: {text} ({self.source})"


class UsedFact(NamedTuple):
    """A fact that a conversion went through.

    Attributes:
        id: of the fact.
        value: in the fact's unit.
        divides: whether the amount was divided by it, not multiplied.
        source: where it is published.
        beside: the other figures on the same thing, which were not used: the layers own, bundled
            and dataset in this order, then the first id, decide which one is.
    """

    id: str
    value: Quantity
    divides: bool
    source: str
    beside: tuple[OtherFact, ...] = ()


@displayed
class Conversion(NamedTuple):
    """An amount in another unit, with the facts used and the spread these leave.

    Attributes:
        amount: in the unit asked for.
        facts: in the order they were gone by.
        low, high: the worst case: every fact off to the same side at once.
        rss_low, rss_high: root-sum-square: the facts off independently of one another, so the
            relative spreads add up as the root of the sum of their squares. A root that does not
            end is rounded up at 12 places, and the bounds never lie outside the worst case; with
            one fact both are the same.
    """

    amount: Quantity
    facts: tuple[UsedFact, ...]
    low: Quantity
    high: Quantity
    rss_low: Quantity
    rss_high: Quantity

    @property
    def value(self) -> Fraction:
        """The exact figure in the unit asked for."""
        return self.amount.value

    def __str__(self) -> str:
        return str(self.amount)


def convert(
    amount: Quantity | str,
    unit: str,
    *,
    food: str | None = None,
    measures: str | None = None,
    state: str | None = None,
    size: str | None = None,
    preparation: str | None = None,
    region: str | None = None,
    catalog: Catalog | None = None,
) -> Conversion:
    """An amount in another unit, by way of the food's facts where the kinds differ.

    Where two figures on one thing are known, the first by layer and id is used and the others
    stand in ``beside`` of its fact. To use another one, name it:
    ``catalog=catalog_with(prefer=["carrot.edible.afrs"])``, or lay an own fact over both.

    >>> print(scalepan.convert("1 kg AP", "g EP", food="carrots"))
    890 g EP

    Args:
        amount: a quantity or its text, ``"2 cup"``.
        unit: the unit wanted, ``"g"``, ``"g AP"``, ``"piece"``.
        food: by its id or any of its names; needed between weight, volume, count and stages.
        measures: ``us``, ``metric``, ``imperial`` or ``au``: which cup is meant.
        state: of a volume, ``"chopped"``; left out, the food's default.
        size: of a count, ``"large"``; left out, the food's default.
        preparation: words such as ``"peeled"``; a share for all words of its own among these goes
            before the food's plain share.
        region: whose names are meant, ``"GB"``, where one name has several foods.
        catalog: left out, the bundled one.

    Raises:
        MeasureError: ``unit.which_measures``, ``unit.unknown``, ``quantity.convert`` and others.
        FoodError: ``food.unknown``, ``food.ambiguous``, ``food.region``, ``convert.no_fact``,
            ``convert.stage``.
    """
    given = _core.quantity(amount, measures=measures) if isinstance(amount, str) else amount
    if food is None:
        plain = _without_food(given, unit, measures or "")
        return Conversion(plain, (), plain, plain, plain, plain)
    result, facts, *bounds = _core.convert(
        catalog or bundled_catalog(),
        given,
        unit,
        food,
        measures or "",
        state or "",
        size or "",
        (preparation or "").replace(",", " ").split(),
        region or "",
    )
    return Conversion(result, tuple(_used(*fact) for fact in facts), *bounds)


def _without_food(amount: Quantity, unit: str, measures: str) -> Quantity:
    try:
        return amount.to(unit, measures)
    except MeasureError as error:
        wanted = _core.quantity(1, unit, measures)
        kinds = {each.dimension.split()[0] for each in (amount, wanted)}
        if error.code != "quantity.convert" or not kinds <= {"weight", "volume", "count"}:
            raise
        hint = 'say of which food: food="granulated sugar"'
        raise MeasureError(error.code, error.message, hint) from None


def _used(
    fact: str,
    value: Quantity,
    divides: bool,
    source: str,
    beside: tuple[tuple[str, Quantity, str], ...],
) -> UsedFact:
    return UsedFact(fact, value, divides, source, tuple(OtherFact(*other) for other in beside))
