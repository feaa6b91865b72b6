"""Catalogues and their facts."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan._core import Catalog, Fact
from scalepan.command_line.sections import NOTE, Section, Table, Texts
from scalepan.display.kinds import Display, display_of, of_sections

if TYPE_CHECKING:
    from scalepan._core import Quantity


@display_of.register
def _(shown: Fact) -> Display:
    rows = [
        ("food", shown.food),
        ("kind", shown.kind),
        ("state", shown.state),
        ("size", shown.size),
        ("value", str(shown.value)),
        ("spread", _spread(shown.low, shown.high)),
        ("source", shown.source),
        ("layer", shown.layer),
    ]
    body = Table(("", ""), [(name, text) for name, text in rows if text])
    return of_sections([Section(shown.id, (body,))])


def _spread(low: Quantity | None, high: Quantity | None) -> str:
    return "" if low is None or high is None else f"{low} to {high}"


@display_of.register
def _(shown: Catalog) -> Display:
    text = f"{shown.food_count} foods, {shown.fact_count} facts"
    hint = 'catalog.facts("leeks") has the facts of a food'
    return of_sections([Section("", (Texts((text,)), Texts((hint,), NOTE)))])
