"""How the figures of a basket came about."""

from __future__ import annotations

import pytest
import scalepan
from dishes import dish, prices


def two_pies() -> scalepan.Basket:
    dishes = [dish("Pie", "600 g leeks", "5 g xylk"), dish("Broth", "200 g leeks")]
    return scalepan.basket(dishes, prices("leeks,AP,1 kg,2.00,EUR,no"))


def test_why_goes_from_the_basket_to_its_dishes_and_lines() -> None:
    bought = two_pies()
    assert bought.why("till") == (
        "till = at least 2.00 EUR\n"
        "  = sum over the dishes\n"
        "├─ pie.till = 1.50 EUR\n"
        "└─ broth.till = 0.50 EUR\n"
    )
    assert bought.why("pie.borne") == (
        "pie.borne = at least 1.50 EUR\n"
        "  = sum over its lines, each by its share of what is bought for all dishes\n"
        "└─ pie.leeks.borne = 1.50 EUR\n"
    )
    packs = bought.explain("broth.leeks.packs")
    assert packs.figure == "1 x 1 kg"
    assert [(part.name, part.figure) for part in packs.parts] == [
        ("leeks in all", "800 g AP"),
        ("pack 1 kg", "2.00 EUR"),
    ]
    assert [part.name for part in packs.parts[0].parts] == ["pie.leeks.buy", "broth.leeks.buy"]


def test_every_figure_of_a_basket_is_explained() -> None:
    bought = two_pies()
    for cell in bought.cells:
        assert bought.explain(cell).name == cell
    assert {"till", "pie.till", "broth.borne", "pie.leeks.buy", "pie.xylk.need"} <= set(
        bought.cells
    )


@pytest.mark.parametrize(
    ("cell", "code", "message"),
    [
        (
            "pi.till",
            "why.unknown_cell",
            'no figure is called "pi.till" (nearest: pie.till, till)',
        ),
        (
            "soup",
            "why.unknown_cell",
            'no figure is called "soup" (figures: till, used, thrown, borne, those of each dish '
            "and of its lines: pie.till, broth.till)",
        ),
        (
            "pie.leeks.gold",
            "why.unknown_cell",
            'no figure is called "pie.leeks.gold" '
            "(nearest: pie.leeks.need, pie.leeks.till, pie.leeks.used)",
        ),
        (
            "pie.xylk.till",
            "why.unpriced",
            "pie.xylk.till has no figure: the line is not priced (no price row is for xylk)",
        ),
    ],
)
def test_figures_that_a_basket_does_not_have(cell: str, code: str, message: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        two_pies().why(cell)
    assert (caught.value.code, str(caught.value)) == (code, message)
