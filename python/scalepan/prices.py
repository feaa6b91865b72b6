"""Price books from CSV files: one pack of one item a row.

item,sold_as,pack,price,currency,keeps,shop,date
leeks,AP,1 kg,2.10,EUR,no,market,2026-11-20

Further columns, all optional:

    offer    3 for 4.50; 3 for the price of 2; from 6 at 1.10 (each, where so many are bought)
    least    the fewest packs sold at once
    limit    the most packs a customer may buy
    tax      7 % (the price has it in it), or 7 % added
    deposit  paid on each pack and given back; no part of any cost

A pack of loose goods is written ``1 kg loose in 50 g``: the price is of 1 kg, and any number of
50 g steps is sold; ``least``, ``limit`` and ``from`` are then amounts.

A file whose header is separated by semicolons has decimal commas: ``leeks;AP;1,5 kg;2,10;EUR;no``.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan._core import PriceBook, Stock
from scalepan.files import read_text

if TYPE_CHECKING:
    from scalepan.csv_document import Columns, Placed
    from scalepan.files import PathLike

REQUIRED = ("item", "sold_as", "pack", "price", "keeps")
OPTIONAL = (
    *("currency", "shop", "date", "note"),
    *("offer", "least", "limit", "tax", "deposit"),
)
NUMBERS = ("pack", "price", "offer", "least", "limit", "tax", "deposit", "amount", "value")
STOCK_REQUIRED = ("item", "stage", "amount")
STOCK_OPTIONAL = ("value", "currency", "use_by", "note")


def read_prices(
    path: PathLike, *, currency: str | None = None, measures: str | None = None
) -> PriceBook:
    """Reads a price book.

    Args:
        path: a CSV file with the columns item, sold_as, pack, price and keeps, and if wanted
            currency, shop, date, note, offer, least, limit, tax and deposit.
        currency: ISO 4217 code of the rows that name none.
        measures: which pint and fluid ounce are meant, where packs use them.

    Raises:
        PriceError: ``price.column``, ``price.fields``, ``price.no_rows``, ``price.syntax`` and
            what a row can do wrong, each with file, line and column.
    """
    return parse_prices(read_text(path), file=str(path), currency=currency, measures=measures)


def parse_prices(
    text: str, *, file: str = "", currency: str | None = None, measures: str | None = None
) -> PriceBook:
    """As ``read_prices``, from text; ``file`` is the name that errors show."""
    from scalepan.csv_document import Columns  # here, so that `import scalepan` stays quick

    rows = _rows(text, file, Columns("price", REQUIRED, OPTIONAL, NUMBERS), currency)
    return _core.make_price_book(rows, measures or "")


def read_stock(
    path: PathLike, *, currency: str | None = None, measures: str | None = None
) -> Stock:
    """Reads what is on hand: one amount of one item a row.

    Args:
        path: a CSV file with the columns item, stage and amount (written as a pack is), and if
            wanted value (of all of it; nothing where empty), currency, use_by (ISO 8601) and note.
        currency: ISO 4217 code of the rows that name none.
        measures: which pint and fluid ounce are meant.

    Raises:
        PriceError: as ``read_prices``, each with file, line and column.
    """
    return parse_stock(read_text(path), file=str(path), currency=currency, measures=measures)


def parse_stock(
    text: str, *, file: str = "", currency: str | None = None, measures: str | None = None
) -> Stock:
    """As ``read_stock``, from text; ``file`` is the name that errors show."""
    from scalepan.csv_document import Columns  # here, so that `import scalepan` stays quick

    rows = _rows(text, file, Columns("price", STOCK_REQUIRED, STOCK_OPTIONAL, NUMBERS), currency)
    return _core.make_stock(rows, measures or "")


def _rows(text: str, file: str, columns: Columns, currency: str | None) -> list[dict[str, Placed]]:
    from scalepan.csv_document import read_rows  # here, so that `import scalepan` stays quick

    rows = read_rows(text, file, columns)
    for row in rows:
        _, _, line, _ = row["item"]
        if currency and not row.get("currency", ("", file, line, 0))[0].strip():
            row["currency"] = (currency, file, line, 0)
    return rows
