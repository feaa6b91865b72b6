"""Reports as xlsx workbooks, written by XlsxWriter: a worksheet for each section.

The rows are those that a terminal, a notebook and a printed page show. A figure is written as a
number, rounded as it is told; where that rounds it, a column of text beside has it exactly. Every
text is written as a text, never as a formula or a link.
"""

from __future__ import annotations

import re
from io import BytesIO
from typing import TYPE_CHECKING, Any

from scalepan.command_line.sections import Figure, Group, Rounded, Table, Texts
from scalepan.display.kinds import display_of
from scalepan.errors import make_error

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from scalepan.command_line.sections import Row, Section

# A double holds fifteen digits for certain (IEEE 754); a longer figure is written as a text.
_NUMBER = re.compile(r"-?(?=(?:\.?[0-9]){1,15}$)[0-9]+(?:\.([0-9]+))?")
_ROUNDED = "Rounded half up as shown; the column beside a rounded figure has it exactly."
# ECMA-376 leaves these open; programs that open such files have these limits (common practice).
MOST_ROWS = 1_048_576
LONGEST_TEXT = 32_767
_LONGEST_NAME = 31
_NOT_IN_NAMES = re.compile(r"[\[\]:*?/\\\x00-\x1f]")
_WIDEST = 60


def workbook_bytes(shown: object) -> bytes:
    """The file.

    Raises:
        FileError: ``file.library`` without XlsxWriter; ``file.xlsx`` for what has no report, or
            more rows or longer texts than such a file holds.
    """
    sections = [section for section in _sections(shown) if section.parts]
    library = _library()
    stream = BytesIO()
    options = {"in_memory": True, "strings_to_formulas": False, "strings_to_urls": False}
    with library.Workbook(stream, {**options, "strings_to_numbers": False}) as book:
        formats = _Formats(book)
        names: list[str] = []
        for section in sections:
            names.append(_sheet_name(section.title or "Notes", names))
            _Worksheet(book.add_worksheet(names[-1]), formats).write(section)
    return stream.getvalue()


def _sections(shown: object) -> Sequence[Section]:
    import scalepan.display  # noqa: F401  makes the kinds known

    try:
        sections = display_of(shown).sections
    except TypeError:
        sections = ()
    if not sections:
        message = f"a {type(shown).__name__} has no report for a workbook"
        hint = "give a costing, its shopping, a curve, a basket, a price book or a recipe"
        raise make_error("file.xlsx", message, hint)
    return sections


def _library() -> Any:
    try:
        import xlsxwriter
    except ImportError:
        message = "xlsx files are written by XlsxWriter, which is not installed"
        raise make_error("file.library", message, "pip install 'scalepan[xlsx]'") from None
    return xlsxwriter


def _sheet_name(title: str, taken: list[str]) -> str:
    """Short, of signs that a name may have, and not twice."""
    name = _NOT_IN_NAMES.sub(" ", title).strip(" '")[:_LONGEST_NAME].strip(" '") or "Notes"
    known = {each.lower() for each in taken}
    # Some programs keep this name for themselves.
    number = 2 if name.lower() in known or name.lower() == "history" else 0
    while number and f"{name[:25]} {number}".lower() in known:
        number += 1
    return f"{name[:25]} {number}" if number else name


class _Formats:
    def __init__(self, book: Any) -> None:
        self._book = book
        self._numbers: dict[int, Any] = {}
        self.bold = book.add_format({"bold": True})
        self.text = book.add_format({"text_wrap": True, "valign": "top"})

    def number(self, places: int) -> Any:
        if places not in self._numbers:
            shape = f"0.{'0' * places}" if places else "0"
            self._numbers[places] = self._book.add_format({"num_format": shape, "valign": "top"})
        return self._numbers[places]


class _Worksheet:
    def __init__(self, sheet: Any, formats: _Formats) -> None:
        self._sheet = sheet
        self._formats = formats
        self._at = 0
        self._widths: dict[int, int] = {}

    def write(self, section: Section) -> None:
        self._row([section.title], self._formats.bold)
        for part in section.parts:
            if isinstance(part, Table):
                self._table(part)
            elif isinstance(part, Texts):
                for text in (_ROUNDED,) if isinstance(part, Rounded) else part.texts:
                    self._row([text], None)
            else:
                self._next()
        for column, width in self._widths.items():
            self._sheet.set_column(column, column, min(width, _WIDEST) + 2)

    def _table(self, table: Table) -> None:
        rows = list(table.rows)
        exact = [place for place in range(len(table.header)) if _has_exact(rows, place)]
        figures = {*table.right, *table.figures}
        heads = [*_beside(table.header, exact, lambda head: f"{head}, exactly".removeprefix(", "))]
        self._row(heads, self._formats.bold)
        for row in rows:
            is_head = isinstance(row, Group)
            cells = [(cell, place in figures) for place, cell in enumerate(row)]
            column = 0
            for place, (cell, is_figure) in enumerate(cells):
                form = self._formats.bold if is_head else self._formats.text
                self._cell(column, cell, form, is_figure)
                column += 1
                if place in exact:
                    told = cell.exact if isinstance(cell, Figure) else ""
                    self._cell(column, told, self._formats.text, False)
                    column += 1
            self._next()
        self._next()

    def _row(self, texts: Sequence[str], form: Any) -> None:
        for column, text in enumerate(texts):
            self._cell(column, text, form, False, sets_width=len(texts) > 1)
        self._next()

    def _next(self) -> None:
        self._at += 1
        if self._at >= MOST_ROWS:
            message = f"the report has more than {MOST_ROWS} rows"
            raise make_error("file.xlsx", message, "write it as CSV: scalepan.frame(...).csv()")

    def _cell(
        self, column: int, text: str, form: Any, is_figure: bool, sets_width: bool = True
    ) -> None:
        if not text:
            return
        if sets_width:
            self._widths[column] = max(self._widths.get(column, 0), len(text))
        number = _NUMBER.fullmatch(text) if is_figure else None
        if number is not None:
            places = len(number[1] or "")
            self._sheet.write_number(self._at, column, float(text), self._formats.number(places))
            return
        if len(text) > LONGEST_TEXT:
            message = f"a text has more than {LONGEST_TEXT} characters: {text[:40]}..."
            raise make_error("file.xlsx", message, "shorten it")
        self._sheet.write_string(self._at, column, str(text), form)


def _has_exact(rows: Sequence[Row], place: int) -> bool:
    return any(isinstance(row[place], Figure) for row in rows)


def _beside(header: Row, exact: Sequence[int], name: Any) -> Iterator[str]:
    for place, head in enumerate(header):
        yield head
        if place in exact:
            yield name(head)
