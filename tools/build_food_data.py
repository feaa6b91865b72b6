#!/usr/bin/env python3
"""Build the bundled food data from the USDA SR28 extracts and the hand-made selection.

Reads   data-sources/sr28/weights.csv, data-sources/sr28/refuse.csv,
        data-sources/foods_selection.csv
Writes  python/scalepan/data/foods.csv, names.csv, facts.csv

    build_food_data.py            write the three files
    build_food_data.py --check    write nothing, fail if a file differs from what would be written
    build_food_data.py --refuse-from FOOD_DES.txt
                                  remake data-sources/sr28/refuse.csv from the SR28 release file

Every figure is kept as exact text or as a ratio of integers; no float occurs.
"""

from __future__ import annotations

import argparse
import csv
import io
import re
import sys
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from fractions import Fraction
from pathlib import Path

ROOT = Path(__file__).resolve().parents[1]
WEIGHTS = Path("data-sources/sr28/weights.csv")
REFUSE = Path("data-sources/sr28/refuse.csv")
SELECTION = Path("data-sources/foods_selection.csv")
OUT = Path("python/scalepan/data")

FOOD_COLUMNS = (
    "food",
    "name",
    "plural",
    "default_state",
    "default_size",
    "allergens_eu",
    "allergens_us",
    "cautions",
)
NAME_COLUMNS = ("name", "plural", "region", "food", "match")
FACT_COLUMNS = (
    "fact",
    "food",
    "kind",
    "state",
    "size",
    "from_stage",
    "to_stage",
    "value",
    "low",
    "high",
    "source",
)
REFUSE_COLUMNS = ("ndb_no", "description", "refuse_pct", "refuse_description")

KINDS = frozenset(
    ("food", "same", "near", "density", "piece", "edible", "cooked", "drained", "no edible")
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
    )
)

CUBIC_INCH = Fraction(16387064, 1000000)  # mL, from 1 in = 2.54 cm
US_GALLON = 231 * CUBIC_INCH
POUND = Fraction(45359237, 100000)  # g
# SR28's word at the head of a measure -> (UCUM code, mL)
VOLUMES: dict[str, tuple[str, Fraction]] = {
    "cup": ("[cup_us]", US_GALLON / 16),
    "tbsp": ("[tbs_us]", US_GALLON / 256),
    "tablespoon": ("[tbs_us]", US_GALLON / 256),
    "tsp": ("[tsp_us]", US_GALLON / 768),
    "teaspoon": ("[tsp_us]", US_GALLON / 768),
    "fl oz": ("[foz_us]", US_GALLON / 128),
    "quart": ("[qt_us]", US_GALLON / 4),
    "liter": ("L", Fraction(1000)),
}
MASSES: dict[str, Fraction] = {"g": Fraction(1), "oz": POUND / 16, "lb": POUND}
VOLUME_HEAD = re.compile(
    r"(?:serving 1 )?(" + "|".join(sorted(VOLUMES, key=len, reverse=True)) + r")\b"
)
SEQUENCE_MARK = re.compile(r"^(?P<text>.*) \[seq (?P<seq>\d+)\]$")
FOOD_ID = re.compile(r"^[a-z][a-z0-9]*(_[a-z0-9]+)*$")


class DataError(Exception):
    """A fault in the inputs, told with the place."""


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


@dataclass(frozen=True)
class Row:
    """One line of the selection, with its place for messages."""

    line: int
    cells: dict[str, str]

    def __getitem__(self, column: str) -> str:
        return self.cells[column]

    def fault(self, message: str) -> DataError:
        return DataError(f"{SELECTION}:{self.line}: {message} (food {self['food']})")


Record = dict[str, str]


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


def read_csv(path: Path) -> list[Record]:
    """The rows of a CSV file with a header line."""
    if not path.is_file():
        raise DataError(f"{path}: no such file")
    with path.open(encoding="utf-8", newline="") as stream:
        return [dict(cells) for cells in csv.DictReader(stream)]


def read_selection(root: Path) -> list[Row]:
    rows = [Row(line, cells) for line, cells in enumerate(read_csv(root / SELECTION), start=2)]
    for row in rows:
        if row["kind"] not in KINDS:
            raise row.fault(f"unknown kind {row['kind']!r}")
        if not FOOD_ID.match(row["food"]):
            raise row.fault("a food id is lower_snake")
    return rows


def number_text(value: Fraction) -> str:
    """The shortest exact text: a decimal where it ends, else n/d."""
    rest = value.denominator
    digits = 0
    for prime in (2, 5):
        power = 0
        while rest % prime == 0:
            rest //= prime
            power += 1
        digits = max(digits, power)
    if rest != 1:
        return f"{value.numerator}/{value.denominator}"
    scaled = abs(value.numerator) * 10**digits // value.denominator
    text = str(scaled).rjust(digits + 1, "0")
    sign = "-" if value < 0 else ""
    if digits == 0:
        return sign + text
    return f"{sign}{text[:-digits]}.{text[-digits:]}"


def volume_of(row: Row, weight: Weight) -> tuple[str, Fraction]:
    """The volume unit at the head of an SR28 measure, with its millilitres."""
    head = VOLUME_HEAD.match(weight.measure)
    if head is None:
        raise row.fault(f"{weight.told!r} does not begin with a volume")
    return VOLUMES[head[1]]


def siblings_of(release: Release, row: Row) -> list[Weight]:
    names = [text for text in row["siblings"].split(" ; ") if text]
    return [release.weight(row, row["ndb_no"], text) for text in names]


def label_id(label: str) -> str:
    return re.sub(r"[^a-z0-9]+", "_", label.lower()).strip("_")


def fact_id(row: Row, kind: str) -> str:
    return ".".join(part for part in (row["food"], kind, label_id(row["label"])) if part)


def fact(row: Row, stages: tuple[str, str], value: str, source: str, **more: str) -> Record:
    """One line of facts.csv; a density, share or cooked label is a state, a piece's a size."""
    kind = row["kind"]
    record = dict.fromkeys(FACT_COLUMNS, "")
    record.update(
        fact=fact_id(row, kind),
        food=row["food"],
        kind=kind,
        from_stage=stages[0],
        to_stage=stages[1],
        value=value,
        source=source,
    )
    record["size" if kind == "piece" else "state"] = row["label"]
    record.update(more)
    return record


def density_stages(release: Release, row: Row) -> tuple[str, str]:
    if row["stage"]:
        return row["stage"], row["stage"]
    return ("any", "any") if release.refuse(row).pct == "0" else ("EP", "EP")


def density(release: Release, row: Row) -> Record:
    weight = release.weight(row, row["ndb_no"], row["measure"])
    unit, volume = volume_of(row, weight)
    source = f"USDA SR28 {weight.ndb}, {weight.told} {weight.grams} g"
    spread = {}
    siblings = siblings_of(release, row)
    if siblings:
        each = [weight.grams_each]
        for sibling in siblings:
            each.append(sibling.grams_each * volume / volume_of(row, sibling)[1])
        spread = {
            "low": f"{number_text(min(each))} g/{unit}",
            "high": f"{number_text(max(each))} g/{unit}",
        }
        source += "".join(f"; spread: {one.told} {one.grams} g" for one in siblings)
    value = f"{number_text(weight.grams_each)} g/{unit}"
    return fact(row, density_stages(release, row), value, source, **spread)


def piece(release: Release, row: Row) -> Record:
    weight = release.weight(row, row["ndb_no"], row["measure"])
    value = f"{number_text(weight.grams_each)} g EP/(piece AP)"
    source = f"USDA SR28 {weight.ndb}, {weight.told} {weight.grams} g"
    return fact(row, ("AP", "EP"), value, source)


def edible(release: Release, row: Row) -> Record:
    refuse = release.refuse(row)
    if not refuse.pct:
        raise row.fault(f"SR28 {row['ndb_no']} leaves the refuse blank")
    value = f"{number_text((100 - Fraction(refuse.pct)) / 100)} EP/AP"
    source = f"USDA SR28 {row['ndb_no']}, refuse {refuse.pct} %"
    if refuse.what:
        source += f" ({refuse.what})"
    if not row["low"]:
        return fact(row, ("AP", "EP"), value, source)
    source += f"; spread: {row['source']}"
    return fact(row, ("AP", "EP"), value, source, low=row["low"], high=row["high"])


def basis_grams(row: Row) -> Fraction:
    """The raw weight a cooked weight comes from, as SR28 prints it: '1/2 lb', '483 g'."""
    number, _, unit = row["basis"].partition(" ")
    if unit not in MASSES:
        raise row.fault(f"the basis {row['basis']!r} is no mass")
    named = row["basis"] in row["measure"] or row["measure"].startswith(f"{unit}, dry")
    if not named:
        raise row.fault(f"the measure {row['measure']!r} does not name the basis {row['basis']!r}")
    return Fraction(number) * MASSES[unit]


def cooked(release: Release, row: Row) -> Record:
    weight = release.weight(row, row["ndb_no"], row["measure"])
    value = f"{number_text(weight.grams_each / basis_grams(row))} cooked/EP"
    source = f"USDA SR28 {weight.ndb}, {weight.told} {weight.grams} g"
    return fact(row, ("EP", "cooked"), value, source)


def drained(release: Release, row: Row) -> Record:
    ndb, _, text = row["basis"].partition(" ")
    whole = release.weight(row, ndb, text)
    part = release.weight(row, row["ndb_no"], row["measure"])
    value = f"{number_text(part.grams_each / whole.grams_each)} drained/AP"
    source = (
        f"USDA SR28 {part.ndb}, {part.told} {part.grams} g"
        f"; of USDA SR28 {whole.ndb}, {whole.told} {whole.grams} g"
    )
    return fact(row, ("AP", "drained"), value, source)


def cited(row: Row) -> Record:
    """A fact whose figure and source the selection states itself."""
    stages = {"edible": ("AP", "EP"), "cooked": ("EP", "cooked")}.get(row["kind"])
    if stages is None or not row["source"]:
        raise row.fault("a stated value needs a source, and is an edible or a cooked share")
    return fact(row, stages, row["value"], row["source"])


MAKERS = {
    "density": density,
    "piece": piece,
    "edible": edible,
    "cooked": cooked,
    "drained": drained,
}


def build_facts(release: Release, rows: Iterable[Row]) -> list[Record]:
    facts: list[Record] = []
    seen: set[str] = set()
    for row in rows:
        maker = MAKERS.get(row["kind"])
        if maker is None:
            continue
        record = cited(row) if row["value"] else maker(release, row)
        if record["fact"] in seen:
            raise row.fault(f"fact {record['fact']} is there twice")
        seen.add(record["fact"])
        facts.append(record)
    return facts


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


def csv_text(columns: Sequence[str], records: Iterable[Record]) -> str:
    stream = io.StringIO()
    writer = csv.DictWriter(stream, columns, lineterminator="\n")
    writer.writeheader()
    writer.writerows(records)
    return stream.getvalue()


def build(root: Path) -> dict[Path, str]:
    """The three files by path below the root, as they should read."""
    release = Release(root)
    rows = read_selection(root)
    return {
        OUT / "foods.csv": csv_text(FOOD_COLUMNS, build_foods(rows)),
        OUT / "names.csv": csv_text(NAME_COLUMNS, build_names(rows)),
        OUT / "facts.csv": csv_text(FACT_COLUMNS, build_facts(release, rows)),
    }


def write_files(root: Path, files: dict[Path, str]) -> None:
    for path, text in files.items():
        target = root / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8", newline="\n")
        print(f"{path}: {text.count(chr(10)) - 1} rows")


def differing(root: Path, files: dict[Path, str]) -> list[Path]:
    stale = []
    for path, text in files.items():
        target = root / path
        if not target.is_file() or target.read_bytes() != text.encode("utf-8"):
            stale.append(path)
    return stale


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


def parse_arguments(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Build the bundled food data.")
    parser.add_argument("--root", type=Path, default=ROOT, help="the repository")
    parser.add_argument("--check", action="store_true", help="fail where a file is out of date")
    parser.add_argument("--refuse-from", type=Path, metavar="FOOD_DES.txt", dest="food_des")
    return parser.parse_args(arguments)


def main(arguments: Sequence[str] | None = None) -> int:
    options = parse_arguments(arguments)
    root: Path = options.root
    try:
        if options.food_des is not None:
            write_files(root, {REFUSE: refuse_text(options.food_des)})
            return 0
        files = build(root)
    except (DataError, OSError) as error:
        print(f"error: {error}", file=sys.stderr)
        return 1
    if not options.check:
        write_files(root, files)
        return 0
    stale = differing(root, files)
    for path in stale:
        print(f"{path}: out of date, run tools/build_food_data.py", file=sys.stderr)
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
