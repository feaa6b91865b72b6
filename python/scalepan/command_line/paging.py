"""The page that hands a dish over, and its document."""

from __future__ import annotations

from itertools import zip_longest
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line import documents
from scalepan.command_line.measuring import NEAR_ENOUGH, measures_meant
from scalepan.command_line.report import (
    base_texts,
    batch_texts,
    caution_parts,
    listed,
    stage_of,
    title_text,
    with_headings,
)
from scalepan.command_line.sections import Section, joined, section_lines
from scalepan.command_line.tables import TIE, bound, table, text_width, wrapped
from scalepan.measure_sets import set_of
from scalepan.measuring import measure_out_lines, share_of

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import Line, MadeBase, MeasureSet, MethodStep, Quantity, Recipe
    from scalepan.measuring import MeasuredLine

# Notes of lines that no set could measure anyway.
_AS_IT_IS = ("", "counted", "no amount")
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
    return _Page(recipe, width, sets, fills).lines()


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
    def __init__(self, recipe: Recipe, width: int, sets: dict[str, Any], fills: str) -> None:
        self._recipe = recipe
        self._fills = fills
        self._width = width
        within = sets["within"]
        self._near = share_of(NEAR_ENOUGH if within is None else within)
        self._sets = {**sets, "within": self._near}
        self._by_measures = bool(sets["volumes"] or sets["weights"])
        self._notes: list[str] = []

    def lines(self) -> list[str]:
        recipe = self._recipe
        bases = [self._base(base) for base in recipe.bases]
        page = joined(
            [
                [title_text(recipe), *self._wrapped(self._size_text()), *self._measures()],
                *bases,
                self._ingredients(recipe),
                self._method(recipe),
                self._times(),
                self._label(),
                self._cautions(),
                self._to_check(),
            ]
        )
        return [line.replace(TIE, " ") for line in page]

    def _measures(self) -> list[str]:
        meant = measures_meant(self._recipe)
        if not self._by_measures:
            return self._wrapped(meant) if meant else []
        named = [
            set_of(given).name
            for given in (self._sets["volumes"], self._sets["weights"])
            if given is not None
        ]
        text = f"By {', '.join(named)}, to within {self._near.told} unless said."
        return self._wrapped(f"{text} {meant}")

    def _base(self, base: MadeBase) -> list[str]:
        title, *facts = base_texts(base)
        lines = [*self._wrapped(title), *self._wrapped(_sentences([*facts, base.recipe.tested]))]
        lines += ["", *self._ingredients(base.recipe, f"{base.name}.")]
        method = self._method(base.recipe)
        return [*lines, "", *method] if method else lines

    def _ingredients(self, recipe: Recipe, prefix: str = "") -> list[str]:
        measured = self._measured(recipe.lines)
        if not self._by_measures:
            rows: list[tuple[str, ...]] = [(line.told, _stage(line)) for line in recipe.lines]
            header: tuple[str, ...] = ("ingredients", "weighed or counted")
        else:
            rows = [(_told(m), self._exact(m), _stage(m.line)) for m in measured]
            header = ("ingredients", "exact", "weighed or counted")
            self._notes += [f"{prefix}{doubt}" for m in measured if (doubt := self._doubt(m))]
            self._notes += [
                f"{prefix}{m.line.id}: as written: {_why_left(m)}"
                for m in measured
                if m.line.takes_from is None and _why_left(m) not in _AS_IT_IS
            ]
        return table(header, with_headings(recipe.lines, rows), right=(), width=self._width)

    def _method(self, recipe: Recipe) -> list[str]:
        steps = recipe.method
        if not steps:
            return []
        amounts = [[self._used(m) for m in self._measured(step.uses)] for step in steps]
        texts = [_step_text(step, recipe) for step in steps]
        widest = max((text_width(text) for step in amounts for text in step), default=0)
        narrowest = min(widest, _NARROWEST_AMOUNT)
        # The shortest of all; of equals the one that breaks the fewest amounts.
        rows = min(
            (
                self._step_rows(amounts, texts, room)
                for room in range(min(widest, _WIDEST_AMOUNT), narrowest - 1, -1)
            ),
            key=len,
        )
        return table(("amounts", "method"), rows, right=(), width=self._width)

    def _step_rows(
        self, amounts: list[list[str]], texts: list[str], room: int
    ) -> list[tuple[str, str]]:
        """Each step's amounts, in so many columns, beside its text."""
        rows: list[tuple[str, str]] = []
        # The table's indent, and the gap between its columns.
        text_room = self._width - room - 4
        for number, (uses, text) in enumerate(zip(amounts, texts, strict=True), 1):
            left = [line for use in uses for line in wrapped(use, room)]
            right = wrapped(text, text_room, f"{number}. ")
            rows += zip_longest(left, right, fillvalue="")
        return rows

    def _times(self) -> list[str]:
        remark = self._recipe.times_remark
        if not remark and any(base.recipe.times_remark for base in self._recipe.bases):
            remark = "times of the bases are not scaled"
        if not remark:
            return []
        return wrapped(f"{_sentence(remark)}: {_core.times_practice()}.", self._width)

    def _label(self) -> list[str]:
        first, *others = _core.label(self._recipe).text.split("\n")
        lines = self._wrapped(f"Label: {first}")
        return lines + [line for text in others for line in self._wrapped(text)]

    def _cautions(self) -> list[str]:
        parts = caution_parts(_core.safety_cautions(self._recipe))
        return section_lines(Section("Cautions", parts), self._width, head=str)

    def _to_check(self) -> list[str]:
        notes = [*_core.lines_to_check(self._recipe), *self._notes]
        return ["To check", *listed(notes, self._width)] if notes else []

    def _measured(self, lines: list[Line]) -> list[MeasuredLine]:
        return measure_out_lines(lines, **self._sets)

    def _far(self, line: MeasuredLine) -> bool:
        """Whether the measures give another amount than a cook would take for the exact one."""
        out = line.measured
        return out is not None and _core.quantity(abs(out.error_share)) > self._near

    def _doubt(self, line: MeasuredLine) -> str:
        return "" if line.too_large else line.doubt(self._recipe.rounding)

    def _exact(self, line: MeasuredLine) -> str:
        """The exact amount, where the measures show another."""
        amount = line.line.amount
        out = line.measured
        if out is None or amount is None or line.too_large or amount.told == out.text:
            return ""
        return bound(f"{amount.told}, {out.told_share}") if self._far(line) else amount.told

    def _used(self, line: MeasuredLine) -> str:
        text = _told(line)
        return f"≈ {text}" if self._far(line) and text != line.line.told else text

    def _size_text(self) -> str:
        """Tested sizes, batch, portion, loads and pans."""
        recipe = self._recipe
        texts = [recipe.tested, *batch_texts(recipe)]
        if recipe.batch is None:
            texts.append(f"batch weight not known: no weight of {', '.join(recipe.unweighed)}")
        if recipe.tray:
            pans = _core.quantity(recipe.trays * recipe.factor).told
            texts.append(self._fills or f"fills {pans} x {recipe.tray}")
        return _sentences(texts)

    def _wrapped(self, text: str) -> list[str]:
        return wrapped(text, self._width)


def _sentences(texts: list[str]) -> str:
    return " ".join(f"{_sentence(text)}." for text in texts)


def _step_text(step: MethodStep, recipe: Recipe) -> str:
    load = ""
    if step.each_load and recipe.loads > 1:
        load = f"each of {recipe.loads} loads" + ("; the amounts are for all" if step.uses else "")
    behind = ", ".join(bound(part) for part in (step.at, step.time) if part)
    behind = ", ".join(part for part in (behind, load) if part)
    text = step.text.replace(" °", f"{TIE}°")
    return f"{text} {behind}." if behind else text


def _told(line: MeasuredLine) -> str:
    """By the measures, or as it is written where all of them are too large."""
    return line.line.told if line.too_large else line.told


def _why_left(line: MeasuredLine) -> str:
    if line.measured is None:
        return line.note
    return f"{line.measured.measures} are too large for it" if line.too_large else ""


def _stage(line: Line) -> str:
    return stage_of(line) if line.amount is not None else "left to the cook"


def _sentence(text: str) -> str:
    return text[:1].upper() + text[1:]
