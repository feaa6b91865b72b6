"""Recipes, their lines and labels."""

from __future__ import annotations

from scalepan import _core
from scalepan._core import Label, Line, MadeBase, Recipe, WrittenLine
from scalepan.command_line.reading import kind_text, line_rows
from scalepan.command_line.report import (
    LINE_HEADER,
    amounts_table,
    base_section,
    line_row,
    recipe_sections,
    with_notes,
)
from scalepan.command_line.sections import NOTE, Section, Table, Texts
from scalepan.display.kinds import Display, display_of, of_sections


@display_of.register
def _(shown: Recipe) -> Display:
    sections = recipe_sections(shown)
    return of_sections(with_notes(sections, _core.lines_to_check(shown), _core.cautions(shown)))


@display_of.register
def _(shown: MadeBase) -> Display:
    return of_sections([base_section(shown, amounts_table(shown.recipe))])


@display_of.register
def _(shown: Line) -> Display:
    written = Texts((f"as written: {shown.text}",), NOTE)
    return of_sections([Section("", (Table(LINE_HEADER, [line_row(shown)]), written))])


@display_of.register
def _(shown: WrittenLine) -> Display:
    if shown.kind != "ingredient":
        return of_sections([Section("", (Texts((kind_text(shown),)),))])
    return of_sections([Section("", (Table(("", ""), line_rows(shown)),))])


@display_of.register
def _(shown: Label) -> Display:
    return of_sections([Section("", (Texts(shown.text.split("\n")),))])
