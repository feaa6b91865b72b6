"""What ``scalepan measure`` prints: the measures, the exact figure and the error."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.command_line.documents import facts_document, quantity_document
from scalepan.command_line.report import facts_lines
from scalepan.command_line.tables import wrapped

if TYPE_CHECKING:
    from scalepan.measuring import MeasuredOut


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
