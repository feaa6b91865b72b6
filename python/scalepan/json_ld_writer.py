"""A recipe as schema.org ``Recipe`` JSON-LD, with exact amounts."""

from __future__ import annotations

import json
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.report import ABOUT
from scalepan.errors import Error, make_error
from scalepan.recipe_writer import toml_of
from scalepan.recipes import Library

if TYPE_CHECKING:
    from collections.abc import Iterator, Sequence

    from scalepan._core import Line, MethodStep, Quantity, Recipe, WrittenLine


def json_ld_text(recipe: Recipe) -> str:
    """As ``scalepan.json_ld``."""
    made = [*(base.recipe for base in recipe.bases), recipe]
    document: dict[str, Any] = {
        "@context": "https://schema.org",
        "@type": "Recipe",
        "name": recipe.name,
        "recipeYield": f"{_core.exact_text(recipe.made)} servings",
        "recipeIngredient": [text for each in made for text in _ingredients(each, recipe)],
    }
    if steps := [step for each in made for step in _steps(each, recipe)]:
        document["recipeInstructions"] = steps
    text = json.dumps(document, ensure_ascii=False, indent=2)
    # So that the text may stand inside a page: no name ends its script.
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _ingredients(made: Recipe, whole: Recipe) -> Iterator[str]:
    """Headings, and below each its lines; those of a base, and then of the dish, have its name."""
    own = made.name if whole.bases else ""
    above = ""
    for line in made.lines:
        if line.takes_from is not None:
            continue
        text = _line_text(line, made)
        heading = line.heading or own
        if heading != above and not (heading and text.startswith(f"{heading}:")):
            yield from [f"{heading}:"] if heading else []
            above = heading
        yield text


def _line_text(line: Line, recipe: Recipe) -> str:
    """The first of several ways to say it that is read back as the same."""
    for way in _ways(line, recipe):
        for text in (way, f"{way} (optional)") if line.optional else (way,):
            if _reads_back(text, line, recipe):
                return text
    message = f'no text says the line {line.id} exactly: "{line.told}"'
    raise make_error("recipe.json_ld", message, "name its food and amount more plainly")


def _ways(line: Line, recipe: Recipe) -> Iterator[str]:
    if line.amount == line.written:
        yield line.text.partition(" | ")[0]
    if line.amount is None:
        yield line.text
        return
    yield from _in_containers(line, line.amount, recipe)
    if ABOUT not in line.told:
        yield line.told
    unit = _told_unit(line.amount)
    amount = _exact(line.amount, unit, recipe.measures)
    if line.low is not None and line.low != line.amount:
        amount = f"{_exact(line.low, unit, recipe.measures)} to {amount}"
    noun = _noun(line.text, recipe) if unit.startswith("piece") else unit
    amount += f" {noun}" if noun else ""
    end = f", {line.preparation}" if line.preparation else ""
    size = f" {line.size}" if line.size else ""
    part = f"{line.part} of " if line.part else ""
    yield f"{part}{amount}{size} {line.food}{end}"
    yield f"{amount}{size} {line.food}{end}"
    yield f"{amount} {line.food}"
    yield f"{amount} {line.food}, {line.stage}"


def _in_containers(line: Line, amount: Quantity, recipe: Recipe) -> Iterator[str]:
    """``20 x 400 g tins white beans, drained``, where the line is written so."""
    read = _read(line.text.partition(" | ")[0], recipe)
    if read is None or not read.container_size or line.written is None:
        return
    count = (read.high or 0) * (amount / line.written).value
    end = f", {line.preparation}" if line.preparation else ""
    end += f" ({line.note})" if line.note else ""
    end += " (optional)" if line.optional else ""
    start = f"{'about ' if read.about else ''}{_core.mixed_text(count)} x {read.container_size}"
    noun = "" if read.unit == "piece" else f" {read.unit}"
    for plural in ("s", "es", "") if noun and count > 1 else ("",):
        yield f"{start}{noun}{plural} {line.food}{end}"


def _noun(text: str, recipe: Recipe) -> str:
    """What a count counts beside the food itself: ``clove``, ``pinch``; mostly empty."""
    read = _read(text, recipe)
    return "" if read is None or read.unit == "piece" else read.unit


def _read(text: str, recipe: Recipe) -> WrittenLine | None:
    """What the line says; None of one that says nothing by itself, as a percentage of flour."""
    try:
        return _core.read_line((text, "", 1, 1), recipe.measures, "", recipe.catalog)
    except Error:
        return None


def _told_unit(amount: Quantity) -> str:
    """``cups`` of ``2 cups``."""
    told = amount.told.removeprefix(ABOUT).strip().lstrip("0123456789 ./")
    return told or amount.unit


def _exact(amount: Quantity, unit: str, measures: str) -> str:
    """The number, in the unit."""
    try:
        return _core.mixed_text(amount.to(unit, measures).value)
    except Error:  # a noun that counts
        return _core.mixed_text(amount.value)


def _reads_back(text: str, line: Line, recipe: Recipe) -> bool:
    data: dict[str, Any] = {"name": "x", "serves": 1, "lines": [text]}
    if recipe.measures:
        data["measures"] = recipe.measures
    try:
        (read,) = Library(recipe.catalog).parse(toml_of(data), "").lines
    except (Error, ValueError):
        return False
    return _meant(read, recipe) == _meant(line, recipe)


def _meant(line: Line, recipe: Recipe) -> tuple[object, ...]:
    is_count = line.amount is not None and line.amount.unit.startswith("piece")
    noun = _noun(line.text, recipe) if is_count else ""
    return (line.food_id or line.food, line.amount, line.low, line.stage, noun, line.optional)


def _steps(made: Recipe, whole: Recipe) -> list[dict[str, Any]]:
    steps = [{"@type": "HowToStep", "text": _step_text(step)} for step in made.method]
    if made is whole or not steps:
        return steps
    return [{"@type": "HowToSection", "name": made.name, "itemListElement": steps}]


def _step_text(step: MethodStep) -> str:
    beside: Sequence[str] = [text for text in (step.at, step.time) if text]
    return f"{step.text} ({', '.join(beside)})" if beside else step.text
