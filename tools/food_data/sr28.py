"""The SR28 extracts: weights and refuse, looked up by food number and measure text."""

from __future__ import annotations

import re
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

from food_data.selection import Row
from food_data.tables import DataError, Record, csv_text, read_csv

WEIGHTS = Path("data-sources/sr28/weights.csv")
REFUSE = Path("data-sources/sr28/refuse.csv")
REFUSE_COLUMNS = ("ndb_no", "description", "refuse_pct", "refuse_description")
SEQUENCE_MARK = re.compile(r"^(?P<text>.*) \[seq (?P<seq>\d+)\]$")


@dataclass(frozen=True)
class Weight:
    """One SR28 weight row: grams for an amount of a measure."""

    ndb: str
    description: str
    seq: str
    amount: str
    measure: str
    grams: str

    @property
    def told(self) -> str:
        """The measure as SR28 prints it, with its amount where that is not 1."""
        return self.measure if self.amount == "1" else f"{self.amount} {self.measure}"

    @property
    def grams_each(self) -> Fraction:
        return Fraction(self.grams) / Fraction(self.amount)


@dataclass(frozen=True)
class Refuse:
    """One SR28 food with its refuse; pct is '' where SR28 leaves it blank."""

    description: str
    pct: str
    what: str


class Release:
    """The SR28 extracts, looked up by food number and measure text."""

    def __init__(self, root: Path) -> None:
        self._weights: dict[str, list[Weight]] = {}
        for cells in read_csv(root / WEIGHTS):
            weight = Weight(
                cells["ndb_no"],
                cells["description"],
                cells["seq"],
                cells["amount"],
                cells["measure"],
                cells["grams"],
            )
            self._weights.setdefault(weight.ndb, []).append(weight)
        self._refuse = {
            cells["ndb_no"]: Refuse(
                cells["description"], cells["refuse_pct"], cells["refuse_description"]
            )
            for cells in read_csv(root / REFUSE)
        }

    def refuse(self, row: Row) -> Refuse:
        found = self._refuse.get(row["ndb_no"])
        if found is None:
            raise row.fault(f"SR28 has no food {row['ndb_no']!r}")
        return found

    def weight(self, row: Row, ndb: str, text: str) -> Weight:
        """The one weight row of a food whose printed measure is `text`."""
        marked = SEQUENCE_MARK.match(text)
        wanted = marked["text"] if marked else text
        found = [
            weight
            for weight in self._weights.get(ndb, [])
            if weight.told == wanted and (marked is None or weight.seq == marked["seq"])
        ]
        if len(found) == 1:
            return found[0]
        if found:
            listed = ", ".join(f"[seq {weight.seq}] {weight.grams} g" for weight in found)
            raise row.fault(f"SR28 {ndb} has {text!r} more than once: {listed}")
        known = "; ".join(weight.told for weight in self._weights.get(ndb, [])) or "nothing"
        raise row.fault(f"SR28 {ndb} has no measure {text!r}; it has: {known}")


def refuse_text(food_des: Path) -> str:
    """refuse.csv from the SR28 release file: caret-separated, text in tildes, Latin-1."""
    records: list[Record] = []
    for line, text in enumerate(food_des.read_text(encoding="latin-1").splitlines(), start=1):
        fields = [field.removeprefix("~").removesuffix("~") for field in text.split("^")]
        if len(fields) != 14:
            raise DataError(f"{food_des}:{line}: {len(fields)} fields, 14 expected")
        values = (fields[0], fields[2], fields[8], fields[7].strip())
        records.append(dict(zip(REFUSE_COLUMNS, values, strict=True)))
    return csv_text(REFUSE_COLUMNS, records)
