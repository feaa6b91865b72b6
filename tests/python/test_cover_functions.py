"""Cover functions from Python: covers, steps, limits, and one error for each mistake.

Prices are invented.
"""

from __future__ import annotations

from concurrent.futures import ThreadPoolExecutor
from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import Purchase

TWO = [("500 g", "1.00 EUR"), ("200 g", "0.45 EUR")]


def grams(quantity: scalepan.Quantity | None) -> Fraction:
    assert quantity is not None
    return quantity.to("g").value


def test_a_function_is_asked_for_any_need() -> None:
    function = scalepan.cover_function(TWO)
    assert function.at("600 g").packs == [(3, "200 g")]
    assert function.at(scalepan.quantity("600 g")).packs == [(3, "200 g")]
    # 10^30 g are 2 * 10^27 packs of 500 g.
    huge = function.at(scalepan.quantity(f"{10**30} g"))
    assert huge.packs == [(2 * 10**27, "500 g")]
    assert huge.price.value == 2 * 10**27
    assert repr(function) == "<CoverFunction, steps in words>"


def test_its_steps_say_where_the_packs_change() -> None:
    function = scalepan.cover_function(TWO)
    steps = function.steps("0 g", "0.7 kg")
    assert [grams(step.upto) for step in steps] == [200, 400, 500, 600, 700]
    assert [grams(step.after) for step in steps] == [0, 200, 400, 500, 600]
    assert [step.cover.price.value for step in steps] == [
        Fraction(pence, 100) for pence in (45, 90, 100, 135, 145)
    ]
    assert repr(steps[2]) == "<CoverStep above 0.4 kg up to 0.5 kg: 1 x 500 g = 1 EUR>"
    assert grams(function.period) == 500
    # 5 x 200 g cost more than 2 x 500 g, 4 x 200 g less than 500 g and 2 x 200 g.
    assert grams(function.repeats_above) == 800
    assert function.most is None


def test_three_for_two_and_a_lower_price_from_six_on() -> None:
    function = scalepan.cover_function(
        [
            ("400 g", "1.20"),
            Purchase(size="400 g", price="2.40", packs=3, row=0),
            Purchase(size="400 g", price="0.70", least=6, row=0),
        ]
    )
    assert function.at(scalepan.quantity("800 g")).packs == [(2, "400 g")]
    three = function.at(scalepan.quantity("1.2 kg"))
    assert (three.packs, three.price.value) == ([(3, "400 g")], Fraction("2.4"))
    # Five as three and two singles cost 4.80, six at the lower price 4.20.
    six = function.at(scalepan.quantity("2 kg"))
    assert (six.packs, six.price.value) == ([(6, "400 g")], Fraction("4.2"))


def test_a_limit_ends_in_one_clear_error() -> None:
    function = scalepan.cover_function([Purchase(size="1.5 kg", price="2", limit=2)])
    assert function.most == scalepan.quantity("3 kg")
    assert function.period is None
    assert function.at(scalepan.quantity("3 kg")).packs == [(2, "1.5 kg")]
    with pytest.raises(scalepan.PriceError) as caught:
        function.at(scalepan.quantity("3.5 kg"))
    assert caught.value.code == "cover.limit"
    assert str(caught.value) == (
        "at most 3 kg can be bought within the limits, but 3.5 kg is needed "
        "(raise a limit, add a pack, or buy for a smaller need)"
    )


def test_the_leftover_may_go_before_the_price() -> None:
    packs = [("500 g", "1.00"), ("200 g", "0.60")]
    need = scalepan.quantity("400 g")
    assert scalepan.cover_function(packs).at(need).packs == [(1, "500 g")]
    assert scalepan.cover_function(packs, order="leftover").at(need).packs == [(2, "200 g")]


@pytest.mark.parametrize(
    ("packs", "code", "message"),
    [
        ([], "cover.no_packs", "there is no pack to choose from"),
        (
            [Purchase(size="1 kg", price="1", packs=0)],
            "cover.count",
            "the number of packs in a purchase must be a whole number above zero, not 0",
        ),
        (
            [Purchase(size="1 kg", price="1", least=6, limit=5)],
            "cover.count",
            "at least 6 must be bought, but at most 5 may be",
        ),
        (
            [Purchase(size="1 kg", price="1", row=1)],
            "cover.row",
            "there are 1 purchases, so none is of row 1 (rows are counted from 0, one a pack)",
        ),
        (
            [Purchase(size="1 kg", price="1", row=-1)],
            "cover.row",
            "there is no row -1 (rows are counted from 0)",
        ),
        (
            [("1 kg", "1"), ("1 L", "1")],
            "cover.dimension",
            "packs of two kinds meet: 1 kg and 1 L: weight and volume",
        ),
    ],
)
def test_packs_that_cannot_be(packs: list[Purchase], code: str, message: str) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.cover_function(packs)
    assert (caught.value.code, str(caught.value)) == (code, message)


def test_an_unknown_order_is_refused() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.cover_function(TWO, order="size")  # type: ignore[arg-type]
    assert caught.value.code == "cover.order"
    assert str(caught.value) == ('no order of covers is called "size" (there are: price, leftover)')


def test_a_need_of_another_kind_is_refused() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.cover_function(TWO).at(scalepan.quantity("1 L"))
    assert caught.value.code == "cover.dimension"
    assert str(caught.value) == "a pack cannot meet the need: 1 L and 500 g: volume and weight"


def test_a_function_is_shared_by_threads() -> None:
    packs = [(f"{size} g", f"{3 * size + off}") for size, off in ((997, 1), (1409, -2), (877, 1))]
    function = scalepan.cover_function(packs)
    needs = [scalepan.quantity(f"{57 * i} g") for i in range(1, 400)]
    with ThreadPoolExecutor(4) as pool:
        found = list(pool.map(function.at, needs))
    alone = scalepan.cover_function(packs)
    assert [cover.packs for cover in found] == [alone.at(need).packs for need in needs]


PACKS = st.lists(st.tuples(st.integers(1, 40), st.integers(0, 60)), min_size=1, max_size=5)


@given(PACKS, st.fractions(0, 300, max_denominator=12))
def test_a_function_and_a_single_cover_agree(packs: list[tuple[int, int]], need: Fraction) -> None:
    offers = [(f"{size} g", f"{price}") for size, price in packs]
    wanted = scalepan.quantity(need, "g")
    single = scalepan.cover(wanted, offers)
    found = scalepan.cover_function(offers).at(wanted)
    assert (found.packs, found.price, found.leftover) == (
        single.packs,
        single.price,
        single.leftover,
    )
    assert found.leftover.value >= 0


@given(PACKS, st.integers(1, 2000))
def test_no_grid_changes_an_answer(packs: list[tuple[int, int]], need: int) -> None:
    """Grams as pounds: every size and the need times 45359237/100000."""
    pound = Fraction(45359237, 100000)
    plain = scalepan.cover_function([(f"{size} g", f"{price}") for size, price in packs])
    scaled = scalepan.cover_function(
        [(scalepan.quantity(size * pound, "g"), f"{price}") for size, price in packs]
    )
    counts = [count for count, _ in plain.at(scalepan.quantity(need, "g")).packs]
    assert counts == [count for count, _ in scaled.at(scalepan.quantity(need * pound, "g")).packs]
