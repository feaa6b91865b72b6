"""Selling prices: food-cost percentage, contribution, price endings, and what cash can pay.

selling_price("1.20 EUR", food_cost="30 %", tax="7 %", ending="0.90").shelf.gross  # 4.90 EUR
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan._core import CashTotal, PriceFound, Quantity, Selling

if TYPE_CHECKING:
    from scalepan.type_names import Number


def selling_price(
    cost: Quantity | str,
    *,
    food_cost: Number,
    tax: Number = 0,
    ending: Number | None = None,
    step: Number = 1,
) -> PriceFound:
    """The price at which a portion's food cost is such a percentage of it.

    Args:
        cost: of a portion, as ``"1.20 EUR"`` or ``costing.per_portion("borne")``.
        food_cost: the share of the price without tax, ``"30 %"`` or ``"0.3"``.
        tax: on top of the price without tax, ``"7 %"``.
        ending: of the price with tax, ``"0.90"``: it is raised to the next such price.
        step: from one such price to the next: ``"100"`` with an ending of ``"80"`` for prices
            such as 1280.

    Raises:
        CostError: ``sell.share``, ``sell.tax``, ``sell.ending``.
    """
    return _core.price_for_share(_money(cost), food_cost, tax, ending, step)


def sold_at(cost: Quantity | str, price: Quantity | str, *, tax: Number = 0) -> Selling:
    """What a price with tax in it leaves: food-cost percentage, gross profit, contribution.

    Raises:
        CostError: ``sell.price``, ``sell.tax``.
    """
    return _core.selling_at(_money(cost), _money(price), tax)


def cash_total(
    bill: Quantity | str, *, rounding: str = "half up", step: Number | None = None
) -> CashTotal:
    """The total of a bill as cash pays it, to the currency's smallest coin.

    Only totals are rounded, never the lines of a bill, and only where they are paid in cash.

    >>> print(scalepan.cash_total("20.43 AUD").paid)
    20.45 AUD

    Args:
        bill: such as ``"20.43 AUD"``.
        rounding: which way a tie goes, ``half up``, ``half down``, ``half even``, ...; New Zealand
            leaves it to the shop.
        step: the smallest amount, in whole units; left out, today's of the currency.

    Raises:
        CostError: ``money.currency``.
        NumberError: ``number.rounding_mode``, ``number.rounding_step``.
    """
    return _core.cash_total(_money(bill), rounding, step)


def _money(given: Quantity | str) -> Quantity:
    return _core.quantity(given) if isinstance(given, str) else given
