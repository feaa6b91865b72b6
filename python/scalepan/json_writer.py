"""Objects as JSON: exact numbers as text, amounts with their unit, one kind of object a name.

docs/json.md describes the form, docs/scalepan.schema.json has it as a JSON Schema. The documents
of the commands (``--json``) are made of the same pieces.
"""

from __future__ import annotations

import json
import re
from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any

from scalepan._core import (
    Basket,
    BasketDish,
    Catalog,
    Costing,
    Curve,
    ExactColumn,
    Fact,
    Label,
    Loads,
    MadeBase,
    MeasureSet,
    NumberColumn,
    Offer,
    PriceBook,
    PriceFound,
    Quantity,
    Recipe,
    ShoppingRow,
    Stock,
    StockItem,
    Why,
    YieldTrial,
)
from scalepan.baskets import Dish
from scalepan.command_line import basketing, curving, documents, pricing
from scalepan.conversion import Conversion
from scalepan.costing_writer import fact_row, food_row, name_row, recipe_files
from scalepan.errors import Error, make_error
from scalepan.foods import bundled_catalog
from scalepan.recipe_writer import recipe_text
from scalepan.sheets import Sheet
from scalepan.shopping import Shopping
from scalepan.yield_rows import yield_rows
from scalepan.yield_tests import YieldTest

Data = dict[str, Any]

# What is not data of the object itself: it stands elsewhere, or is a view of it.
SKIPPED = frozenset({"catalog", "sheet", "column", "apart", "bought_for", "even_counts"})
_OWN = {"layer": "own"}


def json_text(shown: object) -> str:
    """As ``scalepan.to_json``."""
    document = {"schema": documents.SCHEMA, **form_of(shown)}
    return json.dumps(document, ensure_ascii=False, indent=2)


def form_of(shown: object) -> Data:
    """The object with its type. Raises what ``to_json`` raises."""
    if isinstance(shown, list | tuple) and type(shown) in (list, tuple):
        return {"type": "list", "items": [form_of(one) for one in shown]}
    make = next((make for kind, make in FORMS.items() if isinstance(shown, kind)), attributes)
    return {"type": type_of(shown), **make(shown)}


def type_of(shown: object) -> str:
    """``price book`` of a ``PriceBook``."""
    if isinstance(shown, Error):
        return "error"
    return re.sub(r"(?<=[a-z])(?=[A-Z])", " ", type(shown).__name__).lower()


def attributes(shown: object) -> Data:
    """All that an object says of itself: every public attribute.

    Raises FileError (``json.no_form``) where it is none of ours.
    """
    names = _names_of(shown)
    if not type(shown).__module__.startswith("scalepan") or not names:
        message = f"a {type(shown).__name__} is no object of Scalepan's that JSON can hold"
        raise make_error("json.no_form", message, "give a recipe, prices, a costing and so on")
    return {name: _attribute(name, getattr(shown, name)) for name in names}


def encoded(value: Any) -> Any:
    """A value inside an object, which needs no type."""
    if value is None or isinstance(value, bool | str | int):
        return str(value) if isinstance(value, str) else value
    if isinstance(value, Fraction):
        return str(value)
    if isinstance(value, Quantity):
        return documents.quantity_document(value)
    if isinstance(value, Error):
        return {"error": documents.error_document(value)}
    if isinstance(value, Mapping):
        return {str(name): encoded(one) for name, one in value.items()}
    if isinstance(value, Recipe):
        return documents.recipe_document(value)
    if isinstance(value, list | tuple | range) and not hasattr(value, "_fields"):
        return [encoded(one) for one in value]
    make = FORMS.get(type(value), attributes)
    return {name: one for name, one in make(value).items()}


def _attribute(name: str, value: Any) -> Any:
    if name.startswith("packs"):
        return documents.packs_document(value)
    if name == "cautions":
        return documents.cautions_document(value)
    return encoded(value)


def _names_of(shown: object) -> list[str]:
    names = list(getattr(shown, "_fields", ()))
    kind = type(shown)
    names += [name for name in dir(kind) if isinstance(getattr(kind, name), property)]
    kept = dict.fromkeys(name for name in names if not name.startswith("_"))
    return [name for name in kept if name not in SKIPPED]


def _with(document: Callable[[Any], Data]) -> Callable[[Any], Data]:
    """A document of the commands, and whatever else the object says of itself."""

    def form(shown: Any) -> Data:
        known = document(shown)
        names = (name for name in _names_of(shown) if name not in known)
        return {**known, **{name: _attribute(name, getattr(shown, name)) for name in names}}

    return form


# What can be read back.


def _quantity(shown: Quantity) -> Data:
    return dict(documents.quantity_document(shown))


def _offer(shown: Offer | StockItem) -> Data:
    return {**attributes(shown), "row": shown.row}


def _price_book(shown: PriceBook) -> Data:
    return {"offers": [_offer(offer) for offer in shown.offers]}


def _stock(shown: Stock) -> Data:
    return {"items": [_offer(item) for item in shown.items]}


def _recipe(shown: Recipe) -> Data:
    recipe_text(shown)
    assert shown.file is not None
    return {
        **documents.recipe_document(shown),
        "file": shown.file[0],
        "texts": recipe_files(shown),
    }


def _dish(shown: Dish) -> Data:
    place = {"file": shown.file, "line": shown.line, "column": shown.column}
    return {"name": shown.name, **place, "recipe": _recipe(shown.recipe)}


def _catalog(shown: Catalog) -> Data:
    """What it has more than the bundled one, or all where it does not lie over that."""
    rows, under = _rows_of(shown), _rows_of(bundled_catalog())
    known = {fact["fact"]: fact for fact in under["facts"]}
    preferred = [
        name
        for fact in rows["facts"]
        if (name := fact.get("fact", "")) in known
        and fact != known[name]
        and fact == {**known[name], **_OWN}
    ]
    under["facts"] = [
        {**fact, **_OWN} if fact["fact"] in preferred else fact for fact in under["facts"]
    ]
    region, choices = shown.choices
    chosen = {"region": region, "choices": choices}
    more = {name: _without(each, under[name]) for name, each in rows.items()}
    if any(each is None for each in more.values()):
        return {"over": "nothing", **rows, "preferred": [], **chosen}
    return {"over": "bundled", **more, "preferred": preferred, **chosen}


def _rows_of(catalog: Catalog) -> dict[str, list[dict[str, str]]]:
    return {
        "foods": [food_row(row) for row in catalog.food_rows],
        "names": [name_row(row) for row in catalog.name_rows],
        "facts": [fact_row(row) for row in catalog.fact_rows],
    }


def _without(rows: list[dict[str, str]], under: list[dict[str, str]]) -> list[Any] | None:
    """The rows that are not under them; None where one of those is missing."""
    lie_under = {tuple(row.items()) for row in under}
    there = {tuple(row.items()) for row in rows}
    if not lie_under <= there:
        return None
    return [row for row in rows if tuple(row.items()) not in lie_under]


def _measure_set(shown: MeasureSet) -> Data:
    columns = ("measure", "plural", "size", "most", "marks", "source")
    rows = [dict(zip(columns, map(encoded, row), strict=True)) for row in shown.measures]
    return {"name": shown.name, "dimension": shown.dimension, "measures": rows}


def _yield_test(shown: YieldTest) -> Data:
    return {**attributes(shown), "rows": yield_rows(shown.trials)}


def _yield_trial(shown: YieldTrial) -> Data:
    return {**attributes(shown), "rows": yield_rows([shown])}


def _sheet(shown: Sheet) -> Data:
    return {"text": shown.text(), "figures": _figures(shown, shown.cells())}


def _costing(shown: Costing) -> Data:
    return {
        "text": shown.text(),
        "figures": _figures(shown.sheet, shown.cells),
        **documents.costs_document(shown),
        **documents.shopping_document(shown),
        "left": encoded(shown.left),
        "cautions": documents.cautions_document(shown.cautions),
    }


def _figures(sheet: Sheet, cells: list[str]) -> Data:
    return {name: _figure(sheet, name) for name in sorted(cells)}


def _figure(sheet: Sheet, name: str) -> Any:
    try:
        return encoded(sheet.value(name))
    except Error as error:
        return encoded(error)


def _column(shown: ExactColumn) -> Data:
    return {"step": str(shown.step), "counts": list(memoryview(shown))}


def _numbers(shown: NumberColumn) -> Data:
    return {"numbers": [str(shown[place]) for place in range(len(shown))]}


def _shopping(shown: Shopping[Any]) -> Data:
    return documents.shopping_document(shown.bought_for)


def _error(shown: Error) -> Data:
    return documents.error_document(shown)


FORMS: dict[type, Callable[[Any], Data]] = {
    Quantity: _quantity,
    Offer: _offer,
    StockItem: _offer,
    PriceBook: _price_book,
    Stock: _stock,
    Recipe: _recipe,
    Dish: _dish,
    Catalog: _catalog,
    MeasureSet: _measure_set,
    YieldTest: _yield_test,
    YieldTrial: _yield_trial,
    Sheet: _sheet,
    Costing: _costing,
    Fact: attributes,
    Shopping: _shopping,
    ExactColumn: _column,
    NumberColumn: _numbers,
    Error: _error,
    Basket: _with(basketing.basket_document),
    BasketDish: _with(basketing.dish_document),
    Curve: _with(curving.curve_document),
    Loads: _with(documents.loads_document),
    MadeBase: _with(documents.base_document),
    Why: documents.why_document,
    Label: _with(documents.label_document),
    Conversion: _with(documents.conversion_document),
    ShoppingRow: _with(documents.shopping_row_document),
    PriceFound: _with(pricing.price_document),
}
