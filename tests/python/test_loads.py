"""Loads in Python: what holds of every split, pans as capacities, errors, and the command.

Expected figures are worked out by hand beside each check; the kitchen is invented.
"""

from __future__ import annotations

import json
from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import loads, quantity
from scalepan_command.start import main

WEIGHTS = st.fractions(min_value=0, max_value=10**6, max_denominator=1000)
CAPACITIES = st.fractions(min_value=Fraction(1, 1000), max_value=10**4, max_denominator=1000)


def test_full_loads_and_a_short_one() -> None:
    # 13 = 3 x 4 + 1.
    split = loads("13 kg", "4 kg")
    assert split.parts == [(3, quantity("4 kg")), (1, quantity("1 kg"))]
    assert (split.count, split.full) == (4, 3)
    assert (split.each, split.short) == (quantity("4 kg"), quantity("1 kg"))
    assert str(split) == split.text == "3 loads of 4 kg and one of 1 kg"
    assert repr(split) == "<Loads 3 loads of 4 kg and one of 1 kg>"


def test_equal_loads_of_pieces_stay_whole() -> None:
    # 52 = 2 x 11 + 3 x 10.
    split = loads(52, 12, equal=True)
    assert split.parts == [(2, quantity(11)), (3, quantity(10))]
    assert split.full == 0


@given(WEIGHTS, CAPACITIES, st.booleans())
def test_weights_are_shared_out_exactly(total: Fraction, capacity: Fraction, equal: bool) -> None:
    split = loads(quantity(total, "kg"), quantity(capacity, "kg"), equal)
    parts = [(count, each.to("kg").value) for count, each in split.parts]
    assert sum(count * each for count, each in parts) == total
    assert all(count > 0 and 0 < each <= capacity for count, each in parts)
    assert split.count == -(-total // capacity)
    assert split.full == sum(count for count, each in parts if each == capacity)
    if equal:
        assert len(parts) <= 1
    else:
        assert sum(count for count, each in parts if each < capacity) <= 1


@given(st.integers(0, 10**30), st.fractions(1, 10**6, max_denominator=100), st.booleans())
def test_counts_are_shared_out_whole(total: int, capacity: Fraction, equal: bool) -> None:
    split = loads(quantity(total, "piece"), quantity(capacity, "piece"), equal)
    parts = [(count, each.value) for count, each in split.parts]
    assert sum(count * each for count, each in parts) == total
    assert all(each.denominator == 1 and 0 < each <= capacity for _, each in parts)
    assert split.count == -(-total // (capacity // 1))
    if equal and parts:
        assert parts[0][1] - parts[-1][1] in (0, 1)


@given(st.integers(0, 500), st.integers(1, 90))
def test_in_turn_is_as_often_as_there_are_loads(portions: int, minutes: int) -> None:
    split = loads(quantity(portions, "portion"), "12 portions")
    assert split.in_turn(f"{minutes} min") == quantity(split.count * minutes, "min")


def test_a_pan_stands_for_the_volume_its_source_gives() -> None:
    # The maker's table: GN 1/1 65 holds 7.4 L; 30 = 4 x 7.4 + 0.4.
    expected = "4 loads of 7.4 L and one of 400 mL"
    assert loads("30 L", "GN 1/1 65").text == expected
    assert loads("30 L", scalepan.pan("gn 1/1 65")).text == expected
    # 30 = 5 x 6.
    own = scalepan.pan("40 x 30 x 6 cm", volume="6 L")
    assert loads("30 L", own).text == "5 loads of 6 L"


def refusal(total: str, capacity: str | scalepan.Pan) -> str:
    with pytest.raises(scalepan.MeasureError) as caught:
        loads(total, capacity)
    return f"{caught.value.code}: {caught.value}"


def test_what_cannot_be_shared_out() -> None:
    assert refusal("13 kg", "4 L") == (
        "load.kind: no loads can be made of 13 kg and 4 L: weight and volume"
    )
    assert refusal("13 kg EP", "4 kg") == (
        "load.kind: no loads can be made of 13 kg EP and 4 kg: weight EP and weight; stages EP "
        "(edible portion) and no stage (state the stage of both)"
    )
    assert refusal("13 kg", "0 kg") == (
        "load.capacity: a load of 0 kg holds nothing (give what a load holds at most)"
    )
    assert refusal("-13 kg", "4 kg") == (
        "load.negative: a total below zero has no loads, and -13 kg is"
    )
    assert refusal("2.5 pieces", "2 pieces") == (
        "load.whole: 2.5 piece is no whole number, and counts are shared out whole "
        "(round it to a whole number, or share out its weight)"
    )
    assert refusal("30 kg", "GN 1/1 65") == (
        "load.kind: no loads can be made of 30 kg and 7.4 L: weight and volume"
    )


def test_pans_that_are_unknown_or_of_unknown_volume() -> None:
    assert refusal("30 L", "GN 1/1 66") == (
        'pan.unknown: no pan is called "GN 1/1 66" (nearest: GN 1/1 20, GN 1/1 40, GN 1/1 65; '
        "a pan of your own is written as 30 x 20 x 6 cm)"
    )
    assert refusal("30 L", scalepan.pan("40 x 30 x 6 cm")) == (
        'pan.no_volume: no source says what "40 x 30 x 6 cm" holds, and its size does not tell '
        '(fill it with measured water and give that: pan("40 x 30 x 6 cm", volume="3.2 L"))'
    )


def test_a_time_must_be_one() -> None:
    with pytest.raises(scalepan.MeasureError) as caught:
        loads("13 kg", "4 kg").in_turn("30 g")
    assert str(caught.value) == (
        "a load takes a time, and 30 g is of the kind weight (write it as 30 min)"
    )


def test_the_command_tells_loads_and_time(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    assert main(["loads", "13 kg", "4 kg"]) == 0
    assert capsys.readouterr().out == (
        "13 kg, at most 4 kg a load = 3 loads of 4 kg and one of 1 kg\n"
    )
    assert main(["loads", "52", "12", "--equal", "--time", "30 min"]) == 0
    assert capsys.readouterr().out == (
        "52, at most 12 a load = 2 loads of 11 and 3 of 10\n"
        "  one after the other, 30 min a load: 150 min = 2 1/2 h\n"
        "  * the time of a load is the cook's own figure and is never scaled: separate\n"
        "    pieces take as long as one, big pots heat slower (common practice; Gisslen,\n"
        "    Professional Cooking)\n"
    )


def test_the_command_in_json_is_exact(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["loads", "10 kg", "1.5 kg", "--equal", "--time", "1/3 h", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    # Seven loads of 10/7 kg, 7/3 h.
    assert document == {
        "schema": "scalepan/1",
        "text": "7 loads of ≈ 1.429 kg",
        "count": 7,
        "full": 0,
        "capacity": {"value": "3/2", "unit": "kg", "told": "1.5 kg"},
        "each": {"value": "10/7", "unit": "kg", "told": "≈ 1.429 kg"},
        "short": {"value": "10/7", "unit": "kg", "told": "≈ 1.429 kg"},
        "parts": [{"count": 7, "each": {"value": "10/7", "unit": "kg", "told": "≈ 1.429 kg"}}],
        "in_turn": {"value": "7/3", "unit": "h", "told": "2 1/3 h"},
        "pan": None,
    }


def test_the_command_tells_what_a_pan_holds_and_who_says_so(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    assert main(["loads", "3 gal", "baking pan 13 x 9 x 2 inch", "--measures", "us"]) == 0
    # 3 gal are 48 cups, 3 x 14 + 6.
    assert capsys.readouterr().out == (
        "3 gal, at most 14 cups a load = 3 loads of 14 cups and one of 6 cups\n"
        "  * baking pan 13 x 9 x 2 inch holds 14 cups   [Time Inc., sheet of pan volumes\n"
        "    (2008)]\n"
    )
    assert main(["loads", "30 L", "GN 1/1 65", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert document["capacity"] == {"value": "37/5", "unit": "L", "told": "7.4 L"}
    assert document["pan"]["name"] == "GN 1/1 65"
    assert document["pan"]["source"].startswith("maker's table of gastronorm containers")


def test_the_command_refuses_clearly(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["loads", "13 kg", "4 L"]) == 1
    assert capsys.readouterr().err == (
        "scalepan: no loads can be made of 13 kg and 4 L: weight and volume [load.kind]\n"
    )
    assert main(["loads", "5 cup", "2 cup", "--measures", "us"]) == 0
    assert capsys.readouterr().out == (
        "5 cup, at most 2 cup a load = 2 loads of 2 cups and one of 1 cup\n"
    )
