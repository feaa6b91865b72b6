"""Recipes made to fill trays: by area, which keeps the depth, or by volume."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.errors import make_error
from scalepan.pan_table import pan_ratio

if TYPE_CHECKING:
    from scalepan._core import Recipe
    from scalepan.pan_size import Pan
    from scalepan.pan_table import Number


def fill_trays(recipe: Recipe, tray: Pan | str, count: Number = 1, *, by: str = "area") -> Recipe:
    """The recipe at the size that fills so many trays as its own tray is filled.

    Args:
        recipe: one that says which ``tray`` its written size fills.
        tray: a pan, its name, or its size.
        count: how many.
        by: ``area``, so that the food stands as deep as before, or ``volume``, which both pans
            must have from a source.

    Raises:
        RecipeError: ``size.no_tray``.
        MeasureError: what ``pan_ratio`` raises.
    """
    if not recipe.tray:
        message = f"{recipe.name} does not say which tray its written size fills"
        raise make_error("size.no_tray", message, 'write in its file: tray = "GN 1/2 65"')
    return recipe.scale(factor=pan_ratio(tray, recipe.tray, count, recipe.trays, by))
