"""Scaling sums printed in the Armed Forces Recipe Service and in two Navy and Army manuals.

A: Armed Forces Recipe Service, TM 10-412 / NAVSUP P-7, General Information cards 1(2), 1(3) and
15(1), 2003. N: NAVEDTRA 14163, Mess Management Specialist 1 & C, p. 110.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan._core import round_to_multiple

HUNDREDTH = Fraction(1, 100)
QUARTER = Fraction(1, 4)


def scaled(line: str, serves: int, portions: int) -> scalepan.Quantity:
    """The one line of a recipe, written for so many and scaled to another number."""
    text = f'name = "card"\nserves = {serves}\nmeasures = "us"\nlines = ["{line}"]\n'
    (only,) = scalepan.parse_recipe(text).scale(portions=portions).lines
    return only.amount


def half_up(x: Fraction, step: Fraction) -> Fraction:
    value, error = round_to_multiple(x, step, "half up")
    assert value - x == error
    return value


def test_the_working_factor_of_348_portions_is_3_48() -> None:
    """A 1(2)."""
    assert scaled("1 lb cornstarch", 100, 348).value == Fraction("3.48")


def test_a_pound_and_a_quarter_becomes_4_35_lb() -> None:
    """A 1(2)."""
    assert scaled("1.25 lb cornstarch", 100, 348).value == Fraction("4.35")


def test_the_odd_part_of_a_pound_is_rounded_in_ounces() -> None:
    """A 1(2): .35 lb x 16 = 5.60 oz, taken as 5-1/2 oz; 4 lb 5-1/2 oz in all."""
    ounces = scalepan.quantity("0.35 lb").to("oz").value
    assert ounces == Fraction("5.60")
    assert half_up(ounces, QUARTER) == Fraction("5.5")
    weighed = scalepan.quantity("4 lb") + scalepan.quantity(half_up(ounces, QUARTER), "oz")
    assert weighed == scalepan.quantity("4 lb 5 1/2 oz")


@pytest.mark.parametrize(
    ("first", "last", "rounded"),
    [
        (0, 12, "0"),
        (13, 37, "1/4"),
        (38, 62, "1/2"),
        (63, 87, "3/4"),
        (88, 99, "1"),
    ],
)
def test_the_ounce_scale_is_the_nearest_quarter(first: int, last: int, rounded: str) -> None:
    """A 1(2): .00-.12 to 0, .13-.37 to 1/4, .38-.62 to 1/2, .63-.87 to 3/4, .88-.99 to 1."""
    for hundredths in range(first, last + 1):
        assert half_up(Fraction(hundredths, 100), QUARTER) == Fraction(rounded)


# A 1(2), ounces to pounds; 2, 6, 10 and 14 oz show that the half goes up. One transcription of
# the table prints 8 oz as 4: the card has .50.
PRINTED = [
    ".06",
    ".13",
    ".19",
    ".25",
    ".31",
    ".38",
    ".44",
    ".50",
    ".56",
    ".63",
    ".69",
    ".75",
    ".81",
    ".88",
    ".94",
    "1.00",
]


@pytest.mark.parametrize(("ounces", "pounds"), list(enumerate(PRINTED, start=1)))
def test_ounces_in_decimals_of_a_pound(ounces: int, pounds: str) -> None:
    exact = scalepan.quantity(ounces, "oz").to("lb").value
    assert half_up(exact, HUNDREDTH) == Fraction(pounds)


@pytest.mark.parametrize(("written", "pounds"), [("1 lb 4 oz", "1.25"), ("2 lb 10 oz", "2.63")])
def test_pounds_and_ounces_in_decimals(written: str, pounds: str) -> None:
    """A 1(2)."""
    exact = scalepan.quantity(written).to("lb").value
    assert half_up(exact, HUNDREDTH) == Fraction(pounds)


def test_102_lb_on_hand_of_a_recipe_with_30_lb() -> None:
    """A 1(3): 102 / 30 = 3.40."""
    factor = scalepan.quantity("102 lb") / scalepan.quantity("30 lb")
    assert factor == scalepan.quantity("3.40")
    text = 'name = "card"\nserves = 100\nlines = ["30 lb beef mince"]\n'
    (line,) = scalepan.parse_recipe(text).scale(factor=factor.value).lines
    assert line.amount.value == 102


def test_two_pounds_of_cornstarch_at_2_61() -> None:
    """N: 5.22 lb."""
    assert scaled("2 lb cornstarch", 100, 261).value == Fraction("5.22")


def test_a_pound_per_hundred_for_125() -> None:
    """A 15(1): 1 lb 4 oz."""
    text = 'name = "card"\nserves = 100\nlines = ["1 lb butter"]\n'
    (line,) = scalepan.parse_recipe(text).scale(portions=125).lines
    assert line.amount == scalepan.quantity("1 lb 4 oz") * scalepan.quantity("1 AP")


# A 15(1): 7 oz per 100 portions, all exact.
@pytest.mark.parametrize(
    ("portions", "ounces"),
    [
        (10, "7/10"),
        (25, "1 3/4"),
        (50, "3 1/2"),
        (75, "5 1/4"),
        (125, "8 3/4"),
        (150, "10 1/2"),
        (175, "12 1/4"),
    ],
)
def test_seven_ounces_per_hundred(portions: int, ounces: str) -> None:
    amount = scaled("7 oz butter", 100, portions)
    assert amount == scalepan.quantity(f"{ounces} oz AP")


@pytest.mark.parametrize("ounces", range(1, 8))
@pytest.mark.parametrize("portions", [10, 25, 50, 75, 125, 150, 175])
def test_one_to_seven_ounces_per_hundred(ounces: int, portions: int) -> None:
    """A 15(1): these rows are exact up to 175 portions."""
    assert scaled(f"{ounces} oz butter", 100, portions).value == Fraction(ounces * portions, 100)


def test_above_a_pound_the_chart_keeps_whole_ounces() -> None:
    """A 15(1): 7 oz per 100 at 250 is 17-1/2 oz, printed as 1 lb 2 oz."""
    ounces = scaled("7 oz butter", 100, 250).value
    assert ounces == Fraction("17.5")
    whole = scalepan.quantity(half_up(ounces, Fraction(1)), "oz")
    assert whole == scalepan.quantity("1 lb 2 oz")


@pytest.mark.parametrize(("portions", "ounces"), [(250, 10), (275, 11), (300, 12)])
def test_four_ounces_per_hundred(portions: int, ounces: int) -> None:
    """A 15(1)."""
    assert scaled("4 oz butter", 100, portions).value == ounces
