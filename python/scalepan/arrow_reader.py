"""Rows out of an Arrow stream, read through nanoarrow and nothing else.

Any object with ``__arrow_c_stream__`` (the Arrow PyCapsule interface) gives one: a table, a frame,
the result of a query, a reader of batches.
"""

from __future__ import annotations

import re
import sys
from decimal import Decimal
from typing import TYPE_CHECKING, Any

from scalepan.errors import make_error

if TYPE_CHECKING:
    from collections.abc import Iterator

    from scalepan.csv_document import Columns

# By the format strings of the Arrow C data interface: texts, whole numbers, floats, true and
# false, and dates.
_PLAIN = frozenset("uUcCsSiIlLfgb") | {"tdD", "tdm"}
# Precision, scale, and the bits where these are not 128; the library (0.9) holds no 32 and 64.
_DECIMAL = re.compile(r"d:\d+,(-?\d+)(?:,(128|256))?")
_VIEW, _NOTHING = "vu", "n"
_INDEXES = {"c": "b", "C": "B", "s": "h", "S": "H", "i": "i", "I": "I", "l": "q", "L": "Q"}
_SHORTEST_APART = 12


def nanoarrow() -> Any:
    """The library. Raises ``frame.library`` where it is not installed."""
    try:
        import nanoarrow
    except ImportError:
        message = "Arrow streams are read and written by nanoarrow, which is not installed"
        raise make_error("frame.library", message, "pip install 'scalepan[frames]'") from None
    return nanoarrow


def rows_of_stream(source: object, columns: Columns) -> Iterator[dict[str, object]]:
    """Each row by column.

    Raises:
        Error: ``frame.library``; ``<subject>.table`` for a stream without columns;
            ``<subject>.column`` for two of one name;
            ``<subject>.cell`` for a column of a type that holds neither texts nor numbers.
    """
    for batch in nanoarrow().c_array_stream(source):
        if batch.schema.format != "+s":
            raise columns.error("table", "the stream has no columns", "give a table", "")
        children = [batch.child(place) for place in range(batch.n_children)]
        names = [child.schema.name for child in children]
        columns.expect_once(names)
        # A batch may be a stretch of longer columns.
        stretch = slice(batch.offset, batch.offset + batch.length)
        cells = [_cells(child, columns)[stretch] for child in children]
        for row in zip(*cells, strict=True):
            yield dict(zip(names, row, strict=True))


def _cells(array: Any, columns: Columns) -> list[object]:
    kind = array.schema.format
    if array.dictionary is not None:
        values = _cells(array.dictionary, columns)
        indexes = memoryview(bytes(array.view().buffer(1))).cast(_INDEXES[kind])  # type: ignore[call-overload]
        return [None if at is None else values[indexes[at]] for at in _there(array)]
    if kind == _NOTHING:
        return [None] * int(array.length)
    if kind == _VIEW:
        return _texts_of_views(array)
    if decimal := _DECIMAL.fullmatch(kind):
        return _decimals(array, int(decimal[1]), int(decimal[2] or 128) // 8)
    if kind in _PLAIN:
        return nanoarrow().Array(array).to_pylist()  # type: ignore[no-any-return]
    message = f"the column {array.schema.name} is of the Arrow type {_told(array)}"
    hint = "columns of texts, whole numbers, decimals, true and false are read"
    raise columns.error("cell", message, hint, "")


def _texts_of_views(array: Any) -> list[object]:
    """The texts; the library's own reader of them crashes on some (0.9)."""
    view = array.view()
    views = bytes(view.buffer(1))
    data = [bytes(view.buffer(place)) for place in range(2, view.n_buffers - 1)]

    def text(at: int) -> str:
        one = views[16 * at : 16 * at + 16]
        length, _, buffer, start = (int.from_bytes(one[i : i + 4], "little") for i in (0, 4, 8, 12))
        if length <= _SHORTEST_APART:
            return one[4 : 4 + length].decode()
        return data[buffer][start : start + length].decode()

    return [None if at is None else text(at) for at in _there(array)]


def _decimals(array: Any, scale: int, width: int) -> list[object]:
    """The numbers, each of ``width`` bytes; the library's own reader of them (0.9) begins a stretch
    at the wrong place, and takes those of 256 bits below zero for others."""
    data = bytes(array.view().buffer(1))

    def number(at: int) -> Decimal:
        one = int.from_bytes(data[width * at : width * (at + 1)], sys.byteorder, signed=True)
        return Decimal(f"{one}e{-scale}")

    return [None if at is None else number(at) for at in _there(array)]


def _there(array: Any) -> Iterator[int | None]:
    """The places of the cells in the buffers; None for those that are null."""
    there = bytes(array.view().buffer(0) or b"")
    for at in range(array.offset, array.offset + array.length):
        yield at if not there or there[at >> 3] >> (at & 7) & 1 else None


def _told(array: Any) -> str:
    """``list<item: string>``."""
    told = str(nanoarrow().Schema(array.schema)).removeprefix("<Schema> ")
    return told.removeprefix(f"'{array.schema.name}': ")
