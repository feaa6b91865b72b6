"""Several dishes bought together: cases worked by hand. Dishes and prices are invented, for a
kitchen that cooks for the watches of an observatory."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from dishes import dish, prices


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


def test_fifty_dishes_of_two_hundred_items_are_bought_together() -> None:
    foods = [f"larder {a}a{b}o" for a in "bcdfghjklmnprtvwxyzq" for b in "bcdfghjklm"]
    book_ = prices(
        *(f"{food},AP,{grams} g,{grams}/300,EUR,no" for food in foods for grams in (250, 1000))
    )
    dishes = [
        dish(f"Dish {d}", *(f"{90 + 7 * k} g {foods[(d * 12 + k * 5) % 200]}" for k in range(12)))
        for d in range(50)
    ]
    bought = scalepan.basket(dishes, book_)
    assert not bought.unpriced
    assert len(bought.shopping) == 200


def test_a_base_of_several_dishes_with_a_fixed_line_is_said_to_be_made_anew() -> None:
    stock = '{ name = "Stock", serves = 1, makes = "1 kg", lines = ["500 g onions", "%s"] }'
    fixed, scaled = (
        f"bases = {{ stock = {stock % line} }}" for line in ("20 g celery | fixed", "20 g celery")
    )
    rows = ("onions,AP,1 kg,1.40,EUR,no", "celery,AP,1 kg,1.40,EUR,no")
    said = (
        "Stock: made anew for each of Pie, Broth; in one batch, what does not scale in proportion "
        "may come to another amount: celery"
    )
    for bases, notes in ((fixed, [said]), (scaled, [])):
        dishes = [dish("Pie", "400 g stock", extra=bases), dish("Broth", "2 kg stock", extra=bases)]
        checks = scalepan.basket(dishes, prices(*rows)).to_check
        assert [note for note in checks if note.startswith("Stock: made")] == notes


def test_an_unknown_edible_share_is_an_error_where_that_is_asked_for() -> None:
    dishes = [dish("Pie", "1 kg leeks"), dish("Broth", "500 g samphire, trimmed")]
    book_ = prices("leeks,AP,1 kg,2.00,EUR,no", "samphire,AP,500 g,1.00,EUR,no")
    assert scalepan.basket(dishes, book_).till.value == 3
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.basket(dishes, book_, strict=True)
    assert caught.value.code == "cost.stage"
    with pytest.raises(scalepan.CostError) as alone:
        scalepan.cost(dishes[1], book_, strict=True)
    assert str(caught.value) == str(alone.value)


def test_what_is_on_hand_goes_to_all_dishes_and_the_saving_is_counted_without_it() -> None:
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\nonions,AP,1 kg,1.00,EUR,no\n"
    )
    stock = scalepan.parse_stock("item,stage,amount,value,currency\nonions,AP,200 g,0.10,EUR\n")
    dishes = [
        scalepan.parse_recipe(f'name = "{name}"\nserves = 1\nlines = ["{grams} g AP onions"]\n')
        for name, grams in (("Broth", 400), ("Pie", 600))
    ]
    basket = scalepan.basket(dishes, prices, stock=stock)
    # 800 g are bought as 1 kg for 1.00; 200 g of it are thrown.
    assert basket.till.value == 1
    assert basket.opening.value == Fraction("0.10")
    assert basket.used.value == Fraction("0.10") + Fraction("0.80")
    assert basket.thrown.value == Fraction("0.20")
    assert [dish.used.value for dish in basket.dishes] == [
        Fraction("0.90") * 400 / 1000,
        Fraction("0.90") * 600 / 1000,
    ]
    # Apart 1.00 each, together 1.00, whatever is on hand.
    assert basket.saving.value == 1
