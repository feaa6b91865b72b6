"""Terms of offers against an explicit integer programme, solved by HiGHS without a gap.

Each row has its own variables: packs at their price, packs sold together, packs from a number on
with a yes or no for whether that price is had, all packs of the row within its limit.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field

import highspy
import pytest
import scalepan

SIZES = [50, 75, 100, 125, 200, 240, 250, 400, 454, 500, 750, 1000]
MOST = 10_000  # packs of a row, far above any need below


@dataclass(frozen=True)
class Row:
    """Grams, pence, and the terms: (packs, pence of all), (packs, pence of one)."""

    grams: int
    pence: int
    together: list[tuple[int, int]] = field(default_factory=list)
    on: list[tuple[int, int]] = field(default_factory=list)
    least: int = 1
    limit: int | None = None


def money(pence: int) -> str:
    return f"{pence // 100}.{pence % 100:02d}"


def written(rows: list[Row]) -> str:
    lines = ["item,sold_as,pack,price,currency,keeps,shop,offer,least,limit"]
    for place, row in enumerate(rows):
        terms = [f"{packs} for {money(pence)}" for packs, pence in row.together]
        terms += [f"from {packs} at {money(pence)}" for packs, pence in row.on]
        least = row.least if row.least > 1 else ""
        lines.append(
            f"lentils,AP,{row.grams} g,{money(row.pence)},EUR,yes,stall {place},"
            f"{'; '.join(terms)},{least},{row.limit or ''}"
        )
    return "\n".join(lines) + "\n"


def random_row(draw: random.Random) -> Row:
    grams, pence = draw.choice(SIZES), draw.randint(20, 900)
    kind = draw.choice(["plain", "together", "from", "least", "limit", "together in a limit"])
    if kind == "least":
        return Row(grams, pence, least=draw.randint(2, 5))
    limit = draw.randint(1, 8) if "limit" in kind else None
    together = []
    if "together" in kind:
        packs = draw.randint(2, 4)
        together = [(packs, draw.randint(pence, packs * pence))]
    on = []
    if kind == "from" or (kind == "limit" and draw.random() < 0.5):
        on = [(draw.randint(2, 7), draw.randint(pence // 2, pence))]
    return Row(grams, pence, together, on, limit=limit)


def by_highs(need: int, rows: list[Row]) -> int | None:
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 0.0)
    bought = 0
    for row in rows:
        single = solver.addIntegral(lb=0, ub=MOST, obj=row.pence)
        packs = single
        if row.least > 1:
            some = solver.addBinary()
            solver.addConstr(single >= row.least * some)
            solver.addConstr(single <= MOST * some)
        for number, pence in row.together:
            packs = packs + number * solver.addIntegral(lb=0, ub=MOST, obj=pence)
        for number, pence in row.on:
            lower = solver.addIntegral(lb=0, ub=MOST, obj=pence)
            had = solver.addBinary()
            solver.addConstr(lower >= number * had)
            solver.addConstr(lower <= MOST * had)
            packs = packs + lower
        if row.limit is not None:
            solver.addConstr(packs <= row.limit)
        bought = bought + row.grams * packs
    solver.addConstr(bought >= need)
    solver.minimize()
    if solver.getModelStatus() == highspy.HighsModelStatus.kInfeasible:
        return None
    return round(float(solver.getObjectiveValue()))


def till_of(need: int, rows: list[Row]) -> int | None:
    prices = scalepan.parse_prices(written(rows))
    recipe = scalepan.parse_recipe(f'name = "Supper"\nserves = 1\nlines = ["{need} g lentils"]\n')
    try:
        till = scalepan.cost(recipe, prices).till.value * 100
    except scalepan.CostError as error:
        if error.code != "cost.limit":
            raise
        return None
    assert till.denominator == 1
    return int(till)


@pytest.mark.parametrize("part", range(8))
def test_covers_on_terms_cost_what_the_solver_finds(part: int) -> None:
    draw = random.Random(part)
    limited = 0
    for _ in range(50):
        rows = [random_row(draw) for _ in range(draw.randint(1, 4))]
        need = draw.randint(1, 4000)
        expected = by_highs(need, rows)
        limited += expected is None
        assert till_of(need, rows) == expected, (need, rows)
    assert limited < 25


def test_a_limit_of_two_on_the_smaller_pack() -> None:
    """Without the limit four packs of 200 g at 0.30 and one of 100 g at 0.15 are 1.35."""
    free = [Row(200, 30), Row(100, 15), Row(500, 85)]
    assert till_of(900, free) == 135
    held = [Row(200, 30, limit=2), Row(100, 15, limit=2), Row(500, 85)]
    # Of 900 g: 500 g for 0.85 and 2 x 200 g for 0.60.
    assert till_of(900, held) == 145
