"""Every way to ask for a size, against arithmetic by hand, and its errors to the letter."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import scalepan

# 100 g a portion and 50 g for each started four.
KILLER = """\
name = "Broth with dumplings"
serves = 4
lines = ["400 g beef stock", "50 g plain flour | 50 g per 4 portions"]
"""
BUNS = """\
name = "Dome buns"
serves = 24
makes = "24 pieces"
loss = "10 % of the dough"
lines = ["1.5 kg plain flour", "900 g water", "30 g salt"]
"""


def recipe(lines: str, serves: int = 4, more: str = "") -> scalepan.Recipe:
    return scalepan.parse_recipe(f'name = "x"\nserves = {serves}\n{more}\nlines = [{lines}]\n')


def refusal(of: scalepan.Recipe, **size: Any) -> tuple[str, str]:
    with pytest.raises(scalepan.Error) as caught:
        of.scale(**size)
    return caught.value.code, str(caught.value)


def grams(of: scalepan.Recipe) -> Fraction:
    value: Fraction = of.batch_weight.to("g").value
    return value


def test_940_g_cannot_be_made_and_both_neighbours_are_told() -> None:
    killer = scalepan.parse_recipe(KILLER)
    assert refusal(killer, batch="940 g") == (
        "size.unreachable",
        "a batch of 940 g cannot be made: 8 portions come to 900 g, and any more to more than "
        "950 g (a line that goes in steps jumps over it: take one of the two sizes)",
    )
    assert grams(killer.scale(portions=8)) == 900
    assert killer.scale(batch="900 g").portions == 8
    behind = killer.scale(batch="950.1 g")
    assert behind.portions == Fraction(8001, 1000)
    # Nothing between: every size up to 8 has at most 900, every other more than 950.
    for thousandths in range(7900, 8100, 7):
        weight = grams(killer.scale(portions=Fraction(thousandths, 1000)))
        assert weight <= 900 or weight > 950


def test_whole_lines_alone_meet_their_next_step() -> None:
    """SR28 01123: a large egg is 50 g."""
    eggs = recipe('"4 large eggs | one per portion"')
    assert eggs.scale(batch="150 g").portions == 3
    assert refusal(eggs, batch="120 g") == (
        "size.unreachable",
        "a batch of 120 g cannot be made: 2 portions come to 100 g, and any more to 150 g or more "
        "(a line that goes in steps jumps over it: take one of the two sizes)",
    )


def test_below_every_batch() -> None:
    assert refusal(scalepan.parse_recipe(KILLER), batch="50 g") == (
        "size.unreachable",
        "a batch of 50 g cannot be made: the smallest one comes to more than 50 g (lines that are "
        "fixed or go in steps are in every batch)",
    )


def test_pieces_of_a_weight() -> None:
    """48 x 90 g = 4320 g baked; 2430 g of dough leave 2187 g."""
    forty_eight = scalepan.parse_recipe(BUNS).scale(batch="48 x 90 g")
    assert grams(forty_eight) == 4320
    assert forty_eight.factor == Fraction(4320, 2187)
    assert forty_eight.raw_batch.to("g").value == 4800


def test_pieces_by_number() -> None:
    """What is measured in pieces follows the weight, so 60 are 5/2 of 24."""
    for asked in ("60 pieces", "60", 60, scalepan.quantity("60 piece")):
        assert scalepan.parse_recipe(BUNS).scale(batch=asked).factor == Fraction(5, 2)


def test_before_baking() -> None:
    assert scalepan.parse_recipe(BUNS).scale(raw_batch="4.86 kg").factor == 2


def test_volume() -> None:
    soup = recipe('"600 g beef stock", "400 g leeks, trimmed | fixed"', 4, 'makes = "2 L"')
    assert soup.batch == scalepan.quantity("2 L")
    assert soup.scale(batch="3.2 L").factor == 2
    assert refusal(recipe('"600 g beef stock"'), batch="2 L") == (
        "batch.unknown",
        'the recipe does not say how much it makes in volume (state it: makes = "...")',
    )


def test_portions_of_a_size() -> None:
    """10 x 200 g = 2000 g, of which ten eggs are 500 g, so 1500 g of stock, written 400 g."""
    pot = recipe('"400 g beef stock", "4 large eggs | one per portion"')
    ten = pot.scale(portions=10, portion_size="200 g")
    assert (ten.portions, ten.made, ten.factor) == (10, 10, Fraction(15, 4))
    assert [line.amount.value for line in ten.lines] == [1500, 10]
    assert grams(ten) == 2000
    assert refusal(pot, portions=10, portion_size="50 g") == (
        "size.unreachable",
        "a batch of 500 g cannot be made: the smallest one comes to more than 500 g (lines that "
        "are fixed or go in steps are in every batch)",
    )


def test_a_portion_size_that_steps_jump_over() -> None:
    """Dumplings stay at three steps for ten portions; whole onions move with the factor."""
    pot = recipe('"400 g beef stock", "1 medium onion, peeled | whole"')
    code, message = refusal(pot, portions=4, portion_size="135 g")
    assert code == "size.unreachable"
    assert "1 times the written amounts come to " in message


def test_spare_portions_and_serving_loss() -> None:
    """(38 + 2) / (1 - 1/5) = 50."""
    pot = recipe('"400 g beef stock"')
    for loss in ("20 %", "20%", "1/5", Fraction(1, 5), 0.2):
        made = pot.scale(portions=38, spare=2, serving_loss=loss)
        assert (made.portions, made.made) == (38, 50)
        assert made.lines[0].amount.to("kg AP").value == 5
    both = pot.scale(portions=38, spare=2, serving_loss="20 %", portion_size="150 g")
    assert grams(both) == 7500


@pytest.mark.parametrize(
    ("size", "code", "message"),
    [
        ({"portions": 4, "spare": -1}, "size.spare", "there cannot be -1 spare portions"),
        (
            {"portions": 4, "serving_loss": 1},
            "size.loss",
            "a serving loss of 100 % leaves no portion (write a percentage from 0 and below 100, "
            "of the batch that is made)",
        ),
        (
            {"portions": 4, "serving_loss": "120 %"},
            "size.loss",
            "a serving loss of 120 % leaves no portion (write a percentage from 0 and below 100, "
            "of the batch that is made)",
        ),
        (
            {"batch": "0 kg"},
            "size.target",
            "a batch of 0 kg is asked for, but must be above zero",
        ),
        (
            {"batch": "2 kg", "spare": 1},
            "recipe.size",
            "spare goes with portions, but the size is given by batch (write scale(portions=40, "
            "spare=...))",
        ),
        (
            {"portion_size": "100 g", "factor": 2},
            "recipe.size",
            "portion_size goes with portions, but the size is given by factor (write "
            "scale(portions=40, portion_size=...))",
        ),
        (
            {"batch": "2 kg", "stock": {"leeks": "1 kg"}},
            "recipe.size",
            "a size is given in two ways, by batch and by stock (write one of: "
            'scale(portions=40), scale(factor=10), scale(batch="12 kg"), '
            'scale(raw_batch="12 kg"), scale(stock={"eggs": "30"}))',
        ),
        (
            {"stock": {}},
            "size.stock",
            "the stock limits nothing: no line of it grows with the size",
        ),
        (
            {"stock": {"beef": "1 kg"}},
            "size.stock",
            "no line of the recipe is beef (lines: beef_stock)",
        ),
        (
            {"stock": {"beef_stok": "1 kg"}},
            "size.stock",
            "no line of the recipe is beef_stok (nearest: beef_stock)",
        ),
        (
            {"stock": {"beef stock": "99 g"}},
            "size.stock",
            "the stock of beef_stock is enough for ≈ 0.99 portions only (one whole portion needs "
            "more)",
        ),
    ],
)
def test_errors(size: dict[str, Any], code: str, message: str) -> None:
    found = refusal(recipe('"400 g beef stock"'), **size)
    assert found == (code, message.replace("≈ ", ""))


def test_amounts_of_a_wrong_kind_are_type_errors() -> None:
    pot = recipe('"400 g beef stock"')
    for size in ({"batch": [1]}, {"stock": ["beef stock"]}, {"stock": {"beef stock": None}}):
        with pytest.raises(TypeError):
            pot.scale(**size)


def test_as_many_as_the_stock_allows() -> None:
    """Leeks: SR28 11246 has 56 % refuse, so 2 kg AP are 880 g EP: 7.04 portions of 125 g."""
    pot = recipe('"500 g leeks, trimmed", "4 large eggs | one per portion", "10 g salt | fixed"')
    limited = pot.scale(stock={"leeks": "2 kg AP", "eggs": 30})
    assert limited.portions == 7
    assert pot.stock_limit({"leeks": "2 kg AP", "eggs": 30}) == ("leeks", Fraction("7.04"))
    assert pot.stock_limit({"leeks": "20 kg AP", "eggs": "9"}) == ("eggs", 9)
    # What is fixed limits nothing, however little there is beyond what every size needs.
    assert refusal(pot, stock={"salt": "10 g"})[0] == "size.stock"


def test_all_lines_of_a_food_draw_on_its_stock() -> None:
    pot = recipe('"3 eggs", { id = "wash", line = "1 egg, beaten" }')
    assert pot.stock_limit({"eggs": "30"})[1] == 30
    assert pot.stock_limit({"wash": "30"})[1] == 120


def test_a_food_that_a_base_takes_too_is_refused() -> None:
    text = (
        'name = "x"\nserves = 4\nlines = ["100 g butter", "1/2 of the roux"]\n'
        '[bases.roux]\nname = "Roux"\nserves = 4\nlines = ["200 g butter", "200 g plain flour"]\n'
    )
    assert refusal(scalepan.parse_recipe(text), stock={"butter": "1 kg"}) == (
        "size.stock",
        "the stock of butter also goes into roux.butter, and how much of it a base takes is not "
        "told by one line (give the line an id that is no name of the food, and the stock by that; "
        "or the stock of the base)",
    )


def test_the_limit_holds_for_whole_portions_and_one_more_is_too_many() -> None:
    pot = recipe('"3 large eggs | whole", "500 g leeks, trimmed"')
    for eggs in range(1, 40):
        limited = pot.scale(stock={"eggs": eggs})
        more = pot.scale(portions=limited.portions + 1)
        assert limited.lines[0].amount.value <= eggs < more.lines[0].amount.value


def test_a_curve_is_refused_where_portions_alone_do_not_give_the_size() -> None:
    dish = scalepan.parse_recipe('name = "Soup"\nserves = 4\nlines = ["400 g leeks"]\n')
    text = "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2.00,EUR,no\n"
    prices = scalepan.parse_prices(text)
    for size in ({"portion_size": "150 g"}, {"spare": 2}, {"serving_loss": "5 %"}):
        costing = scalepan.cost(dish.scale(portions=8, **size), prices)
        with pytest.raises(scalepan.CostError) as caught:
            costing.curve([8])
        assert (caught.value.code, str(caught.value)) == (
            "cost.curve",
            "Soup is at a size that portions alone do not give: portions of another size, spare "
            "ones, or a serving loss (ask for the curve of the recipe at portions as they are "
            "written)",
        )
    assert scalepan.cost(dish.scale(portions=8), prices).curve([8]).till == [2]


def test_lines_by_the_load_without_a_load_are_to_be_looked_at() -> None:
    text = 'name = "Soup"\nserves = 4\nlines = ["400 g leeks", "20 g butter | per load"]\n'
    dish = scalepan.parse_recipe(text).scale(portions=40)
    assert dish.lines[1].amount == scalepan.quantity("20 g AP")
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,EUR,no\n"
    )
    assert (
        "butter: goes by the load, but the recipe states no load; one is taken"
        in scalepan.cost(dish, prices).to_check
    )
