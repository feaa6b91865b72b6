"""The price at which another pack is the better buy, against every count tried in fractions."""

from __future__ import annotations

from fractions import Fraction
from math import ceil

import pytest
import scalepan
from dishes import HEAD
from hypothesis import given, settings
from hypothesis import strategies as st
from pack_model import PACK_GRAMS, Pack, cheapest

PACKS = st.lists(
    st.builds(Pack, st.sampled_from(PACK_GRAMS), st.integers(1, 900)),
    min_size=1,
    max_size=4,
    unique_by=lambda pack: pack.grams,
).map(tuple)


def worth(need: Fraction, grams: int, others: tuple[Pack, ...]) -> Fraction:
    """In pence: the greatest saving on the other packs that each of k packs brings."""
    alone = cheapest(need, others)[0]
    return max(
        Fraction(alone - cheapest(max(need - k * grams, Fraction(0)), others)[0], k)
        for k in range(1, ceil(need / grams) + 1)
    )


def priced(others: tuple[Pack, ...]) -> list[tuple[str, str]]:
    return [(f"{pack.grams} g", f"{pack.pence}/100") for pack in others]


@settings(max_examples=200, deadline=None)
@given(st.integers(1, 6000), st.sampled_from(PACK_GRAMS), PACKS)
def test_the_price_is_the_highest_at_which_the_pack_is_bought(
    need: int, grams: int, others: tuple[Pack, ...]
) -> None:
    even = scalepan.break_even(f"{need} g", f"{grams} g", priced(others))
    expected = worth(Fraction(need), grams, others)
    assert even.price is not None
    assert even.price.value == expected / 100
    rates = [Fraction(pack.pence, pack.grams) for pack in others]
    assert even.by_size is not None
    assert even.by_size.value == min(rates) * grams / 100
    # Below it the pack is bought, above it not; a pack of that size is first among the rows.
    for change, bought in ((Fraction(-1, 10_000), True), (Fraction(1, 10_000), False)):
        price = even.price.value + change
        if price < 0:
            continue
        text = f"{price.numerator}/{price.denominator}"
        cover = scalepan.cover(f"{need} g", [(f"{grams}.0 g", text), *priced(others)])
        assert any(pack == f"{grams}.0 g" for _, pack in cover.packs) is bought


@settings(max_examples=100, deadline=None)
@given(st.integers(1, 6000), PACKS.filter(lambda packs: len(packs) > 1), st.booleans())
def test_each_pack_of_a_costing(need: int, packs: tuple[Pack, ...], keeps: bool) -> None:
    rows = "".join(
        f"leeks,AP,{pack.grams} g,{pack.pence}/100,EUR,{'yes' if keeps else 'no'}\n"
        for pack in packs
    )
    recipe = scalepan.parse_recipe(f'name = "Pie"\nserves = 1\nlines = ["{need} g leeks"]')
    costing = scalepan.cost(recipe, scalepan.parse_prices(HEAD + rows))
    taken = {pack for _, pack in costing.shopping[0].packs}
    for i, (pack, found) in enumerate(zip(packs, costing.pack_prices("leeks"), strict=True)):
        others = packs[:i] + packs[i + 1 :]
        expected = worth(Fraction(need), pack.grams, others) / 100
        assert found.price.value == Fraction(pack.pence, 100)
        assert found.worth is not None
        assert found.worth.value == expected
        assert found.taken is (found.pack in taken)
        if found.price.value != expected:
            assert found.taken is (found.price.value < expected)
        else:
            assert found.taken is found.taken_at_worth
        assert not found.only


def test_a_large_pack_is_worth_less_than_its_size_where_it_is_not_used_up() -> None:
    # 1.2 kg: three of 500 g are 3.00, so a pack of 2 kg is worth 3.00, by its size 4.00.
    even = scalepan.break_even("1.2 kg", "2 kg", [("500 g", "1.00 EUR")])
    assert even.price == scalepan.quantity("3 EUR")
    assert even.by_size == scalepan.quantity("4 EUR")
    # At 3.00 both ways cost the same, and the small packs leave less over.
    assert not even.taken
    assert even.packs == [(3, "500 g")]


def test_at_a_tie_the_pack_that_leaves_less_is_taken() -> None:
    even = scalepan.break_even("1.2 kg", "1.2 kg", [("500 g", "1.00 EUR")])
    assert even.price == scalepan.quantity("3 EUR")
    assert even.taken
    assert even.packs == [(1, "1.2 kg")]


def test_the_only_pack_is_bought_at_any_price() -> None:
    even = scalepan.break_even("1.2 kg", "500 g", [])
    assert (even.only, even.price, even.by_size) == (True, None, None)


@pytest.mark.parametrize(
    ("need", "size", "others", "message"),
    [
        ("0 g", "1 kg", [("500 g", "1")], "nothing is needed, so no pack is bought at any price"),
        (
            "3 L",
            "1 kg",
            [("500 g", "1")],
            "a pack cannot meet the need: 3 L and 1 kg: volume and weight",
        ),
    ],
)
def test_needs_that_no_pack_meets(
    need: str, size: str, others: list[tuple[str, str]], message: str
) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.break_even(need, size, others)
    assert str(caught.value) == message


def costing_of(rows: str, line: str = "1.2 kg leeks") -> scalepan.Costing:
    recipe = scalepan.parse_recipe(f'name = "Pie"\nserves = 4\nlines = ["{line}"]')
    return scalepan.cost(recipe, scalepan.parse_prices(HEAD + rows))


def test_kinds_of_packs_compete_too() -> None:
    # Twelve eggs: by six for 3.00, or loose from the tray at 0.30 each, by the piece as well; the
    # weighed egg of the catalogue makes grams another kind.
    costing = costing_of("eggs,AP,6,1.50,EUR,yes\neggs,AP,1 kg,6.00,EUR,yes\n", "12 eggs")
    six, weighed = costing.pack_prices("eggs")
    assert (six.pack, weighed.pack) == ("6", "1 kg")
    # One kilogram is enough for twelve, so two sixes are worth 6.00 together.
    assert six.worth == scalepan.quantity("3 EUR")
    assert weighed.worth == scalepan.quantity("3 EUR")
    assert (six.only, weighed.only) == (False, False)
    assert (six.by_size, weighed.by_size) == (None, None)
    # Where both kinds cost the same, the kind of the earlier row is bought.
    assert (six.taken_at_worth, weighed.taken_at_worth) == (True, False)


EGG_PACKS = st.lists(
    st.tuples(st.sampled_from(["1", "6", "10", "300 g", "1 kg"]), st.integers(1, 900)),
    min_size=2,
    max_size=4,
    unique_by=lambda pack: pack[0],
)


@settings(max_examples=100, deadline=None)
@given(st.sampled_from(["7 large eggs", "430 g eggs", "23 large eggs"]), EGG_PACKS, st.data())
def test_a_costing_at_the_price_and_on_both_sides_of_it(
    line: str, packs: list[tuple[str, int]], data: st.DataObject
) -> None:
    """By the piece and by weight (SR28 01123): kinds that do not mix in one cover."""

    def found_at(pence: dict[str, Fraction | int]) -> dict[str, scalepan.PackPrice]:
        rows = "".join(f"eggs,AP,{pack},{Fraction(p, 100)},EUR,no\n" for pack, p in pence.items())
        return {each.pack: each for each in costing_of(rows, line).pack_prices("eggs")}

    prices = dict(packs)
    pack = data.draw(st.sampled_from(sorted(prices)))
    found = found_at(dict(prices))[pack]
    assert found.worth is not None
    worth = found.worth.value * 100
    assert found_at({**prices, pack: worth})[pack].taken is found.taken_at_worth
    assert not found_at({**prices, pack: worth + Fraction(1, 1000)})[pack].taken
    if worth > Fraction(1, 1000):
        assert found_at({**prices, pack: worth - Fraction(1, 1000)})[pack].taken


def test_an_item_goes_by_its_lines_too() -> None:
    costing = costing_of("leeks,AP,500 g,1.00,EUR,no\n")
    assert costing.pack_prices("leeks")[0].only


@pytest.mark.parametrize(
    ("rows", "line", "item", "message"),
    [
        (
            "leeks,AP,500 g,1.00,EUR,no\n",
            "1.2 kg leeks",
            "leks",
            'no item or line is called "leks" (nearest: leeks)',
        ),
        (
            "salt,AP,500 g,1.00,EUR,no\n",
            "1.2 kg leeks",
            "leeks",
            "leeks is not priced: no price row is for leeks",
        ),
    ],
)
def test_items_without_packs(rows: str, line: str, item: str, message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        costing_of(rows, line).pack_prices(item)
    assert (caught.value.code, str(caught.value)) == ("cost.item", message)
