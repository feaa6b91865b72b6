"""A recipe as the text of its TOML file."""

from __future__ import annotations

import os
from collections.abc import Iterable, Mapping
from decimal import Decimal
from fractions import Fraction
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan import _core
from scalepan.errors import Error, make_error
from scalepan.files import write_whole
from scalepan.recipes import LINE_KEYS, Library, real_path
from scalepan.toml_text import key_text, quoted

if TYPE_CHECKING:
    from scalepan._core import Catalog, Recipe
    from scalepan.files import PathLike

_LISTS = ("lines", "method")
# So many characters stand before a text on a row of its own.
_BEFORE = 3


class _Row(NamedTuple):
    """A row of the text, and what of the recipe it holds: ``lines 3``."""

    text: str
    holds: str = ""


def recipe_text(recipe: Recipe) -> str:
    """As ``scalepan.recipe_text``."""
    if recipe.file is None:
        message = f"{recipe.name} stands inside the file of another recipe"
        raise make_error("recipe.no_text", message, "write the recipe that it is a base of")
    return recipe.file[1]


def write_recipe(recipe: Recipe, path: PathLike) -> None:
    """As ``scalepan.write_recipe``."""
    text = recipe_text(recipe)
    _expect_bases(recipe, text, os.path.dirname(real_path(os.fspath(path))))
    write_whole(path, text)


def _expect_bases(recipe: Recipe, text: str, folder: str) -> None:
    from scalepan.toml_document import load  # here, since few recipes have bases

    if not recipe.bases:
        return
    bases = load(text, "")[0].get("bases", {})
    for name, written in bases.items():
        if isinstance(written, str) and not os.path.exists(os.path.join(folder, written)):
            message = f"the base {name} is read from {written}, which is not there from {folder}"
            raise make_error("base.file", message, "write the base's file first")


def recipe_of(head: Mapping[str, Any], lines: object, catalog: Catalog | None, file: str) -> Recipe:
    """As ``scalepan.recipe``: ``head`` has all keys but the lines."""
    data = {**head, "lines": _lines_of(lines)}
    rows = _rows(data, ())
    text = "\n".join(row.text for row in rows) + "\n"
    try:
        return Library(catalog).parse(text, file)
    except Error as error:
        if file or not 0 < error.line <= len(rows) or not rows[error.line - 1].holds:
            raise
        raise _at(rows[error.line - 1], error) from None


def toml_of(data: Mapping[str, Any], remarks: Iterable[str] = ()) -> str:
    """The text of a recipe file, with remarks at its head.

    Raises:
        RecipeError: ``recipe.type`` for a value that no recipe file holds.
    """
    head = [f"# {_on_one_line(remark)}" for remark in remarks]
    return "\n".join([*head, *(row.text for row in _rows(data, ()))]) + "\n"


def _on_one_line(text: str) -> str:
    return " ".join("".join(c if c.isprintable() else " " for c in text).split())


def _lines_of(lines: object) -> list[Any]:
    if isinstance(lines, list | tuple) and not all(hasattr(line, "keys") for line in lines):
        return list(lines)
    from scalepan.csv_document import Columns
    from scalepan.own_tables import rows_of_table

    columns = Columns("line", ("line",), [key for key in LINE_KEYS if key != "line"])
    rows = rows_of_table(lines, columns, flags=("optional",))
    return [_line_of({key: text for key, text in row.texts.items() if text}) for row in rows]


def _line_of(texts: dict[str, Any]) -> Any:
    optional = texts.pop("optional", "no")
    if optional in ("yes", "no"):
        texts |= {"optional": True} if optional == "yes" else {}
    else:
        texts["optional"] = optional
    return texts["line"] if list(texts) == ["line"] else texts


def _rows(data: Mapping[str, Any], inside: tuple[str, ...]) -> list[_Row]:
    """Keys first, tables of bases last, as TOML wants it."""
    rows: list[_Row] = []
    for key, value in data.items():
        if key in _LISTS and isinstance(value, list | tuple):
            rows.append(_Row(f"{key_text(key)} = ["))
            rows += [
                _Row(f"  {_value(one, key)},", f"{key} {place}")
                for place, one in enumerate(value, 1)
            ]
            rows.append(_Row("]"))
        elif key != "bases":
            rows.append(_Row(f"{key_text(key)} = {_value(value, key)}", key))
    bases = data.get("bases") or {}
    paths = {name: base for name, base in bases.items() if not isinstance(base, Mapping)}
    table = ".".join(map(key_text, (*inside, "bases")))
    if paths:
        rows += [_Row(""), _Row(f"[{table}]")]
        rows += [
            _Row(f"{key_text(name)} = {_value(path, name)}", name) for name, path in paths.items()
        ]
    for name, base in bases.items():
        if isinstance(base, Mapping):
            rows += [_Row(""), _Row(f"[{table}.{key_text(name)}]")]
            rows += _rows(base, (*inside, "bases", name))
    return rows


def _value(value: Any, key: str) -> str:
    if isinstance(value, bool):
        return "true" if value else "false"
    if isinstance(value, str):
        return quoted(value)
    if isinstance(value, int | Fraction | Decimal):
        number = _core.exact_text(value)
        return number if number.isdecimal() and len(number) < 16 else quoted(number)
    if isinstance(value, Mapping):
        pairs = (f"{key_text(str(name))} = {_value(one, key)}" for name, one in value.items())
        return f"{{ {', '.join(pairs)} }}" if value else "{}"
    if isinstance(value, Iterable):
        return f"[{', '.join(_value(one, key) for one in value)}]"
    message = f"{key} holds a {type(value).__name__}, which no recipe file holds"
    raise make_error("recipe.type", message, "give texts, whole numbers, fractions or decimals")


def _at(row: _Row, error: Error) -> Error:
    """The error with what it is about, since there is no file; the column is that in its text."""
    is_text = row.text.startswith('  "')
    column = error.column - _BEFORE if is_text and error.column > _BEFORE else 0
    return make_error(error.code, error.message, error.hint, column=column, cell=row.holds)
