"""Other packs, other lines, and bases bought ready, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.command_line.documents import packs_document, quantity_document, quantity_or_null
from scalepan.command_line.report import (
    at_least,
    bare_money,
    packs_text,
    price_head,
    priced_in,
)
from scalepan.command_line.sections import NOTE, POINT, Section, Table, Texts
from scalepan.errors import make_error

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Costing, MakeOrBuy, PackPrice, Quantity, Swap

_CHECK_PACKS = "Allergens are those that the catalogue has of each food: check every pack."
_SWAP_HINT = 'write --swap "creme_fraiche = 150 g sour cream; 50 g butter"'


def swap_asked(text: str) -> tuple[str, list[str]]:
    """``creme_fraiche = 150 g sour cream; 50 g butter``: a line, and what goes in its place.

    Raises:
        CostError: ``swap.text``.
    """
    line, equals, others = text.partition("=")
    lines = [other.strip() for other in others.split(";") if other.strip()]
    if not (equals and line.strip() and lines):
        raise make_error("swap.text", f'"{text}" is no line with others in its place', _SWAP_HINT)
    return line.strip(), lines


def pack_prices_section(costing: Costing, item: str, prices: list[PackPrice]) -> Section:
    """Each pack with its price now, the price it is worth, and that by its size alone."""
    rows = [
        (
            f"{price.pack}, {price.shop}" if price.shop else price.pack,
            bare_money(price.price),
            "yes" if price.taken else "no",
            _worth(price),
            bare_money(price.by_size) if price.by_size is not None else "no other",
            _at_the_tie(price),
        )
        for price in prices
    ]
    header = ("pack", f"now {priced_in(costing)}", "taken", "worth", "by size", "at that price")
    note = (
        "Worth: the highest price at which the cheapest packs for this need hold it. By size: as "
        "if packs could be divided. Shown rounded half up; --json has exact figures."
    )
    body = Table(header, rows, (1, 3, 4))
    return Section(f"Packs of {item}", (body, Texts((note,), NOTE)))


def swaps_section(
    till: Quantity, borne: Quantity, swaps: list[Swap], unpriced: Sequence[str] = ()
) -> Section:
    """The swaps that save most first, and what the label gains or loses by them; ``till``,
    ``borne`` and the lines that are ``unpriced`` are those of the dish as it is."""
    least = at_least(bool(unpriced))
    rows = [
        ("as it is", "", bare_money(till, least), "", bare_money(borne, least), ""),
        *(_swap_row(swap, unpriced) for swap in swaps),
    ]
    currency = price_head(till)
    header = ("in place of", "lines", f"till {currency}", "saved", "borne", "saved")
    remarks = [
        f"{swap.line} = {'; '.join(swap.lines)}: {text}"
        for swap in swaps
        for text in _remarks(swap)
    ]
    body = Table(header, rows, (2, 3, 4, 5))
    return Section("Swaps", (body, Texts(remarks, POINT), Texts((_CHECK_PACKS,), NOTE)))


def make_or_buy_section(found: MakeOrBuy) -> Section:
    """Both ways side by side, for the base and for the whole dish."""
    made, bought = bool(found.unpriced_made), bool(found.unpriced_bought)
    rows = [
        ("made", *_both(found.made_till, found.made_borne, made), "its lines' shares by use"),
        ("bought", *_both(found.bought_till, found.bought_borne, bought), packs_text(found.packs)),
        ("dish, made", *_both(found.dish_made_till, found.dish_made_borne, made), ""),
        ("dish, bought", *_both(found.dish_bought_till, found.dish_bought_borne, bought), ""),
        (
            "bought less made",
            _difference(found.dish_bought_till - found.dish_made_till, bought, made),
            _difference(found.dish_bought_borne - found.dish_made_borne, bought, made),
            "of the whole dish: packs that it shares are paid either way",
        ),
    ]
    header = ("", f"till {price_head(found.dish_made_till)}", "borne", "")
    notes = [
        f"{way}, it takes more than is shown: not priced: {', '.join(missing)}."
        for way, missing in (("Made", found.unpriced_made), ("Bought", found.unpriced_bought))
        if missing
    ]
    title = f"{found.base}, {found.amount.told}: made, or {found.item} bought"
    return Section(title, (Table(header, rows, (1, 2)), Texts(notes, NOTE)))


def pack_prices_document(prices: list[PackPrice]) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "packs": [
            {
                "pack": price.pack,
                "shop": price.shop,
                "price": quantity_document(price.price),
                "taken": price.taken,
                "only": price.only,
                "worth": quantity_or_null(price.worth),
                "taken_at_worth": price.taken_at_worth,
                "by_size": quantity_or_null(price.by_size),
            }
            for price in prices
        ]
    }


def swaps_document(costing: Costing, swaps: list[Swap]) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "till": quantity_document(costing.till),
        "borne": quantity_document(costing.borne),
        "swaps": [
            {
                "line": swap.line,
                "lines": swap.lines,
                "till": quantity_document(swap.till),
                "borne": quantity_document(swap.borne),
                "saved_till": quantity_document(swap.saved_till),
                "saved_borne": quantity_document(swap.saved_borne),
                "unpriced": swap.unpriced,
                "allergens_gained": swap.allergens_gained,
                "allergens_lost": swap.allergens_lost,
                "allergens_unknown": swap.allergens_unknown,
            }
            for swap in swaps
        ],
    }


def make_or_buy_document(found: MakeOrBuy) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    costs = ("made", "bought", "dish_made", "dish_bought")
    return {
        "base": found.base,
        "item": found.item,
        "amount": quantity_document(found.amount),
        "packs": packs_document(found.packs),
        "lines": found.lines,
        **{
            name: {
                cost: quantity_document(getattr(found, f"{name}_{cost}"))
                for cost in ("till", "borne")
            }
            for name in costs
        },
        "unpriced_made": found.unpriced_made,
        "unpriced_bought": found.unpriced_bought,
    }


def _swap_row(swap: Swap, unpriced: Sequence[str]) -> tuple[str, ...]:
    others = any(line != swap.line for line in unpriced)
    least = at_least(others or bool(swap.unpriced))
    before, after = swap.line in unpriced, bool(swap.unpriced)
    return (
        swap.line,
        "; ".join(swap.lines),
        bare_money(swap.till, least),
        _difference(swap.saved_till, before, after),
        bare_money(swap.borne, least),
        _difference(swap.saved_borne, before, after),
    )


def _difference(money: Quantity, least_of: bool, most_of: bool) -> str:
    """A difference, where one or both sides take more than is known."""
    if least_of and most_of:
        return "not known"
    return bare_money(money, "at most " if most_of else at_least(least_of))


def _worth(price: PackPrice) -> str:
    if price.only:
        return "any price"
    return "no price" if price.worth is None else bare_money(price.worth)


def _at_the_tie(price: PackPrice) -> str:
    if price.worth is None:
        return ""
    return "taken" if price.taken_at_worth else "others taken, at the same cost"


def _remarks(swap: Swap) -> list[str]:
    texts = [
        f"{what}: {', '.join(names)}"
        for what, names in (
            ("allergens gained", swap.allergens_gained),
            ("allergens no longer in the dish", swap.allergens_lost),
            ("allergens not known", swap.allergens_unknown),
            ("not priced, so it saves less than shown", swap.unpriced),
        )
        if names
    ]
    return texts if texts else ["no allergen gained or lost that is known"]


def _both(till: Quantity, borne: Quantity, unpriced: bool) -> tuple[str, str]:
    return bare_money(till, at_least(unpriced)), bare_money(borne, at_least(unpriced))
