"""What ``scalepan sheet`` and ``scalepan sheet-difference`` print."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan._core import Changes, Interval, Quantity
from scalepan.command_line.report import ABOUT, exact_of, told_of
from scalepan.command_line.sections import NOTE, Figure, Rows, Section, Table, Texts, report_lines
from scalepan.errors import Error
from scalepan.sheet_comparison import AS_IT_IS, difference, signed, told

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan.sheet_comparison import Comparison, Outcome
    from scalepan.sheet_differences import SheetDifference
    from scalepan.sheet_studies import Sweep
    from scalepan.sheets import Sheet


def sheet_lines(sheet: _core.Sheet, width: int) -> list[str]:
    """Cells with their figures and formulas, and each block of rows as a table."""
    return report_lines(sheet_sections(sheet), width)


def sheet_sections(sheet: _core.Sheet) -> list[Section]:
    """The cells that stand alone, by name, and the blocks of rows."""
    blocks = {block: _block_cells(sheet, block) for block in sorted(sheet.blocks())}
    in_rows = {name for rows in blocks.values() for _, names in rows for name in names}
    alone = sorted(name for name in sheet.cells() if name not in in_rows)
    cells = Rows(alone, lambda name: (name, *_figures_told(sheet, [name]), sheet.formula(name)))
    body = Table(("cell", "figure", "formula"), cells, whole=_whole(sheet), formulas=(2,))
    return [
        Section("", (body,)) if alone else Section(),
        *(_block_section(sheet, block, rows) for block, rows in blocks.items()),
    ]


def _block_cells(sheet: _core.Sheet, block: str) -> list[tuple[str, list[str]]]:
    columns = sheet.columns(block)
    return [(row, [f"{row}.{column}" for column in columns]) for row in sheet.rows(block)]


def _block_section(sheet: _core.Sheet, block: str, cells: list[tuple[str, list[str]]]) -> Section:
    rows = Rows(cells, lambda row: (row[0], *_figures_told(sheet, row[1])))
    first = sheet.values_with(Changes(), cells[0][1]) if cells else []
    header = (block, *sheet.columns(block))
    body = Table(header, rows, whole=_whole(sheet), figures=_amounts_among(["", *first]))
    return Section("", (body,))


def _whole(sheet: _core.Sheet) -> str:
    """What has all cells."""
    return "costing.text()" if getattr(sheet, "of_costing", False) else "sheet.text()"


def _figures_told(sheet: _core.Sheet, names: list[str]) -> list[str]:
    return [figure_of(figure) for figure in sheet.values_with(Changes(), names)]


def figure_of(figure: Outcome) -> str:
    """For people, with the exact one beside it where it is rounded."""
    text = told(figure)
    if isinstance(figure, Interval):
        return Figure(text, str(figure)) if ABOUT in text else text
    return told_of(figure, text) if isinstance(figure, Quantity) else text


def comparison_section(compared: Comparison) -> Section:
    """Cells against variants, with what each variant has more."""
    variants = [compared.outcomes[name] for name in compared.variants]
    cells = list(zip(compared.cells, compared.as_it_is, *variants, strict=True))
    rows = Rows(
        cells,
        lambda cell: (cell[0], figure_of(cell[1]), *(_changed(cell[1], new) for new in cell[2:])),
    )
    header = ("", AS_IT_IS, *compared.variants)
    body = Table(header, rows, whole="comparison.to_data()", figures=range(1, len(header)))
    return Section("", (body,))


def _changed(old: Outcome, new: Outcome) -> str:
    """The figure of a variant, and what it has more."""
    more = difference(old, new)
    if more is None or not more:
        return figure_of(new)
    text = f"{told(new)} ({signed(more)})"
    if ABOUT not in text or not isinstance(new, Quantity):
        return text
    return Figure(text, f"{exact_of(new)} ({exact_of(more)})")


def sweep_section(swept: Sweep) -> Section:
    """The cells for each value of the input."""
    columns = [cell.figures for cell in swept]
    points = list(zip(swept.values, *columns, strict=True))
    rows = Rows(points, lambda point: tuple(figure_of(figure) for figure in point))
    header = (swept.name, *swept.cells)
    first = points[0] if points else ()
    body = Table(header, rows, whole="sweep[cell].figures", figures=_amounts_among(first))
    is_slow = swept.kernel.startswith("point by point")
    notes = [Texts((f"Worked out {swept.kernel}.",), NOTE)] if is_slow else []
    return Section("", (body, *notes))


def _amounts_among(figures: Sequence[object]) -> list[int]:
    return [place for place, one in enumerate(figures) if isinstance(one, Quantity)]


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
