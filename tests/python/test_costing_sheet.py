"""Costings on the sheet: the plan's figures exactly, overrides, and what they run.

All prices are invented.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from costing_model import DISHES, PORTIONS, Item, bill_of, costed
from dishes import dish, prices
from hypothesis import given, settings
from hypothesis import strategies as st
from sheet_agreement import COSTS, expect_agreement, figure

SHELF_ROWS = (
    "leeks,AP,1 kg,2.10,GBP,no",
    "leeks,AP,500 g,1.20,GBP,no",
    "pearl barley,AP,500 g,0.95,GBP,yes",
    "eggs,AP,6,1.50,GBP,yes",
    "eggs,AP,10,2.30,GBP,yes",
    "chickpeas,drained,400 g tin (240 g drained),0.60,GBP,no",
)
SHELVES = prices(*SHELF_ROWS)


def pot(portions: int = 40) -> scalepan.Costing:
    recipe = dish(
        "Pot",
        "500 g leeks, trimmed",
        "220 g pearl barley",
        "4 eggs | one per portion",
        "240 g chickpeas, drained",
        extra='measures = "metric"',
    )
    return scalepan.cost(recipe.scale(portions=portions), SHELVES)


# What reads the edible share of the leeks, and what reads that.
READS_EDIBLE = {
    *(f"leeks.{what}" for what in ("buy", "packs", "leftover", *COSTS)),
    *COSTS,
    *(f"sum(lines.{which})" for which in COSTS),
    *(f"per_portion.{which}" for which in COSTS),
}


@settings(max_examples=300, deadline=None)
@given(DISHES, st.integers(1, 12), PORTIONS)
def test_the_sheet_of_any_dish_has_the_figures_of_its_plan(
    items: list[Item], serves: int, portions: Fraction
) -> None:
    expect_agreement(costed(items, serves, portions), costed(items, serves, portions))


@settings(max_examples=100, deadline=None)
@given(DISHES, st.integers(1, 12), PORTIONS, PORTIONS)
def test_portions_set_on_the_sheet_give_what_a_costing_of_so_many_gives(
    items: list[Item], serves: int, portions: Fraction, others: Fraction
) -> None:
    live = costed(items, serves, portions)
    live.sheet.set("portions", others)
    bills = [bill_of(item, serves, others) for item in items]
    assert live.till.value == sum(bill.till for bill in bills)
    assert live.used.value == sum(bill.used for bill in bills)


def test_an_override_runs_what_depends_on_it_and_no_more() -> None:
    costing = pot()
    costing.override("leeks.edible", "0.50", why="own trim, 3 cases")
    # 5 kg at a half are 10 kg: ten packs of one, where 11 4/11 kg took eleven and a half.
    ran = costing.sheet.ran
    assert set(ran) == READS_EDIBLE
    assert len(ran) == len(READS_EDIBLE)
    assert figure(costing, "leeks.buy") == scalepan.quantity("10 kg AP")
    assert costing.shopping[0].packs == [(10, "1 kg")]
    assert costing.till.value == Fraction("44.25") - Fraction("24.30") + 21
    assert costing.thrown.value == 0


def test_an_override_that_changes_no_pack_stops_there() -> None:
    costing = pot()
    # Eleven packs and a half do for 0.435 to 0.4545 of 5 kg; at 0.45 the till stays as it is.
    costing.override("leeks.edible", "0.45", why="own trim, 1 case")
    assert set(costing.sheet.ran) == READS_EDIBLE - {
        "till",
        "sum(lines.till)",
        "per_portion.till",
        "sum(lines.borne)",
        "borne",
        "per_portion.borne",
    }
    assert costing.till.value == Fraction("44.25")


def test_release_brings_back_the_figures_of_the_plan() -> None:
    costing = pot()
    costing.override("leeks.edible", "0.50", why="own trim, 3 cases")
    costing.override("eggs.buy", "41 piece AP", why="one broke")
    costing.release("eggs.buy")
    costing.release("leeks.edible")
    expect_agreement(pot(), costing)
    assert costing.most_portions("20 GBP").portions == pot().most_portions("20 GBP").portions


def test_an_override_is_told() -> None:
    costing = pot()
    costing.override("leeks.edible", "0.50", why="own trim", who="Ines", when="2026-11-20")
    assert costing.to_check[0] == (
        "leeks.edible is overridden with 0.5 EP/AP: own trim, Ines, 2026-11-20"
    )
    assert costing.why("leeks.buy").endswith(
        "└─ leeks.edible = 0.5 EP/AP   [overridden: own trim, Ines, 2026-11-20]\n"
        "   └─ its own = edible_share(leeks.food)   [not used until the override is released]\n"
    )


@pytest.mark.parametrize(
    ("name", "value", "why", "code", "message"),
    [
        (
            "leeks.edibel",
            "0.5",
            "own trim",
            "sheet.unknown",
            'no cell is called "leeks.edibel" (nearest: leeks.edible)',
        ),
        (
            "leeks.edible",
            "0.5 kg",
            "own trim",
            "sheet.dimension",
            "leeks.edible is EP/AP, but the override is weight (give the same kind, or redeclare "
            "the cell)",
        ),
        (
            "leeks.edible",
            "0.5",
            " ",
            "sheet.reason",
            "the override of leeks.edible gives no reason (say what was measured, and how)",
        ),
    ],
)
def test_overrides_that_are_refused(
    name: str, value: str, why: str, code: str, message: str
) -> None:
    costing = pot()
    with pytest.raises(scalepan.SheetError) as caught:
        costing.override(name, value, why=why)
    assert (caught.value.code, str(caught.value)) == (code, message)
    assert costing.till.value == Fraction("44.25")


def test_what_goes_by_the_plan_alone_is_refused_while_figures_are_changed() -> None:
    costing = pot()
    costing.override("leeks.edible", "0.50", why="own trim, 3 cases")
    with pytest.raises(scalepan.CostError) as caught:
        costing.drivers()
    assert (caught.value.code, str(caught.value)) == (
        "cost.overridden",
        "drivers go by the recipe and the prices, but figures of this costing are changed: "
        "leeks.edible is overridden with 0.5 EP/AP: own trim, 3 cases (release them, or ask "
        "another costing)",
    )


def test_a_curve_heeds_an_override() -> None:
    costing = pot(4)
    before = costing.curve(range(1, 41))
    costing.override("leeks.edible", "0.50", why="own trim, 3 cases")
    after = costing.curve(range(1, 41))
    assert after.kernel == "the sheet, point by point, since figures are changed"
    assert after.till[39] == Fraction("44.25") - Fraction("24.30") + 21
    for place, portions in enumerate(range(1, 41)):
        one = pot(portions)
        one.override("leeks.edible", "0.50", why="own trim, 3 cases")
        assert after.till[place] == one.till.value
        assert after.borne[place] == one.borne.value
    leeks = [point for point in after.breakpoints if point.item == "leeks"]
    # 125 g EP a portion are 250 g: a new half kilogram for every second portion.
    assert [point.portions for point in leeks] == list(range(3, 41, 2))
    costing.release("leeks.edible")
    assert costing.curve(range(1, 41)).borne == before.borne


def test_an_assumed_share_can_be_overridden() -> None:
    costing = scalepan.cost(
        dish("x", "400 g samphire, trimmed"), prices("samphire,AP,100 g,1.00,GBP,no")
    )
    assert costing.till.value == 4
    costing.override("samphire.edible", "0.8", why="own trim")
    assert costing.till.value == 5


def test_offers_of_other_prices_run_what_is_bought_of_that_food_alone() -> None:
    costing = pot()
    recipe = costing.recipe
    dearer = scalepan.cost(recipe, prices("leeks,AP,5 kg,9.00,GBP,no", *SHELF_ROWS[2:]))
    same = scalepan.cost(recipe, prices(*SHELF_ROWS))
    offers = costing.sheet.value("leeks.offers")
    assert offers == same.sheet.value("leeks.offers")
    assert str(offers) == "1 kg, 500 g"
    costing.sheet.set("leeks.offers", same.sheet.value("leeks.offers"))
    assert costing.sheet.ran == []
    costing.sheet.set("leeks.offers", dearer.sheet.value("leeks.offers"))
    assert {cell for cell in costing.sheet.ran if cell.startswith("leeks.")} == {
        f"leeks.{what}" for what in ("packs", "leftover", *COSTS)
    }
    assert not any(cell.startswith("eggs.") for cell in costing.sheet.ran)
    # 11 4/11 kg take three packs of 5 kg.
    assert costing.till.value == Fraction("44.25") - Fraction("24.30") + 27
    assert costing.till == dearer.till
    assert costing.shopping[0].packs == [(3, "5 kg")]


def test_an_unpriced_line_leaves_its_error_in_its_cells() -> None:
    costing = scalepan.cost(dish("x", "4 eggs", "3 samphires"), prices("eggs,AP,6,1.50,GBP,yes"))
    sheet = costing.sheet
    with pytest.raises(scalepan.CostError) as caught:
        sheet.value("samphires.till")
    assert (caught.value.code, str(caught.value)) == (
        "cost.unpriced",
        "samphires.packs:1: samphires is not priced: no price row is for samphires",
    )
    assert sheet.told("till") == "at least 1.5 GBP"
    assert costing.why("till").startswith("till = at least 1.50 GBP, 1 line unpriced\n")
    assert costing.till.value == Fraction(3, 2)
    assert costing.unpriced == ["samphires"]


# Lines, some with an id of their own before a colon, and rows of a price book.
CASES = {
    "terms": (
        ["400 g lentils", "2 leeks"],
        ["lentils,AP,400 g tin,1.00,GBP,yes", "leeks,AP,1,0.40,GBP,no", "leeks,AP,1 kg,3,GBP,no"],
    ),
    "kinds of packs": (
        ["600 g carrots, peeled", "whole: 2 carrots"],
        ["carrots,AP,1 kg,1.00,GBP,no", "carrots,AP,1,0.12,GBP,no", "carrots,EP,500 g,2,GBP,yes"],
    ),
    "volumes and words": (
        ["pinch: 1 pinch salt", "2 cups plain flour", "3 cloves garlic", "1 lemon", "1/2 tsp salt"],
        ["salt,AP,1 kg,0.60,GBP,yes", "plain flour,AP,1.5 kg,0.9,GBP,yes",
         "garlic,AP,1,0.35,GBP,no", "garlic,AP,100 g,0.9,GBP,no", "lemons,AP,4,1.1,GBP,no"],
    ),
    "rules": (
        ["2 onions | whole", "10 g dill | tapered as herbs", "2 eggs | one per 2 portions",
         "1 leek | fixed", "500 mL oil | 15 % taken up", "40 g butter | 10 g per portion"],
        ["onions,EP,1 kg,1,GBP,no", "dill,AP,20 g,1,GBP,no", "eggs,AP,6,1.5,GBP,yes",
         "leeks,AP,1,0.4,GBP,no", "oil,AP,1 L,4,GBP,yes", "butter,AP,250 g,2,GBP,no"],
    ),
    "pooled lines": (
        ["600 g leeks", "tops: 300 g leeks, trimmed", "one: 1 leek"],
        ["leeks,AP,1 kg,2,GBP,no", "leeks,AP,300 g,0.8,GBP,no"],
    ),
    "words that mean something in formulas": (
        ["200 g crème fraîche", "100 g 00 flour", "sum: 2 eggs", "lines: 1 leek", "cup: 1 onion"],
        ["crème fraîche,AP,200 g,1,GBP,no", "eggs,AP,6,1.5,GBP,yes", "leeks,AP,1,0.4,GBP,no"],
    ),
}  # fmt: skip


def recipe_of(lines: list[str]) -> scalepan.Recipe:
    """Those with a colon have an id of their own before it."""
    with_ids = [line.rpartition(": ") for line in lines]
    listed = ", ".join(
        f'{{ id = "{own}", line = "{text}" }}' if own else f'"{text}"' for own, _, text in with_ids
    )
    head = 'name = "x"\nserves = 4\nmeasures = "us"\n'
    return scalepan.parse_recipe(f"{head}lines = [{listed}]\n")


@pytest.mark.parametrize("case", CASES)
@pytest.mark.parametrize("portions", [1, 3, 4, 10])
def test_the_sheet_agrees_with_the_plan(case: str, portions: int) -> None:
    lines, rows = CASES[case]
    recipe = recipe_of(lines).scale(portions=portions)
    expect_agreement(scalepan.cost(recipe, prices(*rows)), scalepan.cost(recipe, prices(*rows)))
