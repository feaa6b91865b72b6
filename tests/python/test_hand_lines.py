"""Lines as cookbooks, newspapers and recipe cards write them, with their readings by hand.

data/hand_lines.csv: the lines are invented in the manner of print from 1850 to today; each was
read by hand (`refuse` where no amount of a food can be read). A line that the reader has wrong, or
refuses though it is plain, is marked `open`: those may only grow fewer.
"""

from __future__ import annotations

import csv
from fractions import Fraction
from pathlib import Path

import scalepan

Row = dict[str, str]

with (Path(__file__).parent / "data" / "hand_lines.csv").open(encoding="utf-8") as stream:
    ROWS: list[Row] = list(csv.DictReader(stream))

UNITS = {"mL": "ml", "L": "l", "dL": "dl", "cL": "cl", "qt": "quart", "pt": "pint"}


def words(food: str) -> set[str]:
    return set(food.lower().replace(",", " ").split()) - {"a", "an", "and", "of", "the"}


def by_hand(row: Row) -> str:
    if row["unit"] == "refuse":
        return "refused"
    return told(row["low"], row["high"], row["unit"], words(row["food"]))


def as_read(row: Row) -> str:
    (line,) = scalepan.read_lines([row["line"]], measures=row["measures"] or None)
    if isinstance(line, scalepan.Error):
        return "refused" if line.column else f"refused without a place: {line}"
    if line.kind != "ingredient":
        return line.kind
    times, unit = (12, "piece") if line.unit == "dozen" else (1, line.unit)
    low, high = ("" if bound is None else bound * times for bound in (line.low, line.high))
    return told(low, high, UNITS.get(unit, unit), words(line.food))


def told(low: Fraction | str, high: Fraction | str, unit: str, food: set[str]) -> str:
    return f"{low} to {high} {unit} of {' '.join(sorted(food))}"


def test_each_line_is_read_as_by_hand() -> None:
    wrong = [row for row in ROWS if by_hand(row) != as_read(row)]
    faults = [f"{row['line']!r}: {as_read(row)}, not {by_hand(row)}" for row in wrong]
    new = [fault for fault, row in zip(faults, wrong, strict=True) if not row["open"]]
    assert not new, f"{len(new)} lines read wrong:\n" + "\n".join(new)
    settled = [row["line"] for row in ROWS if row["open"] and row not in wrong]
    assert not settled, "read right; no longer open:\n" + "\n".join(settled)
