"""Handing a dish over: all that another kitchen needs, on one page of plain text.

print(hand_over(pot.scale(portions=40), volumes="us spoons and cups"))
"""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import MeasureSet, Quantity, Recipe


def hand_over(
    recipe: Recipe,
    volumes: MeasureSet | str | None = None,
    weights: MeasureSet | str | None = None,
    within: Quantity | str | Fraction | None = None,
    width: int = 80,
) -> str:
    """The page: sizes tested, amounts, method with its amounts, times, label, cautions.

    Args:
        recipe: at the size wanted.
        volumes: the other kitchen's set of measures for volumes, as ``measure_out_lines`` has it.
        weights: its set for weights; with neither set, amounts stay as they are written.
        within: a share, ``"1 %"``: only the largest measures that come so near.
        width: columns of the page.

    Raises:
        MeasureError: ``measure.unknown_set``, ``measure.kind``, ``measure.within``.
    """
    from scalepan.command_line.paging import page_lines  # here, so that `import` stays quick

    lines = page_lines(recipe, width, volumes=volumes, weights=weights, within=within)
    return "\n".join(lines)
