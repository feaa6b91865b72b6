"""Selling prices: the formulas of the trade, endings, and what is refused."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import quantity, selling_price, sold_at
from scalepan.demo import demo_files
from scalepan_command.start import main

if TYPE_CHECKING:
    from pathlib import Path

MONEY = st.fractions(min_value=Fraction(1, 100), max_value=1000, max_denominator=1000)
SHARES = st.fractions(min_value=Fraction(1, 100), max_value=1, max_denominator=100)


def euros(amount: Fraction) -> scalepan.Quantity:
    return quantity(amount, "EUR")


def test_a_price_for_a_percentage() -> None:
    # selling price = portion cost x 100 / cost % (school and college notes): 1.20 / 0.30 = 4.
    found = selling_price("1.20 EUR", food_cost="30 %", tax="7 %")
    assert found.exact.net == quantity("4 EUR")
    assert found.exact.gross == quantity("4.28 EUR")
    assert found.exact.tax == quantity("0.28 EUR")
    assert found.shelf.gross == found.exact.gross
    assert found.raised == quantity("0 EUR")


def test_a_price_raised_to_an_ending() -> None:
    shelf = selling_price("1.20 EUR", food_cost="30 %", tax="7 %", ending="0.90").shelf
    assert shelf.gross == quantity("4.90 EUR")
    net = Fraction("4.90") / Fraction("1.07")
    assert shelf.net == euros(net)
    assert shelf.food_cost_share == Fraction("1.20") / net
    assert shelf.contribution == euros(net - Fraction("1.20"))


def test_an_ending_that_is_met_stays() -> None:
    found = selling_price("1.47 EUR", food_cost="30 %", ending="0.90")
    assert found.shelf.gross == quantity("4.90 EUR")
    assert found.raised == quantity("0 EUR")


def test_endings_of_a_currency_without_cents() -> None:
    # ISO 4217 has no minor unit of the yen. 360 / 0.30 * 1.08 = 1296; the next 80 is 1380.
    found = selling_price("360 JPY", food_cost="30 %", tax="8 %", ending=80, step=100)
    assert found.exact.gross == quantity("1296 JPY")
    assert found.shelf.gross == quantity("1380 JPY")
    assert found.raised == quantity("84 JPY")
    a_portion = quantity("720 JPY") / quantity("2 portion")
    for cost in (quantity("360 JPY"), a_portion):
        with pytest.raises(scalepan.CostError) as caught:
            selling_price(cost, food_cost="30 %", ending="0.90")
        assert (caught.value.code, str(caught.value)) == (
            "sell.ending",
            "0.9 JPY is finer than the minor unit, 1 JPY: no price ends so "
            "(give an ending and a step in whole minor units)",
        )


def test_what_a_price_leaves() -> None:
    # food cost % = food cost / selling price x 100 (Ontario Pork, Costing for Foodservice);
    # gross profit % = 100 - food cost % (Failte Ireland 2012).
    sold = sold_at("1.50 GBP", "6.00 GBP", tax="20 %")
    assert sold.net == quantity("5 GBP")
    assert sold.food_cost_share == Fraction(30, 100)
    assert sold.gross_profit_share == Fraction(70, 100)
    assert sold.contribution == quantity("3.50 GBP")


def test_the_cost_of_a_costing_is_a_portion_cost() -> None:
    cost = quantity("71.40 EUR") / quantity("40 portion")
    assert selling_price(cost, food_cost="30 %").exact.net == quantity("5.95 EUR/portion")


@given(
    cost=MONEY, share=SHARES, tax=SHARES, cents=st.integers(0, 99), step=st.sampled_from([1, 5, 10])
)
def test_against_fractions(
    cost: Fraction, share: Fraction, tax: Fraction, cents: int, step: int
) -> None:
    ending = Fraction(cents, 100)
    found = selling_price(euros(cost), food_cost=share, tax=tax, ending=ending, step=step)
    exact = cost / share * (1 + tax)
    assert found.exact.gross.value == exact
    gross = found.shelf.gross.value
    assert 0 <= gross - exact < step
    assert ((gross - ending) / step).denominator == 1
    assert found.raised.value == gross - exact
    assert found.shelf.food_cost_share == cost / (gross / (1 + tax))
    assert found.shelf.food_cost_share + found.shelf.gross_profit_share == 1


@pytest.mark.parametrize(
    ("asked", "code", "message"),
    [
        (
            {"food_cost": "0 %"},
            "sell.share",
            "a food cost of 0 % of the price has no price "
            "(give a percentage above 0 and up to 100, of the price without tax)",
        ),
        (
            {"food_cost": 30},
            "sell.share",
            "a food cost of 3000 % of the price has no price "
            '(a bare number is a share of 1: for 30 per cent write "30 %")',
        ),
        (
            {"food_cost": "30 %", "tax": "-7 %"},
            "sell.tax",
            "a tax of -7 % is below zero",
        ),
        (
            {"food_cost": "30 %", "tax": 7},
            "sell.tax",
            "a tax of 700 % is more than the price that it comes on "
            '(a bare number is a share of 1: for 7 per cent write "7 %")',
        ),
        (
            {"food_cost": "30 %", "ending": "1.95"},
            "sell.ending",
            "1.95 is no ending of a price that goes by steps of 1 "
            "(give one from 0 to below the step: 0.95 by steps of 1, 80 by steps of 100)",
        ),
        (
            {"food_cost": "30 %", "ending": 0, "step": 0},
            "sell.ending",
            "prices do not go by steps of 0 (give a step above zero, such as 1 or 100)",
        ),
        (
            {"food_cost": "30 %", "ending": "0.995"},
            "sell.ending",
            "0.995 EUR is finer than the minor unit, 0.01 EUR: no price ends so "
            "(give an ending and a step in whole minor units)",
        ),
    ],
)
def test_prices_that_cannot_be_found(asked: dict[str, str], code: str, message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        selling_price("1.20 EUR", **asked)
    assert (caught.value.code, str(caught.value)) == (code, message)


@pytest.mark.parametrize(
    ("price", "message"),
    [
        ("0 EUR", "a price of 0 EUR sells nothing (give one above zero)"),
        (
            "5 GBP",
            "no food cost can be told of 1.2 EUR and 5 GBP: money in EUR and money in GBP",
        ),
    ],
)
def test_prices_that_sell_nothing(price: str, message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        sold_at("1.20 EUR", price)
    assert (caught.value.code, str(caught.value)) == ("sell.price", message)


@pytest.mark.parametrize(
    ("bill", "message"),
    [
        (
            "2 kg",
            "cash pays amounts of money, and this is 2 kg (give an amount such as 20.42 AUD)",
        ),
        (
            "1 XAU",
            "XAU has no minor unit in ISO 4217, and no coins "
            "(give an amount in a currency that is paid in cash)",
        ),
    ],
)
def test_bills_that_cash_cannot_pay(bill: str, message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cash_total(bill)
    assert (caught.value.code, str(caught.value)) == ("money.currency", message)


def test_the_command_prints_the_price_of_the_demo(capsys: pytest.CaptureFixture[str]) -> None:
    recipe, prices = demo_files()
    asked = ["--prices", prices, "--portions", "40", "--food-cost", "30 %", "--tax", "7 %"]
    assert main(["price", recipe, *asked, "--ending", "0.90", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    borne = scalepan.cost(
        scalepan.read_recipe(recipe).scale(portions=40), scalepan.read_prices(prices)
    ).per_portion("borne")
    net = borne.value / Fraction(30, 100)
    assert Fraction(document["exact"]["net"]["value"]) == net
    assert Fraction(document["exact"]["gross"]["value"]) == net * Fraction(107, 100)
    assert document["shelf"]["gross"]["value"] == "69/10"  # the next .90 above 6.36


def test_a_price_on_an_unpriced_line_is_said_to_be_too_low(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "120")
    recipe, prices = tmp_path / "dish.toml", tmp_path / "prices.csv"
    recipe.write_text('name = "Dish"\nserves = 1\nlines = ["1 egg", "100 g leeks"]\n')
    prices.write_text("item,sold_as,pack,price,currency,keeps\neggs,AP,1,0.30,EUR,yes\n")
    assert main(["price", str(recipe), "--prices", str(prices), "--food-cost", "30 %"]) == 0
    out = capsys.readouterr().out
    assert "  Too low: not priced, and so not in the food cost: leeks." in out
    # An egg of 0.30 at 30 % sells for 1.00, which leaves 0.70.
    rows = [" ".join(line.split()) for line in out.splitlines()]
    assert "net at least 1.00 EUR at least 1.00 EUR the price without tax" in rows
    assert "contribution at least 0.70 EUR at most 0.70 EUR net - food cost" in rows
    assert "food cost % 30.0 % at least 30.0 % food cost / net; gross profit is the rest" in rows


def test_the_command_shows_the_tax_and_steps_of_endings(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    recipe, prices = tmp_path / "dish.toml", tmp_path / "prices.csv"
    recipe.write_text('name = "Dish"\nserves = 1\nlines = ["1 egg"]\n')
    prices.write_text("item,sold_as,pack,price,currency,keeps\neggs,AP,1,60,JPY,yes\n")
    asked = ["price", str(recipe), "--prices", str(prices), "--food-cost", "30 %"]
    assert main([*asked, "--tax", "10 %", "--ending", "80", "--ending-step", "100"]) == 0
    rows = [" ".join(line.split()) for line in capsys.readouterr().out.splitlines()]
    assert "tax 20 JPY 25 JPY 10 % on top of it" in rows  # 280 / 11 = 25.45
    assert "gross 220 JPY 280 JPY the price with tax" in rows
    assert main([*asked, "--tax", "7"]) == 1
    assert "a tax of 700 %" in capsys.readouterr().err
