"""The shopping page: packs by shop, each with a box to tick."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan._core import Basket
from scalepan.command_line.page_words import sentence
from scalepan.command_line.report import (
    bare_money,
    buying_terms,
    deposit_notes,
    least_notes,
    need_of,
    notes_section,
    shopping_header,
    shopping_row,
    title_text,
    total,
)
from scalepan.command_line.sections import NOTE, Group, Section, Table, Texts
from scalepan.command_line.stocking import left_section
from scalepan.display.markup import Markup, element, together
from scalepan.display.page import table_html
from scalepan.printed.blocks import PAPER, box, head, reports, signature
from scalepan.printed.offers_bought import shop_of_pack
from scalepan.printing import Part

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Costing, Line, Quantity, ShoppingRow
    from scalepan.command_line.sections import Row


def shopping_part(costing: Costing | Basket, remarks: Sequence[str] = ()) -> Part:
    """What to buy for a costing, or for several dishes together; remarks stand below the title."""
    title = _title(costing)
    body = together(
        [
            head(title, [sentence(text) for text in remarks]),
            table_html(_table(costing), PAPER),
            element("p", total(costing), of="total"),
            reports(
                Section("", (Texts(least_notes(costing), NOTE),)),
                Section("", (Texts([*deposit_notes(costing), *buying_terms(costing)], NOTE),)),
                left_section(costing),
                notes_section(costing.to_check),
            ),
            signature("Bought"),
        ]
    )
    return Part(title, "shopping page", body)


def _title(costing: Costing | Basket) -> str:
    if isinstance(costing, Basket):
        return "; ".join(title_text(dish.recipe) for dish in costing.dishes)
    return title_text(costing.recipe)


def _table(costing: Costing | Basket) -> Table:
    item, need, packs, price, left = shopping_header(costing.till)
    deposit = ["deposit"] if costing.deposit else []
    header = (item, packs, price, *deposit, need, left)
    rows: list[Row] = []
    for shops, bought in _by_shops(costing.shopping).items():
        if heading := _heading(shops, bought, costing):
            rows.append(Group(heading, len(header)))
        rows += [_row(row, costing) for row in bought]
    rows += _unpriced(costing, len(header))
    return Table(header, rows, (2, 3) if deposit else (2,))


def _by_shops(bought: Sequence[ShoppingRow]) -> dict[tuple[str, ...], list[ShoppingRow]]:
    """Shops in the order of what is bought there; behind them what comes from several."""
    rows: dict[tuple[str, ...], list[ShoppingRow]] = {}
    for row in sorted(bought, key=lambda row: len(row.shops) != 1):
        rows.setdefault(tuple(row.shops), []).append(row)
    return rows


def _heading(
    shops: tuple[str, ...], bought: Sequence[ShoppingRow], costing: Costing | Basket
) -> str:
    """The shop and what it takes; nothing where no row names a shop."""
    if not any(row.shops for row in costing.shopping):
        return ""
    name = " and ".join(shops) or "rows without a shop"
    return f"{name}: {_sum_of([row.price for row in bought]).told_money}"


def _sum_of(amounts: Sequence[Quantity]) -> Quantity:
    """Of at least one."""
    first, *others = amounts
    return sum(others, start=first)


def _row(row: ShoppingRow, costing: Costing | Basket) -> Row:
    item, need, _, price, left = shopping_row(row)
    deposit = [bare_money(row.deposit)] if costing.deposit else []
    return (item, _packs(row, costing), price, *deposit, need, left)


def _packs(row: ShoppingRow, costing: Costing | Basket) -> Markup:
    if not row.packs:
        return element("div", "none", of="packs")
    told = [f"{count} x {pack}{_at(shop_of_pack(row, pack, costing))}" for count, pack in row.packs]
    ticked = [element("div", box(f"{row.item}: {text}"), element("span", text)) for text in told]
    return element("div", *ticked, of="packs")


def _at(shop: str) -> str:
    return f" ({shop})" if shop else ""


def _unpriced(costing: Costing | Basket, columns: int) -> list[Row]:
    """What no price is known of, by its line, to be bought all the same."""
    if not costing.unpriced:
        return []
    lines = {} if isinstance(costing, Basket) else _lines_by_id(costing)
    rows = []
    for name in costing.unpriced:
        line = lines.get(name)
        item = line.food if line is not None else name
        need = need_of(line.amount) if line is not None and line.amount is not None else ""
        tick = element("div", element("div", box(item)), of="packs")
        rows.append((item, tick, *[""] * (columns - 4), need, ""))
    return [Group("not priced", columns), *rows]


def _lines_by_id(costing: Costing) -> dict[str, Line]:
    return {line.id: line for line in costing.recipe.food_lines}
