"""Dishes and price books written in a line."""

from __future__ import annotations

import scalepan

HEAD = "item,sold_as,pack,price,currency,keeps\n"


def dish(name: str, *lines: str, serves: int = 4, extra: str = "") -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(
        f'name = "{name}"\nserves = {serves}\n{extra}\nlines = [{listed}]\n'
    )


def prices(*rows: str) -> scalepan.PriceBook:
    return scalepan.parse_prices(HEAD + "\n".join(rows), file="prices.csv")
