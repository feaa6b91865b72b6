"""What differs between two sheets, as a list of changes.

print(sheet_difference("soup.toml", "soup_at_sixty.toml"))

leeks.edible: 0.44 EP/AP -> 0.5 EP/AP
leeks.buy: leeks.need / leeks.edible -> leeks.need / 0.5
new: water = 2 L
gone: pots = 2
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan._core import Changes, Formula
from scalepan.displays import repr_mimebundle
from scalepan.errors import Error
from scalepan.sheet_content import Block, Content
from scalepan.sheet_forms import change_entries, given_form, value_entries
from scalepan.sheets import Sheet, read_sheet

if TYPE_CHECKING:
    from collections.abc import Iterator, Mapping

    from scalepan.files import PathLike
    from scalepan.sheet_forms import Given, Value


class SheetDifference:
    """What the newer of two sheets has otherwise.

    Attributes:
        lines: one a change, in words.
    """

    def __init__(self, old: Sheet, new: Sheet) -> None:
        self._old = old.changes()
        self._new = new.changes()
        self._contents = Content(self._old), Content(self._new)
        self.lines = [
            *_cell_lines(*(content.cells for content in self._contents)),
            *_block_lines(*(content.blocks for content in self._contents)),
            *_override_lines(*(content.overrides for content in self._contents)),
            *_variant_lines(old.variants, new.variants),
        ]

    def __bool__(self) -> bool:
        return bool(self.lines)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, SheetDifference) and self._told() == other._told()

    __hash__ = None  # type: ignore[assignment]  # of lists

    def _told(self) -> tuple[Any, ...]:
        return self.lines, forms(self._old), forms(self._new)

    _repr_mimebundle_ = repr_mimebundle

    def __str__(self) -> str:
        return "\n".join(self.lines) or "no difference"

    def changes(self) -> Changes:
        """What makes the older sheet into the newer one, all but its variants.

        Where no verb leads from one to the other (a formula has become an input that others read),
        they take away all that there is and make the newer sheet anew.
        """
        from scalepan.sheet_edits import edits, remade  # so that `import scalepan` stays quick

        found = edits(*self._contents)
        trial = _core.Sheet()
        trial.restore(self._old)
        try:
            trial.apply(found)
        except Error:
            return remade(self._contents[0], self._new)
        same = forms(trial.changes()) == forms(self._new)
        return found if same else remade(self._contents[0], self._new)


def sheet_difference(old: Sheet | PathLike, new: Sheet | PathLike) -> SheetDifference:
    """What differs between two sheets, or between the files of two.

    Raises:
        SheetError, MeasureError, NumberError, FileError: as ``read_sheet``.
    """
    return SheetDifference(_sheet(old), _sheet(new))


def _sheet(given: Sheet | PathLike) -> Sheet:
    return read_sheet(given) if isinstance(given, str | os.PathLike) else given


def forms(changes: Changes) -> list[dict[str, Any]]:
    """Changes as a file has them: equal where they are written alike."""
    return [change_entries(verb, given) for verb, given in changes.listed()]


def alike(old: Given, new: Given) -> bool:
    """Whether both are written alike: 500 g is not 0.5 kg here."""
    return bool(given_form(old) == given_form(new))


# Lines.


def _cell_lines(old: Mapping[str, Given], new: Mapping[str, Given]) -> Iterator[str]:
    for name, given in old.items():
        if name not in new:
            yield f"gone: {name} = {_told(given)}"
        elif not alike(given, new[name]):
            yield f"{name}: {_told(given)} -> {_told(new[name])}"
    for name, given in new.items():
        if name not in old:
            yield f"new: {name} = {_told(given)}"


def _block_lines(old: Mapping[str, Block], new: Mapping[str, Block]) -> Iterator[str]:
    for name in sorted(old.keys() | new.keys()):
        if name not in new:
            yield f"gone: the rows {name}"
            continue
        if name not in old:
            yield f"new: the rows {name}"
        before, after = old.get(name, Block({}, {}, {})), new[name]
        yield from _column_lines(name, before, after)
        yield from _row_lines(name, before, after)


def _column_lines(name: str, old: Block, new: Block) -> Iterator[str]:
    before, after = _columns(old), _columns(new)
    for column, what in before.items():
        if column not in after:
            yield f"gone: the column {name}.{column} = {what}"
        elif what != after[column]:
            yield f"{name}.{column}: {what} -> {after[column]}"
    for column, what in after.items():
        if column not in before:
            yield f"new: the column {name}.{column} = {what}"
    kept = [column for column in before if column in after]
    if kept != [column for column in after if column in before]:
        yield f"columns of {name}: {', '.join(before)} -> {', '.join(after)}"


def _columns(block: Block) -> dict[str, str]:
    return {**{c: f"given, {what}" for c, what in block.given.items()}, **block.formulas}


def _row_lines(name: str, old: Block, new: Block) -> Iterator[str]:
    for row in old.rows:
        if row not in new.rows:
            yield f"gone: the row {row} of {name}"
    stay = staying(list(old.rows), list(new.rows))
    order = list(new.rows)
    for place, (row, given) in enumerate(new.rows.items()):
        before = f"before {order[place + 1]}" if place + 1 < len(order) else "to the end"
        if row not in old.rows:
            cells = ", ".join(f"{column} {_told(one)}" for column, one in given.items())
            yield f"new: the row {row} of {name}" + (f", {cells}" if cells else "")
            continue
        if row not in stay:
            yield f"moved: the row {row} of {name} {before}"
        kept = {c: one for c, one in old.rows[row].items() if c in given}
        for column, one in kept.items():
            if not alike(one, given[column]):
                yield f"{row}.{column}: {_told(one)} -> {_told(given[column])}"


def _override_lines(old: Mapping[str, Any], new: Mapping[str, Any]) -> Iterator[str]:
    for name, told in old.items():
        if name not in new:
            yield f"released: {name} from {_override(told)}"
        elif _override(told) != _override(new[name]):
            yield f"override of {name}: {_override(told)} -> {_override(new[name])}"
    for name, told in new.items():
        if name not in old:
            yield f"overridden: {name} with {_override(told)}"


def _variant_lines(old: Mapping[str, Changes], new: Mapping[str, Changes]) -> Iterator[str]:
    for name in sorted(old.keys() | new.keys()):
        if name not in new:
            yield f'gone: the variant "{name}"'
        elif name not in old:
            yield f'new: the variant "{name}"'
        elif forms(old[name]) != forms(new[name]):
            yield f'the variant "{name}" has other changes'


def _told(given: Given) -> str:
    if isinstance(given, Formula):
        return str(given)
    value, source = given
    return _figure(value) + (f" ({source})" if source else "")


def _figure(value: Value) -> str:
    if isinstance(value, bool):
        return "yes" if value else "no"
    if "text" in value_entries(value):
        return f'"{value}"'
    return str(value)


def _override(told: Mapping[str, Any]) -> str:
    who = "".join(f", {told[key]}" for key in ("who", "when") if told[key])
    return f"{_figure(told['value'])} ({told['why']}{who})"


def staying(old: list[str], new: list[str]) -> set[str]:
    """As many rows as can stay where they are, while the others are moved around them."""
    from bisect import bisect_left  # here, so that `import scalepan` stays quick

    places = {row: place for place, row in enumerate(new)}
    ends: list[int] = []  # the least end of a rising run of each length
    last: list[str] = []
    behind: dict[str, str | None] = {}
    for row in (row for row in old if row in places):
        length = bisect_left(ends, places[row])
        behind[row] = last[length - 1] if length else None
        ends[length : length + 1] = [places[row]]
        last[length : length + 1] = [row]
    stay: set[str] = set()
    at = last[-1] if last else None
    while at is not None:
        stay.add(at)
        at = behind[at]
    return stay
