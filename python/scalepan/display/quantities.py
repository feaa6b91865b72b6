"""Quantities, intervals and loads."""

from __future__ import annotations

from scalepan._core import Interval, Loads, Quantity
from scalepan.command_line.measuring import measuring_section
from scalepan.command_line.report import ABOUT, conversion_section, money_of, told_of
from scalepan.command_line.sections import Figure, Section, Table, Texts
from scalepan.conversion import Conversion
from scalepan.display.harmless import plain
from scalepan.display.kinds import Display, display_of, of_sections
from scalepan.display.markup import element
from scalepan.measuring import MeasuredOut
from scalepan.sheet_comparison import told


@display_of.register
def _(shown: Quantity) -> Display:
    figure = _told(shown)
    is_rounded = isinstance(figure, Figure)
    # Money told to its minor unit is the amount itself: 140.80 EUR needs no "= 140.8 EUR".
    says_more = figure != str(shown) and (is_rounded or not _is_money(shown))
    word = "exactly" if is_rounded else "="
    beside = [" ", element("small", f"{word} ", str(shown))] if says_more else []
    return Display(element("p", figure, *beside, of="figure"), plain(repr(shown)))


@display_of.register
def _(shown: Interval) -> Display:
    figure = told(shown)
    beside = [" ", element("small", "exactly ", str(shown))] if ABOUT in figure else []
    return Display(element("p", figure, *beside, of="figure"), plain(repr(shown)))


@display_of.register
def _(shown: Loads) -> Display:
    rows = [(str(count), told_of(each)) for count, each in shown.parts]
    body = Table(("loads", "each"), rows, (0, 1))
    return of_sections([Section("", (Texts((shown.text,)), body))])


@display_of.register
def _(shown: Conversion) -> Display:
    return of_sections([conversion_section("", shown)])


@display_of.register
def _(shown: MeasuredOut) -> Display:
    return of_sections([measuring_section(shown.exact.told, shown)])


def _told(amount: Quantity) -> str:
    """For people, with the exact one beside it where it is rounded."""
    return money_of(amount) if _is_money(amount) else told_of(amount, told(amount))


def _is_money(amount: Quantity) -> bool:
    return amount.dimension.startswith("money")
