"""Random edit scripts against a sheet that is worked out anew, in fractions, after every edit.

The log must name exactly the formulas that had to run: the one that was changed, and those of
which an input came out another than before.
"""

from __future__ import annotations

import random
from dataclasses import dataclass
from fractions import Fraction

import pytest
import scalepan

Value = Fraction | tuple[str, int]  # a failure is the cell it arose in and its column


class Failed(Exception):
    """A cell that has no value."""


@dataclass
class Told:
    """What a cell is told to be."""

    given: Fraction | None = None
    text: str = ""
    shape: int = 0
    inputs: tuple[str, ...] = ()
    instead: Fraction | None = None


SHAPES = [
    "{0} + {1}",
    "{0} - 2 * {1}",
    "max({0}, {1}, 3)",
    "if {0} > {1} then {0} else {2}",
    "{0} / {1}",
    "1 + {0} / {1} - {2}",
    "up_to_multiple({0}, 5)",
    "-abs({0})",
]


class Model:
    """All cells, worked out anew whenever asked."""

    def __init__(self) -> None:
        self.cells: dict[str, Told] = {}

    def outcomes(self) -> dict[str, Value]:
        done: dict[str, Value] = {}
        for name in self.cells:
            self._work_out(name, done)
        return done

    def depends(self, name: str, on: str) -> bool:
        return name == on or any(self.depends(each, on) for each in self.cells[name].inputs)

    def _work_out(self, name: str, done: dict[str, Value]) -> Value:
        if name not in done:
            for each in self.cells[name].inputs:
                self._work_out(each, done)
            try:
                done[name] = self._value(name, done)
            except Failed as failure:
                done[name] = failure.args[0]
        return done[name]

    def _value(self, name: str, done: dict[str, Value]) -> Fraction:
        told = self.cells[name]
        if told.instead is not None:
            return told.instead
        if told.given is not None:
            return told.given

        def read(place: int) -> Fraction:
            value = done[told.inputs[place]]
            if isinstance(value, tuple):
                raise Failed(value)
            return value

        def over(top: Fraction, below: Fraction) -> Fraction:
            if below == 0:
                raise Failed((name, told.text.index("/") + 1))
            return top / below

        match told.shape:
            case 0:
                return read(0) + read(1)
            case 1:
                return read(0) - 2 * read(1)
            case 2:
                return max(read(0), read(1), Fraction(3))
            case 3:
                return read(0) if read(0) > read(1) else read(2)
            case 4:
                top = read(0)
                return over(top, read(1))
            case 5:
                top = read(0)
                return 1 + over(top, read(1)) - read(2)
            case 6:
                return -(-read(0) // 5) * Fraction(5)
            case _:
                return -abs(read(0))


def told_by(sheet: scalepan.Sheet, name: str) -> Value:
    try:
        value = sheet.value(name)
    except scalepan.NumberError as error:
        assert error.message == "division by zero"
        return (error.cell, error.column)
    assert isinstance(value, scalepan.Quantity)
    return value.value


class Script:
    """One script of edits on a sheet and on its model."""

    def __init__(self, seed: int) -> None:
        self.draw = random.Random(seed)
        self.sheet = scalepan.Sheet()
        self.model = Model()
        self.before: dict[str, Value] = {}
        for place in range(3):
            self.edit_given(f"a{place}")

    def number(self) -> Fraction:
        return Fraction(self.draw.randint(-4, 4), self.draw.choice([1, 1, 2, 3]))

    def edit_given(self, name: str) -> None:
        value = self.number()
        if name in self.model.cells and self.model.cells[name].text:
            return
        self.sheet.set(name, value)
        instead = self.model.cells[name].instead if name in self.model.cells else None
        self.model.cells[name] = Told(given=value, instead=instead)
        self.check(name, ran=False)

    def edit_formula(self, name: str) -> None:
        names = list(self.model.cells)
        inputs = tuple(self.draw.choice(names) for _ in range(3))
        shape = self.draw.randrange(len(SHAPES))
        used = tuple(inputs[place] for place in range(3) if f"{{{place}}}" in SHAPES[shape])
        text = SHAPES[shape].format(*inputs)
        if name in self.model.cells and any(self.model.depends(each, name) for each in used):
            with pytest.raises(scalepan.SheetError) as caught:
                self.sheet.define(name, text)
            assert caught.value.code == "sheet.cycle"
            assert self.values() == self.before
            return
        self.sheet.define(name, text)
        instead = self.model.cells[name].instead if name in self.model.cells else None
        self.model.cells[name] = Told(text=text, shape=shape, inputs=used, instead=instead)
        self.check(name, ran=instead is None)

    def override(self, name: str) -> None:
        value = self.number()
        self.sheet.override(name, value, why="measured")
        self.model.cells[name].instead = value
        self.check(name, ran=False)

    def release(self, name: str) -> None:
        if self.model.cells[name].instead is None:
            return
        self.sheet.release(name)
        self.model.cells[name].instead = None
        self.check(name, ran=bool(self.model.cells[name].text))

    def values(self) -> dict[str, Value]:
        return {name: told_by(self.sheet, name) for name in self.model.cells}

    def check(self, changed: str, *, ran: bool) -> None:
        now = self.model.outcomes()
        assert self.values() == now
        moved = {name for name, value in now.items() if self.before.get(name) != value}
        expected = {
            name
            for name, told in self.model.cells.items()
            if told.text and told.instead is None and moved.intersection(told.inputs)
        } - {changed}
        log = self.sheet.ran
        assert len(log) == len(set(log))
        assert set(log) == expected | ({changed} if ran else set())
        self.before = now

    def run(self, steps: int) -> None:
        for _ in range(steps):
            name = self.draw.choice([f"a{self.draw.randrange(3)}", f"f{self.draw.randrange(14)}"])
            if name not in self.model.cells or self.draw.random() < 0.3:
                (self.edit_given if name.startswith("a") else self.edit_formula)(name)
            else:
                edits = [self.edit_given, self.edit_formula, self.override, self.release]
                self.draw.choice(edits)(name)


@pytest.mark.parametrize("part", range(10))
def test_every_edit_runs_what_it_must_and_no_more(part: int) -> None:
    for seed in range(part * 20, part * 20 + 20):
        Script(seed).run(60)
