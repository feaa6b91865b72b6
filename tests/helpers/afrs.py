"""Printed rows of the Armed Forces Recipe Service: weight, measure and issue, read exactly.

tests/published/data/afrs_pairs.csv; TM 10-412 / NAVSUP P-7 and its older and sister editions, as
its source column says. A US-government work.
"""

from __future__ import annotations

import re
from fractions import Fraction
from pathlib import Path
from typing import NamedTuple

from food_tables import CUP, GRAMS, rows_of

DATA = Path(__file__).resolve().parents[1] / "published" / "data"

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


ROWS = [Printed(**row) for row in rows_of(DATA / "afrs_pairs.csv")]
# Which food, state and preparation of the bundled catalogue an ingredient is.
FOODS = {row["ingredient"]: row for row in rows_of(DATA / "afrs_foods.csv")}


class Part(NamedTuple):
    """A number of a unit."""

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


class Range(NamedTuple):
    """What a printed figure may stand for."""

    low: Fraction
    high: Fraction

    def meets(self, other: Range) -> bool:
        return self.low <= other.high and other.low <= self.high


def is_2003(row: Printed) -> bool:
    """The 2003 cards print eighths and thirds; older ones whole ounces and quarters."""
    return "(2003)" in row.source


def printed_pounds(row: Printed, text: str) -> Range:
    """A weight with half a step of its print: 1/8 of the last unit, or an ounce."""
    step = POUNDS[parts(text)[-1].unit] / 8 if is_2003(row) else Fraction(1, 16)
    return Range(pounds(text) - step / 2, pounds(text) + step / 2)


def printed_cups(row: Printed) -> Range:
    """A measure in US cups with half a step of its print: 1/8 of the last unit, or a quarter."""
    last = CUPS[parts(row.measure_text)[-1].unit]
    cups = millilitres(row.measure_text) / CUP
    half = last / (16 if is_2003(row) else 8)
    return Range(cups - half, cups + half)


# Notes on how the row was read from the stored copy, which leave its figures sound.
READING_NOTES = re.compile(r"(columns split|card number)[^;]*(; |$)")


def doubt(row: Printed) -> str:
    """What the note says against the row's figures; empty for a plain row."""
    return READING_NOTES.sub("", row.note)
