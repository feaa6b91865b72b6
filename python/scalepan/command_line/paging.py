"""The page that hands a dish over, and its document."""

from __future__ import annotations

from itertools import zip_longest
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line import documents
from scalepan.command_line.report import (
    caution_lines,
    joined,
    listed,
    stage_name,
    title_text,
    with_headings,
)
from scalepan.command_line.tables import table, text_width, wrapped
from scalepan.measuring import measure_out_lines

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import Line, MadeBase, MeasureSet, MethodStep, Quantity, Recipe
    from scalepan.measuring import MeasuredLine

# Notes of lines that no set could measure anyway.
_AS_IT_IS = ("counted", "no amount")
_WIDEST_AMOUNT = 30


def page_lines(
    recipe: Recipe,
    width: int,
    *,
    volumes: MeasureSet | str | None = None,
    weights: MeasureSet | str | None = None,
    within: Quantity | str | Fraction | None = None,
) -> list[str]:
    """As ``scalepan.hand_over`` has it."""
    return _Page(recipe, width, {"volumes": volumes, "weights": weights, "within": within}).lines()


def page_document(recipe: Recipe) -> dict[str, Any]:
    """Everything on the page, exact, for ``--json``."""
    return {
        "recipe": documents.recipe_document(recipe),
        "method": documents.method_document(recipe),
        "bases": [
            {
                "name": base.name,
                "batches": str(base.batches),
                "recipe": documents.recipe_document(base.recipe),
                "method": documents.method_document(base.recipe),
            }
            for base in recipe.bases
        ],
        "tested": recipe.tested,
        "times": recipe.times_remark,
        "label": documents.label_document(_core.label(recipe)),
        "cautions": documents.cautions_document(_core.cautions(recipe)),
        "to_check": _core.lines_to_check(recipe),
    }


class _Page:
    def __init__(self, recipe: Recipe, width: int, sets: dict[str, Any]) -> None:
        self._recipe = recipe
        self._width = width
        self._sets = sets
        self._by_measures = bool(sets["volumes"] or sets["weights"])
        self._not_measured: list[str] = []

    def lines(self) -> list[str]:
        recipe = self._recipe
        bases = [self._base(base) for base in recipe.bases]
        return joined(
            [
                [title_text(recipe), *self._wrapped(_size_text(recipe))],
                *bases,
                self._ingredients(recipe),
                self._method(recipe),
                self._times(),
                self._label(),
                ["Cautions", *caution_lines(_core.safety_cautions(recipe), self._width)],
                self._to_check(),
            ]
        )

    def _base(self, base: MadeBase) -> list[str]:
        uses = ", ".join(f"{use.amount.told} for {use.line}" for use in base.uses)
        title = f"Make first: {title_text(base.recipe)} ({uses})"
        lines = [*wrapped(title, self._width), *self._wrapped(_size_text(base.recipe))]
        lines += self._ingredients(base.recipe, f"{base.name}.")
        return lines + self._method(base.recipe)

    def _ingredients(self, recipe: Recipe, prefix: str = "") -> list[str]:
        measured = self._measured(recipe.lines)
        if not self._by_measures:
            rows: list[tuple[str, ...]] = [(line.told, _stage(line)) for line in recipe.lines]
            header: tuple[str, ...] = ("ingredients", "weighed or counted")
        else:
            rows = [(m.told, _exact(m), _stage(m.line)) for m in measured]
            header = ("ingredients", "exact", "weighed or counted")
            self._not_measured += [
                f"{prefix}{m.line.id}: left as it is written: {m.note}"
                for m in measured
                if m.note and m.note not in _AS_IT_IS
            ]
        return table(header, with_headings(recipe.lines, rows), right=(), width=self._width)

    def _method(self, recipe: Recipe) -> list[str]:
        steps = recipe.method
        if not steps:
            return []
        amounts = [[_used(m) for m in self._measured(step.uses)] for step in steps]
        widest = max((text_width(text) for texts in amounts for text in texts), default=0)
        narrow = min(widest, _WIDEST_AMOUNT)
        room = self._width - narrow - 4
        rows: list[tuple[str, str]] = []
        for number, (step, texts) in enumerate(zip(steps, amounts, strict=True), 1):
            left = [line for text in texts for line in wrapped(text, narrow)]
            right = wrapped(_step_text(step, recipe), room, f"{number}. ")
            rows += zip_longest(left, right, fillvalue="")
        return table(("amounts", "method"), rows, right=(), width=self._width)

    def _times(self) -> list[str]:
        remark = self._recipe.times_remark
        if not remark and any(base.recipe.times_remark for base in self._recipe.bases):
            remark = "times of the bases are not scaled"
        if not remark:
            return []
        return wrapped(f"{_sentence(remark)}: {_core.times_practice()}.", self._width)

    def _label(self) -> list[str]:
        lines = ["Label"]
        for text in _core.label(self._recipe).text.split("\n"):
            lines += wrapped(text, self._width, "  ")
        return lines

    def _to_check(self) -> list[str]:
        notes = [*_core.lines_to_check(self._recipe), *self._not_measured]
        return ["To check", *listed(notes, self._width)] if notes else []

    def _measured(self, lines: list[Line]) -> list[MeasuredLine]:
        return measure_out_lines(lines, **self._sets)

    def _wrapped(self, text: str) -> list[str]:
        return wrapped(text, self._width)


def _size_text(recipe: Recipe) -> str:
    """Tested sizes, batch, portion and loads."""
    parts = [recipe.tested]
    for batch, when in ((recipe.batch, ""), (recipe.raw_batch, " before cooking")):
        if batch is not None:
            portion = batch * (1 / recipe.made)
            parts.append(f"batch {batch.told}{when}, {portion.told} a portion")
            break
    if recipe.made != recipe.portions:
        parts.append(f"{_core.exact_text(recipe.made)} portions made")
    if recipe.loads > 1:
        parts.append(f"{recipe.loads} loads: what a load holds is done anew for each")
    return _sentence(". ".join(_sentence(part) for part in parts)) + "."


def _step_text(step: MethodStep, recipe: Recipe) -> str:
    load = ""
    if step.each_load and recipe.loads > 1:
        load = f"for each of the {recipe.loads} loads; the amounts are for all"
    behind = ", ".join(part for part in (step.at, step.time, load) if part)
    return f"{step.text} {behind}." if behind else step.text


def _stage(line: Line) -> str:
    return stage_name(line.stage) if line.amount is not None else "left to the cook"


def _exact(line: MeasuredLine) -> str:
    """The exact amount, where the measures show another."""
    amount = line.line.amount
    if line.measured is None or amount is None or amount.told == line.measured.text:
        return ""
    return amount.told


def _used(line: MeasuredLine) -> str:
    return f"≈ {line.told}" if line.measured is not None and line.measured.error else line.told


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]
