"""Printed pages in a real browser: on paper, on screens, in light and in dark.

Skipped where no Chromium is found; ``apt-get install chromium`` and
``pip install playwright pypdf``.
"""

from __future__ import annotations

import io
from pathlib import Path
from typing import Any

import pytest
import scalepan
from displayed import price_book, recipe, with_base
from scalepan.demo import demo_files
from scalepan_command.start import main

pypdf = pytest.importorskip("pypdf", reason="pypdf is not installed")

WILD = "<script>alert(1)</script>\u202e<img src=x onerror=alert(2)> =1+1 \u2067 🥕 עדשים"
NAMES = {"wild": WILD, "long": "a" * 10_000, "good": "Night watch supper"}
# Of PDF, 72 to the inch: A4 is 210 by 297 mm, Letter 8.5 by 11 in.
SHEETS = {"A4": (210 * 72 / 25.4, 297 * 72 / 25.4), "Letter": (612, 792)}
SETS = {
    "as written": {},
    "us": {"volumes": "us spoons and cups", "weights": "scales 1 oz"},
    "metric": {"volumes": "metric spoons and jug", "weights": "scales 5 g"},
}
BEYOND = """() => [...document.querySelectorAll('main, main *')]
  .filter(each => each.scrollWidth > each.clientWidth + 1 && each.clientWidth > 0)
  .map(each => each.outerHTML.slice(0, 80))"""
COLOURS = """() => {
  const style = getComputedStyle(document.body);
  return [style.color, style.backgroundColor];
}"""


def demo(portions: int) -> scalepan.Recipe:
    return scalepan.read_recipe(demo_files()[0]).scale(portions=portions)


def all_pages(name: str, paper: str = "A4") -> scalepan.PrintedPages:
    """Every kind of page with that name in it."""
    dish = recipe(name)
    costing = scalepan.cost(dish, price_book(name))
    pages = [
        scalepan.kitchen_page(dish),
        scalepan.kitchen_page(with_base(name), "us spoons and cups", "scales 1 oz"),
        scalepan.shopping_page(costing),
        scalepan.costing_page(costing),
    ]
    return scalepan.printed_pages(pages, paper)


def opened(browser: Any, pages: scalepan.PrintedPages, folder: Path, **options: Any) -> Any:
    """The page in the browser; ``told`` is what it reports and what it asks for."""
    file = folder / "pages.html"
    pages.save(file)
    page = browser.new_page(**options)
    page.told = []
    page.on("console", lambda message: page.told.append(message.text))
    page.on("pageerror", lambda error: page.told.append(str(error)))
    page.on("dialog", lambda dialog: (page.told.append(dialog.message), dialog.dismiss()))
    page.on("request", lambda request: page.told.append(request.url))
    page.goto(file.as_uri())
    page.wait_for_load_state("networkidle")
    return page


def printed(browser: Any, pages: scalepan.PrintedPages, folder: Path) -> Any:
    page = opened(browser, pages, folder)
    reader = pypdf.PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True)))
    page.close()
    return reader


@pytest.mark.parametrize("label", NAMES)
@pytest.mark.parametrize(
    ("width", "scheme"), [(1000, "light"), (1000, "dark"), (380, "light"), (380, "dark")]
)
def test_nothing_is_reported_nothing_fetched_and_nothing_too_wide(
    browser: Any, tmp_path: Path, label: str, width: int, scheme: str
) -> None:
    options = {"viewport": {"width": width, "height": 800}, "color_scheme": scheme}
    page = opened(browser, all_pages(NAMES[label]), tmp_path, **options)
    assert page.told == [(tmp_path / "pages.html").as_uri()]
    assert page.evaluate("() => document.scripts.length + document.images.length") == 0
    assert page.evaluate("() => document.documentElement.scrollWidth <= innerWidth")
    if width == 1000:
        assert page.evaluate(BEYOND) == []
    page.close()


@pytest.mark.parametrize(("scheme", "is_dark"), [("light", False), ("dark", True)])
def test_a_screen_has_the_colours_of_its_reader_and_paper_is_white(
    browser: Any, tmp_path: Path, scheme: str, is_dark: bool
) -> None:
    page = opened(browser, all_pages("Supper"), tmp_path, color_scheme=scheme)
    ink, ground = (brightness(colour) for colour in page.evaluate(COLOURS))
    assert abs(ink - ground) > 200
    assert (ground < ink) == is_dark
    page.emulate_media(media="print")
    assert page.evaluate(COLOURS) == ["rgb(0, 0, 0)", "rgb(255, 255, 255)"]
    page.close()


def brightness(colour: str) -> int:
    """0 to 255, of grey."""
    parts = [int(part) for part in colour[colour.index("(") + 1 : -1].split(",")[:3]]
    return sum(parts) // 3


def test_the_policy_keeps_out_what_is_put_in_later(browser: Any, tmp_path: Path) -> None:
    """Were a name to get through all the same, a browser would neither run nor fetch it."""
    page = opened(browser, all_pages("Supper"), tmp_path)
    page.evaluate(
        """() => document.body.insertAdjacentHTML('beforeend', `<img src="file:///x.png"
          onerror="document.title = 'ran'"><style>body { color: red }</style>
          <div onclick="document.title = 'ran'" id="there">x</div>`)"""
    )
    page.click("#there")
    assert page.title() != "ran"
    assert page.evaluate("() => getComputedStyle(document.body).color") != "rgb(255, 0, 0)"
    assert len([told for told in page.told if "Content Security Policy" in told]) >= 3
    page.close()


def test_a_box_is_ticked_on_a_screen(browser: Any, tmp_path: Path) -> None:
    page = opened(browser, all_pages("Supper"), tmp_path)
    box = page.locator("input").first
    assert not box.is_checked()
    box.check()
    assert box.is_checked()
    page.close()


@pytest.mark.parametrize("sets", SETS)
@pytest.mark.parametrize("paper", SHEETS)
@pytest.mark.parametrize("portions", [4, 40])
def test_the_kitchen_page_of_the_demo_is_one_sheet(
    browser: Any, tmp_path: Path, portions: int, paper: str, sets: str
) -> None:
    pages = scalepan.kitchen_page(demo(portions), **SETS[sets], paper=paper)
    (sheet,) = printed(browser, pages, tmp_path).pages
    width, height = (float(side) for side in sheet.mediabox[2:])
    assert (width, height) == pytest.approx(SHEETS[paper], abs=1)
    text = sheet.extract_text()
    assert "page 1 of 1" in text
    assert "Remarks" in text


@pytest.mark.parametrize("paper", SHEETS)
def test_the_shopping_page_of_the_demo_is_one_sheet(
    browser: Any, tmp_path: Path, paper: str
) -> None:
    costing = scalepan.cost(demo(40), scalepan.read_prices(demo_files()[1]))
    (sheet,) = printed(browser, scalepan.shopping_page(costing, paper), tmp_path).pages
    assert "till 75.20 EUR" in sheet.extract_text()


@pytest.mark.parametrize("paper", SHEETS)
def test_a_long_dish_flows_on_with_its_title_and_its_heads(
    browser: Any, tmp_path: Path, paper: str
) -> None:
    lines = ", ".join(f'{{ id = "x{n}", line = "{n + 100} g salt" }}' for n in range(80))
    source = f'name = "Salt in eighty heaps"\nserves = 4\nlines = [{lines}]\n'
    pages = scalepan.kitchen_page(scalepan.parse_recipe(source), paper=paper)
    sheets = [page.extract_text() for page in printed(browser, pages, tmp_path).pages]
    assert len(sheets) > 1
    for number, text in enumerate(sheets, 1):
        assert "Salt in eighty heaps, 4 portions" in text
        assert f"page {number} of {len(sheets)}" in text
    assert "weighed or counted" in sheets[0]
    assert "weighed or counted" in sheets[1]
    # No line is lost and none stands on two sheets.
    rows = [f"{n + 100} g" for n in range(80)]
    assert sorted(sum(text.split("\n").count(row) for text in sheets) for row in rows)[0] >= 0
    assert all(sum(row in text for text in sheets) == 1 for row in rows)


def test_pages_together_begin_on_sheets_of_their_own(browser: Any, tmp_path: Path) -> None:
    costing = scalepan.cost(demo(40), scalepan.read_prices(demo_files()[1]))
    pages = scalepan.printed_pages(
        [
            scalepan.shopping_page(costing),
            scalepan.kitchen_page(demo(4)),
            scalepan.kitchen_page(demo(40)),
        ]
    )
    sheets = [page.extract_text() for page in printed(browser, pages, tmp_path).pages]
    assert [text.count("of 3") for text in sheets] == [1, 1, 1]
    kinds = ("shopping page", "kitchen page", "kitchen page")
    sizes = ("40 portions", "4 portions", "40 portions")
    for text, kind, size in zip(sheets, kinds, sizes, strict=True):
        assert kind in text
        assert f"Fennel and butter bean bake, {size}" in text


@pytest.mark.parametrize("label", NAMES)
def test_wild_names_print(browser: Any, tmp_path: Path, label: str) -> None:
    sheets = printed(browser, all_pages(NAMES[label], "Letter"), tmp_path).pages
    assert 4 <= len(sheets) <= 10
    assert all(float(sheet.mediabox[2]) == 612 for sheet in sheets)


@pytest.mark.usefixtures("browser")
def test_the_command_prints_a_pdf(tmp_path: Path) -> None:
    file = tmp_path / "bake.pdf"
    asked = ["page", demo_files()[0], "--portions", "40", "--paper", "Letter"]
    assert main([*asked, "--pdf", str(file)]) == 0
    (sheet,) = pypdf.PdfReader(file).pages
    assert "Fennel and butter bean bake, 40 portions" in sheet.extract_text()
    assert [float(side) for side in sheet.mediabox[2:]] == [612, 792]


@pytest.mark.parametrize("width", [1000, 500])
def test_a_page_in_a_notebook_is_as_wide_as_its_cell(browser: Any, width: int) -> None:
    page = browser.new_page(viewport={"width": width, "height": 800})
    page.set_content(scalepan.kitchen_page(demo(40))._repr_mimebundle_()["text/html"])
    cell, frame = page.evaluate("""() => {
      const frame = document.querySelector('iframe');
      return [frame.parentElement.clientWidth, [frame.offsetWidth, frame.offsetHeight]];
    }""")
    page.close()
    assert frame[0] == cell > width * 0.9
    assert frame[1] > 700
