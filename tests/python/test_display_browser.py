"""Every display in a real browser: nothing is reported, nothing is fetched, in light and in dark.

Skipped where no Chromium is found; ``apt-get install chromium`` and ``pip install playwright``.
"""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from displayed import displayed
from page_reader import bundle_of

WILD = "<script>alert(1)</script>\u202e<img src=x onerror=alert(2)> =1+1 \u2067"
# Black on white and white on black, as a page of a notebook has them.
PAGE = """<!doctype html><html lang="en"><meta charset="utf-8"><title>Displays</title>
<style>body {{ margin: 24px; font: 14px sans-serif; background: #fff; color: #000 }}
@media (prefers-color-scheme: dark) {{ body {{ background: #111; color: #fff }} }}
</style>{displays}</html>
"""
WIDTHS_BEYOND = """() => [...document.querySelectorAll('.scalepan')]
  .filter(each => each.getBoundingClientRect().right > innerWidth).length"""
# Of a cell, the colour it is painted in and whether anything is painted behind it.
COLOURS = """() => [...document.querySelectorAll('.scalepan td')].map(cell => {
  const style = getComputedStyle(cell);
  return [style.color, style.backgroundColor];
})"""
RIGHT_EDGES = """() => [...document.querySelectorAll('.scalepan table')].map(table =>
  [...table.rows].flatMap(row => [...row.cells]
    .filter(cell => cell.className === 'n')
    .map(cell => {
      const range = document.createRange();
      range.selectNodeContents(cell);
      return [cell.cellIndex, Math.round(range.getBoundingClientRect().right)];
    }))
)"""


@pytest.fixture(scope="module")
def page_file(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Every display, of good names and of bad ones."""
    shown = [*displayed().values(), *displayed(WILD).values()]
    displays = "<hr>".join(bundle_of(each)["text/html"] for each in shown)
    path = tmp_path_factory.mktemp("displays") / "displays.html"
    path.write_text(PAGE.format(displays=displays), encoding="utf-8")
    return path


@pytest.fixture(params=[(1000, "light"), (1000, "dark"), (600, "light")], ids=str)
def page(request: pytest.FixtureRequest, browser: Any, page_file: Path) -> Iterator[Any]:
    width, scheme = request.param
    opened = browser.new_page(viewport={"width": width, "height": 800}, color_scheme=scheme)
    opened.told = []
    opened.on("console", lambda message: opened.told.append(message.text))
    opened.on("pageerror", lambda error: opened.told.append(str(error)))
    opened.on("dialog", lambda dialog: (opened.told.append(dialog.message), dialog.dismiss()))
    opened.on("request", lambda request: opened.told.append(request.url))
    opened.goto(page_file.as_uri())
    yield opened
    opened.close()


def test_nothing_is_reported_and_nothing_fetched(page: Any, page_file: Path) -> None:
    page.wait_for_load_state("networkidle")
    assert page.told == [page_file.as_uri()]
    assert page.evaluate("() => document.scripts.length + document.images.length") == 0


def test_a_wide_table_scrolls_in_its_own_display(page: Any) -> None:
    assert page.evaluate(WIDTHS_BEYOND) == 0
    assert page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")


def test_cells_have_the_colour_of_the_page_and_no_ground(page: Any) -> None:
    ink = page.evaluate("() => getComputedStyle(document.body).color")
    cells = page.evaluate(COLOURS)
    assert len(cells) > 500
    assert {tuple(cell) for cell in cells} == {(ink, "rgba(0, 0, 0, 0)")}


def test_figures_of_a_column_end_in_one_line(page: Any) -> None:
    found = 0
    for cells in page.evaluate(RIGHT_EDGES):
        edges: dict[int, set[int]] = {}
        for column, edge in cells:
            if edge:
                edges.setdefault(column, set()).add(edge)
        found += len(edges)
        assert all(max(each) - min(each) <= 1 for each in edges.values())
    assert found > 50
