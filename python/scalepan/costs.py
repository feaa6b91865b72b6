"""Costings and covers."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan._core import Costing, Cover, PriceBook, Quantity, Recipe

if TYPE_CHECKING:
    from collections.abc import Iterable

    Money = Quantity | str


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


def cover(need: Quantity | str, packs: Iterable[tuple[Quantity | str, Money]]) -> Cover:
    """The cheapest whole packs whose sum is at least the need.

    Args:
        need: an amount, ``"6.3 kg"``.
        packs: sizes and prices, ``("2.5 kg", "4.10")`` or ``("2.5 kg", "4.10 EUR")``; a price
            without a currency is held in XXX.

    Raises:
        PriceError: ``cover.dimension``, naming both sides, ``cover.money``, ``cover.no_packs``,
            ``cover.pack_size``, ``cover.price``, ``cover.too_many``.
    """
    rows = [(str(size), _amount(size), _money(price)) for size, price in packs]
    return _core.cover(_amount(need), rows)


def _amount(given: Quantity | str) -> Quantity:
    return given if isinstance(given, Quantity) else _core.quantity(given)


def _money(given: Money) -> Quantity:
    price = _amount(given) if isinstance(given, Quantity | str) else _core.quantity(given)
    if price.dimension == "plain number":
        return _core.quantity(price.value, "XXX")
    return price
