"""Price books from CSV and TOML files and from frames: one pack of one item a row.

item,sold_as,pack,price,currency,keeps,shop,date
leeks,AP,1 kg,2.10,EUR,no,market,2026-11-20

Further columns, all optional:

    offer    3 for 4.50; 3 for the price of 2; from 6 at 1.10 (each, where so many are bought)
    least    the fewest packs sold at once
    limit    the most packs a customer may buy
    tax      7 % (the price has it in it), or 7 % added
    deposit  paid on each pack and given back; no part of any cost
    measures which pint and fluid ounce the row's pack means

A pack of loose goods is written ``1 kg loose in 50 g``: the price is of 1 kg, and any number of
50 g steps is sold; ``least``, ``limit`` and ``from`` are then amounts.

A file whose header is separated by semicolons has decimal commas: ``leeks;AP;1,5 kg;2,10;EUR;no``.
"""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING, TypeVar

from scalepan import _core
from scalepan._core import PriceBook, Stock
from scalepan.errors import Error
from scalepan.files import at_place, read_text, write_whole

if TYPE_CHECKING:
    from collections.abc import Callable

    from scalepan.csv_document import Columns, Placed
    from scalepan.files import PathLike

_Made = TypeVar("_Made")

REQUIRED = ("item", "sold_as", "pack", "price", "keeps")
OPTIONAL = (
    *("currency", "shop", "date", "note"),
    *("offer", "least", "limit", "tax", "deposit", "measures"),
)
NUMBERS = ("pack", "price", "offer", "least", "limit", "tax", "deposit", "amount", "value")
STOCK_REQUIRED = ("item", "stage", "amount")
STOCK_OPTIONAL = ("value", "currency", "use_by", "note", "measures")


def read_prices(
    path: PathLike, *, currency: str | None = None, measures: str | None = None
) -> PriceBook:
    """Reads a price book. Books are joined by ``+``: ``read_prices(first) + read_prices(second)``.

    Args:
        path: a CSV file with the columns item, sold_as, pack, price and keeps, and if wanted
            currency, shop, date, note, offer, least, limit, tax, deposit and measures; or a TOML
            file (its name ends in ``.toml``) whose ``prices`` are tables of the same.
        currency: ISO 4217 code of the rows that name none.
        measures: which pint and fluid ounce are meant, where packs use them and rows do not say.

    Raises:
        PriceError: ``price.column``, ``price.fields``, ``price.no_rows``, ``price.syntax`` and
            what a row can do wrong, each with file, line and column.
    """
    return parse_prices(read_text(path), file=str(path), currency=currency, measures=measures)


def parse_prices(
    text: str, *, file: str = "", currency: str | None = None, measures: str | None = None
) -> PriceBook:
    """As ``read_prices``, from text; ``file`` is the name that errors show."""
    return _price_book(price_rows(text, file), currency, measures)


def price_rows(text: str, file: str) -> list[dict[str, Placed]]:
    """The rows of a price book, each field with its place. Raises as ``read_prices``."""
    return _rows(text, file, price_columns(), "prices")


def price_book(
    rows: object,
    *,
    currency: str | None = None,
    measures: str | None = None,
    floats: str | None = None,
) -> PriceBook:
    """As ``read_prices``, from a data frame, mappings, or a dict of columns.

    Args:
        rows: with the columns of a price file; figures are texts or numbers, a float for its
            shortest decimal of at most 12 digits, 2.1 for 21/10; ``keeps`` may be true or false. A
            frame is what has ``to_dicts()``, ``to_pylist()``, ``to_dict("records")`` or, with
            nanoarrow, ``__arrow_c_stream__``.
        currency, measures: as for ``read_prices``.
        floats: ``"as shortest decimal"`` takes floats of more digits too, 0.1 + 0.2 as
            0.30000000000000004; left out, they are refused.

    Raises:
        PriceError: ``price.table``, ``price.no_rows``, ``price.column``, ``price.float``,
            ``price.cell``, ``frame.floats`` and what a row can do wrong, each with the number of
            the row.
    """
    from scalepan.price_tables import rows_of_frame  # here, so that `import scalepan` stays quick

    return _price_book(rows_of_frame(rows, price_columns(), floats), currency, measures)


def prices_text(book: PriceBook) -> str:
    """The book as CSV, every row as it was written; ``parse_prices`` reads the same figures.

    A field that a program could take for a formula begins with an apostrophe, which is no part of
    it (``csv_document`` has the rule). Notes are not kept in a price book, so none are written.
    """
    return _text_of(_book_rows(book), price_columns())


def write_prices(book: PriceBook, path: PathLike) -> None:
    """Writes ``prices_text`` to a file, whole or not at all; TOML where its name says so.

    Raises:
        FileError: ``file.unwritable``.
    """
    _write(path, _book_rows(book), price_columns(), "prices")


def read_stock(
    path: PathLike, *, currency: str | None = None, measures: str | None = None
) -> Stock:
    """Reads what is on hand: one amount of one item a row.

    Args:
        path: a CSV file with the columns item, stage and amount (written as a pack is), and if
            wanted value (of all of it; nothing where empty), currency, use_by (ISO 8601), note and
            measures; or a TOML file (``.toml``) whose ``stock`` are tables of the same.
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
    rows = _rows(text, file, stock_columns(), "stock")
    return _stock(rows, currency, measures)


def stock(
    rows: object,
    *,
    currency: str | None = None,
    measures: str | None = None,
    floats: str | None = None,
) -> Stock:
    """As ``read_stock``, from a data frame, mappings, or a dict of columns, as ``price_book``."""
    from scalepan.price_tables import rows_of_frame  # here, so that `import scalepan` stays quick

    return _stock(rows_of_frame(rows, stock_columns(), floats), currency, measures)


def stock_text(stock: Stock) -> str:
    """As ``prices_text``, of what is on hand."""
    return _text_of(_stock_rows(stock), stock_columns())


def write_stock(stock: Stock, path: PathLike) -> None:
    """As ``write_prices``, of ``stock_text``."""
    _write(path, _stock_rows(stock), stock_columns(), "stock")


def price_columns() -> Columns:
    """Of a price book."""
    from scalepan.csv_document import Columns  # here, so that `import scalepan` stays quick

    return Columns("price", REQUIRED, OPTIONAL, NUMBERS)


def stock_columns() -> Columns:
    """Of what is on hand."""
    from scalepan.csv_document import Columns  # here, so that `import scalepan` stays quick

    return Columns("price", STOCK_REQUIRED, STOCK_OPTIONAL, NUMBERS)


def _price_book(
    rows: list[dict[str, Placed]], currency: str | None, measures: str | None
) -> PriceBook:
    return _made(_core.make_price_book, rows, currency, measures)


def _stock(rows: list[dict[str, Placed]], currency: str | None, measures: str | None) -> Stock:
    return _made(_core.make_stock, rows, currency, measures)


def _made(
    make: Callable[[list[dict[str, Placed]], str], _Made],
    rows: list[dict[str, Placed]],
    currency: str | None,
    measures: str | None,
) -> _Made:
    try:
        return make(_completed(rows, currency), measures or "")
    except Error as error:
        from scalepan.csv_document import as_written  # here: only where one is wrong

        raise as_written(error, rows) from None


def _book_rows(book: PriceBook) -> list[dict[str, str]]:
    return [offer.row for offer in book.offers]


def _stock_rows(stock: Stock) -> list[dict[str, str]]:
    return [item.row for item in stock.items]


def _text_of(rows: list[dict[str, str]], columns: Columns) -> str:
    """Without the columns that no row fills."""
    from scalepan.csv_document import csv_text  # here, so that `import scalepan` stays quick

    used = [c for c in columns.all if c in columns.required or any(row.get(c) for row in rows)]
    return csv_text(used, ([row.get(column, "") for column in used] for row in rows))


def _write(path: PathLike, rows: list[dict[str, str]], columns: Columns, key: str) -> None:
    if _is_toml(path):
        from scalepan.price_tables import toml_of_rows  # here, so that `import` stays quick

        write_whole(path, toml_of_rows(rows, columns, key))
    else:
        write_whole(path, _text_of(rows, columns))


def _is_toml(path: PathLike) -> bool:
    return str(path).lower().endswith(".toml")


def _rows(text: str, file: str, columns: Columns, key: str) -> list[dict[str, Placed]]:
    if _is_toml(file):
        from scalepan.price_tables import rows_of_toml  # here, so that `import` stays quick

        return rows_of_toml(text, file, columns, key)
    from scalepan.csv_document import read_rows  # here, so that `import scalepan` stays quick

    return read_rows(text, file, columns)


def _completed(rows: list[dict[str, Placed]], currency: str | None) -> list[dict[str, Placed]]:
    """With the currency where a row names none; a row's own measures are known ones."""
    for row in rows:
        _, file, line, _ = row["item"]
        if currency and not row.get("currency", ("", file, line, 0))[0].strip():
            row["currency"] = (currency, file, line, 0)
        if "measures" in row:
            name = row["measures"][0].strip()
            row["measures"] = (name, *row["measures"][1:])
            at_place(row["measures"], partial(_core.quantity, "1", measures=name))
    return rows
