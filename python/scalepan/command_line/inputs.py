"""What several commands read by their options: the catalogue, and price books."""

from __future__ import annotations

import os
from functools import reduce
from operator import add
from typing import TYPE_CHECKING

from scalepan.command_line.standard_input import read_from
from scalepan.errors import make_error
from scalepan.foods import bundled_catalog, read_facts
from scalepan.prices import parse_prices

if TYPE_CHECKING:
    import argparse

    from scalepan._core import Catalog, PriceBook


# A kept costing may be refreshed in its own file.
_READ = ("recipe", "dishes", "prices", "on_hand", "facts", "foods")
_WRITTEN = ("html", "pdf", "plot", "save")


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


def expect_inputs_kept(options: argparse.Namespace) -> None:
    """Raises FileError (``file.exists``) where what is read would be written over."""
    asked = vars(options)
    read: set[str] = set()
    for name in _READ:
        given = asked.get(name) or []
        read.update(
            os.path.realpath(path) for path in ([given] if isinstance(given, str) else given)
        )
    for name in _WRITTEN:
        path = asked.get(name)
        if path and os.path.realpath(path) in read:
            message = "it is read by this command, so nothing is written over it"
            raise make_error("file.exists", message, "name another file", path)
