"""What several commands read by their options: the catalogue, and price books."""

from __future__ import annotations

from functools import reduce
from operator import add
from typing import TYPE_CHECKING

from scalepan.command_line.standard_input import read_from
from scalepan.foods import bundled_catalog, read_facts
from scalepan.prices import parse_prices

if TYPE_CHECKING:
    import argparse

    from scalepan._core import Catalog, PriceBook


def catalog_asked(options: argparse.Namespace) -> Catalog:
    """The bundled catalogue with own tables laid over it."""
    if options.facts or options.foods:
        return read_facts(options.facts, foods=options.foods)
    return bundled_catalog()


def prices_asked(options: argparse.Namespace, measures: str | None) -> PriceBook:
    """All books named, joined: the rows that hold on the day, in the shops."""
    books = (
        read_from(path, parse_prices, currency=options.currency, measures=measures)
        for path in options.prices
    )
    return reduce(add, books).on(options.date, options.shop)
