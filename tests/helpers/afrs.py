"""Printed rows of the Armed Forces Recipe Service: weight, measure and issue, read exactly.

tests/published/data/afrs_pairs.csv; TM 10-412 / NAVSUP P-7 and its older and sister editions, as
its source column says. A US-government work.
"""

from __future__ import annotations

import csv
import re
from fractions import Fraction
from pathlib import Path
from typing import NamedTuple

from food_tables import CUP, GRAMS

FILE = Path(__file__).resolve().parents[1] / "published" / "data" / "afrs_pairs.csv"

POUNDS = {"lb": Fraction(1), "lbs": Fraction(1), "oz": Fraction(1, 16), "": Fraction(1)}
CUPS = {
    "gal": Fraction(16),
    "qt": Fraction(4),
    "qts": Fraction(4),
    "cup": Fraction(1),
    "cups": Fraction(1),
    "tbsp": Fraction(1, 16),
    "tsp": Fraction(1, 48),
}
NUMBER = r"(?:(?P<whole>\d+)[- ])?(?P<number>\d+/\d+|\d*\.?\d+)"
PART = re.compile(NUMBER + r" ?(?P<unit>[A-Za-z]*)")


class Printed(NamedTuple):
    """One row of the file."""

    source: str
    card: str
    recipe: str
    ingredient: str
    weight_text: str
    measure_text: str
    issue_text: str
    note: str


with FILE.open(encoding="utf-8", newline="") as _stream:
    ROWS = [Printed(**row) for row in csv.DictReader(_stream)]


class Part(NamedTuple):
    """A number of a unit, and the step its last digit is printed to."""

    amount: Fraction
    unit: str


def parts(text: str) -> list[Part]:
    """``1 qts 2-1/4 cup`` as its numbers and units; brackets hold the weight of a count."""
    inner = re.search(r"\((.*)\)", text)
    found = []
    for match in PART.finditer(inner[1] if inner else text):
        amount = Fraction(match["whole"] or 0) + Fraction(match["number"])
        found.append(Part(amount, match["unit"].lower()))
    return found


def pounds(text: str) -> Fraction:
    """A weight in pounds; a bare number stays one."""
    return sum((part.amount * POUNDS[part.unit] for part in parts(text)), Fraction(0))


def grams(text: str) -> Fraction:
    """A weight in grams."""
    return pounds(text) * GRAMS["lb"]


def millilitres(text: str) -> Fraction:
    """A measure in millilitres."""
    return sum((part.amount * CUPS[part.unit] for part in parts(text)), Fraction(0)) * CUP
