"""Dishes of foods bought in packs, in plain fractions and dynamic programming.

It is the other side of the property tests of costings and curves: refuse percentages are those
that SR28 prints, packs are found by trying every gram. Only `costed` calls the engine.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import scalepan
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
