"""What the page that hands a dish over says; a terminal and a printed page set it each."""

from __future__ import annotations

import re
from dataclasses import dataclass
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.facts_used import facts_by_source, facts_of_weights
from scalepan.command_line.measuring import NEAR_ENOUGH, measures_meant
from scalepan.command_line.report import (
    ABOUT,
    base_texts,
    batch_texts,
    caution_parts,
    name_of,
    stage_of,
    title_text,
    with_headings,
)
from scalepan.command_line.tables import TIE, bound
from scalepan.measure_sets import set_of
from scalepan.measuring import measure_out_lines, share_of

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Line, MadeBase, MethodStep, Recipe
    from scalepan.command_line.sections import Row, Texts
    from scalepan.conversion import UsedFact
    from scalepan.measuring import MeasuredLine

# Notes of lines that no set could measure anyway.
_AS_IT_IS = ("", "counted", "no amount")
_NUMBER_IN_FRONT = re.compile(rf"(?:{ABOUT} )?\d[\d/. ]*(?= )")


class Amounted(str):
    """An ingredient as a cook is told it; it begins with its amount, where it has one."""

    amount: str

    def __new__(cls, told: str, amount: str) -> Amounted:
        text = super().__new__(cls, told)
        text.amount = amount
        return text


@dataclass(frozen=True)
class StepWords:
    """A step: the amounts it takes, what to do, and how hot, how long and in which loads."""

    uses: Sequence[Amounted]
    text: str
    behind: str

    @property
    def told(self) -> str:
        return f"{self.text} {self.behind}." if self.behind else self.text


@dataclass(frozen=True)
class DishWords:
    """Ingredients under their heads, the first column ``Amounted``, and the method."""

    header: Row
    rows: Sequence[Row]
    steps: Sequence[StepWords]


@dataclass(frozen=True)
class BaseWords:
    """A base that is made first: what it makes, and for what."""

    title: str
    facts: Sequence[str]
    dish: DishWords


@dataclass(frozen=True)
class PageWords:
    """The whole page.

    Attributes:
        size: tested sizes, batch, portion, loads and pans, a text each.
        measures: the sets it is told by, and the spoons and cups that are meant.
        label: a statement a text.
        facts: ids and source of the facts that weights and measures go by.
    """

    title: str
    size: Sequence[str]
    measures: str
    bases: Sequence[BaseWords]
    dish: DishWords
    times: str
    label: Sequence[str]
    cautions: Sequence[Texts]
    to_check: Sequence[str]
    facts: Sequence[tuple[Sequence[str], str]]


def page_words(recipe: Recipe, sets: dict[str, Any], fills: str = "") -> PageWords:
    """As ``scalepan.hand_over`` has it.

    Args:
        recipe: at the size wanted.
        sets: ``volumes``, ``weights`` and ``within`` of ``hand_over``.
        fills: tells the trays that were asked for.
    """
    return _Writer(recipe, sets, fills).page()


class _Writer:
    def __init__(self, recipe: Recipe, sets: dict[str, Any], fills: str) -> None:
        self._recipe = recipe
        self._catalog = recipe.catalog
        self._fills = fills
        within = sets["within"]
        self._near = share_of(NEAR_ENOUGH if within is None else within)
        self._sets = {**sets, "within": self._near}
        self._by_measures = bool(sets["volumes"] or sets["weights"])
        self._notes: list[str] = []
        self._facts: list[UsedFact] = facts_of_weights(recipe, self._catalog)

    def page(self) -> PageWords:
        recipe = self._recipe
        bases = [self._base(base) for base in recipe.bases]
        dish = self._dish(recipe)
        return PageWords(
            title=title_text(recipe),
            size=self._size(),
            measures=self._measures(),
            bases=bases,
            dish=dish,
            times=self._times(),
            label=_core.label(recipe).text.split("\n"),
            cautions=caution_parts(_core.safety_cautions(recipe)),
            to_check=[*_core.lines_to_check(recipe), *self._notes],
            facts=facts_by_source(self._facts),
        )

    def _measures(self) -> str:
        meant = measures_meant(self._recipe)
        if not self._by_measures:
            return meant
        named = [
            set_of(given).name
            for given in (self._sets["volumes"], self._sets["weights"])
            if given is not None
        ]
        by = f"By {', '.join(named)}, to within {self._near.told} unless said."
        return f"{by} {meant}" if meant else by

    def _base(self, base: MadeBase) -> BaseWords:
        title, *facts = base_texts(base)
        dish = self._dish(base.recipe, f"{base.name}.")
        return BaseWords(title, [*facts, base.recipe.tested], dish)

    def _dish(self, recipe: Recipe, prefix: str = "") -> DishWords:
        measured = self._measured(recipe.lines)
        if not self._by_measures:
            rows: list[tuple[str, ...]] = [(_told(m), _stage(m.line)) for m in measured]
            header: tuple[str, ...] = ("ingredients", "weighed or counted")
        else:
            rows = [(_told(m), self._exact(m), _stage(m.line)) for m in measured]
            header = ("ingredients", "exact", "weighed or counted")
            self._note(measured, prefix)
        steps = [self._step(step, recipe) for step in recipe.method]
        return DishWords(header, with_headings(recipe.lines, rows), steps)

    def _note(self, measured: Sequence[MeasuredLine], prefix: str) -> None:
        """What measuring out moves too far, and what no measure gives."""
        self._notes += [f"{prefix}{doubt}" for m in measured if (doubt := self._doubt(m))]
        self._notes += [
            f"{prefix}{name_of(m.line.id)}: as written: {_why_left(m)}"
            for m in measured
            if m.line.takes_from is None and _why_left(m) not in _AS_IT_IS
        ]

    def _step(self, step: MethodStep, recipe: Recipe) -> StepWords:
        uses = [self._used(m) for m in self._measured(step.uses)]
        load = ""
        if step.each_load and recipe.loads > 1:
            load = f"each of {recipe.loads} loads"
            load += "; the amounts are for all" if step.uses else ""
        behind = ", ".join(bound(part) for part in (step.at, step.time) if part)
        behind = ", ".join(part for part in (behind, load) if part)
        return StepWords(uses, step.text.replace(" °", f"{TIE}°"), behind)

    def _times(self) -> str:
        remark = self._recipe.times_remark
        if not remark and any(base.recipe.times_remark for base in self._recipe.bases):
            remark = "times of the bases are not scaled"
        return f"{sentence(remark)}: {_core.times_practice()}." if remark else ""

    def _measured(self, lines: list[Line]) -> list[MeasuredLine]:
        measured = measure_out_lines(lines, **self._sets, catalog=self._catalog)
        for each in measured:
            self._facts += each.measured.facts if each.measured else ()
        return measured

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

    def _used(self, line: MeasuredLine) -> Amounted:
        text = _told(line)
        if not self._far(line) or text == line.line.told:
            return text
        return Amounted(f"{ABOUT} {text}", f"{ABOUT} {text.amount}")

    def _size(self) -> list[str]:
        recipe = self._recipe
        texts = [recipe.tested, *batch_texts(recipe)]
        if recipe.batch is None:
            texts.append(f"batch weight not known: no weight of {', '.join(recipe.unweighed)}")
        if recipe.tray:
            pans = _core.quantity(recipe.trays * recipe.factor).told
            texts.append(self._fills or f"fills {pans} x {recipe.tray}")
        return texts


def sentence(text: str) -> str:
    """With a capital in front."""
    return text[:1].upper() + text[1:]


def _told(line: MeasuredLine) -> Amounted:
    """By the measures, or as it is written where all of them are too large."""
    told = line.line.told if line.too_large else line.told
    return Amounted(told, _amount_in_front(told, line))


def _amount_in_front(told: str, line: MeasuredLine) -> str:
    """The beginning of a told line that is its amount: measures, a unit, or a bare number."""
    amount = line.line.amount
    if amount is None:
        return ""
    texts = [amount.told, *([line.measured.text] if line.measured else [])]
    for text in texts:
        if told.startswith(f"{text} "):
            return text
    head, food, _ = told.partition(f" {line.line.food}")
    if food and head[-1:].isalnum() and head[:1] in f"{ABOUT}0123456789":
        return head
    number = _NUMBER_IN_FRONT.match(told)
    return number[0].rstrip() if number else ""


def _why_left(line: MeasuredLine) -> str:
    if line.measured is None:
        return line.note
    return f"{line.measured.measures} are too large for it" if line.too_large else ""


def _stage(line: Line) -> str:
    return stage_of(line) if line.amount is not None else "left to the cook"
