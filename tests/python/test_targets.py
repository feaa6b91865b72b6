"""What a spend allows, and what drives a cost: against plain search and dishes written anew."""

from __future__ import annotations

import json
from fractions import Fraction

import pytest
import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from scalepan import quantity
from scalepan.demo import demo_files
from scalepan_command.start import main

FOODS = ("leeks", "onions", "carrots")
GRAMS = st.lists(st.integers(10, 900), min_size=3, max_size=3)
PRICES = st.lists(st.integers(20, 400), min_size=6, max_size=6)


def dish(grams: list[Fraction] | list[int], serves: int = 4) -> scalepan.Recipe:
    """Each a multiple of a hundredth."""
    hundredths = [int(mass * 100) for mass in grams]
    texts = [f"{whole // 100}.{whole % 100:02d}" for whole in hundredths]
    lines = ", ".join(f'"{text} g {food}"' for text, food in zip(texts, FOODS, strict=True))
    return scalepan.parse_recipe(f'name = "Dish"\nserves = {serves}\nlines = [{lines}]\n')


def book(cents: list[int]) -> scalepan.PriceBook:
    """Packs of 500 g and of 200 g of each food; what is left of the first food keeps."""
    rows = ["item,sold_as,pack,price,currency,keeps"]
    for i, food in enumerate(FOODS):
        keeps = "yes" if i == 0 else "no"
        rows.append(f"{food},AP,500 g,{Fraction(cents[2 * i], 100)},EUR,{keeps}")
        rows.append(f"{food},AP,200 g,{Fraction(cents[2 * i + 1], 100)},EUR,{keeps}")
    return scalepan.parse_prices("\n".join(rows))


def till_of(recipe: scalepan.Recipe, prices: scalepan.PriceBook, portions: int) -> Fraction:
    return scalepan.cost(recipe.scale(portions=portions), prices).till.value


@settings(max_examples=60, deadline=None)
@given(grams=GRAMS, cents=PRICES, spend=st.integers(50, 6000))
def test_the_most_portions_within_a_spend(grams: list[int], cents: list[int], spend: int) -> None:
    recipe, prices = dish(grams), book(cents)
    costing = scalepan.cost(recipe, prices)
    money = Fraction(spend, 100)
    if till_of(recipe, prices, 1) > money:
        with pytest.raises(scalepan.CostError) as caught:
            costing.most_portions(quantity(money, "EUR"))
        assert caught.value.code == "cost.spend"
        return
    portions = 1
    while till_of(recipe, prices, portions + 1) <= money:
        portions += 1
    found = costing.most_portions(quantity(money, "EUR"))
    assert found.portions == portions
    assert found.till.value == till_of(recipe, prices, portions)
    assert found.till_next.value == till_of(recipe, prices, portions + 1)


@settings(max_examples=60, deadline=None)
@given(grams=GRAMS, cents=PRICES, percent=st.integers(1, 50))
def test_what_more_of_an_item_adds(grams: list[int], cents: list[int], percent: int) -> None:
    prices = book(cents)
    costing = scalepan.cost(dish(grams), prices)
    drivers = costing.drivers(f"{percent} %")
    assert sum(driver.share for driver in drivers) == 1
    assert sum(driver.borne.value for driver in drivers) == costing.borne.value
    borne = [driver.borne.value for driver in drivers]
    assert borne == sorted(borne, reverse=True)
    for driver in drivers:
        more = [
            mass * (Fraction(100 + percent, 100) if food == driver.item else 1)
            for mass, food in zip(grams, FOODS, strict=True)
        ]
        larger = scalepan.cost(dish(more), prices)
        assert driver.more_till.value == larger.till.value - costing.till.value
        assert driver.more_borne.value == larger.borne.value - costing.borne.value


def test_a_pack_with_room_takes_more_for_nothing() -> None:
    # 400 g of a 500 g pack: a tenth more is 440 g, and the pack is paid already.
    costing = scalepan.cost(dish([400, 500, 200]), book([100, 99, 200, 99, 300, 120]))
    leeks = next(driver for driver in costing.drivers() if driver.item == "leeks")
    assert leeks.more_till.value == 0


PRICED = scalepan.cost(dish([400, 400, 400]), book([100, 60, 100, 60, 100, 60]))


@pytest.mark.parametrize(
    ("spend", "message"),
    [
        ("1 EUR", "one portion takes 1.80 EUR at the till, more than the 1.00 EUR to spend"),
        ("9 GBP", "the spend is 9 GBP, but the prices are in EUR (give the spend in EUR)"),
    ],
)
def test_spends_that_allow_nothing(spend: str, message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        PRICED.most_portions(spend)
    assert (caught.value.code, str(caught.value)) == ("cost.spend", message)


def test_a_spend_needs_every_price() -> None:
    prices = scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,EUR,no")
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cost(dish([400, 400, 400]), prices).most_portions("9 EUR")
    assert str(caught.value) == (
        "the till is not known: not priced: onions, carrots "
        "(add price rows for them, or leave them out of the dish)"
    )


def test_a_fixed_dish_has_no_most_portions() -> None:
    text = 'name = "Dish"\nserves = 4\nlines = ["1 kg leeks | fixed"]\n'
    prices = scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,EUR,no")
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cost(scalepan.parse_recipe(text), prices).most_portions("9 EUR")
    assert str(caught.value) == (
        "the till of 1000000 portions is still within 9.00 EUR "
        "(lines that are fixed take no more packs in a larger batch)"
    )


LIMITED = "item,sold_as,pack,price,currency,keeps,limit\nleeks,AP,1 kg,2.00,EUR,no,10\n"
# Half a kilogram a portion: 10 kg are 20 portions, for 20.00.
POT = 'name = "Dish"\nserves = 2\nlines = ["1 kg leeks"]\n'


def test_a_limit_beyond_the_spend_does_not_matter() -> None:
    prices = scalepan.parse_prices(LIMITED, file="p.csv")
    costing = scalepan.cost(scalepan.parse_recipe(POT), prices)
    found = costing.most_portions("19 EUR")
    assert (found.portions, found.till.value, found.till_next.value) == (18, 18, 20)
    with pytest.raises(scalepan.CostError) as caught:
        costing.most_portions("25 EUR")
    assert caught.value.code == "cost.spend"
    assert str(caught.value) == (
        "p.csv:2:1: 20 portions take 20.00 EUR at the till, within the 25.00 EUR to spend, but one "
        "more cannot be bought: of leeks at most 10 kg can be bought, but 10.5 kg is needed "
        "(add rows of other packs or shops)"
    )


def test_a_curve_says_at_which_size_a_limit_is_met() -> None:
    costing = scalepan.cost(
        scalepan.parse_recipe(POT), scalepan.parse_prices(LIMITED, file="p.csv")
    )
    assert list(costing.curve(portions=[2, 20]).till) == [2, 20]
    with pytest.raises(scalepan.CostError) as caught:
        costing.curve(portions=[20, 21, 22])
    assert (caught.value.code, str(caught.value)) == (
        "cost.limit",
        "p.csv:2:1: at 21 portions: of leeks at most 10 kg can be bought, but 10.5 kg is needed "
        "(add rows of other packs or shops)",
    )


def test_what_is_only_on_hand_drives_nothing_beyond_it() -> None:
    text = 'name = "Dish"\nserves = 2\nlines = ["1 kg leeks", "100 g salt"]\n'
    costing = scalepan.cost(
        scalepan.parse_recipe(text),
        scalepan.parse_prices(LIMITED),
        stock=scalepan.parse_stock("item,stage,amount,value,currency\nsalt,AP,105 g,1,EUR\n"),
    )
    assert [driver.more_till.value for driver in costing.drivers("5 %")] == [2, 0]
    with pytest.raises(scalepan.CostError) as caught:
        costing.drivers("10 %")
    assert str(caught.value) == (
        "salt is not priced at this size: no price row is for salt, and 5 g more is needed than is "
        "on hand"
    )
    with pytest.raises(scalepan.CostError) as caught:
        costing.most_portions("50 EUR")
    assert str(caught.value) == (
        "2 portions take 2.00 EUR at the till, within the 50.00 EUR to spend, but one more cannot "
        "be bought: salt is not priced at this size: no price row is for salt, and 45 g more is "
        "needed than is on hand"
    )


@pytest.mark.parametrize("more", ["0 %", "-5 %"])
def test_more_is_more(more: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        PRICED.drivers(more)
    assert (caught.value.code, str(caught.value)) == (
        "cost.more",
        f"{more} more is no more (give a share above zero, such as 10 %)",
    )


def test_the_command_prints_the_most_portions_of_the_demo(
    capsys: pytest.CaptureFixture[str],
) -> None:
    recipe, prices = demo_files()
    assert main(["spend", recipe, "--prices", prices, "--most", "75.20 EUR", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    dish, offers = scalepan.read_recipe(recipe), scalepan.read_prices(prices)
    portions = int(document["portions"])
    assert (
        till_of(dish, offers, portions) <= Fraction("75.20") < till_of(dish, offers, portions + 1)
    )
    assert sum(Fraction(driver["share"]) for driver in document["drivers"]) == 1
    assert main(["spend", recipe, "--prices", prices, "--most", "75.20 EUR"]) == 0
    printed = capsys.readouterr().out
    assert f"  {portions} portions for 75.20 EUR: the till takes " in printed
