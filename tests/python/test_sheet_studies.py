"""Sweeps of a sheet, and the inputs that meet a target, against plain sums in fractions."""

from __future__ import annotations

import math
from fractions import Fraction

import pytest
import scalepan


def soup() -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    sheet.set("portions", 40)
    sheet.set("serves", 4)
    sheet.set("swede.amount", "500 g EP")
    # USDA SR28 11435, rutabagas: refuse 15 %.
    sheet.set("swede.edible", "85/100 EP/AP", source="USDA SR28 11435")
    sheet.set("swede.price", "1.80 GBP/(kg AP)", source="invented")
    sheet.define("swede.need", "swede.amount * portions / serves")
    sheet.define("swede.buy", "swede.need / swede.edible")
    sheet.define("swede.bought", "up_to_multiple(swede.buy, 500 g AP)")
    sheet.define("till", "swede.bought * swede.price")
    return sheet


def till(portions: int) -> Fraction:
    """Half kilograms of swede at 1.80 a kilogram."""
    buy = Fraction(500, 4) * portions / Fraction(85, 100)
    return math.ceil(buy / 500) * Fraction(1, 2) * Fraction(180, 100)


def test_a_sweep_gives_every_point_exactly_and_leaves_the_sheet() -> None:
    sheet = soup()
    before = sheet.ran
    swept = sheet.sweep("portions", range(1, 201), ["till", "swede.buy"])
    assert swept["till"].fractions == [till(n) for n in range(1, 201)]
    assert swept["swede.buy"].fractions == [Fraction(12500 * n, 85) for n in range(1, 201)]
    assert swept["till"].unit == "GBP"
    assert swept.kernel == "in machine words"
    assert [str(value) for value in swept.values[:2]] == ["1", "2"]
    assert sheet.ran == before
    assert sheet.value("portions").value == 40


def test_the_column_of_a_sweep_is_read_without_a_copy() -> None:
    column = soup().sweep("portions", range(1, 50), "till")["till"].column
    counts = memoryview(column)
    assert counts.readonly
    assert [count * column.step for count in counts] == [till(n) for n in range(1, 50)]


def test_values_in_other_units_and_uneven_ones_are_swept_too() -> None:
    swept = soup().sweep("swede.amount", ["100 g EP", "1/4 kg EP", "900 g EP"], "swede.need")
    assert swept["swede.need"].fractions == [1000, 2500, 9000]
    assert swept.kernel == "point by point: the values are not evenly spaced"


def test_a_point_that_fails_holds_its_error() -> None:
    swept = soup().sweep("serves", [0, 1, 2], "swede.need")
    failed, *others = swept["swede.need"].figures
    assert isinstance(failed, scalepan.NumberError)
    assert str(failed) == "swede.need:25: division by zero"
    assert [str(figure) for figure in others] == ["20000 g EP", "10000 g EP"]
    assert swept["swede.need"].fractions[0] is None
    with pytest.raises(scalepan.SheetError) as caught:
        _ = swept["swede.need"].column
    assert str(caught.value) == (
        "swede.need is no single number everywhere (take it as a list of fractions)"
    )


def test_progress_is_told_and_may_end_a_sweep() -> None:
    told: list[int] = []
    soup().sweep("serves", [1, *range(2, 4000, 3)], "swede.need", progress=told.append)
    assert told == [0, 512, 1024]

    def stop(done: int) -> None:
        raise KeyboardInterrupt

    sheet = soup()
    with pytest.raises(KeyboardInterrupt):
        sheet.sweep("serves", [1, 2, 4], "swede.need", progress=stop)
    assert sheet.value("swede.need").value == 5000


def test_the_price_that_meets_a_target() -> None:
    # 40 portions take 12 half kilograms: 6 kg for 9 GBP.
    assert math.ceil(Fraction(5000, 85) * 100 / 500) == 12
    price = soup().price_for("swede.price", "till", "9 GBP")
    assert price.to("GBP/(kg AP)").value == Fraction(3, 2)


def test_the_share_that_meets_a_target() -> None:
    share = soup().share_for("swede.edible", "swede.buy", "8 kg AP")
    assert share.value == Fraction(5, 8)
    # Ten half kilograms, and not one more, do where all of it is eaten.
    assert soup().share_for("swede.edible", "till", "9 GBP").value == 1


def test_the_size_that_keeps_to_a_spend() -> None:
    sheet = soup()
    most = max(n for n in range(1, 1001) if till(n) <= 20)
    least = min(n for n in range(1, 1001) if till(n) >= 20)
    assert sheet.size_for("till", at_most="20 GBP").value == most
    assert sheet.size_for("till", at_least=20).value == least
    assert sheet.size_for("swede.need", equal="7 kg EP").value == 56


@pytest.mark.parametrize(
    ("ask", "code", "message"),
    [
        (
            lambda s: s.share_for("swede.edible", "till", "10.80 GBP"),
            "sheet.several",
            "till is 10.80 GBP for several values of swede.edible: "
            "from 5/6 EP/AP below 10/11 EP/AP (look between values that lie closer together)",
        ),
        (
            lambda s: s.size_for("till", equal="10.30 GBP"),
            "sheet.none",
            "no value of portions that was looked at makes till 10.30 GBP "
            "(nearest: 9.9 GBP at 35 and 10.8 GBP at 38)",
        ),
        (
            lambda s: s.size_for("till"),
            "sheet.target",
            "size_for is given 0 targets (give one of equal, at_most, at_least)",
        ),
        (
            lambda s: s.values_for("portions", "till", at_most=1, equal=2, between=(1, 2)),
            "sheet.target",
            "values_for is given 2 targets (give one of equal, at_most, at_least)",
        ),
        (
            lambda s: s.sweep("till", [1], "portions"),
            "sheet.formula",
            "till is no input: it has the formula swede.bought * swede.price "
            "(choose a cell that is given or overridden)",
        ),
        (
            lambda s: s.sweep("portions", ["3 kg"], "till"),
            "sheet.dimension",
            "portions is plain number, and 3 kg is weight",
        ),
        (
            lambda s: s.price_for("swede.price", "till", "3 kg"),
            "sheet.dimension",
            "till is money in GBP, and 3 kg is weight",
        ),
    ],
)
def test_what_has_no_answer_says_so(ask, code: str, message: str) -> None:
    with pytest.raises(scalepan.SheetError) as caught:
        ask(soup())
    assert caught.value.code == code
    assert str(caught.value) == message


def test_a_way_that_cannot_be_turned_round_says_why() -> None:
    sheet = soup()
    sheet.define("square", "portions * portions")
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.input_for("portions", "square", 16, between=(1, 10))
    assert str(caught.value) == (
        "how square follows from portions cannot be turned round: figures that both follow from it "
        "are multiplied (sweep portions over the values that come into question)"
    )
