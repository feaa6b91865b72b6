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
    portions_text,
    shopping_header,
    shopping_row,
    title_text,
    total,
)
from scalepan.command_line.sections import NOTE, Group, Section, Table, Texts
from scalepan.command_line.stocking import WITHOUT_SHOP, left_section
from scalepan.display.markup import Markup, element, together
from scalepan.display.page import table_html
from scalepan.printed.blocks import PAPER, box, head, reports, signature, wild
from scalepan.printed.offers_bought import shop_of_pack
from scalepan.printing import Part

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

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
        return "; ".join(f"{dish.name}, {portions_text(dish.recipe)}" for dish in costing.dishes)
    return title_text(costing.recipe_now)


def _table(costing: Costing | Basket) -> Table:
    item, need, packs, price, left = shopping_header(costing.till)
    deposit = ["deposit"] if costing.deposit else []
    header = (item, packs, price, *deposit, need, left)
    rows: list[Row] = []
    for heading, bought in _by_shops(costing):
        rows += [Group(heading, len(header))] if heading else []
        rows += [_row(row, costing) for row in bought]
    rows += _unpriced(costing, len(header))
    return Table(header, rows, (2, 3) if deposit else (2,))


def _by_shops(costing: Costing | Basket) -> Iterator[tuple[str, list[ShoppingRow]]]:
    """Shops with what they take, in the order of what is bought there; behind them what comes
    from several, from none that is named, and what is on hand. No heading where no shop is named.
    """
    bought = [row for row in costing.shopping if row.packs]
    groups: dict[tuple[str, ...], list[ShoppingRow]] = {}
    for row in sorted(bought, key=lambda row: (not row.shops, len(row.shops))):
        groups.setdefault(tuple(row.shops), []).append(row)
    for shops, rows in groups.items():
        name = " and ".join(shops) or WITHOUT_SHOP
        takes = _sum_of([row.price for row in rows]).told_money
        yield f"{name}: {takes}" if set(groups) != {()} else "", rows
    if on_hand := [row for row in costing.shopping if not row.packs]:
        yield "on hand", on_hand


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
    return element("div", *(_to_tick(row.item, text) for text in told), of="packs")


def _to_tick(item: str, text: str) -> Markup:
    return element("div", box(f"{item}: {text}"), element("span", text, of=wild(text)))


def _at(shop: str) -> str:
    return f" ({shop})" if shop else ""


def _unpriced(costing: Costing | Basket, columns: int) -> list[Row]:
    """What no price is known of, by its line, to be bought all the same."""
    if not costing.unpriced:
        return []
    lines = _lines_by_id(costing)
    rows = []
    for name in costing.unpriced:
        line = lines[name]
        need = "" if line.amount is None else need_of(line.amount)
        tick = element("div", element("div", box(line.food)), of="packs")
        rows.append((line.food, tick, *[""] * (columns - 4), need, ""))
    return [Group("not priced", columns), *rows]


def _lines_by_id(costing: Costing | Basket) -> dict[str, Line]:
    """As ``unpriced`` names them."""
    if isinstance(costing, Basket):
        dishes = [(f"{dish.id}.", dish.recipe) for dish in costing.dishes]
    else:
        dishes = [("", costing.recipe_now)]
    return {f"{lead}{line.id}": line for lead, recipe in dishes for line in recipe.food_lines}
