"""Several dishes bought together, against arithmetic with fractions and packs tried one by one.

Dishes and prices are invented, for a kitchen that cooks for the watches of an observatory.
"""

from __future__ import annotations

import time
from dataclasses import dataclass
from fractions import Fraction

import pytest
import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from pack_model import PACK_GRAMS, REFUSE, Pack, cheapest

HEAD = "item,sold_as,pack,price,currency,keeps\n"


@dataclass(frozen=True)
class Shelf:
    packs: tuple[Pack, ...]
    keeps: bool


@dataclass(frozen=True)
class ModelLine:
    food: str
    grams: int
    trimmed: bool

    def need(self, factor: Fraction) -> Fraction:
        edible = Fraction(100 - REFUSE[self.food], 100) if self.trimmed else Fraction(1)
        return self.grams * factor / edible


@dataclass(frozen=True)
class ModelDish:
    lines: tuple[ModelLine, ...]
    serves: int
    portions: Fraction

    @property
    def needs(self) -> dict[str, Fraction]:
        return {line.food: line.need(self.portions / self.serves) for line in self.lines}


@dataclass(frozen=True)
class Bill:
    """Of one item, for all that need it."""

    till: Fraction
    used: Fraction
    rest: Fraction
    need: Fraction


SHELVES = st.fixed_dictionaries(
    {
        food: st.builds(
            Shelf,
            st.lists(
                st.builds(Pack, st.sampled_from(PACK_GRAMS), st.integers(1, 900)),
                min_size=1,
                max_size=3,
                unique_by=lambda pack: pack.grams,
            ).map(tuple),
            st.booleans(),
        )
        for food in REFUSE
    }
)
LINES = st.lists(
    st.builds(ModelLine, st.sampled_from(sorted(REFUSE)), st.integers(1, 900), st.booleans()),
    min_size=1,
    max_size=4,
    unique_by=lambda line: line.food,
).map(tuple)
PORTIONS = st.one_of(
    st.integers(1, 12).map(Fraction), st.fractions(Fraction(1, 4), 8, max_denominator=8)
)
DISHES = st.lists(st.builds(ModelDish, LINES, st.integers(1, 8), PORTIONS), min_size=1, max_size=5)


def book(shelves: dict[str, Shelf]) -> scalepan.PriceBook:
    rows = "".join(
        f"{food},AP,{pack.grams} g,{pack.pence}/100,GBP,{'yes' if shelf.keeps else 'no'}\n"
        for food, shelf in shelves.items()
        for pack in shelf.packs
    )
    return scalepan.parse_prices(HEAD + rows)


def recipe_of(dish: ModelDish, number: int) -> scalepan.Recipe:
    lines = ", ".join(
        f'"{line.grams} g {line.food}{", trimmed" if line.trimmed else ""}"' for line in dish.lines
    )
    text = f'name = "Dish {number}"\nserves = {dish.serves}\nlines = [{lines}]\n'
    return scalepan.parse_recipe(text).scale(portions=dish.portions)


def bill_of(need: Fraction, shelf: Shelf) -> Bill:
    pence, grams = cheapest(need, shelf.packs)
    till = Fraction(pence, 100)
    used = till * need / grams
    return Bill(till, used, till - used, need)


@settings(max_examples=150, deadline=None)
@given(DISHES, SHELVES)
def test_baskets_equal_the_arithmetic(dishes: list[ModelDish], shelves: dict[str, Shelf]) -> None:
    pooled: dict[str, Fraction] = {}
    for dish in dishes:
        for food, need in dish.needs.items():
            pooled[food] = pooled.get(food, Fraction(0)) + need
    bills = {food: bill_of(need, shelves[food]) for food, need in pooled.items()}
    recipes = [recipe_of(dish, i) for i, dish in enumerate(dishes)]
    bought = scalepan.basket(recipes, book(shelves))

    assert bought.till.value == sum(bill.till for bill in bills.values())
    assert bought.used.value == sum(bill.used for bill in bills.values())
    thrown = sum(bill.rest for food, bill in bills.items() if not shelves[food].keeps)
    assert bought.thrown.value == thrown
    rows = {row.item: row for row in bought.shopping}
    assert rows.keys() == bills.keys()
    for food, row in rows.items():
        users = [i for i, dish in enumerate(dishes) if food in dish.needs]
        assert [each.dish for each in row.dishes] == [f"Dish {i}" for i in users]
        assert [each.need.to("g").value for each in row.dishes] == [
            dishes[i].needs[food] for i in users
        ]
    for dish, charged in zip(dishes, bought.dishes, strict=True):
        shares = {food: need / pooled[food] for food, need in dish.needs.items()}
        assert charged.till.value == sum(bills[f].till * share for f, share in shares.items())
        assert charged.used.value == sum(bills[f].used * share for f, share in shares.items())
        assert charged.thrown.value == sum(
            bills[f].rest * share for f, share in shares.items() if not shelves[f].keeps
        )
        alone = [bill_of(need, shelves[food]) for food, need in dish.needs.items()]
        assert charged.apart.till.value == sum(bill.till for bill in alone)
        assert charged.saving.value == charged.apart.till.value - charged.till.value


@settings(max_examples=150, deadline=None)
@given(DISHES, SHELVES)
def test_dishes_come_to_the_basket_and_it_is_never_dearer_than_apart(
    dishes: list[ModelDish], shelves: dict[str, Shelf]
) -> None:
    recipes = [recipe_of(dish, i) for i, dish in enumerate(dishes)]
    prices = book(shelves)
    bought = scalepan.basket(recipes, prices)
    apart = [scalepan.cost(recipe, prices) for recipe in recipes]
    for name in ("till", "used", "thrown", "borne", "closing"):
        whole = getattr(bought, name).value
        assert sum(getattr(dish, name).value for dish in bought.dishes) == whole
        for dish, alone in zip(bought.dishes, apart, strict=True):
            assert getattr(dish.apart, name) == getattr(alone, name)
    for each in (bought, *bought.dishes):
        assert each.till == each.used + each.thrown + each.closing
        assert each.borne == each.used + each.thrown
    assert bought.apart_till.value == sum(alone.till.value for alone in apart)
    assert bought.apart_borne.value == sum(alone.borne.value for alone in apart)
    assert bought.saving == bought.apart_till - bought.till
    assert bought.saving_borne == bought.apart_borne - bought.borne
    assert bought.saving >= 0
    for dish in bought.dishes:
        assert dish.per_portion("till").value * dish.portions == dish.till.value


def dish(name: str, *lines: str, serves: int = 4, extra: str = "") -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(
        f'name = "{name}"\nserves = {serves}\n{extra}\nlines = [{listed}]\n'
    )


def prices(*rows: str) -> scalepan.PriceBook:
    return scalepan.parse_prices(HEAD + "\n".join(rows), file="prices.csv")


def test_two_dishes_that_each_need_half_a_tin_pay_for_one_tin() -> None:
    tin = prices("chickpeas,drained,400 g tin (240 g drained),0.90,EUR,no")
    dishes = [dish("Stew", "120 g chickpeas, drained"), dish("Salad", "120 g chickpeas, drained")]
    bought = scalepan.basket(dishes, tin)
    ((count, _),) = bought.shopping[0].packs
    assert (count, bought.till.value) == (1, Fraction("0.90"))
    assert [each.till.value for each in bought.dishes] == [Fraction("0.45"), Fraction("0.45")]
    # Apart, each pays a tin and throws half of it away.
    assert bought.apart_till.value == Fraction("1.80")
    assert bought.saving.value == Fraction("0.90")
    assert bought.saving_borne.value == Fraction("0.90")
    assert bought.thrown.value == 0


def test_what_is_thrown_is_shared_by_use() -> None:
    leeks = prices("leeks,AP,1 kg,2.00,EUR,no")
    bought = scalepan.basket([dish("Pie", "600 g leeks"), dish("Broth", "200 g leeks")], leeks)
    assert [each.thrown.value for each in bought.dishes] == [Fraction("0.30"), Fraction("0.10")]
    assert [each.borne.value for each in bought.dishes] == [Fraction("1.50"), Fraction("0.50")]


def test_lines_of_one_id_stay_apart() -> None:
    nothing = prices("salt,AP,1 kg,0.60,EUR,yes")
    bought = scalepan.basket([dish("Pie", "600 g leeks"), dish("Broth", "200 g leeks")], nothing)
    assert bought.unpriced == ["pie.leeks", "broth.leeks"]
    assert bought.to_check == [
        "pie.leeks, broth.leeks: not priced: no price row is for leeks",
    ]


def test_a_base_of_two_dishes_is_charged_to_each_by_its_use() -> None:
    # 1 kg of stock from 500 g of onions: the pie takes 2/5 of it, the broth 1 kg.
    stock = '{ name = "Stock", serves = 1, makes = "1 kg", lines = ["500 g onions"] }'
    base = f"bases = {{ stock = {stock} }}"
    pie = dish("Pie", "2/5 of the stock", extra=base)
    broth = dish("Broth", "1 kg stock", extra=base)
    bought = scalepan.basket([pie, broth], prices("onions,AP,700 g,1.40,EUR,no"))
    assert bought.till.value == Fraction("1.40")
    assert [each.till.value for each in bought.dishes] == [Fraction("0.40"), Fraction("1.00")]
    assert bought.shopping[0].lines == ["pie.stock.onions", "broth.stock.onions"]


def test_each_dish_keeps_to_its_own_names() -> None:
    # Cornflour is starch in Britain and meal in the United States, and the row is each one's own.
    chosen = [
        dish("Sauce", "50 g cornflour", extra='region = "GB"'),
        dish("Bread", "450 g cornflour", extra='region = "US"'),
    ]
    foods = [line.food_id for each in chosen for line in each.lines]
    assert foods == ["corn_starch", "corn_flour_wholegrain"]
    bought = scalepan.basket(chosen, prices("cornflour,AP,500 g,1.00,EUR,yes"))
    assert [row.lines for row in bought.shopping] == [["sauce.cornflour"], ["bread.cornflour"]]
    assert (bought.till.value, bought.unpriced) == (2, [])


def test_dishes_of_unlike_catalogues_are_pooled_each_by_its_own_facts() -> None:
    # 132 g of leeks trimmed: by SR28 11246 44 % are edible, by the cook's own trials 66 %.
    own = {
        "fact": "leeks.edible.own",
        "food": "leeks",
        "kind": "edible",
        "from_stage": "AP",
        "to_stage": "EP",
        "value": "0.66 EP/AP",
        "source": "own trials",
    }
    text = 'name = "Broth"\nserves = 4\nlines = ["132 g leeks, trimmed"]\n'
    broth = scalepan.parse_recipe(text, catalog=scalepan.catalog_with([own]))
    pie = dish("Pie", "132 g leeks, trimmed")
    bought = scalepan.basket([pie, broth], prices("leeks,AP,500 g,1.00,EUR,no"))
    (row,) = bought.shopping
    assert [each.need.to("g").value for each in row.dishes] == [300, 200]
    assert row.packs == [(1, "500 g")]
    assert [each.till.value for each in bought.dishes] == [Fraction("0.60"), Fraction("0.40")]


def test_rows_that_only_one_catalogue_knows_are_that_dish_s_own() -> None:
    # The row is coriander: leaf by the first recipe's choice, of no one food for the second.
    chosen = [
        dish("Sauce", "60 g coriander", extra='names = { coriander = "coriander_leaf" }'),
        dish("Salad", "60 g fresh coriander"),
    ]
    rows = ("coriander,AP,50 g,0.50,EUR,no", "fresh coriander,AP,100 g,1.50,EUR,no")
    bought = scalepan.basket(chosen, prices(*rows))
    assert [row.packs for row in bought.shopping] == [[(2, "50 g")], [(1, "100 g")]]
    assert bought.till.value == Fraction("2.50")


def test_grams_and_bunches_are_two_lots() -> None:
    # No fact gives the weight of a bunch: together neither would have a price.
    herbs = [
        dish("Pie", "60 g parsley"),
        dish("Broth", "40 g parsley"),
        dish("Salad", "2 bunches parsley"),
    ]
    book_ = prices("parsley,AP,100 g,1.50,EUR,no", "parsley,AP,1 bunch,0.80,EUR,no")
    bought = scalepan.basket(herbs, book_)
    assert bought.unpriced == []
    assert bought.till.value == Fraction("3.10")
    assert [row.packs for row in bought.shopping] == [[(1, "100 g")], [(2, "1 bunch")]]
    assert bought.saving.value == Fraction("1.50")
    assert bought.to_check[-1] == (
        "parsley: not bought in one lot, since one kind of pack or one set of price rows does not "
        "meet all lines as cheaply: pie.parsley, broth.parsley; salad.parsley"
    )


def test_one_lot_where_a_kind_that_a_dish_alone_would_not_take_meets_both() -> None:
    # Alone, the small dish takes one egg for 0.30; the tray of thirty has room for it.
    book_ = prices("eggs,AP,1,0.30,EUR,yes", "eggs,AP,30,6.00,EUR,yes")
    bought = scalepan.basket([dish("Crust", "1 egg"), dish("Cake", "29 eggs")], book_)
    assert (bought.till.value, bought.apart_till.value) == (Fraction("6.00"), Fraction("6.30"))


def test_an_unpriced_line_of_one_dish_leaves_the_price_of_the_other() -> None:
    # Nothing is known of samphire, so that two of them are of no weight.
    book_ = prices("samphire,AP,100 g,1.25,EUR,no")
    bought = scalepan.basket([dish("Pie", "150 g samphire"), dish("Salad", "2 samphires")], book_)
    assert bought.unpriced == ["salad.samphires"]
    assert bought.till.value == Fraction("2.50")


@pytest.mark.parametrize(
    ("dishes", "message"),
    [
        ([], "the basket has no dishes (name at least one)"),
        (
            [dish("Leek pie", "1 kg leeks"), dish("Leek-pie", "2 kg leeks")],
            'two dishes have the id leek_pie: "Leek pie" and "Leek-pie" '
            "(give one of them another name)",
        ),
        (
            [dish("!!!", "1 kg leeks")],
            'the name of a dish has no letter or digit: "!!!" (give the dish another name)',
        ),
    ],
)
def test_dishes_that_are_none(dishes: list[scalepan.Recipe], message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.basket(dishes, prices("leeks,AP,1 kg,2,EUR,no"))
    assert str(caught.value) == message
    assert caught.value.code.startswith("basket.")


def test_one_recipe_twice_under_two_names() -> None:
    pie = dish("Pie", "500 g leeks")
    bought = scalepan.basket(
        [pie, scalepan.Dish(pie.scale(portions=2), "Late pie")],
        prices("leeks,AP,250 g,1.00,EUR,no"),
    )
    assert [each.name for each in bought.dishes] == ["Pie", "Late pie"]
    assert [each.portions for each in bought.dishes] == [4, 2]
    assert bought.till.value == 3


def test_two_currencies_are_refused() -> None:
    book_ = prices("leeks,AP,1 kg,2,EUR,no", "onions,AP,1 kg,2,GBP,no")
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.basket([dish("Pie", "1 kg leeks"), dish("Broth", "1 kg onions")], book_)
    assert (caught.value.code, str(caught.value)) == (
        "cost.currencies",
        "prices.csv:3:1: prices in EUR (leeks) and in GBP (onions) meet in one costing "
        "(use one currency)",
    )


def test_cautions_in_common_are_said_once() -> None:
    dishes = [dish("Pie", "6 eggs"), dish("Broth", "2 eggs", "100 g celery")]
    bought = scalepan.basket(dishes, prices("eggs,AP,6,1.50,EUR,no"))
    named = {text: lines for text, _, lines in bought.cautions}
    assert named["Cook egg dishes through: 71 °C (160 °F)."] == ["pie.eggs", "broth.eggs"]
    eu = "Allergens on the EU list: celery (celery); eggs (eggs). On the US list: eggs (eggs). "
    assert named[eu + "Check every pack."] == ["Broth"]


def test_fifty_dishes_of_two_hundred_items_take_well_under_a_second() -> None:
    foods = [f"larder {a}a{b}o" for a in "bcdfghjklmnprtvwxyzq" for b in "bcdfghjklm"]
    book_ = prices(
        *(f"{food},AP,{grams} g,{grams}/300,EUR,no" for food in foods for grams in (250, 1000))
    )
    dishes = [
        dish(f"Dish {d}", *(f"{90 + 7 * k} g {foods[(d * 12 + k * 5) % 200]}" for k in range(12)))
        for d in range(50)
    ]
    start = time.perf_counter()
    bought = scalepan.basket(dishes, book_)
    taken = time.perf_counter() - start
    assert not bought.unpriced
    assert len(bought.shopping) == 200
    assert taken < 0.5
