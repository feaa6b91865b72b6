"""A need is told by what its packs count, and a base by what takes it."""

from __future__ import annotations

import pytest
import scalepan

HEAD = "item,sold_as,pack,price,currency,keeps\n"
OWN = scalepan.catalog_with(
    [
        {"fact": "o.g", "food": "garlic", "kind": "piece", "size": "head",
         "value": "50 g EP/(piece AP)"},
        {"fact": "o.p", "food": "parsley", "kind": "piece", "size": "bunch",
         "value": "60 g EP/(piece AP)"},
    ]
)  # fmt: skip


@pytest.mark.parametrize(
    ("line", "pack", "need", "left"),
    [
        # 90 g of 50 g, and 200 g of 60 g a piece (invented).
        ("90 g garlic, peeled", "garlic,AP,1 head,0.60,EUR,yes", "1.8 heads AP", "0.2 head kept"),
        ("200 g parsley, chopped", "parsley,AP,1 bunch,1.50,EUR,no",
         "3 1/3 bunches AP", "2/3 bunch thrown"),
        ("40 eggs", "eggs,AP,6,1.50,EUR,yes", "40 pieces AP", "2 pieces kept"),
    ],
)  # fmt: skip
def test_a_need_is_told_by_what_its_packs_count(line: str, pack: str, need: str, left: str) -> None:
    dish = scalepan.parse_recipe(f'name = "x"\nserves = 1\nlines = ["{line}"]', catalog=OWN)
    costing = scalepan.cost(dish, scalepan.parse_prices(f"{HEAD}{pack}\n"))
    (row,) = [text for text in str(costing.shopping).splitlines() if pack.split(",")[2] in text]
    assert need in row
    assert row.endswith(left)


def test_a_base_is_for_lines_told_in_words() -> None:
    dish = scalepan.parse_recipe("""
name = "Stew"
serves = 4
lines = ["200 g pearl barley", "rest of the root stock"]
[bases.root_stock]
name = "Root stock"
serves = 4
makes = "1.2 L"
lines = ["2 carrots"]
""")
    assert "\n1.2 L for rest of root stock" in str(dish)
    assert "1.2 L for rest of root stock." in scalepan.hand_over(dish)
    assert "1.2 L for rest of root stock." in scalepan.kitchen_page(dish).html
