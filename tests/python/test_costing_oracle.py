"""Costings of random dishes against arithmetic with fractions and dynamic programming.

Nothing of the engine is used on the other side, `costing_model`.
"""

from __future__ import annotations

from fractions import Fraction

from costing_model import DISHES, PORTIONS, Item, bill_of, costed
from hypothesis import given, settings
from hypothesis import strategies as st


@settings(max_examples=200, deadline=None)
@given(DISHES, st.integers(1, 12), PORTIONS)
def test_costings_equal_the_arithmetic(items: list[Item], serves: int, portions: Fraction) -> None:
    costing = costed(items, serves, portions)
    bills = [bill_of(item, serves, portions) for item in items]
    assert costing.till.value == sum(bill.till for bill in bills)
    assert costing.used.value == sum(bill.used for bill in bills)
    thrown = sum(bill.rest for item, bill in zip(items, bills, strict=True) if not item.keeps)
    assert costing.thrown.value == thrown
    assert costing.borne.value == costing.used.value + thrown
    for row, bill, item in zip(costing.shopping, bills, items, strict=True):
        assert row.need.to("g").value == bill.need
        assert row.leftover.to("g").value == bill.bought - bill.need
        assert row.price.value == bill.till
        prices = {f"{pack.grams} g": pack for pack in item.packs}
        assert sum(n * prices[text].grams for n, text in row.packs) == bill.bought
        assert sum(n * prices[text].pence for n, text in row.packs) == bill.till * 100


@settings(max_examples=200, deadline=None)
@given(DISHES, st.integers(1, 12), PORTIONS)
def test_what_is_paid_is_used_thrown_or_kept(
    items: list[Item], serves: int, portions: Fraction
) -> None:
    costing = costed(items, serves, portions)
    assert costing.till == costing.used + costing.thrown + costing.closing
    assert costing.borne == costing.used + costing.thrown
    assert costing.per_portion("borne").value * portions == costing.borne.value
    for row in costing.shopping:
        assert row.leftover >= 0
