"""Second published figures: they stand beside the first one and are not used before it."""

from __future__ import annotations

from collections.abc import Iterable
from pathlib import Path

from scalepan.foods import FACT_COLUMNS

from food_data.facts import label_id, number_text
from food_data.printed_weight import weight
from food_data.tables import DataError, Record, read_csv

SECOND = Path("data-sources/second_figures.csv")
SHARES = {"edible": "EP/AP", "drained": "drained/AP"}


def read_second_figures(root: Path, facts: Iterable[Record]) -> list[Record]:
    """The facts of the table; each needs a first figure on the very same thing."""
    firsts = {(fact["food"], fact["kind"], fact["state"] or fact["size"]): fact for fact in facts}
    made: list[Record] = []
    for line, row in enumerate(read_csv(root / SECOND), start=2):
        place = f"{SECOND}:{line}"
        first = firsts.get((row["food"], row["kind"], row["label"]))
        if first is None:
            raise DataError(f"{place}: no first figure for {row['food']} {row['kind']}")
        made.append(_beside(first, row, place))
    return made


def _beside(first: Record, row: Record, place: str) -> Record:
    if not row["source"] or label_id(row["tail"]) != row["tail"]:
        raise DataError(f"{place}: a second figure needs a source and a lower-case tail")
    record = {column: first[column] for column in FACT_COLUMNS}
    record.update(fact=f"{first['fact']}.{row['tail']}", value=row["value"], source=row["source"])
    record.update(low="", high="")
    if not row["value"]:
        share = weight(row["part"], place) / weight(row["whole"], place)
        record["value"] = f"{number_text(share)} {SHARES[row['kind']]}"
        record["source"] += f", {row['part']} of {row['whole']}"
    return record
