"""Trials, variants and sweeps, held against sums in fractions. All prices are invented."""

from __future__ import annotations

import itertools
import math
from collections.abc import Iterator
from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st

pytest.importorskip("matplotlib")

from drawn import bars, dots, floats, labels, near, said, stairs
from picture import whole
from plotted import (
    EDIBLE,
    TRIALS,
    cents,
    compared,
    costing,
    costs,
    items,
    swept,
    trials,
)
from scalepan import plots
from scalepan.plots.colours import BLUE, GREEN, ORANGE, PURPLE
from scalepan.plots.lettering import lettered
from scalepan.plots.pictures import share_a_scale
from scalepan.plots.stepping import edges
from scalepan.plots.sweeps import goes_in_steps
from scalepan.plots.trials import ratio_of


def test_every_trial_is_a_dot_with_means_and_published_shares_below() -> None:
    edible, *others = plots.plot_trials(trials())
    dawn, dusk = Fraction(3400, 4000), Fraction(1500, 2000)
    assert dots(edible, BLUE, "o") == [(float(dawn), 0), (float(dusk), 1)]
    mean, sums = (dawn + dusk) / 2, Fraction(3400 + 1500, 4000 + 2000)
    assert dots(edible, ORANGE, "s") == [(float(mean), 2)]
    assert dots(edible, ORANGE, "|") == [(float(dusk), 2), (float(dawn), 2)]
    assert dots(edible, GREEN, "^") == [(float(sums), 3)]
    # USDA SR28 11124, refuse 11 %; TM 10-412, M-G No. 1: 6 lb 9 oz of 8 lb.
    published = [Fraction(89, 100), Fraction(6 * 16 + 9, 8 * 16)]
    assert dots(edible, PURPLE, "D") == [(float(published[0]), 4), (float(published[1]), 5)]
    band = edible.patches[0].get_extents().transformed(edible.transData.inverted())
    assert (band.x0, band.x1) == near([dusk, dawn])
    assert labels(edible) == [
        ("trial dawn", "0.85"),
        ("trial dusk", "3/4"),
        ("mean of ratios", "0.8"),
        ("ratio of sums", "≈ 0.8167"),
        ("published", "0.89"),
        ("published", "≈ 0.8203"),
    ]
    assert said(edible).splitlines()[:2] == [
        "yield test of carrots",
        "published 0.89: USDA SR28 11124, refuse…tops and scrapings)",
    ]
    assert [axes.get_xlabel() for axes in (edible, *others)] == ["EP/AP", "cooked/EP", "cooked/AP"]
    # One trial alone was cooked: neither means nor a band.
    assert labels(others[1]) == [("trial dawn", "3/4")]
    assert [list(axes.patches) for axes in others] == [[], []]


def test_one_share_is_drawn_where_one_is_asked_for() -> None:
    test = trials()
    (axes,) = plots.plot_trials(test, shares=[test.share("cooked", of="EP")], title="Carrots")
    assert dots(axes, BLUE, "o") == [(float(Fraction(3000, 3400)), 0)]
    assert said(axes) == "Carrots"


def test_a_test_of_no_known_food_has_no_published_share() -> None:
    (axes, *_) = plots.plot_trials(scalepan.parse_yield_test(TRIALS.replace("carrots", "")))
    assert said(axes) == ""
    assert [name for name, _ in labels(axes)][-1] == "ratio of sums"


def test_a_name_of_several_foods_says_why_nothing_is_published() -> None:
    catalog = scalepan.catalog_with(
        names=[
            {"name": "roots", "plural": "", "region": "AU", "food": "carrot", "match": "same"},
            {"name": "roots", "plural": "", "region": "UK", "food": "leek", "match": "same"},
        ]
    )
    test = scalepan.parse_yield_test(TRIALS.replace("carrots", "roots"))
    (axes, *_) = plots.plot_trials(test, catalog=catalog)
    with pytest.raises(scalepan.FoodError) as caught:
        catalog.food_of("roots")
    told = " ".join(said(axes).split())
    assert told == f"yield test of roots no published share: {caught.value.message}"


@given(st.lists(st.tuples(*[st.integers(1, 100)] * 5).map(itertools.accumulate), min_size=1))
def test_the_ratios_drawn_have_the_mean_that_the_test_tells(weights: list[Iterator[int]]) -> None:
    """Where less than all of the edible weight went into the pan, too."""
    rows = "trial,what,part,weight\n"
    for name, (served, cooked, pan, edible, bought) in enumerate(weights):
        rows += f"{name},bought,swede,{bought} kg\n{name},loss,,rest\n{name},edible,,{edible} kg\n"
        rows += f"{name},into the pan,,{pan} kg\n{name},cooked,,{cooked} kg\n"
        rows += f"{name},carving loss,,rest\n{name},served,,{served} kg\n"
    test = scalepan.parse_yield_test(rows)
    assert len(test.shares) == 5
    for share in test.shares:
        ratios = [ratio_of(trial, share.stage, share.of) for trial in test.trials]
        known = [ratio for ratio in ratios if ratio is not None]
        assert len(known) == share.share.trials
        assert sum(known) / len(known) == share.share.mean_of_ratios.value
        assert (min(known), max(known)) == (share.share.low.value, share.share.high.value)


def test_very_many_trials_share_their_room() -> None:
    rows = "trial,what,part,weight\n" + "".join(
        f"{n},bought,swede,{1000 + n} g\n{n},loss,,rest\n{n},edible,,800 g\n" for n in range(40)
    )
    (axes,) = plots.plot_trials(scalepan.parse_yield_test(rows))
    found = dots(axes, BLUE, "o")
    assert [x for x, _ in found] == floats(Fraction(800, 1000 + n) for n in range(40))
    assert 0 == found[0][1] < found[-1][1] < 16
    assert labels(axes)[0] == ("40 trials", "")
    assert whole(axes).get_figheight() < 9


def test_variants_stand_side_by_side_with_their_differences() -> None:
    money, buy, packs, each = plots.plot_variants(compared(portions=60), title="Pot")
    now, then = costs(30), costs(60)
    # Per cell a heading, then the variants; the next cell half a row below.
    rows = {"till": (1, 2), "borne": (4.5, 5.5)}
    expected = [(rows[cell][0], 0, now[cell]) for cell in rows]
    assert bars(money, BLUE) == [near(row) for row in expected]
    assert bars(money, ORANGE) == [near((rows[cell][1], 0, then[cell])) for cell in rows]
    assert labels(money)[:3] == [
        ("till", ""),
        ("as it is", cents(now["till"])),
        ("full dome", f"{cents(then['till'])} (+{cents(then['till'] - now['till'])})"),
    ]
    assert [axes.get_xlabel() for axes in (money, buy, packs, each)] == [
        "GBP",
        "g AP",
        "",
        "GBP/portion",
    ]
    needs = [Fraction(125 * n) / EDIBLE for n in (30, 60)]
    assert [length for _, _, length in bars(buy, BLUE) + bars(buy, ORANGE)] == near(needs)
    assert [told for _, told in labels(packs)] == ["", "4 x 1 kg + 1 x 500 g", "9 x 1 kg"]
    assert (len(packs.patches), list(packs.get_xticks())) == (0, [])
    assert [length for _, _, length in bars(each, BLUE)] == near([now["till"] / 30])
    assert said(money) == "Pot"


def test_variants_that_fail_and_totals_at_least_are_told() -> None:
    pot = costing(without="swede")
    pot.sheet.set("guests", 5)
    pot.sheet.define("a_guest", "eggs.till / guests")
    none = scalepan.Changes()
    none.set("guests", 0)
    (axes,) = plots.plot_variants(pot.sheet.compare(["till", "a_guest"], {"none": none}))
    least = sum(price for item, (_, _, price, _) in items(30).items() if item != "swede")
    eggs = items(30)["eggs"][2] / 5
    assert labels(axes) == [
        ("till", ""),
        ("as it is", f"at least {float(least):.2f} GBP"),
        ("none", f"at least {float(least):.2f} GBP"),
        ("a_guest", ""),
        ("as it is", f"{float(eggs):g} GBP"),
        ("none", "failed: a_guest:11: division by zero"),
    ]
    assert bars(axes, BLUE) == [near((1, 0, least)), near((4.5, 0, eggs))]
    assert bars(axes, ORANGE) == [near((2, 0, least))]
    assert dots(axes, BLUE, ">") == [(float(least), 1)]


def test_an_interval_has_a_stroke_to_its_end_and_flags_are_told() -> None:
    sheet = scalepan.Sheet()
    sheet.set("dusk", scalepan.Interval("2 kg", "3 kg"))
    sheet.set("clear", True)
    amounts, flags = plots.plot_variants(sheet.compare(["dusk", "clear"], {}))
    assert bars(amounts, BLUE) == [near((1, 0, 2))]
    (stroke,) = [line for line in amounts.lines if line.get_marker() == "|"]
    assert list(stroke.get_xdata()) == [2, 3]
    assert labels(flags) == [("clear", ""), ("as it is", "yes")]


def test_a_comparison_of_nothing_says_so() -> None:
    (axes,) = plots.plot_variants(scalepan.Sheet().compare([]))
    assert [text.get_text() for text in axes.texts] == ["no cell is compared"]


def test_a_sweep_draws_steps_where_a_figure_goes_in_steps_and_lines_elsewhere() -> None:
    money, buy, packs = plots.plot_sweep(swept(40), title="Pot")
    turns = [n + 0.5 for n in range(41)]
    till = [costs(n)["till"] for n in range(1, 41)]
    assert stairs(money, BLUE) == (floats(till), turns)
    (straight, *_) = buy.lines
    assert list(straight.get_xdata()) == floats(range(1, 41))
    assert list(straight.get_ydata()) == floats(Fraction(125 * n) / EDIBLE for n in range(1, 41))
    assert buy.patches == [] or len(buy.patches) == 0
    # A bag of barley does for nine portions: 9 x 55 g = 495 g.
    bags = [math.ceil(Fraction(55 * n, 500)) - 1 for n in range(1, 41)]
    assert stairs(packs, BLUE) == (floats(bags), turns)
    names = [label.get_text() for label in packs.get_yticklabels()]
    assert names == [f"{n} x 500 g" for n in range(1, 6)]
    assert [axes.get_ylabel() for axes in (money, buy)] == ["GBP", "g AP"]
    assert [said(axes) for axes in (money, buy, packs)] == [
        "Pot",
        "swede.buy",
        "pearl_barley.packs",
    ]
    assert packs.get_xlabel() == "portions"


def test_the_steps_may_be_named() -> None:
    money, buy, _ = plots.plot_sweep(swept(9), steps=["swede.buy"])
    figures = floats(Fraction(125 * n) / EDIBLE for n in range(1, 10))
    assert stairs(buy, BLUE)[0] == figures
    assert len(money.patches) == 0
    with pytest.raises(scalepan.SheetError) as caught:
        plots.plot_sweep(swept(9), steps=["till", "swede.bye"])
    assert str(caught.value) == (
        'no cell "swede.bye" was swept (there are: till, borne, swede.buy, pearl_barley.packs)'
    )


def quotients() -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    sheet.set("ladles", "1 kg")
    sheet.define("bowls", "10 kg / ladles")
    sheet.define("many", "bowls > 4")
    return sheet


def test_a_point_that_fails_leaves_a_gap_and_a_cross() -> None:
    values = ["2 kg", "-1 kg", "0 kg", "500 g", "-500 g"]
    bowls, many = plots.plot_sweep(quotients().sweep("ladles", values, ["bowls", "many"]))
    lines = [list(line.get_xdata()) for line in bowls.lines if line.get_linestyle() == "-"]
    assert [places for places in lines if places] == [[-1, -0.5], [0.5, 2]]
    crosses = [list(line.get_xdata()) for line in bowls.lines if line.get_marker() == "x"]
    assert crosses == [[0]]
    assert dots(bowls, BLUE, "o") == [(-1, -10), (-0.5, -20), (0.5, 20), (2, 5)]
    assert [label.get_text() for label in many.get_yticklabels()] == ["no", "yes"]
    assert many.get_xlabel() == "ladles (kg)"


def test_a_sweep_of_one_value_and_of_none() -> None:
    (bowls,) = plots.plot_sweep(quotients().sweep("ladles", ["4 kg"], "bowls"))
    assert dots(bowls, BLUE, "o") == [(4, 2.5)]
    (none,) = plots.plot_sweep(quotients().sweep("ladles", [], "bowls"))
    assert [text.get_text() for text in none.texts] == ["no value was swept"]


def test_very_many_texts_are_not_named() -> None:
    sweep = costing().sheet.sweep("portions", range(1, 200), "swede.packs")
    (axes,) = plots.plot_sweep(sweep)
    assert list(axes.get_yticks()) == []
    assert axes.get_ylabel().endswith(" texts")


def test_a_figure_beyond_drawing_is_refused() -> None:
    sheet = scalepan.Sheet()
    sheet.set("dust", 10)
    sheet.define("motes", "dust^99 * dust^99")
    with pytest.raises(scalepan.PlotError) as caught:
        plots.plot_sweep(sheet.sweep("dust", [9, 10], "motes"))
    assert caught.value.code == "plot.too_large"
    # 9^198 has as many digits as its logarithm says.
    digits = math.floor(198 * math.log10(9)) + 1
    assert str(caught.value) == f"a figure of {digits} digits is beyond what a plot can show"


@given(st.fractions(min_value=Fraction(1, 50), max_value=Fraction(4, 5)), st.integers(20, 60))
def test_whole_packs_go_in_steps_and_their_needs_do_not(need: Fraction, last: int) -> None:
    packs = [Fraction(math.ceil(need * n)) for n in range(1, last)]
    assert goes_in_steps(packs) or len(set(packs)) == 1
    assert not goes_in_steps([need * n for n in range(1, last)])
    assert not goes_in_steps([need / n for n in range(1, last)])
    # What cannot fall below a least, or rise above a most, bends and goes on.
    assert not goes_in_steps([max(need * 5, need * n) for n in range(1, last)])
    assert not goes_in_steps([None, need, None])


@given(st.lists(st.fractions(), min_size=1, max_size=9, unique=True).map(sorted))
def test_every_place_lies_within_its_step(places: list[Fraction]) -> None:
    turns = edges(places)
    assert len(turns) == len(places) + 1
    for place, before, after in zip(places, turns, turns[1:], strict=False):
        assert before < place < after


@given(st.text(max_size=80), st.integers(4, 40))
def test_a_name_keeps_to_one_line_and_its_width(name: str, width: int) -> None:
    cut = lettered(name, width)
    assert len(cut) <= width
    assert "\n" not in cut
    assert cut == cut.strip()
    assert lettered(cut, width) == cut


def test_a_long_name_keeps_both_its_ends() -> None:
    assert lettered("leeks of the upper terrace, east", 18) == "leeks of th…, east"


def test_scales_are_shared_within_twenty_times() -> None:
    assert share_a_scale([Fraction(1), Fraction(20), Fraction(0)])
    assert not share_a_scale([Fraction(1), Fraction(201, 10)])
    assert share_a_scale([])
