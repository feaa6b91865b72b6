"""Errors that were caught and are displayed, and those that end a cell of a notebook."""

from __future__ import annotations

import os
import traceback

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


_PACKAGE = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))


def short_traceback(error: Error) -> list[str]:
    """What is wrong, and the last line of one's own that led to it; then how to see the rest."""
    first, *hint = error_lines(error)
    lines = [f"{type(error).__name__}: {first}", *hint]
    own = [
        frame
        for frame in traceback.extract_tb(error.__traceback__)
        if not frame.filename.startswith(_PACKAGE) and frame.line
    ]
    if own:
        lines += ["", f"at line {own[-1].lineno} of {_name_of(own[-1])}: {own[-1].line}"]
    lines += ["", "All calls on the way: scalepan.Error.whole_traceback = True, then %tb"]
    return [plain(line, MOST_OF_TEXT) for line in lines]


def _name_of(frame: traceback.FrameSummary) -> str:
    is_file = os.path.isfile(frame.filename)
    return os.path.basename(frame.filename) if is_file else "the cell"
