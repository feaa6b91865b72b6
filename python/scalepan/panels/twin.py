"""The panel as it stands, as a page that does nothing: for exports and print."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.command_line.report import cautions_section, notes_section
from scalepan.command_line.sections import Section, Table
from scalepan.command_line.sheeting import figure_of
from scalepan.display.kinds import Display, display_of, of_sections
from scalepan.panels.desk import MOST_CELLS, Desk

if TYPE_CHECKING:
    from collections.abc import Sequence


@display_of.register
def _(shown: Desk) -> Display:
    sections = [Section("", (_table(shown, "input", shown.inputs),))]
    sections.append(Section("", (_table(shown, "cell", shown.cells),)))
    if (costing := shown.costing) is not None:
        sections += [notes_section(costing.to_check), cautions_section(costing.cautions)]
    return of_sections(sections)


def _table(desk: Desk, head: str, names: Sequence[str]) -> Table:
    rows = [(name, figure_of(desk.value(name))) for name in names]
    return Table((head, "figure"), rows, figures=(1,), most=MOST_CELLS)
