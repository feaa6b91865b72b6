"""What the commands print: sections of text, built from a recipe or a costing."""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.command_line.tables import table, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from scalepan._core import Basket, Costing, Line, MadeBase, Quantity, Recipe, ShoppingRow
    from scalepan.conversion import Conversion, UsedFact

_COSTS = (
    ("till", "whole packs paid for today"),
    ("used", "the part of them the dish consumes"),
    ("thrown", "leftover that will not keep"),
    ("borne", "used + thrown: what the dish costs"),
)


def heading(text: str) -> str:
    """Bold on a terminal, plain elsewhere and where NO_COLOR is set."""
    bold = sys.stdout.isatty() and "NO_COLOR" not in os.environ
    return f"\033[1m{text}\033[0m" if bold else text


def joined(sections: list[list[str]]) -> list[str]:
    """Sections with a blank line between; empty ones leave none."""
    lines: list[str] = []
    for section in sections:
        if section:
            lines += [*([""] if lines else []), *section]
    return lines


def recipe_section(recipe: Recipe, width: int, remarks: Sequence[str] = ()) -> list[str]:
    """Title, tested sizes and the amounts, those of the bases first."""
    sections = [
        [*base_title(base, width), *_amounts(base.recipe, width), ""] for base in recipe.bases
    ]
    own = [*title_lines(recipe, width, remarks), *_amounts(recipe, width)]
    return [*(line for section in sections for line in section), *own]


def _amounts(recipe: Recipe, width: int) -> list[str]:
    header = ("amount", "stage", "scales")
    return table(header, _line_rows(recipe), right=(), width=width)


def title_lines(recipe: Recipe, width: int, remarks: Sequence[str] = ()) -> list[str]:
    """Name, portions, remarks, batch, loads and tested sizes, with a blank line below."""
    texts = [*remarks, *batch_texts(recipe), recipe.tested]
    facts = [line for text in texts for line in wrapped(text, width)]
    return [heading(title_text(recipe)), *facts, ""]


def title_text(recipe: Recipe) -> str:
    """Name and portions."""
    return f"{recipe.name}, {_portions(recipe)}"


def base_title(base: MadeBase, width: int) -> list[str]:
    """What a base makes, and what takes how much of it, with a blank line below."""
    title, *facts = base_texts(base)
    return [heading(title), *(line for fact in facts for line in wrapped(fact, width)), ""]


def base_texts(base: MadeBase) -> list[str]:
    """What a base makes; what takes how much of it; its loads."""
    made = base.recipe.batch
    size = f"{made.told}, " if made is not None else ""
    size += (
        f"{_core.quantity(base.recipe.factor).told} batch{'' if base.recipe.factor == 1 else 'es'}"
    )
    uses = ", ".join(f"{use.amount.told} for {use.line}" for use in base.uses)
    return [f"First make: {base.recipe.name}, {size}", uses, *_loads_texts(base.recipe)]


def batch_texts(recipe: Recipe) -> list[str]:
    """What is made beside what is asked for, the batch, and its loads."""
    texts = []
    if recipe.made != recipe.portions:
        made = _core.quantity(recipe.made).told
        texts.append(f"{made} portions are made, to serve {_core.quantity(recipe.portions).told}")
    if (batch := recipe.batch) is not None:
        portion = batch * (1 / recipe.made)
        texts.append(f"makes {batch.told}, {portion.told} a portion")
    return [*texts, *_loads_texts(recipe)]


def _loads_texts(recipe: Recipe) -> list[str]:
    split = recipe.load_split()
    if split is None or split.count <= 1:
        return []
    alike = recipe.load_split(equal=True)
    return [split.text if not split.short or alike is None else f"{split.text}, or {alike.text}"]


def _line_rows(recipe: Recipe) -> list[tuple[str, ...]]:
    rows = []
    for line in recipe.lines:
        if line.amount is None:
            rows.append((line.told, "", "left to the cook"))
        else:
            rows.append((line.told, stage_of(line), _scales(line)))
    return with_headings(recipe.lines, rows)


def with_headings(lines: list[Line], rows: Sequence[tuple[str, ...]]) -> list[tuple[str, ...]]:
    """The rows of the lines, with a row above each group that has a heading."""
    result: list[tuple[str, ...]] = []
    above = ""
    for line, row in zip(lines, rows, strict=True):
        if line.heading != above:
            above = line.heading
            result.append((f"{above}:" if above else "", *[""] * (len(row) - 1)))
        result.append(row)
    return result


def shopping_section(costing: Costing, width: int) -> list[str]:
    """The packs to buy, what they cost, and what is left of them."""
    rows = [
        *shopping_rows(costing),
        *((line, "", "not priced", "", "") for line in costing.unpriced),
    ]
    body = table(shopping_header(costing), rows, right=(3,), width=width)
    return [heading("To buy"), *body, *shopping_notes(costing, width), total_line(costing)]


def shopping_header(costing: Costing | Basket) -> tuple[str, ...]:
    """The heads of ``shopping_rows``."""
    return ("item", "need", "packs", priced_in(costing), "left over")


def shopping_rows(costing: Costing | Basket) -> list[tuple[str, ...]]:
    """Item, need, packs, price and leftover of each row."""
    return [
        (row.item, _need(row.need), packs_text(row.packs), bare_money(row.price), _left(row))
        for row in costing.shopping
    ]


def shopping_notes(costing: Costing | Basket, width: int) -> list[str]:
    """What is on hand, the terms the packs are bought on, what is bought where, deposits."""
    bought = costing.shopping
    on_hand = [f"{row.item}: {_need(row.from_stock)} on hand" for row in bought if row.from_stock]
    terms = [f"{row.item}, {text}" for row in bought for text in row.terms]
    deposit = f"a deposit of {costing.deposit.told_money} besides, given back for the empty packs"
    notes = [*on_hand, *terms, *_shops(bought), *([deposit] if costing.deposit else [])]
    return [line for text in notes for line in wrapped(text, width, "  ")]


def _shops(bought: Sequence[ShoppingRow]) -> list[str]:
    """Which items are bought where, if that is more than one shop."""
    items: dict[str, list[str]] = {}
    for row in bought:
        for shop in row.shops:
            items.setdefault(shop, []).append(row.item)
    if len(items) < 2:
        return []
    return [f"at {shop}: {', '.join(names)}" for shop, names in items.items()]


def total_line(costing: Costing | Basket) -> str:
    """What the till takes in all."""
    return f"  till {at_least(bool(costing.unpriced))}{costing.till.told_money}"


def costs_section(costing: Costing, width: int) -> list[str]:
    """The four costs, in all and a portion."""
    least = at_least(bool(costing.unpriced))
    portion = {name: least + bare_money(_money_of_portion(costing, name)) for name, _ in _COSTS}
    rows = [
        (name, amount, portion.get(name, ""), meaning)
        for name, amount, meaning in cost_rows(costing)
    ]
    header = ("cost", priced_in(costing), "a portion", "meaning")
    lines = [heading("Costs"), *table(header, rows, right=(1, 2), width=width)]
    if least:
        count = len(costing.unpriced)
        lines.append(f"  At least: {count} line{'s' if count > 1 else ''} unpriced.")
    lines.append("  Shown to the currency's minor unit, rounded half up; --json has exact figures.")
    return lines


def cost_rows(costing: Costing | Basket) -> list[tuple[str, str, str]]:
    """Name, amount and meaning of the four costs and of the stock."""
    least = at_least(bool(costing.unpriced))
    rows = [(name, least + bare_money(getattr(costing, name)), meaning) for name, meaning in _COSTS]
    if costing.opening:
        rows.insert(0, ("opening stock", bare_money(costing.opening), "what was on hand"))
    return [*rows, ("closing stock", bare_money(costing.closing), "leftover that keeps")]


def notes_section(notes: list[str], width: int) -> list[str]:
    """What was assumed or is not known; nothing where there is nothing."""
    return [heading("To check"), *listed(notes, width)] if notes else []


def listed(texts: Iterable[str], width: int) -> list[str]:
    """Each text as a point of a list."""
    return [line for text in texts for line in wrapped(text, width, "  - ")]


def cautions_section(cautions: list[tuple[str, str, list[str]]], width: int) -> list[str]:
    """Each caution with its lines and source, then what they all defer to."""
    return [heading("Cautions"), *caution_lines(cautions, width)]


def caution_lines(cautions: list[tuple[str, str, list[str]]], width: int) -> list[str]:
    """The same without the head."""
    texts = [
        f"{', '.join(ids)}: {text} [{source}]" if ids else f"{text} [{source}]"
        for text, source, ids in cautions
    ]
    return [*listed(texts, width), *wrapped(_core.caution_footing(), width, "  ")]


def conversion_section(given: str, unit: str, result: Conversion, width: int) -> list[str]:
    """The result, its spread, and the facts on the way."""
    lines = [f"{given} = {_shown(result.amount, unit)}"]
    if result.low != result.high:
        lines.append(f"  spread: {result.low.told} to {result.high.told} (worst case)")
    if (result.rss_low, result.rss_high) != (result.low, result.high):
        low, high = result.rss_low.told, result.rss_high.told
        lines.append(f"  spread: {low} to {high} (root-sum-square)")
    return lines + facts_lines(result.facts, width)


def facts_lines(facts: Iterable[UsedFact], width: int) -> list[str]:
    """The facts on the way, each with its source and what stands beside it."""
    lines = []
    for fact in facts:
        sign = "/" if fact.divides else "*"
        lines += wrapped(f"{sign} {fact.value}   [{fact.source}]", width, "  ")
        for other in fact.beside:
            lines += wrapped(str(other), width, "    ")
    return lines


def _shown(amount: Quantity, unit: str) -> str:
    """The exact figure; with its decimal beside it where it is a long fraction."""
    exact = str(amount)
    if "/" not in _core.exact_text(amount.value):
        return exact
    return f"{exact} (≈ {_core.fixed_text(amount.value, 3)} {unit})"


def _portions(recipe: Recipe) -> str:
    count = _core.quantity(recipe.portions).told
    return f"{count} portion" if count == "1" else f"{count} portions"


def stage_of(line: Line) -> str:
    """In words."""
    names = {"AP": "as purchased", "EP": "edible portion"}
    return "base" if line.takes_from is not None else names.get(line.stage, line.stage)


def _scales(line: Line) -> str:
    """The rule, with the exact figure where that was rounded."""
    if line.amount == line.exact or line.exact is None:
        return line.rule
    return f"{line.rule}; {_core.exact_text(line.exact.value)} exactly"


def _need(need: Quantity) -> str:
    return f"{need.told} {need.stage}"


def packs_text(packs: list[tuple[int, str]]) -> str:
    """``2 x 1 kg + 1 x 500 g``."""
    return " + ".join(f"{count} x {pack}" for count, pack in packs) or "none"


def _left(row: ShoppingRow) -> str:
    if not row.leftover:
        return "none"
    if not row.keeps:
        return f"{row.leftover.told} thrown"
    days = f" {row.keeps_days} days" if row.keeps_days else ""
    return f"{row.leftover.told} kept{days}"


def bare_money(money: Quantity) -> str:
    """Without its code, which the column's head names."""
    return money.told_money.split(" ")[0]


def at_least(unpriced: bool) -> str:
    """Before a total that lines without a price are missing from."""
    return "at least " if unpriced else ""


def _money_of_portion(costing: Costing, name: str) -> Quantity:
    return costing.per_portion(name) * _core.quantity(1, "portion")


def priced_in(costing: Costing | Basket) -> str:
    """The head of a column of prices."""
    return "price" if costing.till.unit == "XXX" else costing.till.unit


def in_currency(currency: str) -> str:
    """For a title; nothing where the prices name none."""
    return "" if currency == "XXX" else f", in {currency}"
