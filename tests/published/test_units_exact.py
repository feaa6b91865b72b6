"""Every kitchen unit against the exact ratio printed for it, and its UCUM code.

Sources: UCUM essence 2.2 (2024-06-17) and CLDR 41 units.xml for the ratios; US liquid measure is
the gallon of 231 cubic inches and US dry measure the bushel of 2150.42 (NIST Handbook 44,
appendix C), with 1 cubic inch = 16.387064 mL; imperial measure is the gallon of 4.54609 L and the
pound of 453.59237 g (UK Weights and Measures Act 1985); label measures are 21 CFR
101.9(b)(5)(viii); the Australian tablespoon is NSW Health, "Conversion chart".
"""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan

VOLUMES = [
    ("us", "gallon", "473176473/125000", "[gal_us]"),
    ("us", "quart", "473176473/500000", "[qt_us]"),
    ("us", "pint", "473176473/1000000", "[pt_us]"),
    ("us", "cup", "473176473/2000000", "[cup_us]"),
    ("us", "gill", "473176473/4000000", "[gil_us]"),
    ("us", "fluid ounce", "473176473/16000000", "[foz_us]"),
    ("us", "tablespoon", "473176473/32000000", "[tbs_us]"),
    ("us", "teaspoon", "157725491/32000000", "[tsp_us]"),
    ("us", "fluid dram", "473176473/128000000", "[fdr_us]"),
    ("us", "bushel", "35239.07016688", "[bu_us]"),
    ("us", "peck", "8809.76754172", "[pk_us]"),
    ("us", "dry quart", "1101.220942715", "[dqt_us]"),
    ("us", "dry pint", "550.6104713575", "[dpt_us]"),
    ("imperial", "gallon", "454609/100", "[gal_br]"),
    ("imperial", "quart", "454609/400", "[qt_br]"),
    ("imperial", "pint", "454609/800", "[pt_br]"),
    ("imperial", "gill", "454609/3200", "[gil_br]"),
    ("imperial", "fluid ounce", "454609/16000", "[foz_br]"),
    ("metric", "cup", "250", ""),
    ("metric", "pint", "500", ""),
    ("au", "cup", "250", ""),
    ("au", "tablespoon", "20", ""),
    ("au", "teaspoon", "5", ""),
]
LABEL = [("[cup_m]", "240"), ("[foz_m]", "30"), ("[tbs_m]", "15"), ("[tsp_m]", "5")]
WEIGHTS = [
    ("pound", "45359237/100000", "[lb_av]"),
    ("ounce", "45359237/1600000", "[oz_av]"),
    ("stone", "6350.29318", "[stone_av]"),
    ("grain", "0.06479891", "[gr]"),
]


@pytest.mark.parametrize(("measures", "unit", "millilitres", "code"), VOLUMES)
def test_volumes_are_the_printed_ratios(
    measures: str, unit: str, millilitres: str, code: str
) -> None:
    expected = Fraction(millilitres)
    assert scalepan.quantity(f"1 {unit}", measures=measures).to("mL").value == expected
    if code:
        assert scalepan.quantity(f"1 {code}").to("mL").value == expected


@pytest.mark.parametrize(("unit", "grams", "code"), WEIGHTS)
def test_weights_are_the_printed_ratios(unit: str, grams: str, code: str) -> None:
    assert scalepan.quantity(f"1 {unit}").to("g").value == Fraction(grams)
    assert scalepan.quantity(f"1 {code}").to("g").value == Fraction(grams)


@pytest.mark.parametrize(("code", "millilitres"), LABEL)
def test_label_measures_go_by_their_codes(code: str, millilitres: str) -> None:
    assert scalepan.quantity(f"1 {code}").to("mL").value == Fraction(millilitres)


def test_the_label_ounce_is_28_grams() -> None:
    assert scalepan.quantity("1 [oz_m]").to("g").value == 28


def test_the_label_cup_is_not_the_metric_cup() -> None:
    """UCUM [cup_m] is 240 mL, the metric cup of CLDR (cup-metric) 250 mL."""
    label = scalepan.quantity("1 [cup_m]")
    assert scalepan.quantity("1 cup", measures="metric") - label == scalepan.quantity("10 mL")


# GNU units 2.22: brtablespoon, brteaspoon, brdessertspoon, brcup (half an imperial pint).
@pytest.mark.parametrize(
    ("unit", "millilitres"),
    [("tablespoon", "15"), ("teaspoon", "5"), ("dessertspoon", "10"), ("cup", "284.130625")],
)
def test_british_spoons_and_cup(unit: str, millilitres: str) -> None:
    whole = scalepan.quantity(f"1 {unit}", measures="imperial")
    assert whole.to("mL").value == Fraction(millilitres)


# NIST SP 430, "Equivalents of the common capacity units used in the kitchen".
@pytest.mark.parametrize(
    ("whole", "parts"),
    [
        ("1 tsp", "1 1/3 fluid drams"),
        ("1 tsp", "1/3 tbsp"),
        ("1 tsp", "1/6 fl oz"),
        ("1 tsp", "1/48 cup"),
        ("1 tbsp", "1/2 fl oz"),
        ("1 tbsp", "1/16 cup"),
        ("1 fl oz", "2 tbsp"),
        ("1 fl oz", "6 tsp"),
        ("1 gill", "1/2 cup"),
        ("1 quart", "256 fluid drams"),
        ("1 quart", "192 tsp"),
        ("1 quart", "64 tbsp"),
        ("1 quart", "32 fl oz"),
        ("1 quart", "8 gills"),
        ("1 quart", "4 cups"),
        ("1 quart", "2 pints"),
    ],
)
def test_capacity_equivalents_of_the_kitchen(whole: str, parts: str) -> None:
    assert scalepan.quantity(whole, measures="us") == scalepan.quantity(parts, measures="us")


# Institute of Child Nutrition, "Basics at a Glance".
@pytest.mark.parametrize(
    ("cups", "spoons"),
    [
        ("1/3 cup", "5 tbsp 1 tsp"),
        ("2/3 cup", "10 tbsp 2 tsp"),
        ("3/8 cup", "6 tbsp"),
        ("5/8 cup", "10 tbsp"),
        ("7/8 cup", "14 tbsp"),
        ("1/8 cup", "2 tbsp"),
    ],
)
def test_parts_of_a_cup_in_spoons(cups: str, spoons: str) -> None:
    assert scalepan.quantity(cups, measures="us") == scalepan.quantity(spoons, measures="us")


# UCUM [in_i] is 2.54 cm; a US gallon is 231 cubic inches, so a cup is 14.4375 of them.
def test_lengths_areas_and_the_cubic_inch() -> None:
    assert scalepan.quantity("1 [in_i]").to("cm").value == Fraction("2.54")
    assert scalepan.quantity("1 inch^2").to("cm^2").value == Fraction("6.4516")
    assert scalepan.quantity("1 inch^3").to("mL").value == Fraction("16.387064")
    assert scalepan.quantity("14.4375 inch^3") == scalepan.quantity("1 cup", measures="us")
    assert scalepan.quantity("1 m^2").to("mm^2").value == 10**6


# SI: 60 s and 60 min (UCUM min, h).
def test_minutes_and_hours() -> None:
    assert scalepan.quantity("1 h").to("min").value == 60
    assert scalepan.quantity("1 min").to("s").value == 60
