"""Curves, shares and leftovers, held against sums in fractions. All prices are invented."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan

pytest.importorskip("matplotlib")

from drawn import bars, dots, floats, labels, near, said, stairs
from picture import texts, whole
from plotted import (
    cents,
    cheapest,
    costing,
    costs,
    items,
    percent,
)
from scalepan import plots
from scalepan.plots.colours import BLUE, GREEN, ORANGE, PURPLE, SKY


def test_the_curve_is_one_flat_step_for_every_count() -> None:
    whole_batch, portion, _ = plots.plot_curve(costing().curve(range(1, 41)), title="Pot")
    expected = [costs(n) for n in range(1, 41)]
    turns = [n + 0.5 for n in range(41)]
    for name, colour in (("till", ORANGE), ("borne", BLUE), ("used", GREEN)):
        figures = [one[name] for one in expected]
        assert stairs(whole_batch, colour) == (floats(figures), turns)
        each = [figure / n for n, figure in enumerate(figures, start=1)]
        assert stairs(portion, colour) == (floats(each), turns)
    borne = [one["borne"] / n for n, one in enumerate(expected, start=1)]
    least = min(borne)
    assert dots(portion, BLUE, "o") == [(borne.index(least) + 1, float(least))]
    told = scalepan.quantity(least, "GBP").told_money
    assert said(portion) == f"dot: least borne, {told} a portion at {borne.index(least) + 1}"
    assert [whole_batch.get_ylabel(), portion.get_ylabel()] == [
        "whole batch (GBP)",
        "one portion (GBP)",
    ]
    assert said(whole_batch) == "Pot"


def test_a_curve_of_few_points_marks_them_in_any_order() -> None:
    whole_batch, *_ = plots.plot_curve(costing().curve([30, 10, 40]))
    till = [costs(n)["till"] for n in (10, 30, 40)]
    # Half way between them, and at both ends as far beyond.
    assert stairs(whole_batch, ORANGE) == (floats(till), [0, 20, 35, 45])
    assert dots(whole_batch, ORANGE, "o") == list(zip([10, 30, 40], floats(till), strict=True))


def test_a_curve_of_one_point_is_a_step_one_portion_wide() -> None:
    whole_batch, _, changes = plots.plot_curve(costing().curve([12]))
    assert stairs(whole_batch, BLUE) == ([float(costs(12)["borne"])], [11.5, 12.5])
    assert [list(rows.get_positions()) for rows in changes.collections] == [[], [], [], []]


def test_a_curve_says_at_least_where_a_price_is_missing() -> None:
    whole_batch, portion, _ = plots.plot_curve(costing(without="swede").curve(range(1, 9)))
    assert whole_batch.get_ylabel() == "whole batch, at least (GBP)"
    assert portion.get_ylabel() == "one portion, at least (GBP)"
    assert said(whole_batch) == "not priced: swede"


def parts_of(portions: int, left_out: str = "") -> list[tuple[str, Fraction, Fraction]]:
    """Used and thrown of each item, the dearest first."""
    found = []
    for item, (need, content, price, keeps) in items(portions).items():
        thrown = Fraction(0) if keeps else price * (content - need) / content
        if item != left_out:
            found.append((item, price * need / content, thrown))
    return sorted(found, key=lambda row: -row[1] - row[2])


def test_shares_are_what_each_item_bears_the_dearest_on_top() -> None:
    axes = plots.plot_shares(costing(), title="Pot")
    rows = parts_of(30)
    used, thrown = [row[1] for row in rows], [row[2] for row in rows]
    assert [row for row, _, _ in bars(axes, GREEN)] == near(range(len(rows)))
    assert [length for _, _, length in bars(axes, GREEN)] == near(used)
    assert [start for _, start, _ in bars(axes, PURPLE)] == near(used)
    assert [length for _, _, length in bars(axes, PURPLE)] == near(thrown)
    borne = sum(used) + sum(thrown)
    assert labels(axes) == [(n, f"{cents(u + t)}, {percent(u + t, borne)}") for n, u, t in rows]
    wasted = cents(sum(thrown, Fraction(0)))
    assert said(axes) == f"Pot\nborne: {cents(borne)}, of which {wasted} thrown"
    assert axes.get_xlabel() == "borne (GBP)"


def test_shares_say_at_least_where_a_price_is_missing() -> None:
    axes = plots.plot_shares(costing(without="chickpeas"))
    rows = parts_of(30, left_out="chickpeas")
    assert [name for name, _ in labels(axes)] == [name for name, _, _ in rows]
    borne = sum((u + t for _, u, t in rows), Fraction(0))
    wasted = cents(sum((t for _, _, t in rows), Fraction(0)))
    told = f"borne: at least {cents(borne)}, of which {wasted} thrown\nnot priced: chickpeas"
    assert said(axes) == told


def test_shares_go_by_the_figures_of_the_sheet() -> None:
    pot = costing()
    pot.override("swede.edible", "1/2", why="own trim, 3 cases (invented)")
    need = Fraction(125 * 30) / Fraction(1, 2)
    packs = [(1000, Fraction("2.10")), (500, Fraction("1.20"))]
    content, price = cheapest(need, packs)
    axes = plots.plot_shares(pot)
    assert labels(axes)[0][0] == "swede"
    assert bars(axes, GREEN)[0][2] == pytest.approx(float(price * need / content), rel=1e-12)


def test_several_lines_of_an_item_and_of_a_base_are_one_row() -> None:
    recipe = scalepan.parse_recipe(
        'name = "Dome pot"\nserves = 4\n'
        'bases = { stock = { name = "Stock", serves = 4, makes = "1 kg", '
        'lines = ["200 g crème fraîche", "100 g salt"] } }\n'
        'lines = ["1 kg of the stock", "50 g crème fraîche", "20 g chives"]'
    )
    prices = "item,sold_as,pack,price,currency,keeps\n"
    prices += "crème fraîche,EP,300 g,1.90,GBP,no\nsalt,EP,1 kg,0.60,GBP,yes\n"
    axes = plots.plot_shares(scalepan.cost(recipe, scalepan.parse_prices(prices)))
    # 250 g of a pot of 300 g are used and the rest is thrown; of the salt a tenth is used.
    used = [Fraction("1.90") * 250 / 300, Fraction("0.60") / 10]
    assert [length for _, _, length in bars(axes, GREEN)] == near(used)
    assert [length for _, _, length in bars(axes, PURPLE)] == near([Fraction("1.90") - used[0], 0])
    assert [name for name, _ in labels(axes)] == ["crème fraîche", "salt"]


def test_very_many_items_end_in_one_row() -> None:
    roots = {n: f"moonroot{chr(97 + n // 10)}{chr(97 + n % 10)}" for n in range(1, 41)}
    lines = ", ".join(f'"{n} {name}"' for n, name in roots.items())
    recipe = scalepan.parse_recipe(f'name = "Box"\nserves = 1\nlines = [{lines}]')
    rows = "".join(f"{name},AP,50,{50 * n}.00,GBP,no\n" for n, name in roots.items())
    book = scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\n" + rows)
    box = scalepan.cost(recipe, book)
    shares, left = plots.plot_shares(box), plots.plot_leftovers(box)
    assert [name for name, _ in labels(shares)] == [
        *(roots[n] for n in range(40, 11, -1)),
        "11 others",
    ]
    # All of the pack is borne, used or not: 50 a piece.
    assert labels(shares)[-1][1].startswith(f"{50 * sum(range(1, 12))}.00 GBP, ")
    value = sum(sorted(n * (50 - n) for n in range(1, 41))[:11])
    assert labels(left)[-1] == ("11 others", f"{value}.00 GBP")


def test_nothing_priced_and_nothing_left_are_said() -> None:
    recipe = scalepan.parse_recipe('name = "Eggs"\nserves = 3\nlines = ["6 eggs"]')
    head = "item,sold_as,pack,price,currency,keeps\n"
    unpriced = scalepan.cost(recipe, scalepan.parse_prices(head + "walnuts,AP,1 kg,9,GBP,yes\n"))
    drawn = plots.plot_shares(unpriced)
    assert [text.get_text() for text in drawn.texts] == ["no line of the dish has a price"]
    even = scalepan.cost(recipe, scalepan.parse_prices(head + "eggs,AP,6,1.50,GBP,no\n"))
    drawn = plots.plot_leftovers(even, title="Eggs")
    assert [text.get_text() for text in drawn.texts] == ["nothing is left of what has a price"]
    assert said(drawn) == "Eggs"


def test_leftovers_are_by_value_kept_or_thrown() -> None:
    axes = plots.plot_leftovers(costing(31))
    rows = [
        (price * (content - need) / content, item, content - need, keeps)
        for item, (need, content, price, keeps) in items(31).items()
        if content > need
    ]
    rows.sort(key=lambda row: (-row[0], row[1]))
    kept = [(i, row[0]) for i, row in enumerate(rows) if row[3]]
    thrown = [(i, row[0]) for i, row in enumerate(rows) if not row[3]]
    for found, colour in ((kept, SKY), (thrown, PURPLE)):
        assert [row for row, _, _ in bars(axes, colour)] == near(i for i, _ in found)
        assert [length for _, _, length in bars(axes, colour)] == near(v for _, v in found)
    units = {"swede": "g AP", "pearl barley": "g AP", "eggs": "piece AP", "chickpeas": "g drained"}
    told = dict(labels(axes))
    assert list(told) == [row[1] for row in rows]
    for value, item, amount, _ in rows:
        left = scalepan.quantity(amount, units[item])
        assert told[item] == f"{left.told} {left.stage}, {cents(value)}"
    closing, waste = (sum((v for _, v in part), Fraction(0)) for part in (kept, thrown))
    assert said(axes) == f"kept: {cents(closing)}, thrown: {cents(waste)}"
    assert axes.get_xlabel() == "value of what is left (GBP)"


def test_what_was_on_hand_before_is_said() -> None:
    stock = "item,stage,amount,value,currency\npearl barley,AP,9 kg,18.00,GBP"
    told = dict(labels(plots.plot_leftovers(costing(30, stock=stock))))
    # 30 x 55 g of 9 kg are used, 7.35 kg at 2.00 a kilogram are left.
    assert told["pearl barley"] == "7.35 kg AP on hand, 14.70 GBP"


def test_the_plots_tell_no_figure_from_a_float() -> None:
    """A till that no float can hold is told to the cent, half up."""
    recipe = scalepan.parse_recipe('name = "Eggs"\nserves = 3\nlines = ["3 eggs"]')
    head = "item,sold_as,pack,price,currency,keeps\n"
    book = scalepan.parse_prices(head + "eggs,AP,3,90071992547409.935,GBP,no\n")
    axes = plots.plot_shares(scalepan.cost(recipe, book))
    assert labels(axes) == [("eggs", "90071992547409.94 GBP, 100.0 %")]
    assert any("90071992547409.94" in text.get_text() for text in texts(whole(axes)))
