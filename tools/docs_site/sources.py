"""The sources of the bundled data, counted out of the data itself."""

from __future__ import annotations

import csv
from collections import Counter
from dataclasses import dataclass

from docs_site.api import PACKAGE, ROOT

PUBLICATIONS = ROOT / "data-sources" / "publications.csv"
TABLES = {
    "facts": "facts about foods",
    "measure_sets": "measures",
    "pans": "pans",
    "words": "words that measure",
}


@dataclass(frozen=True)
class Publication:
    """Where figures come from. ``begins`` is how their source column does."""

    begins: str
    title: str
    licence: str


def publications() -> list[Publication]:
    """The longest beginning first, so that the nearest one is found first."""
    with PUBLICATIONS.open(encoding="utf-8", newline="") as file:
        found = [Publication(**row) for row in csv.DictReader(file)]
    return sorted(found, key=lambda one: -len(one.begins))


def sources(table: str) -> list[str]:
    """Of each row of a table."""
    with (PACKAGE / "data" / f"{table}.csv").open(encoding="utf-8", newline="") as file:
        return [row["source"] for row in csv.DictReader(file)]


def publication_of(source: str, among: list[Publication]) -> Publication | None:
    """The one that a source names first."""
    return next((one for one in among if source.startswith(one.begins)), None)


def page() -> str:
    """How many figures each publication gives."""
    among = publications()
    counted: Counter[tuple[str, str, str]] = Counter()
    for table, what in TABLES.items():
        for source in sources(table):
            one = publication_of(source, among)
            if one is None:
                raise LookupError(f"{table}.csv: no publication for the source {source!r}")
            counted[one.title, one.licence, what] += 1
    rows = "\n".join(
        f"| {title} | {number} {what} | {licence} |"
        for (title, licence, what), number in counted.most_common()
    )
    return f"""# Sources of the figures

Every figure that comes with the package names its source: `scalepan why`, `scalepan convert` and
`Fact.source` tell it. These are the publications, with how many figures each gives. [How the food
data is made](food_data.md) has the rest. Facts of your own go before all of them.

| publication | gives | terms |
|---|---|---|
{rows}

Units have their ratios from the standards that are named beside each in
`cpp/measure/unit_rows.inc`; currencies are those of ISO 4217.
"""
