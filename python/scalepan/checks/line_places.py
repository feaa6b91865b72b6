"""Where the lines of a recipe, and of the bases inside its file, are written."""

from __future__ import annotations

import os
import re
import shlex
from functools import cached_property
from typing import TYPE_CHECKING, Any

from scalepan.checks.finds import Find
from scalepan.toml_document import load

if TYPE_CHECKING:
    from collections.abc import Callable

    from scalepan._core import Line, Recipe
    from scalepan.checks.finds import CheckedFile
    from scalepan.toml_places import Path, Places

# What a shell takes as it is between double quotes.
_PLAIN = re.compile(r'[^"$`\\!]*')


class LinePlaces:
    """Takes finds about lines to their places in the file.

    Args:
        is_checked: whether the file at a path is looked at by itself, so that what is found in it
            need not be told again of each recipe that uses it.
    """

    def __init__(
        self, file: CheckedFile, recipe: Recipe, is_checked: Callable[[str], bool]
    ) -> None:
        self._file = file
        self._recipe = recipe
        self._is_checked = is_checked

    def add(self, code: str, message: str, hint: str, path: Path) -> None:
        """A find at a value of the file."""
        line, column = self._places.get(path, (0, 0))
        self._file.add(Find(code, message, hint, self._file.path, line, column))

    def add_line(self, code: str, message: str, hint: str, id: str = "") -> None:
        """A find at a line by its id; at no place where none is given or known."""
        path = self._paths.get(id, ())
        if path is not None:
            self.add(code, message, hint, path)

    def is_unknown(self, id: str) -> bool:
        """Whether the food of the line is none of the catalogue."""
        line = self._lines.get(id)
        return line is not None and line.food_id is None

    def reading_of(self, id: str) -> str:
        """The command that shows how the line is read; empty for what is no line."""
        line = self._lines.get(id)
        if line is None:
            return ""
        text = f'"{line.text}"' if _PLAIN.fullmatch(line.text) else shlex.quote(line.text)
        return f"scalepan read {text} shows how it is read"

    @cached_property
    def _read(self) -> tuple[dict[str, Any], Places]:
        return load(self._file.text, self._file.path)

    @property
    def _places(self) -> Places:
        return self._read[1]

    @cached_property
    def _lines(self) -> dict[str, Line]:
        return {line.id: line for line in (*self._recipe.lines, *self._recipe.food_lines)}

    @cached_property
    def _paths(self) -> dict[str, Path | None]:
        """The value that each line stands in; None where that is told of another file."""
        data, _ = self._read
        paths: dict[str, Path | None] = dict(_paths_of_lines(data, self._recipe.lines, ()))
        for name, written in data.get("bases", {}).items():
            inside = [line for line in self._recipe.food_lines if line.made_in == name]
            own = isinstance(written, dict)
            below = _paths_of_lines(written, inside, ("bases", name)) if own else {}
            elsewhere = not own and self._is_checked(
                os.path.join(os.path.dirname(self._file.path), str(written))
            )
            otherwise = None if elsewhere else ("bases", name)
            paths[name] = paths.get(name, otherwise)
            for line in inside:
                paths[line.id] = below.get(line.id, otherwise)
        return paths


def _paths_of_lines(data: dict[str, Any], lines: list[Line], root: Path) -> dict[str, Path]:
    """Lines stand in the order in which they are written, with headings between."""
    paths: dict[str, Path] = {}
    rest = iter(lines)
    line = next(rest, None)
    for i, written in enumerate(data.get("lines", ())):
        inside = isinstance(written, dict)
        text = written.get("line") if inside else written
        if line is not None and isinstance(text, str) and text.strip() == line.text.strip():
            paths[line.id] = (*root, "lines", i, "line") if inside else (*root, "lines", i)
            line = next(rest, None)
    return paths
