"""Sheets: named cells, of which some are given and some follow by formulas.

sheet = scalepan.Sheet()
sheet.set("leeks.need", "5 kg EP")
sheet.set("leeks.edible", "0.44 EP/AP", source="USDA SR28 11246")
sheet.define("leeks.buy", "leeks.need / leeks.edible")
print(sheet.told("leeks.buy"), sheet.why("leeks.buy"))
sheet.save("soup.toml")
"""

from __future__ import annotations

from collections.abc import Iterator, MutableMapping
from contextlib import contextmanager
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan._core import Changes
from scalepan.errors import Error, SheetError
from scalepan.files import read_text, write_whole
from scalepan.pickles import costing_parts, restored_costing_sheet, restored_sheet
from scalepan.sheet_studies import Studies

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from scalepan._core import Costing
    from scalepan.files import PathLike
    from scalepan.sheet_comparison import Comparison
    from scalepan.sheet_reader import SheetReader


class Variants(MutableMapping[str, Changes]):
    """Named sets of changes, none of which is made: what a sheet would be with them."""

    def __init__(self) -> None:
        self._changes: dict[str, Changes] = {}

    def __getitem__(self, name: str) -> Changes:
        return self._changes[name]

    def __setitem__(self, name: str, changes: Changes) -> None:
        """Raises SheetError (``sheet.variant``) for a name that cannot be told in one line."""
        if not name.isprintable() or not name.strip():
            message = "the name of a variant is empty or holds a control character"
            raise SheetError("sheet.variant", message)
        self._changes[name] = changes

    def __delitem__(self, name: str) -> None:
        del self._changes[name]

    def __iter__(self) -> Iterator[str]:
        return iter(self._changes)

    def __len__(self) -> int:
        return len(self._changes)

    def __repr__(self) -> str:
        return f"<variants: {', '.join(self) or 'none'}>"


class Sheet(Studies):
    """A live sheet: see the verbs for how it changes.

    A change runs the formulas that depend on it, each once, and no others. A change that is
    refused leaves the sheet as it was. Any number of threads may read while one changes.
    """

    def __init__(self, costing: Costing | None = None) -> None:
        """An empty sheet; of a costing its live one, as ``costing.sheet`` gives it."""
        if costing is None:
            super().__init__()
        else:
            super().__init__(costing)
        self._variants = Variants()
        # Another object of the same costing, so that neither holds the other.
        self._costing = None if costing is None else _core.twin(costing)

    @property
    def of_costing(self) -> bool:
        """Whether it is a costing's, which is kept in a file by ``Costing.save``."""
        return self._costing is not None

    @property
    def variants(self) -> Variants:
        """Named sets of changes, saved with the sheet. Undo and redo do not touch them."""
        return self._variants

    def __eq__(self, other: object) -> bool:
        """Whether both hold the same: no difference is told of them."""
        if not isinstance(other, Sheet):
            return NotImplemented
        from scalepan.sheet_differences import SheetDifference  # so that importing stays quick

        return not SheetDifference(self, other)

    __hash__ = None  # type: ignore[assignment]  # it changes

    def __reduce__(self) -> tuple[object, ...]:
        """With its variants, without what could be undone; of a costing's, with the costing."""
        variants = dict(self._variants)
        if self._costing is None:
            return restored_sheet, (self.changes(), variants)
        return restored_costing_sheet, costing_parts(self._costing, variants)

    @contextmanager
    def together(self) -> Iterator[Changes]:
        """Gathers changes and makes them at the end: all, or none; none where the block raises.

        with sheet.together() as change:
            change.set("portions", 60)
            change.define("leeks.buy", "leeks.need / 0.5")

        Raises what ``apply`` raises.
        """
        changes = Changes()
        yield changes
        self.apply(changes)

    def compare(
        self, cells: Iterable[str], variants: Iterable[str] | Mapping[str, Changes] | None = None
    ) -> Comparison:
        """What cells come out as in variants, side by side; the sheet stays as it is.

        Args:
            cells: names, or one.
            variants: names out of ``variants``, or changes by name; left out, all of ``variants``.

        Raises:
            SheetError: ``sheet.unknown`` for a variant, or for a cell that is in none of them.
        """
        from scalepan.sheet_comparison import compared  # so that `import scalepan` stays quick

        return compared(self, [cells] if isinstance(cells, str) else list(cells), variants)

    def text(self) -> str:
        """The text of the sheet's file: the same for all sheets that hold the same.

        Raises:
            SheetError: ``sheet.control_character`` in a text; ``sheet.thing`` for the sheet of a
                costing, which ``Costing.save`` keeps.
            NumberError: ``number.too_many_digits``: more than could be read back.
        """
        from scalepan.sheet_writer import sheet_text  # so that `import scalepan` stays quick

        return sheet_text(self, self._variants)

    def save(self, path: PathLike) -> None:
        """Writes the file, whole or not at all: where that fails, an older file is still there.

        Raises:
            FileError: ``file.unwritable``.
            SheetError, NumberError: as ``text``.
        """
        write_whole(path, self.text())


def read_sheet(path: PathLike) -> Sheet:
    """Reads a file that ``Sheet.save`` wrote, or that is written by hand in the same form.

    Raises:
        SheetError, MeasureError, NumberError, FileError: with file, line and column.
    """
    from scalepan.sheet_change_reader import MOST_BYTES  # so that `import scalepan` stays quick

    return parse_sheet(read_text(path, MOST_BYTES), file=str(path))


def parse_sheet(text: str, *, file: str = "") -> Sheet:
    """As ``read_sheet``, from text; ``file`` is the name that errors show."""
    from scalepan.sheet_reader import read_changes  # here, so that `import scalepan` stays quick

    reader, changes, variants = read_changes(text, file)
    sheet = Sheet()
    try:
        sheet.restore(changes)
    except Error as error:
        raise _placed(reader, changes, error) from None
    for name, variant in variants.items():
        sheet.variants[name] = variant
    return sheet


def _placed(reader: SheetReader, changes: Changes, error: Error) -> Error:
    """The error with the place of the change that was refused, found by making them singly."""
    trial = Sheet()
    try:
        ordered = changes.ordered().singly()
    except Error as cycle:
        return reader.placed(cycle, None)
    for change in ordered:
        try:
            trial.apply(change)
        except Error as refused:
            return reader.placed(refused, change.listed()[0])
    return reader.placed(error, None)
