"""TOML text read by the standard library, with exact numbers and the place of every value."""

from __future__ import annotations

import re
import tomllib
from decimal import Decimal
from typing import Any

from scalepan.errors import RecipeError
from scalepan.toml_places import Places, value_places

_SYNTAX_PLACE = re.compile(r"\s*\(at (?:line (\d+), column (\d+)|end of document)\)")


def load(text: str, file: str) -> tuple[dict[str, Any], Places]:
    """The document, its decimals as Decimal, and the places of its values.

    Raises:
        RecipeError: ``recipe.syntax`` with file, line and column.
    """
    try:
        return tomllib.loads(text, parse_float=Decimal), value_places(text)
    except tomllib.TOMLDecodeError as problem:
        raise _syntax_error(str(problem), file) from None
    except RecursionError:
        raise RecipeError("recipe.syntax", "brackets nest too deeply", "", file) from None
    except ValueError as problem:
        long = "digits" in str(problem)
        message = "a number has too many digits" if long else f"not TOML: {problem}"
        raise RecipeError("recipe.syntax", message, "", file) from None


def _syntax_error(problem: str, file: str) -> RecipeError:
    found = _SYNTAX_PLACE.search(problem)
    line, column = (int(found[1]), int(found[2])) if found and found[1] else (0, 0)
    message = f"not TOML: {_SYNTAX_PLACE.sub('', problem)}"
    return RecipeError("recipe.syntax", message, "", file, line, column)
