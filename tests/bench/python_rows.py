"""Rows measured from Python: start-up and SR28 against numpy, costings against pandas."""

from __future__ import annotations

import itertools
import json
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


def _each(action: Callable[[], object], times: int = _INNER) -> float:
    start = time.perf_counter_ns()
    for _ in range(times):
        action()
    return (time.perf_counter_ns() - start) / times


def import_row() -> Row:
    """`import scalepan` against `import numpy`, both warm on disk."""
    _import_time("scalepan"), _import_time("numpy")
    ours, peer = _interleaved(lambda: _import_time("scalepan"), lambda: _import_time("numpy"))
    return Row("import", ours, "numpy", peer, 0.5)


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
        if item not in units:
            continue  # of the demo's other dish
        size = float(offer.content.to(units[item]).value)
        rows.append((item, size, float(offer.price.value), offer.keeps))
    return rows


def basket_row() -> Row:
    """50 dishes of 12 lines over 200 items bought together, against the same sums in pandas floats.

    Both also cost each dish bought alone, and charge the dishes by use. The peer is given each
    line's need in the packs' unit and takes the cheapest single kind of pack; ours finds the foods,
    converts, and searches all covers.
    """
    items = [f"larder {a}a{b}o" for a in "bcdfghjklmnprtvwxyzq" for b in "bcdfghjklm"]
    sizes = (250, 1000)
    offers = pd.DataFrame(
        [
            (item, size, 1 + i % 7 + size / 400, i % 2 == 0)
            for i, item in enumerate(items)
            for size in sizes
        ],
        columns=["item", "size", "price", "keeps"],
    )
    needs = pd.DataFrame(
        [(d, items[(d * 12 + k * 5) % 200], 90 + 7 * k) for d in range(50) for k in range(12)],
        columns=["dish", "item", "need"],
    )
    rows = "\n".join(
        f"{row.item},AP,{row.size} g,{row.price},EUR,{'yes' if row.keeps else 'no'}"
        for row in offers.itertuples()
    )
    prices = scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\n" + rows)
    dishes = []
    for name, lines in needs.groupby("dish"):
        texts = ", ".join(f'"{row.need} g {row.item}"' for row in lines.itertuples())
        text = f'name = "Dish {name}"\nserves = 4\nlines = [{texts}]'
        dishes.append(scalepan.parse_recipe(text))

    def ours() -> object:
        bought = scalepan.basket(dishes, prices)
        return bought.till, bought.apart_till, [dish.borne for dish in bought.dishes]

    def bought(table: pd.DataFrame, by: list[str]) -> pd.DataFrame:
        pooled = table.groupby(by, as_index=False)["need"].sum().merge(offers, on="item")
        pooled["count"] = (pooled["need"] / pooled["size"]).apply(math.ceil)
        pooled["till"] = pooled["count"] * pooled["price"]
        best = pooled.loc[pooled.groupby(by)["till"].idxmin()]
        used = best["till"] * best["need"] / (best["count"] * best["size"])
        return best.assign(used=used, borne=best["till"].where(~best["keeps"], used))

    def peer() -> object:
        together, apart = bought(needs, ["item"]), bought(needs, ["dish", "item"])
        shares = needs.merge(together, on="item", suffixes=("", "_all"))
        charged = shares["borne"] * shares["need"] / shares["need_all"]
        return together["till"].sum(), apart["till"].sum(), charged.groupby(shares["dish"]).sum()

    a, b = _interleaved(lambda: _each(ours, 3), lambda: _each(peer, 3))
    return Row("basket/50 dishes", a, "pandas", b, 1.0)


def panel_row() -> Row:
    """An edit of a panel of a thousand cells, every second of which changes: what is sent."""
    sheet = scalepan.Sheet()
    sheet.set("portions", 40)
    sheet.set("serves", 4)
    for place in range(499):
        sheet.set(f"line{place}.written", f"{100 + place}/7 g EP")
        sheet.define(f"line{place}.need", f"line{place}.written * portions / serves")
    panel = scalepan.panel(sheet, ["portions", *sheet.cells()])
    answers: list[object] = []
    panel.send = answers.append
    portions = itertools.count(41)

    def ours() -> object:
        edit = {"do": "set", "cell": "portions", "given": str(next(portions))}
        panel._handle_msg(
            {"content": {"data": {"method": "custom", "content": edit}}, "buffers": []}
        )
        return json.dumps(answers.pop())

    return Row(
        "panel/edit of 1000 cells",
        statistics.median(_each(ours, 1) for _ in range(_RUNS)),
        "limit",
        50e6,
        1.0,
    )


ROWS: list[Callable[[], Row]] = [import_row, costing_row, basket_row, panel_row]
if _USDA.is_dir():
    ROWS.append(usda_row)
else:
    print("left out: load/sr28, SR28 is not here", file=sys.stderr)
