"""Stock on hand: used first, at its value; what stays, and the books that must balance."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from scalepan_command.start import main

if TYPE_CHECKING:
    from pathlib import Path

PRICES = """item,sold_as,pack,price,currency,keeps
fennel,AP,1 kg,3.20,EUR,no
fennel,AP,250 g,1.05,EUR,no
onions,AP,1 kg,1.30,EUR,yes
butter beans,drained,400 g tin (240 g drained),0.95,EUR,no
"""
HEAD = "item,stage,amount,value,currency,use_by\n"


def recipe(*lines: str) -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(f'name = "Night pan"\nserves = 4\nlines = [{listed}]\n')


def costing(
    dish: scalepan.Recipe, stock: str, *, day: str = "", prices: str = PRICES
) -> scalepan.Costing:
    held = scalepan.parse_stock(HEAD + stock, file="larder.csv")
    return scalepan.cost(dish, scalepan.parse_prices(prices), stock=held, day=day)


def test_stock_is_used_first_at_its_value_and_only_the_rest_is_bought() -> None:
    # 1.3 kg AP are needed; 500 g worth 1.50 are on hand, 800 g are bought as 1 kg for 3.20.
    found = costing(recipe("1.3 kg AP fennel"), "fennel,AP,500 g,1.50,EUR,\n")
    row = found.shopping[0]
    assert (row.from_stock.told, row.packs) == ("500 g", [(1, "1 kg")])
    assert found.till.value == Fraction("3.20")
    assert found.opening.value == Fraction("1.50")
    assert found.used.value == Fraction("1.50") + Fraction("3.20") * 800 / 1000
    assert found.thrown.value == Fraction("3.20") * 200 / 1000
    assert found.closing.value == 0


def test_what_must_be_used_first_is_used_first_and_the_rest_stays_with_its_value() -> None:
    found = costing(
        recipe("600 g AP onions"),
        "onions,AP,2 kg,2.00,EUR,\nonions,AP,500 g,0.40,EUR,2026-12-01\n",
    )
    assert found.till.value == 0
    assert found.shopping[0].packs == []
    assert found.used.value == Fraction("0.40") + Fraction(2) * 100 / 2000
    assert found.closing.value == Fraction(2) * 1900 / 2000
    left = [(each.item, each.amount.value, each.value.value, each.bought) for each in found.left]
    assert left == [("onions", Fraction("1.9"), Fraction("1.90"), False)]


def test_stock_at_another_stage_is_counted_by_the_same_facts_as_the_line() -> None:
    # 300 g trimmed fennel are on hand; the line needs 500 g edible. The share is the food's own.
    found = costing(recipe("500 g fennel, trimmed"), "fennel,EP,300 g,2.00,EUR,\n")
    plain = scalepan.cost(recipe("200 g fennel, trimmed"), scalepan.parse_prices(PRICES))
    assert found.shopping[0].packs == plain.shopping[0].packs
    assert found.till.value == plain.till.value
    assert found.used.value - 2 == plain.used.value


def test_a_tin_on_hand_is_counted_by_what_it_holds() -> None:
    found = costing(
        recipe("480 g butter beans, drained"),
        "butter beans,drained,400 g tin (240 g drained),0.80,EUR,\n",
    )
    assert found.till.value == Fraction("0.95")
    assert found.used.value == Fraction("0.80") + Fraction("0.95")


def test_a_tin_on_hand_is_counted_by_what_its_row_says_it_drains_to() -> None:
    # Chickpeas have a drained share of their own, which is not that of a tin of 400 g and 200 g.
    tins = "chickpeas,AP,400 g tin (200 g drained),0.80,EUR,\n"
    dish = recipe("300 g chickpeas, drained")
    prices = "item,sold_as,pack,price,currency,keeps\nchickpeas,drained,1 kg,2.00,EUR,no\n"
    bought = costing(dish, tins, prices=prices)
    assert bought.shopping[0].from_stock.to("g drained").value == 200
    assert bought.used.value == Fraction("0.80") + Fraction("2.00") * 100 / 1000
    alone = costing(recipe("150 g chickpeas, drained"), tins)
    assert alone.unpriced == []
    assert alone.used.value == Fraction("0.80") * 150 / 200
    assert not any("unlike kinds" in note for note in alone.to_check)


def test_an_item_that_is_only_on_hand_needs_no_price_row() -> None:
    dish = recipe("30 g salt", "1 kg AP onions")
    found = costing(dish, "salt,AP,500 g,0.50,EUR,\n")
    assert found.unpriced == []
    assert found.used.value == Fraction("1.30") + Fraction("0.50") * 30 / 500
    short = costing(dish, "salt,AP,20 g,0.02,EUR,\n")
    assert short.unpriced == ["salt"]
    assert (
        "salt: not priced: no price row is for salt, and 10 g more is needed than is on hand"
        in short.to_check
    )


def test_what_is_on_hand_does_where_no_price_row_has_a_way() -> None:
    held = HEAD + "zorbels,AP,6,1.20,EUR,\n"
    prices = "item,sold_as,pack,price,currency,keeps\nzorbels,AP,1 kg,1.00,EUR,yes\n"
    found = scalepan.cost(
        recipe("4 zorbels"), scalepan.parse_prices(prices), stock=scalepan.parse_stock(held)
    )
    assert found.unpriced == []
    assert (found.till.value, found.used.value) == (0, Fraction("0.80"))


def test_a_curve_that_outgrows_what_is_on_hand_says_so() -> None:
    found = costing(recipe("30 g salt"), "salt,AP,50 g,0.50,EUR,\n")
    with pytest.raises(scalepan.CostError) as caught:
        found.curve(portions=[4, 8])
    assert str(caught.value) == (
        "at 8 portions: salt is not priced at this size: no price row is for salt, and 10 g more "
        "is needed than is on hand"
    )


def test_what_is_past_its_day_is_not_counted() -> None:
    stock = "onions,AP,500 g,0.40,EUR,2026-11-20\n"
    dish = recipe("600 g AP onions")
    assert costing(dish, stock, day="2026-11-20").shopping[0].from_stock.told == "500 g"
    late = costing(dish, stock, day="2026-11-21")
    assert late.shopping[0].from_stock.value == 0
    assert late.opening.value == 0
    assert (
        "onions: the 500 g on hand had to be used by 2026-11-20 and is not counted" in late.to_check
    )


def test_a_day_to_use_by_is_told_where_no_day_is_given() -> None:
    found = costing(recipe("600 g AP onions"), "onions,AP,500 g,0.40,EUR,2020-01-01\n")
    assert found.shopping[0].from_stock.told == "500 g"
    assert found.to_check == [
        "onions: the 500 g on hand must be used by 2020-01-01, and no day is given to hold that "
        "against"
    ]


def test_a_misspelt_name_on_hand_is_told() -> None:
    stock = "onoins,AP,500 g,0.40,EUR,\n"
    assert costing(recipe("600 g AP onions"), stock).to_check == [
        "onions: nothing on hand has this name (nearest: onoins)"
    ]
    assert costing(recipe("600 g AP fennel"), stock).to_check == []


def test_what_is_on_hand_of_a_close_relative_is_told_and_not_counted() -> None:
    prices = "item,sold_as,pack,price,currency,keeps\nlong-grain rice,AP,1 kg,2.00,EUR,yes\n"
    found = costing(recipe("200 g rice"), "long-grain rice,AP,500 g,0.90,EUR,\n", prices=prices)
    assert found.opening.value == 0
    assert "rice: the 500 g on hand is of long-grain rice, and is not counted" in found.to_check
    both = recipe("200 g rice", "300 g long-grain rice")
    found = costing(both, "long-grain rice,AP,500 g,0.90,EUR,\n", prices=prices)
    assert found.opening.value == Fraction("0.90")


def test_an_edible_share_that_is_assumed_of_stock_is_told() -> None:
    prices = "item,sold_as,pack,price,currency,keeps\nzorbels,AP,1 kg,1.00,EUR,yes\n"
    notes = costing(
        recipe("200 g AP zorbels"), "zorbels,EP,100 g,0.60,EUR,\n", prices=prices
    ).to_check
    assert (
        "zorbels: no edible share (EP/AP) is known, so all of the 100 g on hand is taken as edible"
        in notes
    )
    alone = costing(
        recipe("200 g AP zorbels"), "zorbels,EP,100 g,0.60,EUR,\nzorbels,AP,100 g,0.60,EUR,\n"
    )
    assert alone.used.value == Fraction("1.20")
    assert not any("left out" in note for note in alone.to_check)


def test_a_strict_cost_says_which_stock_no_share_is_known_of() -> None:
    prices = "item,sold_as,pack,price,currency,keeps\nzorbels,AP,1 kg,1.00,EUR,yes\n"
    held = scalepan.parse_stock(HEAD + "zorbels,EP,100 g,0.60,EUR,\n", file="larder.csv")
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cost(
            recipe("200 g AP zorbels"), scalepan.parse_prices(prices), stock=held, strict=True
        )
    assert str(caught.value) == (
        "larder.csv:2:1: zorbels is on hand at EP (edible portion) but counted at AP "
        "(as purchased), and no edible share links the two (add the share as a fact of your own)"
    )


def test_how_a_figure_came_about_with_stock() -> None:
    # 1.2 kg are needed and 900 g are on hand: of 300 g two packs of 250 g would be bought.
    held = "fennel,AP,900 g,0.90,EUR,\n"
    found = costing(recipe("1.2 kg AP fennel"), held)
    assert found.why("fennel.leftover").startswith(
        "fennel.leftover = 200 g AP\n  = left_of(fennel.packs)   [bought - (buy - on hand)]\n"
    )
    assert "on hand, used = 900 g AP\n" in found.why("fennel.thrown")
    enough = costing(recipe("800 g AP fennel"), held)
    assert enough.why("fennel.used").startswith(
        "fennel.used = 0.80 EUR\n"
        "  = fennel.till * used_share(fennel.packs) + stock_used(fennel.packs)"
    )


def test_stock_without_a_value_or_a_way_is_told() -> None:
    dish = recipe("600 g AP onions")
    assert (
        "onions: the 500 g on hand states no value and is counted at nothing"
        in costing(dish, "onions,AP,500 g,,,\n").to_check
    )
    assert costing(dish, "onions,AP,500 g,0,EUR,\n").to_check == []
    unlike = costing(dish, "onions,cooked,500 g,0.40,EUR,\n")
    assert unlike.shopping[0].from_stock.value == 0
    assert any(
        note.startswith("onions: the 500 g on hand is not counted: ") for note in unlike.to_check
    )


def test_stock_of_a_food_without_facts_says_what_is_missing() -> None:
    reason = "zorbels: the 1 kg on hand is not counted: no fact leads from weight AP to count AP"
    priced = "item,sold_as,pack,price,currency,keeps\nzorbels,AP,6,1.00,EUR,yes\n"
    for prices in (priced, PRICES):
        notes = costing(recipe("6 zorbels"), "zorbels,AP,1 kg,1.00,EUR,\n", prices=prices).to_check
        assert reason in notes


def test_stock_in_no_currency_says_so() -> None:
    with pytest.raises(scalepan.CostError) as caught:
        costing(recipe("600 g AP onions"), "onions,AP,500 g,0.40,,\n")
    assert str(caught.value) == (
        "larder.csv:2:1: prices in EUR (onions) and in no currency (onions) meet in one costing "
        "(name the currency in every row, or once for all rows that name none)"
    )


def test_the_money_of_stock_must_be_that_of_the_prices() -> None:
    with pytest.raises(scalepan.CostError) as caught:
        costing(recipe("600 g AP onions"), "onions,AP,500 g,0.40,GBP,\n")
    assert str(caught.value) == (
        "larder.csv:2:1: prices in EUR (onions) and in GBP (onions) meet in one costing "
        "(use one currency)"
    )


@pytest.mark.parametrize(
    ("text", "code", "message"),
    [
        (",AP,500 g,,,\n", "price.missing", "larder.csv:2:1: the row has no item"),
        ("onions,AP,,,,\n", "price.missing", "larder.csv:2:11: the row has no amount"),
        (
            "onions,raw,500 g,,,\n",
            "price.stage",
            'larder.csv:2:8: "raw" is no stage (stage is one of AP, EP, cooked, drained, served)',
        ),
        (
            "onions,AP,1 kg loose in 50 g,,,\n",
            "price.pack",
            "larder.csv:2:11: an amount on hand has no steps "
            "(write the amount alone, such as 350 g)",
        ),
        (
            "onions,AP,500 g,-1,EUR,\n",
            "price.negative",
            "larder.csv:2:17: the price -1 is below zero",
        ),
    ],
)
def test_what_is_refused(text: str, code: str, message: str) -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_stock(HEAD + text, file="larder.csv")
    assert (caught.value.code, str(caught.value)) == (code, message)


@pytest.mark.parametrize("command", ["buy", "cost"])
def test_what_is_left_is_data_too(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    pan, prices, larder = (tmp_path / name for name in ("pan.toml", "prices.csv", "larder.csv"))
    pan.write_text('name = "Night pan"\nserves = 4\nlines = ["600 g AP onions"]\n')
    prices.write_text(PRICES)
    larder.write_text(HEAD + "onions,AP,2 kg,2.00,EUR,2027-01-01\n")
    asked = [command, str(pan), "--prices", str(prices), "--on-hand", str(larder), "--json"]
    assert main(asked) == 0
    (left,) = json.loads(capsys.readouterr().out)["left"]
    assert (left["item"], left["value"]["value"], left["bought"]) == ("onions", "7/5", False)
    assert left["use_by"] == "2027-01-01"


AMOUNTS = st.integers(min_value=1, max_value=3000)


@given(AMOUNTS, AMOUNTS, st.lists(st.tuples(AMOUNTS, st.integers(0, 900)), max_size=3))
def test_the_books_balance(fennel: int, onions: int, held: list[tuple[int, int]]) -> None:
    """Opening stock + till = used + thrown + closing stock, and the till is that of the rest."""
    stock = "".join(
        f"{item},AP,{grams} g,{pence}/100,EUR,\n"
        for place, (grams, pence) in enumerate(held)
        for item in ("fennel", "onions")[place % 2 :]
    )
    dish = recipe(f"{fennel} g AP fennel", f"{onions} g AP onions")
    prices = scalepan.parse_prices(PRICES)
    if not stock:
        return
    found = costing(dish, stock)
    assert found.opening + found.till == found.used + found.thrown + found.closing
    for row, needed in zip(found.shopping, (fennel, onions), strict=True):
        grams = sum(
            amount
            for place, (amount, _) in enumerate(held)
            if row.item in ("fennel", "onions")[place % 2 :]
        )
        rest = max(0, needed - grams)
        assert row.from_stock.to("g AP").value == needed - rest
        alone = scalepan.cost(recipe(f"{rest} g AP {row.item}"), prices) if rest else None
        assert row.price == (alone.till if alone else scalepan.quantity("0 EUR"))


@settings(max_examples=60, deadline=None)
@given(
    st.integers(10, 400),
    st.lists(st.tuples(AMOUNTS, st.integers(0, 900)), min_size=1, max_size=3),
    st.integers(1, 20),
)
def test_a_curve_with_stock_is_what_each_costing_says(
    grams: int, held: list[tuple[int, int]], first: int
) -> None:
    stock = scalepan.parse_stock(
        HEAD + "".join(f"fennel,AP,{amount} g,{pence}/100,EUR,\n" for amount, pence in held)
    )
    dish = recipe(f"{grams} g AP fennel", f"{grams + 5} g onions, chopped")
    prices = scalepan.parse_prices(PRICES)
    curve = scalepan.cost(dish, prices, stock=stock).curve(portions=range(first, first + 30))
    column = curve.column("till")
    steps = memoryview(column).tolist()
    for place, portions in enumerate(range(first, first + 30)):
        single = scalepan.cost(dish.scale(portions=portions), prices, stock=stock)
        for name in ("till", "used", "thrown", "borne"):
            assert getattr(curve, name)[place] == getattr(single, name).value, (name, portions)
        assert steps[place] * column.step == single.till.value
