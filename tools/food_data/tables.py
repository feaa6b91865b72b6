"""CSV tables and their faults."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterable, Sequence
from pathlib import Path

Record = dict[str, str]


class DataError(Exception):
    """A fault in the inputs, told with the place."""


def read_csv(path: Path) -> list[Record]:
    """The rows of a CSV file with a header line."""
    if not path.is_file():
        raise DataError(f"{path}: no such file")
    with path.open(encoding="utf-8", newline="") as stream:
        return [dict(cells) for cells in csv.DictReader(stream)]


def csv_text(columns: Sequence[str], records: Iterable[Record]) -> str:
    stream = io.StringIO()
    writer = csv.DictWriter(stream, columns, lineterminator="\n")
    writer.writeheader()
    writer.writerows(records)
    return stream.getvalue()
