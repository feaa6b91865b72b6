"""The dish and the price book that several files cost, with invented prices; and a browser."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from typing import Any

import pytest
import scalepan
from hypothesis import settings

# Property checks take the time they take; a busy machine is no failure.
settings.register_profile("no_deadline", deadline=None)
settings.load_profile("no_deadline")

LEEK_POT = """\
name = "Leek and barley pot"
serves = 4
tested_at = [4]
lines = [
  "500 g leeks, trimmed",
  "220 g pearl barley",
  "4 eggs | one per portion",
  "240 g chickpeas, drained",
]
"""

LEEK_PRICES = """\
item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.10,GBP,no
leeks,AP,500 g,1.20,GBP,no
pearl barley,AP,500 g,0.95,GBP,yes
eggs,AP,6,1.50,GBP,yes
eggs,AP,10,2.30,GBP,yes
chickpeas,drained,400 g tin (240 g drained),0.60,GBP,no
"""


@pytest.fixture
def leek_pot() -> scalepan.Recipe:
    return scalepan.parse_recipe(LEEK_POT, file="leek_pot.toml")


@pytest.fixture
def leek_prices() -> scalepan.PriceBook:
    return scalepan.parse_prices(LEEK_PRICES, file="prices.csv")


@pytest.fixture
def forty(leek_pot: scalepan.Recipe, leek_prices: scalepan.PriceBook) -> scalepan.Costing:
    return scalepan.cost(leek_pot.scale(portions=40), leek_prices)


@pytest.fixture(scope="module")
def browser() -> Iterator[Any]:
    """Of a module alone: Playwright has an event loop, as the notebooks of other modules have."""
    reason = "playwright is not installed"
    sync_api = pytest.importorskip("playwright.sync_api", reason=reason)
    chromium = shutil.which("chromium") or shutil.which("chromium-browser")
    if chromium is None:
        pytest.skip("no Chromium is installed")
    flags = ["--no-sandbox", "--disable-gpu", "--disable-background-networking", "--no-first-run"]
    with sync_api.sync_playwright() as playwright:
        opened = playwright.chromium.launch(executable_path=chromium, args=flags)
        yield opened
        opened.close()
