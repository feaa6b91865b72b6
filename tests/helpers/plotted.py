"""A dish, its prices and a yield test for the plots: all of it is invented.

The night kitchen of a hill-top observatory makes it for its watchers.
"""

from __future__ import annotations

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
