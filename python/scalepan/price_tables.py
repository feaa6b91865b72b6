"""Rows of prices and of stock that do not come from CSV: from TOML, frames and mappings.

prices = [
  { item = "leeks", sold_as = "AP", pack = "1 kg", price = "2.10", currency = "EUR", keeps = "no" },
  { item = "eggs", sold_as = "AP", pack = "10", price = 2.90, currency = "EUR", keeps = true },
]
stock = [{ item = "rice", stage = "AP", amount = "3 kg", value = "4.50", currency = "EUR" }]
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.csv_document import NO_TEXT
from scalepan.errors import Error, RecipeError, make_error
from scalepan.own_tables import rows_of_table
from scalepan.toml_document import load
from scalepan.toml_table import TomlTable
from scalepan.toml_text import quoted

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan.csv_document import Columns, Placed
    from scalepan.toml_places import Path

_LISTS = ("prices", "stock")


def rows_of_toml(text: str, file: str, columns: Columns, key: str) -> list[dict[str, Placed]]:
    """The rows of a list of tables; a column's value is a text, a number, true or false.

    Raises:
        PriceError: ``price.syntax``, ``price.unknown_key``, ``price.no_rows``, ``price.type``,
            ``price.column``, each with file, line and column.
    """
    try:
        document = load(text, file)
    except RecipeError as error:
        of_recipes = error.hint.startswith(("a recipe has", "this is"))
        hint = "" if of_recipes else error.hint
        code, place = f"{columns.subject}.syntax", (file, error.line, error.column)
        raise make_error(code, error.message, hint, *place) from None
    return _TomlRows(*document, file, ()).rows(columns, key)


def toml_of_rows(rows: Iterable[dict[str, str]], columns: Columns, key: str) -> str:
    """A file that ``rows_of_toml`` reads as these rows, without what they leave blank."""
    tables = (
        ", ".join(f"{name} = {quoted(row[name])}" for name in columns.all if row.get(name))
        for row in rows
    )
    return "\n".join([f"{key} = [", *(f"  {{ {table} }}," for table in tables), "]", ""])


def rows_of_frame(table: object, columns: Columns, floats: str | None) -> list[dict[str, Placed]]:
    """The rows of a frame, of mappings or of a dict of columns; their places are their numbers.

    Raises what ``rows_of_table`` raises, and ``price.no_rows`` as a file does that has none.
    """
    rows = [
        {column: (text, row.cell, 0, 0) for column, text in row.texts.items() if text}
        for row in rows_of_table(table, columns, floats, flags=("keeps",))
    ]
    if not rows:
        raise columns.error("no_rows", "the table has no rows", columns.hint, "")
    return rows


class _TomlRows(TomlTable):
    def rows(self, columns: Columns, key: str) -> list[dict[str, Placed]]:
        self._expect_keys(self._data, _LISTS, ())
        rows = self._data.get(key, [])
        if not isinstance(rows, list):
            raise self._error("price.type", f"{key} is not a list", (key,), f"{key} = [{{ ... }}]")
        if not rows:
            raise self._error("price.no_rows", f"the file has no {key}", (), f"{key} = [{{ ... }}]")
        return [self._row(columns, (key, i), row) for i, row in enumerate(rows)]

    def _row(self, columns: Columns, path: Path, row: object) -> dict[str, Placed]:
        if not isinstance(row, dict):
            raise self._error("price.type", "a row is not a table", path)
        for column in row:
            if column not in columns.all:
                message = f'unknown column "{column}"'
                raise self._error("price.column", message, (*path, column), columns.hint)
        for column in columns.required:
            if column not in row:
                raise self._error("price.column", f"the row has no {column}", path, columns.hint)
        return {column: self._cell((*path, column), value) for column, value in row.items()}

    def _cell(self, path: Path, value: Any) -> Placed:
        if isinstance(value, bool):
            return self._placed(path, "yes" if value else "no")
        if isinstance(value, str):
            if re.search(NO_TEXT, value):
                message = "the field holds a control character"
                raise self._error("price.control_character", message, path)
            return self._text(path, value)
        return self._placed(path, _core.exact_text(self._number(path, value)))

    def _error(self, code: str, message: str, path: Path, hint: str = "") -> Error:
        """What is said of any file is said of prices."""
        return super()._error(code.replace("recipe.", "price.", 1), message, path, hint)
