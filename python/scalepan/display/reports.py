"""What has a report of its own on the command line: costings, baskets, curves, prices, trials."""

from __future__ import annotations

from scalepan._core import (
    Basket,
    Costing,
    Curve,
    MakeOrBuy,
    PriceFound,
    Selling,
    ShoppingRow,
    Swap,
)
from scalepan.command_line.basketing import basket_sections, basket_shopping_section
from scalepan.command_line.choosing import make_or_buy_section, swaps_section
from scalepan.command_line.costing import costing_sections
from scalepan.command_line.curving import curve_sections
from scalepan.command_line.pricing import ROUNDED, price_section, selling_rows
from scalepan.command_line.report import shopping_header, shopping_row, shopping_section
from scalepan.command_line.sections import NOTE, Section, Table, Texts
from scalepan.command_line.stocking import shops_sections
from scalepan.command_line.yielding import yield_sections
from scalepan.costs import ShopCosting
from scalepan.display.kinds import Display, display_of, of_sections
from scalepan.shopping import Shopping
from scalepan.yield_tests import YieldTest


@display_of.register
def _(shown: Costing) -> Display:
    return of_sections(costing_sections(shown))


@display_of.register
def _(shown: ShoppingRow) -> Display:
    body = Table(shopping_header(shown.price), [shopping_row(shown)], (3,))
    return of_sections([Section("", (body, Texts(shown.terms, NOTE)))])


@display_of.register
def _(shown: Basket) -> Display:
    return of_sections(basket_sections(shown))


@display_of.register
def _(shown: Shopping) -> Display:  # type: ignore[type-arg]  # a register takes a class alone
    bought_for = shown.bought_for
    if isinstance(bought_for, Basket):
        return of_sections([basket_shopping_section(bought_for)])
    return of_sections([shopping_section(bought_for)])


@display_of.register
def _(shown: Swap) -> Display:
    till, borne = shown.till + shown.saved_till, shown.borne + shown.saved_borne
    return of_sections([swaps_section(till, borne, [shown])])


@display_of.register
def _(shown: MakeOrBuy) -> Display:
    return of_sections([make_or_buy_section(shown)])


@display_of.register
def _(shown: ShopCosting) -> Display:
    return of_sections(shops_sections("", [shown]))


@display_of.register
def _(shown: Curve) -> Display:
    return of_sections(curve_sections(shown))


@display_of.register
def _(shown: Selling) -> Display:
    body = Table(("a portion", "", "meaning"), selling_rows(shown), (1,))
    return of_sections([Section("", (body, ROUNDED))])


@display_of.register
def _(shown: PriceFound) -> Display:
    return of_sections([price_section("", shown, [])])


@display_of.register
def _(shown: YieldTest) -> Display:
    return of_sections(yield_sections(shown))
