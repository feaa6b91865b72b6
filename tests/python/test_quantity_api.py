"""What a quantity does in Python: operators, comparison, conversion, copies, texts."""

from __future__ import annotations

import copy
import pickle
from collections.abc import Callable
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
import scalepan
from scalepan import quantity
from scalepan._core import unit_rows


def test_sums_show_the_larger_unit() -> None:
    assert str(quantity("1 kg") + quantity("500 g")) == "1.5 kg"
    assert str(quantity("500 g") + quantity("1 kg")) == "1.5 kg"
    assert str(quantity("500 g") - quantity("1 kg")) == "-0.5 kg"


@pytest.mark.parametrize("number", [2, Fraction(2), Decimal(2), 2.0])
def test_a_number_multiplies_and_divides(number: Any) -> None:
    assert quantity("3 kg") * number == quantity("6 kg")
    assert number * quantity("3 kg") == quantity("6 kg")
    assert quantity("3 kg") / number == quantity("1.5 kg")


def test_a_number_over_a_quantity() -> None:
    per_gram = 1 / quantity("2 kg")
    assert per_gram * quantity("1 kg") == quantity("1/2")


def test_products_and_quotients_of_dimensions() -> None:
    price = quantity("2.10 GBP/kg")
    assert price * quantity("500 g") == quantity("1.05 GBP")
    assert quantity("1.05 GBP") / quantity("500 g") == price
    assert quantity("1 kg") / quantity("250 g") == quantity("4")


def test_percent_counts_as_a_number() -> None:
    assert quantity("50 %") * quantity("3 kg") == quantity("1.5 kg")
    assert quantity("1/4").to("%").value == 25


def test_a_literal_zero_takes_any_dimension() -> None:
    assert quantity("1 kg") + 0 == quantity("1 kg")
    assert 0 + quantity("1 kg") == quantity("1 kg")
    assert quantity("1 kg") - 0 == quantity("1 kg")
    assert 0 - quantity("1 kg") == quantity("-1 kg")
    assert quantity("1 kg") > 0
    assert not quantity("0 kg") > 0


def test_sum_adds_quantities() -> None:
    parts = [quantity("1 kg"), quantity("250 g"), quantity("1/4 kg")]
    assert sum(parts) == quantity("1.5 kg")


def test_order_goes_by_the_amount_not_the_unit() -> None:
    assert quantity("999 g") < quantity("1 kg") <= quantity("1000 g")
    assert quantity("1 lb") > quantity("453 g")
    assert quantity("1 kg") >= quantity("1000 g")
    small, large = sorted([quantity("1 lb"), quantity("400 g")])
    assert (str(small), str(large)) == ("400 g", "1 lb")


def test_equality_is_by_amount_and_dimension() -> None:
    assert quantity("1 kg") == quantity("1000 g")
    assert quantity("1 kg") != quantity("1 L")
    assert quantity("1 kg AP") != quantity("1 kg EP")
    assert quantity("1 kg") != "1 kg"
    assert quantity("1 EUR") != quantity("1 GBP")


def test_hash_goes_with_equality() -> None:
    assert len({quantity("1 kg"), quantity("1000 g"), quantity("1 kg AP"), quantity("1 L")}) == 3


def test_a_unit_is_converted_exactly() -> None:
    assert quantity("1 lb").to("g").value == Fraction("453.59237")
    assert quantity("1 kg").to("lb").value == 1000 / Fraction("453.59237")
    assert quantity("250 mL").to("cup", measures="metric").value == 1
    assert quantity("2.10 GBP/kg").to("GBP/g").value == Fraction("0.0021")


def test_a_stage_stays_where_the_unit_names_none() -> None:
    assert str(quantity("1 kg AP").to("g")) == "1000 g AP"


def test_values_are_fractions_in_the_unit_shown() -> None:
    amount = quantity("1 1/2 kg")
    assert type(amount.value) is Fraction
    assert amount.value == Fraction(3, 2)
    assert amount.unit == "kg"


def test_signs_and_truth() -> None:
    assert -quantity("2 kg") == quantity("-2 kg")
    assert abs(quantity("-2 kg")) == quantity("2 kg")
    assert quantity("1 g")
    assert not quantity("0 g")


def test_texts() -> None:
    assert str(quantity("1/3 kg")) == "1/3 kg"
    assert str(quantity("1 1/3 kg")) == "1 1/3 kg"
    assert repr(quantity("2.5 kg AP")) == "Quantity('2.5 kg AP')"
    assert repr(quantity("7")) == "Quantity('7')"


@pytest.mark.parametrize("text", ["2.5 kg AP", "1/3 lb", "4.10 EUR/(kg AP)", "7", "-3 piece"])
def test_the_text_reads_back(text: str) -> None:
    assert quantity(str(quantity(text))) == quantity(text)


def symbols() -> list[str]:
    return [row[0] for row in unit_rows()]


@pytest.mark.parametrize("symbol", [*symbols(), "EUR", "AP", "EUR/(kg AP)", "1/g", "g EP^2/AP", ""])
def test_pickles_and_copies_are_equal_and_look_alike(symbol: str) -> None:
    amount = quantity(Fraction(2**70, 3), symbol) if symbol else quantity(Fraction(2**70, 3))
    for twin in (
        pickle.loads(pickle.dumps(amount)),
        copy.copy(amount),
        copy.deepcopy([amount])[0],
    ):
        assert twin == amount
        assert hash(twin) == hash(amount)
        assert (twin.value, twin.unit, str(twin)) == (amount.value, amount.unit, str(amount))


def test_a_quantity_cannot_be_changed() -> None:
    with pytest.raises(AttributeError):
        quantity("1 kg").value = Fraction(2)  # type: ignore[misc]
    with pytest.raises(AttributeError):
        quantity("1 kg").colour = "red"  # type: ignore[attr-defined]


@pytest.mark.parametrize("other", ["1 kg", None, [], True])
def test_other_things_are_no_operands(other: Any) -> None:
    operations: list[Callable[[Any], object]] = [
        lambda q: q + other,
        lambda q: q * other,
        lambda q: other - q,
        lambda q: q < other,
    ]
    for operation in operations:
        with pytest.raises(TypeError):
            operation(quantity("1 kg"))


KG = quantity("1 kg")
STAGES = "stages AP (as purchased) and EP (edible portion)"
SHARE = "(a share links the stages: multiply by it one way, divide by it the other)"


@pytest.mark.parametrize(
    ("call", "code", "text"),
    [
        (
            lambda: KG + quantity("1 L"),
            "quantity.add",
            "cannot add 1 kg and 1 L: weight and volume",
        ),
        (lambda: KG + 1, "quantity.add", "cannot add 1 kg and 1: weight and plain number"),
        (
            lambda: KG - quantity("1 EUR"),
            "quantity.add",
            "cannot subtract 1 kg and 1 EUR: weight and money in EUR",
        ),
        (
            lambda: quantity("1 kg") < quantity("1 piece"),
            "quantity.compare",
            "cannot compare 1 kg and 1 piece: weight and count",
        ),
        (
            lambda: KG.to("L"),
            "quantity.convert",
            "cannot turn 1 kg into L: weight and volume",
        ),
        (
            lambda: quantity("1 kg AP") + quantity("1 kg EP"),
            "quantity.add",
            f"cannot add 1 kg AP and 1 kg EP: weight AP and weight EP; {STAGES} {SHARE}",
        ),
        (
            lambda: quantity("1 kg AP").to("kg EP"),
            "quantity.convert",
            f"cannot turn 1 kg AP into kg EP: weight AP and weight EP; {STAGES} {SHARE}",
        ),
        (
            lambda: quantity("1 EUR") + quantity("1 GBP"),
            "quantity.add",
            "cannot add 1 EUR and 1 GBP: money in EUR and money in GBP",
        ),
    ],
)
def test_unlike_things_do_not_meet(call: Callable[[], object], code: str, text: str) -> None:
    with pytest.raises(scalepan.MeasureError) as caught:
        call()
    assert (caught.value.code, str(caught.value)) == (code, text)


@pytest.mark.parametrize("zero", [0, quantity("0 kg"), Fraction(0)])
def test_nothing_is_divided_by_zero(zero: object) -> None:
    with pytest.raises(scalepan.NumberError) as caught:
        KG / zero  # type: ignore[operator]
    assert (caught.value.code, str(caught.value)) == (
        "number.division_by_zero",
        "division by zero",
    )


@pytest.mark.parametrize("form", [".2f", ".2", "g", "%", "08.3f", "d"])
def test_a_format_that_rounds_is_refused(form: str) -> None:
    with pytest.raises(scalepan.MeasureError) as caught:
        format(scalepan.quantity("40/3 EUR"), form)
    assert caught.value.code == "quantity.format"
    assert str(caught.value) == (
        f'the format "{form}" would round 13 1/3 EUR without a word '
        "(for people write amount.told_money; amount.value is the exact Fraction)"
    )


def test_an_amount_is_aligned_and_not_rounded() -> None:
    assert f"{scalepan.quantity('2.5 kg'):>8}" == "  2.5 kg"
    assert f"{scalepan.quantity('2.5 kg')}" == "2.5 kg"
    with pytest.raises(scalepan.MeasureError) as caught:
        round(scalepan.quantity("2.55 kg"), 1)
    assert str(caught.value) == (
        "round() would round 2.55 kg without a word "
        "(for people write amount.told; amount.value is the exact Fraction)"
    )
