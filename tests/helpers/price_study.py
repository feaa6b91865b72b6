"""A study of one dish at many sets of prices, as a process of its own runs it. Prices invented."""

from __future__ import annotations

import random
from fractions import Fraction

import scalepan

DISH = """\
name = "Night watch pie"
serves = 4
measures = "metric"
lines = ["600 g leeks, trimmed", "240 g chickpeas, drained", "4 eggs | one per portion",
  "300 g plain flour", "150 g butter"]
"""
OFFERS = (
    ("leeks", "AP", "1 kg", 210),
    ("leeks", "AP", "500 g", 120),
    ("chickpeas", "drained", "400 g tin (240 g drained)", 60),
    ("eggs", "AP", "6", 150),
    ("eggs", "AP", "10", 230),
    ("plain flour", "AP", "1 kg", 95),
    ("butter", "AP", "250 g", 240),
)


def pie() -> scalepan.Recipe:
    return scalepan.parse_recipe(DISH).scale(portions=40)


def price_book(number: int) -> scalepan.PriceBook:
    """Each price between 80 and 120 % of its own, in whole cents."""
    chance = random.Random(number)
    lines = ["item,sold_as,pack,price,currency,keeps"]
    for item, stage, pack, cents in OFFERS:
        moved = cents * chance.randint(80, 120) // 100
        lines.append(f"{item},{stage},{pack},{moved // 100}.{moved % 100:02d},EUR,no")
    return scalepan.parse_prices("\n".join(lines) + "\n")


def borne(numbers: range, recipe: scalepan.Recipe) -> list[Fraction]:
    return [scalepan.cost(recipe, price_book(number)).borne.value for number in numbers]


def costings(numbers: range, recipe: scalepan.Recipe) -> list[scalepan.Costing]:
    return [scalepan.cost(recipe, price_book(number)) for number in numbers]
