"""Rows measured from Python: start-up and SR28 against numpy, the demo's costing against pandas."""

from __future__ import annotations

import math
import statistics
import subprocess
import sys
import time
from collections.abc import Callable
from pathlib import Path

import pandas as pd
import scalepan
from row import Row
from scalepan.demo import demo_files

# Put there by tools/fetch_usda_release.sh.
_USDA = Path(__file__).resolve().parents[2] / "build" / "usda" / "package" / "data"
_RUNS = 15
_INNER = 50


def _interleaved(ours: Callable[[], float], peer: Callable[[], float]) -> tuple[float, float]:
    """Medians of both in nanoseconds, run in turns so that noise meets both."""
    pairs = [(ours(), peer()) for _ in range(_RUNS)]
    return statistics.median(a for a, _ in pairs), statistics.median(b for _, b in pairs)


def _import_time(module: str) -> float:
    """Nanoseconds that one import takes in a new interpreter."""
    code = (
        "import time; t = time.perf_counter_ns(); "
        f"import {module}; print(time.perf_counter_ns() - t)"
    )
    return float(subprocess.check_output([sys.executable, "-c", code]))


def _each(action: Callable[[], object]) -> float:
    start = time.perf_counter_ns()
    for _ in range(_INNER):
        action()
    return (time.perf_counter_ns() - start) / _INNER


def import_row() -> Row:
    """`import scalepan` against `import numpy`, both warm on disk."""
    _import_time("scalepan"), _import_time("numpy")
    ours, peer = _interleaved(lambda: _import_time("scalepan"), lambda: _import_time("numpy"))
    return Row("import", ours, "numpy", peer, 1.0)


def usda_row() -> Row:
    """Loading the 8,789 foods of SR28 against `import numpy`, files warm on disk."""
    scalepan.bundled_catalog()

    def ours() -> float:
        start = time.perf_counter_ns()
        scalepan.read_usda_sr(_USDA)
        return time.perf_counter_ns() - start

    a, b = _interleaved(ours, lambda: _import_time("numpy"))
    return Row("load/sr28", a, "numpy", b, 3.0)


def costing_row() -> Row:
    """Costing the demo at forty against the same sums in pandas floats.

    The peer is given each line's need in the packs' unit and takes the cheapest single kind of
    pack; ours converts by facts and searches all covers.
    """
    recipe_file, price_file = demo_files()
    recipe, prices = scalepan.read_recipe(recipe_file), scalepan.read_prices(price_file)
    costing = scalepan.cost(recipe, prices)

    def ours() -> object:
        sized = scalepan.cost(recipe.scale(portions=40), prices)
        return sized.till, sized.used, sized.thrown, sized.borne

    lines = pd.DataFrame(
        [(row.item, float(row.need.value), row.need.unit) for row in costing.shopping],
        columns=["item", "need", "unit"],
    )
    offers = pd.DataFrame(_peer_offers(prices, lines), columns=["item", "size", "price", "keeps"])

    def peer() -> object:
        table = lines.assign(need=lines["need"] * 40 / 4).merge(offers, on="item")
        table["count"] = (table["need"] / table["size"]).apply(math.ceil)
        table["till"] = table["count"] * table["price"]
        best = table.loc[table.groupby("item")["till"].idxmin()]
        used = best["till"] * best["need"] / (best["count"] * best["size"])
        rest = best["till"] - used
        thrown = rest[~best["keeps"]].sum()
        return best["till"].sum(), used.sum(), thrown, used.sum() + thrown

    a, b = _interleaved(lambda: _each(ours), lambda: _each(peer))
    return Row("cost/demo", a, "pandas", b, 0.05)


def _peer_offers(
    prices: scalepan.PriceBook, lines: pd.DataFrame
) -> list[tuple[str, float, float, bool]]:
    units = dict(zip(lines["item"], lines["unit"], strict=True))
    names = {"bay leaves": "bay leaf", "yoghurt": "plain yoghurt"}
    rows = []
    for offer in prices.offers:
        item = names.get(offer.item, offer.item)
        size = float(offer.content.to(units[item]).value)
        rows.append((item, size, float(offer.price.value), offer.keeps))
    return rows


ROWS: list[Callable[[], Row]] = [import_row, costing_row]
if _USDA.is_dir():
    ROWS.append(usda_row)
else:
    print("left out: load/sr28, SR28 is not here", file=sys.stderr)
