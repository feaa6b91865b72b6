"""Selling prices, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import quantity_document
from scalepan.command_line.report import money_of
from scalepan.command_line.sections import NOTE, Figure, Rounded, Section, Table, Texts

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import PriceFound, Quantity, Selling


ROUNDED = Rounded(("Shown rounded half up; --json has exact figures.",), NOTE)
_SHARE = ("food cost %", "food cost / net; gross profit is the rest")


def price_section(title: str, found: PriceFound, unpriced: list[str]) -> Section:
    """The exact price and the one of the ending, side by side."""
    exact, shelf = found.exact, found.shelf
    least, most = ("at least ", "at most ") if unpriced else ("", "")
    amounts = list(zip(_meanings(exact), amounts_of(exact), amounts_of(shelf), strict=True))
    rows = [
        (name, money_of(one, least), money_of(other, least), meaning)
        for (name, meaning), one, other in amounts[:-1]
    ]
    # Of the price on the card, where the food cost may be more than is known.
    (name, meaning), one, other = amounts[-1]
    rows.append((name, money_of(one, least), money_of(other, most), meaning))
    rows.append(
        (
            _SHARE[0],
            share_of(exact),
            least + share_of(shelf),
            _SHARE[1],
        )
    )
    body = Table(("a portion", "exact", "on the card", "meaning"), rows, (1, 2))
    missing = f"Too low: not priced, and so not in the food cost: {', '.join(unpriced)}."
    return Section(title, (body, Texts([missing] if unpriced else [], NOTE), ROUNDED))


def selling_rows(selling: Selling) -> list[tuple[str, str, str]]:
    """Name, amount and meaning of what a price comes to."""
    rows = [
        (name, money_of(amount), meaning)
        for (name, meaning), amount in zip(_meanings(selling), amounts_of(selling), strict=True)
    ]
    return [*rows, (_SHARE[0], share_of(selling), _SHARE[1])]


def price_document(found: PriceFound) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "exact": _selling_document(found.exact),
        "shelf": _selling_document(found.shelf),
        "raised": quantity_document(found.raised),
    }


def _meanings(selling: Selling) -> tuple[tuple[str, str], ...]:
    return (
        ("food cost", "of a portion, as it is borne"),
        ("net", "the price without tax"),
        ("tax", f"{_core.quantity(_tax_rate(selling) * 100).told} % on top of it"),
        ("gross", "the price with tax"),
        ("contribution", "net - food cost"),
    )


def _tax_rate(selling: Selling) -> Fraction:
    return selling.tax.value / selling.net.value


def amounts_of(selling: Selling) -> tuple[Quantity, ...]:
    return (selling.food_cost, selling.net, selling.tax, selling.gross, selling.contribution)


def _selling_document(selling: Selling) -> dict[str, Any]:
    return {
        "food_cost": quantity_document(selling.food_cost),
        "net": quantity_document(selling.net),
        "tax": quantity_document(selling.tax),
        "tax_rate": str(_tax_rate(selling)),
        "gross": quantity_document(selling.gross),
        "contribution": quantity_document(selling.contribution),
        "food_cost_share": str(selling.food_cost_share),
        "gross_profit_share": str(selling.gross_profit_share),
    }


def share_of(selling: Selling) -> str:
    """The food-cost percentage, with the exact share beside it where it is rounded."""
    share = selling.food_cost_share
    told = f"{_core.fixed_text(share * 100, 1)} %"
    return told if (share * 1000).denominator == 1 else Figure(told, _core.exact_text(share))
