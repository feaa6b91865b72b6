"""TOML text read by the standard library, with exact numbers and the place of every value."""

from __future__ import annotations

import re
import tomllib
from decimal import Decimal
from typing import Any

from scalepan.errors import RecipeError
from scalepan.toml_places import Places, value_places

_CURLY = "\u201c\u201d\u201e\u201f\u2018\u2019\u201a"
_FILE_NAME = re.compile(r"[^\n=\[\]\"]+\.(?:toml|csv)")
_DECIMAL_COMMA = re.compile(r"=\s*(\d+),(\d+)\s*(?:[,}#]|$)")
_SYNTAX_PLACE = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)")


def load(text: str, file: str) -> tuple[dict[str, Any], Places]:
    """The document, its decimals as Decimal, and the places of its values.

    Raises:
        RecipeError: ``recipe.syntax`` with file, line and column.
    """
    try:
        return tomllib.loads(text, parse_float=Decimal), value_places(text)
    except tomllib.TOMLDecodeError as problem:
        raise _syntax_error(str(problem), text, file) from None
    except RecursionError:
        raise RecipeError("recipe.syntax", "brackets nest too deeply", "", file) from None
    except ValueError as problem:
        long = "digits" in str(problem)
        message = "a number has too many digits" if long else f"not TOML: {problem}"
        raise RecipeError("recipe.syntax", message, "", file) from None


def has_key(text: str, keys: str) -> bool:
    """Whether a TOML text has one of the keys, which are parted by bars, without reading it."""
    pattern = rf"^[ \t]*(?:{keys})[ \t]*=|^\[+[ \t]*(?:{keys})[ \t]*[\].]"
    return re.search(pattern, text, re.MULTILINE) is not None


def _syntax_error(problem: str, text: str, file: str) -> RecipeError:
    found = _SYNTAX_PLACE.search(problem)
    line, column = (int(found[1]), int(found[2])) if found and found[1] else (0, 0)
    message = f"not TOML: {_SYNTAX_PLACE.sub('', problem)}"
    hint = _hint(problem, text.split("\n"), line, column)
    return RecipeError("recipe.syntax", message, hint, file, line, column)


def _hint(problem: str, lines: list[str], line: int, column: int) -> str:
    """The slip it most often is."""
    first = next((each.strip() for each in lines if each.strip()), "")
    if len(lines) == 1 and _FILE_NAME.fullmatch(first):
        return "this is the name of a file: read_recipe, read_sheet and so on read files"
    if not any("=" in each for each in lines):
        if first.count(",") > 2:
            return "this is a table, such as a price book: read_prices reads those"
        return 'a recipe has keys: name = "Soup", serves = 4, lines = ["500 g leeks, trimmed"]'
    if not line:
        return "a bracket is not closed" if problem.startswith("Unclosed") else ""
    here = lines[line - 1]
    if comma := _DECIMAL_COMMA.search(here):
        return f"a number has a decimal point: write {comma[1]}.{comma[2]}, or a text"
    if any(quote in here for quote in _CURLY):
        return 'write straight quotes: "500 g leeks, trimmed"'
    before = "\n".join([*lines[: line - 1], here[: column - 1]]).rstrip()
    if before.endswith(('"', "'", "}")) and here[column - 1 :].startswith(('"', "'", "{")):
        return f"a comma is missing at the end of line {before.count(chr(10)) + 1}"
    if column > len(here) and here.count('"') % 2:
        return "the text has no closing quote"
    if before.endswith("="):
        return 'a text stands in straight quotes: name = "Barley soup"'
    return ""
