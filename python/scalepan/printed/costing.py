"""The costing page: the four costs, those of each line, and what they go by."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.command_line.page_words import sentence
from scalepan.command_line.report import (
    bare_money,
    batch_texts,
    costs_section,
    notes_section,
    priced_in,
    shopping_section,
    title_text,
    with_headings,
)
from scalepan.command_line.sections import Figure, Section, Table
from scalepan.command_line.stocking import left_section
from scalepan.costs import COSTS, line_costs
from scalepan.display.markup import together
from scalepan.display.offers import offers_table
from scalepan.printed.blocks import head, reports, signature, small_print, sources_told
from scalepan.printed.offers_bought import offers_bought
from scalepan.printing import Part

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from scalepan._core import Costing, Line, Why


def costing_part(costing: Costing, remarks: Sequence[str] = ()) -> Part:
    """All of a costing's figures, exact ones beside those that are rounded."""
    recipe = costing.recipe_now
    title = title_text(recipe)
    texts = [recipe.tested, *remarks, *batch_texts(recipe)]
    body = together(
        [
            head(title, [f"{sentence(text)}." for text in texts]),
            reports(costs_section(costing)),
            small_print("Exactly", _exactly(costing)),
            reports(
                _lines_section(costing),
                shopping_section(costing),
                left_section(costing),
                _overrides_section(costing),
                notes_section(costing.to_check),
                _prices_section(costing),
            ),
            small_print("Facts used", sources_told(_facts(costing))),
            signature("Costed"),
        ]
    )
    return Part(title, "costing page", body)


def _exactly(costing: Costing) -> list[str]:
    """What is rounded in the table of costs, since on paper nothing can be pointed at."""
    table = costs_section(costing).parts[0]
    assert isinstance(table, Table)
    heads = {1: "", 2: " a portion"}
    return [
        f"{row[0]}{each} {cell.exact}"
        for row in table.rows
        for place, each in heads.items()
        if isinstance(cell := row[place], Figure)
    ]


def _lines_section(costing: Costing) -> Section:
    """Each line's part of the four costs."""
    lines = costing.recipe_now.food_lines
    rows = [(line.told, *_costs_of(line, costing)) for line in lines]
    table = Table(("line", *COSTS), with_headings(lines, rows), (1, 2, 3, 4))
    return Section(f"Lines, in {priced_in(costing)}", (table,))


def _costs_of(line: Line, costing: Costing) -> list[str]:
    costs = line_costs(costing, line.id)
    if not costs:
        return ["not priced" if line.amount is not None else "", *[""] * (len(COSTS) - 1)]
    return [bare_money(cost) for cost in costs.values()]


def _overrides_section(costing: Costing) -> Section:
    """Figures that were put in the place of others, each with its reason."""
    made = [given for verb, given in costing.sheet.changes().listed() if verb == "override"]
    if not made:
        return Section()
    keys = ("name", "value", "why", "who", "when")
    rows = [[str(each[key]) for key in keys] for each in made]
    return Section("Overrides", (Table(("figure", "set to", "why", "who", "when"), rows),))


def _prices_section(costing: Costing) -> Section:
    offers = offers_bought(costing)
    return Section("Prices", (offers_table(offers),)) if offers else Section()


def _facts(costing: Costing) -> list[tuple[list[str], str]]:
    """Figures by the source of the fact they are, each source once."""
    names: dict[str, list[str]] = {}
    for row in costing.shopping:
        for line in row.lines:
            for figure in _facts_of(costing.explain(f"{line}.buy")):
                known = names.setdefault(figure.source, [])
                if figure.name not in known:
                    known.append(figure.name)
    return [(each, source) for source, each in names.items()]


def _facts_of(why: Why) -> Iterator[Why]:
    """Figures that come of a food alone, and of a source."""
    if why.source and any(part.name.endswith(".food") for part in why.parts):
        yield why
    for part in why.parts:
        yield from _facts_of(part)
