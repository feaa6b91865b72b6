"""A dish, its prices and a yield test for the plots: all of it is invented.

The night kitchen of a hill-top observatory makes it for its watchers.
"""

from __future__ import annotations

import math
from fractions import Fraction

import scalepan
from scalepan.sheet_comparison import Comparison
from scalepan.sheet_studies import Sweep

POT = """\
name = "Swede and barley pot"
serves = 4
lines = [
  "500 g swede, peeled",
  "220 g pearl barley",
  "4 eggs | one per portion",
  "240 g chickpeas, drained",
]
"""
# Packs of each item, by what they hold and cost: three kinds of content, one that will not keep.
PRICES = """\
item,sold_as,pack,price,currency,keeps
swede,AP,1 kg,2.10,GBP,no
swede,AP,500 g,1.20,GBP,no
pearl barley,AP,500 g,0.95,GBP,yes
eggs,AP,6,1.50,GBP,yes
eggs,AP,10,2.30,GBP,yes
chickpeas,drained,400 g tin (240 g drained),0.60,GBP,no
"""
TRIALS = """\
trial,what,part,weight
dawn,bought,carrots,4 kg
dawn,loss,,rest
dawn,edible,,3400 g
dawn,cooked,,3 kg
dusk,bought,carrots,2 kg
dusk,loss,,rest
dusk,edible,,1.5 kg
"""


def costing(portions: int = 30, *, without: str = "", stock: str = "") -> scalepan.Costing:
    """The dish at a size; ``without`` the prices of one item."""
    rows = PRICES.splitlines(keepends=True)
    prices = "".join(row for row in rows if not without or not row.startswith(without))
    recipe = scalepan.parse_recipe(POT).scale(portions=portions)
    on_hand = scalepan.parse_stock(stock) if stock else None
    return scalepan.cost(recipe, scalepan.parse_prices(prices), stock=on_hand)


def compared(variant: str = "full dome", portions: int = 60) -> Comparison:
    """At thirty portions and in a variant."""
    changes = scalepan.Changes()
    changes.set("portions", portions)
    cells = ["till", "borne", "swede.buy", "swede.packs", "per_portion.till"]
    return costing().sheet.compare(cells, {variant: changes})


def swept(last: int = 24) -> Sweep:
    cells = ["till", "borne", "swede.buy", "pearl_barley.packs"]
    return costing().sheet.sweep("portions", range(1, last + 1), cells)


def trials() -> scalepan.YieldTest:
    return scalepan.parse_yield_test(TRIALS)


# USDA SR28 11435, rutabagas: refuse 15 %, so 0.85 of the swede is edible.
EDIBLE = Fraction(85, 100)


def cheapest(need: Fraction, packs: list[tuple[int, Fraction]]) -> tuple[int, Fraction]:
    """Content and price of the cheapest cover by trying all; of equal prices the least content."""
    (large, dear), (small, cheap) = sorted(packs, reverse=True)
    ways = []
    for first in range(math.ceil(need / large) + 1):
        second = max(0, math.ceil((need - first * large) / small))
        ways.append((first * dear + second * cheap, first * large + second * small))
    price, content = min(ways)
    return content, price


def items(portions: int) -> dict[str, tuple[Fraction, int, Fraction, bool]]:
    """Need, content bought, price, and whether what is left keeps."""
    swede = Fraction(125 * portions) / EDIBLE
    barley, eggs, tins = Fraction(55 * portions), Fraction(portions), Fraction(60 * portions)
    swede_packs = [(1000, Fraction("2.10")), (500, Fraction("1.20"))]
    egg_packs = [(10, Fraction("2.30")), (6, Fraction("1.50"))]
    bags, full = math.ceil(barley / 500), math.ceil(tins / 240)
    return {
        "swede": (swede, *cheapest(swede, swede_packs), False),
        "pearl barley": (barley, bags * 500, bags * Fraction("0.95"), True),
        "eggs": (eggs, *cheapest(eggs, egg_packs), True),
        "chickpeas": (tins, full * 240, full * Fraction("0.60"), False),
    }


def costs(portions: int) -> dict[str, Fraction]:
    till = used = thrown = Fraction(0)
    for need, content, price, keeps in items(portions).values():
        till += price
        used += price * need / content
        thrown += Fraction(0) if keeps else price * (content - need) / content
    return {"till": till, "used": used, "borne": used + thrown}


def percent(part: Fraction, of: Fraction) -> str:
    """To a tenth, half up."""
    tenths = math.floor(part / of * 1000 + Fraction(1, 2))
    return f"{tenths // 10}.{tenths % 10} %"


def cents(amount: Fraction) -> str:
    rounded = math.floor(amount * 100 + Fraction(1, 2))
    return f"{rounded // 100}.{rounded % 100:02d} GBP"
