"""Edible weight against issue weight on the cards of the Armed Forces Recipe Service.

data/afrs_pairs.csv (TM 10-412 / NAVSUP P-7 and its kin; see data/README.md): a row with an issue
weight gives an edible or a drained share. It must meet, within half a step of its print, a figure
of the catalogue on that food: the one used, or one that stands beside it. A row that gave a figure
beside meets it of course; the other rows of its food are the check.
"""

from __future__ import annotations

from collections import Counter
from fractions import Fraction

import pytest
import scalepan
from afrs import FOODS, ROWS, Printed, Range, doubt, pounds, printed_pounds

AS_FACTOR = "printed as a factor"
NOT_CARRIED = {
    "Bean sprouts, canned, drained",
    "Endive or escarole, fresh",
    "Tangelos (sections)",
}
# Other trims than the facts are of.
OTHERWISE = {
    "Oranges (juice only or sections without membrane)": "0.50: without the membrane",
    "ONIONS,GREEN,FRESH,CHOPPED": "0.90: the relish table of the same edition has 0.83",
}


def is_drained(row: Printed) -> bool:
    return "drained share" in row.note


def group_of(row: Printed) -> str:
    if not row.issue_text:
        return "no issue weight"
    if doubt(row) and not row.note.startswith(AS_FACTOR) and not is_drained(row):
        return "figures marked suspect"
    if row.ingredient in NOT_CARRIED:
        return "not carried"
    if row.ingredient in OTHERWISE:
        return "another trim, named"
    meeting = [fact for fact in shares_of(row) if printed_share(row).meets(fact)]
    if not meeting:
        return "MISSED"
    return "meets the share used" if meeting[0] == shares_of(row)[0] else "meets the share beside"


def printed_share(row: Printed) -> Range:
    """Weight over issue, from its least to its most."""
    if row.note.startswith(AS_FACTOR):
        factor = pounds(row.issue_text)
        half = Fraction(1, 200)
        return Range(1 / (factor + half), 1 / (factor - half))
    edible, issued = (printed_pounds(row, text) for text in (row.weight_text, row.issue_text))
    return Range(edible.low / issued.high, edible.high / issued.low)


def shares_of(row: Printed) -> list[Range]:
    """The share used with its spread, then those beside it."""
    food, preparation = (FOODS[row.ingredient][key] for key in ("food", "preparation"))
    unit = "kg drained" if is_drained(row) else "kg EP"
    used = scalepan.convert("1 kg AP", unit, food=food, preparation=preparation)
    (fact,) = used.facts
    return [
        Range(used.low.value, used.high.value),
        *(Range(other.value.value, other.value.value) for other in fact.beside),
    ]


@pytest.mark.parametrize(
    "row",
    [row for row in ROWS if group_of(row).startswith(("meets", "MISSED"))],
    ids=lambda row: f"{row.card}-{row.ingredient}-{row.weight_text}",
)
def test_share_meets_a_figure_of_the_catalogue(row: Printed) -> None:
    assert group_of(row) != "MISSED", (printed_share(row), shares_of(row))


def test_a_named_trim_differs_from_every_figure() -> None:
    for row in ROWS:
        if row.ingredient in OTHERWISE and row.issue_text:
            assert not [fact for fact in shares_of(row) if printed_share(row).meets(fact)]


def test_count_of_the_groups(record_counts: dict[str, Counter[str]]) -> None:
    counts = Counter(map(group_of, ROWS))
    record_counts["Armed Forces cards, issue to edible or drained"] = counts
    assert counts == {
        "meets the share used": 77,
        "meets the share beside": 77,
        "another trim, named": 2,
        "not carried": 3,
        "figures marked suspect": 3,
        "no issue weight": 551,
    }
