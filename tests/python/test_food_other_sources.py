"""Bundled facts that are not of SR28, against the figures of the sources they name.

AFRS: Armed Forces Recipe Service, TM 10-412 (tests/published/data/afrs_pairs.csv). GNU units 2.22:
its file definitions.units. CNF: Canadian Nutrient File 2015, grams cooked per 100 g raw. FBG: USDA
Food Buying Guide. Facts that rest on no publication say so.
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from afrs import ROWS, pounds
from food_tables import CUP, FACTS, GRAMS, MILLILITRES, number, unit

# Lines of GNU units' definitions.units, as it prints them.
GNU_UNITS = {
    "cake_flour.density.sifted": "cakeflour_sifted 3.5 oz/uscup",
    "cake_flour.density.spooned": "cakeflour_spooned 4 oz/uscup",
    "cake_flour.density.scooped": "cakeflour_scooped 4.5 oz/uscup",
    "plain_flour.density.sifted": "flour_sifted 4 oz/uscup",
    "plain_flour.density.spooned": "flour_spooned 4.25 oz/uscup",
    "plain_flour.density.scooped": "flour_scooped 5 oz/uscup",
    "bread_flour.density.sifted": "breadflour_sifted 4.25 oz/uscup",
    "bread_flour.density.spooned": "breadflour_spooned 4.5 oz/uscup",
    "bread_flour.density.scooped": "breadflour_scooped 5.5 oz/uscup",
    "dutch_cocoa.density.sifted": "dutchcocoa_sifted 75 g/uscup",
    "dutch_cocoa.density.spooned": "dutchcocoa_spooned 92 g/uscup",
    "dutch_cocoa.density.scooped": "dutchcocoa_scooped 95 g/uscup",
    "cocoa.density.sifted": "cocoa_sifted 75 g/uscup",
    "cocoa.density.spooned": "cocoa_spooned 82 g/uscup",
    "cocoa.density.scooped": "cocoa_scooped 95 g/uscup",
    "brown_sugar.density.dark_packed": "brownsugar_dark 239 g/uscup",
    "clarified_butter.density": "butter_clarified 6.8 oz/uscup",
    "kosher_salt.density.diamond_crystal": "koshersalt 2.8 g/ustsp",
    "kosher_salt.density.morton": "koshersalt_morton 4.8 g/ustsp",
}
GNU_EGGS = {"egg_white.piece.large.gnu": "30", "egg_yolk.piece.large.gnu": "18.6"}

OTHERS = {
    "chicken_breast_skinless.cooked.roasted": ("0.67", "Canadian Nutrient File 2015"),
    "chicken_breast_skinless.cooked.stewed": ("0.74", "Canadian Nutrient File 2015"),
    "chicken_breast_skinless.cooked.fried": ("0.63", "Canadian Nutrient File 2015"),
    "chicken_breast_boneless.cooked.roasted": ("0.71", "Canadian Nutrient File 2015"),
    "pork_tenderloin.cooked.roasted": ("0.77", "Canadian Nutrient File 2015"),
    "pork_loin.cooked.broiled": ("0.69", "Canadian Nutrient File 2015"),
    "pork_mince.cooked": ("0.72", "Canadian Nutrient File 2015"),
    "beef_mince.cooked.broiled": ("0.65", "Canadian Nutrient File 2015"),
    "lean_beef_mince.cooked.broiled": ("0.65", "Canadian Nutrient File 2015"),
    "lean_beef_mince.cooked.crumbled": ("0.68", "Canadian Nutrient File 2015"),
    "fatty_beef_mince.cooked.broiled": ("0.6", "Canadian Nutrient File 2015"),
    "cod.cooked.baked": ("0.78", "Canadian Nutrient File 2015"),
    "beef_mince.cooked.cooked_and_drained": ("0.74", "USDA Food Buying Guide"),
    "apple.edible.fbg": ("0.91", "USDA Food Buying Guide"),
    "watermelon.edible.fbg": ("0.61", "USDA Food Buying Guide"),
    "white_bean_canned.drained": ("0.6", "400 g can of pulses with 240 g drained"),
    "black_bean.drained": ("0.6", "400 g can of pulses with 240 g drained"),
    "haricot_bean.drained": ("0.6", "400 g can of pulses with 240 g drained"),
    "butter_bean.drained": ("0.6", "400 g can of pulses with 240 g drained"),
    "chickpea.drained.uk": ("0.6", "400 g can of pulses with 240 g drained"),
    "kidney_bean_canned.drained.uk": ("0.6", "400 g can of pulses with 240 g drained"),
    "pinto_bean.drained.uk": ("0.6", "400 g can of pulses with 240 g drained"),
    "pine_nut.edible": ("1", "common practice, no published source"),
    "chicken_breast_boneless.edible": ("1", "common practice, no published source"),
}

# Card and ingredient of each AFRS share in the printed rows.
AFRS = {
    "apple.edible.afrs": ("M 001 00", "APPLES,FRESH,MEDIUM,UNPEELED,DICED"),
    "avocado.edible.afrs": ("M 030 00", "AVOCADO,FRESH,DICED"),
    "banana.edible.afrs": ("J 011 00", "BANANA,FRESH"),
    "beetroot_canned.drained": ("M-G 1", "Beets, sliced, canned, drained"),
    "black_olive.drained": ("M-G 1", "Olives, ripe, whole, drained"),
    "carrot.edible.afrs": ("M-G 1", "Carrots, fresh, strips"),
    "cauliflower.edible.afrs": ("M-G 1", "Cauliflower, fresh"),
    "celery.edible.afrs": ("M-G 1", "Celery, fresh, sticks or strips"),
    "cherry.edible.afrs": ("A 007", "Cherries, sweet (stemmed and pitted)"),
    "chickpea.drained.afrs": ("M-G 1", "Peas, chick, canned, drained"),
    "cucumber.edible.afrs": ("M 036 02", "CUCUMBER,FRESH,CHOPPED"),
    "cucumber.edible.peeled.afrs": ("M-G 1", "Cucumbers, fresh, pared, sliced"),
    "grape.edible.afrs": ("A 007", "Grapes (stemmed and seeded)"),
    "grapefruit.edible.afrs": ("A 007", "Grapefruit (segments only)"),
    "green_olive.drained": ("M-G 1", "Olives, green, unpitted, drained"),
    "iceberg_lettuce.edible.afrs": ("M-G 1", "Lettuce, fresh, trimmed, separated"),
    "kidney_bean_canned.drained.afrs": ("M-G 1", "Beans, kidney, canned, drained"),
    "mushroom.edible.afrs": ("M-G 1", "Mushrooms, sliced, fresh, trimmed"),
    "orange.edible.afrs": ("A 007", "Oranges (peeled, seeded sections with membrane)"),
    "pear.edible.afrs": ("A 007", "Pears (unpared and cored)"),
    "peach.edible.peeled": ("A 007", "Peaches (peeled and pitted)"),
    "pear.edible.peeled": ("A 007", "Pears (pared and cored)"),
    "pineapple.edible.afrs": ("A 007", "Pineapple (pared and cored)"),
    "potato.edible.peeled.afrs": ("Q 046 03", "Potatoes, white, peeled"),
    "radish.edible.afrs": ("M-G 1", "Radishes, fresh"),
    "spinach.edible.afrs": ("M-G 1", "Spinach, fresh"),
    "spring_onion.edible.afrs": ("M-G 1", "Onions, green, chopped"),
    "tangerine.edible.afrs": ("A 007", "Tangerines (sections)"),
    "tomato.edible.afrs": ("M-G 1", "Tomatoes, fresh, sliced (6 slices)"),
}


# Ounces of a can: American Can Co.; least and most of K-State Extension 2009, where these differ.
CANS = {
    "no. 300 can": ("14.5", "14", "16"),
    "no. 303 can": ("16", "", ""),
    "no. 2 can": ("20", "", ""),
    "no. 2-1/2 can": ("29", "26", "30"),
    "no. 10 can": ("105", "96", "117"),
}
IS_CAN = {fact for fact, row in FACTS.items() if row["size"] in CANS}


def test_facts_from_other_sources_are_the_listed_ones() -> None:
    others = {fact for fact, row in FACTS.items() if not row["source"].startswith("USDA SR28")}
    assert others == {*GNU_UNITS, *GNU_EGGS, *OTHERS, *AFRS, *IS_CAN}


@pytest.mark.parametrize("fact", sorted(IS_CAN))
def test_weight_of_a_can(fact: str) -> None:
    row = FACTS[fact]
    printed = [row[key].removesuffix(" [oz_av] AP/(piece AP)") for key in ("value", "low", "high")]
    assert tuple(printed) == CANS[row["size"]]


def test_a_number_10_can_of_tomatoes() -> None:
    """American Can Co.: 6 lb 9 oz."""
    can = scalepan.convert("2 piece", "lb AP", food="canned tomatoes", size="no. 10 can")
    assert can.value == 2 * Fraction(105, 16)
    assert (can.low.value, can.high.value) == (12, 2 * Fraction(117, 16))


@pytest.mark.parametrize("fact", OTHERS)
def test_figure_of_another_source(fact: str) -> None:
    value, source = OTHERS[fact]
    assert number(FACTS[fact]["value"]) == Fraction(value)
    assert FACTS[fact]["source"].startswith(source)


@pytest.mark.parametrize("fact", GNU_UNITS)
def test_density_of_gnu_units(fact: str) -> None:
    _, amount, per = GNU_UNITS[fact].split()
    mass, volume = per.split("/")
    grams = Fraction(amount) * GRAMS[mass]
    ours = number(FACTS[fact]["value"]) * (
        GRAMS["oz"] if "oz_av" in unit(FACTS[fact]["value"]) else 1
    )
    our_volume = MILLILITRES[unit(FACTS[fact]["value"]).split("/")[1]]
    assert ours / our_volume == grams / {"uscup": CUP, "ustsp": CUP / 48}[volume]
    assert FACTS[fact]["source"].startswith("GNU units 2.22, densities of cooking ingredients")


@pytest.mark.parametrize("fact", GNU_EGGS)
def test_egg_of_gnu_units(fact: str) -> None:
    assert number(FACTS[fact]["value"]) == Fraction(GNU_EGGS[fact])


@pytest.mark.parametrize("fact", AFRS)
def test_share_of_the_armed_forces(fact: str) -> None:
    card, ingredient = AFRS[fact]
    (row,) = [row for row in ROWS if (row.card, row.ingredient) == (card, ingredient)]
    assert number(FACTS[fact]["value"]) == pounds(row.weight_text) / pounds(row.issue_text)
    edition, where = FACTS[fact]["source"].split("TM 10-412)")
    assert edition.startswith("Armed Forces Recipe Service")
    assert {"M-G 1": "M-G No. 1 relish table"}.get(card, f"card {card}") in where
