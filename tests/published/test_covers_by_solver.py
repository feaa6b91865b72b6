"""Cheapest covers against integer solvers (HiGHS without a gap, GLPK) and dynamic programming."""

from __future__ import annotations

import random
from fractions import Fraction

import highspy
import pytest
import scalepan
import swiglpk as glpk

Packs = list[tuple[int, int]]  # grams, pence
Instance = tuple[int, Packs]

SIZES = [50, 75, 100, 125, 200, 240, 250, 300, 400, 454, 500, 750, 900, 1000, 1500, 2500]


def shop_like(count: int) -> list[Instance]:
    draw = random.Random(20261124)
    return [
        (
            draw.randint(1, 9000),
            [(draw.choice(SIZES), draw.randint(20, 999)) for _ in range(draw.randint(1, 6))],
        )
        for _ in range(count)
    ]


def adversarial(count: int) -> list[Instance]:
    """Odd sizes at nearly one unit price, so that few covers can be left out."""
    draw = random.Random(20261125)
    found = []
    for _ in range(count):
        sizes = [2 * draw.randint(50, 500) + 1 for _ in range(draw.randint(4, 7))]
        packs = [(grams, 3 * grams + draw.randint(-3, 3)) for grams in sizes]
        found.append((draw.randint(1, 10 ** draw.randint(2, 6)), packs))
    return found


PARTS = range(10)
KINDS = {"shop-like": shop_like(1000), "adversarial": adversarial(1000)}
INSTANCES = KINDS["shop-like"]


def cover_of(need: int, packs: Packs) -> scalepan.Cover:
    offers = [(f"{grams} g", f"{pence // 100}.{pence % 100:02d}") for grams, pence in packs]
    return scalepan.cover(f"{need} g", offers)


def by_highs(need: int, packs: Packs) -> int:
    solver = highspy.Highs()
    solver.setOptionValue("output_flag", False)
    solver.setOptionValue("threads", 1)
    solver.setOptionValue("mip_rel_gap", 0.0)
    solver.setOptionValue("mip_abs_gap", 0.0)
    counts = [solver.addIntegral(lb=0, obj=pence) for _, pence in packs]
    solver.addConstr(sum(grams * n for (grams, _), n in zip(packs, counts, strict=True)) >= need)
    solver.minimize()
    return round(float(solver.getObjectiveValue()))


def by_glpk(need: int, packs: Packs) -> int:
    problem = glpk.glp_create_prob()
    glpk.glp_set_obj_dir(problem, glpk.GLP_MIN)
    glpk.glp_add_rows(problem, 1)
    glpk.glp_set_row_bnds(problem, 1, glpk.GLP_LO, need, 0)
    glpk.glp_add_cols(problem, len(packs))
    places, sizes = glpk.intArray(len(packs) + 1), glpk.doubleArray(len(packs) + 1)
    for column, (grams, pence) in enumerate(packs, 1):
        glpk.glp_set_col_kind(problem, column, glpk.GLP_IV)
        glpk.glp_set_col_bnds(problem, column, glpk.GLP_LO, 0, 0)
        glpk.glp_set_obj_coef(problem, column, pence)
        places[column], sizes[column] = column, grams
    glpk.glp_set_mat_row(problem, 1, len(packs), places, sizes)
    options = glpk.glp_iocp()
    glpk.glp_init_iocp(options)
    options.presolve, options.msg_lev = glpk.GLP_ON, glpk.GLP_MSG_OFF
    assert glpk.glp_intopt(problem, options) == 0
    price = glpk.glp_mip_obj_val(problem)
    glpk.glp_delete_prob(problem)
    return round(price)


def by_every_gram(need: int, packs: Packs) -> list[tuple[int, int, int]]:
    """Of each need up to this one: the least price, then least leftover, then fewest packs."""
    best = [(0, 0, 0)]
    for grams in range(1, need + 1):
        choices = []
        for size, pence in packs:
            price, left, count = best[max(0, grams - size)]
            left += max(0, size - grams) if size > grams else 0
            choices.append((price + pence, left, count + 1))
        best.append(min(choices))
    return best


@pytest.mark.parametrize("part", PARTS)
@pytest.mark.parametrize("kind", KINDS)
def test_covers_cost_what_the_solvers_find(kind: str, part: int) -> None:
    for need, packs in KINDS[kind][part * 100 : part * 100 + 100]:
        found = cover_of(need, packs).price.value * 100
        assert found == by_highs(need, packs), (need, packs)
        assert found == by_glpk(need, packs), (need, packs)


@pytest.mark.parametrize("part", range(5))
def test_covers_cost_what_every_gram_tried_finds(part: int) -> None:
    for need, packs in INSTANCES[part * 100 : part * 100 + 100]:
        price, leftover, count = by_every_gram(need, packs)[need]
        found = cover_of(need, packs)
        assert found.price.value == Fraction(price, 100)
        assert found.leftover.to("g").value == leftover
        assert sum(n for n, _ in found.packs) == count


def test_a_cover_holds_its_need_and_costs_its_packs() -> None:
    for need, packs in INSTANCES:
        found = cover_of(need, packs)
        price_of: dict[str, list[int]] = {f"{grams} g": [] for grams, _ in packs}
        for grams, pence in packs:
            price_of[f"{grams} g"].append(pence)
        grams_bought = sum(n * int(pack.split()[0]) for n, pack in found.packs)
        assert grams_bought - need == found.leftover.to("g").value
        assert found.leftover.to("g").value >= 0
        cheapest = sum(n * min(price_of[pack]) for n, pack in found.packs)
        assert found.price.value == Fraction(cheapest, 100)
