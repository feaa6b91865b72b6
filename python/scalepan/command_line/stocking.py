"""What is on hand, what stays of it, and one shop against another, as the commands print them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.command_line.documents import quantity_document
from scalepan.command_line.report import (
    at_least,
    bare_money,
    notes_section,
    priced_in,
    told_of,
)
from scalepan.command_line.sections import ALL_OF_A_KITCHEN, POINT, Section, Table, Texts

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Basket, Costing, Leftover
    from scalepan.costs import ShopCosting

WITHOUT_SHOP = "rows without a shop"


def left_section(costing: Costing | Basket) -> Section:
    """What is left of packs and stock, with its value; nothing where no stock was at hand."""
    left = costing.left
    if not costing.opening and all(each.bought for each in left):
        return Section()
    rows = [
        (each.item, told_of(each.amount), bare_money(each.value), _from(each), _fate(each))
        for each in left
    ]
    header = ("item", "left", priced_in(costing), "from", "keeps")
    return Section("What is left", (Table(header, rows, (2,), "costing.left", ALL_OF_A_KITCHEN),))


def left_document(costing: Costing) -> list[dict[str, Any]]:
    """What is left of packs and stock."""
    return [
        {
            "item": each.item,
            "amount": quantity_document(each.amount),
            "value": quantity_document(each.value),
            "bought": each.bought,
            "keeps": each.keeps,
            "keeps_days": each.keeps_days,
            "use_by": each.use_by,
        }
        for each in costing.left
    ]


def shops_sections(title: str, rows: Sequence[ShopCosting]) -> list[Section]:
    """A row a shop: its till, what the dish bears, what has no price there; then what to check."""
    costings = [row.costing for row in rows if row.costing is not None]
    cells = [_shop_row(row) for row in rows]
    currency = priced_in(costings[0]) if costings else ""
    header = ("bought at", f"till {currency}".rstrip(), "borne", "not priced there")
    problems = [f"{_shop_name(row)}: {row.problem}" for row in rows if row.problem]
    shops = Section(title, (Table(header, cells, (1, 2)), Texts(problems, POINT)))
    return [shops, notes_section(shops_to_check(rows))]


def shops_to_check(rows: Sequence[ShopCosting]) -> list[str]:
    """The notes of all shops together: of one alone they say little more than what it lacks."""
    return next((row.costing.to_check for row in rows if row.costing is not None), [])


def shops_document(rows: Sequence[ShopCosting]) -> list[dict[str, Any]]:
    """The same as data; ``shop`` is null for all shops together."""
    return [
        {
            "shop": row.shop,
            "till": None if row.costing is None else quantity_document(row.costing.till),
            "borne": None if row.costing is None else quantity_document(row.costing.borne),
            "unpriced": [] if row.costing is None else row.costing.unpriced,
            "problem": row.problem,
        }
        for row in rows
    ]


def _shop_row(row: ShopCosting) -> tuple[str, str, str, str]:
    if row.costing is None:
        return (_shop_name(row), "", "", "too little of an item, see below")
    missing = ", ".join(row.costing.unpriced)
    least = at_least(bool(row.costing.unpriced))
    till, borne = (bare_money(money, least) for money in (row.costing.till, row.costing.borne))
    return (_shop_name(row), till, borne, missing)


def _shop_name(row: ShopCosting) -> str:
    if row.shop is None:
        return "any shop, item by item"
    return row.shop or WITHOUT_SHOP


def _from(left: Leftover) -> str:
    return "packs bought" if left.bought else "stock"


def _fate(left: Leftover) -> str:
    if left.use_by:
        return f"use by {left.use_by}"
    if not left.keeps:
        return "no: thrown"
    return f"{left.keeps_days} days" if left.keeps_days else "yes"
