"""The page that hands a dish over, as a terminal has it, and its document."""

from __future__ import annotations

from itertools import zip_longest
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line import documents
from scalepan.command_line.page_words import page_words, sentence
from scalepan.command_line.report import listed
from scalepan.command_line.sections import Section, joined, section_lines
from scalepan.command_line.tables import TIE, table, text_width, wrapped

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence
    from fractions import Fraction

    from scalepan._core import MeasureSet, Quantity, Recipe
    from scalepan.command_line.page_words import BaseWords, DishWords, PageWords, StepWords

_NARROWEST_AMOUNT, _WIDEST_AMOUNT = 18, 30


def page_lines(
    recipe: Recipe,
    width: int,
    *,
    volumes: MeasureSet | str | None = None,
    weights: MeasureSet | str | None = None,
    within: Quantity | str | Fraction | None = None,
    fills: str = "",
) -> list[str]:
    """As ``scalepan.hand_over`` has it; ``fills`` tells the trays that were asked for."""
    sets = {"volumes": volumes, "weights": weights, "within": within}
    return _Page(page_words(recipe, sets, fills), width).lines()


def page_document(recipe: Recipe) -> dict[str, Any]:
    """Everything on the page, exact, for ``--json``."""
    return {
        "recipe": documents.recipe_document(recipe),
        "tested": recipe.tested,
        "times": recipe.times_remark,
        "label": documents.label_document(_core.label(recipe)),
        "cautions": documents.cautions_document(_core.cautions(recipe)),
        "to_check": _core.lines_to_check(recipe),
    }


class _Page:
    def __init__(self, words: PageWords, width: int) -> None:
        self._words = words
        self._width = width

    def lines(self) -> list[str]:
        words = self._words
        page = joined(
            [
                [words.title, *self._wrapped(_sentences(words.size), words.measures)],
                *(self._base(base) for base in words.bases),
                self._ingredients(words.dish),
                self._method(words.dish.steps),
                self._wrapped(words.times),
                self._wrapped(f"Label: {words.label[0]}", *words.label[1:]),
                section_lines(Section("Cautions", words.cautions), self._width, head=str),
                self._to_check(),
            ]
        )
        return [line.replace(TIE, " ") for line in page]

    def _base(self, base: BaseWords) -> list[str]:
        lines = self._wrapped(base.title, _sentences(base.facts))
        lines += ["", *self._ingredients(base.dish)]
        method = self._method(base.dish.steps)
        return [*lines, "", *method] if method else lines

    def _ingredients(self, dish: DishWords) -> list[str]:
        return table(dish.header, dish.rows, right=(), width=self._width)

    def _method(self, steps: Sequence[StepWords]) -> list[str]:
        if not steps:
            return []
        widest = max((text_width(text) for step in steps for text in step.uses), default=0)
        narrowest = min(widest, _NARROWEST_AMOUNT)
        # The shortest of all; of equals the one that breaks the fewest amounts.
        rows = min(
            (
                self._step_rows(steps, room)
                for room in range(min(widest, _WIDEST_AMOUNT), narrowest - 1, -1)
            ),
            key=len,
        )
        return table(("amounts", "method"), rows, right=(), width=self._width)

    def _step_rows(self, steps: Sequence[StepWords], room: int) -> list[tuple[str, str]]:
        """Each step's amounts, in so many columns, beside its text."""
        rows: list[tuple[str, str]] = []
        # The table's indent, and the gap between its columns.
        text_room = self._width - room - 4
        for number, step in enumerate(steps, 1):
            left = [line for use in step.uses for line in wrapped(use, room)]
            right = wrapped(step.told, text_room, f"{number}. ")
            rows += zip_longest(left, right, fillvalue="")
        return rows

    def _to_check(self) -> list[str]:
        notes = self._words.to_check
        return ["To check", *listed(notes, self._width)] if notes else []

    def _wrapped(self, *texts: str) -> list[str]:
        return [line for text in texts for line in wrapped(text, self._width)]


def _sentences(texts: Iterable[str]) -> str:
    return " ".join(f"{sentence(text)}." for text in texts)
