"""Overrides of a costing's figures: what cannot be, and what other lines keep. Prices invented."""

from __future__ import annotations

import pytest
import scalepan
from scalepan import quantity

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
