"""The rendered notebooks in a real browser: nothing is reported, fetched or cut off.

Skipped where no Chromium is found; ``apt-get install chromium`` and ``pip install playwright``.
"""

from __future__ import annotations

from pathlib import Path
from typing import Any

import pytest

PAGES = sorted((Path(__file__).parents[2] / "docs" / "notebooks" / "rendered").glob("*.html"))
# What stands out of the page to the right; a wide table scrolls in its own display.
BEYOND = "() => document.documentElement.scrollWidth - innerWidth"
# Ink and ground of the first text, which must not come near each other.
COLOURS = """() => {
  const style = getComputedStyle(document.body);
  return [style.color, style.backgroundColor];
}"""
PICTURES = """() => [...document.images].filter(
  each => !(each.complete && each.naturalWidth > 0)).length"""


def shades(colour: str) -> list[int]:
    return [int(part) for part in colour[colour.index("(") + 1 : -1].split(",")[:3]]


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("path", PAGES, ids=lambda path: path.stem)
def test_a_rendered_notebook_opens_clean(browser: Any, path: Path, scheme: str) -> None:
    page = browser.new_page(viewport={"width": 1000, "height": 800}, color_scheme=scheme)
    told: list[str] = []
    page.on("console", lambda message: told.append(message.text))
    page.on("pageerror", lambda error: told.append(str(error)))
    page.on("request", lambda request: told.append(request.url[:200]))
    page.goto(path.as_uri())
    page.wait_for_load_state("networkidle")
    assert [each for each in told if not each.startswith("data:")] == [path.as_uri()]
    assert page.evaluate(BEYOND) <= 0
    assert page.evaluate(PICTURES) == 0
    ink, ground = (shades(each) for each in page.evaluate(COLOURS))
    assert abs(sum(ink) - sum(ground)) > 450
    page.close()
