"""A panel in a real browser, answered by the real one in Python.

Skipped where no Chromium is found; ``apt-get install chromium`` and ``pip install playwright``.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any

import pytest
import scalepan
from panel_page import Answers, large_sheet, show

pytest.importorskip("anywidget", reason="anywidget is not installed")

WILD = "<script>alert(1)</script>\u202e<img src=x onerror=alert(2)> =1+1 \u2067"
# Black on white and white on black, as a page of a notebook has them.
PAGE = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Panel</title>
<style>body { margin: 24px; font: 14px sans-serif; background: #fff; color: #000 }
@media (prefers-color-scheme: dark) { body { background: #111; color: #fff } }
</style><main></main></html>
"""
# Which figures a change of the page touched, by name.
WATCH = """() => {
  window.touched = new Set();
  const watcher = new MutationObserver((changes) => changes.forEach(({ target }) => {
    const element = target.nodeType === Node.TEXT_NODE ? target.parentElement : target;
    const cell = element.closest('.figure');
    if (cell) touched.add(cell.parentElement.firstChild.textContent);
  }));
  const what = { subtree: true, childList: true, characterData: true };
  watcher.observe(document.querySelector('.figures'), what);
}"""
TOUCHED = "() => [...touched].sort()"
NAME_OF_FOCUS = """() => {
  const { labels, ariaLabel } = document.activeElement;
  return labels?.[0]?.textContent ?? ariaLabel;
}"""
LIT = """() => [...document.querySelectorAll('[role=row][data-lit]')].map(
  (row) => [...row.children].map((cell) => cell.textContent))"""
CONTRAST = """() => {
  const part = (v) => (v /= 255) <= .03928 ? v / 12.92 : ((v + .055) / 1.055) ** 2.4;
  const light = ([r, g, b]) => .2126 * part(r) + .7152 * part(g) + .0722 * part(b);
  const numbers = (text) => text.match(/[0-9.]+/g).map(Number);
  const page = numbers(getComputedStyle(document.body).backgroundColor);
  const row = document.querySelector('[role=row][data-lit]');
  const [r, g, b, a = 1] = numbers(getComputedStyle(row).backgroundColor);
  const ground = [r, g, b].map((v, i) => v * a + page[i] * (1 - a));
  const ink = numbers(getComputedStyle(row.querySelector('.figure')).color);
  const [more, less] = [light(ink), light(ground)].sort((x, y) => y - x);
  return (more + .05) / (less + .05);
}"""


class Shown:
    """A panel in a page, with all that the page reports and fetches."""

    def __init__(self, browser: Any, panel: Any, **options: Any) -> None:
        self.page = browser.new_page(viewport={"width": 1000, "height": 800}, **options)
        self.told: list[str] = []
        self.page.on("console", lambda message: self.told.append(message.text))
        self.page.on("pageerror", lambda error: self.told.append(str(error)))
        self.page.on("dialog", lambda dialog: (self.told.append("dialog"), dialog.dismiss()))
        self.page.on("request", lambda request: self.told.append(request.url[:5]))
        self.page.set_content(PAGE)
        self.panel = panel
        self.answers: Answers = show(self.page, panel)
        assert self.told == ["blob:"]  # the script itself, which is given as a text
        self.told.clear()

    def field(self, cell: str) -> Any:
        return self.page.get_by_label(cell, exact=True).and_(self.page.locator("input"))

    def give(self, cell: str, text: str) -> None:
        self.field(cell).fill(text)
        self.field(cell).press("Enter")
        self.settle()

    def press(self, button: str) -> None:
        self.page.get_by_role("button", name=button, exact=True).click()
        self.settle()

    def settle(self) -> None:
        self.page.wait_for_function("() => !document.querySelector('[aria-busy]')")

    def figure(self, cell: str) -> str:
        row = self.page.get_by_role("row").filter(
            has=self.page.get_by_role("rowheader", name=cell, exact=True)
        )
        text: str = row.locator(".figure").text_content()
        return text

    def lit(self) -> list[list[str]]:
        rows: list[list[str]] = self.page.evaluate(LIT)
        return rows


def night_sheet(remark: str = "north dome") -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    sheet.set("portions", 40)
    sheet.set("leeks", "500 g EP", source=remark)
    sheet.set("edible", "0.44 EP/AP")
    sheet.set("sure", True)
    sheet.set("remark", scalepan.Text(remark))
    sheet.set("constructor", 3)
    sheet.define("need", "leeks * portions / 4")
    sheet.define("buy", "need / edible")
    sheet.define("pots", "if portions > 50 then 3 else 2")
    return sheet


@pytest.fixture
def shown(browser: Any) -> Iterator[Shown]:
    cells = ["need", "buy", "pots", "remark", "constructor"]
    panel = scalepan.panel(night_sheet(), ["portions", "edible", "sure", "remark", "need"], cells)
    opened = Shown(browser, panel)
    yield opened
    assert opened.told == []
    opened.page.close()


def test_a_change_of_portions_repaints_what_rests_on_them(shown: Shown) -> None:
    shown.page.evaluate(WATCH)
    shown.give("portions", "48")
    assert shown.page.evaluate(TOUCHED) == ["buy", "need"]
    # 500 g x 48 / 4 = 6 kg; / 0.44 = 13 7/11 kg, which is 13.636 kg.
    assert shown.lit() == [
        ["need", "6 kg EP", "5 kg EP, +1 kg"],
        ["buy", "≈ 13.64 kg AP", "≈ 11.36 kg AP, ≈ +2.273 kg"],
    ]
    assert shown.page.get_by_text("≈ 13.64 kg AP", exact=True).get_attribute("title") == (
        "exactly 13 7/11 kg AP"
    )
    told = shown.page.get_by_role("status").text_content()
    assert told.startswith("3 figures changed. portions: 48, was 40; need: 6 kg EP, was 5 kg EP;")


def test_exact_figures_are_shown_when_asked_for(shown: Shown) -> None:
    shown.press("Show exact figures")
    assert shown.figure("buy") == "≈ 11.36 kg AP exactly 11 4/11 kg AP"
    shown.press("Show exact figures")
    assert shown.figure("buy") == "≈ 11.36 kg AP"


def test_steps_by_button_and_by_key(shown: Shown) -> None:
    shown.press("portions: one more")
    shown.field("portions").press("ArrowUp")
    shown.settle()
    assert shown.field("portions").input_value() == "42"
    assert shown.figure("need") == "5.25 kg EP"
    shown.press("Undo the last change")
    assert shown.field("portions").input_value() == "41"
    shown.press("Make the change again")
    assert shown.field("portions").input_value() == "42"


def test_what_is_refused_stands_beside_its_field_until_escape(shown: Shown) -> None:
    shown.give("portions", "3 kg")
    field = shown.field("portions")
    assert field.get_attribute("aria-invalid") == "true"
    problem = field.get_attribute("aria-describedby").split()[1]
    assert shown.page.locator(f"#{problem}").text_content() == (
        "portions is plain number, but the value is weight "
        "(give the same kind, or redeclare the cell)"
    )
    assert field.input_value() == "3 kg"
    field.press("Escape")
    shown.settle()
    assert (field.input_value(), field.get_attribute("aria-invalid")) == ("40", "false")


def test_a_box_and_a_text(shown: Shown) -> None:
    shown.field("sure").click()
    shown.settle()
    assert shown.panel.sheet.value("sure") is False
    shown.give("remark", "south dome")
    assert shown.lit() == [["remark", "south dome", "north dome"]]


def test_an_override_wants_a_reason_and_is_released(shown: Shown) -> None:
    shown.give("need", "4.4 kg EP")
    group = shown.page.get_by_role("group", name="need", exact=True)
    assert "the override of need gives no reason" in group.inner_text()
    group.get_by_label("because").fill("weighed")
    shown.press("Override need")
    assert shown.figure("buy") == "10 kg AP"
    assert "overridden: weighed; its own: 5 kg EP" in group.inner_text()
    assert group.get_by_label("because").input_value() == ""
    shown.press("Release need")
    assert shown.figure("buy") == "≈ 11.36 kg AP"


def test_what_is_being_typed_is_left_alone(shown: Shown) -> None:
    shown.field("portions").fill("405")
    shown.panel.sheet.set("portions", 60)
    shown.panel.refresh()
    shown.page.evaluate("(answers) => hear(answers)", shown.answers.taken())
    assert shown.field("portions").input_value() == "405"
    assert shown.figure("need") == "7.5 kg EP"
    shown.field("portions").press("Escape")
    assert shown.field("portions").input_value() == "60"


def test_a_field_shows_what_its_cell_holds_however_it_was_typed(shown: Shown) -> None:
    shown.give("portions", "80/2")
    assert shown.field("portions").input_value() == "40"


def test_a_page_that_lost_a_patch_catches_up(shown: Shown) -> None:
    shown.panel.sheet.set("portions", 60)
    shown.panel.refresh()
    shown.answers.taken()
    shown.give("edible", "0.5")
    assert shown.figure("buy") == "15 kg AP"
    assert shown.field("portions").input_value() == "60"


def test_a_page_that_is_left_hears_no_more(shown: Shown) -> None:
    shown.page.evaluate("() => leave()")
    answers = shown.answers.to({"do": "step", "cell": "portions", "by": 1})
    shown.page.evaluate("(answers) => hear(answers)", answers)
    assert shown.figure("need") == "5 kg EP"


def test_every_field_has_a_label_and_the_keyboard_reaches_all(shown: Shown) -> None:
    reached = []
    unnamed = "() => [...document.querySelectorAll('input')].filter((f) => !f.labels.length).length"
    assert shown.page.evaluate(unnamed) == 0
    for _ in range(11):
        shown.page.keyboard.press("Tab")
        reached.append(shown.page.evaluate(NAME_OF_FOCUS))
    assert reached == [
        "portions",
        "portions: one less",
        "portions: one more",
        "edible",
        "sure",
        "remark",
        "need",
        "because",
        "Override need",
        "Show exact figures",
        "Figures",
    ]


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_bad_names_do_nothing_and_lit_figures_are_read(browser: Any, scheme: str) -> None:
    sheet = night_sheet(WILD)
    sheet.override("need", "5 kg EP", why=WILD)
    panel = scalepan.panel(sheet, ["portions", "remark", "need"], ["need", "pots", "remark"])
    shown = Shown(browser, panel, color_scheme=scheme, reduced_motion="reduce")
    shown.give("portions", WILD)
    shown.give("remark", WILD + "!")
    shown.give("portions", "60")
    assert shown.page.evaluate(CONTRAST) > 7  # WCAG 2.2, 1.4.6: enhanced contrast
    assert shown.told == []
    inside = shown.page.locator(".scalepan-panel")
    assert inside.locator("script, img").count() == 0
    assert "<script>alert(1)</script>[U+202E]<img src=x" in inside.inner_text()
    shown.page.close()


def test_lights_move_unless_that_is_not_wanted(browser: Any) -> None:
    moving = "() => getComputedStyle(document.querySelector('[data-lit]')).animationName"
    for motion, name in (("no-preference", "scalepan-lit-odd"), ("reduce", "none")):
        shown = Shown(browser, scalepan.panel(night_sheet()), reduced_motion=motion)
        shown.give("portions", "48")
        assert shown.page.evaluate(moving) == name
        shown.page.close()


def test_of_a_thousand_cells_those_in_view_are_laid_out(browser: Any) -> None:
    sheet = large_sheet()
    shown = Shown(browser, scalepan.panel(sheet, cells=sheet.cells()))
    shown.give("portions", "41")
    assert len(shown.lit()) == 500
    # line498 is written with 598/7 g for 4: for 41 that is 598 x 41 / 28 g.
    assert shown.figure("line498.need") == "≈ 875.6 g EP"
    shown.page.close()
