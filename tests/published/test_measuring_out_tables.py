"""Printed tables of scoops, ladles, spoons and ounces, reproduced by measuring out.

A: Armed Forces Recipe Service, TM 10-412 / NAVSUP P-7, General Information cards 1(2) and 15(1).
ICN: Institute of Child Nutrition, "Basics at a Glance". NIST: SP 430, "Equivalents of the common
capacity units used in the kitchen". NSW: NSW Health, "Conversion chart".
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan import measure_out, measure_set, measure_sets, quantity


def us(text: str) -> scalepan.Quantity:
    return quantity(text, measures="us")


def size_of(set_name: str, measure: str) -> scalepan.Quantity:
    (size,) = [size for name, _, size, *_ in measure_sets()[set_name].measures if name == measure]
    return size


# A 1(2): .00-.12 to 0, .13-.37 to 1/4, .38-.62 to 1/2, .63-.87 to 3/4, .88-.99 to 1. On figures of
# two decimals that is exactly the nearest quarter with ties up: the ties .125, .375, .625 and .875
# have three decimals, so none of them is on the printed scale, and it would read the same with
# ties down. The exact law used here is nearest quarter, ties up.
@pytest.mark.parametrize(
    ("first", "last", "weighed"),
    [(0, 12, "0"), (13, 37, "1/4"), (38, 62, "1/2"), (63, 87, "3/4"), (88, 99, "1")],
)
def test_the_ounce_scale_of_the_card(first: int, last: int, weighed: str) -> None:
    for hundredths in range(first, last + 1):
        out = measure_out(quantity(Fraction(hundredths, 100), "oz"), "scales 1/4 oz")
        assert out.amount == quantity(weighed + " oz")


@pytest.mark.parametrize(
    ("exact", "weighed"), [("0.125", "1/4"), ("0.375", "1/2"), ("0.625", "3/4"), ("0.875", "1")]
)
def test_ties_between_the_printed_hundredths_go_up(exact: str, weighed: str) -> None:
    assert measure_out(f"{exact} oz", "scales 1/4 oz").amount == quantity(f"{weighed} oz")


def test_the_total_of_the_card_is_weighed_as_printed() -> None:
    """A 1(2): 4.35 lb, of which .35 lb are 5.60 oz, is 4 lb 5-1/2 oz."""
    out = measure_out("4.35 lb", "scales 1/4 oz")
    assert out.text == "4 lb 5 1/2 oz"
    assert out.error == quantity("-0.1 oz")


# A 1(2), 1 to 16 oz. The exact law is n/16; sixteenths with an odd n have four decimals and are
# rounded, and 2, 6, 10 and 14 oz are ties (.125 ...), which the print rounds up.
# fmt: off
POUNDS = [
    ".06", ".13", ".19", ".25", ".31", ".38", ".44", ".50",
    ".56", ".63", ".69", ".75", ".81", ".88", ".94", "1.00",
]
# fmt: on


@pytest.mark.parametrize(("ounces", "pounds"), list(enumerate(POUNDS, start=1)))
def test_ounces_on_scales_of_hundredths_of_a_pound(ounces: int, pounds: str) -> None:
    out = measure_out(f"{ounces} oz", "scales 0.01 lb")
    assert out.amount.to("lb").value == Fraction(pounds)
    assert out.error.to("lb").value == Fraction(pounds) - Fraction(ounces, 16)
    assert abs(out.error) <= quantity("0.005 lb")


@pytest.mark.parametrize(
    ("exact", "printed"),
    [("17.5 oz", "1 lb 2 oz"), ("12.25 oz", "12 1/4 oz"), ("8.75 oz", "8 3/4 oz")],
)
def test_above_a_pound_the_chart_keeps_whole_ounces(exact: str, printed: str) -> None:
    """A 15(1): quarters of an ounce up to a pound, whole ounces above."""
    chart = measure_set(
        "chart",
        [
            {"measure": "scales", "size": "1 lb", "step": "1/4 oz"},
            {"measure": "scales", "size": "50 lb", "step": "1 oz", "from": "1 lb"},
        ],
    )
    assert measure_out(exact, chart).text == printed


# ICN: scoop number, printed content, and whether the print is exact. The law is so many level
# scoops to the quart, 4/n cup.
SCOOPS = [
    (6, "2/3 cup", True),
    (8, "1/2 cup", True),
    (10, "3/8 cup", False),
    (12, "1/3 cup", True),
    (16, "1/4 cup", True),
    (20, "3 1/3 tbsp", False),
    (24, "2 2/3 tbsp", True),
    (30, "2 tbsp", False),
    (40, "1 2/3 tbsp", False),
    (50, "3 3/4 tsp", False),
    (60, "3 1/4 tsp", False),
    (70, "2 3/4 tsp", False),
    (100, "2 tsp", False),
]


@pytest.mark.parametrize(("number", "printed", "exact"), SCOOPS)
def test_scoops_by_the_law_and_as_printed(number: int, printed: str, exact: bool) -> None:
    size = size_of("dishers", f"no. {number} disher")
    assert size * number == us("1 quart")
    assert (us(printed) == size) == exact
    # What the print leaves out or adds: 1/16 of a scoop at most (no. 10 and no. 30).
    assert abs(us(printed) - size) <= size / 16
    assert measure_out(size, "dishers", at_most=1).pieces == [(1, f"no. {number} disher")]


# Law 4/n cup less print, in teaspoons (a cup has 48): worked out beside each.
@pytest.mark.parametrize(
    ("number", "teaspoons"),
    [
        (10, "1 1/5"),  # 19.2 less 18
        (20, "-2/5"),  # 9.6 less 10
        (30, "2/5"),  # 6.4 less 6
        (40, "-1/5"),  # 4.8 less 5
        (50, "9/100"),  # 3.84 less 3.75
        (60, "-1/20"),  # 3.2 less 3.25
        (70, "-1/140"),  # 96/35 less 11/4
        (100, "-2/25"),  # 1.92 less 2
    ],
)
def test_how_far_the_print_is_from_the_law(number: int, teaspoons: str) -> None:
    printed = {n: text for n, text, _ in SCOOPS}[number]
    error = size_of("dishers", f"no. {number} disher") - us(printed)
    sign = -1 if teaspoons.startswith("-") else 1
    assert error == us(f"{teaspoons.lstrip('-')} tsp") * sign


@pytest.mark.parametrize("number", [6, 8, 12, 16, 24])
def test_scoops_that_are_exact_are_measured_by_cups_and_spoons(number: int) -> None:
    out = measure_out(size_of("dishers", f"no. {number} disher"), "us spoons and cups")
    assert not out.error


@pytest.mark.parametrize(
    ("ounces", "cups"),
    [
        (1, "1/8"),
        (2, "1/4"),
        (3, "3/8"),
        (4, "1/2"),
        (6, "3/4"),
        (8, "1"),
        (12, "1 1/2"),
    ],
)
def test_ladles(ounces: int, cups: str) -> None:
    """ICN."""
    ladle = f"{ounces} fl oz ladle"
    assert size_of("ladles", ladle) == us(f"{cups} cup")
    assert measure_out(f"{cups} cup", "ladles", measures="us").pieces == [(1, ladle)]


# ICN, parts of a cup; measured by spoons alone they are as printed, in fewest fills.
@pytest.mark.parametrize(
    ("cups", "spoons"),
    [
        ("1/8", "2 tbsp"),
        ("1/4", "4 tbsp"),
        ("1/3", "5 tbsp + 1 tsp"),
        ("3/8", "6 tbsp"),
        ("1/2", "8 tbsp"),
        ("5/8", "10 tbsp"),
        ("2/3", "10 tbsp + 2 tsp"),
        ("3/4", "12 tbsp"),
        ("7/8", "14 tbsp"),
    ],
)
def test_parts_of_a_cup_by_spoons(cups: str, spoons: str) -> None:
    out = measure_out(f"{cups} cup", "us spoons", measures="us")
    assert out.text == spoons
    assert not out.error


@pytest.mark.parametrize(("cups", "ounces"), [("1/3", "2.65"), ("2/3", "5.3")])
def test_thirds_of_a_cup_in_fluid_ounces_are_rounded(cups: str, ounces: str) -> None:
    """ICN prints 2.65 and 5.3 fl oz; the law is 8/3 and 16/3: the print is 1/60, 1/30 below."""
    exact = us(f"{cups} cup")
    assert exact - us(f"{ounces} fl oz") == exact / 160


@pytest.mark.parametrize(
    ("amount", "told"),
    [
        ("1/6 fl oz", "1 tsp"),
        ("1 1/3 fluid dram", "1 tsp"),
        ("1/16 cup", "1 tbsp"),
        ("1/2 fl oz", "1 tbsp"),
        ("1 fl oz", "2 tbsp"),
        ("1 gill", "1/2 cup"),
        ("2 pint", "4 cups"),
        ("1 quart", "4 cups"),
    ],
)
def test_kitchen_equivalents(amount: str, told: str) -> None:
    """NIST."""
    out = measure_out(amount, "us spoons and cups", measures="us")
    assert out.text == told
    assert not out.error


def test_sixty_drops_are_a_teaspoon_in_print() -> None:
    """ICN prints 60 drops = 1 tsp. UCUM's drop is 1/20 mL: 60 are 3 mL, 3/5 of a 5 mL spoon."""
    printed = us("1 tsp") / 60
    out = measure_out(printed * 60, "us spoons")
    assert out.text == "1 tsp"
    assert quantity("60 drop") == quantity("3 mL")


@pytest.mark.parametrize(
    ("measure", "millilitres"),
    [("cup", 250), ("1/2 cup", 125), ("1/3 cup", 80), ("1/4 cup", 60), ("tbsp", 20), ("tsp", 5)],
)
def test_australian_measures_are_the_convention(measure: str, millilitres: int) -> None:
    """NSW: 80 and 60 mL are conventions, not the third and the quarter of 250 mL."""
    assert size_of("au spoons and cups", measure) == quantity(millilitres, "mL")
    assert measure_out(quantity(millilitres, "mL"), "au spoons and cups").pieces == [(1, measure)]
