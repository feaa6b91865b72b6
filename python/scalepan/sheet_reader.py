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

import re
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan._core import Changes, Formula, Interval, Text
from scalepan.errors import Error, RecipeError, make_error
from scalepan.sheet_forms import VALUES, VERBS, expect_readable
from scalepan.sheet_writer import CONTROL, VERSION
from scalepan.toml_document import load
from scalepan.toml_table import TomlTable, name_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from scalepan.toml_places import Path, Places

MOST_BYTES = 64_000_000

_SECTIONS = ("scalepan_sheet", "cells", "rows", "overrides", "variants")
_OF_ROWS = ("given", "formulas", "cells")
_VALUE_KEYS = (*VALUES, "source", "formula")
_OVERRIDE_KEYS = (*VALUES, "why", "who", "when")
_VERSION_HINT = f"it begins with scalepan_sheet = {VERSION}"
# No name has so many parts, and reading a key takes time by the square of them.
_LONG_KEY = re.compile(r"""(?:(?<![\w-])[\w-]+[ \t]*\.[ \t]*|"[^"\n]*"[ \t]*\.[ \t]*){101}""")

_LONGEST_KEY = 60
_LONGEST_MESSAGE = 400

# How the document of an older version is brought to the next one.
MIGRATIONS: dict[int, Callable[[dict[str, Any]], dict[str, Any]]] = {}


def read_changes(text: str, file: str) -> tuple[SheetReader, Changes, dict[str, Changes]]:
    """What makes the sheet, in the order of the file, and its variants.

    Raises:
        SheetError, MeasureError, NumberError, FileError: with file, line and column.
    """
    if len(text) > MOST_BYTES:
        raise make_error("file.too_large", f"the text has more than {MOST_BYTES} bytes", file=file)
    reader = SheetReader(*_document(text, file), text, file)
    return reader, reader.changes(), reader.variants()


def _document(text: str, file: str) -> tuple[dict[str, Any], Places]:
    long = _LONG_KEY.search(text)
    if long:
        line = text.count("\n", 0, long.start()) + 1
        raise make_error("sheet.syntax", "a name has more than 100 parts", "", file, line)
    try:
        return load(text, file)
    except RecipeError as error:
        raise make_error(
            "sheet.syntax", error.message, error.hint, file, error.line, error.column
        ) from None


class SheetReader(TomlTable):
    """One file. Keeps where each change is written."""

    def __init__(self, data: dict[str, Any], places: Places, text: str, file: str) -> None:
        super().__init__(data, places, file, ())
        self._lines = text.split("\n")
        self._made: dict[tuple[str, str], Path] = {}  # verb and name to the place
        self._data = self._of_this_version(data)

    def _of_this_version(self, data: dict[str, Any]) -> dict[str, Any]:
        version = data.get("scalepan_sheet")
        if version is None:
            raise self._error("sheet.version", "the file says no version", (), _VERSION_HINT)
        path = ("scalepan_sheet",)
        if isinstance(version, bool) or not isinstance(version, int):
            raise self._error("sheet.version", "the version is no number", path, _VERSION_HINT)
        if version > VERSION:
            message = f"the file has version {version}, but this Scalepan reads up to {VERSION}"
            raise self._error("sheet.version", message, path, "install a newer Scalepan")
        while version < VERSION:
            if version not in MIGRATIONS:
                message = f"the file has version {version}, but this Scalepan reads {VERSION} only"
                raise self._error("sheet.version", message, path, _VERSION_HINT)
            data = MIGRATIONS[version](data)
            version += 1
        return data

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
        return {
            name: self._variant(("variants", self._printable(("variants",), name)), written)
            for name, written in self._table(("variants",)).items()
        }

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

    def _table(self, path: Path) -> dict[str, Any]:
        data = self._data
        for part in path[:-1]:
            data = data[part]  # type: ignore[index]
        table = data.get(str(path[-1]), {})
        if not isinstance(table, dict):
            raise self._error("sheet.type", f"{name_of(path)} is not a table", path)
        return table

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

    # Variants.

    def _variant(self, path: Path, written: Any) -> Changes:
        if not isinstance(written, list):
            hint = '[{ set = "portions", value = 60 }]'
            raise self._error("sheet.type", f"{name_of(path)} is not a list", path, hint)
        changes = Changes()
        for i, change in enumerate(written):
            self._change(changes, (*path, i), change)
        return changes

    def _change(self, changes: Changes, path: Path, written: Any) -> None:
        if not isinstance(written, dict):
            raise self._error("sheet.type", f"{name_of(path)} is not a table", path)
        verbs = [key for key in written if key in VERBS]
        if len(verbs) != 1:
            hint = "verbs: " + ", ".join(VERBS)
            message = f"{name_of(path)} has {'no verb' if not verbs else 'two verbs'}"
            raise self._error("sheet.verb", message, path, hint)
        verb = verbs[0]
        keys, needed = VERBS[verb]
        self._expect_near_keys(written, (verb, *keys), path)
        for key in needed:
            if key not in written:
                raise self._error("sheet.missing", f"{name_of(path)} has no {key}", path)
        name = self._printable_text((*path, verb), written[verb])
        given = self._given_to_verb(path, verb, written)
        self._at(path, lambda: getattr(changes, verb)(name, **given))

    def _given_to_verb(self, path: Path, verb: str, written: dict[str, Any]) -> dict[str, Any]:
        texts = ("source", "formula", "why", "who", "when", "to", "row", "before")
        given: dict[str, Any] = self._told(path, written, texts)
        if verb in ("set", "redeclare", "override"):
            given["value"] = self._value(path, written)
        if verb == "add_rows":
            given["given"] = self._texts_in((*path, "given"), written["given"])
            given["formulas"] = self._texts_in((*path, "formulas"), written.get("formulas", {}))
        if verb == "add_row":
            cells = self._dict((*path, "given"), written.get("given", {}))
            given["given"] = {
                self._printable(path, column): self._given((*path, "given", column), one)
                for column, one in cells.items()
            }
        return given

    # Values.

    def _given(self, path: Path, written: Any) -> Any:
        """A formula, or a value and where it comes from."""
        if not isinstance(written, dict):
            return self._plain(path, written), ""
        self._expect_near_keys(written, _VALUE_KEYS, path)
        if "formula" not in written:
            return self._value(path, written), self._told(path, written, ("source",)).get(
                "source", ""
            )
        if len(written) > 1:
            message = f"{name_of(path)} has a formula and a value"
            raise self._error("sheet.two_values", message, path, "write one of the two")
        return Formula(self._printable_text((*path, "formula"), written["formula"]))

    def _value(self, path: Path, written: dict[str, Any]) -> Any:
        kinds = {"low" if key == "high" else key for key in written if key in VALUES}
        if len(kinds) != 1 or ("high" in written and "low" not in written):
            what = "no value" if not kinds else "a high without a low"
            if len(kinds) > 1:
                what = "two values"
            code = "sheet.two_values" if len(kinds) > 1 else "sheet.missing"
            raise self._error(
                code, f"{name_of(path)} has {what}", path, "value, text, or low, high"
            )
        if "value" in kinds:
            return self._plain((*path, "value"), written["value"])
        if "text" in kinds:
            return Text(self._printable_text((*path, "text"), written["text"]))
        low = self._bound((*path, "low"), written["low"])
        high = self._bound((*path, "high"), written["high"]) if "high" in written else None
        return self._at(path, lambda: Interval(low, high))

    def _bound(self, path: Path, written: Any) -> Any:
        if isinstance(written, bool):
            raise self._error("sheet.type", f"{name_of(path)} is not an amount", path)
        return self._plain(path, written)

    def _plain(self, path: Path, written: Any) -> Any:
        if isinstance(written, bool):
            return written
        if isinstance(written, str):
            self._printable(path, written)
            return self._at(path, lambda: _core.quantity(written))
        number = self._number(path, written)
        return self._at(path, lambda: expect_readable(_core.quantity(number)))

    def _texts(self, path: Path) -> dict[str, str]:
        return self._texts_in(path, self._table(path))

    def _texts_in(self, path: Path, written: Any) -> dict[str, str]:
        return {
            self._printable(path, key): self._printable_text((*path, key), text)
            for key, text in self._dict(path, written).items()
        }

    def _dict(self, path: Path, written: Any) -> dict[str, Any]:
        if not isinstance(written, dict):
            raise self._error("sheet.type", f"{name_of(path)} is not a table", path)
        return written

    def _told(self, path: Path, written: dict[str, Any], keys: tuple[str, ...]) -> dict[str, str]:
        return {
            key: self._printable_text((*path, key), written[key]) for key in keys if key in written
        }

    def _printable_text(self, path: Path, written: Any) -> str:
        text, *_ = self._text(path, written)
        return self._printable(path, text)

    def _printable(self, path: Path, text: str) -> str:
        if CONTROL.search(text):
            message = f"{name_of(path)} holds a control character"
            raise self._error("sheet.control_character", message, path)
        return text

    def _expect_near_keys(self, table: dict[str, Any], known: tuple[str, ...], path: Path) -> None:
        for key in table:
            if key not in known:
                near = _core.nearest_names(key, list(known))
                hint = f"nearest: {', '.join(near)}; " if near else ""
                raise self._error(
                    "sheet.unknown_key",
                    f'unknown key "{key[:_LONGEST_KEY]}"',
                    (*path, key),
                    f"{hint}keys: " + ", ".join(known),
                )

    def _error(self, code: str, message: str, path: Path, hint: str = "") -> Error:
        """What is said of any file is said of a sheet."""
        shown = CONTROL.sub("?", message)
        if len(shown) > _LONGEST_MESSAGE:
            shown = shown[:_LONGEST_MESSAGE] + "..."
        return super()._error(code.replace("recipe.", "sheet.", 1), shown, path, hint)

    @staticmethod
    def _is_told(_path: Path) -> bool:
        """All texts are checked for control characters here."""
        return False
