"""Rows of tables of your own, out of a CSV file, a data frame or plain mappings."""

from __future__ import annotations

from decimal import Decimal
from fractions import Fraction
from pathlib import PurePath
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan import _core
from scalepan.csv_document import Columns, read_rows
from scalepan.errors import Error, make_error
from scalepan.files import read_text
from scalepan.foods import FACT_COLUMNS, FOOD_COLUMNS, NAME_COLUMNS

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Iterator, Mapping

    from scalepan.files import PathLike


SHORTEST = "as shortest decimal"


def _others(columns: tuple[str, ...], *required: str) -> list[str]:
    return [column for column in columns if column not in required]


FACTS = Columns(
    "fact",
    ("fact", "food", "kind", "value"),
    _others(FACT_COLUMNS, "fact", "food", "kind", "value"),
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
    ``__arrow_c_stream__``. None, NaN and the like are blank.

    Args:
        table: the rows.
        columns: that they may have.
        floats: ``"as shortest decimal"`` takes a float as the shortest decimal that reads back as
            it; left out, one of at most 12 digits is taken so in columns of numbers, and no other.
        flags: columns in which true is ``yes`` and false ``no``.

    Raises:
        Error: ``<subject>.table``, ``.column``, ``.float``, ``.cell``; ``frame.floats``.
    """
    if floats not in (None, SHORTEST):
        message = f'floats is "{floats}"'
        raise make_error("frame.floats", message, f'leave it out, or give "{SHORTEST}"')
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


def _mappings(table: Any, columns: Columns) -> Iterable[Mapping[str, object]]:
    for method in ("to_dicts", "to_pylist"):
        if hasattr(table, method):
            return getattr(table, method)()  # type: ignore[no-any-return]
    if hasattr(table, "to_dict"):
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
    if isinstance(cell, float) and floats and cell == cell:
        return Decimal(repr(float(cell)))
    if is_flag and isinstance(cell, bool):
        return "yes" if cell else "no"
    return cell


def _text(cell: object, column: str, columns: Columns, row: PlacedRow) -> str:
    if isinstance(cell, str):
        return cell.strip()
    if _is_blank(cell):
        return ""
    if isinstance(cell, float):
        hint = columns.hint_for_floats
        if column in columns.numbers:
            try:
                return _core.exact_text(_core.number(cell))
            except Error as error:
                hint = f'{error.hint}, or give floats="{SHORTEST}"'
        message = f"{column} is the float {cell!r}, which is no exact figure"
        raise row.error(f"{columns.subject}.float", message, hint)
    if isinstance(cell, Decimal):
        return format(cell, "f")
    if isinstance(cell, (int, Fraction)) and not isinstance(cell, bool):
        return str(cell)
    if hasattr(cell, "isoformat"):
        return str(cell.isoformat())
    message = f"{column} is of the type {type(cell).__name__}, but a text belongs there"
    raise row.error(f"{columns.subject}.cell", message)


def _is_blank(cell: object) -> bool:
    """None, NaN in any of its types, and the missing values of frames."""
    return cell is None or type(cell).__name__ in ("NAType", "NaTType") or cell != cell
