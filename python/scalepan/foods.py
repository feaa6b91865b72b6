"""The catalogue of foods and facts: the bundled one, and facts of your own laid over it."""

from __future__ import annotations

import os
from functools import cache
from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan._core import Catalog, Quantity
from scalepan.errors import Error, make_error
from scalepan.files import read_text

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping
    from fractions import Fraction

    from scalepan.files import PathLike

FACT_COLUMNS = (
    "fact",
    "food",
    "kind",
    "state",
    "size",
    "from_stage",
    "to_stage",
    "value",
    "low",
    "high",
    "source",
)


_KIND_STAGES = {
    "density": ("any", "any"),
    "piece": ("AP", "EP"),
    "edible": ("AP", "EP"),
    "cooked": ("EP", "cooked"),
    "drained": ("AP", "drained"),
}


@cache
def bundled_catalog() -> Catalog:
    """The foods, names and facts that come with the package; read once.

    Every fact has its source beside it (``data/facts.csv``), mostly USDA SR28.
    """
    catalog = Catalog()
    for row in _rows("foods.csv"):
        names = [row[key] for key in ("food", "name", "plural", "default_state", "default_size")]
        catalog.add_food(
            names,
            _parts(row["allergens_eu"]),
            _parts(row["allergens_us"]),
            _parts(row["cautions"]),
        )
    for row in _rows("names.csv"):
        near = row["match"] == "near"
        catalog.add_name(row["name"], row["plural"], row["region"], row["food"], near)
    for row in _rows("facts.csv"):
        catalog.add_fact([row[column] for column in FACT_COLUMNS], "bundled")
    return catalog


def catalog_with(facts: Iterable[Mapping[str, str]]) -> Catalog:
    """The bundled catalogue with facts of your own laid over it; own facts win.

    Each fact has the columns of ``FACT_COLUMNS``; fact, food, kind and value are required. Stages
    left out are those of the kind. ``food`` is a food's id or any of its names.

    Raises:
        FoodError: ``fact.value``, ``fact.kind``, ``fact.stage``, ``fact.duplicate`` or
            ``food.unknown``.
    """
    catalog = bundled_catalog().copy()
    for fact in facts:
        _add_own(catalog, fact)
    return catalog


def read_facts(path: PathLike) -> Catalog:
    """The bundled catalogue with the facts of a CSV file laid over it; those win.

    The file has the columns of ``FACT_COLUMNS``; fact, food, kind and value are required. Stages
    left out are those of the kind (an edible share leads from AP to EP). ``food`` is a food's id
    or any of its names.

    Raises:
        FoodError: ``fact.column``, ``fact.fields``, ``fact.no_rows``, ``fact.syntax``, and what
            ``catalog_with`` raises, each with file and line.
    """
    from scalepan.csv_document import Columns, read_rows  # here: `import scalepan` stays quick

    required = ("fact", "food", "kind", "value")
    optional = [column for column in FACT_COLUMNS if column not in required]
    catalog = bundled_catalog().copy()
    for row in read_rows(read_text(path), str(path), Columns("fact", required, optional)):
        texts = {column: field[0].strip() for column, field in row.items()}
        _, file, line, _ = row["fact"]
        try:
            _add_own(catalog, texts)
        except Error as error:
            raise make_error(error.code, error.message, error.hint, file, line) from None
    return catalog


class UsedFact(NamedTuple):
    """A fact that a conversion went through; ``divides`` says in which direction."""

    id: str
    value: Quantity
    divides: bool
    source: str


class Conversion(NamedTuple):
    """An amount in another unit, with the facts used and the spread these leave.

    ``low`` and ``high`` take every fact's spread at its worst.
    """

    amount: Quantity
    facts: tuple[UsedFact, ...]
    low: Quantity
    high: Quantity

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
    catalog: Catalog | None = None,
) -> Conversion:
    """An amount in another unit, by way of the food's facts where the kinds differ.

    Args:
        amount: a quantity or its text, ``"2 cup"``.
        unit: the unit wanted, ``"g"``, ``"g AP"``, ``"piece"``.
        food: by any of its names; needed between weight, volume, count and stages.
        measures: ``us``, ``metric``, ``imperial`` or ``au``: which cup is meant.
        state: of a volume, ``"chopped"``; left out, the food's default.
        size: of a count, ``"large"``; left out, the food's default.
        catalog: left out, the bundled one.

    Raises:
        MeasureError: ``unit.which_measures``, ``unit.unknown``, ``quantity.convert`` and others.
        FoodError: ``food.unknown``, ``food.ambiguous``, ``convert.no_fact``, ``convert.stage``.
    """
    given = _core.quantity(amount, measures=measures) if isinstance(amount, str) else amount
    if food is None:
        plain = given.to(unit, measures or "")
        return Conversion(plain, (), plain, plain)
    result, facts, low, high = _core.convert(
        catalog or bundled_catalog(), given, unit, food, measures or "", state or size or ""
    )
    return Conversion(result, tuple(UsedFact(*fact) for fact in facts), low, high)


def _add_own(catalog: Catalog, fact: Mapping[str, str]) -> None:
    row = {column: fact.get(column, "") for column in FACT_COLUMNS}
    row["food"] = catalog.food_of(row["food"]) or row["food"]
    start, end = _KIND_STAGES.get(row["kind"], ("any", "any"))
    row["from_stage"] = row["from_stage"] or start
    row["to_stage"] = row["to_stage"] or end
    catalog.add_fact(list(row.values()), "own")


def _rows(name: str) -> list[dict[str, str]]:
    import csv  # here, so that `import scalepan` stays quick

    path = os.path.join(os.path.dirname(__file__), "data", name)
    with open(path, encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def _parts(field: str) -> list[str]:
    return field.split(";") if field else []
