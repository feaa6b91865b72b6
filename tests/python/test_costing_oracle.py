"""Costings of random dishes against arithmetic with fractions and dynamic programming.

Nothing of the engine is used on the other side: refuse percentages are those that SR28 prints,
packs are found by trying every gram.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from pack_model import PACK_GRAMS, REFUSE, Pack, cheapest


@dataclass(frozen=True)
class Item:
    food: str
    grams: int
    trimmed: bool
    rule: str
    packs: tuple[Pack, ...]
    keeps: bool


@dataclass(frozen=True)
class Bill:
    till: Fraction
    used: Fraction
    rest: Fraction
    need: Fraction
    bought: int


ITEMS = st.builds(
    Item,
    st.sampled_from(sorted(REFUSE)),
    st.integers(1, 900),
    st.booleans(),
    st.sampled_from(["in proportion", "fixed"]),
    st.lists(
        st.builds(Pack, st.sampled_from(PACK_GRAMS), st.integers(1, 900)),
        min_size=1,
        max_size=4,
        unique_by=lambda pack: pack.grams,
    ).map(tuple),
    st.booleans(),
)
DISHES = st.lists(ITEMS, min_size=1, max_size=6, unique_by=lambda item: item.food)
PORTIONS = st.one_of(st.integers(1, 40), st.fractions(Fraction(1, 4), 20, max_denominator=8))


def costed(items: list[Item], serves: int, portions: Fraction) -> scalepan.Costing:
    lines = "".join(
        f'  "{item.grams} g {item.food}{", trimmed" if item.trimmed else ""} | {item.rule}",\n'
        for item in items
    )
    rows = "".join(
        f"{item.food},AP,{pack.grams} g,{pack.pence}/100,GBP,{'yes' if item.keeps else 'no'}\n"
        for item in items
        for pack in item.packs
    )
    recipe = scalepan.parse_recipe(f'name = "x"\nserves = {serves}\nlines = [\n{lines}]\n')
    prices = scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\n" + rows)
    return scalepan.cost(recipe.scale(portions=portions), prices)


def need_of(item: Item, serves: int, portions: Fraction) -> Fraction:
    size = Fraction(1) if item.rule == "fixed" else Fraction(portions) / serves
    edible = Fraction(100 - REFUSE[item.food], 100) if item.trimmed else Fraction(1)
    return item.grams * size / edible


def bill_of(item: Item, serves: int, portions: Fraction) -> Bill:
    need = need_of(item, serves, portions)
    pence, bought = cheapest(need, item.packs)
    till = Fraction(pence, 100)
    used = till * need / bought
    return Bill(till, used, till - used, need, bought)


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


@settings(max_examples=30, deadline=None)
@given(DISHES, st.integers(1, 6))
def test_curves_equal_the_arithmetic(items: list[Item], serves: int) -> None:
    curve = costed(items, serves, Fraction(1)).curve(portions=range(1, 25))
    for i, portions in enumerate(range(1, 25)):
        bills = [bill_of(item, serves, Fraction(portions)) for item in items]
        assert curve.till[i] == sum(bill.till for bill in bills)
        assert curve.used[i] == sum(bill.used for bill in bills)
        assert curve.borne[i] == curve.used[i] + curve.thrown[i]
