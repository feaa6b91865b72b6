"""Quantities, intervals and loads."""

from __future__ import annotations

from scalepan._core import Interval, Loads, Quantity
from scalepan.command_line.report import money_of, told_of
from scalepan.command_line.sections import Figure, Section, Table, Texts
from scalepan.display.harmless import plain
from scalepan.display.kinds import Display, display_of, of_sections
from scalepan.display.markup import element
from scalepan.sheet_comparison import told


@display_of.register
def _(shown: Quantity) -> Display:
    figure = _told(shown)
    word = "exactly" if isinstance(figure, Figure) else "="
    beside = [" ", element("small", f"{word} ", str(shown))] if figure != str(shown) else []
    return Display(element("p", figure, *beside, of="figure"), plain(repr(shown)))


@display_of.register
def _(shown: Interval) -> Display:
    return Display(element("p", str(shown), of="figure"), plain(repr(shown)))


@display_of.register
def _(shown: Loads) -> Display:
    rows = [(str(count), told_of(each)) for count, each in shown.parts]
    body = Table(("loads", "each"), rows, (0, 1))
    return of_sections([Section("", (Texts((shown.text,)), body))])


def _told(amount: Quantity) -> str:
    """For people, with the exact one beside it where it is rounded."""
    is_money = amount.dimension.startswith("money")
    return money_of(amount) if is_money else told_of(amount, told(amount))
