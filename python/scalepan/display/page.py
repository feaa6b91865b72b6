"""Sections of a report as HTML."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.command_line.report import ABOUT
from scalepan.command_line.sections import POINT, Figure, Group, Rounded, Section, Table, Texts
from scalepan.display.harmless import MOST_OF_TEXT
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
_ROUNDED = "Rounded half up; point at a figure for the exact one."


def html_of(body: Markup) -> str:
    """One display: the style, and what it is for."""
    return element("style", Markup(STYLE)) + element("div", body, of=CLASS)


def sections_html(sections: Iterable[Section]) -> Markup:
    """The sections one below the other."""
    return together([_section(each) for each in sections])


def _section(section: Section) -> Markup:
    title = [element("p", words(section.title, MOST_OF_TEXT), of="title")] if section.title else []
    body = together([*title, *(_part(part) for part in section.parts)])
    return element("div", body, of="care", role="note") if section.is_caution else body


def _part(part: Part) -> Markup:
    if isinstance(part, Table):
        return _table(part)
    if isinstance(part, Rounded):
        return element("p", _ROUNDED, of="note")
    return _texts(part) if isinstance(part, Texts) else Markup()


def _texts(part: Texts) -> Markup:
    texts = [words(text, MOST_OF_TEXT) for text in part.texts]
    if part.lead != POINT:
        return together([element("p", text, of=part.lead and "note") for text in texts])
    points = element("ul", *(element("li", text) for text in texts))
    if len(texts) < _MANY_POINTS:
        return points if texts else Markup()
    summary = element("summary", f"{len(texts)} in all")
    return element("details", summary, points, open="open")


def _table(part: Table) -> Markup:
    right = {*part.right, *part.figures}
    rows = [_row(row, right, part.formulas) for row in part.rows]
    body = element("tbody", *rows)
    if not any(part.header):
        return element("table", body)
    heads = [
        element("th", head, scope="col", of=_FIGURE if place in right else "")
        for place, head in enumerate(part.header)
    ]
    return element("table", element("thead", element("tr", *heads)), body)


def _row(row: Row, right: Collection[int], formulas: Collection[int]) -> Markup:
    if isinstance(row, Group):
        head = element("th", row[0], scope="rowgroup", colspan=str(len(row)), of="group")
        return element("tr", head)
    cells = [
        _cell(cell, _FORMULA if place in formulas else _kind_of(cell, place in right))
        for place, cell in enumerate(row)
    ]
    return element("tr", *cells)


def _cell(cell: str, kind: str) -> Markup:
    exact = f"exactly {cell.exact}" if isinstance(cell, Figure) else ""
    return element("td", cell, of=kind, title=exact)


def _kind_of(cell: str, is_right: bool) -> str:
    """A failure in a column of figures is set as words are; an amount stays on one line."""
    if is_right:
        return _FIGURE if len(cell) <= _LONGEST_FIGURE else ""
    is_amount = cell[:1].isdigit() or cell.startswith(ABOUT)
    return _AMOUNT if is_amount and len(cell) <= _LONGEST_AMOUNT else ""
