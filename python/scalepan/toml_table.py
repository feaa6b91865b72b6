"""A table of a TOML document, read value by value; errors know the file, line and column."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.errors import Error, make_error

if TYPE_CHECKING:
    from collections.abc import Callable
    from typing import TypeVar

    from scalepan.toml_places import Path, Places

    _Read = TypeVar("_Read")

Placed = tuple[str, str, int, int]


class TomlTable:
    """The document, or a table inside it, whose path is ``root``."""

    def __init__(self, data: dict[str, Any], places: Places, file: str, root: Path) -> None:
        self._data = data
        self._places = places
        self._file = file
        self._root = root

    def _flag(self, table: dict[str, Any], key: str, path: Path) -> bool:
        flag = table.get(key, False)
        if not isinstance(flag, bool):
            raise self._error("recipe.type", f"{key} is not true or false", (*path, key))
        return flag

    def _expect_keys(self, table: dict[str, Any], known: tuple[str, ...], path: Path) -> None:
        for key in table:
            if key not in known:
                message = f'unknown key "{key}"'
                raise self._error(
                    "recipe.unknown_key", message, (*path, key), "keys: " + ", ".join(known)
                )

    def _text(self, path: Path, value: object) -> Placed:
        if not isinstance(value, str):
            raise self._error("recipe.type", f"{name_of(path)} is not a text", path)
        if self._is_told(path) and not value.isprintable():
            message = f"{name_of(path)} holds a control character"
            raise self._error("recipe.control_character", message, path)
        return self._placed(path, value)

    @staticmethod
    def _is_told(path: Path) -> bool:
        """Whether the text is told as it is written."""
        return path[0] == "method" or path[-1] in ("id", "note")

    def _number(self, path: Path, value: Any) -> Any:
        from decimal import Decimal  # here, so that `import scalepan` stays quick

        if isinstance(value, bool) or not isinstance(value, int | Decimal | str):
            raise self._error("recipe.type", f"{name_of(path)} is not a number", path)
        try:
            return self._at(path, lambda: _core.number(value))
        except Error as error:
            if error.code == "number.unreadable" and not error.hint:
                hint = "write one number in figures, as 4 or 1.5"
                raise self._error(error.code, error.message, path, hint) from None
            raise

    def _at(self, path: Path, read: Callable[[], _Read]) -> _Read:
        """Runs ``read``; its error leaves with the place of the value."""
        try:
            return read()
        except Error as error:
            raise self._error(error.code, error.message, path, error.hint) from None

    def _placed(self, path: Path, text: str) -> Placed:
        line, column = self._place(path)
        return (text, self._file, line, column)

    def _place(self, path: Path) -> tuple[int, int]:
        """Of the value, or of the first value inside it."""
        path = (*self._root, *path)
        if path in self._places:
            return self._places[path]
        inside = [place for known, place in self._places.items() if known[: len(path)] == path]
        return min(inside, default=(0, 0))

    def _error(self, code: str, message: str, path: Path, hint: str = "") -> Error:
        line, column = self._place(path) if path or self._root else (0, 0)
        return make_error(code, message, hint, self._file, line, column)


def name_of(path: Path) -> str:
    """``lines 3``, ``bases sauce``."""
    name = str(path[0])
    for part in path[1:]:
        name += f" {part + 1}" if isinstance(part, int) else f" {part}"
    return name
