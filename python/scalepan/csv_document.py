"""CSV text read by the standard library, with the place of every field, and written harmless.

A field that begins as a formula does, behind blanks or not, and is not all blank, is written with
an apostrophe before it, so that whatever opens the file takes it for a text; that apostrophe is
taken off when the field is read. Such beginnings are ``= + - @``, their full-width forms, tab and
line ends: OWASP, "CSV Injection" (from memory).
"""

from __future__ import annotations

import csv
import io
import re
from itertools import pairwise
from typing import TYPE_CHECKING

from scalepan.errors import Error, make_error

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Sequence

Placed = tuple[str, str, int, int]

_DECIMAL_COMMA = re.compile(r"(?<=\d),(?=\d)")
_DECIMAL_POINT = re.compile(r"\d\.\d")
_FILE_NAME = re.compile(r"[^,;=]+\.(?:csv|toml)", re.IGNORECASE)
# No price book or table of facts has as many, and each takes some memory.
MOST_ROWS = 100_000
_MOST_FIELDS = 1000
# Patterns are texts, compiled when first used: `import scalepan` stays quick.
# What no text file holds; a surrogate is half a character.
NO_TEXT = r"[\x00-\x08\x0b\x0c\x0e-\x1f\ud800-\udfff]"
_LIKE_A_FORMULA = r"(?:'*\s*[=+\-@\uff1d\uff0b\uff0d\uff20]|'*[\t\r\n])"


class Columns:
    """The columns a file may have, and the subject of its error codes.

    A file may also be separated by semicolons, as programs of many countries save it; then the
    numbers in the columns that are ``numbers`` have decimal commas, and no points.
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

    def expect_once(self, names: Sequence[str]) -> None:
        """Raises ``<subject>.column`` where two columns of a frame have one name."""
        for at, name in enumerate(names):
            if name in names[:at]:
                raise self.error("column", f"the column {name} is there twice", self.hint, "")

    def takes_float(self, column: str) -> bool:
        """Whether a float may stand there: facts and yields have figures with units alone."""
        return self.subject == "price" and column in self.numbers

    @property
    def hint_for_floats(self) -> str:
        """How an exact figure is written in place of a float."""
        if self.subject in ("price", "line"):
            return 'write it as text or a decimal, or give floats="as shortest decimal"'
        return 'write it as text with its unit, such as "0.50 EP/AP"'

    @property
    def hint(self) -> str:
        """All columns, for an error."""
        return f"columns: {', '.join(self.required)}; also {', '.join(self.optional)}"


def read_rows(text: str, file: str, columns: Columns) -> list[dict[str, Placed]]:
    """The rows below the header, each field by its column with text, file, line and column.

    Blank rows are passed over.

    Raises:
        Error: ``<subject>.syntax``, ``.no_rows``, ``.column``, ``.fields``,
            ``.decimal``,
            ``.control_character``; ``file.too_many_rows``; each with its place.
    """
    text = text.removeprefix("\ufeff")
    by_semicolons = _is_by_semicolons(text)
    separator = ";" if by_semicolons else ","
    records = _records(text, file, columns, separator)
    first = next(records, None)
    if first is None:
        raise columns.error("no_rows", "the file is empty", columns.hint, file)
    header = [name.strip().lower() for name, *_ in first]
    _expect_columns(header, first, columns)
    rows = [_row(header, record, columns, separator) for record in records]
    if not rows:
        hint = f"write a row below it, with a field for each of {separator.join(header)}"
        raise columns.error("no_rows", "no rows stand below the header", hint, file)
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
        pointed[name] = (_Pointed(_DECIMAL_COMMA.sub(".", text)), file, line, column)
    return pointed


class _Pointed(str):
    """A field of a file with decimal commas, as it is read."""

    __slots__ = ()


def as_written(error: Error, rows: Iterable[dict[str, Placed]]) -> Error:
    """The error of one of the rows, told with the decimal mark of the field that it is about."""
    fields = [field for row in rows for field in row.values() if field[2] == error.line]
    before = [field for field in fields if 0 < field[3] <= error.column]
    if not before or not isinstance(max(before, key=lambda field: field[3])[0], _Pointed):
        return error
    message, hint = (re.sub(r"(?<=\d)\.(?=\d)", ",", each) for each in (error.message, error.hint))
    return make_error(error.code, message, hint, error.file, error.line, error.column)


def csv_text(header: Sequence[str], rows: Iterable[Sequence[str]]) -> str:
    """A CSV document that ``read_rows`` reads as it is, with no field that is taken for a formula.

    A row of one blank field stands in quotes, since a blank line is no row.
    """
    stream = io.StringIO()
    writer = csv.writer(stream)  # RFC 4180: lines end in CR LF
    writer.writerow(header)
    writer.writerows([harmless(field) for field in row] for row in rows)
    return stream.getvalue()


def harmless(field: str) -> str:
    """The field as it is written: with an apostrophe where it begins as a formula does."""
    return f"'{field}" if field.strip() and re.match(_LIKE_A_FORMULA, field) else field


class _Lines:
    """The lines of a text, one at a time."""

    def __init__(self, text: str) -> None:
        self._stream = io.StringIO(text, newline="")
        self.last = ""

    def __iter__(self) -> Iterator[str]:
        for line in self._stream:
            self.last = line
            yield line


def _expect_few(number: int, fields: list[str], file: str, line: int, columns: Columns) -> None:
    if number > MOST_ROWS:
        message = f"the file has more than {MOST_ROWS} rows"
        raise make_error("file.too_many_rows", message, "split it into several files", file, line)
    if len(fields) > _MOST_FIELDS:
        message = f"the row has {len(fields)} fields, which no file of this kind has"
        raise columns.error("fields", message, columns.hint, file, line)


def _as_meant(field: str, file: str, line: int, column: int) -> Placed:
    """Without the apostrophe that ``harmless`` puts before it."""
    if not field.startswith("'") or not re.match(_LIKE_A_FORMULA, field[1:]):
        return (field, file, line, column)
    return (field[1:], file, line, column and column + 1)


def _records(text: str, file: str, columns: Columns, separator: str) -> Iterator[list[Placed]]:
    lines = _Lines(text)
    reader = csv.reader(lines, strict=True, delimiter=separator)
    end = 0
    try:
        for number, fields in enumerate(reader):
            start, end = end + 1, reader.line_num
            if not any(field.strip() for field in fields):
                continue
            _expect_few(number, fields, file, start, columns)
            starts = _field_starts(lines.last, separator) if start == end else []
            yield [
                _as_meant(field, file, start, starts[i] if i < len(starts) else 0)
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
    for sign, name in (("\t", "tabs"), ("|", "bars")):
        if sign in header[0]:
            return f"the fields are separated by {name}; save the file with commas"
    if "=" in header[0]:
        return "this is no table but a file of keys, such as a recipe: read_recipe reads those"
    if _FILE_NAME.fullmatch(header[0]):
        return "this is the name of a file: read_prices, read_stock and so on read files"
    return ""


def _row(
    header: list[str], record: list[Placed], columns: Columns, separator: str
) -> dict[str, Placed]:
    _, file, line, _ = record[0]
    if len(record) != len(header):
        message = f"the row has {len(record)} fields, the header {len(header)}"
        raise columns.error(
            "fields", message, _fields_hint(header, record, columns, separator), file, line
        )
    for text, _, _, column in record:
        if re.search(NO_TEXT, text):
            code = f"{columns.subject}.control_character"
            raise make_error(code, "the field holds a control character", "", file, line, column)
    return dict(zip(header, record, strict=True))


def _fields_hint(header: list[str], record: list[Placed], columns: Columns, separator: str) -> str:
    """What a row of another length may have meant."""
    if separator == ";":
        return 'a field with a semicolon stands in quotes: "400 g tin; drained"'
    hint = 'a field with a comma stands in quotes: "400 g tin, drained"'
    if not columns.numbers or len(record) <= len(header):
        return hint
    texts = [text for text, *_ in record]
    halves = [(one, two) for one, two in pairwise(texts) if one.isdecimal() and two[:1].isdecimal()]
    if len(halves) == 1:
        (whole, rest) = halves[0]
        return f"numbers have a decimal point: write {whole}.{rest}, not {whole},{rest}"
    return f"numbers have a decimal point, as 2.10; {hint}"
