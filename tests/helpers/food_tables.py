"""The bundled food data and its sources, as tests read them."""

from __future__ import annotations

import csv
from collections import defaultdict
from fractions import Fraction
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SOURCES = ROOT / "data-sources"
DATA = ROOT / "python" / "scalepan" / "data"

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


def figure(fact: str) -> Fraction:
    return number(FACTS[fact]["value"])
