"""Errors that were caught and are displayed."""

from __future__ import annotations

from scalepan.command_line.report import error_lines
from scalepan.command_line.sections import Section, Table
from scalepan.display.harmless import MOST_OF_TEXT, plain
from scalepan.display.kinds import Display, display_of, of_sections
from scalepan.errors import Error


@display_of.register
def _(shown: Error) -> Display:
    rows = [("where", shown.place), ("to do", shown.hint), ("code", shown.code)]
    body = Table(("", ""), [row for row in rows if row[1]])
    display = of_sections([Section(shown.message, (body,))])
    return Display(
        display.body, "\n".join(plain(line, MOST_OF_TEXT) for line in error_lines(shown))
    )
