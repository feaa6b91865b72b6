"""Price books from CSV files: one pack of one item a row.

item,sold_as,pack,price,currency,keeps,shop,date
leeks,AP,1 kg,2.10,EUR,no,market,2026-11-20
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan._core import PriceBook
from scalepan.errors import PriceError
from scalepan.files import read_text

if TYPE_CHECKING:
    from collections.abc import Iterator

    from scalepan.files import PathLike

REQUIRED = ("item", "sold_as", "pack", "price", "keeps")
OPTIONAL = ("currency", "shop", "date", "note")

Placed = tuple[str, str, int, int]


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
    records = _records(text, file)
    first = next(records, None)
    if first is None:
        raise PriceError("price.no_rows", "the price book is empty", _columns_hint(), file)
    header = [name.strip().lower() for name, *_ in first]
    _expect_columns(header, first)
    rows = [_row(header, record, currency) for record in records]
    if not rows:
        raise PriceError("price.no_rows", "the price book has no rows below its header", "", file)
    return _core.make_price_book(rows, measures or "")


def _records(text: str, file: str) -> Iterator[list[Placed]]:
    """Non-empty records, each field with its place."""
    import csv  # here, so that `import scalepan` stays quick
    import io

    lines = text.splitlines(keepends=True)
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    end = 0
    try:
        for fields in reader:
            start, end = end + 1, reader.line_num
            if not any(field.strip() for field in fields):
                continue
            columns = _field_columns(lines[start - 1]) if start == end else []
            yield [
                (field, file, start, columns[i] if i < len(columns) else 0)
                for i, field in enumerate(fields)
            ]
    except csv.Error as problem:
        raise PriceError(
            "price.syntax", f"not CSV: {problem}", "", file, max(reader.line_num, 1)
        ) from None


def _field_columns(line: str) -> list[int]:
    """Columns, from 1, at which the fields of a one-line record begin, behind their quotes."""
    columns = []
    start = True
    quoted = False
    for i, character in enumerate(line):
        if start:
            columns.append(i + (2 if character == '"' else 1))
            start = False
        if character == '"':
            quoted = not quoted
        elif character == "," and not quoted:
            start = True
    return columns


def _columns_hint() -> str:
    return f"columns: {', '.join(REQUIRED)}; also {', '.join(OPTIONAL)}"


def _expect_columns(header: list[str], record: list[Placed]) -> None:
    _, file, line, _ = record[0]
    for name in REQUIRED:
        if name not in header:
            message = f"the price book has no column {name}"
            raise PriceError("price.column", message, _columns_hint(), file, line)
    for i, (_, _, _, column) in enumerate(record):
        name = header[i]
        if name not in (*REQUIRED, *OPTIONAL):
            message = f'unknown column "{name}"'
        elif name in header[:i]:
            message = f"the column {name} is there twice"
        else:
            continue
        raise PriceError("price.column", message, _columns_hint(), file, line, column)


def _row(header: list[str], record: list[Placed], currency: str | None) -> dict[str, Placed]:
    _, file, line, _ = record[0]
    if len(record) != len(header):
        message = f"the row has {len(record)} fields, the header {len(header)}"
        hint = 'a field with a comma stands in quotes: "400 g tin, drained"'
        raise PriceError("price.fields", message, hint, file, line)
    row = dict(zip(header, record, strict=True))
    if currency and not row.get("currency", ("", file, line, 0))[0].strip():
        row["currency"] = (currency, file, line, 0)
    return row
