"""Frames: shopping, costs, curves, prices, facts and more, as columns of any Arrow library.

polars.DataFrame(scalepan.frame(costing.shopping))       # so pandas, pyarrow, duckdb and others
scalepan.frame(curve, numbers="float64")                 # numbers rounded to the nearest double
print(scalepan.frame(curve).csv())

Exact numbers are text, ``n/d`` in lowest terms, or ``n`` for a whole one. What a number is counted
in stands in the metadata of its field as ``unit``, or, where rows differ, in a column of its own,
which the metadata name as ``unit_column``.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from typing import TYPE_CHECKING, Any, Literal

from scalepan import _core
from scalepan.errors import make_error

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan.type_names import FrameCell

Numbers = Literal["exact", "float64"]
EXACT, FLOAT64 = "exact", "float64"


@dataclass(frozen=True)
class FrameColumn:
    """One column.

    Attributes:
        name: of the column.
        kind: ``text``, ``number`` (exact), ``whole`` (of 64 bits) or ``flag``.
        cells: str, Fraction, int or bool; None where there is nothing.
        metadata: ``unit`` or ``unit_column`` of numbers.
    """

    name: str
    kind: Literal["text", "number", "whole", "flag"]
    cells: Sequence[Fraction | FrameCell]
    metadata: dict[str, str] = field(default_factory=dict)


@dataclass(frozen=True, repr=False)
class Frame:
    """Columns of one length, with the Arrow PyCapsule interface; what ``frame`` gives.

    Attributes:
        columns: in their order.
        numbers: ``exact`` or ``float64``.
    """

    columns: tuple[FrameColumn, ...]
    numbers: Numbers = "exact"

    def __len__(self) -> int:
        return len(self.columns[0].cells)

    def __repr__(self) -> str:
        names = ", ".join(column.name for column in self.columns)
        return f"<Frame of {len(self)} rows: {names}>"

    def to_dict(self) -> dict[str, list[FrameCell]]:
        """Each column's cells by its name, as Arrow has them: exact numbers as text."""
        return {column.name: self._told(column) for column in self.columns}

    def to_pylist(self) -> list[dict[str, FrameCell]]:
        """Each row by column, likewise."""
        cells = self.to_dict()
        return [dict(zip(cells, row, strict=True)) for row in zip(*cells.values(), strict=True)]

    def csv(self) -> str:
        """The rows as CSV; a text that a program could take for a formula has an apostrophe
        before it, which our own readers take off."""
        from scalepan.csv_document import csv_text

        rows = zip(
            *(_csv_cells(column, self._told(column)) for column in self.columns), strict=True
        )
        return csv_text([column.name for column in self.columns], rows)

    def __arrow_c_schema__(self) -> object:
        """Raises FileError (``frame.library``) without nanoarrow."""
        return self._schema().__arrow_c_schema__()

    def __arrow_c_stream__(self, requested_schema: object = None) -> object:
        """One batch; a schema that is asked for is not gone by. Raises as ``__arrow_c_schema__``.

        Raises:
            NumberError: ``number.float`` where a number is beyond all doubles.
        """
        from scalepan.arrow_reader import nanoarrow

        na = nanoarrow()
        from nanoarrow.c_array_stream import CArrayStream

        kinds = self._kinds()
        arrays = [na.c_array(self._told(column), kinds[column.name]) for column in self.columns]
        schema = self._schema()
        batch = na.c_array_from_buffers(schema, len(self), [None], children=arrays)
        return CArrayStream.from_c_arrays([batch], schema).__arrow_c_stream__()

    def _kinds(self) -> dict[str, Any]:
        from scalepan.arrow_reader import nanoarrow

        na = nanoarrow()
        number = na.float64() if self.numbers == FLOAT64 else na.string()
        kinds = {"text": na.string(), "number": number, "whole": na.int64(), "flag": na.bool_()}
        return {column.name: kinds[column.kind] for column in self.columns}

    def _schema(self) -> Any:
        from scalepan.arrow_reader import nanoarrow

        na = nanoarrow()
        kinds = self._kinds()
        fields = [
            na.c_schema(kinds[column.name]).modify(name=column.name, metadata=column.metadata)
            for column in self.columns
        ]
        return na.c_schema(na.struct(kinds)).modify(children=fields)

    def _told(self, column: FrameColumn) -> list[FrameCell]:
        tell = _nearest_double if self.numbers == FLOAT64 else str
        return [tell(cell) if isinstance(cell, Fraction) else cell for cell in column.cells]


def _nearest_double(number: Fraction) -> float:
    try:
        return float(number)
    except OverflowError:
        message = f"{_core.exact_text(number)[:40]} is beyond all doubles"
        raise make_error("number.float", message, 'take numbers="exact"') from None


def _csv_cells(column: FrameColumn, cells: list[FrameCell]) -> list[str]:
    if column.kind == "flag":
        return ["" if cell is None else "yes" if cell else "no" for cell in cells]
    return ["" if cell is None else str(cell) for cell in cells]
