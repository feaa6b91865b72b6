"""A whole costing, as the command line prints it."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.command_line.report import (
    costs_section,
    recipe_sections,
    shopping_section,
    with_notes,
)
from scalepan.command_line.stocking import left_section

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Costing
    from scalepan.command_line.sections import Section


def costing_sections(costing: Costing, remarks: Sequence[str] = ()) -> list[Section]:
    """Amounts, packs, what is left, costs, notes and cautions."""
    sections = [
        *recipe_sections(costing.recipe_now, remarks),
        shopping_section(costing),
        left_section(costing),
        costs_section(costing),
    ]
    return with_notes(sections, costing.to_check, costing.cautions)
