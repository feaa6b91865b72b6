"""Checks of recipes: what cannot be read, and what is doubtful where they can."""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.checks.finds import Find, find_of
from scalepan.checks.line_places import LinePlaces
from scalepan.costs import cost
from scalepan.errors import Error, make_error
from scalepan.recipes import Library
from scalepan.toml_document import load

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import Catalog, PriceBook, Recipe
    from scalepan.checks.finds import CheckedFile

_UNPRICED = "not priced: "
_NO_ROW = "no price row is for "
_OF_METHOD = " of the method use"
_OF_A_SIZE = "is counted as kept"


class RecipeCheck:
    """The recipes of a check, each read once."""

    def __init__(self, files: Iterable[CheckedFile], catalog: Catalog) -> None:
        self._files = {os.path.realpath(file.path): file for file in files if file.kind == "recipe"}
        self._catalog = catalog
        self._library = Library(catalog)
        self._recipes: dict[str, Recipe] = {}

    @property
    def measures(self) -> str | None:
        """Those that all recipes mean, where they mean the same."""
        meant = {recipe.measures for recipe in self._recipes.values() if recipe.measures}
        return meant.pop() if len(meant) == 1 else None

    def read(self, file: CheckedFile) -> None:
        """Reads a recipe, and notes what is wrong."""
        try:
            self._recipes[file.path] = self._library.read(file.path)
        except Error as error:
            self._note_error(file, error)

    def look_at(self, file: CheckedFile, book: PriceBook | None) -> None:
        """Notes what is doubtful. Raises what costing the recipe raises."""
        recipe = self._recipes.get(file.path)
        if recipe is None:
            return
        places = LinePlaces(file, recipe, self._is_checked)
        self._note_size(file, recipe, places)
        for note in _core.lines_to_check(recipe):
            self._note(file, places, note, "check.line")
        _note_cautions(file, recipe, places)
        if book is None:
            return
        costing = cost(recipe, book)
        known = set(_core.lines_to_check(recipe))
        for note in costing.to_check:
            if note not in known:
                self._note(file, places, note, "check.packs")

    def _is_checked(self, path: str) -> bool:
        return os.path.realpath(path) in self._files

    def _note_error(self, file: CheckedFile, error: Error) -> None:
        real = os.path.realpath(error.file) if error.file else ""
        other = self._files.get(real) if error.file != file.path else None
        if other is not None:
            message = f"it cannot be made, since {error.file} is wrong: {error.message}"
            file.add(Find(error.code, message, error.hint, file.path))
            return
        file.add(find_of(error, file.path))
        if error.code.partition(".")[0] != "file":
            self._note_more_lines(file, error.line)

    def _note_more_lines(self, file: CheckedFile, line: int) -> None:
        """The other lines that cannot be read, for what reads a recipe stops at the first."""
        try:
            data, places = load(file.text, file.path)
        except Error:
            return
        lines = data.get("lines")
        if not isinstance(lines, list):
            return
        paths: list[tuple[str, int] | tuple[str, int, str]] = []
        texts: list[str] = []
        for i, written in enumerate(lines):
            inside = isinstance(written, dict)
            text = written.get("line") if inside else written
            if isinstance(text, str):
                paths.append(("lines", i, "line") if inside else ("lines", i))
                texts.append(text)
        measures, decimal = (data.get(key) for key in ("measures", "decimal"))
        measures = measures if measures in ("us", "imperial", "metric", "au") else ""
        decimal = decimal if decimal in ("point", "comma") else "point"
        read = _core.read_lines(texts, measures, decimal, self._catalog, make_error)
        for path, found in zip(paths, read, strict=True):
            row, column = places.get(path, (0, 0))
            if not isinstance(found, Error) or row == line:
                continue
            if self._refuses(file, data, lines[path[1]], found):
                column += max(found.column - 1, 0)
                file.add(Find(found.code, found.message, found.hint, file.path, row, column))

    def _refuses(self, file: CheckedFile, data: dict[str, Any], line: Any, found: Error) -> bool:
        """Whether the recipe refuses the line too, for it may be of a base or in percent of flour.

        Where a base cannot be read, that is open.
        """
        shares = [one for one in data["lines"] if "%" in str(one)]
        few = {**data, "lines": shares if line in shares else [line], "method": []}
        try:
            self._library.made_of(few, {}, file.path, ("", ""))
        except Error as error:
            elsewhere = error.file not in ("", file.path) and found.code != "line.refers"
            return error.code == found.code or elsewhere
        return False

    def _note_size(self, file: CheckedFile, recipe: Recipe, places: LinePlaces) -> None:
        if recipe.is_tested:
            return
        size = _core.exact_text(recipe.serves)
        tested = ", ".join(_core.exact_text(each) for each in recipe.tested_at)
        message = f"it is not tested at the {size} it is written for"
        message += f", but at {tested}" if tested else "; no tested size is stated"
        hint = f"cook it so, then write tested_at = [{size}]"
        key = ("tested_at",) if tested else ("serves",)
        places.add("check.not_tested", message, hint, key)

    @staticmethod
    def _note(file: CheckedFile, places: LinePlaces, note: str, code: str) -> None:
        ids, colon, text = note.partition(": ")
        if not colon or text.endswith(_OF_A_SIZE):
            return
        line, *more = ids.split(", ")
        hint = places.reading_of(line)
        if _OF_METHOD in text:
            others = ", ..." if more else ""
            hint = f'a step says what it takes: uses = ["{line.rpartition(".")[2]}"{others}]'
        if (
            places.is_unknown(line)
            and code == "check.line"
            and text.startswith("the catalogue has")
        ):
            code, hint = (
                "check.unknown_food",
                "write one that scalepan foods lists, or add yours to a table of foods (--foods)",
            )
        elif text.startswith(_UNPRICED):
            text = text.removeprefix(_UNPRICED)
            if text.startswith(_NO_ROW):
                code, hint = "check.no_price", "add a row for it to a price book"
            else:
                code, hint = "check.no_fact", "add the fact as one of your own, or another pack"
        elif code == "check.packs":
            hint = "compare the rows of the price book with the line"
        places.add_line(code, f"{ids}: {text}", hint, line)


def _note_cautions(file: CheckedFile, recipe: Recipe, places: LinePlaces) -> None:
    """What to take care of, and foods whose allergens only their packs tell."""
    for text, source, ids in _core.safety_cautions(recipe):
        of = f"{', '.join(ids)}: " if ids else ""
        places.add_line("check.caution", f"{of}{text}", f"source: {source}", *ids[:1])
    items: list[Any] = [*_core.label(recipe).items]
    unsure = [item.name for item in items if item.check_pack]
    if unsure:
        message = f"{', '.join(unsure)}: the allergens are not known, or depend on the maker"
        places.add("check.allergens", message, "read the packs", ("lines",))
