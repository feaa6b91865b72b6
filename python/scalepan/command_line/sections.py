"""What a report is made of: titles, tables and texts, which a terminal and a page set each."""

from __future__ import annotations

import sys
from collections.abc import Callable, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, TypeVar, overload

from scalepan_command.colour import painted

from scalepan.command_line.tables import table, wrapped

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

Row = Sequence[str]
_Each = TypeVar("_Each")

NOTE = "  "
POINT = "  - "
# A page shows so many rows of what a cook works by: no dish and no shopping has as many.
ALL_OF_A_KITCHEN = 400


class Figure(str):
    """A figure as it is told, with the exact one beside it."""

    exact: str

    def __new__(cls, told: str, exact: str) -> Figure:
        figure = super().__new__(cls, told)
        figure.exact = exact
        return figure


class Group(tuple[str, ...]):
    """A row that heads those below it: a name, and nothing in the other columns."""

    __slots__ = ()

    def __new__(cls, name: str, columns: int) -> Group:
        return super().__new__(cls, (name, *[""] * (columns - 1)))


class Rows(Sequence[Row]):
    """Rows that are made when they are asked for, since a page shows the first of many only."""

    def __init__(self, of: Sequence[_Each], make: Callable[[_Each], Row]) -> None:
        self._make: Callable[[int], Row] = lambda place: make(of[place])
        self._places = range(len(of))

    def __len__(self) -> int:
        return len(self._places)

    @overload
    def __getitem__(self, place: int) -> Row: ...
    @overload
    def __getitem__(self, place: slice) -> Sequence[Row]: ...
    def __getitem__(self, place: int | slice) -> Row | Sequence[Row]:
        if isinstance(place, slice):
            return [self._make(each) for each in self._places[place]]
        return self._make(self._places[place])


@dataclass(frozen=True)
class Table:
    """Rows under heads.

    Attributes:
        right: the columns of figures, which stand to the right and are never wrapped.
        whole: what has all rows, where a page shows the first only: ``sheet.text()``.
        most: so many rows a page shows.
        figures: columns that a page sets to the right too, since it need not wrap them.
        formulas: columns that a page may break anywhere, as a terminal does.
    """

    header: Row
    rows: Sequence[Row]
    right: Collection[int] = ()
    whole: str = ""
    most: int = 40
    figures: Collection[int] = ()
    formulas: Collection[int] = ()

    def lines(self, width: int) -> list[str]:
        return table(self.header, list(self.rows), right=tuple(self.right), width=width)


@dataclass(frozen=True)
class Texts:
    """Paragraphs, or with a ``lead`` notes or points of a list."""

    texts: Sequence[str]
    lead: str = ""

    def lines(self, width: int) -> list[str]:
        return [line for text in self.texts for line in wrapped(text, width, self.lead)]


@dataclass(frozen=True)
class Rounded(Texts):
    """How figures are rounded and where a terminal has the exact ones; a page has them itself."""


@dataclass(frozen=True)
class Gap:
    """A blank line."""

    def lines(self, width: int) -> list[str]:
        return [""]


Part = Table | Texts | Gap


@dataclass(frozen=True)
class Section:
    """Parts under a title; without either it is left out."""

    title: str = ""
    parts: Sequence[Part] = ()
    is_caution: bool = False


def heading(text: str) -> str:
    """Bold on a terminal."""
    return painted(text, "head", sys.stdout)


def section_lines(section: Section, width: int, head: Callable[[str], str] = heading) -> list[str]:
    """The title and below it the parts."""
    lines = [head(section.title)] if section.title else []
    return [*lines, *(line for part in section.parts for line in part.lines(width))]


def report_lines(
    sections: Iterable[Section], width: int, head: Callable[[str], str] = heading
) -> list[str]:
    """Sections with a blank line between."""
    return joined([section_lines(section, width, head) for section in sections])


def joined(sections: Iterable[list[str]]) -> list[str]:
    """Sections with a blank line between; empty ones leave none."""
    lines: list[str] = []
    for section in sections:
        if section:
            lines += [*([""] if lines else []), *section]
    return lines
