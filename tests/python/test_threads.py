"""Threads side by side: each on a sheet of its own, and all by the same recipe and prices."""

from __future__ import annotations

from collections.abc import Callable
from concurrent.futures import ThreadPoolExecutor
from fractions import Fraction
from math import ceil
from threading import Barrier

import scalepan

THREADS = 4
ROUNDS = 400
BROTH = """\
name = "Night watch broth"
serves = 4
lines = ["220 g pearl barley"]
"""
# Invented.
PRICES = """\
item,sold_as,pack,price,currency,keeps
pearl barley,AP,500 g,0.95,GBP,yes
"""


def side_by_side(work: Callable[[int], list[object]]) -> list[list[object]]:
    """What each thread gives; all start at once."""
    start = Barrier(THREADS)

    def at_once(thread: int) -> list[object]:
        start.wait(timeout=60)
        return work(thread)

    with ThreadPoolExecutor(THREADS) as pool:
        return list(pool.map(at_once, range(THREADS)))


def counts(thread: int) -> range:
    return range(1 + thread, 1 + thread + THREADS * ROUNDS, THREADS)


def test_each_thread_works_on_a_sheet_of_its_own() -> None:
    def work(thread: int) -> list[object]:
        sheet = scalepan.Sheet()
        sheet.set("amount", f"{500 + thread} g EP")
        sheet.set("portions", 1)
        sheet.set("edible", "44/100 EP/AP")
        sheet.define("buy", "amount * portions / edible")
        bought: list[object] = []
        for count in counts(thread):
            sheet.set("portions", count)
            value = sheet.value("buy")
            assert isinstance(value, scalepan.Quantity)
            bought.append(value.to("g AP").value)
        return bought

    assert side_by_side(work) == [
        [Fraction(500 + thread) * count / Fraction(44, 100) for count in counts(thread)]
        for thread in range(THREADS)
    ]


def test_threads_cost_one_recipe_by_one_price_book() -> None:
    recipe = scalepan.parse_recipe(BROTH)
    prices = scalepan.parse_prices(PRICES)

    def work(thread: int) -> list[object]:
        tills: list[object] = []
        for count in counts(thread):
            tills.append(scalepan.cost(recipe.scale(portions=count), prices).till.value)
        return tills

    # 55 g a portion, out of packs of 500 g.
    assert side_by_side(work) == [
        [ceil(Fraction(55 * count, 500)) * Fraction("0.95") for count in counts(thread)]
        for thread in range(THREADS)
    ]


def test_threads_convert_by_one_catalogue() -> None:
    def work(thread: int) -> list[object]:
        pound = "lb" if thread % 2 else "oz"
        return [scalepan.convert(f"{count} {pound}", "g").value for count in counts(thread)]

    # The pound is 453.59237 g exactly (UK Weights and Measures Act 1985), the ounce 1/16 of it.
    pound = Fraction("453.59237")
    assert side_by_side(work) == [
        [count * (pound if thread % 2 else pound / 16) for count in counts(thread)]
        for thread in range(THREADS)
    ]
