"""Commands on what was kept in a file: sheets and costings."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.command_line import sheeting
from scalepan.command_line.inputs import catalog_asked, prices_asked
from scalepan.command_line.standard_input import name_of, text_of
from scalepan.command_line.tables import terminal_width
from scalepan.costs import parse_costing
from scalepan.sheet_change_reader import MOST_BYTES
from scalepan.sheet_differences import sheet_difference
from scalepan.sheets import parse_sheet
from scalepan.toml_document import has_key

if TYPE_CHECKING:
    import argparse

    from scalepan.command_line.output import Output
    from scalepan.costing_files import Moved, Refreshed
    from scalepan.sheets import Sheet


def sheet_command(options: argparse.Namespace) -> Output:
    """``scalepan sheet``."""
    sheet = _read(options.sheet)
    if options.cell is None:
        return sheeting.sheet_document(sheet), sheeting.sheet_lines(sheet, terminal_width())
    document = sheeting.cell_document(sheet, options.cell)
    return document, sheeting.cell_lines(sheet, options.cell, why=options.why)


def difference_command(options: argparse.Namespace) -> Output:
    """``scalepan sheet-difference``."""
    difference = sheet_difference(_read(options.old), _read(options.new))
    return sheeting.difference_document(difference), str(difference).splitlines()


def refresh_command(options: argparse.Namespace) -> Output:
    """``scalepan refresh``."""
    costing = parse_costing(text_of(options.costing, MOST_BYTES), file=name_of(options.costing))
    prices = None
    if options.prices:
        prices = prices_asked(options, costing.recipe.measures or None)
    found = costing.refresh(prices, catalog_asked(options))
    if options.save:
        found.costing.save(options.save)
    return _refresh_document(found), str(found).splitlines()


def _read(path: str) -> Sheet:
    text = text_of(path, MOST_BYTES)
    if has_key(text, "scalepan_costing"):
        return parse_costing(text, file=name_of(path)).sheet
    return parse_sheet(text, file=name_of(path))


def _refresh_document(found: Refreshed) -> dict[str, Any]:
    def listed(moved: list[Moved]) -> list[dict[str, str | None]]:
        return [{"name": one.name, "was": one.was or None, "now": one.now or None} for one in moved]

    return {
        "prices": listed(found.prices),
        "facts": listed(found.facts),
        "figures": listed(found.figures),
        "refused": found.refused,
        "missing_facts": found.missing,
    }
