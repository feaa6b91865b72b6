"""The first of many rows, points and sections, with a count of those left out."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from scalepan.command_line.sections import NOTE, Section, Table, Texts
from scalepan.display.markup import words

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from scalepan.command_line.sections import Part, Row

_MOST_POINTS = 200
_ROOM = 100_000  # characters of HTML
_OF_A_CELL = 10  # characters of its tags


class _Room:
    """What is left of a display's room: names of any length and number share it."""

    def __init__(self) -> None:
        self._left = _ROOM

    def takes(self, texts: Sequence[str]) -> bool:
        """Whether there is room for these; then there is less for others."""
        if self._left <= 0:
            return False
        self._left -= sum(len(words(text)) + _OF_A_CELL for text in texts)
        return True


def first_of_many(sections: Iterable[Section]) -> list[Section]:
    """What one display shows of the sections."""
    room = _Room()
    shown: list[Section] = []
    wanted = [section for section in sections if section.title or section.parts]
    for section in wanted:
        if not room.takes([section.title]):
            break
        parts = [short for part in section.parts for short in _short(part, room)]
        shown.append(replace(section, parts=parts))
    if len(shown) < len(wanted):
        more = len(wanted) - len(shown)
        shown.append(Section("", (Texts((_more(more, "part"),), NOTE),)))
    return shown


def _short(part: Part, room: _Room) -> list[Part]:
    if isinstance(part, Table):
        return _short_table(part, room)
    if isinstance(part, Texts):
        return _short_texts(part, room)
    return [part]


def _short_table(part: Table, room: _Room) -> list[Part]:
    room.takes(part.header)
    rows: list[Row] = []
    for row in part.rows[: part.most]:
        if not room.takes(row):
            break
        rows.append(row)
    table = replace(part, rows=rows)
    if len(rows) == len(part.rows):
        return [table]
    where = f"; all of them: {part.whole}" if part.whole else ""
    return [table, Texts((_more(len(part.rows) - len(rows), "row") + where,), NOTE)]


def _short_texts(part: Texts, room: _Room) -> list[Part]:
    texts = [text for text in part.texts[:_MOST_POINTS] if room.takes([text])]
    if len(texts) == len(part.texts):
        return [part]
    note = Texts((_more(len(part.texts) - len(texts), "note"),), NOTE)
    return [replace(part, texts=texts), note]


def _more(count: int, what: str) -> str:
    return f"… {count} more {what}{'s' if count > 1 else ''}"
