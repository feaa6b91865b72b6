"""Objects out of the JSON that ``to_json`` wrote: what is an input, made again and compared.

What is read is made anew from what it goes by, written once more, and compared with the text value
by value; so a figure that was changed, or that other facts would give, is never taken over.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from fractions import Fraction
from typing import Any, TypeVar

from scalepan import _core
from scalepan._core import Catalog
from scalepan.baskets import Dish
from scalepan.command_line.documents import SCHEMA
from scalepan.costing_files import costing_of
from scalepan.costing_reader import KeptRecipes, placed_row
from scalepan.errors import Error, make_error
from scalepan.foods import (
    FACT_COLUMNS,
    FOOD_COLUMNS,
    NAME_COLUMNS,
    add_food_row,
    add_name_row,
    bundled_catalog,
)
from scalepan.json_document import JsonText, Path
from scalepan.json_writer import form_of
from scalepan.pan_size import Pan, PrintedVolume
from scalepan.sheets import parse_sheet
from scalepan.yield_tests import YIELD_COLUMNS, YieldTest, yield_test

_KINDS_OF_FACTS = {
    "density": "density",
    "piece weight": "piece",
    "edible share": "edible",
    "cooked share": "cooked",
    "drained share": "drained",
}
_STAGES = {"edible": ("AP", "EP"), "cooked": ("EP", "cooked"), "drained": ("AP", "drained")}
# What a result is made again from, where that is not a recipe and prices.
_MADE_FROM = {
    "line": "its recipe",
    "written line": "its text: scalepan.read_line(text)",
    "label": "its recipe: scalepan.label(recipe)",
    "loads": "its recipe: recipe.load_split()",
    "made base": "its recipe: recipe.bases",
    "cover": "its need and packs: scalepan.cover(need, packs)",
    "cover function": "its packs: scalepan.cover_function(packs)",
    "conversion": "its amount and food: scalepan.convert(amount, unit, food=...)",
    "why": "what it explains: costing.explain(cell)",
    "basket": "its dishes and prices: scalepan.basket(dishes, prices)",
    "error": "what raised it",
}
# Reading JSON takes up to eighty times as much memory.
_MOST = 10_000_000

_Read = TypeVar("_Read")
_LONGEST_TOLD = 60


def object_of(text: str, file: str, catalog: Catalog | None) -> Any:
    """As ``scalepan.from_json``."""
    if len(text) > _MOST:
        raise make_error("file.too_large", f"the text has more than {_MOST} bytes", file=file)
    source = JsonText(text.removeprefix("\ufeff"), file)
    document = source.load()
    if not isinstance(document, dict) or document.get("schema") != SCHEMA:
        given = document.get("schema") if isinstance(document, dict) else None
        told = f'the schema is "{given}"' if isinstance(given, str) else "the text names no schema"
        hint = f'it begins with {{"schema": "{SCHEMA}", "type": ...}}'
        raise source.error("json.schema", f"{told}, but this reads {SCHEMA}", ("schema",), hint)
    return _Reader(source, catalog).value(document, ())


class _Reader:
    def __init__(self, source: JsonText, catalog: Catalog | None) -> None:
        self._source = source
        self._catalog = catalog
        self._placed: Error | None = None

    def value(self, data: Any, path: Path) -> Any:
        """One object. Raises what ``from_json`` raises."""
        kind = self.text(data, "type", path)
        if kind == "list":
            items = self.field(data, "items", list, path)
            return [self.value(one, (*path, "items", at)) for at, one in enumerate(items)]
        made = self.made(kind, data, path)
        written = form_of(made)
        self._expect_same(data, written, path)
        return made

    def made(self, kind: str, data: Mapping[str, Any], path: Path) -> Any:
        """Of its inputs alone; its figures are not looked at."""
        if kind not in _READERS:
            kinds = "; ".join([*_READERS, "list"])
            made_from = _MADE_FROM.get(kind, "the recipe, prices or sheet it came from")
            message = f'"{kind[:_LONGEST_TOLD]}" is no input, so it is not read back'
            hint = f"make it again from {made_from}; what is read: {kinds}"
            raise self._source.error("json.not_read", message, (*path, "type"), hint)
        try:
            return _READERS[kind](self, data, path)
        except Error as error:
            if error.code.startswith("json.") or error is self._placed:
                raise
            inside = f"{error.place}: " if error.place else ""
            raise self._source.error(error.code, inside + error.message, path, error.hint) from None

    def field(self, data: Any, key: str, kind: type, path: Path) -> Any:
        """A value of an object, of the type."""
        told = {dict: "an object", list: "a list", str: "a text", int: "a whole number"}
        if not isinstance(data, dict):
            raise self._source.error("json.type", f"{_told(path)} is not an object", path)
        if key not in data:
            raise self._source.error("json.missing", f"{_told(path)} has no {key}", path)
        value = data[key]
        if not isinstance(value, kind) or (kind is int and isinstance(value, bool)):
            message = f"{_told((*path, key))} is not {told[kind]}"
            raise self._source.error("json.type", message, (*path, key))
        return value

    def text(self, data: Any, key: str, path: Path) -> str:
        return str(self.field(data, key, str, path))

    def rows(self, data: Any, key: str, path: Path) -> list[dict[str, str]]:
        """Objects whose values are texts."""
        rows = []
        for at, row in enumerate(self.field(data, key, list, path)):
            if not isinstance(row, dict):
                message = f"{_told((*path, key, at))} is not an object"
                raise self._source.error("json.type", message, (*path, key, at))
            rows.append({column: self.text(row, column, (*path, key, at)) for column in row})
        return rows

    def quantity(self, data: Any, key: str, path: Path) -> Any:
        """An amount, or None for null."""
        if isinstance(data, dict) and key in data and data[key] is None:
            return None
        return self.amount(self.field(data, key, dict, path), (*path, key))

    def amount(self, data: Any, path: Path) -> Any:
        value, unit = (self.text(data, key, path) for key in ("value", "unit"))
        number = self._number(value, (*path, "value"))
        return self._at((*path, "unit"), lambda: _core.quantity(number, unit or None))

    def _number(self, text: str, path: Path) -> Fraction:
        return self._at(path, lambda: _core.number(text))

    def _at(self, path: Path, read: Callable[[], _Read]) -> _Read:
        """Runs ``read``; its error leaves with the place of the value."""
        try:
            return read()
        except Error as error:
            self._placed = self._source.error(error.code, error.message, path, error.hint)
            raise self._placed from None

    # Each kind.

    def fact(self, data: Any, path: Path) -> Any:
        texts = {key: self.text(data, key, path) for key in ("id", "food", "kind", "layer")}
        kind = _KINDS_OF_FACTS.get(texts["kind"], texts["kind"])
        value, low, high = (self.quantity(data, key, path) for key in ("value", "low", "high"))
        stages = _STAGES.get(kind, ("any", "any"))
        if kind == "piece":
            stages = ("AP", "EP" if " EP/" in value.unit else "AP")
        row = [texts["id"], texts["food"], kind]
        row += [self.text(data, key, path) for key in ("state", "size")]
        row += [*stages, *("" if each is None else str(each) for each in (value, low, high))]
        catalog = Catalog()
        catalog.add_food([texts["food"], texts["food"], texts["food"], "", ""], [], [], [])
        catalog.add_fact([*row, self.text(data, "source", path)], texts["layer"])
        (fact,) = catalog.facts(texts["food"])
        return fact

    def offer(self, data: Any, path: Path) -> Any:
        return self.price_book({"offers": [data]}, path).offers[0]

    def price_book(self, data: Any, path: Path) -> Any:
        return _core.make_price_book(self._written(data, "offers", path), "")

    def stock_item(self, data: Any, path: Path) -> Any:
        return self.stock({"items": [data]}, path).items[0]

    def stock(self, data: Any, path: Path) -> Any:
        return _core.make_stock(self._written(data, "items", path), "")

    def _written(self, data: Any, key: str, path: Path) -> list[Any]:
        """The rows as they were written."""
        rows = []
        for at, one in enumerate(self.field(data, key, list, path)):
            row = self.field(one, "row", dict, (*path, key, at))
            texts = {name: self.text(row, name, (*path, key, at, "row")) for name in row}
            rows.append(placed_row(texts))
        return rows

    def recipe(self, data: Any, path: Path) -> Any:
        texts = self.field(data, "texts", dict, path)
        kept = {name: self.text(texts, name, (*path, "texts")) for name in texts}
        recipe = KeptRecipes(self._catalog or bundled_catalog(), kept)
        sizes = (
            self._number(self.text(data, key, path), (*path, key))
            for key in ("portions", "made", "factor")
        )
        return _core.sized_recipe(recipe.read(self.text(data, "file", path)), *sizes)

    def dish(self, data: Any, path: Path) -> Any:
        recipe = self.made("recipe", self.field(data, "recipe", dict, path), (*path, "recipe"))
        line, column = (self.field(data, key, int, path) for key in ("line", "column"))
        return Dish(
            recipe, self.text(data, "name", path), self.text(data, "file", path), line, column
        )

    def catalog(self, data: Any, path: Path) -> Any:
        over = self.text(data, "over", path)
        catalog = bundled_catalog().copy() if over == "bundled" else Catalog()
        for row in self.rows(data, "foods", path):
            add_food_row(catalog, _whole(row, FOOD_COLUMNS))
        for row in self.rows(data, "names", path):
            add_name_row(catalog, _whole(row, NAME_COLUMNS))
        for row in self.rows(data, "facts", path):
            layer = row.get("layer", "own")
            catalog.add_fact([row.get(column, "") for column in FACT_COLUMNS], layer)
        for fact in self.field(data, "preferred", list, path):
            catalog.prefer(fact)
        choices = self.field(data, "choices", dict, path)
        catalog.choose(self.text(data, "region", path), choices)
        return catalog

    def measure_set(self, data: Any, path: Path) -> Any:
        listed = self.field(data, "measures", list, path)
        rows = [self._measure(one, (*path, "measures", at)) for at, one in enumerate(listed)]
        return _core.make_measure_set(self.text(data, "name", path), rows)

    def _measure(self, data: Any, path: Path) -> Any:
        most = None
        if isinstance(data, dict) and data.get("most") is not None:
            most = self._number(self.text(data, "most", path), (*path, "most"))
        marks = []
        for at, mark in enumerate(self.field(data, "marks", list, path)):
            each = [self.amount(one, (*path, "marks", at, i)) for i, one in enumerate(mark)]
            marks.append(tuple(each))
        name, plural, source = (
            self.text(data, key, path) for key in ("measure", "plural", "source")
        )
        return (name, plural, self.quantity(data, "size", path), most, marks, source)

    def pan(self, data: Any, path: Path) -> Any:
        length, width, diameter, depth = (
            self.quantity(data, key, path) for key in ("length", "width", "diameter", "depth")
        )
        printed = [
            self._printed(one, (*path, "printed", at))
            for at, one in enumerate(self.field(data, "printed", list, path))
        ]
        name, source = (self.text(data, key, path) for key in ("name", "source"))
        return Pan(name, length, width, diameter, depth, tuple(printed), source)

    def _printed(self, data: Any, path: Path) -> PrintedVolume:
        volume, high = (self.quantity(data, key, path) for key in ("volume", "high"))
        return PrintedVolume(
            volume, high, self.text(data, "filled", path), self.text(data, "source", path)
        )

    def yield_test(self, data: Any, path: Path) -> YieldTest:
        rows = [_whole(row, YIELD_COLUMNS) for row in self.rows(data, "rows", path)]
        return yield_test(rows, source=self.text(data, "source", path))

    def yield_trial(self, data: Any, path: Path) -> Any:
        rows = [_whole(row, YIELD_COLUMNS) for row in self.rows(data, "rows", path)]
        return yield_test(rows).trials[0]

    def sheet(self, data: Any, path: Path) -> Any:
        return parse_sheet(self.text(data, "text", path))

    def costing(self, data: Any, path: Path) -> Any:
        return costing_of(self.text(data, "text", path), "")

    def _expect_same(self, given: Any, made: Any, path: Path) -> None:
        """What was read says the same as what it makes; texts for people may differ."""
        if isinstance(given, dict) and isinstance(made, dict):
            for key, value in given.items():
                if key == "schema" and not path:
                    continue
                if key not in made:
                    message = f"{_told(path)} has the unknown key {key[:_LONGEST_TOLD]}"
                    raise self._source.error("json.key", message, (*path, key))
                if key != "told":
                    self._expect_same(value, made[key], (*path, key))
        elif isinstance(given, list) and isinstance(made, list) and len(given) == len(made):
            for at, (one, other) in enumerate(zip(given, made, strict=True)):
                self._expect_same(one, other, (*path, at))
        elif given != made or type(given) is not type(made):
            message = f"{_told(path)} is {_short(given)}, but reading gives {_short(made)}"
            hint = "leave it out, or give what it was made from: from_json(text, catalog=...)"
            raise self._source.error("json.figure", message, path, hint)


_READERS: dict[str, Callable[[_Reader, Any, Path], Any]] = {
    "quantity": _Reader.amount,
    "fact": _Reader.fact,
    "offer": _Reader.offer,
    "price book": _Reader.price_book,
    "stock item": _Reader.stock_item,
    "stock": _Reader.stock,
    "recipe": _Reader.recipe,
    "dish": _Reader.dish,
    "catalog": _Reader.catalog,
    "measure set": _Reader.measure_set,
    "pan": _Reader.pan,
    "yield trial": _Reader.yield_trial,
    "yield test": _Reader.yield_test,
    "sheet": _Reader.sheet,
    "costing": _Reader.costing,
}


def _whole(row: dict[str, str], columns: tuple[str, ...]) -> dict[str, str]:
    return {column: row.get(column, "") for column in columns}


def _told(path: Path) -> str:
    """``offers 2 price``, counted from 1."""
    return " ".join(str(part + 1) if isinstance(part, int) else part for part in path) or "the text"


def _short(value: Any) -> str:
    if isinstance(value, str):
        return f'"{value[:_LONGEST_TOLD]}"'
    if isinstance(value, dict | list):
        return f"{'a list' if isinstance(value, list) else 'an object'} of {len(value)}"
    return "null" if value is None else str(value).lower()
