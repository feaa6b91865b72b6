"""Overrides of a costing's figures: what cannot be, and what other lines keep. Prices invented."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
import scalepan
from scalepan import quantity

if TYPE_CHECKING:
    from collections.abc import Callable

IMPOSSIBLE = [
    ("leeks.edible", "75", "75 EP/AP: a share of the whole is above 0 and at most 1",
     "write 75 % for a percentage"),
    ("leeks.edible", "1.2", "1.2 EP/AP: a share of the whole is above 0 and at most 1",
     ""),
    ("leeks.edible", "-0.5", "-0.5 EP/AP: a share of the whole is above 0 and at most 1", ""),
    ("leeks.edible", "0", "0 EP/AP: a share of the whole is above 0 and at most 1", ""),
    ("leeks.need", "-1 kg EP", "-1 kg EP: it is not below 0", ""),
    ("portions", "0", "0: it is above 0", ""),
    ("portions", "-1", "-1: it is above 0", ""),
]  # fmt: skip


@pytest.mark.parametrize(("cell", "value", "said", "hint"), IMPOSSIBLE)
def test_a_figure_that_cannot_be_is_refused(
    forty: scalepan.Costing, cell: str, value: str, said: str, hint: str
) -> None:
    till = forty.till
    for change in (
        lambda: forty.override(cell, value, why="a slip"),
        lambda: forty.sheet.override(cell, value, why="a slip"),
    ):
        with pytest.raises(scalepan.CostError) as caught:
            change()
        error = caught.value
        assert (error.code, error.message, error.hint) == (
            "cost.impossible",
            f"{cell} cannot be {said}",
            hint,
        )
    assert forty.till == till


def test_a_price_given_to_a_line_is_refused(forty: scalepan.Costing) -> None:
    """No figure would go by it. A cell of one's own may have that word in its name."""
    with pytest.raises(scalepan.SheetError) as caught:
        forty.sheet.set("leeks.price", "3 EUR")
    assert (caught.value.code, str(caught.value)) == (
        "sheet.unknown",
        'no cell is called "leeks.price": prices are those of packs (cost with other rows of '
        "prices, or override leeks.till with what was paid)",
    )
    forty.sheet.set("menu.price", "3 EUR")
    forty.sheet.define("leeks.price", "leeks.till / leeks.buy")
    forty.sheet.set("menu.price", "4 EUR")


def test_a_costing_at_another_size_shows_that_size(
    forty: scalepan.Costing, leek_prices: scalepan.PriceBook
) -> None:
    again = scalepan.cost(forty.recipe.scale(portions=60), leek_prices)
    forty.sheet.set("portions", 60)
    assert (forty.recipe.portions, forty.recipe_now.portions) == (40, 60)
    assert forty.to_check[0] == "portions is set to 60; it was 40"
    for page in (str, scalepan.costing_page, scalepan.shopping_page):
        title = str(page(forty)).splitlines()[0]
        assert title == str(page(again)).splitlines()[0]
        assert "60 portions" in title
    assert "for 60: till" in repr(forty)
    assert [line.told for line in forty.recipe_now.lines] == [
        line.told for line in again.recipe.lines
    ]


def test_a_figure_that_is_defined_anew_is_told(forty: scalepan.Costing) -> None:
    forty.sheet.define("till", "1 GBP")
    assert forty.to_check[0] == "till is defined anew: 1 GBP"


@pytest.mark.parametrize(
    ("cell", "change"),
    [
        ("till", lambda sheet: sheet.rename("till", "paid")),
        ("leeks.till", lambda sheet: sheet.rename("lines.leeks", "alliums")),
        ("leeks.thrown", lambda sheet: sheet.rename("lines.thrown", "binned")),
        ("leeks.till", lambda sheet: sheet.remove_row("lines", "leeks")),
    ],
)
def test_cells_of_a_costing_keep_their_names(
    forty: scalepan.Costing, cell: str, change: Callable[[scalepan.Sheet], object]
) -> None:
    sheet = forty.sheet
    with pytest.raises(scalepan.SheetError) as caught:
        change(sheet)
    assert (caught.value.code, str(caught.value)) == (
        "sheet.kept",
        f"{cell} is a cell that this sheet is made with, and keeps its name (define a cell of your "
        "own beside it, or override it)",
    )
    sheet.define("own", "till * 2")
    sheet.rename("own", "twice")
    sheet.remove("twice")


def test_what_a_figure_cannot_be_is_not_swept(forty: scalepan.Costing) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        forty.sheet.sweep("portions", [1, 0], "till")
    assert str(caught.value) == "portions cannot be 0: it is above 0"


def test_a_percentage_is_a_share(forty: scalepan.Costing) -> None:
    forty.override("leeks.edible", "50 %", why="own trim")
    assert forty.sheet.value("leeks.edible") == quantity("0.5 EP/AP")


def test_lines_of_the_item_that_keep_their_share_are_named(
    leek_prices: scalepan.PriceBook,
) -> None:
    lines = '["500 g leeks, trimmed", { id = "top", line = "100 g leeks, trimmed" }]'
    pot = scalepan.parse_recipe(f'name = "Pot"\nserves = 4\nlines = {lines}\n')
    costing = scalepan.cost(pot, leek_prices)
    costing.override("leeks.edible", "0.5", why="own trim")
    told = "leeks.edible is overridden with 0.5 EP/AP: own trim"
    assert f"{told}; of the same item, but not overridden: top.edible" in costing.to_check
    costing.override("top.edible", "0.5", why="own trim")
    assert told in costing.to_check
