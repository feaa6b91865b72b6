"""Checks of price books: rows that cannot be read, and what they leave open."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.checks.finds import Find, find_of
from scalepan.csv_document import as_written
from scalepan.errors import Error
from scalepan.prices import price_rows

if TYPE_CHECKING:
    from collections.abc import Callable, Sequence

    from scalepan._core import Catalog, PriceBook
    from scalepan.checks.finds import CheckedFile
    from scalepan.csv_document import Placed

    Row = dict[str, Placed]

_MOST_NAMED = 8
# So many rows that others forbid are told of one by one.
_MOST_TRIES = 20


class PriceRows:
    """The rows of all price books.

    Args:
        measures: which pint and fluid ounce the packs mean.
        catalog: the foods that items may name.
    """

    def __init__(self, measures: str | None, catalog: Catalog) -> None:
        self._measures = measures or ""
        self._catalog = catalog
        self._rows: list[tuple[CheckedFile, Row]] = []

    def read(self, file: CheckedFile) -> None:
        """Takes the rows that are right, and notes each that is not.

        Raises:
            PriceError: where the table as a whole cannot be read.
        """
        rows = price_rows(file.text, file.path)
        right = self._right_ones(file, rows)
        self._rows += [(file, row) for row in right]
        self._note_several_foods(file, right)
        without = [row for row in right if not _text(row, "currency")]
        hint = "fill the column currency, as EUR"
        _note(file, "check.no_currency", "no currency is stated", hint, without)
        without = [row for row in right if not _text(row, "date")]
        _note(
            file,
            "check.no_date",
            "no date is stated",
            "fill the column date, as 2026-11-24",
            without,
        )

    def look_at_dates(self) -> None:
        """Notes prices that are a year older than the newest of all."""
        newest = max((_text(row, "date") for _, row in self._rows), default="")
        if not newest:
            return
        year, _, day = newest.partition("-")
        before = f"{int(year) - 1:04}-{day}"
        for file in dict.fromkeys(file for file, _ in self._rows):
            rows = [row for of, row in self._rows if of is file]
            old = [row for row in rows if "" < _text(row, "date") <= before]
            message = f"the price is a year or more older than the newest, of {newest}"
            _note(file, "check.old_price", message, "ask for the price anew", old)

    def book(self) -> PriceBook | None:
        """All rows together; None where there are none.

        Books that price one pack twice are used one at a time, so that is no error here.
        """
        return self._made([row for _, row in self._rows], lambda _: None)[0]

    def _made(
        self, rows: list[Row], note: Callable[[Error], None]
    ) -> tuple[PriceBook | None, list[Row]]:
        """A book of the rows, without those that others forbid, as ``note`` is told."""
        for _ in range(_MOST_TRIES):
            if not rows:
                break
            try:
                return _core.make_price_book(rows, self._measures), rows
            except Error as error:
                note(error)
                rows = [row for row in rows if row["item"][1:3] != (error.file, error.line)]
        return None, []

    def _note_several_foods(self, file: CheckedFile, rows: Sequence[Row]) -> None:
        places = {_text(row, "item"): row["item"] for row in reversed(rows)}
        for name, (_, _, line, column) in places.items():
            try:
                self._catalog.food_of(name)
            except Error as error:
                if error.code == "food.ambiguous":
                    told = error.message, error.hint.partition("; ")[0]
                    file.add(Find("check.several_foods", *told, file.path, line, column))

    def _right_ones(self, file: CheckedFile, rows: list[Row]) -> list[Row]:
        try:
            _core.make_price_book(rows, self._measures)
        except Error:
            rows = [row for row in rows if self._is_right(file, row)]
        else:
            return rows
        return self._made(rows, lambda error: _add(file, error, rows))[1]

    def _is_right(self, file: CheckedFile, row: Row) -> bool:
        try:
            _core.make_price_book([row], self._measures)
        except Error as error:
            _add(file, error, [row])
            return False
        return True


def _add(file: CheckedFile, error: Error, rows: Sequence[Row]) -> None:
    file.add(find_of(as_written(error, rows), file.path))


def _text(row: Row, column: str) -> str:
    return row[column][0].strip() if column in row else ""


def _note(file: CheckedFile, code: str, message: str, hint: str, rows: Sequence[Row]) -> None:
    """One find for all rows, at the first."""
    if not rows:
        return
    _, _, line, column = rows[0]["item"]
    items = list(dict.fromkeys(_text(row, "item") for row in rows))
    named = ", ".join(items[:_MOST_NAMED])
    more = f" and {len(items) - _MOST_NAMED} more" if len(items) > _MOST_NAMED else ""
    file.add(Find(code, f"{named}{more}: {message}", hint, file.path, line, column))
