"""What numbers and texts a quantity is made of, and which are refused."""

from __future__ import annotations

import math
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from typing import Any

import numpy
import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import quantity


@pytest.mark.parametrize(
    ("given_number", "exact"),
    [
        (3, Fraction(3)),
        (-(10**40), Fraction(-(10**40))),
        (Fraction(22, 7), Fraction(22, 7)),
        (Decimal("2.50"), Fraction(5, 2)),
        (Decimal("-1e-7"), Fraction(-1, 10**7)),
        ("1 1/2", Fraction(3, 2)),
        ("2.5", Fraction(5, 2)),
        ("1-1/2", Fraction(3, 2)),
        ("1½", Fraction(3, 2)),
        ("⅔", Fraction(2, 3)),
        (0.1, Fraction(1, 10)),
        (-0.1, Fraction(-1, 10)),
        (2.5, Fraction(5, 2)),
        (0.001, Fraction(1, 1000)),
        (1e-5, Fraction(1, 100000)),
        (1e22, Fraction(10**22)),
        (-0.0, Fraction(0)),
        (123456789.125, Fraction("123456789.125")),
    ],
)
def test_numbers_are_taken_exactly(given_number: Any, exact: Fraction) -> None:
    assert quantity(given_number, "g").value == exact


@given(st.integers(-(10**11), 10**11), st.integers(0, 8))
def test_a_float_of_twelve_digits_is_the_decimal_written(digits: int, places: int) -> None:
    written = Decimal(digits).scaleb(-places)
    assert quantity(float(written), "g").value == Fraction(written)


@given(st.decimals(allow_nan=False, allow_infinity=False, places=9, min_value=-9, max_value=9))
def test_decimals_are_exact(number: Decimal) -> None:
    assert quantity(number, "g").value == Fraction(number)


@given(st.fractions())
def test_fractions_are_exact(number: Fraction) -> None:
    assert quantity(number, "g").value == number
    assert quantity(str(number), "g").value == number


@pytest.mark.parametrize(
    ("number", "text"),
    [
        (
            0.1 + 0.2,
            "the float 0.30000000000000004 stands for no exact figure "
            '(write it as text ("0.3"), an int, a Fraction or a Decimal)',
        ),
        (
            1.1 + 2.2,
            "the float 3.3000000000000003 stands for no exact figure "
            '(write it as text ("3.3"), an int, a Fraction or a Decimal)',
        ),
        (
            2 / 3,
            "the float 0.6666666666666666 stands for no exact figure "
            '(write it as text, such as "1/3", an int, a Fraction or a Decimal)',
        ),
        (math.nan, "the float nan stands for no exact figure (write a number)"),
        (math.inf, "the float inf stands for no exact figure (write a number)"),
        (-math.inf, "the float -inf stands for no exact figure (write a number)"),
        (Decimal("NaN"), "the Decimal NaN stands for no exact figure (write a number)"),
        (Decimal("-Infinity"), "the Decimal -Infinity stands for no exact figure (write a number)"),
    ],
)
def test_numbers_without_an_exact_figure_are_refused(number: Any, text: str) -> None:
    with pytest.raises(scalepan.NumberError) as made:
        quantity(number, "g")
    with pytest.raises(scalepan.NumberError) as multiplied:
        quantity("1 g") * number
    for caught in (made, multiplied):
        assert (caught.value.code, str(caught.value)) == ("number.float", text)


@pytest.mark.parametrize("other", [True, False, None, [], 1j, b"1", object()])
def test_other_types_are_a_type_error(other: Any) -> None:
    with pytest.raises(TypeError):
        quantity(other, "g")
    with pytest.raises(TypeError):
        quantity(other)


def test_a_float_of_an_array_is_a_float() -> None:
    assert quantity(numpy.float64(0.5), "g").value == Fraction(1, 2)


@pytest.mark.parametrize("number", [1e11, 1e12, 1e15, 999999999999.0])
def test_a_whole_float_of_few_digits_is_taken(number: float) -> None:
    """Python writes 1e11 out with ".0", which is no digit of it."""
    assert quantity(number, "g").value == int(number)


def test_a_fraction_of_a_thousand_digits_is_taken() -> None:
    large = Fraction(10**1500, 3)
    assert quantity(large, "g").value == large


@pytest.mark.parametrize(
    ("text", "grams"),
    [
        ("1 1/2 kg", "1500"),
        ("1-1/2 kg", "1500"),
        ("1½ kg", "1500"),
        (".5 kg", "500"),
        ("2 x 400 g", "800"),
        ("2 × 400 g", "800"),
        ("1 lb 4 oz", "566.9904625"),
        ("  250 g ", "250"),
        ("250g", "250"),
        ("-3 g", "-3"),
        ("2 kilos", "2000"),
        ("3 GRAMS", "3"),
    ],
)
def test_amounts_as_a_cook_writes_them(text: str, grams: str) -> None:
    assert quantity(text).to("g").value == Fraction(grams)


@pytest.mark.parametrize(
    ("call", "kind", "code", "text"),
    [
        (
            lambda: quantity("1 cup"),
            scalepan.MeasureError,
            "unit.which_measures",
            "which cup is meant is not stated (measures = one of: us 236.6 mL, "
            "imperial 284.1 mL, metric 250.0 mL, au 250.0 mL)",
        ),
        (
            lambda: quantity("1 gill", measures="metric"),
            scalepan.MeasureError,
            "unit.which_measures",
            "metric measures have no gill (there are: us 118.3 mL, imperial 142.1 mL)",
        ),
        (
            lambda: quantity("1 cup", measures="uk"),
            scalepan.MeasureError,
            "unit.measures",
            'no measures are called "uk" (there are: metric, us, imperial, au)',
        ),
        (
            lambda: quantity("5 tbps"),
            scalepan.MeasureError,
            "unit.unknown",
            'unknown unit "tbps" (nearest: tbsp, tsp, lb)',
        ),
        (
            lambda: quantity("5 [cup]"),
            scalepan.MeasureError,
            "unit.unknown",
            "unknown UCUM code [cup]",
        ),
        (
            lambda: quantity("1 T"),
            scalepan.MeasureError,
            "unit.doubtful",
            '"T" can mean tbsp or tsp (write the unit out)',
        ),
        (
            lambda: quantity("1 EUR/kg/AP"),
            scalepan.MeasureError,
            "unit.doubtful",
            'what follows "/" can be read in two ways '
            "(put all that is divided by in brackets: GBP/(kg AP))",
        ),
        (
            lambda: quantity(""),
            scalepan.MeasureError,
            "amount.unreadable",
            'no number is written at the start of "" (write a number and a unit: 1 1/2 kg)',
        ),
        (
            lambda: quantity("some kg"),
            scalepan.MeasureError,
            "amount.unreadable",
            'no number is written at the start of "some kg" (write a number and a unit: 1 1/2 kg)',
        ),
        (
            lambda: quantity("1 to 2 kg"),
            scalepan.MeasureError,
            "amount.range",
            '"1 to 2 kg" is a range, where one amount is needed (write one amount)',
        ),
        (
            lambda: quantity("1,5 kg"),
            scalepan.NumberError,
            "number.comma",
            "a comma stands inside a number (write 1000 for a thousand and 1.5 for one and a half)",
        ),
        (
            lambda: quantity("1.2.3 kg"),
            scalepan.NumberError,
            "number.doubtful",
            '"1.2.3" can be read as more than one number '
            "(write one number, such as 1.5, 3/2 or 1 1/2)",
        ),
        (
            lambda: quantity("1 kg", "g"),
            scalepan.NumberError,
            "number.unreadable",
            '"kg" follows the number 1',
        ),
        (
            lambda: quantity(1, ""),
            scalepan.MeasureError,
            "unit.unreadable",
            'no unit is written in ""',
        ),
        (
            lambda: quantity(1, "g^12"),
            scalepan.MeasureError,
            "unit.power",
            "a power of a unit has one digit",
        ),
    ],
)
def test_texts_that_are_refused(
    call: Callable[[], object], kind: type[scalepan.Error], code: str, text: str
) -> None:
    with pytest.raises(kind) as caught:
        call()
    assert (caught.value.code, str(caught.value)) == (code, text)


@given(st.text(max_size=60))
def test_any_text_is_a_quantity_or_an_error_of_ours(text: str) -> None:
    try:
        amount = quantity(text, measures="us")
    except scalepan.Error as error:
        told = str(error)
    else:
        told = str(amount)
        assert quantity(told) == amount
    assert told.isprintable() or not text.isprintable()
