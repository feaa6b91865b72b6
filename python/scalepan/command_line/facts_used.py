"""The facts that a recipe's weights go by, each with its source."""

from __future__ import annotations

from itertools import product
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.conversion import convert
from scalepan.errors import FoodError

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import Catalog, Line, Quantity, Recipe
    from scalepan.conversion import UsedFact

_RAW = ("AP", "EP")


def facts_of_weights(recipe: Recipe, catalog: Catalog) -> list[UsedFact]:
    """What the weights of the batch and of the label go by, line by line, those of bases too.

    What a part of a food weighs (``juice of 2 lemons``) and what is taken out is not among them.
    """
    return [
        fact
        for line in recipe.food_lines
        if line.amount is not None and line.food_id is not None
        if not line.part and not line.rule.endswith("taken out")
        for fact in weight_of(line, line.amount, catalog)[1]
    ]


def weight_of(
    line: Line, amount: Quantity, catalog: Catalog
) -> tuple[Quantity | None, tuple[UsedFact, ...]]:
    """The weight as it goes into the pan, and the facts on the way; None where none lead there."""
    stage = "EP" if line.stage in _RAW else line.stage
    # Where no edible share is known, all of it is taken as edible.
    whole = _core.quantity(amount.value, amount.unit.replace(f" {line.stage}", f" {stage}"))
    for start, size in product((amount, whole), _sizes(line, catalog)):
        try:
            found = convert(
                start,
                f"g {stage}",
                food=line.food_id,
                state=line.state or None,
                size=size or None,
                preparation=line.preparation or None,
                catalog=catalog,
            )
        except FoodError:
            continue
        return found.amount, found.facts
    return None, ()


def _sizes(line: Line, catalog: Catalog) -> list[str]:
    """The size of its pieces, and what its words may count instead: ``clove``."""
    sizes = [fact.size for fact in catalog.facts(line.food_id or "") if fact.kind == "piece weight"]
    return [line.size, *(size for size in sizes if size and size in line.text)]


def facts_by_source(facts: Iterable[UsedFact]) -> list[tuple[list[str], str]]:
    """Ids of the facts by their source, each once."""
    ids: dict[str, list[str]] = {}
    for fact in facts:
        known = ids.setdefault(fact.source, [])
        if fact.id not in known:
            known.append(fact.id)
    return [(each, source) for source, each in ids.items()]
