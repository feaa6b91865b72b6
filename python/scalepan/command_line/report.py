"""What the commands print: sections of text, built from a recipe or a costing."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.command_line.pack_nouns import by_noun
from scalepan.command_line.sections import (
    ALL_OF_A_KITCHEN,
    NOTE,
    POINT,
    Figure,
    Gap,
    Group,
    Rounded,
    Section,
    Table,
    Texts,
)
from scalepan.errors import Error

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from scalepan._core import Basket, Costing, Line, MadeBase, Quantity, Recipe, ShoppingRow
    from scalepan.conversion import Conversion, UsedFact

_COSTS = (
    ("till", "whole packs paid for today"),
    ("used", "the part of them the dish consumes"),
    ("thrown", "leftover that will not keep"),
    ("borne", "used + thrown: what the dish costs"),
)

ABOUT = "≈"
LINE_HEADER = ("amount", "stage", "scales")
MINOR_UNITS = Rounded(
    ("Shown to the currency's minor unit, rounded half up; --json has exact figures.",), NOTE
)


def recipe_sections(recipe: Recipe, remarks: Sequence[str] = ()) -> list[Section]:
    """Title, tested sizes and the amounts, those of the bases first."""
    bases = [base_section(base, amounts_table(base.recipe)) for base in recipe.bases]
    return [*bases, titled(recipe, amounts_table(recipe), remarks)]


def amounts_table(recipe: Recipe) -> Table:
    """Each line's amount, stage and rule."""
    return Table(LINE_HEADER, _line_rows(recipe), most=ALL_OF_A_KITCHEN)


def titled(recipe: Recipe, below: Table, remarks: Sequence[str] = ()) -> Section:
    """Name, portions, remarks, batch, loads and tested sizes above a table."""
    texts = [*remarks, *batch_texts(recipe), recipe.tested]
    return Section(title_text(recipe), (Texts(texts), Gap(), below))


def base_section(base: MadeBase, below: Table) -> Section:
    """What a base makes, and what takes how much of it, above a table."""
    title, *facts = base_texts(base)
    return Section(title, (Texts(facts), Gap(), below))


def title_text(recipe: Recipe) -> str:
    """Name and portions."""
    return f"{recipe.name}, {portions_text(recipe)}"


def base_texts(base: MadeBase) -> list[str]:
    """What a base makes; what takes how much of it; its loads."""
    made = base.recipe.batch
    size = f"{made.told}, " if made is not None else ""
    size += (
        f"{_core.quantity(base.recipe.factor).told} batch{'' if base.recipe.factor == 1 else 'es'}"
    )
    uses = ", ".join(f"{use.amount.told} for {name_of(use.line)}" for use in base.uses)
    return [f"First make: {base.recipe.name}, {size}", uses, *_loads_texts(base.recipe)]


def name_of(line_id: str) -> str:
    """A line as a kitchen is told it: ``rest of the stock`` of ``rest_of_the_stock``."""
    return line_id.replace("_", " ")


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
    return with_headings(recipe.lines, [line_row(line) for line in recipe.lines])


def line_row(line: Line) -> tuple[str, ...]:
    """Amount, stage and rule."""
    if line.amount is None:
        return (line.told, "", "left to the cook")
    return (told_of(line.amount, line.told), stage_of(line), _scales(line))


def with_headings(lines: list[Line], rows: Sequence[tuple[str, ...]]) -> list[tuple[str, ...]]:
    """The rows of the lines, with a row above each group that has a heading."""
    result: list[tuple[str, ...]] = []
    above = ""
    for line, row in zip(lines, rows, strict=True):
        if line.heading != above:
            above = line.heading
            result.append(Group(f"{above}:" if above else "", len(row)))
        result.append(row)
    return result


def shopping_section(costing: Costing) -> Section:
    """The packs to buy, what they cost, and what is left of them."""
    rows = [
        *shopping_rows(costing),
        *((line, "", "not priced", "", "") for line in costing.unpriced),
    ]
    body = Table(shopping_header(costing.till), rows, (3,), "costing.shopping", ALL_OF_A_KITCHEN)
    return Section("To buy", (body, Texts([*shopping_notes(costing), total(costing)], NOTE)))


def shopping_header(money: Quantity) -> tuple[str, ...]:
    """The heads of ``shopping_row``, for prices like this one."""
    return ("item", "need", "packs", price_head(money), "left over")


def shopping_rows(costing: Costing | Basket) -> list[tuple[str, ...]]:
    """Item, need, packs, price and leftover of each row."""
    return [shopping_row(row) for row in costing.shopping]


def shopping_row(row: ShoppingRow) -> tuple[str, ...]:
    """Item, need, packs, price and leftover."""
    need, left = (by_noun(told, row.packs) for told in (need_of(row.need), _left(row)))
    return (row.item, need, packs_text(row.packs), bare_money(row.price), left)


def shopping_notes(costing: Costing | Basket) -> list[str]:
    """What is on hand, the terms the packs are bought on, what is bought where, deposits."""
    return [*buying_terms(costing), *_shops(costing.shopping), *deposit_notes(costing)]


def buying_terms(costing: Costing | Basket) -> list[str]:
    """What is on hand, and the terms the packs are bought on."""
    bought = costing.shopping
    on_hand = [f"{row.item}: {need_of(row.from_stock)} on hand" for row in bought if row.from_stock]
    return [*on_hand, *(f"{row.item}, {text}" for row in bought for text in row.terms)]


def deposit_notes(costing: Costing | Basket) -> list[str]:
    """What is paid besides and given back, if anything is."""
    deposit = f"a deposit of {costing.deposit.told_money} besides, given back for the empty packs"
    return [deposit] if costing.deposit else []


def _shops(bought: Sequence[ShoppingRow]) -> list[str]:
    """Which items are bought where, if that is more than one shop."""
    items: dict[str, list[str]] = {}
    for row in bought:
        for shop in row.shops:
            items.setdefault(shop, []).append(row.item)
    if len(items) < 2:
        return []
    return [f"at {shop}: {', '.join(names)}" for shop, names in items.items()]


def total(costing: Costing | Basket) -> str:
    """What the till takes in all."""
    return f"till {at_least(bool(costing.unpriced))}{costing.till.told_money}"


def costs_section(costing: Costing) -> Section:
    """The four costs, in all and a portion."""
    unpriced = bool(costing.unpriced)
    portion = {
        name: bare_money(_money_of_portion(costing, name), at_least(unpriced)) for name, _ in _COSTS
    }
    rows = [
        (name, amount, portion.get(name, ""), meaning)
        for name, amount, meaning in cost_rows(costing)
    ]
    body = Table(("cost", priced_in(costing), "a portion", "meaning"), rows, (1, 2))
    return Section("Costs", (body, Texts(least_notes(costing), NOTE), MINOR_UNITS))


def least_notes(costing: Costing | Basket) -> list[str]:
    """How many lines are missing from a total that reads "at least"."""
    count = len(costing.unpriced)
    lines = f"{count} line{'s' if count > 1 else ''}"
    return [f"At least: {lines} unpriced. What costs nothing needs a price of 0."] if count else []


def cost_rows(costing: Costing | Basket) -> list[tuple[str, str, str]]:
    """Name, amount and meaning of the four costs and of the stock."""
    least = at_least(bool(costing.unpriced))
    rows = [(name, bare_money(getattr(costing, name), least), meaning) for name, meaning in _COSTS]
    if costing.opening:
        rows.insert(0, ("opening stock", bare_money(costing.opening), "what was on hand"))
    return [*rows, ("closing stock", bare_money(costing.closing, least), "leftover that keeps")]


def with_notes(
    sections: Sequence[Section],
    notes: Sequence[str],
    cautions: list[tuple[str, str, list[str]]],
) -> list[Section]:
    """The sections, then what is to check, then the cautions."""
    return [*sections, notes_section(notes), cautions_section(cautions)]


def notes_section(notes: Sequence[str]) -> Section:
    """What was assumed or is not known; nothing where there is nothing."""
    return Section("To check", (Texts(notes, POINT),)) if notes else Section()


def listed(texts: Iterable[str], width: int) -> list[str]:
    """Each text as a point of a list."""
    return Texts(list(texts), POINT).lines(width)


def cautions_section(cautions: list[tuple[str, str, list[str]]]) -> Section:
    """Each caution with its lines and source, then what they all defer to."""
    return Section("Cautions", caution_parts(cautions), is_caution=True)


def caution_parts(cautions: list[tuple[str, str, list[str]]]) -> tuple[Texts, ...]:
    """The same without the head."""
    texts = [
        f"{', '.join(ids)}: {text} [{source}]" if ids else f"{text} [{source}]"
        for text, source, ids in cautions
    ]
    return Texts(texts, POINT), Texts((_core.caution_footing(),), NOTE)


def conversion_section(given: str, result: Conversion) -> Section:
    """The result, its spread, and the facts on the way; ``given`` stands in front, where known."""
    answer = _shown(result.amount)
    spreads = []
    if result.low != result.high:
        spreads.append(f"spread: {result.low.told} to {result.high.told} (worst case)")
    if (result.rss_low, result.rss_high) != (result.low, result.high):
        low, high = result.rss_low.told, result.rss_high.told
        spreads.append(f"spread: {low} to {high} (root-sum-square)")
    line = f"{given} = {answer}" if given else answer
    return Section("", (Texts((line,)), Texts(spreads, NOTE), *facts_parts(result.facts)))


def facts_parts(facts: Iterable[UsedFact]) -> list[Texts]:
    """The facts on the way, each with its source and what stands beside it."""
    parts = []
    for fact in facts:
        sign = "/" if fact.divides else "*"
        parts.append(Texts((f"{sign} {fact.value}   [{fact.source}]",), NOTE))
        parts.append(Texts([str(other) for other in fact.beside], NOTE * 2))
    return parts


def _shown(amount: Quantity) -> str:
    """The exact figure; with its decimal beside it where it is a long fraction."""
    exact = str(amount)
    if "/" not in _core.exact_text(amount.value):
        return exact
    return f"{exact} (≈ {_core.fixed_text(amount.value, 3)} {amount.unit})"


def portions_text(recipe: Recipe) -> str:
    """``40 portions``."""
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


def need_of(need: Quantity) -> str:
    """With its stage; the exact one beside it where it is rounded."""
    return told_of(need, f"{need.told} {need.stage}")


def told_of(amount: Quantity, told: str = "") -> str:
    """An amount for people, with the exact one beside it where that was rounded."""
    told = told or amount.told
    return Figure(told, exact_of(amount)) if amount.told.startswith(ABOUT) else told


def exact_of(amount: Quantity) -> str:
    """The exact amount, in the unit in which it is told where that says which unit it is."""
    unit = amount.told.removeprefix(ABOUT).strip().partition(" ")[2]
    if not unit:
        return str(amount)
    try:
        return str(amount.to(unit))
    except Error:  # a cup of no measures in particular
        return str(amount)


def packs_text(packs: list[tuple[int, str]]) -> str:
    """``2 x 1 kg + 1 x 500 g``."""
    return " + ".join(f"{count} x {pack}" for count, pack in packs) or "none"


def _left(row: ShoppingRow) -> str:
    if not row.leftover:
        return "none"
    if not row.keeps:
        return told_of(row.leftover, f"{row.leftover.told} thrown")
    days = f" {row.keeps_days} days" if row.keeps_days else ""
    return told_of(row.leftover, f"{row.leftover.told} kept{days}")


def money_of(money: Quantity, lead: str = "") -> str:
    """With its code, and the exact one beside it where it is rounded."""
    bare = bare_money(money, lead)
    told = lead + money.told_money
    return Figure(told, bare.exact) if isinstance(bare, Figure) else told


def bare_money(money: Quantity, least: str = "") -> str:
    """Without its code, which the column's head names; the exact one beside it where rounded."""
    told = money.told_money.split(" ")[0]
    exact = Fraction(told) == money.value
    return least + told if exact else Figure(least + told, f"{least}{money}")


def at_least(unpriced: bool) -> str:
    """Before a total that lines without a price are missing from."""
    return "at least " if unpriced else ""


def _money_of_portion(costing: Costing, name: str) -> Quantity:
    return costing.per_portion(name) * _core.quantity(1, "portion")


def priced_in(costing: Costing | Basket) -> str:
    """The head of a column of prices."""
    return price_head(costing.till)


def price_head(money: Quantity) -> str:
    """The head of a column of prices like this one."""
    return "price" if money.unit == "XXX" else money.unit


def error_lines(error: Error, paint: Callable[[str, str], str] = lambda text, _: text) -> list[str]:
    """Place, message and code; the hint below. ``paint`` is given a text and what it is."""
    place = f"{error.place}: " if error.place else ""
    hint = [paint(f"  {error.hint}", "hint")] if error.hint else []
    return [f"{place}{error.message} {paint(f'[{error.code}]', 'code')}", *hint]


def in_currency(currency: str) -> str:
    """For a title; nothing where the prices name none."""
    return "" if currency == "XXX" else f", in {currency}"
