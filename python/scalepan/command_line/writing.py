"""One file out of another: recipes, price books and kept costings in the form of its name."""

from __future__ import annotations

import os
import re
from typing import TYPE_CHECKING, Any

from scalepan import _core, exchange
from scalepan.command_line import report
from scalepan.command_line.inputs import catalog_asked
from scalepan.command_line.sections import report_lines
from scalepan.command_line.tables import terminal_width
from scalepan.costs import parse_costing
from scalepan.errors import make_error
from scalepan.files import read_text, write_whole
from scalepan.json_ld_reader import Asked, Words, recipe_of_json_ld
from scalepan.prices import parse_prices, write_prices
from scalepan.recipes import parse_recipe
from scalepan.sheet_change_reader import MOST_BYTES
from scalepan.toml_document import has_key

if TYPE_CHECKING:
    import argparse
    from collections.abc import Callable
    from types import UnionType

    from scalepan._core import Costing, PriceBook, Recipe
    from scalepan.command_line.output import Output

    Written = Recipe | PriceBook | Costing

_OF_JSON = re.compile(r'"schema"\s*:\s*"scalepan/')
_PAGES = (".html", ".htm", ".jsonld", ".json")
_WORDS = Words(
    name="--name, one of",
    serves="--serves 4",
    measures="--measures, ",
    unread="or --draft, which makes remarks of lines that cannot be read",
)


def write_command(options: argparse.Namespace) -> Output:
    """``scalepan write``."""
    shown = _read(options)
    notes: list[str] = []
    if isinstance(shown, _core.Recipe):
        notes = [*_unread(shown), *_core.lines_to_check(shown)]
        shown = _at_size(shown, options)
    _write(shown, options.target, overwrite=options.overwrite)
    told = f"{options.target}: {_told(shown)}"
    document = {"written": options.target, "what": _told(shown), "to_check": notes}
    return document, [told, *report_lines([report.notes_section(notes)], terminal_width())]


def _at_size(recipe: Recipe, options: argparse.Namespace) -> Recipe:
    """At the size that the target has: a recipe file has the written one."""
    is_file = options.target.lower().endswith(".toml")
    if options.portions and is_file:
        message = "a recipe file has the size its lines are written for"
        hint = "leave --portions out, or write it to .jsonld, .xlsx or .json"
        raise make_error("file.form", message, hint, options.target)
    if options.portions:
        return recipe.scale(portions=options.portions)
    return recipe.scale(factor=1) if is_file else recipe


def _read(options: argparse.Namespace) -> Any:
    source = options.source
    text = read_text(source, MOST_BYTES)
    ending = os.path.splitext(source)[1].lower()
    catalog = catalog_asked(options)
    if ending == ".toml" and has_key(text, "scalepan_costing"):
        return parse_costing(text, file=source)
    if ending == ".csv" or (ending == ".toml" and has_key(text, "prices")):
        return parse_prices(text, file=source, measures=options.measures)
    if ending == ".toml":
        return parse_recipe(text, file=source, catalog=catalog)
    if ending == ".json" and _OF_JSON.search(text):
        return exchange.from_json(text, file=source, catalog=catalog)
    if ending not in _PAGES:
        hint = "it ends in .html, .jsonld, .json, .toml or .csv"
        raise make_error("file.form", "the name of the source says no form", hint, source)
    asked = Asked(
        name=options.name,
        serves=options.serves,
        measures=options.measures or "",
        decimal=options.decimal,
        region=options.region,
        draft=options.draft,
        words=_WORDS,
    )
    return recipe_of_json_ld(text, source, asked, catalog)


def _unread(recipe: Recipe) -> list[str]:
    """What a draft left out, as the remarks of its text say it."""
    rows = exchange.recipe_text(recipe).splitlines()
    return [row[2:] for row in rows if row.startswith("# not read: ")]


def _write(shown: Any, target: str, *, overwrite: bool) -> None:
    ways: dict[str, tuple[type | UnionType, Callable[[Any, str], None]]] = {
        ".toml": (_core.Recipe | _core.PriceBook, _write_toml),
        ".jsonld": (_core.Recipe, exchange.write_json_ld),
        ".csv": (_core.PriceBook, write_prices),
        ".xlsx": (object, exchange.write_xlsx),
        ".json": (object, _write_json),
    }
    ending = os.path.splitext(target)[1].lower()
    fits, write = ways.get(ending, (type(None), _write_json))
    if not isinstance(shown, fits):
        can = [name for name, (kind, _) in ways.items() if isinstance(shown, kind)]
        message = f"{_told(shown)} cannot be written in the form of this name"
        raise make_error("file.form", message, f"write it to {', '.join(can)}", target)
    if os.path.lexists(target) and not overwrite:
        message = "the file is there already, so nothing is written"
        raise make_error("file.exists", message, "give another name, or --overwrite", target)
    write(shown, target)


def _write_toml(shown: Any, target: str) -> None:
    write = write_prices if isinstance(shown, _core.PriceBook) else exchange.write_recipe
    write(shown, target)


def _write_json(shown: Any, target: str) -> None:
    write_whole(target, exchange.to_json(shown) + "\n")


def _told(shown: Any) -> str:
    if isinstance(shown, _core.Recipe):
        return f"{report.title_text(shown)}, {_count(len(shown.lines), 'line')}"
    if isinstance(shown, _core.PriceBook):
        return f"a price book of {_count(len(shown), 'row')}"
    if isinstance(shown, _core.Costing):
        return f"the costing of {report.title_text(shown.recipe)}"
    return f"a {type(shown).__name__}"


def _count(number: int, what: str) -> str:
    return f"{number} {what}{'' if number == 1 else 's'}"
