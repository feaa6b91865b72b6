"""Quantity arithmetic across the border against fractions.Fraction, near the machine word.

Operands sit at 2^62, 2^63 and beyond, where a word overflows and comes back.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st

LIMITS = [
    limit + near
    for power in (31, 32, 62, 63, 64, 127, 200)
    for limit in (2**power, -(2**power))
    for near in (-1, 0, 1)
]
WHOLE = st.one_of(
    st.sampled_from(LIMITS),
    st.integers(-1000, 1000),
    st.integers(-(2**70), 2**70),
)
POSITIVE = st.one_of(
    st.sampled_from([n for n in LIMITS if n > 0]),
    st.integers(1, 1000),
    st.integers(1, 2**70),
)
NUMBERS = st.builds(Fraction, WHOLE, POSITIVE)


def grams(x: Fraction) -> scalepan.Quantity:
    return scalepan.quantity(x, "g")


@given(NUMBERS)
def test_a_number_comes_back_as_it_went_in(x: Fraction) -> None:
    back = grams(x).value
    assert type(back) is Fraction
    assert (back.numerator, back.denominator) == (x.numerator, x.denominator)


@given(NUMBERS, NUMBERS)
def test_sums_and_differences(x: Fraction, y: Fraction) -> None:
    assert (grams(x) + grams(y)).value == x + y
    assert (grams(x) - grams(y)).value == x - y


@given(NUMBERS, NUMBERS)
def test_products(x: Fraction, y: Fraction) -> None:
    assert (grams(x) * y).value == x * y
    assert (y * grams(x)).value == x * y


@given(NUMBERS, NUMBERS.filter(bool))
def test_quotients(x: Fraction, y: Fraction) -> None:
    assert (grams(x) / y).value == x / y
    assert (grams(x) / grams(y)).value == x / y
    assert (x / grams(y)).value == x / y


@given(NUMBERS, NUMBERS)
def test_order_and_equality(x: Fraction, y: Fraction) -> None:
    a, b = grams(x), grams(y)
    assert (a < b, a <= b, a == b, a >= b, a > b) == (x < y, x <= y, x == y, x >= y, x > y)


@given(NUMBERS, NUMBERS)
def test_neighbours_a_rounding_error_apart_are_told_apart(x: Fraction, y: Fraction) -> None:
    tiny = Fraction(1, 2**127 + abs(y.numerator))
    assert grams(x) < grams(x + tiny)
    assert grams(x) != grams(x + tiny)


@given(NUMBERS, NUMBERS)
def test_equal_amounts_hash_alike_however_they_were_reached(x: Fraction, y: Fraction) -> None:
    there_and_back = grams(x) + grams(y) - grams(y)
    assert there_and_back == grams(x)
    assert hash(there_and_back) == hash(grams(x))
    thousandth = scalepan.quantity(x / 1000, "kg")
    assert thousandth == grams(x)
    assert hash(thousandth) == hash(grams(x))


@given(NUMBERS)
def test_signs(x: Fraction) -> None:
    assert (-grams(x)).value == -x
    assert abs(grams(x)).value == abs(x)
    assert bool(grams(x)) is bool(x)


@pytest.mark.parametrize("limit", LIMITS)
def test_whole_numbers_at_the_limits(limit: int) -> None:
    amount = grams(Fraction(limit))
    assert (amount + grams(Fraction(1))).value == limit + 1
    assert (amount * amount).value == limit * limit
    assert (amount * 2 / 2) == amount
