"""Displays stay small: long tables are cut with a count, and the style touches nothing else."""

from __future__ import annotations

import re

import pytest
import scalepan
from displayed import displayed, recipe
from page_reader import bundle_of, page_of
from scalepan.display.style import STYLE

KINDS = displayed()
LIMIT = 200_000


def sheet_of_cells(count: int) -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    with sheet.together() as change:
        for place in range(count):
            change.set(f"cell_{place:04}", f"{place}/7 kg")
    return sheet


def sheet_of_rows(count: int) -> scalepan.Sheet:
    sheet = scalepan.Sheet()
    with sheet.together() as change:
        change.add_rows(
            "trays", given={"weight": "kg", "price": "EUR/kg"}, formulas={"cost": "weight*price"}
        )
        for place in range(count):
            change.add_row("trays", f"tray_{place:04}", {"weight": f"{place}/7 kg", "price": "3"})
        change.define("trays_cost", "sum(trays.cost)")
    return sheet


@pytest.mark.parametrize("make", [sheet_of_cells, sheet_of_rows])
def test_a_thousand_lines_are_cut_with_a_count(make: object) -> None:
    assert callable(make)
    sheet = make(1000)
    bundle = bundle_of(sheet)
    assert len(bundle["text/html"].encode()) < LIMIT
    page = page_of(sheet)
    assert len(page.tables[-1]) == 1 + 40
    note = "… 960 more rows; all of them: sheet.text()"
    assert note in page.text
    assert bundle["text/plain"].count(note) == 1


def test_forty_rows_are_shown_whole() -> None:
    page = page_of(sheet_of_cells(40))
    assert len(page.tables[0]) == 1 + 40
    assert "more rows" not in page.text
    assert "… 1 more row; all" in page_of(sheet_of_cells(41)).text


def test_what_a_cook_works_by_is_shown_whole() -> None:
    lines = ", ".join(f'{{ id = "x{n}", line = "{n + 1} g salt" }}' for n in range(150))
    long = scalepan.parse_recipe(f'name = "x"\nserves = 4\nlines = [{lines}]\n')
    assert len(page_of(long).tables[0]) == 1 + 150
    assert len(bundle_of(long)["text/html"].encode()) < LIMIT


def test_many_blocks_of_rows_share_the_room_of_one_display() -> None:
    sheet = scalepan.Sheet()
    with sheet.together() as change:
        for block in range(400):
            name = f"block_{block:03}"
            change.add_rows(name, given={"weight": "kg", "price": "EUR/kg"})
            for row in range(30):
                cells = {"weight": f"{row}/7 kg", "price": "10/3"}
                change.add_row(name, f"row_{block:03}_{row:02}", cells)
    bundle = bundle_of(sheet)
    assert len(bundle["text/html"].encode()) < LIMIT
    (more,) = re.findall(r"… (\d+) more parts", bundle["text/html"])
    tables = page_of(sheet).tables
    assert len(tables) + int(more) == 400
    assert f"… {more} more parts" in bundle["text/plain"]


def test_a_why_of_a_thousand_rows_is_cut_with_a_count() -> None:
    why = sheet_of_rows(1000).explain("trays_cost")
    (total,) = why.parts
    bundle = bundle_of(why)
    assert len(bundle["text/html"].encode()) < LIMIT
    assert f"… {len(total.parts) - 40} more parts; all of them: why.parts" in bundle["text/html"]
    lines = str(why).splitlines()
    assert bundle["text/plain"].splitlines()[:200] == lines[:200]
    assert bundle["text/plain"].endswith(
        f"\n… {len(lines) - 200} more lines; all of them: str(why)"
    )


def test_a_long_curve_is_cut() -> None:
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\nfennel,AP,1 kg,3.20,EUR,no\n"
    )
    curve = scalepan.cost(recipe(), prices).curve(range(1, 501))
    page = page_of(curve)
    assert "… 460 more rows; all of them: curve.portions, curve.till, ..." in page.text
    assert len(page.tables[0]) == 1 + 40


@pytest.mark.parametrize("kind", KINDS)
def test_a_display_has_the_style_once_and_fetches_nothing(kind: str) -> None:
    source = bundle_of(KINDS[kind])["text/html"]
    assert source.startswith(f'<style>{STYLE}</style><div class="scalepan">')
    assert source.count("<style") == 1
    for fetching in ("http", "//", "url(", "@import", "src=", "href=", "<script", "javascript"):
        assert fetching not in source


def test_the_style_is_small_and_bound_to_our_own_class() -> None:
    assert len(STYLE.encode()) < 2000
    rules = re.findall(r"([^{}]+)\{([^{}]*)\}", STYLE)
    assert "".join(f"{where}{{{what}}}" for where, what in rules) == STYLE
    for where, what in rules:
        assert all(part.strip().startswith(".scalepan.scalepan") for part in where.split(","))
        # Colours are those of the page around: neither light nor dark is assumed.
        assert set(re.findall(r"(?:color|background):([^;]+)", what)) <= {"inherit", "none"}
    assert not re.search(r"#[0-9a-f]{3}|rgb|hsl", STYLE)
