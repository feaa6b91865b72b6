"""Columns of exact numbers from Python, against fractions one by one."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st

numbers = st.lists(st.tuples(st.fractions(), st.fractions(max_denominator=60)), max_size=40)


@given(numbers)
def test_sums_are_those_of_fractions(pairs: list[tuple[Fraction, Fraction]]) -> None:
    needs = scalepan.NumberColumn(need for need, _ in pairs)
    prices = scalepan.NumberColumn(price for _, price in pairs)
    assert needs.sum() == sum((need for need, _ in pairs), Fraction(0))
    assert needs.sum_of_products(prices) == sum((a * b for a, b in pairs), Fraction(0))
    assert list(prices) == [price for _, price in pairs]


def test_columns_of_two_lengths_are_refused() -> None:
    with pytest.raises(scalepan.NumberError) as caught:
        scalepan.NumberColumn([1, 2]).sum_of_products(scalepan.NumberColumn(["1/3"]))
    assert caught.value.code == "number.columns"
    assert str(caught.value) == "columns of 2 and 1 numbers have no products line by line"
