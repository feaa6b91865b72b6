"""What ``scalepan sheet`` and ``scalepan sheet-difference`` print."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan._core import Changes
from scalepan.command_line.report import joined
from scalepan.command_line.tables import table
from scalepan.errors import Error
from scalepan.sheet_comparison import told
from scalepan.sheet_content import Content

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan.sheet_comparison import Outcome
    from scalepan.sheet_differences import SheetDifference
    from scalepan.sheets import Sheet


def sheet_lines(sheet: Sheet, width: int) -> list[str]:
    """Cells with their figures and formulas, and each block of rows as a table."""
    content = Content(sheet.changes())
    figures = _figures(sheet, list(content.cells))
    rows = [[name, told(figures[name]), sheet.formula(name)] for name in content.cells]
    cells = table(("cell", "figure", "formula"), rows, right=(), width=width) if rows else []
    blocks = [_block_lines(sheet, name, width) for name in sorted(content.blocks)]
    return joined([cells, *blocks])


def _block_lines(sheet: Sheet, block: str, width: int) -> list[str]:
    columns = sheet.columns(block)
    names = {row: [f"{row}.{column}" for column in columns] for row in sheet.rows(block)}
    figures = _figures(sheet, [name for row in names.values() for name in row])
    rows = [[row, *(told(figures[name]) for name in cells)] for row, cells in names.items()]
    return table((block, *columns), rows, right=(), width=width)


def sheet_document(sheet: Sheet) -> dict[str, Any]:
    """Every cell with its exact figure or its error, and its formula."""
    figures = _figures(sheet, sheet.cells())
    return {
        "cells": [
            {"cell": name, **figure_document(figure), "formula": sheet.formula(name) or None}
            for name, figure in figures.items()
        ],
        "rows": {block: sheet.rows(block) for block in sheet.blocks()},
        "variants": sorted(sheet.variants),
    }


def figure_document(figure: Outcome) -> dict[str, Any]:
    """The exact figure, or the error."""
    if isinstance(figure, Error):
        return {"figure": None, "error": str(figure)}
    return {"figure": figure if isinstance(figure, bool) else str(figure), "error": None}


def cell_document(sheet: Sheet, name: str) -> dict[str, Any]:
    """One cell and how its figure comes about."""
    (figure,) = _figures(sheet, [name]).values()
    if isinstance(figure, Error) and figure.code == "sheet.unknown":
        raise figure
    return {"cell": name, **figure_document(figure), "why": sheet.why(name).splitlines()}


def cell_lines(sheet: Sheet, name: str, *, why: bool) -> list[str]:
    """The figure, or with ``why`` how it comes about. Raises the error that the cell holds."""
    return sheet.why(name).splitlines() if why else [told(sheet.value(name))]


def difference_document(difference: SheetDifference) -> dict[str, Any]:
    """The lines of a difference."""
    return {"differences": difference.lines}


def _figures(sheet: Sheet, names: Sequence[str]) -> dict[str, Outcome]:
    return dict(zip(names, sheet.values_with(Changes(), list(names)), strict=True))
