"""Price books from CSV files: one pack of one item a row.

item,sold_as,pack,price,currency,keeps,shop,date
leeks,AP,1 kg,2.10,EUR,no,market,2026-11-20
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan._core import PriceBook
from scalepan.files import read_text

if TYPE_CHECKING:
    from scalepan.files import PathLike

REQUIRED = ("item", "sold_as", "pack", "price", "keeps")
OPTIONAL = ("currency", "shop", "date", "note")


def read_prices(
    path: PathLike, *, currency: str | None = None, measures: str | None = None
) -> PriceBook:
    """Reads a price book.

    Args:
        path: a CSV file with the columns item, sold_as, pack, price and keeps, and if wanted
            currency, shop, date and note.
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
    from scalepan.csv_document import Columns, read_rows  # here: `import scalepan` stays quick

    rows = read_rows(text, file, Columns("price", REQUIRED, OPTIONAL))
    for row in rows:
        _, _, line, _ = row["item"]
        if currency and not row.get("currency", ("", file, line, 0))[0].strip():
            row["currency"] = (currency, file, line, 0)
    return _core.make_price_book(rows, measures or "")
