"""Curves against fractions point by point, and the numbers of portions they point out."""

from __future__ import annotations

import signal
import threading
import time
from collections.abc import Callable, Sequence
from fractions import Fraction
from pathlib import Path

import numpy as np
import pytest
import scalepan
from costing_model import DISHES, Bill, Item, bill_of, costed
from hypothesis import given, settings
from hypothesis import strategies as st

COSTS = ("till", "used", "thrown", "borne")
PASTE_PRICES = "item,sold_as,pack,price,keeps\n" + "".join(
    f"{food},AP,1 kg,{price},no\n" for food, price in (("leeks", 2), ("onions", 1), ("carrots", 1))
)
RANGES = st.builds(
    lambda first, step, count: range(first, first + step * count, step),
    st.integers(1, 60),
    st.integers(1, 9),
    st.integers(1, 24),
)


def borne_by(items: Sequence[Item], bills: Sequence[Bill]) -> Fraction:
    thrown = (bill.rest for item, bill in zip(items, bills, strict=True) if not item.keeps)
    return sum((bill.used for bill in bills), Fraction(0)) + sum(thrown, Fraction(0))


def listed(runs: Sequence[scalepan.CountRun]) -> list[Fraction]:
    numbers = []
    for run in runs:
        steps = (run.last - run.first) / run.every if run.every else 0
        numbers += [run.first + run.every * i for i in range(int(steps) + 1)]
    return numbers


def dominated_by_hand(portions: Sequence[int], costs: Sequence[Fraction]) -> dict[int, int]:
    """Each dominated number with the largest that costs no more."""
    found = {}
    for i, n in enumerate(portions):
        later = [m for m, cost in zip(portions[i:], costs[i:], strict=True) if cost <= costs[i]]
        if later[-1] > n:
            found[n] = later[-1]
    return found


@settings(max_examples=60)
@given(DISHES, st.integers(1, 6), RANGES)
def test_curves_equal_the_arithmetic(items: list[Item], serves: int, portions: range) -> None:
    curve = costed(items, serves, Fraction(1)).curve(portions)
    bills = [[bill_of(item, serves, Fraction(n)) for item in items] for n in portions]
    till = [sum((bill.till for bill in at), Fraction(0)) for at in bills]
    assert curve.portions == list(portions)
    assert curve.till == till
    assert curve.used == [sum((bill.used for bill in at), Fraction(0)) for at in bills]
    assert curve.borne == [borne_by(items, at) for at in bills]
    assert [u + t for u, t in zip(curve.used, curve.thrown, strict=True)] == curve.borne
    assert curve.kernel.startswith("till in words: ")
    column = curve.column()
    assert [count * column.step for count in memoryview(column)] == till


@settings(max_examples=60)
@given(DISHES, st.integers(1, 6), RANGES)
def test_counts_pointed_out_are_those_of_the_arithmetic(
    items: list[Item], serves: int, portions: range
) -> None:
    curve = costed(items, serves, Fraction(1)).curve(portions)
    bills = [[bill_of(item, serves, Fraction(n)) for item in items] for n in portions]
    for i, even in enumerate(curve.even_counts):
        nothing_left = [
            n for n, at in zip(portions, bills, strict=True) if at[i].bought == at[i].need
        ]
        assert (even.item, listed(even.counts)) == (items[i].food, nothing_left)
    for name in COSTS:
        costs = getattr(curve, name)
        each = [cost / n for cost, n in zip(costs, portions, strict=True)]
        best = curve.cheapest(name)
        assert best is not None
        assert best.per_portion == min(each)
        assert listed(best.counts) == [
            n for n, cost in zip(portions, each, strict=True) if cost == min(each)
        ]
        assert best.portions == listed(best.counts)[0]
        found = {}
        for run in curve.dominated(name):
            assert run.costs == costs[portions.index(int(run.by))]
            for n in portions:
                if run.first <= n <= run.last:
                    found[n] = int(run.by)
        assert found == dominated_by_hand(portions, costs)


@settings(max_examples=40)
@given(DISHES, st.integers(1, 6), st.lists(st.fractions(Fraction(1, 4), 30, max_denominator=6)))
def test_points_of_any_order_are_those_of_the_arithmetic(
    items: list[Item], serves: int, portions: list[Fraction]
) -> None:
    curve = costed(items, serves, Fraction(1)).curve(portions)
    bills = [[bill_of(item, serves, n) for item in items] for n in portions]
    assert curve.portions == portions
    assert curve.till == [sum((bill.till for bill in at), Fraction(0)) for at in bills]
    assert curve.borne == [borne_by(items, at) for at in bills]


def one_item(line: str, row: str, share: str = "0.44 EP/AP") -> scalepan.Costing:
    """For one portion. The edible share and the price are invented."""
    facts = [{"fact": "own.leeks", "food": "leeks", "kind": "edible", "value": share}]
    recipe = scalepan.parse_recipe(
        f'name = "x"\nserves = 1\nlines = ["{line}"]\n', catalog=scalepan.catalog_with(facts)
    )
    prices = scalepan.parse_prices("item,sold_as,pack,price,keeps\n" + row)
    return scalepan.cost(recipe, prices)


def test_three_packs_at_seventy_portions_and_four_at_seventy_one() -> None:
    """70 portions of 30 g EP at 70 % edible are 3000 g AP; floats find 3000.0000000000005."""
    curve = one_item("30 g leeks, trimmed", "leeks,AP,1 kg,2,no", "0.70 EP/AP").curve(range(1, 72))
    assert 70 * (30 / 0.7 / 1000) > 3
    assert (curve.till[69], curve.till[70]) == (6, 8)
    assert [(p.portions, p.packs_before, p.packs) for p in curve.breakpoints] == [
        (24, [(1, "1 kg")], [(2, "1 kg")]),
        (47, [(2, "1 kg")], [(3, "1 kg")]),
        (71, [(3, "1 kg")], [(4, "1 kg")]),
    ]
    assert [str(run) for run in curve.even_counts[0].counts] == ["70"]


def test_a_million_points_are_the_arithmetic() -> None:
    """30 g EP at 70 % edible are 300/7 g: 3 n / 70 packs."""
    costing = one_item("30 g leeks, trimmed", "leeks,AP,1 kg,2.50,no", "0.70 EP/AP")
    curve = costing.curve(range(1, 1_000_001))
    assert curve.kernel == "till in words: 0 stairs by lanes of 32 bits, 1 stair by rises"
    column = curve.column("till")
    assert (column.step, len(column)) == (Fraction(5, 2), 1_000_000)
    counts = np.asarray(column)
    assert counts.dtype == np.int64
    assert not counts.flags.writeable
    n = np.arange(1, 1_000_001, dtype=np.int64)
    np.testing.assert_array_equal(counts, (3 * n + 69) // 70)
    assert np.shares_memory(counts, np.asarray(curve.column("till")))


def test_a_column_outlives_its_curve() -> None:
    view = memoryview(one_item("1 kg leeks", "leeks,AP,1 kg,2,no").curve(range(1, 5)).column())
    assert view.tolist() == [1, 2, 3, 4]
    with pytest.raises(TypeError):
        view[0] = 7


@pytest.mark.parametrize(
    ("ask", "said"),
    [
        (
            lambda curve: curve.column("borne"),
            "borne does not go in whole steps of money (only the till does; borne is a list of "
            "fractions)",
        ),
        (
            lambda curve: curve.cheapest("profit"),
            'no cost is called "profit" (there are: till, used, thrown, borne)',
        ),
        (
            lambda curve: curve.dominated("profit"),
            'no cost is called "profit" (there are: till, used, thrown, borne)',
        ),
    ],
)
def test_what_a_curve_does_not_have_is_said(
    ask: Callable[[scalepan.Curve], object], said: str
) -> None:
    curve = one_item("1 kg leeks", "leeks,AP,1 kg,2,no").curve(range(1, 5))
    with pytest.raises(scalepan.CostError) as caught:
        ask(curve)
    assert str(caught.value) == said


@pytest.mark.parametrize("portions", [range(0, 5), range(-3, 5), [4, 0], [Fraction(-1, 2)]])
def test_portions_must_be_above_zero(portions: Sequence[int]) -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        one_item("1 kg leeks", "leeks,AP,1 kg,2,no").curve(portions)
    assert caught.value.code == "recipe.portions"


def test_more_than_a_million_points_or_changes_are_refused() -> None:
    costing = one_item("1 kg leeks", "leeks,AP,1 kg,2,no")
    for portions in (range(1, 1_000_002), range(1, 10**30)):
        with pytest.raises(scalepan.CostError) as caught:
            costing.curve(portions)
        assert str(caught.value) == "a curve of more than 1000000 points is asked for"
    two = scalepan.cost(
        scalepan.parse_recipe('name = "x"\nserves = 1\nlines = ["1 kg leeks", "1 kg onions"]\n'),
        scalepan.parse_prices(PASTE_PRICES),
    )
    with pytest.raises(scalepan.CostError) as caught:
        _ = two.curve(range(1, 600_000)).breakpoints
    assert str(caught.value) == (
        "the packs change more than 1000000 times (ask for the breakpoints of fewer portions)"
    )


def test_empty_and_backward_ranges_are_taken_as_they_are() -> None:
    costing = one_item("1 kg leeks", "leeks,AP,1 kg,2,no")
    assert costing.curve(range(5, 5)).till == []
    assert costing.curve(range(5, 5)).cheapest() is None
    assert costing.curve(range(5, 5)).breakpoints == []
    assert len(costing.curve(range(5, 5)).column()) == 0
    assert costing.curve(range(4, 0, -1)).till == [8, 6, 4, 2]


def test_a_larger_batch_can_bear_less() -> None:
    """Leftovers are thrown: 2 of 3 packs used bear all three, 3 of 3 no more than that."""
    curve = one_item("1 kg leeks", "leeks,AP,3 kg,3,no").curve([1, 2, 3, 4])
    assert curve.borne == [3, 3, 3, 6]
    assert [(run.first, run.last, run.by, run.costs) for run in curve.dominated("borne")] == [
        (1, 2, 3, 3)
    ]


def dish_on_an_uneven_base(folder: Path) -> scalepan.Recipe:
    """The base has a fixed line, so that it does not grow in proportion."""
    (folder / "paste.toml").write_text(
        'name = "Paste"\nserves = 4\nlines = ["1 kg leeks", "100 g onions | fixed"]\n',
        encoding="utf-8",
    )
    dish = folder / "dish.toml"
    dish.write_text(
        'name = "Dish"\nserves = 4\nbases = { paste = "paste.toml" }\n'
        'lines = ["500 g paste", "300 g carrots"]\n',
        encoding="utf-8",
    )
    return scalepan.read_recipe(dish)


def test_a_base_that_is_made_larger_is_bought_as_it_is_made(tmp_path: Path) -> None:
    dish, prices = dish_on_an_uneven_base(tmp_path), scalepan.parse_prices(PASTE_PRICES)
    curve = scalepan.cost(dish, prices).curve(range(3, 90, 2))
    assert curve.kernel == (
        "till in words: 1 stair by lanes of 32 bits, 0 stairs by rises; from cover to cover: "
        "leeks, onions"
    )
    column = curve.column()
    for i, n in enumerate(range(3, 90, 2)):
        there = scalepan.cost(dish.scale(portions=n), prices)
        assert memoryview(column)[i] * column.step == there.till.value == curve.till[i]
        assert curve.used[i] == there.used.value


def test_threads_share_a_curve() -> None:
    curve = one_item("30 g leeks", "leeks,AP,1 kg,2,no").curve(range(1, 2001))
    found: list[tuple[object, ...]] = []

    def ask() -> None:
        found.append((curve.till[-1], curve.used[-1], len(curve.breakpoints), curve.column().step))

    threads = [threading.Thread(target=ask) for _ in range(8)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    # 60 kg in 60 packs; a new one from 34 portions (1.02 kg) on, 59 times.
    assert found == [(120, 120, 59, 2)] * 8


def test_a_long_curve_can_be_interrupted(tmp_path: Path) -> None:
    costing = scalepan.cost(dish_on_an_uneven_base(tmp_path), scalepan.parse_prices(PASTE_PRICES))
    before = signal.signal(signal.SIGALRM, signal.default_int_handler)
    signal.setitimer(signal.ITIMER_REAL, 0.2)
    started = time.monotonic()
    try:
        with pytest.raises(KeyboardInterrupt):
            costing.curve(range(1, 1_000_001))
    finally:
        signal.setitimer(signal.ITIMER_REAL, 0)
        signal.signal(signal.SIGALRM, before)
    assert time.monotonic() - started < 20
