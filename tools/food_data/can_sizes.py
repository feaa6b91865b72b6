"""US can sizes: what a can of a size weighs, for the foods that are sold in them."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from pathlib import Path

from scalepan.foods import FACT_COLUMNS

from food_data.facts import MASSES, label_id, number_text
from food_data.printed_weight import weight
from food_data.selection import Row
from food_data.tables import Record, read_csv

CAN_SIZES = Path("data-sources/can_sizes.csv")


def can_facts(root: Path, rows: Iterable[Row]) -> list[Record]:
    """A piece weight as purchased of each size, for each food with a row 'us cans'."""
    sizes = list(enumerate(read_csv(root / CAN_SIZES), start=2))
    return [
        _fact(row["food"], size, f"{CAN_SIZES}:{line}")
        for row in rows
        if row["kind"] == "us cans"
        for line, size in sizes
    ]


def _fact(food: str, size: Record, place: str) -> Record:
    record = dict.fromkeys(FACT_COLUMNS, "")
    record.update(fact=f"{food}.piece.{label_id(size['size'])}", food=food, kind="piece")
    record.update(size=size["size"], from_stage="AP", to_stage="AP", source=size["source"])
    for column, printed in (("value", "weight"), ("low", "low"), ("high", "high")):
        if size[printed]:
            ounces: Fraction = weight(size[printed], place) / MASSES["oz"]
            record[column] = f"{number_text(ounces)} [oz_av] AP/(piece AP)"
    return record
