"""Sections of a report as HTML."""

from __future__ import annotations

from dataclasses import dataclass
from typing import TYPE_CHECKING

from scalepan.command_line.report import ABOUT
from scalepan.command_line.sections import POINT, Figure, Group, Rounded, Section, Table, Texts
from scalepan.display.harmless import MOST, MOST_OF_TEXT
from scalepan.display.markup import Markup, element, together, words
from scalepan.display.style import CLASS, STYLE

if TYPE_CHECKING:
    from collections.abc import Collection, Iterable

    from scalepan.command_line.sections import Part, Row

# From so many points on a list can be folded away; it is shown until it is.
_MANY_POINTS = 8
_LONGEST_FIGURE = 40
_LONGEST_AMOUNT = 18
_FIGURE, _AMOUNT, _FORMULA = "n", "a", "f"  # classes of cells, short since they stand in each


@dataclass(frozen=True)
class Manner:
    """How a page sets what a report is made of.

    Attributes:
        title: the element of titles.
        of_cell, of_text: so many characters of a cell and of a text are shown.
        rounded: what a table says whose figures are rounded.
        folds: whether one who reads can fold a long list away.
        longest_word: a cell with a longer one may be broken anywhere; 0 where none may.
    """

    title: str
    of_cell: int
    of_text: int
    rounded: str
    folds: bool
    longest_word: int = 0


_SCREEN = Manner(
    "p", MOST, MOST_OF_TEXT, "Rounded half up; point at a figure for the exact one.", folds=True
)


def html_of(body: Markup) -> str:
    """One display: the style, and what it is for."""
    return element("style", Markup(STYLE)) + element("div", body, of=CLASS)


def sections_html(sections: Iterable[Section], manner: Manner = _SCREEN) -> Markup:
    """The sections one below the other."""
    return together([_section(each, manner) for each in sections])


def _section(section: Section, manner: Manner) -> Markup:
    name = words(section.title, MOST_OF_TEXT)
    title = [element(manner.title, name, of="title")] if section.title else []
    body = together([*title, *(_part(part, manner) for part in section.parts)])
    return element("div", body, of="care", role="note") if section.is_caution else body


def _part(part: Part, manner: Manner) -> Markup:
    if isinstance(part, Table):
        return table_html(part, manner)
    if isinstance(part, Rounded):
        return element("p", manner.rounded, of="note")
    return _texts(part, manner) if isinstance(part, Texts) else Markup()


def _texts(part: Texts, manner: Manner) -> Markup:
    texts = [words(text, manner.of_text) for text in part.texts]
    if part.lead != POINT:
        return together([element("p", text, of=part.lead and "note") for text in texts])
    points = element("ul", *(element("li", text) for text in texts))
    if not manner.folds or len(texts) < _MANY_POINTS:
        return points if texts else Markup()
    summary = element("summary", f"{len(texts)} in all")
    return element("details", summary, points, open="open")


def table_html(part: Table, manner: Manner) -> Markup:
    """A table; a cell may be markup already."""
    right = {*part.right, *part.figures}
    rows = [_row(row, right, part.formulas, manner) for row in part.rows]
    body = element("tbody", *rows)
    if not any(part.header):
        return element("table", body)
    heads = [
        element("th", head, scope="col", of=_FIGURE if place in right else "")
        for place, head in enumerate(part.header)
    ]
    return element("table", element("thead", element("tr", *heads)), body)


def _row(row: Row, right: Collection[int], formulas: Collection[int], manner: Manner) -> Markup:
    if isinstance(row, Group):
        name = words(row[0], manner.of_cell)
        head = element("th", name, scope="rowgroup", colspan=str(len(row)), of="group")
        return element("tr", head)
    cells = [
        _cell(cell, _FORMULA if place in formulas else _kind_of(cell, place in right), manner)
        for place, cell in enumerate(row)
    ]
    return element("tr", *cells)


def _cell(cell: str, kind: str, manner: Manner) -> Markup:
    if isinstance(cell, Markup):
        return element("td", cell)
    exact = f"exactly {cell.exact}" if isinstance(cell, Figure) else ""
    if manner.longest_word and longest_word(cell) > manner.longest_word:
        kind = _FORMULA
    return element("td", words(cell, manner.of_cell), of=kind, title=exact)


def longest_word(text: str) -> int:
    """Its length in characters."""
    return max(map(len, text.split()), default=0)


def _kind_of(cell: str, is_right: bool) -> str:
    """A failure in a column of figures is set as words are; an amount stays on one line."""
    if is_right:
        return _FIGURE if len(cell) <= _LONGEST_FIGURE else ""
    is_amount = cell[:1].isdigit() or cell.startswith(ABOUT)
    return _AMOUNT if is_amount and len(cell) <= _LONGEST_AMOUNT else ""
