"""Targets on the sheet of a costing, where whole packs go in steps.

What is found is held against plain sums at single values: below, at and above each need at which
the packs may change. All prices are invented.
"""

from __future__ import annotations

import operator
from collections.abc import Callable, Iterable
from fractions import Fraction

import pytest
import scalepan
from costing_model import DISHES, Bill, Item, bill_of, costed
from dishes import dish
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from pack_model import GRID, cheapest
from scalepan.sheet_studies import Studies

NEAR = Fraction(1, 10**9)


def meetings(
    sheet: Studies, name: str, cell: str, target: str, low: str, high: str, aim: str = "equal"
) -> list[tuple[Fraction, Fraction, bool, bool]]:
    found = sheet.values_for(name, cell, between=(low, high), **{aim: target})
    return [(one.low.value, one.high.value, one.with_low, one.with_high) for one in found]


AIMS = {"equal": operator.eq, "at_most": operator.le, "at_least": operator.ge}


def meets(found: Iterable[tuple[Fraction, Fraction, bool, bool]], at: Fraction) -> bool:
    return any(
        low < at < high or (at == low and low_meets) or (at == high and high_meets)
        for low, high, low_meets, high_meets in found
    )


def points(
    found: list[tuple[Fraction, Fraction, bool, bool]],
    turns: Iterable[Fraction],
    low: Fraction,
    high: Fraction,
) -> list[Fraction]:
    """Below, at and above each, and in the middle of what was found."""
    ends = [end for meeting in found for end in meeting[:2]]
    middles = [(meeting[0] + meeting[1]) / 2 for meeting in found]
    near = [at + beside for at in (*ends, *turns) for beside in (-NEAR, 0, NEAR)]
    return [at for at in (*near, *middles, low, high) if low <= at <= high]


def sampled(steps: range, most: int = 24) -> range:
    return steps[:: max(1, len(steps) // most)]


def cost_in(bill: Bill, which: str) -> Fraction:
    return {"till": bill.till, "used": bill.used}[which]


@settings(max_examples=120, deadline=None)
@given(
    DISHES,
    st.integers(1, 12),
    st.integers(1, 8),
    st.fractions(Fraction(1, 4), 1, max_denominator=60),
    st.sampled_from(["till", "used"]),
    st.sampled_from(sorted(AIMS)),
)
def test_a_cost_is_met_by_the_edible_shares_that_a_model_finds(
    items: list[Item], serves: int, portions: int, wanted: Fraction, which: str, aim: str
) -> None:
    trimmed = next((item for item in items if item.trimmed), None)
    assume(trimmed is not None)
    assert trimmed is not None
    others = [bill_of(item, serves, Fraction(portions)) for item in items if item is not trimmed]
    rest = sum((cost_in(bill, which) for bill in others), Fraction(0))
    edible = trimmed.grams * (
        Fraction(1) if trimmed.rule == "fixed" else Fraction(portions, serves)
    )

    def cost(share: Fraction) -> Fraction:
        need = edible / share
        pence, bought = cheapest(need, trimmed.packs)
        till = Fraction(pence, 100)
        return rest + (till if which == "till" else till * need / bought)

    costing = costed(items, serves, Fraction(portions))
    name = f"{trimmed.food}.edible"
    costing.override(name, "0.5", why="own trim")
    target = cost(wanted)
    found = meetings(costing.sheet, name, which, f"{target} GBP", "1/4", "1", aim)
    turns = [edible / (GRID * step) for step in sampled(range(1, int(edible * 4 / GRID) + 2))]
    assert meets(found, wanted)
    for share in points(found, turns, Fraction(1, 4), Fraction(1)):
        assert meets(found, share) == AIMS[aim](cost(share), target), share


@settings(max_examples=120, deadline=None)
@given(DISHES, st.integers(1, 12), st.fractions(Fraction(1, 2), 12, max_denominator=6))
def test_a_till_is_met_by_the_portions_that_a_model_finds(
    items: list[Item], serves: int, wanted: Fraction
) -> None:
    def till(portions: Fraction) -> Fraction:
        return sum((bill_of(item, serves, portions).till for item in items), Fraction(0))

    target = till(wanted)
    sheet = costed(items, serves, Fraction(4)).sheet
    found = meetings(sheet, "portions", "till", f"{target} GBP", "1/2", "12")
    each = bill_of(items[0], serves, Fraction(1)).need
    steps = sampled(range(1, int(each * 12 / GRID) + 2))
    turns = [GRID * step / each for step in steps]
    assert meets(found, wanted)
    for portions in points(found, turns, Fraction(1, 2), Fraction(12)):
        assert meets(found, portions) == (till(portions) == target), portions


HEAD = "item,sold_as,pack,price,currency,keeps,offer,least,limit\n"
STOCK = "item,stage,amount,value,currency\nleeks,AP,700 g,1.30,GBP\nleeks,AP,1.1 kg,1.50,GBP\n"


ASKED = ("content_of", "from_stock", "stock_used", "used_share", "deposit_of", "keeps")


def leeks(*rows: str, stock: str = "") -> scalepan.Costing:
    """Twenty portions of a quarter of 500 g, with the edible share as an input."""
    book = scalepan.parse_prices(HEAD + "\n".join(rows), file="prices.csv")
    held = scalepan.parse_stock(stock, file="stock.csv") if stock else None
    recipe = dish("Leeks", "500 g leeks, trimmed").scale(portions=20)
    costing = scalepan.cost(recipe, book, stock=held)
    costing.override("leeks.edible", "0.5", why="own trim, 3 cases")
    for function in ASKED:
        costing.sheet.define(f"leeks.{function}", f"{function}(leeks.packs)")
    return costing


def one_by_one(
    sheet: scalepan.Sheet, name: str, cell: str
) -> Callable[[Fraction], Fraction | None]:
    """The cell as the sheet works it out for one value; none where it has no figure."""
    unit = INPUTS[name][2]
    return lambda at: sheet.sweep(name, [f"{at} {unit}"], cell)[cell].fractions[0]


PLAIN = ("leeks,AP,1 kg,2.10,GBP,no,,,", "leeks,AP,500 g,1.20,GBP,no,,,")
SHELVES = {
    "plain": leeks(*PLAIN),
    "on hand": leeks(*PLAIN, stock=STOCK),
    "terms": leeks("leeks,AP,1 kg,2.10,GBP,no,3 for 5.00,,", "leeks,AP,750 g,1.50,GBP,3 days,,,"),
    "least": leeks("leeks,AP,1 kg,2.10,GBP,no,,,", "leeks,AP,2 kg,3.00,GBP,no,,3,"),
    "limits": leeks("leeks,AP,1 kg,2.10,GBP,no,,,6", "leeks,AP,500 g,1.20,GBP,yes,,,5"),
    "kinds": leeks(*PLAIN, "leeks,AP,1,0.30,GBP,no,,,", "leeks,EP,600 g,2.70,GBP,no,,,"),
    "kinds on hand": leeks(*PLAIN, "leeks,AP,1,0.30,GBP,no,,,", stock=STOCK),
}


INPUTS = {
    "leeks.edible": (Fraction(1, 4), Fraction(1), "EP/AP"),
    "leeks.written": (Fraction(20), Fraction(800), "g EP"),
    "portions": (Fraction(1, 2), Fraction(60), ""),
}
CELLS = ["till", "used", "thrown", "borne", "leeks.leftover", "per_portion.till"]


@pytest.mark.parametrize("name", INPUTS)
@pytest.mark.parametrize("shelf", SHELVES)
def test_what_is_met_is_what_the_sheet_has_at_single_values(shelf: str, name: str) -> None:
    sheet = SHELVES[shelf].sheet
    low, high, unit = INPUTS[name]
    met = 0
    for cell in (*CELLS, *(f"leeks.{function}" for function in ASKED[:-1])):
        figure = one_by_one(sheet, name, cell)
        shown = sheet.sweep(name, [f"{low} {unit}"], cell)[cell].unit
        for place, aim in (
            (1, "equal"),
            (3, "at_most"),
            (4, "equal"),
            (5, "at_least"),
            (6, "equal"),
        ):
            target = figure(low + (high - low) * Fraction(place, 7))
            if target is None:
                continue
            wanted = f"{target} {shown}"
            found = meetings(sheet, name, cell, wanted, f"{low} {unit}", f"{high} {unit}", aim)
            even = [low + (high - low) * Fraction(place, 30) for place in range(31)]
            for at in points(found[:8], even, low, high):
                now = figure(at)
                reached = now is not None and AIMS[aim](now, target)
                assert meets(found, at) == reached, (cell, at, target)
                met += meets(found, at)
    assert met > 50


BAKE = """\
name = "Fennel bake"
serves = 4
lines = ["1 kg fennel, trimmed", "3/5 of the white sauce", "40 g butter, melted"]
[bases.white_sauce]
name = "White sauce"
serves = 8
makes = "1 kg"
lines = ["1 L whole milk", "80 g butter", "80 g plain flour"]
"""
RULES = """\
name = "Tray"
serves = 4
load = "6 portions"
lines = [
  "600 g leeks, trimmed", "10 g dill | tapered (2, 1.5), (5, 2.5), then 1/3",
  "2 eggs | one per 2 portions", "250 mL whole milk | 250 mL per load", "3 onions | whole",
]
"""
KITCHEN_PRICES = scalepan.parse_prices(
    "item,sold_as,pack,price,currency,keeps\n"
    "whole milk,AP,1 L,1.10,GBP,no\n"
    "butter,AP,250 g,2.00,GBP,no\n"
    "plain flour,AP,1 kg,0.90,GBP,yes\n"
    "fennel,AP,1 kg,3.00,GBP,no\n"
    "leeks,AP,1 kg,2.10,GBP,no\n"
    "dill,AP,20 g,1.15,GBP,no\n"
    "eggs,AP,6,1.50,GBP,yes\n"
    "onions,AP,1 kg,0.95,GBP,yes\n"
)


@pytest.mark.parametrize("text", [BAKE, RULES], ids=["base", "rules"])
@pytest.mark.parametrize("cell", ["till", "used", "borne"])
def test_portions_of_a_recipe_with_rules_are_those_that_costings_of_so_many_find(
    text: str, cell: str
) -> None:
    recipe = scalepan.parse_recipe(text)
    sheet = scalepan.cost(recipe, KITCHEN_PRICES).sheet
    assert any("recipe" in sheet.formula(name) for name in sheet.cells())

    def figure(portions: Fraction) -> Fraction:
        costing = scalepan.cost(recipe.scale(portions=portions), KITCHEN_PRICES)
        return getattr(costing, cell).value

    met = 0
    for wanted in (Fraction(3, 2), Fraction(4), Fraction(13, 2), Fraction(17)):
        target = figure(wanted)
        found = meetings(sheet, "portions", cell, f"{target} GBP", "1/2", "30")
        assert meets(found, wanted)
        even = [Fraction(place, 2) for place in range(1, 61)]
        for at in points(found[:8], even, Fraction(1, 2), Fraction(30)):
            assert meets(found, at) == (figure(at) == target), (at, target)
            met += meets(found, at)
    assert met >= 4


def test_portions_beyond_the_end_of_a_taper_meet_nothing() -> None:
    recipe = dish("Dill", "10 g dill | tapered (2, 1.5), (5, 2.5)", "600 g leeks, trimmed")
    sheet = scalepan.cost(recipe, KITCHEN_PRICES).sheet
    # Above 17.6 portions 600 g at 0.44 for four take more than 6 kg, and two packs hold the 25 g of
    # dill at 20. Seven kilograms would do for 20.53 portions, but the taper ends at five times.
    found = meetings(sheet, "portions", "till", "17.00 GBP", "1", "100")
    assert found == [(Fraction("17.6"), Fraction(20), False, True)]


def test_a_base_that_grows_by_rules_of_its_own_is_refused_and_whole_sizes_are_asked_for() -> None:
    recipe = scalepan.parse_recipe(BAKE.replace('"80 g butter"', '"80 g butter | fixed"'))
    sheet = scalepan.cost(recipe, KITCHEN_PRICES).sheet
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.input_for("portions", "till", "20 GBP", between=(1, 40))
    assert (caught.value.code, str(caught.value)) == (
        "sheet.no_form",
        "how till follows from portions cannot be turned round: a base of Fennel bake does not "
        "grow in proportion (sweep portions over the values that come into question)",
    )
    most = sheet.size_for("till", at_most="20 GBP")
    tills = {
        portions: scalepan.cost(recipe.scale(portions=portions), KITCHEN_PRICES).till.value
        for portions in range(1, 60)
    }
    assert most.value == max(portions for portions, till in tills.items() if till <= 20)


def test_a_size_of_its_own_is_met_at_its_own_portions_alone() -> None:
    # One spare: eleven are made where ten are asked for, and no more of other sizes.
    recipe = dish("Leeks", "600 g leeks, trimmed").scale(portions=10, spare=1)
    sheet = scalepan.cost(recipe, KITCHEN_PRICES).sheet
    assert sheet.formula("factor") == "size_factor(recipe, portions)"
    assert sheet.input_for("portions", "factor", "11/4", between=(1, 10)).value == 10
    found = meetings(sheet, "portions", "factor", "11/4", "1", "20")
    assert found == [(10, 10, True, True), (11, 11, True, True)]
    assert meetings(sheet, "portions", "factor", "10/4", "1", "20") == []
