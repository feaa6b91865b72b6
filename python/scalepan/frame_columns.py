"""Which columns the frame of each kind of object has."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Sequence
from fractions import Fraction
from functools import singledispatch
from typing import Any, NamedTuple

from scalepan import _core
from scalepan._core import (
    Basket,
    Catalog,
    Costing,
    Curve,
    Interval,
    PriceBook,
    Quantity,
    Recipe,
    Stock,
)
from scalepan._core import Sheet as CoreSheet
from scalepan.costs import COSTS, line_costs
from scalepan.errors import Error, make_error
from scalepan.foods import FACT_COLUMNS
from scalepan.frames import EXACT, FLOAT64, Frame, FrameColumn, Numbers
from scalepan.prices import OPTIONAL, REQUIRED, STOCK_OPTIONAL, STOCK_REQUIRED
from scalepan.shopping import Shopping
from scalepan.yield_rows import yield_rows
from scalepan.yield_tests import YIELD_COLUMNS, YieldTest

_KINDS = (
    "a costing, its shopping, a basket, a curve, a price book, stock, a catalogue, a yield test, "
    "a sheet or a recipe"
)
_NOT_KEPT = ("note",)


class _Column(NamedTuple):
    """Of one column, or of an amount two, how a row fills it."""

    name: str
    kind: str
    of: Callable[[Any], Any]


def frame_of(shown: object, numbers: Numbers) -> Frame:
    """As ``scalepan.frame``."""
    if numbers not in (EXACT, FLOAT64):
        message = f'numbers are "{numbers}"'
        raise make_error("frame.numbers", message, f'write "{EXACT}" or "{FLOAT64}"')
    return Frame(tuple(columns_of(shown)), numbers)


@singledispatch
def columns_of(shown: object) -> list[FrameColumn]:
    """Raises FileError (``frame.kind``)."""
    message = f"a {type(shown).__name__} has no rows for a frame"
    raise make_error("frame.kind", message, f"give {_KINDS}")


def _filled(rows: Iterable[Any], columns: Sequence[_Column], unit: str = "") -> list[FrameColumn]:
    """Columns of kind ``money`` are in the one unit; those of ``amount`` name theirs."""
    listed = list(rows)
    found: list[FrameColumn] = []
    for name, kind, of in columns:
        cells = [of(row) for row in listed]
        if kind == "amount":
            found += _amounts(name, cells)
        elif kind == "money":
            values = [
                None if cell is None else Fraction(getattr(cell, "value", cell)) for cell in cells
            ]
            found.append(FrameColumn(name, "number", values, {"unit": unit}))
        else:
            found.append(FrameColumn(name, kind, cells))  # type: ignore[arg-type]
    return found


def _amounts(name: str, amounts: list[Quantity | None]) -> list[FrameColumn]:
    units = f"{name}_unit"
    values = [None if amount is None else amount.value for amount in amounts]
    return [
        FrameColumn(name, "number", values, {"unit_column": units}),
        FrameColumn(units, "text", [None if each is None else each.unit for each in amounts]),
    ]


@columns_of.register
def _(shown: Shopping) -> list[FrameColumn]:  # type: ignore[type-arg]  # a register takes a class
    dishes = _Column("dishes", "text", lambda row: "; ".join(each.dish for each in row.dishes))
    together = isinstance(shown.bought_for, Basket)
    columns = [*_SHOPPING, dishes] if together else _SHOPPING
    return _filled(shown, columns, shown.bought_for.till.unit)


_SHOPPING = (
    _Column("item", "text", lambda row: row.item),
    _Column("lines", "text", lambda row: "; ".join(row.lines)),
    _Column("need", "amount", lambda row: row.need),
    _Column("from_stock", "amount", lambda row: row.from_stock),
    _Column("packs", "text", lambda row: " + ".join(f"{n} x {pack}" for n, pack in row.packs)),
    _Column("terms", "text", lambda row: "; ".join(row.terms)),
    _Column("price", "money", lambda row: row.price),
    _Column("deposit", "money", lambda row: row.deposit),
    _Column("leftover", "amount", lambda row: row.leftover),
    _Column("keeps", "flag", lambda row: row.keeps),
    _Column("keeps_days", "whole", lambda row: row.keeps_days),
    _Column("shops", "text", lambda row: "; ".join(row.shops)),
)


@columns_of.register
def _(shown: Costing) -> list[FrameColumn]:
    items = {line: row.item for row in shown.shopping for line in row.lines}
    rows = [
        (line, items.get(line.id), line_costs(shown, line.id)) for line in shown.recipe.food_lines
    ]
    columns = [
        _Column("line", "text", lambda row: row[0].id),
        _Column("told", "text", lambda row: row[0].told),
        _Column("item", "text", lambda row: row[1]),
        *(_Column(name, "money", _cost_named(name)) for name in COSTS),
    ]
    return _filled(rows, columns, shown.till.unit)


def _cost_named(name: str) -> Callable[[Any], Any]:
    return lambda row: row[2].get(name)


@columns_of.register
def _(shown: Basket) -> list[FrameColumn]:
    costs = ("till", "used", "thrown", "borne", "closing", "opening", "saving", "saving_borne")
    columns = [
        _Column("dish", "text", lambda dish: dish.name),
        _Column("portions", "number", lambda dish: dish.portions),
        *(_Column(name, "money", _named(name)) for name in costs),
        _Column("till_apart", "money", lambda dish: dish.apart.till),
        _Column("borne_apart", "money", lambda dish: dish.apart.borne),
        _Column("unpriced", "text", lambda dish: "; ".join(dish.unpriced)),
    ]
    return _filled(shown.dishes, columns, shown.till.unit)


def _named(name: str) -> Callable[[Any], Any]:
    return lambda row: getattr(row, name)


@columns_of.register
def _(shown: Curve) -> list[FrameColumn]:
    portions = FrameColumn("portions", "number", shown.portions, {"unit": "portion"})
    unit = {"unit": shown.currency}
    return [portions, *(FrameColumn(name, "number", getattr(shown, name), unit) for name in COSTS)]


@columns_of.register
def _(shown: PriceBook) -> list[FrameColumn]:
    return _of_rows([offer.row for offer in shown.offers], REQUIRED, OPTIONAL)


@columns_of.register
def _(shown: Stock) -> list[FrameColumn]:
    return _of_rows([item.row for item in shown.items], STOCK_REQUIRED, STOCK_OPTIONAL)


def _of_rows(
    rows: list[dict[str, str]], required: tuple[str, ...], optional: tuple[str, ...]
) -> list[FrameColumn]:
    """The columns of the file as they are written, but for the money, which is a number."""
    return [_of_row(rows, name) for name in (*required, *optional) if name not in _NOT_KEPT]


def _of_row(rows: list[dict[str, str]], name: str) -> FrameColumn:
    cells = [row.get(name) or None for row in rows]
    if name not in ("price", "value", "deposit"):
        return FrameColumn(name, "text", cells)
    numbers = [None if cell is None else _core.number(cell) for cell in cells]
    return FrameColumn(name, "number", numbers, {"unit_column": "currency"})


@columns_of.register
def _(shown: Catalog) -> list[FrameColumn]:
    rows = [row for row, _ in shown.fact_rows]
    return [
        FrameColumn(name, "text", [row[place] or None for row in rows])
        for place, name in enumerate(FACT_COLUMNS)
    ]


@columns_of.register
def _(shown: YieldTest) -> list[FrameColumn]:
    rows = yield_rows(shown.trials)
    return [
        FrameColumn(name, "text", [row.get(name) or None for row in rows])
        for name in YIELD_COLUMNS
        if name not in _NOT_KEPT
    ]


@columns_of.register
def _(shown: CoreSheet) -> list[FrameColumn]:
    rows = [(name, *_value_of(shown, name)) for name in shown.cells()]
    columns = [
        _Column("cell", "text", lambda row: row[0]),
        _Column("value", "amount", lambda row: row[1] if isinstance(row[1], Quantity) else None),
        _Column("low", "amount", lambda row: row[1].low if isinstance(row[1], Interval) else None),
        _Column(
            "high", "amount", lambda row: row[1].high if isinstance(row[1], Interval) else None
        ),
        _Column("flag", "flag", lambda row: row[1] if isinstance(row[1], bool) else None),
        _Column("text", "text", lambda row: row[1] if isinstance(row[1], str) else None),
        _Column("formula", "text", lambda row: shown.formula(row[0]) or None),
        _Column("error", "text", lambda row: row[2]),
    ]
    return _filled(rows, columns)


def _value_of(sheet: CoreSheet, name: str) -> tuple[object, str | None]:
    try:
        return sheet.value(name), None
    except Error as error:
        return None, str(error)


@columns_of.register
def _(shown: Recipe) -> list[FrameColumn]:
    return _filled(shown.lines, _LINES)


_LINES = (
    _Column("id", "text", lambda line: line.id),
    _Column("line", "text", lambda line: line.text),
    _Column("told", "text", lambda line: line.told),
    _Column("food", "text", lambda line: line.food),
    _Column("food_id", "text", lambda line: line.food_id),
    _Column("amount", "amount", lambda line: line.amount),
    _Column("low", "amount", lambda line: line.low),
    _Column("exact", "amount", lambda line: line.exact),
    _Column("stage", "text", lambda line: line.stage),
    _Column("rule", "text", lambda line: line.rule),
    _Column("heading", "text", lambda line: line.heading),
    _Column("takes_from", "text", lambda line: line.takes_from),
    _Column("optional", "flag", lambda line: line.optional),
)
