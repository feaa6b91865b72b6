"""Aligned text tables that fit the terminal, plain when piped."""

from __future__ import annotations

import shutil
import textwrap
import unicodedata
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

_GAP = "  "
_NARROWEST = 12
_DEFAULT_WIDTH = 80


# Stands for a space at which no line is broken.
TIE = "\u00a0"


def bound(text: str) -> str:
    """A text that stays on one line."""
    return text.replace(" ", TIE)


def terminal_width() -> int:
    """Columns of the terminal, at least 60; 80 where there is none."""
    return max(60, shutil.get_terminal_size((_DEFAULT_WIDTH, 24)).columns)


def text_width(text: str) -> int:
    """Columns a text takes: wide characters count two, combining ones none."""
    return len(text) if text.isascii() else sum(_width(c) for c in text)


def table(
    header: Sequence[str], rows: Sequence[Sequence[str]], *, right: Sequence[int], width: int
) -> list[str]:
    """Lines of a table indented by two.

    Args:
        header: names of the columns; all empty leaves the header out.
        rows: cells, as many a row as the header has.
        right: indices of the columns that are aligned to the right, and never wrapped.
        width: columns to fit into; text columns wrap, the widest first.
    """
    widths = _column_widths([header, *rows], right, width - len(_GAP))
    lines: list[str] = []
    if any(header):
        lines += _row_lines(header, widths, right)
        lines.append(_GAP + _GAP.join("-" * w for w in widths))
    for row in rows:
        lines += _row_lines(row, widths, right)
    return lines


def wrapped(text: str, width: int, lead: str = "") -> list[str]:
    """A paragraph, its first line after ``lead`` and the others below the text."""
    return textwrap.wrap(
        text,
        width,
        initial_indent=lead,
        subsequent_indent=" " * len(lead),
        break_long_words=True,
        break_on_hyphens=False,
    )


def _width(character: str) -> int:
    if unicodedata.combining(character):
        return 0
    return 2 if unicodedata.east_asian_width(character) in "WF" else 1


def _column_widths(rows: Sequence[Sequence[str]], right: Sequence[int], room: int) -> list[int]:
    widths = [max(text_width(row[i]) for row in rows) for i in range(len(rows[0]))]
    texts = [i for i in range(len(widths)) if i not in right]
    while texts and sum(widths) + len(_GAP) * (len(widths) - 1) > room:
        widest = max(texts, key=widths.__getitem__)
        if widths[widest] <= _NARROWEST:
            break
        widths[widest] -= 1
    return widths


def _row_lines(row: Sequence[str], widths: Sequence[int], right: Sequence[int]) -> list[str]:
    cells = [
        # A column can be without any width: of no text, or of combining characters alone.
        [cell] if i in right or fits(cell, widths[i]) else wrapped(cell, max(1, widths[i])) or [""]
        for i, cell in enumerate(row)
    ]
    lines = []
    for n in range(max(len(cell) for cell in cells)):
        parts = [
            _padded(cell[n] if n < len(cell) else "", widths[i], i in right)
            for i, cell in enumerate(cells)
        ]
        lines.append((_GAP + _GAP.join(parts)).rstrip())
    return lines


def fits(cell: str, width: int) -> bool:
    """Whether wrapping would leave the cell as it is; most need not be tried."""
    plain = cell.isascii() and cell.isprintable()
    return plain and 0 < len(cell) <= width and cell[0] != " " != cell[-1]


def _padded(text: str, width: int, to_right: bool) -> str:
    space = " " * max(0, width - text_width(text))
    return space + text if to_right else text + space
