"""Selling prices, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import quantity_document
from scalepan.command_line.report import heading
from scalepan.command_line.tables import table, wrapped

if TYPE_CHECKING:
    from scalepan._core import PriceFound, Quantity, Selling

_MEANINGS = (
    ("food cost", "of a portion, as it is borne"),
    ("net", "the price without tax"),
    ("tax", "on top of it"),
    ("gross", "the price with tax"),
    ("contribution", "net - food cost"),
)


def price_section(title: str, found: PriceFound, width: int) -> list[str]:
    """The exact price and the one of the ending, side by side."""
    exact, shelf = found.exact, found.shelf
    rows = [
        (name, _money(one), _money(other), meaning)
        for (name, meaning), one, other in zip(
            _MEANINGS, _amounts(exact), _amounts(shelf), strict=True
        )
    ]
    rows.append(
        (
            "food cost %",
            _percent(exact),
            _percent(shelf),
            "food cost / net; gross profit is the rest",
        )
    )
    header = ("a portion", "exact", "on the card", "meaning")
    lines = [heading(title), *table(header, rows, right=(1, 2), width=width)]
    return lines + wrapped("Shown rounded half up; --json has exact figures.", width, "  ")


def price_document(found: PriceFound) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "exact": _selling_document(found.exact),
        "shelf": _selling_document(found.shelf),
        "raised": quantity_document(found.raised),
    }


def _amounts(selling: Selling) -> tuple[Quantity, ...]:
    return (selling.food_cost, selling.net, selling.tax, selling.gross, selling.contribution)


def _selling_document(selling: Selling) -> dict[str, Any]:
    return {
        "food_cost": quantity_document(selling.food_cost),
        "net": quantity_document(selling.net),
        "tax": quantity_document(selling.tax),
        "gross": quantity_document(selling.gross),
        "contribution": quantity_document(selling.contribution),
        "food_cost_share": str(selling.food_cost_share),
        "gross_profit_share": str(selling.gross_profit_share),
    }


def _money(amount: Quantity) -> str:
    return amount.told_money


def _percent(selling: Selling) -> str:
    return f"{_core.fixed_text(selling.food_cost_share * 100, 1)} %"
