"""Random edits of a panel and of its sheet: what a page has by its patches is what there is."""

from __future__ import annotations

from fractions import Fraction
from typing import Any

import pytest
import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from panel_page import Answers, merged

pytest.importorskip("anywidget", reason="anywidget is not installed")
INPUTS = ["portions", "amount", "spare", "sure", "remark", "need"]
CELLS = ["need", "share", "pots", "portions"]
GIVEN = st.one_of(
    st.fractions(-9, 9, max_denominator=12).map(str),
    st.sampled_from(["0", "3 kg", "2 kg EP", "1/0", "", "fish", "<b>", "\ud800"]),
    st.booleans(),
)
CELL = st.sampled_from(INPUTS)
EDITS = st.one_of(
    st.fixed_dictionaries(
        {"do": st.just("set"), "cell": CELL, "given": GIVEN, "why": st.sampled_from(["", "x"])}
    ),
    st.fixed_dictionaries(
        {"do": st.just("step"), "cell": CELL, "by": st.sampled_from([1, -1])},
    ),
    st.fixed_dictionaries({"do": st.sampled_from(["release", "forget"]), "cell": CELL}),
    st.fixed_dictionaries({"do": st.sampled_from(["undo", "redo"])}),
)
IN_PYTHON = st.fractions(-9, 9, max_denominator=12)


def small_sheet() -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    sheet.set("portions", 40)
    sheet.set("amount", "500 g EP")
    sheet.set("spare", 3)
    sheet.set("sure", True)
    sheet.set("remark", scalepan.Text("north dome"))
    sheet.define("need", "amount * portions / 4")
    sheet.define("share", "need / spare")
    sheet.define("pots", "if sure then portions / spare else 2")
    return sheet


def held(sheet: scalepan.Sheet, name: str) -> object:
    """The amount in one unit, another value as it is, or what the cell failed by."""
    try:
        value = sheet.value(name)
    except scalepan.Error as error:
        return str(error)
    if not isinstance(value, scalepan.Quantity):
        return value
    return value.to("g EP").value if value.unit else value.value


def whole(panel: Any) -> dict[str, Any]:
    """What does not rest on what was done before."""
    state = panel.state
    refusals = ("problem", "hint", "typed")
    controls = {
        name: {key: value for key, value in shown.items() if key not in refusals}
        for name, shown in state["controls"].items()
    }
    return {"figures": state["figures"], "controls": controls}


@settings(max_examples=150, deadline=None)
@given(st.lists(st.one_of(EDITS, IN_PYTHON), max_size=12))
def test_the_patches_lead_to_the_state_that_a_new_panel_has(edits: list[Any]) -> None:
    sheet = small_sheet()
    page = Answers(scalepan.panel(sheet, INPUTS, CELLS))
    shown = dict(page.panel.state)
    for edit in edits:
        before = {name: held(sheet, name) for name in {*INPUTS, *CELLS}}
        if isinstance(edit, Fraction):
            sheet.set("spare", edit)
            page.panel.refresh()
            answers = page.taken()
        else:
            answers = page.to(edit)
            assert len(answers) == 1
        now = {name: held(sheet, name) for name in before}
        changed = {name for name in before if before[name] != now[name]}
        assert answers or not changed
        for answer in answers:
            assert answer["patch"]["after"] == shown["edition"]
            shown = merged(shown, answer["patch"])
            assert changed <= set(answer["patch"].get("figures", {}))
            if changed:
                assert set(shown["lit"]) == changed
        assert shown == page.panel.state
        fresh = scalepan.panel(sheet, INPUTS, CELLS)
        assert whole(page.panel) == whole(fresh)
        fresh.close()
