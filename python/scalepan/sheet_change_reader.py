"""Values and changes as files of sheets have them, read with the place of what is wrong."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan._core import Changes, Formula, Interval, Text
from scalepan.errors import Error, RecipeError, make_error
from scalepan.sheet_forms import VALUES, VERBS, expect_readable
from scalepan.sheet_writer import CONTROL
from scalepan.toml_document import load
from scalepan.toml_table import TomlTable, name_of

if TYPE_CHECKING:
    from collections.abc import Callable

    from scalepan.toml_places import Path, Places

    Document = dict[str, Any]
    # How the document of an older version is brought to the next one.
    Migrations = dict[int, Callable[[Document], Document]]

MOST_BYTES = 64_000_000

_VALUE_KEYS = (*VALUES, "source", "formula")
# No name has so many parts, and reading a key takes time by the square of them.
_LONG_KEY = re.compile(r"""(?:(?<![\w-])[\w-]+[ \t]*\.[ \t]*|"[^"\n]*"[ \t]*\.[ \t]*){101}""")

_OF_TABLES = ("recipe.type", "recipe.unknown_key", "recipe.control_character")
_LONGEST_KEY = 60
_LONGEST_MESSAGE = 400


def document(text: str, file: str) -> tuple[Document, Places]:
    """The document, and the places of its values.

    Raises:
        SheetError: ``sheet.syntax`` with file, line and column.
        FileError: ``file.too_large``.
    """
    if len(text) > MOST_BYTES:
        raise make_error("file.too_large", f"the text has more than {MOST_BYTES} bytes", file=file)
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


class ChangeReader(TomlTable):
    """One file."""

    def _expect_version(self, key: str, newest: int, migrations: Migrations) -> None:
        """Of the document, which is brought to the newest version."""
        path, hint = (key,), f"it begins with {key} = {newest}"
        version = self._data.get(key)
        if version is None:
            raise self._error("sheet.version", "the file says no version", (), hint)
        if isinstance(version, bool) or not isinstance(version, int):
            raise self._error("sheet.version", "the version is no number", path, hint)
        if version > newest:
            message = f"the file has version {version}, but this Scalepan reads up to {newest}"
            raise self._error("sheet.version", message, path, "install a newer Scalepan")
        while version < newest:
            if version not in migrations:
                message = f"the file has version {version}, but this Scalepan reads {newest} only"
                raise self._error("sheet.version", message, path, hint)
            self._data = migrations[version](self._data)
            version += 1

    def _variants(self) -> dict[str, Changes]:
        return {
            name: self._listed(("variants", self._printable(("variants",), name)), written)
            for name, written in self._table(("variants",)).items()
        }

    def _table(self, path: Path) -> dict[str, Any]:
        data = self._data
        for part in path[:-1]:
            data = data[part]  # type: ignore[index]
        table = data.get(str(path[-1]), {})
        if not isinstance(table, dict):
            raise self._error("sheet.type", f"{name_of(path)} is not a table", path)
        return table

    # Changes.

    def _listed(self, path: Path, written: Any) -> Changes:
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
        """What is said of any table is said of a sheet; a recipe's errors stay its own."""
        shown = CONTROL.sub("?", message)
        if len(shown) > _LONGEST_MESSAGE:
            shown = shown[:_LONGEST_MESSAGE] + "..."
        ours = f"sheet.{code.removeprefix('recipe.')}" if code in _OF_TABLES else code
        return super()._error(ours, shown, path, hint)

    @staticmethod
    def _is_told(_path: Path) -> bool:
        """All texts are checked for control characters here."""
        return False
