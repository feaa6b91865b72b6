"""Sections of a report as plain text: what a terminal prints, of names that do no harm."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from scalepan.command_line.sections import Section, Table, Texts, report_lines
from scalepan.display.harmless import MOST_OF_TEXT, plain

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan.command_line.sections import Part

WIDTH = 80


def text_of(sections: Iterable[Section], width: int) -> str:
    """The lines of a report."""
    return "\n".join(report_lines([_harmless(each) for each in sections], width, head=str))


def _harmless(section: Section) -> Section:
    parts = [_harmless_part(part) for part in section.parts]
    return replace(section, title=plain(section.title, MOST_OF_TEXT), parts=parts)


def _harmless_part(part: Part) -> Part:
    if isinstance(part, Table):
        header = [plain(head) for head in part.header]
        return replace(part, header=header, rows=[[plain(c) for c in row] for row in part.rows])
    if isinstance(part, Texts):
        return replace(part, texts=[plain(text, MOST_OF_TEXT) for text in part.texts])
    return part
