"""Rows of tables of your own, out of a CSV file, a data frame or plain mappings."""

from __future__ import annotations

import re
import struct
from decimal import Decimal
from fractions import Fraction
from pathlib import PurePath
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan import _core
from scalepan.csv_document import NO_TEXT, Columns, read_rows
from scalepan.errors import Error, make_error
from scalepan.files import read_text
from scalepan.foods import FACT_COLUMNS, FOOD_COLUMNS, NAME_COLUMNS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from scalepan.files import PathLike


SHORTEST = "as shortest decimal"
# So many digits tell any two floats of 32 bits apart (IEEE 754, 5.12.2, from memory).
_DIGITS_OF_32_BITS = 9


def _others(columns: tuple[str, ...], *required: str) -> list[str]:
    return [column for column in columns if column not in required]


FACTS = Columns(
    "fact",
    ("fact", "food", "kind", "value"),
    _others(FACT_COLUMNS, "fact", "food", "kind", "value"),
    ("value", "low", "high"),
)
FOODS = Columns("food", ("food",), _others(FOOD_COLUMNS, "food"))
NAMES = Columns("name", ("name", "food"), _others(NAME_COLUMNS, "name", "food"))


class PlacedRow(NamedTuple):
    """The texts of a row by column, blank where there is none, and where the row stands."""

    texts: dict[str, str]
    file: str = ""
    line: int = 0
    cell: str = ""

    def error(self, code: str, message: str, hint: str = "") -> Error:
        """An error at the row."""
        return make_error(code, message, hint, self.file, self.line, 0, self.cell)

    def pass_to(self, add: Callable[[dict[str, str]], None]) -> None:
        """Runs ``add``; its errors leave with the place of the row."""
        try:
            add(self.texts)
        except Error as error:
            raise self.error(error.code, error.message, error.hint) from None


def rows_of_file(path: PathLike, columns: Columns) -> Iterator[PlacedRow]:
    """The rows of a CSV file. Raises what ``read_rows`` and ``read_text`` raise."""
    for row in read_rows(read_text(path), str(path), columns):
        texts = {column: row[column][0].strip() if column in row else "" for column in columns.all}
        _, file, line, _ = next(iter(row.values()))
        yield PlacedRow(texts, file, line)


def rows_of_table(
    table: object, columns: Columns, floats: str | None = None, flags: tuple[str, ...] = ()
) -> Iterator[PlacedRow]:
    """The rows of mappings, of a dict of columns, or of a data frame, counted from 1.

    A frame is what has ``to_dicts()``, ``to_pylist()``, ``to_dict("records")`` or, with nanoarrow,
    ``__arrow_c_stream__``. None, NaN and the like are blank. A float of 32 bits is refused, since
    the frame gives it as one of 64, which has another shortest decimal.

    Args:
        table: the rows.
        columns: that they may have.
        floats: ``"as shortest decimal"`` takes a float as the shortest decimal that reads back as
            it; left out, one of at most 12 digits is taken so in columns of numbers, and no other.
        flags: columns in which true is ``yes`` and false ``no``.

    Raises:
        Error: ``<subject>.table``, ``.column``, ``.float``, ``.cell``, ``.control_character``;
            ``frame.floats``.
    """
    if floats not in (None, SHORTEST):
        message = f'floats is "{floats}"'
        raise make_error("frame.floats", message, f'leave it out, or give "{SHORTEST}"')
    columns.expect_once(_names_of(table))
    for number, row in enumerate(_mappings(table, columns), start=1):
        placed = PlacedRow({}, cell=f"row {number} of the {columns.subject} table")
        for name in row:
            if name not in columns.all:
                message = f'unknown column "{name}"'
                raise placed.error(f"{columns.subject}.column", message, columns.hint)
        for name in columns.all:
            cell = _plain(row.get(name), floats, name in flags)
            placed.texts[name] = _text(cell, name, columns, placed)
        for name in columns.required:
            if not placed.texts[name]:
                message = f"the column {name} is missing or blank"
                raise placed.error(f"{columns.subject}.column", message, columns.hint)
        yield placed


def _names_of(table: object) -> list[str]:
    """Of its columns, where a frame tells them; a mapping has none twice."""
    names = getattr(table, "column_names", getattr(table, "columns", ()))
    return [] if callable(names) else [name for name in names if isinstance(name, str)]


def _mappings(table: Any, columns: Columns) -> Iterable[Mapping[str, object]]:
    for method in ("to_dicts", "to_pylist"):
        if hasattr(table, method):
            return getattr(table, method)()  # type: ignore[no-any-return]
    if hasattr(table, "to_dict") and getattr(table, "ndim", 2) != 1:
        return table.to_dict("records")  # type: ignore[no-any-return]
    if hasattr(table, "__arrow_c_stream__"):
        from scalepan.arrow_reader import rows_of_stream

        return rows_of_stream(table, columns)
    if isinstance(table, dict) and all(_is_column(column) for column in table.values()):
        return _rows_of_columns(table, columns)
    if hasattr(table, "__iter__") and not isinstance(table, (str, bytes, dict)):
        rows = list(table)
        if all(hasattr(row, "keys") for row in rows):
            return rows
    code = f"{columns.subject}.table"
    message = f"rows belong here, but a {type(table).__name__} is given"
    is_name = isinstance(table, str | PurePath) and columns.subject == "fact"
    reader = f'a file is read by read_facts("{table}")' if is_name else ""
    raise make_error(code, message, reader or "give mappings by column, or a data frame")


def _is_column(column: object) -> bool:
    return hasattr(column, "__iter__") and not isinstance(column, (str, bytes, dict))


def _rows_of_columns(table: dict[str, Any], columns: Columns) -> Iterable[Mapping[str, object]]:
    lists = {name: list(column) for name, column in table.items()}
    lengths = {name: len(column) for name, column in lists.items()}
    if len(set(lengths.values())) > 1:
        told = ", ".join(f"{name} {length}" for name, length in lengths.items())
        raise columns.error("table", f"the columns are not of one length: {told}", "", "")
    return (dict(zip(lists, cells, strict=True)) for cells in zip(*lists.values(), strict=True))


def _plain(cell: object, floats: str | None, is_flag: bool) -> object:
    """A float by the option, and true and false in the words of the column."""
    if getattr(cell, "ndim", None) == 0 and cell.dtype.kind in "biuf":  # type: ignore[attr-defined]
        cell = cell.item()  # type: ignore[attr-defined]  # a NumPy number
    if isinstance(cell, float) and floats and cell == cell and not _was_of_32_bits(cell):
        return Decimal(repr(float(cell)))
    if is_flag and isinstance(cell, bool):
        return "yes" if cell else "no"
    return cell


def _was_of_32_bits(number: float) -> bool:
    """Whether it is such a float exactly, and as one has another shortest decimal."""
    for digits in range(1, _DIGITS_OF_32_BITS + 1):
        text = f"{number:.{digits}g}"
        try:
            (single,) = struct.unpack("f", struct.pack("f", float(text)))
        except OverflowError:
            return False
        if single == number:
            return Decimal(text) != Decimal(repr(number))
    return False


def _text(cell: object, column: str, columns: Columns, row: PlacedRow) -> str:
    if isinstance(cell, str):
        if found := re.search(NO_TEXT, cell):
            message = f"{column} holds the character U+{ord(found[0]):04X}, which no text may have"
            raise row.error(f"{columns.subject}.control_character", message)
        return cell.strip()
    if _is_blank(cell):
        return ""
    if isinstance(cell, float):
        return _text_of_float(cell, column, columns, row)
    if isinstance(cell, Decimal):
        return format(cell, "f")
    if isinstance(cell, (int, Fraction)) and not isinstance(cell, bool):
        return _core.exact_text(cell)
    if hasattr(cell, "isoformat"):
        return str(cell.isoformat())
    message = f"{column} is of the type {type(cell).__name__}, but a text belongs there"
    raise row.error(f"{columns.subject}.cell", message)


def _text_of_float(cell: float, column: str, columns: Columns, row: PlacedRow) -> str:
    hint = columns.hint_for_floats
    message = f"{column} is the float {cell!r}, which is no exact figure"
    if _was_of_32_bits(cell):
        message = f"{column} is {cell!r}, which was rounded to 32 bits"
        hint = "give text, decimals, or floats of 64 bits"
    elif columns.takes_float(column):
        try:
            return _core.exact_text(_core.number(cell))
        except Error as error:
            hint = f'{error.hint}, or give floats="{SHORTEST}"'
    raise row.error(f"{columns.subject}.float", message, hint)


def _is_blank(cell: object) -> bool:
    """None, NaN in any of its types, and the missing values of frames."""
    if isinstance(cell, Decimal):
        return cell.is_nan()
    return cell is None or type(cell).__name__ in ("NAType", "NaTType") or cell != cell
