"""The parts of a costing, each figure by hand. Prices are invented."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan import quantity


def dish(*lines: str, serves: int = 4) -> scalepan.Recipe:
    listed = "".join(f"  '{line}',\n" for line in lines)
    return scalepan.parse_recipe(f'name = "Dish"\nserves = {serves}\nlines = [\n{listed}]\n')


def book(*rows: str) -> scalepan.PriceBook:
    return scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\n" + "\n".join(rows))


def test_shopping_rows_of_the_leek_pot(forty: scalepan.Costing) -> None:
    rows = forty.shopping
    assert [row.item for row in rows] == ["leeks", "pearl barley", "eggs", "chickpeas"]
    assert [row.packs for row in rows] == [
        [(11, "1 kg"), (1, "500 g")],
        [(5, "500 g")],
        [(4, "10")],
        [(10, "400 g tin (240 g drained)")],
    ]
    assert [row.price for row in rows] == [
        quantity(f"{price} GBP") for price in ("24.30", "4.75", "9.20", "6.00")
    ]
    assert [row.need for row in rows] == [
        quantity("125000/11 g AP"),
        quantity("2200 g AP"),
        quantity("40 piece AP"),
        quantity("2400 g drained"),
    ]
    assert [row.leftover for row in rows] == [
        quantity(Fraction(11500) - Fraction(125000, 11), "g AP"),
        quantity("300 g AP"),
        quantity("0 piece AP"),
        quantity("0 g drained"),
    ]
    assert [row.keeps for row in rows] == [False, True, True, False]
    assert [row.lines for row in rows] == [["leeks"], ["pearl_barley"], ["eggs"], ["chickpeas"]]


def test_the_pot_for_four(leek_pot: scalepan.Recipe, leek_prices: scalepan.PriceBook) -> None:
    """500 g EP is 1136 g AP: 1 kg + 500 g = 3.30; barley 0.95; eggs 1.50; chickpeas 0.60."""
    costing = scalepan.cost(leek_pot, leek_prices)
    assert costing.till.value == Fraction("6.35")
    assert costing.shopping[0].packs == [(1, "1 kg"), (1, "500 g")]


def test_costs_per_portion(forty: scalepan.Costing) -> None:
    """44.25 / 40 and 43.68 / 40; borne where nothing is said."""
    assert forty.per_portion("till") == quantity("1.10625 GBP/portion")
    assert forty.per_portion("borne") == forty.per_portion() == quantity("1.092 GBP/portion")
    shares = forty.per_portion("used") + forty.per_portion("thrown")
    assert shares == forty.per_portion("borne")


def test_an_unknown_cost_is_told(forty: scalepan.Costing) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        forty.per_portion("profit")
    assert (caught.value.code, str(caught.value)) == (
        "cost.which",
        'no cost is called "profit" (there are: till, used, thrown, borne)',
    )


def test_a_pot_with_everything_known_leaves_nothing_to_check(forty: scalepan.Costing) -> None:
    assert (forty.to_check, forty.unpriced) == ([], [])


def test_what_has_to_be_checked() -> None:
    costing = scalepan.cost(
        dish("2 to 3 onions", "1 egg (optional)", "3 samphires", "10 g caster sugar"),
        scalepan.parse_prices(
            "item,sold_as,pack,price,keeps\n"
            "onions,AP,1 kg,1.00,yes\neggs,AP,6,1.50,7 days\ncaster sugar,AP,1 kg,1.20,yes\n"
        ),
    )
    assert costing.to_check == [
        "onions: a range is bought at its high end",
        "egg: is optional, and costed",
        'samphires: the catalogue has no food "samphires", so it has no facts, allergens or '
        "cautions",
        "caster_sugar: the facts are those of granulated sugar, the nearest food with facts to "
        "caster sugar",
        "egg: what is left keeps 7 days and is counted as kept",
        "samphires: not priced: no price row is for samphires",
        "the prices name no currency",
    ]
    assert costing.unpriced == ["samphires"]


def test_totals_over_unpriced_lines_say_at_least() -> None:
    costing = scalepan.cost(
        dish("500 g leeks", "3 samphires", "1 nori sheet"), book("leeks,AP,500 g,1.20,GBP,no")
    )
    assert costing.unpriced == ["samphires", "nori_sheet"]
    assert costing.why("till").splitlines()[0] == "till = at least 1.20 GBP, 2 lines unpriced"


def test_one_unpriced_line_is_one_line() -> None:
    costing = scalepan.cost(dish("500 g leeks", "3 samphires"), book("leeks,AP,500 g,1.20,GBP,no"))
    assert costing.why("till").splitlines()[0] == "till = at least 1.20 GBP, 1 line unpriced"


def test_lines_of_one_food_share_packs() -> None:
    """300 g + 200 g of onions EP at 90 % fit in one bag of 1 kg."""
    costing = scalepan.cost(
        dish(
            "300 g onions, sliced",
            "200 g brown onions, chopped",
        ),
        book("onions,AP,1 kg,1.80,EUR,yes"),
    )
    (row,) = costing.shopping
    assert row.packs == [(1, "1 kg")]
    assert row.need == quantity(Fraction(500) / Fraction(9, 10), "g AP")
    assert row.lines == ["onions", "brown_onions"]
    assert costing.used.value == Fraction("1.80") * Fraction(5, 9)
    assert costing.closing.value == Fraction("1.80") * Fraction(4, 9)
    assert costing.thrown.value == 0


def test_what_does_not_keep_is_thrown() -> None:
    costing = scalepan.cost(dish("750 g leeks"), book("leeks,AP,1 kg,2.00,EUR,no"))
    assert [cost.value for cost in (costing.till, costing.used, costing.thrown, costing.borne)] == [
        2,
        Fraction("1.50"),
        Fraction("0.50"),
        2,
    ]
    assert costing.closing.value == 0


def test_two_currencies_do_not_meet() -> None:
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\n"
        "leeks,AP,1 kg,2.00,EUR,no\nonions,AP,1 kg,1.00,GBP,no\n",
        file="p.csv",
    )
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cost(dish("500 g leeks", "500 g onions"), prices)
    assert (caught.value.code, str(caught.value)) == (
        "cost.currencies",
        "p.csv:3:1: prices in EUR (leeks) and in GBP (onions) meet in one costing "
        "(use one currency)",
    )


def test_a_curve_is_the_costing_at_each_size(
    leek_pot: scalepan.Recipe, leek_prices: scalepan.PriceBook
) -> None:
    curve = scalepan.cost(leek_pot, leek_prices).curve(portions=range(1, 61))
    assert curve.portions == list(range(1, 61))
    assert (curve.currency, curve.unpriced) == ("GBP", [])
    for i, size in enumerate(curve.portions):
        there = scalepan.cost(leek_pot.scale(portions=size), leek_prices)
        assert (curve.till[i], curve.used[i]) == (there.till.value, there.used.value)
        assert (curve.thrown[i], curve.borne[i]) == (there.thrown.value, there.borne.value)


def test_a_curve_of_one_item_has_its_jumps_where_a_pack_runs_out() -> None:
    """30 g EP a portion at 44 %: the n-th kilogram is needed from 44/3 x (n - 1) portions on."""
    one = dish("30 g leeks, trimmed", serves=1)
    curve = scalepan.cost(one, book("leeks,AP,1 kg,2.00,GBP,no")).curve(portions=range(1, 101))
    per_portion = Fraction(30) / Fraction(44, 100) / 1000
    packs = [-(-(per_portion * n) // 1) for n in range(1, 101)]
    assert curve.till == [2 * n for n in packs]
    jumps = [n for n in range(2, 101) if packs[n - 1] != packs[n - 2]]
    assert [point.portions for point in curve.breakpoints] == jumps == [15, 30, 45, 59, 74, 89]
    assert [(p.item, p.packs_before, p.packs) for p in curve.breakpoints] == [
        ("leeks", [(i, "1 kg")], [(i + 1, "1 kg")]) for i in range(1, 7)
    ]


def test_a_curve_takes_any_sizes() -> None:
    costing = scalepan.cost(dish("1 kg leeks"), book("leeks,AP,1 kg,2.00,GBP,no"))
    curve = costing.curve(portions=[Fraction(1, 2), "8", 2.5])
    assert curve.portions == [Fraction(1, 2), 8, Fraction(5, 2)]
    assert curve.till == [2, 4, 2]


def test_cautions_name_the_lines_and_their_sources(forty: scalepan.Costing) -> None:
    """US FoodSafety.gov: egg dishes 160 F, which is 71.1 C; FDA Food Code 3-501.14: 135 to 70 F
    within 2 hours, to 41 F within 4 more. Annex II and the nine of the FDA: barley has gluten,
    which the US list does not have.
    """
    egg, cooling, allergens = forty.cautions
    assert egg == (
        "Cook egg dishes through: 71 °C (160 °F).",
        "US FoodSafety.gov, safe minimum internal temperatures",
        ["eggs"],
    )
    assert (
        "57 to 21 °C (135 to 70 °F) within 2 hours and to 5 °C (41 °F) within 4 more"
        in (cooling[0])
    )
    assert "FDA Food Code 3-501.14" in cooling[1]
    assert allergens[0] == (
        "Allergens on the EU list: eggs (eggs); gluten (pearl_barley). "
        "On the US list: eggs (eggs). Check every pack."
    )


def test_at_a_tested_size_there_is_no_word_on_cooling(
    leek_pot: scalepan.Recipe, leek_prices: scalepan.PriceBook
) -> None:
    cautions = scalepan.cost(leek_pot, leek_prices).cautions
    assert [caution[2] for caution in cautions] == [["eggs"], []]


def test_foods_the_catalogue_does_not_have_are_named_in_the_cautions() -> None:
    costing = scalepan.cost(dish("500 g samphire"), book("samphire,AP,1 kg,9,EUR,no"))
    assert costing.cautions[-1] == (
        "Allergens of these are not known: check the pack.",
        "foods that the catalogue does not have",
        ["samphire"],
    )


def test_why_the_leeks_are_bought(forty: scalepan.Costing) -> None:
    tree = forty.explain("leeks.buy")
    assert (tree.name, tree.how) == ("leeks.buy", "leeks.need / leeks.edible")
    assert "11 4/11 kg AP" in tree.figure
    need, edible = tree.parts
    assert (need.name, need.figure) == ("leeks.need", "5 kg EP")
    assert (edible.name, edible.figure) == ("leeks.edible", "0.44 EP/AP")
    assert "SR28 11246" in edible.source
    written = need.parts[0]
    assert written.source == '"500 g leeks, trimmed", leek_pot.toml:5:4'
    for line in ("leeks.buy = ", "leeks.need = 5 kg EP", "leeks.edible = 0.44 EP/AP"):
        assert line in forty.why("leeks.buy")


def test_every_cell_that_is_listed_can_be_explained(forty: scalepan.Costing) -> None:
    assert {"till", "borne", "leeks.buy", "eggs.packs", "chickpeas.used"} <= set(forty.cells)
    for cell in forty.cells:
        assert forty.explain(cell).name == cell


@pytest.mark.parametrize(
    ("cell", "message"),
    [
        ("leeks.by", 'no figure is called "leeks.by" (nearest: leeks.buy)'),
        (
            "nothing_at_all",
            'no figure is called "nothing_at_all" (figures: till, used, thrown, borne, and those '
            "of each line: leeks.buy, pearl_barley.buy, eggs.buy, chickpeas.buy)",
        ),
    ],
)
def test_unknown_cells(forty: scalepan.Costing, cell: str, message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        forty.why(cell)
    assert (caught.value.code, str(caught.value)) == ("why.unknown_cell", message)


def test_an_unpriced_cell_says_why() -> None:
    costing = scalepan.cost(dish("3 samphires"), book("leeks,AP,1 kg,2,EUR,no"))
    with pytest.raises(scalepan.CostError) as caught:
        costing.why("samphires.till")
    assert (caught.value.code, str(caught.value)) == (
        "why.unpriced",
        "samphires.till has no figure: the line is not priced (no price row is for samphires)",
    )
    assert costing.explain("samphires.need").figure == "3 piece AP"


def test_a_price_of_another_kind_than_the_need_goes_through_the_facts() -> None:
    """SR28 11282: a medium onion is 110 g edible; 5 x 110 / 0.9 = 611 g AP, one bag of 1 kg."""
    costing = scalepan.cost(dish("5 onions"), book("onions,AP,1 kg,1.80,EUR,yes"))
    assert costing.shopping[0].need.to("g").value == Fraction(5 * 110 * 10, 9)


def test_counted_tins_are_bought_as_tins() -> None:
    """Two tins are two packs, whatever a tomato weighs."""
    prices = book("tomatoes,AP,400 g tin,0.60,EUR,no")
    counted = scalepan.cost(dish("2 tins tomatoes"), prices)
    weighed = scalepan.cost(dish("2 x 400 g tins tomatoes"), prices)
    assert weighed.shopping[0].packs == [(2, "400 g tin")]
    assert counted.shopping[0].packs == [(2, "400 g tin")]


@pytest.mark.parametrize(
    ("line", "sold"),
    [("3 cloves garlic", "garlic,AP,1 bulb"), ("3 sticks celery", "celery,AP,1 head")],
)
def test_a_part_of_a_plant_is_not_the_whole_plant(line: str, sold: str) -> None:
    """Three cloves are not three bulbs: unknown, or one bulb, but never three without a word."""
    costing = scalepan.cost(dish(line), book(f"{sold},0.50,EUR,no"))
    assert 3 not in [count for row in costing.shopping for count, _ in row.packs]
