"""The same units against the library pint, computing in fractions."""

from __future__ import annotations

from fractions import Fraction

import pint
import pytest
import scalepan

REGISTRY = pint.UnitRegistry(non_int_type=Fraction)

# The written unit, our measures, pint's name. pint has no label, metric-cup, metric-pint or
# Australian units and no drop: those rows stand in the table of printed ratios only.
US = [
    "gallon",
    "quart",
    "pint",
    "cup",
    "gill",
    "fluid_ounce",
    "tablespoon",
    "teaspoon",
    "fluid_dram",
    "bushel",
    "peck",
    "dry_quart",
    "dry_pint",
]
IMPERIAL = ["gallon", "quart", "pint", "gill", "fluid_ounce", "cup"]
WEIGHT = ["pound", "ounce", "stone", "grain", "gram", "kilogram", "milligram"]
METRIC = ["millilitre", "centilitre", "decilitre", "litre"]


def by_pint(name: str, unit: str) -> Fraction:
    magnitude = REGISTRY.Quantity(Fraction(1), name).to(unit).magnitude
    assert isinstance(magnitude, int | Fraction)
    return Fraction(magnitude)


@pytest.mark.parametrize("name", US)
def test_us_volumes(name: str) -> None:
    ours = scalepan.quantity(f"1 {name.replace('_', ' ')}", measures="us")
    assert ours.to("mL").value == by_pint(name, "mL")


@pytest.mark.parametrize("name", IMPERIAL)
def test_imperial_volumes(name: str) -> None:
    ours = scalepan.quantity(f"1 {name.replace('_', ' ')}", measures="imperial")
    assert ours.to("mL").value == by_pint(f"imperial_{name}", "mL")


@pytest.mark.parametrize("name", METRIC)
def test_metric_volumes(name: str) -> None:
    assert scalepan.quantity(f"1 {name}").to("mL").value == by_pint(name, "mL")


@pytest.mark.parametrize("name", WEIGHT)
def test_weights(name: str) -> None:
    assert scalepan.quantity(f"1 {name}").to("g").value == by_pint(name, "g")


@pytest.mark.parametrize(("ours", "theirs"), [("inch", "inch"), ("cm", "cm"), ("m", "metre")])
def test_lengths(ours: str, theirs: str) -> None:
    assert scalepan.quantity(f"1 {ours}").to("mm").value == by_pint(theirs, "mm")


@pytest.mark.parametrize("unit", ["min", "h", "day"])
def test_times(unit: str) -> None:
    assert scalepan.quantity(f"1 {unit}").to("s").value == by_pint(unit, "s")
