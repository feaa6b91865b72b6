"""Sets of measures: the spoons, cups, jugs, scales, dishers and ladles of a kitchen, as data.

set,measure,plural,size,step,from,most,source
my spoons,tbsp,tbsp,15 mL,,,,own measuring
my spoons,tsp,tsp,5 mL,,,2,own measuring
"""

from __future__ import annotations

import os
from functools import cache
from typing import TYPE_CHECKING, TypeVar

from scalepan import _core
from scalepan._core import MeasureSet
from scalepan.errors import make_error
from scalepan.files import at_place, read_text

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Mapping, Sequence

    from scalepan._core import Quantity
    from scalepan.files import PathLike
    from scalepan.type_names import MeasureRow, Placed

    Row = Mapping[str, Placed]
    Mark = tuple[Quantity, Quantity, Quantity]

MEASURE_COLUMNS = ("set", "measure", "plural", "size", "step", "from", "most", "source")

_Read = TypeVar("_Read")


def measure_sets() -> dict[str, MeasureSet]:
    """The bundled sets by their names. Every measure has its source (``data/measure_sets.csv``)."""
    return dict(_bundled_sets())


def measure_set(name: str, rows: Iterable[Mapping[str, str]]) -> MeasureSet:
    """A set of your own.

    Args:
        name: of the set.
        rows: one a measure, with the columns of ``MEASURE_COLUMNS`` but ``set``; measure and size
            are required. A jug or a scale has a ``step``: it can be read at every multiple of it
            up to its size. Rows of one measure below each other are its ranges, each with the
            lowest mark as ``from``. ``most`` is how many of a measure may be used at once.

    Raises:
        MeasureError: ``measure.column``, ``measure.name``, ``measure.none``, ``measure.size``,
            ``measure.step``, ``measure.most``, ``measure.kind``, ``measure.too_fine``,
            ``measure.too_many`` and what reading an amount raises.
    """
    return _core.make_measure_set(name, _measures_of([_placed(row) for row in rows]))


def read_measure_sets(path: PathLike) -> dict[str, MeasureSet]:
    """The sets of a CSV file by their names.

    The file has the columns of ``MEASURE_COLUMNS``, of which set, measure and size are required;
    ``measure_set`` says what they mean. Which spoon a size means is written out: ``1 tbsp_us``.

    Raises:
        MeasureError: ``measure.fields``, ``measure.no_rows``, ``measure.syntax``,
            ``measure.decimal``, ``measure.control_character`` and what ``measure_set`` raises,
            with file and line.
    """
    from scalepan.csv_document import Columns, read_rows  # here: `import scalepan` stays quick

    optional = [column for column in MEASURE_COLUMNS if column not in ("set", "measure", "size")]
    numbers = ("size", "step", "from", "most")
    columns = Columns("measure", ("set", "measure", "size"), optional, numbers)
    by_set: dict[str, list[Row]] = {}
    for row in read_rows(read_text(path), str(path), columns):
        by_set.setdefault(row["set"][0].strip(), []).append(row)
    return {name: _named(name, rows) for name, rows in by_set.items()}


def set_of(given: MeasureSet | str) -> MeasureSet:
    """The set itself, or the bundled one of that name. Raises ``measure.unknown_set``."""
    if isinstance(given, MeasureSet):
        return given
    return named_set(given, _bundled_sets())


def named_set(name: str, sets: Mapping[str, MeasureSet]) -> MeasureSet:
    """The set of that name. Raises ``measure.unknown_set`` with the names there are."""
    if name not in sets:
        message = f'no set of measures is called "{name}"'
        raise make_error("measure.unknown_set", message, "sets: " + "; ".join(sets))
    return sets[name]


@cache
def _bundled_sets() -> dict[str, MeasureSet]:
    return read_measure_sets(os.path.join(os.path.dirname(__file__), "data", "measure_sets.csv"))


def _placed(row: Mapping[str, str]) -> Row:
    columns = MEASURE_COLUMNS[1:]
    hint = "columns: " + ", ".join(columns)
    for column in row:
        if column not in columns:
            raise make_error("measure.column", f'unknown column "{column}"', hint)
    for column in ("measure", "size"):
        if column not in row:
            raise make_error("measure.column", f"a measure has no {column}", hint)
    return {column: (text, "", 0, 0) for column, text in row.items()}


def _named(name: str, rows: Sequence[Row]) -> MeasureSet:
    measures = _measures_of(rows)
    return at_place(rows[0]["set"], lambda: _core.make_measure_set(name, measures))


def _measures_of(rows: Sequence[Row]) -> list[MeasureRow]:
    measures: list[MeasureRow] = []
    for row in rows:
        name = _text(row, "measure")
        marks = _marks(row)
        if marks and measures and measures[-1][0] == name:
            # A further range of the measure above: the size of the last one is the measure's.
            marks = [*measures.pop()[4], *marks]
        plural = _text(row, "plural") or name
        size = _read(row, "size", _core.quantity)
        most = _read(row, "most", _core.number) if _text(row, "most") else None
        measures.append((name, plural, size, most, marks, _text(row, "source")))
    return measures


def _marks(row: Row) -> list[Mark]:
    if not _text(row, "step"):
        if _text(row, "from"):
            _, file, line, column = row["from"]
            message = f'"{_text(row, "measure")}" has a lowest mark but no step'
            raise make_error("measure.step", message, "give the step", file, line, column)
        return []
    step = _read(row, "step", _core.quantity)
    lowest = _read(row, "from", _core.quantity) if _text(row, "from") else step * 0
    return [(step, lowest, _read(row, "size", _core.quantity))]


def _text(row: Row, column: str) -> str:
    return row[column][0].strip() if column in row else ""


def _read(row: Row, column: str, read: Callable[[str], _Read]) -> _Read:
    return at_place(row[column], lambda: read(_text(row, column)))
