"""Figures of a panel: what cells hold, how that is told, and what it was before."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan._core import Changes, Quantity
from scalepan.command_line.sections import Figure
from scalepan.command_line.sheeting import figure_of
from scalepan.display.harmless import plain, title_text
from scalepan.errors import Error
from scalepan.sheet_comparison import difference, signed

if TYPE_CHECKING:
    from collections.abc import Mapping, Sequence
    from typing import TypeAlias

    from scalepan.sheet_comparison import Outcome
    from scalepan.sheets import Sheet

    Told: TypeAlias = dict[str, str | bool]


class Figures:
    """Cells as they were when they were last read.

    Attributes:
        told: by name how each is told.
    """

    def __init__(self, sheet: Sheet, names: Sequence[str]) -> None:
        self._sheet = sheet
        self._names = list(names)
        self._values = self._read()
        self.told = {name: told_figure(value) for name, value in self._values.items()}

    def __getitem__(self, name: str) -> Outcome:
        return self._values[name]

    def read(self) -> tuple[dict[str, Told], dict[str, Told]]:
        """Reads them anew: those that are told otherwise now, and by name what those were whose
        value has changed."""
        old, self._values = self._values, self._read()
        otherwise: dict[str, Told] = {}
        was: dict[str, Told] = {}
        for name, value in self._values.items():
            if _same_text(old[name], value):
                continue
            otherwise[name] = told_figure(value)
            if not _same_value(old[name], value):
                was[name] = {"was": self.told[name]["told"], **_more(old[name], value)}
        self.told |= otherwise
        return otherwise, was

    def _read(self) -> Mapping[str, Outcome]:
        values = self._sheet.values_with(Changes(), self._names)
        return dict(zip(self._names, values, strict=True))


def told_figure(value: Outcome) -> Told:
    """For people, with the exact figure where that one is rounded."""
    text = figure_of(value)
    figure: Told = {"told": plain(text)}
    if isinstance(text, Figure):
        figure["exact"] = title_text(text.exact)
    if isinstance(value, Error):
        figure["failed"] = True
    return figure


def _more(old: Outcome, new: Outcome) -> Told:
    """By how much it is more, where both are amounts of one kind."""
    more = difference(old, new)
    return {"by": plain(signed(more))} if more else {}


def _same_value(old: Outcome, new: Outcome) -> bool:
    if isinstance(old, Error) and isinstance(new, Error):
        return str(old) == str(new)
    return type(old) is type(new) and old == new


def _same_text(old: Outcome, new: Outcome) -> bool:
    if isinstance(old, Quantity) and isinstance(new, Quantity):
        return old == new and old.unit == new.unit
    return _same_value(old, new)
