"""Seasonings that do not scale in full, baker's percentages and baking losses, as printed.

BAR: Baron Spices, Spice Handbook, "Scaling up recipes" (a trade leaflet). IDA: Idaho State
Department of Education, "How to Double a Recipe". BMS: "Baker's Math", lecture slides. FIG: "How to
Work with a Formula Expressed in Baker's Percent", leaflet. GIS: W. Gisslen, Professional Cooking.
GPB: Gisslen, "Scaling or portioning dough". BOC: Bocevska, Dimeski, Aldabas, Kemija u industriji,
article 316. LAT: Los Angeles Times, 8 Aug 1987. FLD: S. Q. Field, Culinary Reactions, ch. 10.
USU: Utah State University Extension, Weber County,
"Turkey Talk" (USDA times).
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from scalepan._core import round_to_multiple

TENTH = Fraction(1, 10)


def rounded(x: Fraction, step: Fraction | int, mode: str = "half up") -> Fraction:
    value: Fraction = round_to_multiple(x, Fraction(step), mode)[0]
    return value


def recipe(lines: list[str], serves: int, more: str = "") -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(
        f'name = "x"\nserves = {serves}\nmeasures = "us"\n{more}\nlines = [{listed}]\n'
    )


# BAR: double for the first doubling, then half (red pepper: a quarter) of the original for each
# further multiple. Exact.
@pytest.mark.parametrize(
    ("factor", "herbs", "red_pepper"),
    [(2, "2", "2"), (3, "2.5", "2.25"), (4, "3", "2.5"), (8, "5", "3.5"), (10, "6", "4")],
)
def test_herbs_and_red_pepper_taper(factor: int, herbs: str, red_pepper: str) -> None:
    lines = ["4 g dried thyme | tapered as herbs", "4 g cayenne | tapered as red pepper"]
    scaled = recipe([*lines, "4 g ground cumin"], 25).scale(factor=factor).lines
    assert [line.amount.value / 4 for line in scaled] == [
        Fraction(herbs),
        Fraction(red_pepper),
        factor,  # ground spices go in proportion
    ]


def test_all_spices_times_one_and_a_half_when_doubling() -> None:
    """IDA has doubling alone, so between 1 and 2 we draw a line, and beyond 2 we refuse."""
    thyme = recipe(["4 g dried thyme | tapered as when doubling"], 50)
    assert thyme.scale(portions=100).lines[0].amount.value == 6
    with pytest.raises(scalepan.RecipeError) as caught:
        thyme.scale(portions=101)
    assert caught.value.message == (
        "the taper ends at 2 times the written amounts; 2.02 times is asked for"
    )


def test_the_sources_disagree_on_herbs_at_twice_the_size() -> None:
    """BAR doubles them, IDA takes 1.5: no name stands for both."""
    lines = ["1 g thyme | tapered as herbs", "1 g sage | tapered as when doubling"]
    amounts = [line.amount.value for line in recipe(lines, 1).scale(portions=2).lines]
    assert amounts == [2, Fraction(3, 2)]


@pytest.mark.parametrize(("factor", "served", "exact"), [(4, 25, 24), (8, 50, 48), (16, 100, 96)])
def test_servings_are_nominal(factor: int, served: int, exact: int) -> None:
    """LAT: a recipe for 6 is taken x4 for 25, x8 for 50, x16 for 100; that makes 24, 48 and 96."""
    assert recipe(["6 eggs"], 6).scale(factor=factor).portions == exact < served


def test_turkey_times_grow_slower_than_the_weight() -> None:
    """USU: 8-12 lb take 2-3/4 to 3 h, 20-24 lb 4-1/2 to 5 h: weight x 2.2 at mid-range, time
    x 1.65. Thawing (30 min per lb) is in proportion: 8 lb 4 h, 24 lb 12 h. Times are no lines, so
    no rule of a line is taken from them."""
    weight = Fraction(20 + 24, 8 + 12)
    hours = (Fraction(9, 2) + 5) / (Fraction(11, 4) + 3)
    assert weight == Fraction("2.2")
    assert rounded(hours, Fraction(1, 100)) == Fraction("1.65")
    assert [pounds * Fraction(1, 2) for pounds in (8, 12, 16, 20, 24)] == [4, 6, 8, 10, 12]


def test_a_quart_in_a_pan_stands_half_as_deep_as_two() -> None:
    """FLD: 1 qt, 57.75 cubic inches, stands 1.14889975 in deep in a pan of 8 in, 2 qt 2.29779949,
    cut off; its whole surface grows from 129 to 158 square inches, by about 1-1/4. Pi to 15 digits
    is enough for nine."""
    pi = Fraction("3.14159265358979")
    quart = scalepan.quantity("1 qt", measures="us").to("inch^3").value
    assert quart == Fraction("57.75")
    deep = [quarts * quart / (16 * pi) for quarts in (1, 2)]
    assert rounded(deep[0], Fraction(1, 10**8)) == Fraction("1.14889975")
    assert rounded(deep[1], Fraction(1, 10**8), "down") == Fraction("2.29779949")
    surface = [2 * 16 * pi + 8 * pi * depth for depth in deep]
    assert [rounded(area, 1) for area in surface] == [129, 158]
    assert rounded(surface[1] / surface[0], Fraction(1, 4)) == Fraction(5, 4)


def test_a_formula_of_40_lb_of_flour() -> None:
    """BMS: salt .7 lb is 11.2 oz; water 58 % is 23.2 lb; the total is 162.125 %."""
    lines = ["100 % bread flour", "1.75 % salt", "2 % sugar", "0.375 % dry yeast", "58 % water"]
    dough = recipe(lines, 40, 'flour = "40 lb"')
    salt = dough.lines[1].amount
    assert (salt.value, salt.to("oz AP").value) == (Fraction("0.7"), Fraction("11.2"))
    total = sum(percent for _, percent in dough.bakers_percents(["bread_flour"]))
    assert total == Fraction("162.125")
    # The print divides by 1.62, two decimals, so its flour comes out 0.08 % high.
    print_is_high = Fraction("1.62125") / Fraction("1.62") - 1
    assert rounded(print_is_high * 100, Fraction(1, 100)) == Fraction("0.08")
    whole = dough.scale(raw_batch=scalepan.quantity(Fraction("64.85"), "lb"))
    assert whole.lines[0].amount.to("lb AP").value == 40


def test_percentages_of_a_formula() -> None:
    """BMS: 23 lb of water to 40 of flour are 57.5 %. FIG: salt 11.2, sugar 12.8, yeast 9.6 oz, oil
    1 lb 3.2 oz, water 23 lb 3.2 oz to 40 lb: 1.75, 2, 1.5, 3, 58 %. All exact."""
    assert recipe(["40 lb flour", "23 lb water"], 40).bakers_percents(["flour"])[1][1] == 57.5
    lines = [
        "40 lb bread flour",
        "11.2 oz salt",
        "12.8 oz sugar",
        "9.6 oz compressed yeast",
        "1 lb 3.2 oz olive oil",
        "23 lb 3.2 oz water",
    ]
    percents = [p for _, p in recipe(lines, 40).bakers_percents(["bread_flour"])]
    assert percents == [Fraction(p) for p in ("100", "1.75", "2", "1.5", "3", "58")]


# GIS: batter wanted over the total of 377.5 %; the flour to the next handy weight above.
@pytest.mark.parametrize(
    ("batter", "unit", "exact", "digit", "step", "used"),
    [("6 lb", "oz", "25.43", "1/100", 1, 26), ("3000 g", "g", "794.7", "1/10", 10, 800)],
)
def test_flour_is_rounded_up(
    batter: str, unit: str, exact: str, digit: str, step: int, used: int
) -> None:
    lines = ["100 % cake flour", "277.5 % other things"]
    sized = recipe(lines, 1, 'flour = "1 kg"').scale(raw_batch=batter)
    flour = sized.lines[0].amount.to(f"{unit} AP").value
    assert rounded(flour, Fraction(digit)) == Fraction(exact)
    assert rounded(flour, step, "up") == used


def test_yields_are_rounded_down() -> None:
    """GIS rounds printed yields down to a whole number, flour up: so both are on the safe side."""
    pieces = scalepan.quantity("3000 g") / scalepan.quantity("55 g")
    assert rounded(pieces.value, 1, "down") == 54
    assert rounded(pieces.value, 1, "up") == 55


def loss_of(text: str, grams: Fraction = Fraction(500)) -> Fraction:
    """The dough for a baked weight, less the bread."""
    loaf = recipe(["500 g dough"], 1, f'loss = "{text}"')
    sized = loaf.scale(batch=scalepan.quantity(grams, "g"))
    return sized.raw_batch.to("g").value - grams


def test_a_loss_of_the_dough_is_not_one_of_the_bread() -> None:
    """GPB: 10-13 % of the dough; its allowance of 50-65 g per 500 g baked (1-1/2 to 2 oz a pound)
    is that percentage of the bread. Of the dough it takes 55.6 to 74.7 g, 1.78 to 2.39 oz."""
    assert [loss_of(f"{p} % of the bread") for p in (10, 13)] == [50, 65]
    of_dough = [loss_of(f"{p} % of the dough") for p in (10, 13)]
    assert [rounded(g, TENTH) for g in of_dough] == [Fraction("55.6"), Fraction("74.7")]
    ounces = [rounded(g / 500 * 16, Fraction(1, 100)) for g in of_dough]
    assert ounces == [Fraction("1.78"), Fraction("2.39")]


# BOC: dough = 45.654 + 1.0624 bread, in g, for pieces of 650 to 1000 g; R2 .99. To 0.1 g and 0.1 %.
@pytest.mark.parametrize(
    ("bread", "dough", "loss"),
    [(600, "683.1", "12.2"), (800, "895.6", "10.7"), (900, None, "10.2")],
)
def test_one_percentage_of_loss_does_not_fit_all_sizes(
    bread: int, dough: str | None, loss: str
) -> None:
    exact = Fraction("45.654") + Fraction("1.0624") * bread
    assert dough is None or rounded(exact, TENTH) == Fraction(dough)
    percent = (exact - bread) / exact * 100
    assert rounded(percent, TENTH) == Fraction(loss)
    # Stated for that size, it gives that dough back, exactly.
    loaf = recipe(["500 g dough"], 1, f'loss = "{percent} % of the dough"')
    assert loaf.scale(batch=f"{bread} g").raw_batch.to("g").value == exact


def test_a_box_of_hot_dogs() -> None:
    """Charity leaflet "Meals for 125": 95 to a 10 lb box, yet 250 are listed as 18 lb. They weigh
    26.3 lb, and take 3 boxes."""
    each = scalepan.quantity("10 lb") / scalepan.quantity("95 piece")
    pounds = (each * scalepan.quantity("250 piece")).to("lb").value
    assert rounded(pounds, TENTH) == Fraction("26.3")
    boxes = scalepan.cover("250 piece", [("95 piece", "1.00")]).packs
    assert [count for count, _ in boxes] == [3]
