"""Selling prices, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import quantity_document
from scalepan.command_line.report import heading
from scalepan.command_line.tables import table, wrapped

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import PriceFound, Quantity, Selling


def price_section(title: str, found: PriceFound, unpriced: list[str], width: int) -> list[str]:
    """The exact price and the one of the ending, side by side."""
    exact, shelf = found.exact, found.shelf
    least, most = ("at least ", "at most ") if unpriced else ("", "")
    rows = [
        (name, least + _money(one), least + _money(other), meaning)
        for (name, meaning), one, other in zip(
            _meanings(exact), _amounts(exact), _amounts(shelf), strict=True
        )
    ]
    # Of the price on the card, where the food cost may be more than is known.
    name, one, other, meaning = rows[-1]
    rows[-1] = (name, one, most + other.removeprefix(least), meaning)
    rows.append(
        (
            "food cost %",
            _percent(exact.food_cost_share),
            least + _percent(shelf.food_cost_share),
            "food cost / net; gross profit is the rest",
        )
    )
    header = ("a portion", "exact", "on the card", "meaning")
    lines = [heading(title), *table(header, rows, right=(1, 2), width=width)]
    if unpriced:
        missing = f"Too low: not priced, and so not in the food cost: {', '.join(unpriced)}."
        lines += wrapped(missing, width, "  ")
    return lines + wrapped("Shown rounded half up; --json has exact figures.", width, "  ")


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


def _amounts(selling: Selling) -> tuple[Quantity, ...]:
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


def _money(amount: Quantity) -> str:
    return amount.told_money


def _percent(share: Fraction) -> str:
    return f"{_core.fixed_text(share * 100, 1)} %"
