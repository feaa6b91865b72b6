"""JSON text read by the standard library, with exact numbers and the place of every value."""

from __future__ import annotations

import json
import re
from bisect import bisect_right
from dataclasses import dataclass
from decimal import Decimal
from functools import cached_property
from typing import TYPE_CHECKING, Any

from scalepan.errors import Error, make_error

if TYPE_CHECKING:
    from collections.abc import Iterator

Path = tuple[str | int, ...]

_HALF = re.compile(r"[\ud800-\udfff]")
_MAYBE_HALF = re.compile(r"[\ud800-\udfff]|\\u[dD][89a-fA-F]")
_TOKEN = re.compile(r'"(?:[^"\\]|\\.)*"|[{}\[\],:]|[^\s{}\[\],:"]+', re.DOTALL)


@dataclass(frozen=True)
class JsonText:
    """A JSON text and where it begins: a file, or a part of one.

    Attributes:
        text: the JSON.
        file: its name.
        line, column: of its first character, from 1.
        strict: whether a line end inside a text is refused, as JSON has it, and half a character.
    """

    text: str
    file: str = ""
    line: int = 1
    column: int = 1
    strict: bool = True

    def load(self) -> Any:
        """The value, its decimals as Decimal.

        Raises:
            FileError: ``json.syntax``, ``json.duplicate``, with file, line and column.
        """
        try:
            loaded = json.loads(
                self.text,
                parse_float=Decimal,
                parse_constant=self._refuse,
                object_pairs_hook=_object,
                strict=self.strict,
            )
        except _KeyTwiceError as problem:
            raise self._twice(problem.key) from None
        except json.JSONDecodeError as problem:
            raise self._wrong(problem.msg, problem.pos) from None
        except RecursionError:
            raise self._wrong("brackets nest too deeply", 0) from None
        except ValueError as problem:
            long = "digits" in str(problem)
            message = "a number has too many digits" if long else str(problem)
            raise self._wrong(message, 0) from None
        if self.strict and _MAYBE_HALF.search(self.text):
            self._expect_whole_characters()
        return loaded

    def place(self, offset: int) -> tuple[int, int]:
        """Line and column of a character in the file."""
        line = bisect_right(self._starts, offset) - 1
        return self.line + line, offset - self._starts[line] + (1 if line else self.column)

    @cached_property
    def _starts(self) -> list[int]:
        return [0, *(found.end() for found in re.finditer("\n", self.text))]

    def error(self, code: str, message: str, path: Path, hint: str = "") -> Error:
        """An error at a value."""
        offset = next((offset for _, offset in self._values(path)), None)
        line, column = (0, 0) if offset is None else self.place(offset)
        return make_error(code, message, hint, self.file, line, column)

    def offsets(self, under: Path) -> dict[Path, int]:
        """Of a value and of each inside it, by path; of a text, of its first character behind the
        quote. Only for a text that ``load`` has accepted."""
        return dict(self._values(under))

    def _values(self, under: Path) -> Iterator[tuple[Path, int]]:
        wanted = list(under)
        path: list[str | int] = []
        is_key = False
        for token in _TOKEN.finditer(self.text):
            written = token[0]
            inside_list = path and isinstance(path[-1], int)
            if written in "}]":
                path.pop()
                is_key = False
            elif written == ",":
                if inside_list:
                    path[-1] += 1  # type: ignore[operator]
                is_key = not inside_list
            elif is_key and written != ":":
                path[-1] = json.loads(written, strict=False)
                is_key = False
            elif written != ":":
                if path[: len(wanted)] == wanted:
                    yield tuple(path), token.start() + written.startswith('"')
                if written in "{[":
                    path.append("" if written == "{" else 0)
                    is_key = written == "{"

    def _wrong(self, message: str, offset: int) -> Error:
        line, column = self.place(offset)
        return make_error("json.syntax", f"not JSON: {message}", "", self.file, line, column)

    def _refuse(self, constant: str) -> Any:
        raise ValueError(f"{constant} is no number")

    def _expect_whole_characters(self) -> None:
        for token in _TOKEN.finditer(self.text):
            if token[0].startswith('"') and _HALF.search(json.loads(token[0])):
                raise self._wrong("half a character, of a pair of surrogates", token.start() + 1)

    def _twice(self, key: str) -> Error:
        known: set[Path] = set()
        line, column = 0, 0
        for path, offset in self._values(()):
            if path[-1:] == (key,):
                if path in known:
                    line, column = self.place(offset)
                    break
                known.add(path)
        message = f'one object has the key "{key[:60]}" twice'
        return make_error("json.duplicate", message, "", self.file, line, column)


class _KeyTwiceError(Exception):
    """One object has a key twice."""

    def __init__(self, key: str) -> None:
        super().__init__(key)
        self.key = key


def _object(pairs: list[tuple[str, Any]]) -> dict[str, Any]:
    made: dict[str, Any] = {}
    for key, value in pairs:
        if key in made:
            raise _KeyTwiceError(key)
        made[key] = value
    return made
