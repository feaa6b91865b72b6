"""CSV text read by the standard library, with the place of every field."""

from __future__ import annotations

import csv
import io
import re
from typing import TYPE_CHECKING

from scalepan.errors import Error, make_error

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

Placed = tuple[str, str, int, int]

_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")
_DECIMAL_POINT = re.compile(r"\d\.\d")
_FILE_NAME = re.compile(r"[^,;=]+\.(?:csv|toml)", re.IGNORECASE)


class Columns:
    """The columns a file may have, and the subject of its error codes.

    A file of which some are ``numbers`` may also be separated by semicolons, as programs of many
    countries save it; then the numbers in these columns have decimal commas, and no points.
    """

    def __init__(
        self,
        subject: str,
        required: Sequence[str],
        optional: Sequence[str],
        numbers: Sequence[str] = (),
    ) -> None:
        self.subject = subject
        self.numbers = tuple(numbers)
        self.required = tuple(required)
        self.optional = tuple(optional)
        self.all = (*self.required, *self.optional)

    def error(self, code: str, message: str, hint: str, file: str, line: int = 0) -> Error:
        """An error of the file's subject."""
        return make_error(f"{self.subject}.{code}", message, hint, file, line)

    @property
    def hint(self) -> str:
        """All columns, for an error."""
        return f"columns: {', '.join(self.required)}; also {', '.join(self.optional)}"


def read_rows(text: str, file: str, columns: Columns) -> list[dict[str, Placed]]:
    """The rows below the header, each field by its column with text, file, line and column.

    Blank rows are passed over.

    Raises:
        Error: ``<subject>.syntax``, ``.no_rows``, ``.column``, ``.fields``, ``.decimal``,
            ``.control_character``, each with its place.
    """
    text = text.removeprefix("\ufeff")
    by_semicolons = bool(columns.numbers) and _is_by_semicolons(text)
    records = _records(text, file, columns, ";" if by_semicolons else ",")
    first = next(records, None)
    if first is None:
        raise columns.error("no_rows", "the file is empty", columns.hint, file)
    header = [name.strip().lower() for name, *_ in first]
    _expect_columns(header, first, columns)
    rows = [_row(header, record, columns) for record in records]
    if not rows:
        raise columns.error("no_rows", "no rows stand below the header", "", file)
    return [_with_points(row, columns) for row in rows] if by_semicolons else rows


def _is_by_semicolons(text: str) -> bool:
    header = next((line for line in text.splitlines() if line.strip()), "")
    return ";" in header and "," not in header


def _with_points(row: dict[str, Placed], columns: Columns) -> dict[str, Placed]:
    """The row of a file with decimal commas, its numbers with the points that are read."""
    pointed = dict(row)
    for name in columns.numbers:
        if name not in row:
            continue
        text, file, line, column = row[name]
        if _DECIMAL_POINT.search(text):
            message = f'"{text}" has a decimal point, but a file with semicolons has decimal commas'
            meant = text.replace(".", "" if "," in text else ",")
            hint = f'write "{meant}", or separate the fields by commas'
            raise make_error(f"{columns.subject}.decimal", message, hint, file, line, column)
        pointed[name] = (_DECIMAL_COMMA.sub(".", text), file, line, column)
    return pointed


def _records(text: str, file: str, columns: Columns, separator: str) -> Iterator[list[Placed]]:
    lines = list(io.StringIO(text, newline=""))
    reader = csv.reader(io.StringIO(text, newline=""), strict=True, delimiter=separator)
    end = 0
    try:
        for fields in reader:
            start, end = end + 1, reader.line_num
            if not any(field.strip() for field in fields):
                continue
            one_line = start == end <= len(lines)
            starts = _field_starts(lines[start - 1], separator) if one_line else []
            yield [
                (field, file, start, starts[i] if i < len(starts) else 0)
                for i, field in enumerate(fields)
            ]
    except csv.Error as problem:
        line = max(reader.line_num, 1)
        raise columns.error("syntax", f"not CSV: {problem}", "", file, line) from None


def _field_starts(line: str, separator: str) -> list[int]:
    """Columns, from 1, at which the fields of a one-line record begin, behind their quotes."""
    starts = []
    fresh = True
    quoted = False
    for i, character in enumerate(line):
        if fresh:
            starts.append(i + (2 if character == '"' else 1))
            fresh = False
        if character == '"':
            quoted = not quoted
        elif character == separator and not quoted:
            fresh = True
    return [*starts, len(line) + 1] if fresh else starts


def _expect_columns(header: list[str], record: list[Placed], columns: Columns) -> None:
    _, file, line, _ = record[0]
    for name in columns.required:
        if name not in header:
            message = f"the header has no column {name}"
            raise columns.error(
                "column", message, _other_file_hint(header) or columns.hint, file, line
            )
    for i, name in enumerate(header):
        if name not in columns.all:
            message = f'unknown column "{name}"'
        elif name in header[:i]:
            message = f"the column {name} is there twice"
        else:
            continue
        code = f"{columns.subject}.column"
        raise make_error(code, message, columns.hint, file, line, record[i][3])


def _other_file_hint(header: list[str]) -> str:
    """For a header of one field: with another separator in it, or of no table at all."""
    if len(header) > 1:
        return ""
    for sign, name in ((";", "semicolons"), ("\t", "tabs"), ("|", "bars")):
        if sign in header[0]:
            return f"the fields are separated by {name}; save the file with commas"
    if "=" in header[0]:
        return "this is no table but a file of keys, such as a recipe: read_recipe reads those"
    if _FILE_NAME.fullmatch(header[0]):
        return "this is the name of a file: read_prices, read_stock and so on read files"
    return ""


def _row(header: list[str], record: list[Placed], columns: Columns) -> dict[str, Placed]:
    _, file, line, _ = record[0]
    if len(record) != len(header):
        message = f"the row has {len(record)} fields, the header {len(header)}"
        hint = 'a field with a comma stands in quotes: "400 g tin, drained"'
        if columns.numbers and len(record) > len(header):
            hint = f"numbers have a decimal point, as 2.10; {hint}"
        raise columns.error("fields", message, hint, file, line)
    for text, _, _, column in record:
        if any(ord(c) < 0x20 and c not in "\t\r\n" for c in text):
            code = f"{columns.subject}.control_character"
            raise make_error(code, "the field holds a control character", "", file, line, column)
    return dict(zip(header, record, strict=True))
