"""Selling prices: the formulas of the trade, endings, and what is refused."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import quantity, selling_price, sold_at

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


@given(cost=MONEY, share=SHARES, tax=SHARES, cents=st.integers(0, 99))
def test_against_fractions(cost: Fraction, share: Fraction, tax: Fraction, cents: int) -> None:
    ending = Fraction(cents, 100)
    found = selling_price(euros(cost), food_cost=share, tax=tax, ending=ending)
    exact = cost / share * (1 + tax)
    assert found.exact.gross.value == exact
    gross = found.shelf.gross.value
    assert 0 <= gross - exact < 1
    assert (gross - ending).denominator == 1
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
            "(give a percentage above 0 and up to 100, of the price without tax)",
        ),
        (
            {"food_cost": "30 %", "tax": "-7 %"},
            "sell.tax",
            "a tax of -7 % is below zero",
        ),
        (
            {"food_cost": "30 %", "ending": "1.95"},
            "sell.ending",
            "1.95 is no ending of a price "
            "(give what stands behind the whole units, such as 0.95 or 0)",
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
