"""Amounts by measures, as the command line prints them: one amount, and a whole recipe."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.command_line.documents import facts_document, quantity_document
from scalepan.command_line.report import facts_lines, title_lines
from scalepan.command_line.tables import table, wrapped

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Recipe
    from scalepan.measuring import MeasuredLine, MeasuredOut


def measuring_section(given: str, result: MeasuredOut, width: int) -> list[str]:
    """The measures, how far they are from exact, and the facts on the way."""
    lines = wrapped(f"{given} = {result.text}", width)
    lines += wrapped(f"{result.measures}: {result.told_error}", width, "  ")
    return lines + facts_lines(result.facts, width)


def measuring_document(result: MeasuredOut) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "text": result.text,
        "pieces": [{"count": count, "measure": measure} for count, measure in result.pieces],
        "amount": quantity_document(result.amount),
        "exact": quantity_document(result.exact),
        "error": quantity_document(result.error),
        "error_share": str(result.error_share),
        "set": result.measures,
        "facts": facts_document(result.facts),
    }


def recipe_section(recipe: Recipe, measured: Sequence[MeasuredLine], width: int) -> list[str]:
    """Title, tested sizes, every line by the measures, and how far each is from exact."""
    rows = [(line.told, _error_of(line)) for line in measured]
    header = ("by measures", "less or more than exact")
    return [*title_lines(recipe, width), *table(header, rows, right=(), width=width)]


def _error_of(line: MeasuredLine) -> str:
    if line.measured is None:
        return line.note
    # A narrow column must not part the figure from its sign.
    return line.measured.told_error.replace(" %", "\u00a0%")


def recipe_document(measured: Sequence[MeasuredLine]) -> list[dict[str, Any]]:
    """A line each; ``measured`` is null where ``note`` says why it stays as it is."""
    return [
        {
            "id": line.line.id,
            "told": line.told,
            "measured": None if line.measured is None else measuring_document(line.measured),
            "note": line.note,
        }
        for line in measured
    ]
