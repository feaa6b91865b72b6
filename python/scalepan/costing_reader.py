"""The file of a costing, read into what the costing goes by.

scalepan_costing = 1     # the version of the form

[costing]
recipe = "soup.toml"     # one of the recipes below
served = 40
portions = 40            # made, spare ones among them
factor = 10              # of the written amounts
taxes = "without"        # what cost() was given besides, where it was: taxes, strict, day

[recipes]                # the texts of the recipe and its bases, as they were read
"soup.toml" = '''
name = "Soup"
...
'''

[pinned]                 # price rows, what is on hand, foods, names and facts, as they stood
prices = [{ item = "leeks", sold_as = "AP", pack = "1 kg", price = "2.10", keeps = "no" }]
facts = [{ fact = "sr28.11246.edible", food = "leek", kind = "edible", value = "0.44 EP/AP" }]

[chosen]                 # the region, and foods by name, that the catalogue was told
region = "GB"

[sheet]                  # the changes made to its sheet
changes = [{ override = "leeks.edible", value = "0.5 EP/AP", why = "own trim, 3 cases" }]

[variants]               # as in the file of a sheet
"""

from __future__ import annotations

import os
import re
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan._core import Catalog
from scalepan.costing_writer import VERSION
from scalepan.costs import cost
from scalepan.errors import Error, make_error
from scalepan.foods import (
    FACT_COLUMNS,
    FOOD_COLUMNS,
    NAME_COLUMNS,
    add_food_row,
    add_name_row,
)
from scalepan.prices import OPTIONAL, REQUIRED, STOCK_OPTIONAL, STOCK_REQUIRED
from scalepan.recipes import Library
from scalepan.sheet_change_reader import ChangeReader, document

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator, Mapping

    from scalepan._core import Changes, Costing, Recipe
    from scalepan.sheet_change_reader import Migrations
    from scalepan.toml_places import Path
    from scalepan.toml_table import Placed

_SECTIONS = ("scalepan_costing", "costing", "recipes", "pinned", "chosen", "sheet", "variants")
_SIZE = ("served", "portions", "factor")
_COSTING = ("recipe", *_SIZE, "taxes", "strict", "day")
_OF_ROWS = ("at",)
_PINNED: dict[str, tuple[str, ...]] = {
    "prices": (*REQUIRED, *OPTIONAL, *_OF_ROWS),
    "stock": (*STOCK_REQUIRED, *STOCK_OPTIONAL, *_OF_ROWS),
    "foods": FOOD_COLUMNS,
    "names": NAME_COLUMNS,
    "facts": (*FACT_COLUMNS, "layer"),
}
_PLACE = re.compile(r"(.*?)(?::(\d{1,9}))?(?::(\d{1,9}))?")
_LAYERS = ("own", "bundled", "dataset", "convention")

MIGRATIONS: Migrations = {}

Row = dict[str, str]


class KeptRecipes(Library):
    """Recipes out of texts: no file is read."""

    def __init__(self, catalog: Catalog, texts: Mapping[str, str]) -> None:
        super().__init__(catalog)
        self._texts = {os.path.normpath(name): (name, text) for name, text in texts.items()}

    def read(self, path: str) -> Recipe:
        normal = os.path.normpath(path)
        if normal not in self._texts:
            raise make_error("file.unreadable", f"no text of {path} is kept")
        name, text = self._texts[normal]
        if name not in self._known:
            self._known[name] = self.parse(text, name)
        return self._known[name]


class CostingReader(ChangeReader):
    """One file. Errors have its file, line and column."""

    def __init__(self, text: str, file: str) -> None:
        super().__init__(*document(text, file), file, ())
        self._expect_version("scalepan_costing", VERSION, MIGRATIONS)
        self._expect_near_keys(self._data, _SECTIONS, ())
        self._expect_near_keys(self._table(("costing",)), _COSTING, ("costing",))
        self._expect_near_keys(self._table(("pinned",)), tuple(_PINNED), ("pinned",))

    def costing(self) -> Costing:
        """Before any change to its sheet. Raises what ``read_costing`` raises."""
        recipe = self.recipe(self.catalog())
        options = self._options()
        prices = _core.make_price_book(self._priced("prices", _core.make_price_book), "")
        return self._at(("costing",), lambda: cost(recipe, prices, **options))

    def recipe(self, catalog: Catalog) -> Recipe:
        """At its size."""
        texts = self._table(("recipes",)).items()
        kept = KeptRecipes(catalog, {n: self._text(("recipes", n), text)[0] for n, text in texts})
        path = ("costing", "recipe")
        written = self._read_kept(kept, self._needed("recipe"), path)
        sizes = [self._number(("costing", key), self._needed(key)) for key in _SIZE]
        return self._at(("costing", "served"), lambda: _core.sized_recipe(written, *sizes))

    def catalog(self) -> Catalog:
        """Of the pinned foods, names and facts alone."""
        catalog = Catalog()
        for path, row in self._catalog_rows("foods"):
            self._at(path, lambda row=row: add_food_row(catalog, row))  # type: ignore[misc]
        for path, row in self._catalog_rows("names"):
            self._at(path, lambda row=row: add_name_row(catalog, row))  # type: ignore[misc]
        for path, row in self._rows("facts"):
            self._layer(path, row)
            self._at(path, lambda row=row: _add_fact(catalog, row))  # type: ignore[misc]
        chosen = self._table(("chosen",))
        self._expect_near_keys(chosen, ("region", "names"), ("chosen",))
        region, *_ = self._text(("chosen", "region"), chosen.get("region", ""))
        names = self._texts_in(("chosen", "names"), chosen.get("names", {}))
        self._at(("chosen",), lambda: catalog.choose(region, names))
        return catalog

    def changes(self) -> Changes:
        """Those made to its sheet."""
        sheet = self._table(("sheet",))
        self._expect_near_keys(sheet, ("changes",), ("sheet",))
        return self._listed(("sheet", "changes"), sheet.get("changes", []))

    def variants(self) -> dict[str, Changes]:
        return self._variants()

    def refused(self, change: int, error: Error) -> Error:
        """The error of one of the changes, with its place."""
        return self._error(error.code, error.message, ("sheet", "changes", change), error.hint)

    def _read_kept(self, kept: KeptRecipes, name: Any, path: Path) -> Recipe:
        name, *_ = self._text(path, name)
        try:
            return kept.read(name)
        except Error as error:
            inside = f"{error.place}: " if error.place else ""
            raise self._error(error.code, inside + error.message, path, error.hint) from None

    def _needed(self, key: str) -> Any:
        table = self._table(("costing",))
        if key not in table:
            raise self._error("sheet.missing", f"costing has no {key}", ("costing",))
        return table[key]

    def _options(self) -> dict[str, Any]:
        table = self._table(("costing",))
        stock = self._priced("stock", _core.make_stock)
        options: dict[str, Any] = {
            key: self._text(("costing", key), table[key])[0]
            for key in ("taxes", "day")
            if key in table
        }
        options["strict"] = self._flag(table, "strict", ("costing",))
        return {**options, "stock": _core.make_stock(stock, "") if stock else None}

    def _priced(
        self, name: str, make: Callable[[list[dict[str, Placed]], str], object]
    ) -> list[dict[str, Placed]]:
        """Rows that ``make`` takes; what one has wrong is told with its place in this file."""
        rows = []
        for path, row in self._rows(name):
            rows.append(placed_row(row))
            self._at(path, lambda: make(rows[-1:], ""))
        return rows

    def _rows(self, name: str) -> Iterator[tuple[Path, Row]]:
        path: Path = ("pinned", name)
        rows = self._table(("pinned",)).get(name, [])
        if not isinstance(rows, list):
            raise self._error("sheet.type", f"{name} is not a list", path)
        for i, row in enumerate(rows):
            texts = self._texts_in((*path, i), row)
            self._expect_near_keys(texts, _PINNED[name], (*path, i))
            yield (*path, i), texts

    def _catalog_rows(self, name: str) -> Iterator[tuple[Path, Row]]:
        """With every column."""
        for path, row in self._rows(name):
            yield path, {column: row.get(column, "") for column in _PINNED[name]}

    def _layer(self, path: Path, row: Row) -> None:
        layer = row.setdefault("layer", "own")
        if layer not in _LAYERS:
            message = f'"{layer}" is no layer of facts'
            raise self._error("sheet.type", message, path, "layers: " + ", ".join(_LAYERS))


def placed_row(row: Mapping[str, str]) -> dict[str, Placed]:
    """As the row was read, so that derivations name the price book and its line."""
    found = _PLACE.fullmatch(row.get("at", ""))
    file, line, column = found.groups() if found else ("", None, None)
    place = (file, int(line or 0), int(column or 0))
    return {key: (text, *place) for key, text in row.items() if key != "at"}


def _add_fact(catalog: Catalog, row: Row) -> None:
    catalog.add_fact([row.get(column, "") for column in FACT_COLUMNS], row["layer"])
