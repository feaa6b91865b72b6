"""Weights against measures on the cards of the Armed Forces Recipe Service.

data/afrs_pairs.csv (TM 10-412 / NAVSUP P-7 and its kin; see data/README.md). A plain row of 4 oz
and more must convert within half a step of its print and the spread of our facts; where it does
not, data/afrs_other_measures.csv names the reason, which is checked as well. The 2003 measures
come from an older release of our main source, so agreement is no independent evidence of a
density; it does show that names, states, units and the arithmetic fit.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest
import scalepan
from afrs import (
    CUPS,
    DATA,
    FOODS,
    ROWS,
    Printed,
    Range,
    doubt,
    parts,
    pounds,
    printed_cups,
    printed_pounds,
)
from food_tables import GRAMS, Record, rows_of

OTHERS = {
    (row["ingredient"], row["card"]): row for row in rows_of(DATA / "afrs_other_measures.csv")
}


def other_of(row: Printed) -> Record | None:
    return OTHERS.get((row.ingredient, row.card)) or OTHERS.get((row.ingredient, ""))


def is_by_volume(row: Printed) -> bool:
    return bool(row.measure_text) and all(p.unit in CUPS for p in parts(row.measure_text))


def group_of(row: Printed) -> str:
    """Where a row belongs in the count."""
    if not row.measure_text:
        return "no measure"
    if doubt(row):
        return "figures marked suspect"
    if not is_by_volume(row):
        return "measured in pieces"
    if pounds(row.weight_text) < Fraction(1, 4):
        return "below 4 oz"
    if row.ingredient not in FOODS:
        return "not carried"
    return "another measure, named" if other_of(row) else "converts"


def cups_of(row: Printed, food: str, state: str) -> Range:
    """Our measure of the printed weight, from its least to its most."""
    weight = printed_pounds(row, row.weight_text)
    least, most = (
        scalepan.convert(scalepan.quantity(w, "lb"), "cup_us", food=food, state=state or None)
        for w in weight
    )
    return Range(least.low.value, most.high.value)


def fits(row: Printed, food: str, state: str) -> bool:
    return cups_of(row, food, state).meets(printed_cups(row))


def named(group: str) -> list[Printed]:
    return [row for row in ROWS if group_of(row) == group]


def id_of(row: Printed) -> str:
    return f"{row.card}-{row.ingredient}-{row.weight_text}"


@pytest.mark.parametrize("row", named("converts"), ids=id_of)
def test_weight_converts_to_the_printed_measure(row: Printed) -> None:
    ours = FOODS[row.ingredient]
    assert fits(row, ours["food"], ours["state"])


@pytest.mark.parametrize("row", named("another measure, named"), ids=id_of)
def test_a_named_row_is_what_its_reason_says(row: Printed) -> None:
    ours, other = FOODS[row.ingredient], other_of(row)
    assert other is not None
    assert not fits(row, ours["food"], ours["state"]), "converts, so its reason is stale"
    if other["food"]:
        assert fits(row, other["food"], other["state"])
    weight, measure = printed_pounds(row, row.weight_text), printed_cups(row)
    grams = Range(
        weight.low * GRAMS["lb"] / measure.high - Fraction(1, 2),
        weight.high * GRAMS["lb"] / measure.low + Fraction(1, 2),
    )
    printed = Fraction(other["grams_a_cup"])
    assert grams.low <= printed <= grams.high
    assert other["reason"]


def test_every_row_of_the_tables_is_used() -> None:
    rows = {(row.ingredient, row.card) for row in ROWS}
    ingredients = {ingredient for ingredient, _ in rows}
    assert set(FOODS) <= ingredients
    for ingredient, card in OTHERS:
        assert (ingredient, card) in rows if card else ingredient in ingredients


NOT_CARRIED = """\
APPLES,CANNED,DRAINED,CHOPPED
Bread cubes, Italian bread
CHERRIES,MARASCHINO,CHOPPED
CHERRIES,MARASCHINO,SLICED
CHICKEN,GIBLETS,FROZEN
CORN BREAD MIX
DESSERT POWDER,GELATIN,CHERRY
DESSERT POWDER,GELATIN,LEMON
DESSERT POWDER,GELATIN,ORANGE
DESSERT POWDER,GELATIN,STRAWBERRY
DESSERT POWDER,PUDDING,INSTANT,CHOCOLATE
ICE CREAM TOPPING,FUDGE
ICE CREAM,VANILLA
ICE CUBES
NUTS,UNSALTED,CHOPPED,COARSELY
PASTA,ORZO
PIE FILLING,APPLE,PREPARED
PIE FILLING,CHERRY,PREPARED
TOMATOES,CANNED,CRUSHED,DRAINED
TOMATOES,CANNED,DICED,DRAINED
WHIPPED TOPPING MIX,NONDAIRY,DRY
"""


def test_foods_that_are_not_carried_are_the_listed_ones() -> None:
    """SR28 has no such food, or prints no plain cup of it."""
    assert sorted({row.ingredient for row in named("not carried")}) == NOT_CARRIED.splitlines()


def test_count_of_the_groups(record_counts: dict[str, Counter[str]]) -> None:
    counts = Counter(map(group_of, ROWS))
    record_counts["Armed Forces cards, weight to measure"] = counts
    assert sum(counts.values()) == len(ROWS) == 713
    assert counts == {
        "converts": 351,
        "another measure, named": 58,
        "not carried": 26,
        "measured in pieces": 7,
        "below 4 oz": 68,
        "figures marked suspect": 138,
        "no measure": 65,
    }
