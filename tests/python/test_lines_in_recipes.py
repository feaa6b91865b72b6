"""Recipes whose lines say more, or less, than an amount and a food: what is kept, bought, listed.

All prices are invented.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan import quantity

# Invented.
PRICES = """\
item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.00,EUR,no
salt,AP,500 g,1.00,EUR,no
lemons,AP,1,0.50,EUR,no
eggs,AP,6,1.80,EUR,no
flour,AP,1 kg,1.20,EUR,no
milk,AP,1 L,1.10,EUR,no
vegetable oil,AP,1 L,3.00,EUR,no
"""

METRIC = 'measures = "metric"'
US = 'measures = "us"'


def recipe(*lines: str, more: str = METRIC) -> scalepan.Recipe:
    """The first line stands at 5:4."""
    rows = "".join(f'  "{line}",\n' for line in lines)
    text = f'name = "Dish"\nserves = 4\n{more}\nlines = [\n{rows}]\n'
    return scalepan.parse_recipe(text, file="dish.toml")


def line(text: str, more: str = METRIC) -> scalepan.Line:
    (only,) = recipe(text, more=more).lines
    return only


def costing(*lines: str, more: str = METRIC, portions: int = 4) -> scalepan.Costing:
    scaled = recipe(*lines, more=more).scale(portions=portions)
    return scalepan.cost(scaled, scalepan.parse_prices(PRICES))


def refusal(*lines: str, more: str = METRIC) -> tuple[type[scalepan.Error], str, str]:
    with pytest.raises(scalepan.Error) as caught:
        recipe(*lines, more=more)
    return type(caught.value), caught.value.code, str(caught.value)


# Lines without an amount.


@pytest.mark.parametrize(
    ("text", "told"),
    [
        ("salt, to taste", "salt (to taste)"),
        ("salt to taste", "salt (to taste)"),
        ("salt as needed", "salt (as needed)"),
        ("salt, optional", "salt (optional)"),
        ("lemons, to serve", "lemons (to serve)"),
        ("salt and pepper, to taste", "salt and pepper (to taste)"),
    ],
)
def test_a_line_left_to_the_cook_has_no_amount(text: str, told: str) -> None:
    read = line(text)
    assert (read.amount, read.low, read.written, read.exact) == (None, None, None, None)
    assert read.told == told


def test_a_line_left_to_the_cook_costs_nothing_and_is_listed() -> None:
    alone = costing("500 g leeks")
    with_salt = costing("500 g leeks", "salt, to taste")
    assert (with_salt.till, with_salt.used) == (alone.till, alone.used)
    assert [row.item for row in with_salt.shopping] == ["leeks"]
    assert with_salt.to_check == ["salt: no amount is stated, so it is not costed"]


def test_a_line_left_to_the_cook_stays_so_at_any_size() -> None:
    salt = recipe("500 g leeks", "salt, to taste").scale(portions=40).lines[1]
    assert (salt.amount, salt.told) == (None, "salt (to taste)")


def test_no_figure_of_a_line_without_an_amount_can_be_explained() -> None:
    found = costing("500 g leeks", "salt, to taste")
    with pytest.raises(scalepan.CostError) as caught:
        found.why("salt.buy")
    assert (caught.value.code, str(caught.value)) == (
        "why.unmeasured",
        'salt.buy has no figure: the line states no amount ("salt, to taste")',
    )


def test_a_line_that_forgot_its_amount_is_refused() -> None:
    assert refusal("500 g flour", "salt and pepper") == (
        scalepan.RecipeError,
        "line.no_amount",
        'dish.toml:6:4: no amount is written in "salt and pepper" '
        "(write one, or say that it is left to the cook: salt and pepper, to taste)",
    )


def test_a_rule_needs_an_amount() -> None:
    assert refusal("salt, to taste | fixed") == (
        scalepan.RecipeError,
        "line.rule",
        "dish.toml:5:21: the line has a rule, but no amount for it",
    )


# Headings.


def test_headings_belong_to_the_lines_below_them() -> None:
    lines = recipe(
        "500 g leeks", "TOPPING", "20 g flour", "For the sauce:", "1 L milk", "or", "2 eggs"
    ).lines
    assert [(read.food, read.heading) for read in lines] == [
        ("leeks", ""),
        ("flour", "TOPPING"),
        ("milk", "For the sauce"),
        ("eggs", "For the sauce"),
    ]


def test_a_label_is_the_heading_of_its_own_line() -> None:
    lines = recipe("FILLING", "500 g leeks", "For dusting: 20 g flour", "2 eggs").lines
    assert [read.heading for read in lines] == ["FILLING", "For dusting", "FILLING"]


def test_headings_alone_are_no_recipe() -> None:
    assert refusal("TOPPING", "For the sauce:") == (
        scalepan.RecipeError,
        "recipe.no_lines",
        "dish.toml:4:9: the recipe has headings, but no lines",
    )


# Amounts.


def test_a_sum_is_one_amount() -> None:
    """A pound is 16 ounces and 453.59237 g (international yard and pound agreement, 1959)."""
    read = line("1 lb 4 oz leeks")
    assert read.amount == quantity("20 oz AP")
    assert read.amount == quantity("566.9904625 g AP")
    twice = recipe("1 lb 4 oz leeks").scale(portions=8).lines[0]
    assert (twice.amount, twice.written) == (quantity("40 oz AP"), quantity("20 oz AP"))


def test_the_juice_of_lemons_is_bought_as_lemons() -> None:
    read = line("juice of 2 lemons")
    assert (read.part, read.food_id, read.amount) == ("juice", "lemon", quantity("2 piece AP"))
    assert read.told == "juice of 2 lemons, 96 g"  # SR28 09152: a lemon yields 48 g
    found = costing("juice of 2 lemons", portions=10)
    assert [(row.item, row.need, row.packs) for row in found.shopping] == [
        ("lemons", quantity("5 piece AP"), [(5, "1")])
    ]
    assert found.till.value == Fraction("2.50")


def test_a_range_is_bought_at_its_high_end() -> None:
    read = line("400-500 g leeks")
    assert (read.low, read.amount) == (quantity("400 g AP"), quantity("500 g AP"))
    assert read.told == "400 g to 500 g leeks"
    found = costing("400-500 g leeks", portions=10)
    assert found.shopping[0].need == quantity("1250 g AP")
    assert found.to_check == ["leeks: a range is bought at its high end"]


@pytest.mark.parametrize(
    ("text", "told", "check"),
    [
        ("about 500 g leeks", "about 500 g leeks", "about"),
        ("at least 500 g leeks", "at least 500 g leeks", "at least"),
        ("500 g leeks or more", "at least 500 g leeks", "at least"),
        ("up to 500 g leeks", "at most 500 g leeks", "at most"),
    ],
)
def test_a_hedged_amount_is_taken_and_listed(text: str, told: str, check: str) -> None:
    read = line(text)
    assert (read.amount, read.told) == (quantity("500 g AP"), told)
    found = costing(text)
    assert found.shopping[0].need == quantity("500 g AP")
    assert found.to_check == [f"leeks: the amount is {check} what is written, and that is taken"]


def test_a_heaping_spoon_is_taken_as_level_and_listed() -> None:
    heaping, level = costing("1 heaping tsp salt"), costing("1 tsp salt")
    assert heaping.shopping[0].need == level.shopping[0].need
    assert heaping.to_check == ["salt: a heaping measure is taken as a level one"]
    assert level.to_check == []


def test_an_optional_line_is_costed_and_listed() -> None:
    found = costing("2 lemons (optional)")
    assert found.till.value == 1
    assert found.to_check == ["lemons: is optional, and costed"]


# A second measure of another kind. A US cup of flour is 125 g (USDA SR28 20081); a large egg 50 g
# without and 50/0.88 g with its shell (SR28 01123, refuse 12 %).


@pytest.mark.parametrize(
    "text", ["1 cup flour (125 g)", "1 cup flour (150 g)", "1 cup flour (105 g)"]
)
def test_a_second_measure_within_a_fifth_is_no_doubt(text: str) -> None:
    found = costing(text, more=US)
    assert found.shopping[0].need == quantity("125 g AP")
    assert found.to_check == []


@pytest.mark.parametrize(
    ("text", "check"),
    [
        ("1 cup flour (157 g)", "flour: its second measure, 157 g,"),
        ("1 cup flour (99 g)", "flour: its second measure, 99 g,"),
        ("2 large eggs (150 g)", "eggs: its second measure, 150 g,"),
    ],
)
def test_a_second_measure_further_off_is_listed(text: str, check: str) -> None:
    assert costing(text, more=US).to_check == [f"{check} lies more than a fifth from the first"]


def test_a_second_measure_of_more_than_twice_is_refused() -> None:
    assert line("1 cup flour (250 g)", US).amount == quantity("1 cup_us AP")
    assert refusal("1 cup flour (251 g)", more=US) == (
        scalepan.RecipeError,
        "line.second_measure",
        "dish.toml:5:17: two measures of one amount contradict: 1 cup and 251 g, where by the "
        "facts of plain flour the first is 125 g "
        "(write the one that is right, or add a fact of your own)",
    )


def test_a_second_measure_of_a_food_without_facts_is_not_checked() -> None:
    assert line("1 cup samphire (999 g)", US).amount == quantity("1 cup_us AP")


# What nothing would scale.


@pytest.mark.parametrize(
    ("text", "code", "message"),
    [
        (
            "100 g butter, plus 20 g for greasing",
            "line.second_amount",
            '5:23: a second amount stands in "20 g for greasing", and nothing would scale it '
            "(write one amount a line)",
        ),
        (
            "500 g leeks with 1 cup milk",
            "line.second_amount",
            '5:21: a second amount stands in "1 cup milk", and nothing would scale it '
            "(write one amount a line)",
        ),
        (
            "30 g butter, fixed",
            "line.rule",
            '5:17: "fixed" reads like a rule without its bar '
            "(write the rule last, behind a bar: 4 eggs | one per portion)",
        ),
    ],
)
def test_what_nothing_would_scale(text: str, code: str, message: str) -> None:
    assert refusal(text) == (scalepan.RecipeError, code, f"dish.toml:{message}")


def test_a_tin_of_a_pint_needs_its_measures() -> None:
    assert refusal("2 x 1 pint tins beans", more="") == (
        scalepan.MeasureError,
        "unit.which_measures",
        'dish.toml:5:15: it is not stated which measures "1 pint" means '
        "(measures = one of: metric, us, imperial, au)",
    )


def test_several_foods_with_one_amount_are_not_priced() -> None:
    found = costing("500 g leeks", "1 tbsp salt and pepper")
    assert [row.item for row in found.shopping] == ["leeks"]
    assert found.till.value == 2
    shares = "one amount is written for several foods, and their shares are not stated"
    assert found.to_check == [f"salt_and_pepper: not priced: {shares}"]
    with pytest.raises(scalepan.CostError) as caught:
        found.why("salt_and_pepper.buy")
    assert (caught.value.code, str(caught.value)) == (
        "why.unpriced",
        f"salt_and_pepper.buy has no figure: the line is not priced ({shares})",
    )


# Oil for frying.


def test_all_the_oil_for_frying_is_bought() -> None:
    read = line("500 mL vegetable oil for frying | 15 % taken up")
    assert (read.rule, read.note) == ("15 % taken up", "for frying")
    found = costing("500 mL vegetable oil for frying | 15 % taken up", portions=12)
    assert found.shopping[0].need == quantity("1.5 L AP")
    assert found.till.value == 6


@pytest.mark.parametrize("share", ["-1 %", "101 %"])
def test_no_other_share_is_taken_up(share: str) -> None:
    assert refusal(f"500 mL oil for frying | {share} taken up") == (
        scalepan.RecipeError,
        "rule.share",
        f'dish.toml:5:28: "{share}" is no share of the amount (write a percentage from 0 to 100)',
    )


# Keys of the file.


def test_a_decimal_comma() -> None:
    comma = 'decimal = "comma"'
    assert line("1,5 kg leeks", comma).amount == quantity("1.5 kg AP")
    assert line("500 g leeks, trimmed", comma).preparation == "trimmed"
    assert refusal("1.5 kg leeks", more=comma) == (
        scalepan.NumberError,
        "number.point",
        "dish.toml:5:5: a full stop stands inside a number, where decimals are written with a "
        "comma (write 1000 for a thousand and 1,5 for one and a half)",
    )


@pytest.mark.parametrize(
    ("more", "food"),
    [
        ('region = "GB"', "coriander_leaf"),
        ('region = "US"', "coriander_seed"),
        ('names = { coriander = "coriander_seed" }', "coriander_seed"),
        ('region = "GB"\nnames = { coriander = "coriander_seed" }', "coriander_seed"),
    ],
)
def test_a_name_of_two_foods_is_chosen_by_region_or_by_name(more: str, food: str) -> None:
    assert line("20 g coriander", more).food_id == food


@pytest.mark.parametrize(
    ("more", "kind", "code", "message"),
    [
        (
            'decimal = "dot"',
            scalepan.RecipeError,
            "recipe.decimal",
            '3:12: decimal is "dot", but must be point or comma',
        ),
        ("decimal = 5", scalepan.RecipeError, "recipe.type", "3:11: decimal is not a text"),
        ("region = 5", scalepan.RecipeError, "recipe.type", "3:10: region is not a text"),
        (
            'region = "XX"',
            scalepan.FoodError,
            "food.region",
            '3:11: no food has a name of the region "XX" (there are: AU, GB, NZ, US)',
        ),
        (
            'names = "x"',
            scalepan.RecipeError,
            "recipe.type",
            '3:10: names is not a table (names = { cornflour = "corn_starch" })',
        ),
        (
            "names = { coriander = 5 }",
            scalepan.RecipeError,
            "recipe.type",
            "3:23: names coriander is not a text",
        ),
        (
            "",
            scalepan.FoodError,
            "food.ambiguous",
            '5:9: "coriander" means more than one food (write one of: fresh coriander (GB), '
            'coriander seeds (US); or choose in the recipe: region = "GB", '
            'or names = { coriander = "coriander_leaf" })',
        ),
    ],
)
def test_keys_that_cannot_be(
    more: str, kind: type[scalepan.Error], code: str, message: str
) -> None:
    assert refusal("20 g coriander", more=more) == (kind, code, f"dish.toml:{message}")


def test_a_food_that_names_does_not_have() -> None:
    kind, code, text = refusal("20 g coriander", more='names = { coriander = "corriander_leaf" }')
    assert (kind, code) == (scalepan.FoodError, "food.unknown")
    assert text.endswith('no food is called "corriander_leaf" (nearest: coriander leaf)')
