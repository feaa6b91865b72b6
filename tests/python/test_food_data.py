"""The bundled food data and the currency table against figures printed elsewhere.

Outside truths: the SR28 release extracts in data-sources/sr28 (every fact names its row), and
figures printed in other publications, each named beside the check. "Weights" means SR28's
weight file, "refuse" its food description file.
"""

from __future__ import annotations

import csv
import re
import shutil
import subprocess
import sys
from collections import Counter, defaultdict
from fractions import Fraction
from pathlib import Path

import pytest

ROOT = Path(__file__).resolve().parents[2]
SOURCES = ROOT / "data-sources"
DATA = ROOT / "python" / "scalepan" / "data"
BUILDER = ROOT / "tools" / "build_food_data.py"

# Exact millilitres. UCUM essence 2.2 and CLDR 41: a US cup is 473176473/2000000 mL, a quart
# four, a fluid ounce an eighth, a tablespoon a sixteenth, a teaspoon a forty-eighth of it.
CUP = Fraction(473176473, 2000000)
MILLILITRES = {
    "[cup_us]": CUP,
    "[qt_us]": CUP * 4,
    "[foz_us]": CUP / 8,
    "[tbs_us]": CUP / 16,
    "[tsp_us]": CUP / 48,
    "L": Fraction(1000),
}
UNIT_OF_WORD = {
    "cup": "[cup_us]",
    "tbsp": "[tbs_us]",
    "tablespoon": "[tbs_us]",
    "tsp": "[tsp_us]",
    "teaspoon": "[tsp_us]",
    "fl oz": "[foz_us]",
    "quart": "[qt_us]",
    "liter": "L",
    "serving 1 tbsp": "[tbs_us]",
}
GRAMS = {"g": Fraction(1), "lb": Fraction(45359237, 100000), "oz": Fraction(45359237, 1600000)}

Record = dict[str, str]


def rows_of(path: Path) -> list[Record]:
    with path.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


FOODS = rows_of(DATA / "foods.csv")
NAMES = rows_of(DATA / "names.csv")
FACTS = {row["fact"]: row for row in rows_of(DATA / "facts.csv")}
FOOD = {row["food"]: row for row in FOODS}
SELECTION = rows_of(SOURCES / "foods_selection.csv")
REFUSE = {row["ndb_no"]: row for row in rows_of(SOURCES / "sr28" / "refuse.csv")}
WEIGHTS: dict[str, list[Record]] = defaultdict(list)
for _row in rows_of(SOURCES / "sr28" / "weights.csv"):
    WEIGHTS[_row["ndb_no"]].append(_row)


def told(weight: Record) -> str:
    amount = weight["amount"]
    return weight["measure"] if amount == "1" else f"{amount} {weight['measure']}"


def weight_named(ndb: str, text: str) -> Record:
    """The SR28 weight row that a source text '<measure> <grams> g' names."""
    found = [row for row in WEIGHTS[ndb] if f"{told(row)} {row['grams']} g" == text]
    assert len(found) == 1, (ndb, text)
    return found[0]


def grams_each(weight: Record) -> Fraction:
    return Fraction(weight["grams"]) / Fraction(weight["amount"])


def unit_named(weight: Record) -> str:
    words = sorted(UNIT_OF_WORD, key=len, reverse=True)
    return next(UNIT_OF_WORD[word] for word in words if weight["measure"].startswith(word))


def number(value: str) -> Fraction:
    return Fraction(value.split(" ")[0])


def unit(value: str) -> str:
    return value.split(" ", 1)[1]


def find(name: str, region: str = "") -> set[str]:
    """The foods that a written name leads to; a region's own rows come before the others."""
    hits = [row for row in NAMES if name in (row["name"], row["plural"])]
    local = {row["food"] for row in hits if row["region"] == region}
    return local or {row["food"] for row in hits if not row["region"]}


def the_food(name: str, region: str = "") -> str:
    foods = find(name, region)
    assert len(foods) == 1, (name, foods)
    return foods.pop()


def figure(fact: str) -> Fraction:
    return number(FACTS[fact]["value"])


def from_sr28(kind: str) -> list[str]:
    return [
        fact
        for fact, row in FACTS.items()
        if row["kind"] == kind and row["source"].startswith("USDA SR28")
    ]


# ---------------------------------------------------------------- every fact and its source


@pytest.mark.parametrize("fact", from_sr28("density"))
def test_density_is_the_sr28_row_it_names(fact: str) -> None:
    row = FACTS[fact]
    first, *spread = row["source"].split("; spread: ")
    ndb, _, text = first.removeprefix("USDA SR28 ").partition(", ")
    weight = weight_named(ndb, text)
    name = unit_named(weight)
    assert unit(row["value"]) == f"g/{name}"
    assert number(row["value"]) == grams_each(weight)
    bounds = [grams_each(weight)]
    for sibling in (weight_named(ndb, text) for text in spread):
        bounds.append(grams_each(sibling) * MILLILITRES[name] / MILLILITRES[unit_named(sibling)])
    if spread:
        assert unit(row["low"]) == unit(row["high"]) == f"g/{name}"
        assert (number(row["low"]), number(row["high"])) == (min(bounds), max(bounds))
    else:
        assert row["low"] == row["high"] == ""


@pytest.mark.parametrize("fact", from_sr28("piece"))
def test_piece_is_the_sr28_row_it_names(fact: str) -> None:
    row = FACTS[fact]
    ndb, _, text = row["source"].removeprefix("USDA SR28 ").partition(", ")
    assert number(row["value"]) == grams_each(weight_named(ndb, text))
    assert unit(row["value"]) == "g EP/(piece AP)"
    assert (row["from_stage"], row["to_stage"]) == ("AP", "EP")


@pytest.mark.parametrize("fact", from_sr28("edible"))
def test_edible_share_is_one_less_the_refuse(fact: str) -> None:
    """SR28 documentation pp. 5-6: refuse is a percentage of the weight as purchased."""
    row = FACTS[fact]
    told_source = row["source"].split("; spread: ")[0]
    match = re.fullmatch(r"USDA SR28 (\d{5}), refuse (\d+) %(?: \((.+)\))?", told_source)
    assert match is not None
    release = REFUSE[match[1]]
    assert (match[2], match[3] or "") == (release["refuse_pct"], release["refuse_description"])
    assert number(row["value"]) == 1 - Fraction(match[2]) / 100
    assert unit(row["value"]) == "EP/AP"


@pytest.mark.parametrize("fact", from_sr28("cooked"))
def test_cooked_share_is_cooked_over_raw(fact: str) -> None:
    row = FACTS[fact]
    ndb, _, text = row["source"].removeprefix("USDA SR28 ").partition(", ")
    weight = weight_named(ndb, text)
    raw = re.search(r"from ([\d/]+) (lb|g) ?(?:raw|$)", weight["measure"])
    count, mass = (raw[1], raw[2]) if raw else ("1", weight["measure"].split(",")[0])
    assert number(row["value"]) == grams_each(weight) / (Fraction(count) * GRAMS[mass])
    assert unit(row["value"]) == "cooked/EP"


@pytest.mark.parametrize("fact", from_sr28("drained"))
def test_drained_share_is_drained_over_contents(fact: str) -> None:
    row = FACTS[fact]
    part, whole = row["source"].split("; of ")
    each = []
    for text in (part, whole):
        ndb, _, measure = text.removeprefix("USDA SR28 ").partition(", ")
        weight = weight_named(ndb, measure)
        assert weight["measure"].startswith("can")
        each.append(grams_each(weight))
    assert number(row["value"]) == each[0] / each[1]
    assert unit(row["value"]) == "drained/AP"


# CNF: Canadian Nutrient File 2015, grams cooked per 100 g raw. FBG: USDA Food Buying Guide
# (older edition). "common practice" facts rest on no publication and say so.
OTHER_SOURCES = {
    "chicken_breast_skinless.cooked.roasted": ("0.67", "Canadian Nutrient File 2015"),
    "chicken_breast_skinless.cooked.stewed": ("0.74", "Canadian Nutrient File 2015"),
    "chicken_breast_skinless.cooked.fried": ("0.63", "Canadian Nutrient File 2015"),
    "pork_tenderloin.cooked.roasted": ("0.77", "Canadian Nutrient File 2015"),
    "cod.cooked.baked": ("0.78", "Canadian Nutrient File 2015"),
    "beef_mince.cooked.cooked_and_drained": ("0.74", "USDA Food Buying Guide"),
    "pine_nut.edible": ("1", "common practice, no published source"),
}


def test_facts_from_other_sources_are_the_listed_ones() -> None:
    others = {fact: row for fact, row in FACTS.items() if not row["source"].startswith("USDA SR28")}
    assert others.keys() == OTHER_SOURCES.keys()
    for fact, (value, source) in OTHER_SOURCES.items():
        assert others[fact]["value"].split(" ")[0] == value
        assert others[fact]["source"].startswith(source)


def test_broccoli_spread_is_the_armed_forces_cards() -> None:
    """TM 10-412: .61 chopped, .78 stalks, .46 flowerets; SR28 lies between."""
    row = FACTS["broccoli.edible"]
    assert [row["low"], row["value"], row["high"]] == ["0.46 EP/AP", "0.61 EP/AP", "0.78 EP/AP"]


# ---------------------------------------------------------------- figures printed elsewhere

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


def regional(name: str) -> str:
    """The food of a name in plain, American or British use, in this order."""
    found = next(foods for region in ("", "US", "GB") if (foods := find(name, region)))
    assert len(found) == 1, (name, found)
    return found.pop()


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
        ("cornflour.density", "120", "-6.2"),
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


def test_known_defects_of_sr28_are_left_out() -> None:
    """05066 counts the bone twice, 13391 cooked equals raw, 11352 is peeled refuse."""
    assert not [fact for fact, row in FACTS.items() if re.search("05066|13391", row["source"])]
    assert "potato.edible" not in FACTS
    assert [fact for fact in FACTS if fact.startswith("potato.edible")] == ["potato.edible.peeled"]


# ---------------------------------------------------------------- the shape of the tables


def test_ids_are_unique_and_well_formed() -> None:
    facts = [row["fact"] for row in rows_of(DATA / "facts.csv")]
    assert len(set(facts)) == len(facts)
    assert len(FOOD) == len(FOODS) >= 150
    for fact, row in FACTS.items():
        label = (row["size"] if row["kind"] == "piece" else row["state"]).lower()
        tail = re.sub(r"[^a-z0-9]+", "_", label).strip("_")
        assert fact == ".".join(part for part in (row["food"], row["kind"], tail) if part)
        assert row["food"] in FOOD
        assert row["source"]


def test_value_texts_and_spreads() -> None:
    form = re.compile(r"\d+(?:\.\d*[1-9]|/\d+)? [^ ].*")
    for row in FACTS.values():
        assert form.fullmatch(row["value"]), row
        if row["low"] or row["high"]:
            assert unit(row["low"]) == unit(row["value"]) == unit(row["high"])
            assert number(row["low"]) <= number(row["value"]) <= number(row["high"])


def test_stages_fit_the_kind() -> None:
    same = {("any", "any"), ("EP", "EP"), ("cooked", "cooked"), ("drained", "drained")}
    allowed = {
        "density": same,
        "piece": {("AP", "EP")},
        "edible": {("AP", "EP")},
        "cooked": {("EP", "cooked")},
        "drained": {("AP", "drained")},
    }
    for row in FACTS.values():
        assert (row["from_stage"], row["to_stage"]) in allowed[row["kind"]]


def test_shares_are_shares() -> None:
    for row in FACTS.values():
        if row["kind"] in ("edible", "drained"):
            assert 0 < number(row["value"]) <= 1


def test_one_density_for_a_food_and_state() -> None:
    counts = Counter((r["food"], r["kind"], r["state"], r["size"]) for r in FACTS.values())
    assert max(counts.values()) == 1


def test_defaults_name_a_fact() -> None:
    for row in FOODS:
        own = [fact for fact in FACTS.values() if fact["food"] == row["food"]]
        if row["default_state"]:
            assert row["default_state"] in {f["state"] for f in own if f["kind"] == "density"}
        if row["default_size"]:
            assert row["default_size"] in {f["size"] for f in own if f["kind"] == "piece"}


def test_every_food_has_an_edible_share_or_says_why_not() -> None:
    reasons = {row["food"]: row["note"] for row in SELECTION if row["kind"] == "no edible"}
    for food in FOOD:
        assert (f"{food}.edible" in FACTS) != bool(reasons.get(food)), food


EU = (  # Reg. (EU) 1169/2011 Annex II
    "gluten crustaceans eggs fish peanuts soybeans milk nuts celery mustard sesame sulphites "
    "lupin molluscs"
)
US = "milk;eggs;fish;crustacean shellfish;tree nuts;peanuts;wheat;soybeans;sesame"  # FDA, nine
CAUTIONS = "poultry minced_meat whole_meat egg fish shellfish dried_kidney_bean cooked_rice sprouts"


def test_allergens_and_cautions_use_the_closed_words() -> None:
    allowed = {
        "allergens_eu": {*EU.split(), "check the pack"},
        "allergens_us": {*US.split(";"), "check the pack"},
        "cautions": set(CAUTIONS.split()),
    }
    for row in FOODS:
        for column, words in allowed.items():
            assert set(filter(None, row[column].split(";"))) <= words, row


@pytest.mark.parametrize(
    ("food", "eu", "us"),
    [
        ("plain_flour", "gluten", "wheat"),
        ("pearl_barley", "gluten", ""),
        ("rolled_oat", "gluten", ""),
        ("celery", "celery", ""),
        ("mussel", "molluscs", ""),
        ("prawn", "crustaceans", "crustacean shellfish"),
        ("soy_sauce", "gluten;soybeans", "wheat;soybeans"),
        ("white_wine", "sulphites", ""),
        ("butter", "milk", "milk"),
        ("egg_white", "eggs", "eggs"),
        ("walnut", "nuts", "tree nuts"),
        ("tahini", "sesame", "sesame"),
        ("leek", "", ""),
    ],
)
def test_the_two_lists_of_allergens_differ(food: str, eu: str, us: str) -> None:
    """No gluten, celery, mollusc or sulphite entry among the nine of the FDA."""
    assert (FOOD[food]["allergens_eu"], FOOD[food]["allergens_us"]) == (eu, us)


def test_same_stuff_same_allergens() -> None:
    """US milk, egg, fish, soya and sesame rows have their EU counterpart."""
    for row in FOODS:
        eu, us = (set(row[f"allergens_{place}"].split(";")) for place in ("eu", "us"))
        for word in ("milk", "eggs", "fish", "soybeans", "sesame"):
            assert (word in eu) == (word in us), row
        assert ("crustaceans" in eu) == ("crustacean shellfish" in us), row
        assert "wheat" not in us or "gluten" in eu, row


# ---------------------------------------------------------------- names


def test_names_lead_to_foods() -> None:
    keys = [(row["name"], row["region"], row["food"]) for row in NAMES]
    assert len(set(keys)) == len(keys)
    for row in NAMES:
        assert row["food"] in FOOD
        assert row["match"] in ("same", "near")
        assert row["region"] in ("", "GB", "US", "AU", "NZ")
        assert row["plural"]
        assert row["name"] == row["name"].lower()
    for row in FOODS:
        own = [name for name in NAMES if name["food"] == row["food"] and name["match"] == "same"]
        assert (row["name"], row["plural"]) in {(name["name"], name["plural"]) for name in own}


def test_only_the_meant_names_are_ambiguous() -> None:
    foods: dict[tuple[str, str], set[str]] = defaultdict(set)
    for row in NAMES:
        foods[row["name"], row["region"]].add(row["food"])
    assert {name for (name, _), found in foods.items() if len(found) > 1} == {
        "pepper",
        "coriander",
        "kidney bean",
        "red kidney bean",
        "white bean",
        "cannellini bean",
        "olive",
        "chicken",
    }


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("leeks", "leek"),
        ("pearl barley", "pearl_barley"),
        ("eggs", "egg"),
        ("chickpeas", "chickpea"),
        ("onions", "onion"),
        ("granulated sugar", "granulated_sugar"),
        ("tomatoes", "tomato"),
        ("cloves of garlic", "garlic"),
        ("peppers", "green_pepper"),
        ("lentils", "lentil"),
        ("dried chickpeas", "chickpea_dried"),
    ],
)
def test_names_a_cook_writes(name: str, food: str) -> None:
    assert the_food(name) == food


@pytest.mark.parametrize(
    ("gb", "us"),
    [
        ("courgettes", "zucchini"),
        ("aubergine", "eggplant"),
        ("spring onion", "scallion"),
        ("spring onions", "green onions"),
        ("coriander leaf", "cilantro"),
        ("cornflour", "cornstarch"),
        ("icing sugar", "powdered sugar"),
        ("icing sugar", "confectioners' sugar"),
        ("bicarbonate of soda", "baking soda"),
        ("double cream", "heavy cream"),
        ("plain flour", "all-purpose flour"),
        ("self-raising flour", "self-rising flour"),
        ("wholemeal flour", "whole-wheat flour"),
        ("prawns", "shrimp"),
        ("chickpeas", "garbanzo beans"),
        ("swede", "rutabaga"),
        ("beetroot", "beets"),
        ("rocket", "arugula"),
        ("caster sugar", "superfine sugar"),
        ("beef mince", "ground beef"),
        ("haricot beans", "navy beans"),
        ("butter beans", "lima beans"),
        ("tomato puree", "tomato paste"),
        ("red chilli", "red chili"),
        ("linseeds", "flaxseeds"),
    ],
)
def test_regional_names_find_the_same_food(gb: str, us: str) -> None:
    assert the_food(gb, "GB") == the_food(us, "US")


def test_tomato_puree_is_not_the_same_thing_everywhere() -> None:
    assert the_food("tomato puree", "GB") != the_food("tomato puree", "US")


def test_near_names_are_marked() -> None:
    match = {(row["name"], row["food"]): row["match"] for row in NAMES}
    assert match["caster sugar", "granulated_sugar"] == "near"
    assert match["double cream", "heavy_cream"] == "near"
    assert match["smoked paprika", "paprika"] == "near"
    assert match["zucchini", "courgette"] == "same"


def test_a_plain_kidney_bean_is_asked_about() -> None:
    """Raw ones need their caution, so the plain name must not settle on the tin."""
    assert find("kidney beans") == {"kidney_bean_canned", "kidney_bean_dried"}
    assert FOOD["kidney_bean_dried"]["cautions"] == "dried_kidney_bean"
    assert FOOD["kidney_bean_canned"]["cautions"] == ""


# ---------------------------------------------------------------- the builder


def run_builder(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(BUILDER), *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False)


@pytest.fixture
def copied_root(tmp_path: Path) -> Path:
    shutil.copytree(SOURCES, tmp_path / "data-sources")
    shutil.copytree(DATA, tmp_path / "python" / "scalepan" / "data")
    return tmp_path


def test_committed_files_are_up_to_date() -> None:
    done = run_builder("--check")
    assert (done.returncode, done.stderr) == (0, "")


def test_check_tells_a_changed_file(copied_root: Path) -> None:
    path = copied_root / "python" / "scalepan" / "data" / "facts.csv"
    path.write_text(path.read_text(encoding="utf-8").replace("0.44", "0.45"), encoding="utf-8")
    done = run_builder("--check", "--root", str(copied_root))
    assert done.returncode == 1
    assert "facts.csv: out of date" in done.stderr


def test_an_unknown_measure_is_told_with_its_place(copied_root: Path) -> None:
    path = copied_root / "data-sources" / "foods_selection.csv"
    text = path.read_text(encoding="utf-8").replace("11246,leek,", "11246,basket,")
    path.write_text(text, encoding="utf-8")
    done = run_builder("--root", str(copied_root))
    assert done.returncode == 1
    assert re.search(r"foods_selection.csv:\d+: SR28 11246 has no measure 'basket'", done.stderr)
    assert "Traceback" not in done.stderr


def test_extracts_have_the_counts_of_the_release() -> None:
    """SR28 documentation, table 3: 8,789 foods, 15,438 weights."""
    assert len(REFUSE) == 8789
    assert sum(len(rows) for rows in WEIGHTS.values()) == 15438


# ---------------------------------------------------------------- currencies

CURRENCY = re.compile(r'\{"([A-Z]{3})", (-1|\d), "([^"]+)"\},')


@pytest.fixture(scope="module")
def currencies() -> list[tuple[str, int]]:
    text = (ROOT / "cpp" / "measure" / "currency_table.inc").read_text(encoding="utf-8")
    head, *lines = text.splitlines()
    assert head.startswith("// ISO 4217 list one, published 2024-06-25")
    matches = [CURRENCY.fullmatch(line) for line in lines]
    return [(match[1], int(match[2])) for match in matches if match is not None]


def test_currency_counts(currencies: list[tuple[str, int]]) -> None:
    """ISO 4217 list one of 2024-06-25: 17 without digits, 140 with 2, 7 with 3, 2 with 4."""
    assert Counter(digits for _, digits in currencies) == {0: 17, 2: 140, 3: 7, 4: 2, -1: 13}
    codes = [code for code, _ in currencies]
    assert codes == sorted(set(codes))
    assert len(codes) == 179


def test_currency_digits(currencies: list[tuple[str, int]]) -> None:
    by_digits: dict[int, set[str]] = defaultdict(set)
    for code, digits in currencies:
        by_digits[digits].add(code)
    none = "BIF CLP DJF GNF ISK JPY KMF KRW PYG RWF UGX UYI VND VUV XAF XOF XPF"
    assert by_digits[0] == set(none.split())
    assert by_digits[3] == {"BHD", "IQD", "JOD", "KWD", "LYD", "OMR", "TND"}
    assert by_digits[4] == {"CLF", "UYW"}
    assert {"XAU", "XXX", "XTS", "XDR"} <= by_digits[-1]
    assert {"GBP", "EUR", "USD", "HUF", "IDR"} <= by_digits[2]
