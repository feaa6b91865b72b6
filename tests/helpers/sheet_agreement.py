"""Whether a costing's sheet has the very figures of its plan."""

from __future__ import annotations

import scalepan

COSTS = ("till", "used", "thrown", "borne")


def figure(costing: scalepan.Costing, name: str) -> scalepan.Quantity:
    """The figure of a cell; of one that is "at least", the lower bound."""
    value = costing.sheet.value(name)
    if isinstance(value, scalepan.Interval):
        value = value.low
    assert isinstance(value, scalepan.Quantity)
    return value


def row_of(row: scalepan.ShoppingRow) -> tuple[object, ...]:
    return (
        row.item,
        row.lines,
        str(row.need),
        str(row.from_stock),
        row.packs,
        row.terms,
        row.price,
        row.deposit,
        str(row.leftover),
        row.keeps,
        row.keeps_days,
        row.shops,
    )


def expect_agreement(plain: scalepan.Costing, live: scalepan.Costing) -> None:
    """``live`` is the same costing again; it shows its sheet once that was asked for."""
    by_plan = [*(getattr(plain, which) for which in COSTS), plain.closing, plain.opening]
    assert plain.explain("till").name == "till"
    sheet = live.sheet
    for which in COSTS:
        assert figure(live, which) == getattr(plain, which)
        assert figure(live, f"per_portion.{which}") == plain.per_portion(which)
    assert [*(getattr(live, which) for which in COSTS), live.closing, live.opening] == by_plan
    assert [row_of(row) for row in live.shopping] == [row_of(row) for row in plain.shopping]
    assert live.unpriced == plain.unpriced
    assert live.deposit == plain.deposit
    assert live.to_check == plain.to_check
    left = [(one.item, str(one.amount), one.value, one.keeps) for one in plain.left]
    assert [(one.item, str(one.amount), one.value, one.keeps) for one in live.left] == left
    for line in plain.recipe.lines:
        if f"{line.id}.need" in sheet:
            assert figure(live, f"{line.id}.need") == line.amount
