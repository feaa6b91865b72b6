"""What ``--json`` prints: one document a command, every number exact as text ``n/d``."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.costs import COSTS

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import (
        Basket,
        Costing,
        Label,
        LabelItem,
        Line,
        Loads,
        MadeBase,
        Quantity,
        Recipe,
        ShoppingRow,
        Why,
    )
    from scalepan.conversion import Conversion, UsedFact
    from scalepan.errors import Error

SCHEMA = "scalepan/1"


def recipe_document(recipe: Recipe) -> dict[str, Any]:
    """The recipe at its size."""
    return {
        "name": recipe.name,
        "portions": str(recipe.portions),
        "made": str(recipe.made),
        "factor": str(recipe.factor),
        "serves": str(recipe.serves),
        "tested_at": [str(size) for size in recipe.tested_at],
        "batch": quantity_or_null(recipe.batch),
        "batch_weight": quantity_or_null(recipe.batch_weight),
        "raw_batch": quantity_or_null(recipe.raw_batch),
        "loads": None if (split := recipe.load_split()) is None else loads_document(split),
        "lines": [_line(line) for line in recipe.lines],
        "method": _method(recipe),
        "bases": [base_document(base) for base in recipe.bases],
    }


def loads_document(split: Loads) -> dict[str, Any]:
    """Pans, trays or ovens full."""
    return {
        "text": split.text,
        "count": split.count,
        "full": split.full,
        "capacity": quantity_document(split.capacity),
        "each": quantity_document(split.each),
        "short": quantity_document(split.short),
        "parts": [{"count": count, "each": quantity_document(each)} for count, each in split.parts],
    }


def _method(recipe: Recipe) -> list[dict[str, Any]]:
    return [
        {
            "text": step.text,
            "uses": [_line(line) for line in step.uses],
            "at": step.at,
            "time": step.time,
            "each_load": step.each_load,
        }
        for step in recipe.method
    ]


def label_document(label: Label) -> dict[str, Any]:
    """The draft of the label."""
    return {
        "text": label.text,
        "items": [_label_item(item) for item in label.items],
        "allergens_eu": label.allergens_eu,
        "allergens_us": label.allergens_us,
        "unknown": label.unknown,
    }


def shopping_document(costing: Costing | Basket) -> dict[str, Any]:
    """The packs to buy."""
    return {
        "shopping": [shopping_row_document(row) for row in costing.shopping],
        "till": quantity_document(costing.till),
        "deposit": quantity_document(costing.deposit),
        "unpriced": costing.unpriced,
        "to_check": costing.to_check,
    }


def costs_document(costing: Costing) -> dict[str, Any]:
    """The four costs, in all and a portion."""
    return {
        "costs": {name: quantity_document(getattr(costing, name)) for name in COSTS},
        "opening": quantity_document(costing.opening),
        "closing": quantity_document(costing.closing),
        "per_portion": {name: quantity_document(costing.per_portion(name)) for name in COSTS},
        "at_least": bool(costing.unpriced),
    }


def cautions_document(cautions: list[tuple[str, str, list[str]]]) -> list[dict[str, Any]]:
    """Each caution with its source and the lines it is about."""
    return [{"text": text, "source": source, "lines": ids} for text, source, ids in cautions]


def why_document(why: Why) -> dict[str, Any]:
    """The derivation as a tree."""
    return {
        "name": why.name,
        "figure": why.figure,
        "how": why.how,
        "source": why.source,
        "parts": [why_document(part) for part in why.parts],
    }


def conversion_document(result: Conversion) -> dict[str, Any]:
    """The amount, its spread, and the facts on the way."""
    return {
        "amount": quantity_document(result.amount),
        "low": quantity_document(result.low),
        "high": quantity_document(result.high),
        "rss_low": quantity_document(result.rss_low),
        "rss_high": quantity_document(result.rss_high),
        "facts": facts_document(result.facts),
    }


def facts_document(facts: Iterable[UsedFact]) -> list[dict[str, Any]]:
    """The facts that a conversion went through, in their order."""
    return [
        {
            "fact": fact.id,
            "value": quantity_document(fact.value),
            "divides": fact.divides,
            "source": fact.source,
            "beside": [
                {
                    "fact": other.id,
                    "value": quantity_document(other.value),
                    "source": other.source,
                }
                for other in fact.beside
            ],
        }
        for fact in facts
    ]


def error_document(error: Error) -> dict[str, Any]:
    """Code, message, place and hint."""
    return {
        "code": error.code,
        "message": error.message,
        "place": error.place,
        "hint": error.hint,
    }


def quantity_document(q: Quantity) -> dict[str, str]:
    """Value, unit, and the short text for people."""
    told = q.told_money if q.dimension.startswith("money") else q.told
    return {"value": str(q.value), "unit": q.unit, "told": told}


def quantity_or_null(q: Quantity | None) -> dict[str, str] | None:
    """The same; null for nothing."""
    return None if q is None else quantity_document(q)


def base_document(base: MadeBase) -> dict[str, Any]:
    """A base at the size all its uses need."""
    return {
        "name": base.name,
        "batches": str(base.batches),
        "uses": [
            {
                "line": use.line,
                "amount": quantity_document(use.amount),
                "batches": str(use.batches),
            }
            for use in base.uses
        ],
        "recipe": recipe_document(base.recipe),
    }


def _line(line: Line) -> dict[str, Any]:
    return {
        "id": line.id,
        "text": line.text,
        "told": line.told,
        "food": line.food,
        "food_id": line.food_id,
        "heading": line.heading,
        "takes_from": line.takes_from,
        "amount": quantity_or_null(line.amount),
        "exact": quantity_or_null(line.exact),
        "stage": line.stage,
        "rule": line.rule,
        "optional": line.optional,
    }


def _label_item(item: LabelItem) -> dict[str, Any]:
    return {
        "name": item.name,
        "grams": None if item.grams is None else str(item.grams),
        "weighed": item.weighed,
        "allergens": item.allergens,
        "check_pack": item.check_pack,
        "optional": item.optional,
        "parts": [_label_item(part) for part in item.parts],
    }


def shopping_row_document(row: ShoppingRow) -> dict[str, Any]:
    """The packs of one item."""
    return {
        "item": row.item,
        "lines": row.lines,
        "need": quantity_document(row.need),
        "from_stock": quantity_document(row.from_stock),
        "packs": packs_document(row.packs),
        "terms": row.terms,
        "price": quantity_document(row.price),
        "deposit": quantity_document(row.deposit),
        "leftover": quantity_document(row.leftover),
        "keeps": row.keeps,
        "keeps_days": row.keeps_days,
        "shops": row.shops,
    }


def packs_document(packs: list[tuple[int, str]]) -> list[dict[str, Any]]:
    """How many of which packs."""
    return [{"count": count, "pack": pack} for count, pack in packs]
