"""Weights as cards print them."""

from __future__ import annotations

import re
from fractions import Fraction

from food_data.facts import MASSES
from food_data.tables import DataError

WEIGHT = re.compile(r"(?:(?P<whole>\d+)-)?(?P<number>\d+(?:\.\d+|/\d+)?) ?(?P<unit>lb|oz|g)?")


def weight(text: str, place: str) -> Fraction:
    """A weight as printed, in grams: '6 lb 9 oz', '10-5/8 lb', or a bare number."""
    matches = list(WEIGHT.finditer(text))
    if not matches or text != " ".join(match[0] for match in matches):
        raise DataError(f"{place}: {text!r} is no weight")
    grams = Fraction(0)
    for match in matches:
        number = Fraction(match["whole"] or 0) + Fraction(match["number"])
        grams += number * MASSES[match["unit"] or "g"]
    return grams
