"""Differences of sheets read like change lists, and lead from the one to the other, to the byte."""

from __future__ import annotations

import pytest
import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from sheet_script import Script

OLD = """\
scalepan_sheet = 1

[cells]
buy = { formula = "need / edible" }
edible = { value = "0.44 EP/AP", source = "USDA SR28 11246" }
need = "5 kg EP"
pots = 2
watch = { text = "late" }

[rows.lines.given]
amount = "g EP"

[rows.lines.formulas]
share = "amount / sum(lines.amount)"

[rows.lines.cells]
leeks = { amount = "500 g EP" }
barley = { amount = "220 g EP" }
eggs = { amount = "200 g EP" }

[overrides]
need = { value = "6 kg EP", why = "weighed" }
"""

NEW = """\
scalepan_sheet = 1

[cells]
buy = { formula = "need / 0.5 EP/AP" }
edible = { value = "0.5 EP/AP", source = "own trim" }
need = "5 kg EP"
seen = true
watch = { text = "early" }

[rows.lines.given]
amount = "g EP"

[rows.lines.formulas]
share = "amount / sum(lines.amount)"
twice = "2 * amount"

[rows.lines.cells]
eggs = { amount = "200 g EP" }
leeks = { amount = "500 g EP" }
chives = { amount = { formula = "leeks.amount / 20" } }

[overrides]
edible = { value = "0.48 EP/AP", why = "three cases", who = "the night cook" }

[variants]
big = [
  { set = "need", value = "8 kg EP" },
]
"""


def test_a_difference_reads_like_a_change_list() -> None:
    old, new = scalepan.parse_sheet(OLD), scalepan.parse_sheet(NEW)
    difference = scalepan.sheet_difference(old, new)
    assert str(difference) == (
        "buy: need / edible -> need / 0.5 EP/AP\n"
        "edible: 0.44 EP/AP (USDA SR28 11246) -> 0.5 EP/AP (own trim)\n"
        "gone: pots = 2\n"
        'watch: "late" -> "early"\n'
        "new: seen = yes\n"
        "new: the column lines.twice = 2 * amount\n"
        "gone: the row barley of lines\n"
        "moved: the row leeks of lines before chives\n"
        "new: the row chives of lines, amount leeks.amount / 20\n"
        "released: need from 6 kg EP (weighed)\n"
        "overridden: edible with 0.48 EP/AP (three cases, the night cook)\n"
        'new: the variant "big"'
    )
    old.apply(difference.changes())
    old.variants["big"] = new.variants["big"]
    assert old.text() == NEW
    assert old.undo()
    del old.variants["big"]
    assert old.text() == OLD


def test_no_difference() -> None:
    sheet = scalepan.parse_sheet(OLD)
    difference = scalepan.sheet_difference(sheet, scalepan.parse_sheet(OLD))
    assert not difference
    assert str(difference) == "no difference"
    assert len(difference.changes()) == 0


@pytest.mark.parametrize(
    ("before", "after"),
    [
        # What no verb leads to: an input from a formula that others read.
        ('buy = { formula = "need / edible" }', 'buy = "10 kg AP"\nmore = { formula = "buy * 2" }'),
        ('share = "amount / sum(lines.amount)"', 'part = "amount / sum(lines.amount)"'),
        ('amount = "g EP"', 'amount = "kg EP"'),
        ('edible = { value = "0.44 EP/AP", source = "USDA SR28 11246" }', "edible = 0.44"),
    ],
)
def test_what_no_verb_leads_to_is_made_anew(before: str, after: str) -> None:
    old, new = scalepan.parse_sheet(OLD), scalepan.parse_sheet(OLD.replace(before, after))
    old.apply(scalepan.sheet_difference(old, new).changes())
    assert old.text() == new.text() != OLD


@settings(max_examples=150)
@given(st.integers(0, 10**6), st.integers(0, 10**6))
def test_the_changes_of_a_difference_lead_to_the_newer_sheet(one: int, other: int) -> None:
    old, new = Script(one), Script(other)
    old.run()
    new.run()
    difference = scalepan.sheet_difference(old.sheet, new.sheet)
    assert bool(difference) == (old.sheet.text() != new.sheet.text())
    before = old.sheet.text()
    old.sheet.apply(difference.changes())
    assert old.sheet.text() == new.sheet.text()
    old.sheet.undo()
    assert old.sheet.text() == before


def test_an_edit_is_told_by_the_verbs_that_made_it() -> None:
    old = scalepan.parse_sheet(OLD)
    new = scalepan.parse_sheet(OLD)
    new.set("leeks.amount", "600 g EP")
    new.move_row("lines", "eggs", before="leeks")
    new.override("edible", "0.5 EP/AP", why="own trim")
    listed = scalepan.sheet_difference(old, new).changes().listed()
    assert [verb for verb, _ in listed] == ["set", "move_row", "override"]


# Variants.


def test_variants_stand_side_by_side() -> None:
    sheet = scalepan.parse_sheet(OLD)
    more, none = scalepan.Changes(), scalepan.Changes()
    more.set("pots", 3)
    more.release("need")
    none.define("edible", "0 EP/AP")
    sheet.variants["more pots"] = more
    sheet.variants["nothing edible"] = none
    sheet.variants["refused"] = scalepan.Changes()
    sheet.variants["refused"].remove("edible")
    before, ran = sheet.text(), sheet.ran
    shown = sheet.compare(["pots", "buy"])
    assert (sheet.text(), sheet.ran) == (before, ran)
    assert shown.variants == ["more pots", "nothing edible", "refused"]
    # 6 kg and 5 kg at 0.44.
    assert shown.difference("pots", "more pots") == scalepan.quantity(1)
    assert shown.difference("buy", "more pots") == scalepan.quantity("-25/11 kg AP")
    assert str(shown.outcome("buy", "nothing edible")) == "buy:6: division by zero"
    assert shown.difference("buy", "nothing edible") is None
    refused = "edible is read by buy (remove or change what reads it first)"
    assert str(shown.outcome("pots", "refused")) == refused
    assert shown.to_data()[1] == {
        "cell": "buy",
        "as it is": {"figure": "13636 4/11 g AP"},
        "variants": {
            "more pots": {"figure": "11363 7/11 g AP", "difference": "-2272 8/11 g AP"},
            "nothing edible": {"error": "buy:6: division by zero", "difference": None},
            "refused": {"error": refused, "difference": None},
        },
    }
    assert str(sheet.compare(["pots", "buy"], ["more pots"])).splitlines() == [
        "        as it is       more pots",
        "  ----  -------------  ---------------------------",
        "  pots  2              3 (+1)",
        "  buy   ≈ 13.64 kg AP  ≈ 11.36 kg AP (≈ -2.273 kg)",
    ]


def test_only_cells_and_variants_that_are_known_are_compared() -> None:
    sheet = scalepan.parse_sheet(NEW)
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.compare(["bye"])
    assert str(caught.value) == 'no cell is called "bye" (nearest: buy)'
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.compare(["buy"], ["bigg"])
    assert str(caught.value) == 'no variant is called "bigg" (nearest: big)'
    with pytest.raises(scalepan.SheetError) as caught:
        sheet.variants["\n"] = scalepan.Changes()
    assert caught.value.code == "sheet.variant"
    added = scalepan.Changes()
    added.set("bye", 3)
    assert sheet.compare(["bye"], {"new cell": added}).outcome("bye", "new cell") == (
        scalepan.quantity(3)
    )
