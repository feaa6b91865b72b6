"""The hand-made selection: foods, their names, and where their facts come from."""

from __future__ import annotations

import re
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from pathlib import Path

from food_data.tables import DataError, Record, read_csv

SELECTION = Path("data-sources/foods_selection.csv")
KINDS = frozenset(
    (
        "food",
        "same",
        "near",
        "density",
        "piece",
        "edible",
        "cooked",
        "drained",
        "us cans",
        "no edible",
    )
)
ALLERGENS_EU = frozenset(
    (
        "gluten",
        "crustaceans",
        "eggs",
        "fish",
        "peanuts",
        "soybeans",
        "milk",
        "nuts",
        "celery",
        "mustard",
        "sesame",
        "sulphites",
        "lupin",
        "molluscs",
        "check the pack",
    )
)
ALLERGENS_US = frozenset(
    (
        "milk",
        "eggs",
        "fish",
        "crustacean shellfish",
        "tree nuts",
        "peanuts",
        "wheat",
        "soybeans",
        "sesame",
        "check the pack",
    )
)
CAUTIONS = frozenset(
    (
        "poultry",
        "minced_meat",
        "whole_meat",
        "egg",
        "fish",
        "shellfish",
        "dried_kidney_bean",
        "cooked_rice",
        "sprouts",
        # Not of safety: foods of which a rounded amount spoils a dish.
        "salt",
        "leavening",
        "gelling",
    )
)

FOOD_ID = re.compile(r"^[a-z][a-z0-9]*(_[a-z0-9]+)*$")


@dataclass(frozen=True)
class Row:
    """One line of the selection, with its place for messages."""

    line: int
    cells: dict[str, str]

    def __getitem__(self, column: str) -> str:
        return self.cells[column]

    def fault(self, message: str) -> DataError:
        return DataError(f"{SELECTION}:{self.line}: {message} (food {self['food']})")


def read_selection(root: Path) -> list[Row]:
    rows = [Row(line, cells) for line, cells in enumerate(read_csv(root / SELECTION), start=2)]
    for row in rows:
        if row["kind"] not in KINDS:
            raise row.fault(f"unknown kind {row['kind']!r}")
        if not FOOD_ID.match(row["food"]):
            raise row.fault("a food id is lower_snake")
    return rows


def default_label(rows: Sequence[Row], food: Row, kind: str) -> str:
    marked = [row["label"] for row in rows if row["kind"] == kind and row["default"] == "yes"]
    if len(marked) > 1:
        raise food.fault(f"more than one default {kind}")
    return marked[0] if marked else ""


def check_words(row: Row, column: str, allowed: frozenset[str]) -> str:
    words = [word for word in row[column].split(";") if word]
    unknown = [word for word in words if word not in allowed]
    if unknown:
        raise row.fault(f"{column}: unknown {', '.join(unknown)}")
    return ";".join(words)


def check_edible(rows: Sequence[Row], food: Row) -> None:
    """Every food has an edible share for the plain state, or says why not."""
    plain = any(row["kind"] == "edible" and not row["label"] for row in rows)
    excused = [row for row in rows if row["kind"] == "no edible"]
    if plain == bool(excused):
        raise food.fault("needs either an edible share or the reason why there is none")
    if any(not row["note"] for row in excused):
        raise food.fault("'no edible' needs its reason in the note")


def build_foods(rows: Sequence[Row]) -> list[Record]:
    groups: dict[str, list[Row]] = {}
    for row in rows:
        group = groups.setdefault(row["food"], [])
        if (row["kind"] == "food") != (not group):
            raise row.fault("the rows of a food begin with its one 'food' row")
        group.append(row)
    foods: list[Record] = []
    for group in groups.values():
        head = group[0]
        check_edible(group, head)
        foods.append(
            {
                "food": head["food"],
                "name": head["label"],
                "plural": head["plural"],
                "default_state": default_label(group, head, "density"),
                "default_size": default_label(group, head, "piece"),
                "allergens_eu": check_words(head, "allergens_eu", ALLERGENS_EU),
                "allergens_us": check_words(head, "allergens_us", ALLERGENS_US),
                "cautions": check_words(head, "cautions", CAUTIONS),
            }
        )
    return foods


def build_names(rows: Iterable[Row]) -> list[Record]:
    names: list[Record] = []
    seen: set[tuple[str, str, str]] = set()
    for row in rows:
        if row["kind"] not in ("food", "same", "near"):
            continue
        if not row["label"] or not row["plural"] or row["label"] != row["label"].lower():
            raise row.fault("a name is lower case and has a plural")
        key = (row["label"], row["region"], row["food"])
        if key in seen:
            raise row.fault(f"the name {row['label']!r} is there twice")
        seen.add(key)
        names.append(
            {
                "name": row["label"],
                "plural": row["plural"],
                "region": row["region"],
                "food": row["food"],
                "match": "near" if row["kind"] == "near" else "same",
            }
        )
    return names
