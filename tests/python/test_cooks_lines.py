"""Lines and packs as cooks write them: what is counted, what a tin holds, what must be refused.

Prices and pack sizes are invented; shares and weights are those of the fact named beside them.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan

HEAD = "item,sold_as,pack,price,currency,keeps\n"


def costing(line: str, *rows: str, portions: int = 40) -> scalepan.Costing:
    recipe = scalepan.parse_recipe(
        f"name = 'x'\nserves = 4\nmeasures = 'metric'\nlines = ['{line}']"
    )
    prices = scalepan.parse_prices(HEAD + "".join(f"{row},EUR,no\n" for row in rows))
    return scalepan.cost(recipe.scale(portions=portions), prices)


def packs(line: str, *rows: str, portions: int = 40) -> list[tuple[int, str]]:
    shopping = costing(line, *rows, portions=portions).shopping
    return shopping[0].packs if shopping else []


@pytest.mark.parametrize(
    ("line", "row", "bought"),
    [
        # Twice ten tins, whatever is done after opening them.
        ("2 x 400 g tins chickpeas, drained", "chickpeas,drained,400 g tin (240 g drained),1", 20),
        ("2 x 400 g tins chickpeas, drained", "chickpeas,AP,400 g tin,1", 20),
        ("2 x 400 g tins chopped tomatoes", "tomatoes,AP,400 g tin,1", 20),
        ("2 x 400 g tins chopped tomatoes", "chopped tomatoes,AP,400 g tin,1", 20),
        ("2 tins tomatoes", "tomatoes,AP,400 g tin,1", 20),
        ("2 cans tomatoes", "tinned tomatoes,AP,400 g tin,1", 20),
        ("2 tins chickpeas, drained", "chickpeas,drained,400 g tin (240 g drained),1", 20),
        # Drained weight that the pack states: 2400 g in tins of 240 g.
        ("240 g chickpeas, drained", "chickpeas,drained,400 g tin (240 g drained),1", 10),
        ("1 bunch parsley", "parsley,AP,1 bunch,1", 10),
        ("1 onion", "onions,AP,6 onions,1", 2),
        ("2 large onions", "onions,AP,1,1", 20),
        # 30 cloves of 3 g EP at 0.87 EP/AP (USDA SR28 11215) are 103.4 g AP.
        ("3 cloves garlic", "garlic,AP,50 g,1", 3),
    ],
)
def test_what_is_counted_is_bought(line: str, row: str, bought: int) -> None:
    assert [count for count, _ in packs(line, row)] == [bought]


@pytest.mark.parametrize(
    ("line", "row", "reason"),
    [
        ("3 cloves garlic", "garlic,AP,1 head,1", "counted by the clove but sold by the head"),
        ("3 cloves garlic", "garlic,AP,1,1", "counted by the clove but sold by the piece"),
        ("4 sprigs thyme", "thyme,AP,1 bunch,1", "counted by the sprig but sold by the bunch"),
        ("4 eggs", "eggs,AP,1 box,1", "counted by the piece but sold by the box"),
        ("1 kg carrots", "carrots,AP,1 bag,1", "a piece weight (bag) is missing"),
        ("1 bag onions", "onions,AP,1 kg,1", "a piece weight (bag) is missing"),
    ],
)
def test_counts_of_unlike_things_never_meet(line: str, row: str, reason: str) -> None:
    found = costing(line, row)
    assert found.shopping == []
    assert len(found.to_check) == 1
    assert reason in found.to_check[0]


def test_fresh_and_tinned_are_two_items() -> None:
    recipe = scalepan.parse_recipe(
        "name = 'x'\nserves = 1\nlines = ['1 kg tomatoes', "
        "{ id = 'tinned', line = '400 g tin tomatoes' }]"
    )
    prices = scalepan.parse_prices(
        f"{HEAD}tomatoes,AP,1 kg,2,EUR,no\ntomatoes,AP,400 g tin,1,EUR,no\n"
    )
    rows = scalepan.cost(recipe, prices).shopping
    assert [row.packs for row in rows] == [[(1, "1 kg")], [(1, "400 g tin")]]


def test_a_close_relative_is_bought_under_its_own_name() -> None:
    rows = ("onions,AP,1 kg,0.50", "red onions,AP,1 kg,2.00")
    assert costing("500 g red onions", *rows, portions=4).till.value == 2
    only = costing("500 g red onions", rows[0], portions=4)
    assert only.till.value == Fraction(1, 2)
    assert "red_onions: bought as onion, since no price row is for red onions" in only.to_check


@pytest.mark.parametrize(
    ("line", "stage"),
    [
        ("1 kg carrots", "AP"),
        ("1 kg carrots, peeled", "EP"),
        ("1 kg carrots (peeled)", "EP"),
        ("1 kg carrots, EP", "EP"),
        ("1 kg carrots EP", "EP"),
        ("1 kg AP carrots", "AP"),
        ("1 kg carrots, not peeled", "AP"),
        ("1 kg carrots, to be peeled", "AP"),
        ("1 kg carrots, washed", "AP"),
        ("2 carrots, peeled", "AP"),
        ("240 g chickpeas, drained", "drained"),
        ("400 g tin chickpeas, drained", "AP"),
        ("200 g rice, cooked and drained", "cooked"),
    ],
)
def test_the_stage_a_line_means(line: str, stage: str) -> None:
    recipe = scalepan.parse_recipe(f"name = 'x'\nserves = 4\nlines = ['{line}']")
    assert recipe.lines[0].stage == stage


@pytest.mark.parametrize(
    ("line", "code"),
    [
        ("200 g + 50 g granulated sugar", "amount.doubtful"),
        ("1 cup/100 ml milk", "line.second_measure"),
        ("200 g / 17 oz granulated sugar", "line.second_measure"),
        ("4 carrots (about 1500 g)", "line.second_measure"),
        ("100 g butter, plus 20 g for greasing", "line.second_amount"),
        ("2 400 g tins tomatoes", "line.two_numbers"),
        ("1 000 g plain flour", "line.two_numbers"),
        ("30 g butter, fixed", "line.rule"),
        ("4 eggs, one per portion", "line.rule"),
        ("4 eggs (one per portion)", "line.rule"),
        ("150 g cod per portion", "line.rule"),
        ("500 g leeks (washed", "line.bracket"),
        ("500 tbps leeks", "unit.unknown"),
    ],
)
def test_what_nothing_would_scale_is_refused(line: str, code: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_recipe(
            f"name = 'x'\nserves = 4\nmeasures = 'metric'\nlines = ['{line}']", file="x.toml"
        )
    assert caught.value.code == code
    assert caught.value.line == 4


@pytest.mark.parametrize(
    "line",
    [
        "3 mint sprigs",
        "3 dill pickles",
        "2 sour apples",
        "3 big leeks",
        "1 raw egg",
    ],
)
def test_foods_that_look_like_units_are_foods(line: str) -> None:
    scalepan.parse_recipe(f"name = 'x'\nserves = 4\nlines = ['{line}']")


def test_a_no_break_space_is_a_space() -> None:
    recipe = scalepan.parse_recipe("name = 'x'\nserves = 4\nlines = ['500\u00a0g\u202fleeks']")
    assert str(recipe.lines[0].amount) == "500 g AP"
    assert recipe.lines[0].food == "leeks"


@pytest.mark.parametrize(
    ("text", "code"),
    [
        ('lines = ["1 kg leeks\\u001b[2J"]', "line.control_character"),
        ('lines = [{ id = "a\\nb", line = "1 kg leeks" }]', "recipe.control_character"),
    ],
)
def test_control_characters_do_not_reach_a_terminal(text: str, code: str) -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(f'name = "x"\nserves = 4\n{text}')
    assert caught.value.code == code


def test_control_characters_in_a_price_book_are_refused() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(f"{HEAD}leeks\x1b[2J,AP,1 kg,2,EUR,no\n", file="p.csv")
    assert (caught.value.code, caught.value.place) == ("price.control_character", "p.csv:2:1")


def test_a_misspelt_unit_in_a_pack_is_refused() -> None:
    with pytest.raises(scalepan.MeasureError) as caught:
        scalepan.parse_prices(f"{HEAD}leeks,AP,1 kq,2,EUR,no\n", file="p.csv")
    assert (caught.value.code, caught.value.place) == ("unit.unknown", "p.csv:2:12")


def test_a_drained_weight_above_the_whole_is_refused() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.parse_prices(f"{HEAD}beans,AP,240 g tin (400 g drained),1,EUR,no\n", file="p.csv")
    assert caught.value.message == "the pack holds 240 g AP, but its bracket says 400 g drained"


def test_a_weight_without_a_stage_is_not_taken_as_edible() -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.convert("1 kg", "kg EP", food="carrots")
    assert caught.value.code == "convert.stage"
