"""``scalepan foods``: what foods there are, what they are called, and the facts about them."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan.command_line.inputs import catalog_asked
from scalepan.command_line.sections import NOTE, Section, Table, Texts, report_lines
from scalepan.command_line.tables import terminal_width
from scalepan.errors import make_error

if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from scalepan._core import Catalog, Fact
    from scalepan.command_line.output import Output


class _Food(NamedTuple):
    """``names`` and ``near``: each further name, and where it is used."""

    id: str
    name: str
    plural: str
    names: dict[str, list[str]]
    near: dict[str, list[str]]
    words: str


def foods_command(options: argparse.Namespace) -> Output:
    """All foods by their names, or those that all words begin a word of, with their facts."""
    catalog = catalog_asked(options)
    found = [food for food in _foods(catalog) if _has_all(food, options.words)]
    if not found:
        name = " ".join(options.words)
        near = catalog.nearest(name)
        hint = f"nearest: {', '.join(near)}; " if near else ""
        hint += "a food of your own needs a table with a column food: --foods FILE"
        raise make_error("food.unknown", f'no food is called "{name}"', hint)
    document = {"foods": [_document(food, catalog.facts(food.id)) for food in found]}
    sections = _with_facts(found, catalog) if options.words else [_list(found)]
    return document, report_lines(sections, terminal_width())


def _foods(catalog: Catalog) -> list[_Food]:
    foods = {
        row[0]: _Food(row[0], row[1], row[2], {}, {}, f"{row[0].replace('_', ' ')}\n{row[1]}")
        for row, *_ in catalog.food_rows
    }
    for name, plural, region, id, near in catalog.name_rows:
        food = foods[id]
        foods[id] = food._replace(words=f"{food.words}\n{name}\n{plural}")
        if name != food.name:
            (food.near if near else food.names).setdefault(name, []).append(region)
    return sorted(foods.values(), key=lambda food: food.name.lower())


def _has_all(food: _Food, words: Sequence[str]) -> bool:
    """Whether each word begins one of one of its names."""
    wanted = [re.compile(rf"\b{re.escape(word)}", re.IGNORECASE) for word in words]
    return any(all(word.search(name) for word in wanted) for name in food.words.split("\n"))


def _list(foods: Sequence[_Food]) -> Section:
    rows = [(food.plural, _told(food.names), _told(food.near)) for food in foods]
    note = f"{len(foods)} foods; scalepan foods WORD shows the facts about some"
    return Section("", (Table(("food", "also called", "near"), rows), Texts((note,), NOTE)))


def _with_facts(foods: Sequence[_Food], catalog: Catalog) -> list[Section]:
    sections = []
    for food in foods:
        texts = [
            f"{lead}: {told}"
            for lead, names in (("also called", food.names), ("near", food.near))
            if (told := _told(names))
        ]
        rows = [(fact.id, str(fact.value), fact.source) for fact in catalog.facts(food.id)]
        body = Table(("fact", "value", "source"), rows) if rows else Texts(("no facts",), NOTE)
        sections.append(Section(f"{food.plural} ({food.id})", (Texts(texts, NOTE), body)))
    return sections


def _told(names: dict[str, list[str]]) -> str:
    """``cornflour (GB, AU)``."""
    parts = ((name, ", ".join(filter(None, regions))) for name, regions in names.items())
    return ", ".join(f"{name} ({regions})" if regions else name for name, regions in parts)


def _document(food: _Food, facts: Sequence[Fact]) -> dict[str, Any]:
    return {
        "food": food.id,
        "name": food.name,
        "plural": food.plural,
        "names": list(food.names),
        "near": list(food.near),
        "facts": [
            {
                "fact": fact.id,
                "kind": fact.kind,
                "state": fact.state or None,
                "size": fact.size or None,
                "value": str(fact.value),
                "low": None if fact.low is None else str(fact.low),
                "high": None if fact.high is None else str(fact.high),
                "source": fact.source,
                "layer": fact.layer,
            }
            for fact in facts
        ],
    }
