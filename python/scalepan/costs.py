"""Costings."""

from __future__ import annotations

from scalepan import _core
from scalepan._core import Costing, PriceBook, Recipe


def cost(recipe: Recipe, prices: PriceBook, *, strict: bool = False) -> Costing:
    """The recipe at its size, bought in whole packs, by each of the four costs.

    Args:
        recipe: scaled to the size wanted.
        prices: of each item, stage, pack and shop the newest row counts; narrow it with
            ``prices.on(date, shops)``.
        strict: an unknown edible share is an error, not a note under "to check".

    Raises:
        CostError: ``cost.stage``, ``cost.currencies``.
        PriceError: ``cover.too_many``.
    """
    return _core.cost(recipe, prices.on(), strict)
