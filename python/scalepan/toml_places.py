"""Where each value of a TOML document stands.

The standard library's reader says where syntax is wrong, but not where a value was written. This
walk over the same text notes the place of every value; it is only run on text which that reader
has accepted, so it need not refuse anything.
"""

from __future__ import annotations

import re
import tomllib

Path = tuple[str | int, ...]
Places = dict[Path, tuple[int, int]]

_SPACE = re.compile(r"(?:[ \t\r\n]|#[^\n]*)*")
_BLANK = re.compile(r"[ \t]*")
_KEY_PART = re.compile(r"""[ \t]*("(?:[^"\\]|\\.)*"|'[^']*'|[A-Za-z0-9_-]+)[ \t]*""")
_SCALAR = re.compile(r"[^,\]}\n#]*")
_STRING = re.compile(
    r'"""(?:[^\\]|\\[\s\S])*?"{3,5}'
    r"|'''[\s\S]*?'{3,5}"
    r'|"(?:[^"\\\n]|\\.)*"'
    r"|'[^'\n]*'"
)


def value_places(text: str) -> Places:
    """Path of each value to its line and column, both from 1.

    A string's column is that of its first character, behind the quote.
    """
    return _Walk(text).places()


def _plain_key(written: str) -> str:
    """A key without its quotes and escapes."""
    if "\\" not in written:
        return written[1:-1] if written[0] in "\"'" else written
    return next(iter(tomllib.loads(f"{written} = 0")))


def _opening_length(written: str) -> int:
    """Characters before a string's text; a line end right behind long quotes is none of it."""
    if not written.startswith(('"""', "'''")):
        return 1
    return 3 + len(written[3:5]) - len(written[3:5].removeprefix("\r\n").removeprefix("\n"))


class _Walk:
    def __init__(self, text: str) -> None:
        self._text = text
        self._at = 0
        self._places: Places = {}
        self._table: Path = ()
        self._counts: dict[Path, int] = {}
        self._line_starts = [0, *(found.end() for found in re.finditer("\n", text))]

    def places(self) -> Places:
        self._skip(_SPACE)
        while self._at < len(self._text):
            if self._text[self._at] == "[":
                self._header()
            else:
                self._pair(self._table)
            self._skip(_SPACE)
        return self._places

    def _skip(self, pattern: re.Pattern[str]) -> None:
        found = pattern.match(self._text, self._at)
        if found:
            self._at = found.end()

    def _note(self, path: Path, offset: int) -> None:
        low, high = 0, len(self._line_starts)
        while high - low > 1:
            middle = (low + high) // 2
            if self._line_starts[middle] <= offset:
                low = middle
            else:
                high = middle
        self._places[path] = (low + 1, offset - self._line_starts[low] + 1)

    def _key(self) -> Path:
        parts: list[str] = []
        while found := _KEY_PART.match(self._text, self._at):
            parts.append(_plain_key(found.group(1)))
            self._at = found.end()
            if not self._text.startswith(".", self._at):
                break
            self._at += 1
        return tuple(parts)

    def _header(self) -> None:
        start = self._at
        repeated = self._text.startswith("[[", self._at)
        self._at += 2 if repeated else 1
        path = self._inside_arrays(self._key())
        self._at += 2 if repeated else 1
        if repeated:
            count = self._counts.get(path, 0)
            self._counts[path] = count + 1
            path = (*path, count)
        self._note(path, start)
        self._table = path

    def _inside_arrays(self, key: Path) -> Path:
        path: Path = ()
        for part in key[:-1]:
            path = (*path, part)
            if path in self._counts:
                path = (*path, self._counts[path] - 1)
        return (*path, *key[-1:])

    def _pair(self, table: Path) -> None:
        start = self._at
        path = (*table, *self._key())
        self._skip(_BLANK)
        # Accepted text has a "=" here; moving on by one in any case ends the walk.
        self._at += 1
        self._skip(_BLANK)
        self._value(path)
        self._places.setdefault(path, self._places.get(path, (1, start + 1)))

    def _value(self, path: Path) -> None:
        found = _STRING.match(self._text, self._at)
        if found:
            self._note(path, self._at + _opening_length(found.group()))
            self._at = found.end()
            return
        self._note(path, self._at)
        if self._text.startswith("[", self._at):
            self._array(path)
        elif self._text.startswith("{", self._at):
            self._inline_table(path)
        else:
            self._skip(_SCALAR)

    def _array(self, path: Path) -> None:
        self._at += 1
        index = 0
        self._skip(_SPACE)
        while self._at < len(self._text) and self._text[self._at] != "]":
            self._value((*path, index))
            index += 1
            self._skip(_SPACE)
            if self._text.startswith(",", self._at):
                self._at += 1
            self._skip(_SPACE)
        self._at += 1

    def _inline_table(self, path: Path) -> None:
        self._at += 1
        self._skip(_SPACE)
        while self._at < len(self._text) and self._text[self._at] != "}":
            self._pair(path)
            self._skip(_SPACE)
            if self._text.startswith(",", self._at):
                self._at += 1
            self._skip(_SPACE)
        self._at += 1
