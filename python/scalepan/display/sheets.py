"""Sheets, their variants side by side, sweeps and differences."""

from __future__ import annotations

from scalepan._core import Sheet
from scalepan.command_line.sections import POINT, Section, Texts
from scalepan.command_line.sheeting import comparison_section, sheet_sections, sweep_section
from scalepan.display.kinds import Display, display_of, of_sections
from scalepan.sheet_comparison import WIDTH, Comparison
from scalepan.sheet_differences import SheetDifference
from scalepan.sheet_studies import Sweep


@display_of.register
def _(shown: Sheet) -> Display:
    if not shown.cells() and not shown.blocks():
        return of_sections([Section("", (Texts(("a sheet without cells",)),))])
    return of_sections(sheet_sections(shown))


@display_of.register
def _(shown: Comparison) -> Display:
    return of_sections([comparison_section(shown)], WIDTH)


@display_of.register
def _(shown: Sweep) -> Display:
    return of_sections([sweep_section(shown)])


@display_of.register
def _(shown: SheetDifference) -> Display:
    texts = Texts(shown.lines, POINT) if shown.lines else Texts((str(shown),))
    return of_sections([Section("", (texts,))])
