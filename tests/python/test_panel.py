"""A panel by its messages: figures against fractions, refusals in full, patches without ballast.

The soup is that of an observatory's night kitchen; all prices are invented.
"""

from __future__ import annotations

import json
import subprocess
import sys
from fractions import Fraction
from typing import Any

import displayed
import pytest
import scalepan
from page_reader import Page
from panel_page import Answers, large_sheet, merged

pytest.importorskip("anywidget", reason="anywidget is not installed")
SOUP = """\
name = "Leek pot"
serves = 4
measures = "metric"
lines = ["500 g leeks, trimmed", "4 eggs", "20 g chives"]
"""
PRICES = """\
item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.10,GBP,no
eggs,AP,10,2.30,GBP,yes
"""


def night_sheet() -> Any:
    sheet = scalepan.Sheet()
    sheet.set("portions", 40)
    sheet.set("leeks", "500 g EP", source="the recipe")
    sheet.set("edible", "0.44 EP/AP", source="USDA SR28 11246")
    sheet.set("organic", False)
    sheet.set("dome", scalepan.Text("north"))
    sheet.define("need", "leeks * portions / 4")
    sheet.define("buy", "need / edible")
    sheet.define("pots", "if portions > 50 then 3 else 2")
    return sheet


def opened(of: Any, *names: Any) -> Answers:
    return Answers(scalepan.panel(of, *names))


def patch_of(answers: list[Any]) -> dict[str, Any]:
    (answer,) = answers
    assert set(answer) == {"patch"}
    patch: dict[str, Any] = answer["patch"]
    return patch


def exact_value(figure: dict[str, Any]) -> Fraction:
    return scalepan.quantity(figure.get("exact", figure["told"])).to("g").value


def test_a_patch_holds_the_figures_that_changed_and_no_others() -> None:
    page = opened(night_sheet())
    assert page.panel.state["cells"] == ["need", "buy", "pots"]
    patch = patch_of(page.to({"do": "set", "cell": "portions", "given": "48"}))
    need = Fraction(500) * 48 / 4
    assert exact_value(patch["figures"]["need"]) == need
    assert exact_value(patch["figures"]["buy"]) == need / Fraction(44, 100)
    assert set(patch["figures"]) == {"portions", "need", "buy"}  # 2 pots before and after
    assert set(patch["lit"]) == {"portions", "need", "buy"}
    assert patch["lit"]["need"] == {"was": "5 kg EP", "by": "+1 kg"}
    assert (patch["after"], patch["edition"]) == (0, 1)
    assert patch["controls"] == {"portions": {"kind": "amount", "text": "48", "steps": True}}
    assert patch["undo"] is True
    assert set(patch) == {"after", "edition", "figures", "lit", "said", "controls", "undo"}


def test_what_ran_and_came_out_the_same_is_not_lit() -> None:
    sheet = night_sheet()
    page = opened(sheet, "portions", ["pots"])
    patch = patch_of(page.to({"do": "set", "cell": "portions", "given": "41"}))
    assert "pots" in sheet.ran
    assert set(patch["lit"]) == {"portions"}


def test_the_same_amount_in_another_unit_is_told_anew_but_not_lit() -> None:
    page = opened(night_sheet(), "leeks")
    patch = patch_of(page.to({"do": "set", "cell": "leeks", "given": "0.5 kg EP"}))
    assert patch["controls"]["leeks"]["text"] == "0.5 kg EP"
    assert "lit" not in patch
    assert patch["said"] == "No figure changed."


def test_lights_go_out_with_the_next_change() -> None:
    page = opened(night_sheet(), ["portions", "organic"])
    page.to({"do": "set", "cell": "portions", "given": "48"})
    patch = patch_of(page.to({"do": "set", "cell": "organic", "given": True}))
    assert patch["lit"] == {"organic": {"was": "no"}}
    assert patch["controls"]["organic"]["yes"] is True


@pytest.mark.parametrize(
    ("cell", "given", "problem", "hint"),
    [
        ("portions", "fish", 'no number is written at the start of "fish"',
         "write a number and a unit: 1 1/2 kg"),
        ("portions", "3 kg", "portions is plain number, but the value is weight",
         "give the same kind, or redeclare the cell"),
        ("leeks", "500 g AP", "leeks is weight EP, but the value is weight AP",
         "give the same kind, or redeclare the cell"),
        ("leeks", "5 kilgrams", 'unknown unit "kilgrams"', "nearest: kg, g, mg"),
        ("portions", True, "portions is given a bool, but its control gives amount", ""),
        ("organic", "yes", "organic is given a str, but its control gives yes or no", ""),
        ("dome", "\ud800", "what was given holds half a character", ""),
        ("need", "5 kg EP", "the override of need gives no reason",
         "say what was measured, and how"),
    ],
)  # fmt: skip
def test_what_is_refused_is_told_beside_the_control(
    cell: str, given: Any, problem: str, hint: str
) -> None:
    sheet = night_sheet()
    page = opened(sheet, ["portions", "leeks", "organic", "dome", "need"])
    before = sheet.text()
    patch = patch_of(page.to({"do": "set", "cell": cell, "given": given}))
    shown = patch["controls"][cell]
    assert (shown["problem"], shown["hint"]) == (problem, hint)
    assert patch["said"] == f"Not changed: {problem}" + (f" ({hint})" if hint else "")
    assert set(patch) == {"after", "edition", "said", "controls"}
    assert shown.get("typed") == (given.replace("\ud800", "\ufffd") if given is not True else None)
    assert sheet.text() == before
    patch = patch_of(page.to({"do": "forget", "cell": cell}))
    assert "problem" not in patch["controls"][cell]


def test_an_accepted_edit_takes_the_refusal_away() -> None:
    page = opened(night_sheet())
    page.to({"do": "set", "cell": "portions", "given": "fish"})
    patch = patch_of(page.to({"do": "set", "cell": "portions", "given": "1/2"}))
    assert patch["controls"]["portions"] == {"kind": "amount", "text": "0.5"}  # without steps


def test_steps_are_exact_whatever_the_size() -> None:
    sheet = night_sheet()
    page = opened(sheet)
    sheet.set("portions", 10**30)
    page.panel.refresh()
    page.taken()
    page.to({"do": "step", "cell": "portions", "by": 1})
    assert sheet.value("portions").value == 10**30 + 1
    page.to({"do": "step", "cell": "portions", "by": -1})
    assert sheet.value("portions").value == 10**30


def test_a_formula_is_overridden_with_a_reason_and_released() -> None:
    sheet = night_sheet()
    page = opened(sheet, "need", "buy")
    assert page.panel.state["controls"]["need"]["formula"] == "leeks * portions / 4"
    edit = {"do": "set", "cell": "need", "given": "4.4 kg EP", "why": "weighed"}
    patch = patch_of(page.to(edit))
    shown = patch["controls"]["need"]
    assert (shown["overridden"], shown["own"]) == ("overridden: weighed", "5 kg EP")
    assert exact_value(patch["figures"]["buy"]) == Fraction(4400) / Fraction(44, 100)
    patch = patch_of(page.to({"do": "release", "cell": "need"}))
    assert "overridden" not in patch["controls"]["need"]
    assert exact_value(patch["figures"]["buy"]) == Fraction(5000) / Fraction(44, 100)


def test_a_source_that_reads_like_an_override_is_none() -> None:
    sheet = night_sheet()
    sheet.set("leeks", "1 kg EP", source="overridden: not at all")
    page = opened(sheet, "leeks")
    assert page.panel.state["controls"]["leeks"] == {"kind": "amount", "text": "1 kg EP"}


def test_an_input_overridden_elsewhere_is_overridden_here_too() -> None:
    sheet = night_sheet()
    sheet.override("leeks", "450 g EP", why="weighed")
    page = opened(sheet, "leeks")
    assert page.panel.state["controls"]["leeks"]["own"] == "500 g EP"
    page.to({"do": "set", "cell": "leeks", "given": "460 g EP", "why": "again"})
    assert sheet.value("leeks") == scalepan.quantity("460 g EP")
    sheet.release("leeks")
    assert sheet.value("leeks") == scalepan.quantity("500 g EP")


def test_undo_and_redo_light_what_they_change() -> None:
    sheet = night_sheet()
    page = opened(sheet)
    page.to({"do": "step", "cell": "portions", "by": 1})
    patch = patch_of(page.to({"do": "undo"}))
    assert patch["lit"]["portions"] == {"was": "41", "by": "-1"}
    assert (patch["undo"], patch["redo"]) == (False, True)
    patch = patch_of(page.to({"do": "redo"}))
    assert patch["lit"]["portions"] == {"was": "40", "by": "+1"}
    assert sheet.value("portions").value == 41


def test_undo_begins_with_what_the_panel_changed() -> None:
    sheet = night_sheet()
    page = opened(sheet)
    assert patch_of(page.to({"do": "undo"}))["said"] == "There is nothing to take back."
    assert "pots" in sheet
    assert patch_of(page.to({"do": "redo"}))["said"] == "There is nothing to make again."


def test_a_failure_is_shown_where_it_is() -> None:
    page = opened(night_sheet(), "edible")
    patch = patch_of(page.to({"do": "set", "cell": "edible", "given": "0 EP/AP"}))
    failed = {"told": "failed: buy:6: division by zero", "failed": True}
    assert patch["figures"]["buy"] == failed
    patch = patch_of(page.to({"do": "set", "cell": "edible", "given": "0.5 EP/AP"}))
    assert patch["lit"]["buy"] == {"was": failed["told"]}
    assert patch["figures"]["buy"] == {"told": "10 kg AP"}


def test_a_cell_that_is_gone_is_told_of_and_its_control_gives_nothing() -> None:
    sheet = night_sheet()
    page = opened(sheet, "dome", "pots")
    sheet.remove("dome")
    sheet.remove("pots")
    page.panel.refresh()
    patch = patch_of(page.taken())
    assert patch["controls"]["dome"] == {"kind": "nothing", "text": ""}
    assert patch["figures"]["pots"]["told"] == 'failed: no cell is called "pots"'


def test_a_refresh_sends_what_python_changed_and_else_nothing() -> None:
    sheet = night_sheet()
    page = opened(sheet)
    page.panel.refresh()
    assert page.taken() == []
    sheet.set("portions", 60)
    page.panel.refresh()
    assert set(patch_of(page.taken())["lit"]) == {"portions", "need", "buy", "pots"}


def test_panels_of_one_sheet_keep_in_step() -> None:
    sheet = night_sheet()
    one, other = opened(sheet), opened(sheet, "leeks", "need")
    one.to({"do": "step", "cell": "portions", "by": 1})
    assert set(patch_of(other.taken())["figures"]) == {"need"}


def test_a_page_that_lost_a_patch_is_shown_the_state() -> None:
    page = opened(night_sheet())
    page.to({"do": "step", "cell": "portions", "by": 1})
    assert page.to({"do": "show", "edition": 1}) == []
    (answer,) = page.to({"do": "show", "edition": 0})
    assert answer == {"state": page.panel.state}
    # What a page is given that opens later.
    assert page.panel.get_state("state") == {"state": answer["state"]}


@pytest.mark.parametrize(
    ("message", "told"),
    [
        ("portions", "this panel cannot do {}"),
        ({"do": "set", "cell": "serves", "given": "5"},
         "this panel cannot do {'do': 'set', 'cell': 'serves', 'given': '5'}"),
        ({"do": "remove", "cell": "portions"},
         "this panel cannot do {'do': 'remove', 'cell': 'portions'}"),
        ({"do": ["set"], "cell": {}}, "this panel cannot do {'do': ['set'], 'cell': {}}"),
        ({"do": "step", "cell": "portions", "by": 2}, "portions has no such step"),
        ({"do": "step", "cell": "leeks", "by": 1}, "leeks has no such step"),
        ({"do": "release", "cell": "portions"}, "portions has no override to release"),
    ],
)  # fmt: skip
def test_a_message_that_means_nothing_changes_nothing(message: Any, told: str) -> None:
    sheet = night_sheet()
    before = sheet.text()
    patch = patch_of(opened(sheet, ["portions", "leeks"]).to(message))
    assert patch["said"] == f"Not changed: {told}"
    assert sheet.text() == before


def costing() -> scalepan.Costing:
    pot = scalepan.parse_recipe(SOUP, file="pot.toml").scale(portions=40)
    return scalepan.cost(pot, scalepan.parse_prices(PRICES, file="prices.csv"))


def test_a_costing_shows_its_costs_notes_and_cautions() -> None:
    pot = costing()
    page = opened(pot, ["portions", "leeks.edible"])
    state = page.panel.state
    assert state["cells"] == ["till", "used", "thrown", "borne", "per_portion.borne"]
    # 5 kg of which 0.44 is edible (USDA SR28 11246): 12 x 2.10, and 40 eggs in 4 packs at 2.30.
    assert state["figures"]["till"]["told"] == "at least 34.40 GBP"
    assert state["to_check"] == pot.to_check
    assert state["cautions"][0].startswith("eggs: Cook egg dishes through: 71 °C (160 °F).")
    edit = {"do": "set", "cell": "leeks.edible", "given": "0.50", "why": "own trim"}
    patch = patch_of(page.to(edit))
    assert patch["figures"]["till"]["told"] == "at least 30.20 GBP"  # 10 x 2.10, and the eggs
    assert patch["to_check"][0] == "leeks.edible is overridden with 0.5 EP/AP: own trim"
    assert "cautions" not in patch


def test_without_anywidget_it_is_told_what_to_install() -> None:
    program = """
import sys
sys.modules["anywidget"] = None
import scalepan
try:
    scalepan.panel(scalepan.Sheet())
except scalepan.SheetError as error:
    print(error.code, error.message, error.hint, sep="|")
"""
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=True
    )
    told = "a panel needs anywidget, which is not installed|pip install scalepan[panel]"
    assert done.stdout == f"panel.missing|{told}\n"


def test_every_answer_is_json_and_a_thousand_cells_send_few_bytes() -> None:
    sheet = large_sheet()
    page = opened(sheet, "line7.written", sheet.cells())
    answers = page.to({"do": "set", "cell": "line7.written", "given": "1 kg EP"})
    assert set(patch_of(answers)["figures"]) == {"line7.written", "line7.need"}
    assert len(json.dumps(answers)) < 1000
    assert len(json.dumps(page.panel.state)) > 50_000


def test_an_edit_of_a_thousand_cells_lights_what_changed() -> None:
    sheet = large_sheet()
    page = opened(sheet, "portions", sheet.cells())
    assert len(page.panel.state["figures"]) == 1000
    answers = page.to({"do": "set", "cell": "portions", "given": "41"})
    assert len(patch_of(answers)["lit"]) == 500


def test_the_twin_shows_the_figures_as_they_are_now() -> None:
    page = opened(costing(), "portions")
    page.to({"do": "set", "cell": "portions", "given": "20"})
    bundle, _ = page.panel._repr_mimebundle_()
    kinds = {"text/plain", "text/html", "application/vnd.jupyter.widget-view+json"}
    assert set(bundle) == kinds
    inputs, cells = Page(bundle["text/html"]).tables
    assert [[cell.text for cell in row] for row in inputs[1:]] == [["portions", "20"]]
    # 6 x 2.10, and 20 eggs in 2 packs at 2.30.
    assert [cell.text for cell in cells[1]] == ["till", "at least 17.20 GBP"]
    assert "till               at least 17.20 GBP" in bundle["text/plain"]
    assert "Cook egg dishes through" in bundle["text/html"]


def test_the_twin_of_bad_names_is_harmless() -> None:
    wild = "<script>alert(1)</script>\u202e<img src=x onerror=alert(2)>"
    sheet = displayed.sheet(wild)
    bundle, _ = scalepan.panel(sheet, ["remark", "fennel.need"])._repr_mimebundle_()
    page = Page(bundle["text/html"])
    assert wild.replace("\u202e", "[U+202E]") in page.text
    assert not {tag for tag, _ in page.elements} & {"script", "img"}


def test_after_a_cell_of_a_notebook_its_panels_are_in_step(tmp_path: Any) -> None:
    """In a process of its own, since a shell of IPython is one for a process."""
    program = """
from IPython.core.interactiveshell import InteractiveShell
import scalepan
shell = InteractiveShell.instance()
shell.run_cell('''
import scalepan
sheet = scalepan.Sheet()
sheet.set("portions", 40)
sheet.define("half", "portions / 2")
panel = scalepan.panel(sheet)
sent = []
panel.send = sent.append
''')
shell.run_cell("sheet.set('portions', 50)")
shell.run_cell("1 + 1")
shell.run_cell("told = [answer['patch']['figures']['half']['told'] for answer in sent]")
print(shell.user_ns["told"])
"""
    environment = {"IPYTHONDIR": str(tmp_path), "PATH": "", "PYTHONPATH": ":".join(sys.path)}
    done = subprocess.run(
        [sys.executable, "-c", program],
        capture_output=True,
        text=True,
        check=True,
        env=environment,
    )
    assert done.stdout.splitlines()[-1] == "['25']"


def test_the_state_of_a_page_is_what_its_patches_make_of_it() -> None:
    page = opened(night_sheet())
    shown = dict(page.panel.state)
    for by in (1, 1, -1):
        shown = merged(shown, patch_of(page.to({"do": "step", "cell": "portions", "by": by})))
    assert shown == page.panel.state
