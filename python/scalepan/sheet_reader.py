"""The file of a sheet, read into the changes that make it.

scalepan_sheet = 1       # the version of the form

[cells]
portions = 40
serves = 4
"leeks.amount" = "500 g EP"
"leeks.edible" = { value = "0.44 EP/AP", source = "USDA SR28 11246" }
"leeks.need" = { formula = "leeks.amount * portions / serves" }
kind = { text = "soup" }
spread = { low = "3 kg", high = "5 kg" }   # without a high: at least 3 kg
large = true

[rows.lines.given]       # what each row is given: units, "plain number", "yes or no", "text"
amount = "g EP"

[rows.lines.formulas]    # one a column
need = "amount * portions / serves"

[rows.lines.cells]       # the rows, in their order
leeks = { amount = "500 g EP" }
chives = { amount = { formula = "leeks.amount / 20" } }

[overrides]
"leeks.edible" = { value = "0.5 EP/AP", why = "own trim, 3 cases", who = "the night cook" }

[variants]
"a full dome" = [
  { set = "portions", value = 60 },
]
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan._core import Changes, Formula
from scalepan.errors import Error, make_error
from scalepan.sheet_change_reader import ChangeReader, document
from scalepan.sheet_forms import VALUES
from scalepan.sheet_writer import VERSION
from scalepan.toml_table import name_of

if TYPE_CHECKING:
    from scalepan.sheet_change_reader import Document, Migrations
    from scalepan.toml_places import Path, Places

_SECTIONS = ("scalepan_sheet", "cells", "rows", "overrides", "variants")
_OF_ROWS = ("given", "formulas", "cells")
_OVERRIDE_KEYS = (*VALUES, "why", "who", "when")

MIGRATIONS: Migrations = {}


def read_changes(text: str, file: str) -> tuple[SheetReader, Changes, dict[str, Changes]]:
    """What makes the sheet, in the order of the file, and its variants.

    Raises:
        SheetError, MeasureError, NumberError, FileError: with file, line and column.
    """
    reader = SheetReader(*document(text, file), text, file)
    return reader, reader.changes(), reader.variants()


class SheetReader(ChangeReader):
    """One file. Keeps where each change is written."""

    def __init__(self, data: Document, places: Places, text: str, file: str) -> None:
        super().__init__(data, places, file, ())
        self._lines = text.split("\n")
        self._made: dict[tuple[str, str], Path] = {}  # verb and name to the place
        self._expect_version("scalepan_sheet", VERSION, MIGRATIONS)

    def changes(self) -> Changes:
        """All but the variants."""
        self._expect_near_keys(self._data, _SECTIONS, ())
        changes = Changes()
        for name, written in self._table(("cells",)).items():
            self._cell(changes, name, ("cells", name), written)
        for name in self._table(("rows",)):
            self._rows(changes, name, ("rows", name))
        for name, written in self._table(("overrides",)).items():
            self._override(changes, name, ("overrides", name), written)
        return changes

    def variants(self) -> dict[str, Changes]:
        return self._variants()

    def placed(self, error: Error, change: tuple[str, dict[str, Any]] | None) -> Error:
        """An error of the core with the place of what it refused."""
        path = self._refused(error.cell, change)
        if path is None:
            return make_error(error.code, error.message, error.hint, self._file)
        line, column = self._place(path)
        if error.cell and error.column and not error.line:
            column += self._shift(path, line, column, error.column - 1)
        return make_error(error.code, error.message, error.hint, self._file, line, column)

    def _refused(self, cell: str, change: tuple[str, dict[str, Any]] | None) -> Path | None:
        named = [(verb, cell) for verb in ("define", "set", "add_rows")] if cell else []
        if change is not None:
            verb, given = change
            named.append((verb, given["row"] if verb == "add_row" else given["name"]))
        return next((self._made[one] for one in named if one in self._made), None)

    def _shift(self, path: Path, line: int, column: int, offset: int) -> int:
        """Columns from the start of a formula to the place at a byte of it."""
        formula = self._at_path(path)
        if not isinstance(formula, str) or not 0 < line <= len(self._lines):
            return 0
        before = formula.encode()[:offset].decode(errors="ignore")
        written = self._lines[line - 1][column - 1 :]
        return len(before) if written.startswith(before) else 0

    def _at_path(self, path: Path) -> Any:
        found: Any = self._data
        for part in path:
            found = found[part]
        return found

    # Sections.

    def _cell(self, changes: Changes, name: str, path: Path, written: Any) -> None:
        self._printable(path, name)
        given = self._given(path, written)
        if isinstance(given, Formula):
            self._make(changes, "define", name, (*path, "formula"), formula=str(given))
        else:
            value, source = given
            self._make(changes, "set", name, path, value=value, source=source)

    def _rows(self, changes: Changes, block: str, path: Path) -> None:
        self._printable(path, block)
        self._expect_near_keys(self._table(path), _OF_ROWS, path)
        given = self._texts((*path, "given"))
        for column, held in given.items():
            alone = {column: held}
            column_path = (*path, "given", column)
            self._at(column_path, lambda alone=alone: Changes().add_rows(block, given=alone))  # type: ignore[misc]
        self._made["add_rows", block] = path
        self._at(path, lambda: changes.add_rows(block, given=given))
        for column, formula in self._texts((*path, "formulas")).items():
            formula_path = (*path, "formulas", column)
            self._make(changes, "define", f"{block}.{column}", formula_path, formula=formula)
        for row in self._table((*path, "cells")):
            self._row(changes, block, row, (*path, "cells", row))

    def _row(self, changes: Changes, block: str, row: str, path: Path) -> None:
        self._printable(path, row)
        given = {}
        for column, written in self._table(path).items():
            given[self._printable(path, column)] = self._given((*path, column), written)
            if isinstance(given[column], Formula):
                self._made["define", f"{row}.{column}"] = (*path, column, "formula")
        self._made["add_row", row] = path
        self._at(path, lambda: changes.add_row(block, row, given))

    def _override(self, changes: Changes, name: str, path: Path, written: Any) -> None:
        self._printable(path, name)
        if not isinstance(written, dict):
            hint = '{ value = "0.5 EP/AP", why = "own trim" }'
            raise self._error("sheet.type", f"{name_of(path)} is not a table", path, hint)
        self._expect_near_keys(written, _OVERRIDE_KEYS, path)
        told = self._told(path, written, ("why", "who", "when"))
        if "why" not in told:
            raise self._error("sheet.missing", f"{name_of(path)} has no why", path)
        self._make(changes, "override", name, path, value=self._value(path, written), **told)

    def _make(self, changes: Changes, verb: str, name: str, path: Path, **given: Any) -> None:
        self._made[verb, name] = path
        self._at(path, lambda: getattr(changes, verb)(name, **given))
