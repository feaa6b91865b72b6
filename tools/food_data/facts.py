"""The facts: each a row of the selection with the figure of its source."""

from __future__ import annotations

import re
from collections.abc import Iterable
from fractions import Fraction

from scalepan.foods import FACT_COLUMNS

from food_data.selection import Row
from food_data.sr28 import Release, Weight
from food_data.tables import Record

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
    if not row["source"]:
        raise row.fault("a stated value needs a source")
    stages = {
        "density": (row["stage"] or "any", row["stage"] or "any"),
        "piece": ("AP", "EP"),
        "edible": ("AP", "EP"),
        "cooked": ("EP", "cooked"),
        "drained": ("AP", "drained"),
    }
    return fact(row, stages[row["kind"]], row["value"], row["source"])


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
