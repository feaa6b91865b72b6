"""The bundled facts against figures printed in other publications, each named beside the check."""

from __future__ import annotations

from fractions import Fraction

import pytest
from food_names import regional
from food_tables import CUP, FACTS, GRAMS, UNIT_OF_WORD, figure, number

# SR28 weights as printed in its documentation and food pages: name, state, unit, grams.
PRINTED_WEIGHTS = [
    ("butter", "", "cup", 227),
    ("milk", "", "cup", 244),
    ("heavy cream", "", "cup", 238),
    ("heavy cream", "whipped", "cup", 120),
    ("sour cream", "", "cup", 230),
    ("soybean oil", "", "cup", 218),
    ("olive oil", "", "cup", 216),
    ("canola oil", "", "cup", 218),
    ("shortening", "", "cup", 205),
    ("all-purpose flour", "", "cup", 125),
    ("bread flour", "", "cup", 137),
    ("whole-wheat flour", "", "cup", 120),
    ("cornstarch", "", "cup", 128),
    ("granulated sugar", "", "cup", 200),
    ("brown sugar", "packed", "cup", 220),
    ("brown sugar", "unpacked", "cup", 145),
    ("powdered sugar", "unsifted", "cup", 120),
    ("powdered sugar", "sifted", "cup", 100),
    ("honey", "", "cup", 339),
    ("molasses", "", "cup", 337),
    ("corn syrup", "", "cup", 341),
    ("maple syrup", "", "cup", 315),
    ("salt", "", "cup", 292),
    ("baking powder", "", "tsp", "4.6"),
    ("baking soda", "", "tsp", "4.6"),
    ("active dry yeast", "", "tbsp", 12),
    ("cocoa", "", "cup", 86),
    ("long-grain rice", "", "cup", 185),
    ("long-grain rice", "cooked", "cup", 158),
    ("rolled oats", "", "cup", 81),
    ("whole oats", "", "cup", 156),
    ("almonds", "whole", "cup", 143),
    ("almonds", "sliced", "cup", 92),
    ("almonds", "slivered", "cup", 108),
    ("almonds", "ground", "cup", 95),
    ("lentils", "", "cup", 192),
    ("dried chickpeas", "", "cup", 200),
    ("dried kidney beans", "", "cup", 184),
    ("peanut butter", "", "cup", 258),
    ("vinegar", "", "cup", 238),
    ("vanilla extract", "", "cup", 208),
    ("water", "", "liter", 1000),
    ("shallots", "chopped", "tbsp", 10),
]


@pytest.mark.parametrize(("name", "state", "word", "grams"), PRINTED_WEIGHTS)
def test_printed_weight(name: str, state: str, word: str, grams: int | str) -> None:
    fact = ".".join(part for part in (regional(name), "density", state) if part)
    row = FACTS[fact]
    assert row["value"] == f"{grams} g/{UNIT_OF_WORD[word]}"


# SR28 refuse, percent of the weight as purchased.
PRINTED_REFUSE = {
    "egg": 12,
    "apple": 10,
    "asparagus": 47,
    "artichoke": 60,
    "avocado": 26,
    "banana": 36,
    "green beans": 12,
    "beets": 33,
    "broccoli": 39,
    "cabbage": 20,
    "cantaloupe": 49,
    "carrots": 11,
    "cauliflower": 61,
    "celery": 11,
    "corn on the cob": 64,
    "cucumber": 3,
    "eggplant": 19,
    "garlic": 13,
    "ginger": 7,
    "grapes": 4,
    "guava": 22,
    "kiwi": 24,
    "leeks": 56,
    "lemon": 47,
    "butterhead lettuce": 26,
    "mango": 29,
    "mushrooms": 3,
    "onions": 10,
    "scallions": 4,
    "orange": 27,
    "parsley": 5,
    "peach": 4,
    "pear": 10,
    "peas in the pod": 62,
    "green pepper": 18,
    "pineapple": 49,
    "radish": 10,
    "raspberries": 4,
    "spinach": 28,
    "strawberries": 6,
    "sweet potato": 28,
    "tomato": 9,
    "watermelon": 48,
    "almonds in shell": 60,
    "walnuts in shell": 55,
    "whole chicken": 32,
    "chicken breast on the bone": 20,
    "whole turkey": 29,
}


@pytest.mark.parametrize("name", PRINTED_REFUSE)
def test_printed_refuse(name: str) -> None:
    assert figure(f"{regional(name)}.edible") == 1 - Fraction(PRINTED_REFUSE[name], 100)


@pytest.mark.parametrize(
    ("fact", "percent"), [("potato.edible.peeled", 25), ("cucumber.edible.peeled", 27)]
)
def test_printed_refuse_of_peeled(fact: str, percent: int) -> None:
    assert figure(fact) == 1 - Fraction(percent, 100)


# SR28 pieces, edible grams: food, sizes, grams.
PRINTED_PIECES = [
    ("egg", "small medium large extra_large jumbo", "38 44 50 56 63"),
    ("egg_white", "large", "33"),
    ("egg_yolk", "large", "17"),
    ("apple", "small medium large", "149 182 223"),
    ("banana", "small medium large", "101 118 136"),
    ("orange", "small medium large", "96 131 184"),
    ("lemon", "small large", "58 84"),
    ("lemon_juice", "lemon", "48"),
    ("lime_juice", "lime", "44"),
    ("orange_juice", "orange", "86"),
    ("lime", "", "67"),
    ("peach", "small medium large", "130 150 175"),
    ("pear", "small medium large", "148 178 230"),
    ("kiwi", "", "69"),
    ("avocado", "", "201"),
    ("mango", "", "336"),
    ("pineapple", "", "905"),
    ("watermelon", "", "4518"),
    ("strawberry", "small medium large", "7 12 18"),
    ("onion", "small medium large", "70 110 150"),
    ("garlic", "clove", "3"),
    ("carrot", "small medium large", "50 61 72"),
    ("celery", "small medium large stalk", "17 40 64 40"),
    ("potato", "small medium large", "170 213 369"),
    ("sweet_potato", "", "130"),
    ("tomato", "small medium large", "91 123 182"),
    ("cherry_tomato", "", "17"),
    ("plum_tomato", "", "62"),
    ("green_pepper", "small medium large", "74 119 164"),
    ("cucumber", "", "301"),
    ("courgette", "small medium large", "118 196 323"),
    ("aubergine", "unpeeled peeled", "548 458"),
    ("leek", "", "89"),
    ("broccoli", "bunch stalk", "608 151"),
    ("cauliflower", "small medium large", "265 588 840"),
    ("cabbage", "small medium large", "714 908 1248"),
    ("iceberg_lettuce", "small medium large", "324 539 755"),
    ("mushroom", "small medium large", "10 18 23"),
    ("radish", "small medium large", "2 4.5 9"),
    ("beetroot", "", "82"),
    ("parsley", "sprig", "1"),
    ("basil", "leaf", "0.5"),
    ("ginger", "slice", "2.2"),
    ("bacon", "slice", "28"),
    ("white_bread", "slice", "29"),
    ("dried_yeast", "packet", "7.2"),
    ("butter", "stick", "113"),
    ("salt", "dash", "0.4"),
]


@pytest.mark.parametrize(("food", "sizes", "grams"), PRINTED_PIECES)
def test_printed_pieces(food: str, sizes: str, grams: str) -> None:
    for size, weight in zip(sizes.split() or [""], grams.split(), strict=True):
        fact = ".".join(part for part in (food, "piece", size) if part)
        assert FACTS[fact]["value"] == f"{weight} g EP/(piece AP)"


# SR28 "yield from" rows, percent as printed to a tenth.
@pytest.mark.parametrize(
    ("fact", "percent"),
    [
        ("beef_mince.cooked.patty_broiled", "67.9"),
        ("beef_mince.cooked.patty_pan_broiled", "73.2"),
        ("lean_beef_mince.cooked.crumbles_pan_browned", "67.9"),
        ("fatty_beef_mince.cooked.crumbles_pan_browned", "61.3"),
        ("fatty_beef_mince.cooked.loaf_baked", "62.6"),
        ("lamb_mince.cooked.broiled", "69.0"),
        ("beef_mince.cooked.frozen_patty_broiled", "69.0"),
        ("stewing_beef.cooked.pot_roasted", "72.8"),
        ("venison.cooked.roasted", "75.0"),
        ("bison.cooked.roasted", "75.0"),
        ("elk.cooked.roasted", "75.0"),
        ("couscous.cooked", "303.4"),
        ("instant_oat.cooked", "624.3"),
    ],
)
def test_printed_cooked_share(fact: str, percent: str) -> None:
    assert abs(figure(fact) * 100 - Fraction(percent)) <= Fraction(1, 20)


# GNU units 2.22, cooking table (credited there to The Cake Bible): grams in a US cup, and how far
# it lies from SR28 in percent.
@pytest.mark.parametrize(
    ("fact", "grams", "percent"),
    [
        ("butter.density", "226.8", "-0.1"),
        ("granulated_sugar.density", "200", "0"),
        ("icing_sugar.density.unsifted", "113.4", "-5.5"),
        ("brown_sugar.density.packed", "217", "-1.4"),
        ("honey.density", "333.1", "-1.7"),
        ("molasses.density", "318.9", "-5.4"),
        ("corn_syrup.density", "326.0", "-4.4"),
        ("milk.density", "242", "-0.8"),
        ("heavy_cream.density", "232", "-2.5"),
        ("sour_cream.density", "242", "5.2"),
        ("corn_starch.density", "120", "-6.2"),
        ("soybean_oil.density", "212.6", "-2.5"),
        ("shortening.density", "191.4", "-6.6"),
    ],
)
def test_second_table_of_densities(fact: str, grams: str, percent: str) -> None:
    difference = (Fraction(grams) / figure(fact) - 1) * 100
    assert abs(difference - Fraction(percent)) <= Fraction(7, 100)


# Canadian Nutrient File 2015, g/mL, five decimals.
@pytest.mark.parametrize(
    ("fact", "per_millilitre"),
    [
        ("milk.density", "1.03128"),
        ("rapeseed_oil.density", "0.92139"),
        ("butter.density", "0.95947"),
        ("granulated_sugar.density", "0.84531"),
        ("brown_sugar.density.packed", "0.92984"),
        ("brown_sugar.density.unpacked", "0.61285"),
        ("honey.density", "1.43243"),
    ],
)
def test_canadian_densities(fact: str, per_millilitre: str) -> None:
    ours = figure(fact) / CUP
    assert abs(ours / Fraction(per_millilitre) - 1) < Fraction(1, 2000)


def test_milk_cups_make_the_quart() -> None:
    """SR28 01077 prints cup 244 g and quart 976 g."""
    row = FACTS["milk.density"]
    assert row["source"].endswith("quart 976 g")
    assert figure("milk.density") * 4 == 976


def test_eggs_make_the_cup() -> None:
    """SR28 01123 prints cup (4.86 large eggs) 243 g and large 50 g."""
    assert figure("egg.piece.large") * Fraction("4.86") == figure("egg.density") == 243


def test_butter_sticks_make_the_cup() -> None:
    assert abs(2 * figure("butter.piece.stick") - figure("butter.density")) <= 1


def test_large_egg_in_shell() -> None:
    """US classes for shell eggs: large is 24 oz the dozen at least, so 56.7 g in shell."""
    in_shell = 24 * GRAMS["oz"] / 12
    assert round(in_shell * figure("egg.edible")) == figure("egg.piece.large") == 50


@pytest.mark.parametrize(
    ("food", "size", "grams"), [("apple", "medium", "202.2"), ("banana", "medium", "184.4")]
)
def test_whole_fruit_as_purchased(food: str, size: str, grams: str) -> None:
    whole = figure(f"{food}.piece.{size}") / figure(f"{food}.edible")
    assert abs(whole - Fraction(grams)) <= Fraction(1, 20)


def test_peeled_aubergine_agrees_with_its_refuse() -> None:
    """SR28 11209: 458 g peeled from 1-1/4 lb, refuse 19 %."""
    whole = Fraction(5, 4) * GRAMS["lb"]
    peeled = FACTS["aubergine.piece.peeled"]["value"]
    assert abs(number(peeled) / whole - figure("aubergine.edible")) < Fraction(1, 100)
