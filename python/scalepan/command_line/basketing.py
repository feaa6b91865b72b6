"""Several dishes bought together, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import (
    cautions_document,
    quantity_document,
    shopping_document,
)
from scalepan.command_line.report import (
    MINOR_UNITS,
    at_least,
    bare_money,
    cost_rows,
    in_currency,
    priced_in,
    shopping_header,
    shopping_notes,
    shopping_rows,
    total,
    with_notes,
)
from scalepan.command_line.sections import ALL_OF_A_KITCHEN, NOTE, Section, Table, Texts
from scalepan.command_line.stocking import left_section
from scalepan.costs import COSTS

if TYPE_CHECKING:
    from scalepan._core import Basket, BasketDish, DishNeed


def basket_sections(basket: Basket) -> list[Section]:
    """Dishes, packs, what is left, costs, notes and cautions."""
    sections = [
        dishes_section(basket),
        basket_shopping_section(basket),
        left_section(basket),
        basket_costs_section(basket),
    ]
    return with_notes(sections, basket.to_check, basket.cautions)


def dishes_section(basket: Basket) -> Section:
    """What each dish is charged, beside what it would take apart."""
    rows = [
        (
            dish.name,
            _core.quantity(dish.portions).told,
            bare_money(dish.till, least),
            bare_money(dish.borne, least),
            bare_money(dish.per_portion("borne") * _core.quantity(1, "portion"), least),
            bare_money(dish.apart.till, least),
            bare_money(dish.saving),
        )
        for dish in basket.dishes
        for least in (at_least(bool(dish.unpriced)),)
    ]
    header = ("dish", "portions", "till", "borne", "a portion", "till apart", "saved")
    title = f"{len(rows)} dish{'' if len(rows) == 1 else 'es'}{in_currency(basket.till.unit)}"
    body = Table(header, rows, (1, 2, 3, 4, 5, 6), whole="basket.dishes")
    notes = [
        "Packs are bought for all dishes together; each is charged its share of them by use, and "
        "a portion is what it bears."
    ]
    partly = [dish.name for dish in basket.dishes if dish.unpriced]
    if partly:
        notes.append(f"At least, since not all is priced: {', '.join(partly)}.")
    return Section(title, (body, Texts(notes, NOTE)))


def basket_shopping_section(basket: Basket) -> Section:
    """The packs to buy, and the dishes they are for."""
    uses = [_names(row.dishes, len(basket.dishes)) for row in basket.shopping]
    rows = [(*row, use) for row, use in zip(shopping_rows(basket), uses, strict=True)]
    body = Table(
        (*shopping_header(basket.till), "for"), rows, (3,), "basket.shopping", ALL_OF_A_KITCHEN
    )
    notes = [*shopping_notes(basket), total(basket)]
    if basket.unpriced:
        notes.append(f"not priced: {', '.join(basket.unpriced)}")
    return Section("To buy", (body, Texts(notes, NOTE)))


def basket_costs_section(basket: Basket) -> Section:
    """The four costs in all, and what buying together saves."""
    body = Table(("cost", priced_in(basket), "meaning"), cost_rows(basket), (1,))
    least = at_least(bool(basket.unpriced))
    notes = []
    for name, apart, saving in (
        ("till", basket.apart_till, basket.saving),
        ("borne", basket.apart_borne, basket.saving_borne),
    ):
        saved = f"{saving.told_money} saved" if saving >= 0 else f"{(-saving).told_money} more"
        notes.append(f"{name} apart {least}{apart.told_money}: together {saved}")
    return Section("Costs", (body, Texts(notes, NOTE), MINOR_UNITS))


def basket_document(basket: Basket) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    shopping = shopping_document(basket)
    for row, document in zip(basket.shopping, shopping["shopping"], strict=True):
        document["dishes"] = [
            {"dish": each.dish, "need": quantity_document(each.need)} for each in row.dishes
        ]
    return {
        "dishes": [dish_document(dish) for dish in basket.dishes],
        **shopping,
        "costs": {name: quantity_document(getattr(basket, name)) for name in COSTS},
        "closing": quantity_document(basket.closing),
        "apart": {
            "till": quantity_document(basket.apart_till),
            "borne": quantity_document(basket.apart_borne),
        },
        "saving": {
            "till": quantity_document(basket.saving),
            "borne": quantity_document(basket.saving_borne),
        },
        "at_least": bool(basket.unpriced),
        "cautions": cautions_document(basket.cautions),
    }


def dish_document(dish: BasketDish) -> dict[str, Any]:
    """What one dish is charged, beside what it would take apart."""
    return {
        "name": dish.name,
        "id": dish.id,
        "portions": str(dish.portions),
        "unpriced": dish.unpriced,
        "costs": {name: quantity_document(getattr(dish, name)) for name in COSTS},
        "closing": quantity_document(dish.closing),
        "per_portion": {name: quantity_document(dish.per_portion(name)) for name in COSTS},
        "apart": {name: quantity_document(getattr(dish.apart, name)) for name in COSTS},
        "saving": {
            "till": quantity_document(dish.saving),
            "borne": quantity_document(dish.saving_borne),
        },
    }


def _names(needs: list[DishNeed], dishes: int) -> str:
    return "all" if len(needs) == dishes > 1 else ", ".join(need.dish for need in needs)
