"""The command line shows a large tree to a depth, and counts what it leaves out."""

from __future__ import annotations

import pytest
import scalepan
from scalepan.command_line.trees import tree_lines
from scalepan.demo import demo_costings

# Invented.
POT = 'name = "Pot"\nserves = 4\nlines = ["500 g leeks, trimmed", "4 eggs"]'
BOOK = """\
item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.10,EUR,no
eggs,AP,6,1.50,EUR,yes
"""


@pytest.fixture(scope="module")
def till() -> scalepan.Why:
    pot = scalepan.parse_recipe(POT, file="pot.toml")
    return scalepan.cost(pot, scalepan.parse_prices(BOOK, file="prices.csv")).explain("till")


def parts_below(why: scalepan.Why) -> int:
    return sum(1 + parts_below(part) for part in why.parts)


def test_what_is_deeper_is_counted(till: scalepan.Why) -> None:
    (lines,) = till.parts
    leeks, eggs = lines.parts
    assert tree_lines(till, 2) == [
        # Two packs of 1 kg, since 500 g EP / 0.44 (USDA SR28 11246) are 1136 g; and six eggs.
        "till = 5.70 EUR",
        "  = sum(lines.till)",
        "└─ sum(lines.till) = 5.70 EUR",
        "     = sum of 2 rows",
        "   ├─ leeks.till = 4.20 EUR",
        "   │    = price_of(leeks.packs)",
        f"   │    … {parts_below(leeks)} more below: --depth",
        "   └─ eggs.till = 1.50 EUR",
        "        = price_of(eggs.packs)",
        f"        … {parts_below(eggs)} more below: --depth",
    ]
    assert tree_lines(till, 0) == [
        "till = 5.70 EUR",
        "  = sum(lines.till)",
        f"  … {parts_below(till)} more below: --depth",
    ]


def test_nothing_is_left_out_of_a_tree_shown_whole(till: scalepan.Why) -> None:
    whole = str(till).splitlines()
    assert tree_lines(till, 50) == tree_lines(till) == whole
    assert len(whole) <= 60


def test_a_large_tree_is_shown_three_deep() -> None:
    why = demo_costings()[1].explain("per_portion.borne")
    shown = tree_lines(why)
    assert shown == tree_lines(why, 3)
    assert len(str(why).splitlines()) > 300
    assert len(shown) < 80
