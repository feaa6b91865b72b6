"""What a spend allows and what drives a cost, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import quantity_document, quantity_or_null
from scalepan.command_line.sections import NOTE, Section, Table, Texts

if TYPE_CHECKING:
    from scalepan._core import Driver, LeastSpend, Quantity, WithinSpend


def spend_section(title: str, spend: Quantity, found: WithinSpend) -> Section:
    """The most portions, what they take at the till, and what one more would take."""
    portions = _core.exact_text(found.portions)
    notes = [
        f"{portions} portions for {spend.told_money}: the till takes {found.till.told_money}",
        f"one more: {found.till_next.told_money}",
    ]
    return Section(title, (Texts(notes, NOTE),))


def least_section(title: str, least: LeastSpend) -> Section:
    """What so many portions take at the till, and how far the same till goes."""
    portions = _core.exact_text(least.portions)
    notes = [f"{portions} portions: the till takes {least.till.told_money}"]
    most = _core.exact_text(least.most)
    if least.till_next is None:
        notes.append(f"the same till buys {most} portions and more")
    else:
        if least.most > least.portions:
            notes.append(f"the same till buys up to {most} portions")
        notes.append(f"one more than {most}: {least.till_next.told_money}")
    return Section(title, (Texts(notes, NOTE),))


def drivers_section(drivers: list[Driver], more: str) -> Section:
    """Each item's share of what the dish bears, and what more of it would add."""
    rows = [
        (
            driver.item,
            driver.borne.told_money,
            f"{_core.fixed_text(driver.share * 100, 1)} %",
            driver.more_till.told_money,
            driver.more_borne.told_money,
        )
        for driver in drivers
    ]
    header = ("item", "borne", "share", f"till, {more} more", f"borne, {more} more")
    note = (
        f"{more} more of an item is needed: whole packs make what that adds another figure than "
        f"{more} of its cost, which is what {more} on its prices would add."
    )
    body = Table(header, rows, (1, 2, 3, 4))
    return Section("What drives the cost", (body, Texts((note,), NOTE)))


def least_document(least: LeastSpend, drivers: list[Driver]) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "portions": str(least.portions),
        "till": quantity_document(least.till),
        "most": str(least.most),
        "till_next": quantity_or_null(least.till_next),
        "drivers": [_driver(driver) for driver in drivers],
    }


def spend_document(spend: Quantity, found: WithinSpend, drivers: list[Driver]) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    return {
        "spend": quantity_document(spend),
        "portions": str(found.portions),
        "till": quantity_document(found.till),
        "till_next": quantity_document(found.till_next),
        "drivers": [_driver(driver) for driver in drivers],
    }


def _driver(driver: Driver) -> dict[str, Any]:
    return {
        "item": driver.item,
        "lines": driver.lines,
        "borne": quantity_document(driver.borne),
        "share": str(driver.share),
        "more_till": quantity_document(driver.more_till),
        "more_borne": quantity_document(driver.more_borne),
    }
