"""The price rows that a costing buys by."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan._core import Basket
from scalepan.errors import FoodError

if TYPE_CHECKING:
    from scalepan._core import Catalog, Costing, Offer, ShoppingRow


def offers_bought(costing: Costing) -> list[Offer]:
    """In the order of what is bought."""
    catalog = costing.recipe.catalog
    found: list[Offer] = []
    for row in costing.shopping:
        for _, pack in row.packs:
            found += [each for each in _offers_of(row, pack, costing, catalog) if each not in found]
    return found


def shop_of_pack(row: ShoppingRow, pack: str, costing: Costing | Basket) -> str:
    """Where a pack of a row is bought that is bought in several shops, if one alone has it."""
    if len(row.shops) < 2 or isinstance(costing, Basket):
        return ""
    shops = {each.shop for each in _offers_of(row, pack, costing, costing.recipe.catalog)}
    return shops.pop() if len(shops) == 1 else ""


def _offers_of(row: ShoppingRow, pack: str, costing: Costing, catalog: Catalog) -> list[Offer]:
    return [
        offer
        for offer in costing.offers
        if offer.pack == pack
        and (offer.shop in row.shops or not row.shops)
        and _is_of(offer.item, row.item, catalog)
    ]


def _is_of(name: str, item: str, catalog: Catalog) -> bool:
    """Whether two names are of one food."""
    if name == item:
        return True
    try:
        return catalog.food_of(name) == catalog.food_of(item) is not None
    except FoodError:
        return False
