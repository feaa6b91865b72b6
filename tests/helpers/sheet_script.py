"""Random edits of a sheet and of its model, with all that must hold after each.

The log must name exactly the formulas and totals that had to run: those that were changed, and
those of which an input came out another than before. What is refused changes nothing, to the byte
of the saved form; what is undone restores it, to the byte.
"""

from __future__ import annotations

import random
from collections.abc import Callable
from fractions import Fraction

import pytest
import scalepan
from sheet_model import SHAPES, Column, Failure, Model, Node, Reference, RefusedError, Written

STEPS = 14
BEFORE = 4  # changes that every script begins with

Verbs = scalepan.Sheet | scalepan.Changes
Made = tuple[Model, set[Node], str]  # the model and the text before, and what had to run
Edit = Callable[[Verbs, Model], None]


def seen(sheet: scalepan.Sheet, name: str) -> tuple[object, ...]:
    """Bounds, or code, cell, column and message of a failure."""
    try:
        value = sheet.value(name)
    except scalepan.Error as error:
        return error.code, error.cell, error.column, error.message
    if isinstance(value, scalepan.Interval):
        return value.low.value, None if value.high is None else value.high.value
    assert isinstance(value, scalepan.Quantity)
    return value.value, value.value


class Script:
    """One script of edits, on a sheet and on its model."""

    def __init__(self, seed: int) -> None:
        self.draw = random.Random(seed)
        self.sheet = scalepan.Sheet()
        self.model = Model()
        self.held: dict[Node, object] = {}  # figures and failures, whatever the names are
        self.seen: dict[Node, tuple[object, ...]] = {}
        self.text = self.sheet.text()
        self.done: list[Made] = []
        self.undone: list[Made] = []
        self.ran: list[str] = []
        for name in ("serves", "portions", "spare"):
            self.make([self.new_input(name)])
        self.make([self.add_rows])

    # Drawing.

    def number(self) -> Fraction:
        return Fraction(self.draw.randint(-4, 4), self.draw.choice([1, 1, 2, 3]))

    def fresh(self, model: Model) -> str:
        """A name; now and then one that is taken."""
        if model.names and self.draw.random() < 0.05:
            return self.draw.choice(list(model.names.values()))
        return f"n{self.draw.randint(0, 400)}"

    def written(self, model: Model, *, in_column: bool = False) -> Written:
        shape = self.draw.randrange(len(SHAPES))
        choices: list[Reference] = [("cell", cell) for cell in model.cells()]
        columns = list(model.columns)
        if in_column:
            choices += [("column", column) for column in columns] * 2
        choices += [("sum", column) for column in columns]
        reads = tuple(self.draw.choice(choices) for _ in range(SHAPES[shape][1]))
        return Written(shape, reads)

    # Edits: each draws from the model what to do, does it to the sheet and to the model.

    def new_input(self, name: str) -> Edit:
        value = self.number()

        def edit(to: Verbs, model: Model) -> None:
            to.set(name, value)
            model.set_new(name, value)

        return edit

    def add_rows(self, to: Verbs, model: Model) -> None:
        to.add_rows(model.block, given={"amount": "plain number"})
        model.columns[model.new_cell()] = Column("amount")
        self.add_column(to, model)

    def set(self, to: Verbs, model: Model) -> None:
        cell, value = self.draw.choice(model.cells()), self.number()
        to.set(model.name(cell), value)
        model.set(cell, value)

    def mend(self, to: Verbs, model: Model) -> None:
        """Another number where a row or a cell is given one, so that what failed may run."""
        given = [cell for cell in model.cells() if model.formula(cell) is None]
        if given:
            cell, value = self.draw.choice(given), Fraction(self.draw.randint(1, 9))
            to.set(model.name(cell), value)
            model.set(cell, value)

    def define(self, to: Verbs, model: Model) -> None:
        formula = self.written(model)
        text = model.text(formula)
        if self.draw.random() < 0.5:
            name = self.fresh(model)
            cells = {model.name(cell): cell for cell in model.cells()}
            to.define(name, text)
            if name in cells:
                model.define(cells[name], formula)
            else:
                model.define_new(name, formula)
            return
        cell = self.draw.choice(model.cells())
        to.define(model.name(cell), text)
        model.define(cell, formula)

    def define_column(self, to: Verbs, model: Model) -> None:
        worked_out = [number for number, what in model.columns.items() if what.formula]
        if not worked_out:
            return
        column = self.draw.choice(worked_out)
        formula = self.written(model, in_column=True)
        to.define(f"{model.block}.{model.columns[column].name}", model.text(formula))
        model.define_column(column, formula)

    def add_column(self, to: Verbs, model: Model) -> None:
        if len(model.columns) > 3:
            return self.define_column(to, model)
        name = f"col{self.draw.randint(0, 99)}"
        if any(what.name == name for what in model.columns.values()):
            return None
        formula = self.written(model, in_column=True)
        to.define(f"{model.block}.{name}", model.text(formula))
        model.add_column(name, formula)
        return None

    def remove_column(self, to: Verbs, model: Model) -> None:
        column = self.draw.choice(list(model.columns))
        if len(model.columns) > 1:
            to.remove(f"{model.block}.{model.columns[column].name}")
            model.remove_column(column)

    def override(self, to: Verbs, model: Model) -> None:
        cell, value = self.draw.choice(model.cells()), self.number()
        to.override(model.name(cell), value, why="measured", who="the night cook")
        model.override(cell, value)

    def release(self, to: Verbs, model: Model) -> None:
        instead = [cell for cell in model.cells() if model.told[cell].instead is not None]
        cell = self.draw.choice(instead or model.cells())
        to.release(model.name(cell))
        model.release(cell)

    def remove(self, to: Verbs, model: Model) -> None:
        cell = self.draw.choice(model.cells())
        if len(model.names) > 2:
            to.remove(model.name(cell))
            model.remove(cell)

    def rename(self, to: Verbs, model: Model) -> None:
        kind = self.draw.random()
        if kind < 0.2:
            column = self.draw.choice(list(model.columns))
            name = f"col{self.draw.randint(0, 99)}"
            to.rename(f"{model.block}.{model.columns[column].name}", name)
            model.rename_column(column, name)
        elif kind < 0.4 and model.rows:
            place, name = self.draw.randrange(len(model.rows)), f"row{self.draw.randint(0, 9)}"
            to.rename(f"{model.block}.{model.rows[place].name}", name)
            model.rename_row(place, name)
        elif kind < 0.5:
            name = f"rows{self.draw.randint(0, 99)}"
            if name != model.block:
                to.rename(model.block, name)
                model.block = name
        else:
            cell, name = self.draw.choice(model.cells()), self.fresh(model)
            to.rename(model.name(cell), name)
            model.rename(cell, name)

    def add_row(self, to: Verbs, model: Model) -> None:
        name = f"row{self.draw.randint(0, 9)}"
        given: dict[int, Fraction | Written] = {}
        for column, what in model.columns.items():
            if what.formula is None:
                own = self.draw.random() < 0.2
                given[column] = self.written(model) if own else self.number()
        place = self.draw.randint(0, len(model.rows))
        told = {
            model.columns[column].name: scalepan.Formula(model.text(one))
            if isinstance(one, Written)
            else one
            for column, one in given.items()
        }
        before = model.rows[place].name if place < len(model.rows) else ""
        to.add_row(model.block, name, told, before=before)
        model.add_row(name, given, place)

    def remove_row(self, to: Verbs, model: Model) -> None:
        if model.rows:
            place = self.draw.randrange(len(model.rows))
            to.remove_row(model.block, model.rows[place].name)
            model.remove_row(place)

    def move_row(self, to: Verbs, model: Model) -> None:
        if model.rows:
            place = self.draw.randrange(len(model.rows))
            before = self.draw.randint(0, len(model.rows))
            if before != place:
                name = model.rows[before].name if before < len(model.rows) else ""
                to.move_row(model.block, model.rows[place].name, before=name)
                model.move_row(place, before)

    # Making and checking.

    def make(self, edits: list[Edit]) -> None:
        """All edits at once, or none."""
        model, changes = self.model.copy(), scalepan.Changes()
        code = ""
        for edit in edits:
            try:
                edit(changes, model)
            except RefusedError as refused:
                code = refused.args[0]
                break
        if not len(changes):
            return
        if code:
            with pytest.raises(scalepan.SheetError) as caught:
                self.sheet.apply(changes)
            assert caught.value.code == code, str(caught.value)
            self.expect_unchanged()
            return
        self.sheet.apply(changes)
        self.done.append((self.model, model.touched, self.text))
        self.undone.clear()
        self.model = model
        self.check(model.touched)
        self.text = self.sheet.text()

    def undo(self) -> None:
        self.step_back(self.done, self.undone, self.sheet.undo)

    def redo(self) -> None:
        self.step_back(self.undone, self.done, self.sheet.redo)

    def step_back(
        self,
        taken: list[Made],
        kept: list[Made],
        play: Callable[[], bool],
    ) -> None:
        assert play() == bool(taken)
        if not taken:
            self.expect_unchanged()
            return
        model, touched, text = taken.pop()
        kept.append((self.model, touched, self.text))
        self.model, self.text = model, text
        self.check(touched)
        assert self.sheet.text() == text

    def expect_unchanged(self) -> None:
        assert self.sheet.text() == self.text
        assert self.sheet.ran == self.ran
        for node in self.seen:
            assert seen(self.sheet, self.model.name(node)) == self.seen[node]

    def check(self, touched: set[Node]) -> None:
        model = self.model
        figures = model.outcomes()
        held: dict[Node, object] = {}
        self.seen = {}
        for node, figure in figures.items():
            told = self.seen[node] = seen(self.sheet, model.name(node))
            if isinstance(figure, Failure):
                assert told[:2] == (figure.code, model.name(figure.origin))
                assert isinstance(told[2], int)
                held[node] = figure, model.place(figure.origin, told[2]), told[3]
            else:
                assert told == figure
                held[node] = figure
        moved = {node for node in figures if held[node] != self.held.get(node)}
        expected = {
            node
            for node in figures
            if isinstance(node, tuple)
            or (model.formula(node) is not None and model.told[node].instead is None)
            if node in touched or moved.intersection(model.inputs(node))
        }
        self.ran = self.sheet.ran
        assert sorted(self.ran) == sorted(model.name(node) for node in expected)
        order = {name: place for place, name in enumerate(self.ran)}
        for node in expected:
            for each in model.inputs(node):
                before = order.get(model.name(each), -1)
                assert before < order[model.name(node)]
        self.held = held

    def reload(self) -> None:
        twin = scalepan.parse_sheet(self.text)
        assert twin.text() == self.text
        for node in self.seen:
            if not isinstance(node, tuple):
                name = self.model.name(node)
                assert seen(twin, name) == seen(self.sheet, name)

    def run(self) -> None:
        edits = [
            *([self.set] * 2),
            *([self.mend] * 3),
            *([self.define] * 6),
            *([self.define_column] * 2),
            *([self.override, self.release, self.remove, self.rename] * 2),
            *([self.add_row] * 4),
            *(self.add_column, self.remove_column, self.remove_row, self.move_row),
        ]
        for _ in range(STEPS):
            kind = self.draw.random()
            if kind < 0.12 and len(self.done) > BEFORE:
                self.undo()
            elif kind < 0.18:
                self.redo()
            elif kind < 0.35:
                self.make(self.draw.choices(edits, k=self.draw.randint(2, 4)))
            else:
                self.make([self.draw.choice(edits)])
        if self.draw.random() < 0.2:
            self.reload()
        if self.draw.random() < 0.1:
            while self.done:
                self.undo()
            self.undo()
