"""A sheet worked out anew, whole, in fractions: what the sheet's own answers are held against.

Cells are known by number, so that a rename changes names only. A figure is a pair of bounds, the
upper one None where there is none; a failure is a code and the cell that it arose in.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterator
from dataclasses import dataclass, field, replace
from fractions import Fraction

Bounds = tuple[Fraction, Fraction | None]
Node = int | tuple[str, int]  # a cell, or ("sum", column)
Reference = tuple[str, int]  # ("cell", n), ("column", n) or ("sum", n)


class RefusedError(Exception):
    """A change that the sheet must refuse, with this code."""


@dataclass(frozen=True)
class Failure:
    code: str
    origin: Node


Outcome = Bounds | Failure


class FailedError(Exception):
    """Holds the Failure."""


@dataclass(frozen=True)
class Written:
    """A formula: one of the shapes, and what it reads."""

    shape: int
    reads: tuple[Reference, ...]


@dataclass(frozen=True)
class Told:
    """What a cell is told to be; a cell of a column with a formula is told nothing."""

    given: Fraction | None = None
    formula: Written | None = None
    instead: Fraction | None = None


@dataclass(frozen=True)
class Column:
    name: str
    formula: Written | None = None


@dataclass(frozen=True)
class Row:
    name: str
    cells: tuple[int, ...]  # one a column


# Arithmetic on bounds.


def exactly(number: Fraction | int) -> Bounds:
    return Fraction(number), Fraction(number)


def plus(a: Bounds, b: Bounds) -> Bounds:
    return a[0] + b[0], None if a[1] is None or b[1] is None else a[1] + b[1]


def minus(a: Bounds, b: Bounds) -> Bounds:
    if b[1] is None:
        raise ArithmeticError("formula.unbounded")
    return a[0] - b[1], None if a[1] is None else a[1] - b[0]


def times(a: Bounds, b: Bounds) -> Bounds:
    """By the corners; the missing bounds stand beyond all numbers."""
    corners: list[tuple[int, Fraction]] = []
    for x in a:
        for y in b:
            if x is not None and y is not None:
                corners.append((0, x * y))
            else:
                signs = [1 if z is None else (z > 0) - (z < 0) for z in (x, y)]
                corners.append((signs[0] * signs[1], Fraction(0)))
    low, high = min(corners), max(corners)
    if low[0] != 0:
        raise ArithmeticError("formula.unbounded")
    return low[1], None if high[0] else high[1]


def over(a: Bounds, b: Bounds) -> Bounds:
    if b[0] <= 0 and (b[1] is None or b[1] >= 0):
        raise ArithmeticError("number.division_by_zero")
    return times(a, (Fraction(0) if b[1] is None else 1 / b[1], 1 / b[0]))


def greatest(a: Bounds, b: Bounds) -> Bounds:
    return max(a[0], b[0]), None if a[1] is None or b[1] is None else max(a[1], b[1])


def absolute(a: Bounds) -> Bounds:
    if a[0] >= 0:
        return a
    if a[1] is None:
        return Fraction(0), None
    return (-a[1], -a[0]) if a[1] <= 0 else (Fraction(0), max(-a[0], a[1]))


def exceeds(a: Bounds, b: Bounds) -> bool:
    if b[1] is not None and b[1] < a[0]:
        return True
    if a[1] is not None and b[0] >= a[1]:
        return False
    raise ArithmeticError("formula.undecided")


def fives(a: Bounds) -> Bounds:
    low, high = (None if x is None else -(-x // 5) * Fraction(5) for x in a)
    assert low is not None
    return low, high


Read = Callable[[int], Bounds]


def _chosen(read: Read) -> Bounds:
    return read(0) if exceeds(read(0), read(1)) else read(2)


# What is read must be read in the order of the text, since the first failure is the one told.
SHAPES: list[tuple[str, int, Callable[[Read], Bounds]]] = [
    ("{0} + {1}", 2, lambda read: plus(read(0), read(1))),
    ("{0} - 2 * {1}", 2, lambda read: minus(read(0), times(exactly(2), read(1)))),
    ("max({0}, {1}, 3)", 2, lambda read: greatest(greatest(read(0), read(1)), exactly(3))),
    ("if {0} > {1} then {0} else {2}", 3, _chosen),
    ("{0} / {1}", 2, lambda read: over(read(0), read(1))),
    (
        "1 + {0} / {1} - {2}",
        3,
        lambda read: minus(plus(exactly(1), over(read(0), read(1))), read(2)),
    ),
    ("up_to_multiple({0}, 5)", 1, lambda read: fives(read(0))),
    ("-abs({0})", 1, lambda read: minus(exactly(0), absolute(read(0)))),
    ("{0} * {1}", 2, lambda read: times(read(0), read(1))),
]


@dataclass
class Model:
    """The whole of a sheet. ``touched`` gathers what a change must run, whatever comes out."""

    names: dict[int, str] = field(default_factory=dict)  # of cells outside rows
    told: dict[int, Told] = field(default_factory=dict)
    block: str = "lines"
    columns: dict[int, Column] = field(default_factory=dict)
    rows: list[Row] = field(default_factory=list)
    totals: frozenset[int] = frozenset()
    count: int = 0
    touched: set[Node] = field(default_factory=set)

    def copy(self) -> Model:
        return Model(
            dict(self.names),
            dict(self.told),
            self.block,
            dict(self.columns),
            list(self.rows),
            self.totals,
            self.count,
        )

    # Names.

    def name(self, node: Node) -> str:
        if isinstance(node, tuple):
            return f"sum({self.block}.{self.columns[node[1]].name})"
        if node in self.names:
            return self.names[node]
        row, column = self.home(node)
        return f"{row.name}.{self.columns[column].name}"

    def home(self, cell: int) -> tuple[Row, int]:
        for row in self.rows:
            if cell in row.cells:
                return row, list(self.columns)[row.cells.index(cell)]
        raise KeyError(cell)

    def cells(self) -> list[int]:
        return [*self.names, *(cell for row in self.rows for cell in row.cells)]

    def text(self, formula: Written) -> str:
        texts = [self.read_text(one) for one in formula.reads]
        return SHAPES[formula.shape][0].format(*texts)

    def read_text(self, reference: Reference) -> str:
        kind, number = reference
        if kind == "column":
            return self.columns[number].name
        return self.name(number if kind == "cell" else ("sum", number))

    def place(self, node: Node, column: int) -> int:
        """A column in a cell's formula, whatever the names in it are."""
        formula = None if isinstance(node, tuple) else self.formula(node)
        if formula is None:
            return column
        place, left = 0, column - 1
        for part in re.split(r"\{(\d)\}", SHAPES[formula.shape][0]):
            reference = formula.reads[int(part)] if part.isdigit() else None
            text = part
            if reference is not None:
                text = self.name(self.node(node, reference))
            if left < len(text):
                return place + left
            place += (
                len(part) if reference is None else len("sum(x)" if reference[0] == "sum" else "x")
            )
            left -= len(text)
        return place

    def is_taken(self, name: str) -> bool:
        return name in {self.name(cell) for cell in self.cells()} | {self.block}

    # What reads what.

    def formula(self, cell: int) -> Written | None:
        """Of its own, or of its column."""
        if cell in self.names or self.told[cell].formula is not None:
            return self.told[cell].formula
        return self.columns[self.home(cell)[1]].formula

    def inputs(self, node: Node) -> list[Node]:
        if isinstance(node, tuple):
            place = list(self.columns).index(node[1])
            return [row.cells[place] for row in self.rows]
        formula = self.formula(node)
        return [] if formula is None else [self.node(node, one) for one in formula.reads]

    def node(self, reader: int, reference: Reference) -> Node:
        kind, number = reference
        if kind == "cell":
            return number
        if kind == "sum":
            return ("sum", number)
        return self.home(reader)[0].cells[list(self.columns).index(number)]

    def nodes(self) -> Iterator[Node]:
        yield from self.cells()
        yield from (("sum", column) for column in self.totals)

    def expect_acyclic(self) -> None:
        done: set[Node] = set()
        for node in self.nodes():
            self._walk(node, done, set())
        for column in self.columns:
            if self._column_reaches(column, column, set()):
                raise RefusedError("sheet.cycle")

    def _walk(self, node: Node, done: set[Node], path: set[Node]) -> None:
        if node in path:
            raise RefusedError("sheet.cycle")
        if node in done:
            return
        path.add(node)
        inputs = self.inputs(node)
        if isinstance(node, tuple) and not self.rows:
            inputs = self._outside(node[1], set())
        for each in inputs:
            self._walk(each, done, path)
        path.remove(node)
        done.add(node)

    def _outside(self, column: int, seen: set[int]) -> list[Node]:
        """What a row's cell of the column would rest on outside its row, if there were a row."""
        formula = self.columns[column].formula
        if column in seen or formula is None:
            return []
        seen.add(column)
        nodes: list[Node] = []
        for kind, number in formula.reads:
            if kind == "column":
                nodes += self._outside(number, seen)
            else:
                nodes.append(number if kind == "cell" else ("sum", number))
        return nodes

    def _column_reaches(self, column: int, target: int, seen: set[int]) -> bool:
        formula = self.columns[column].formula
        near = {number for kind, number in formula.reads if kind == "column"} if formula else set()
        fresh = near - seen
        seen |= near
        return target in near or any(self._column_reaches(one, target, seen) for one in fresh)

    def expect_unread(self, cell: int, but_by: tuple[int, ...] = ()) -> None:
        by_cells = any(
            cell in self.inputs(each) for each in self.cells() if each not in (*but_by, cell)
        )
        by_columns = any(
            ("cell", cell) in what.formula.reads for what in self.columns.values() if what.formula
        )
        if by_cells or by_columns:
            raise RefusedError("sheet.read")

    # Changes.

    def new_cell(self) -> int:
        self.count += 1
        return self.count

    def note_totals(self, formula: Written) -> None:
        for kind, number in formula.reads:
            if kind == "sum" and number not in self.totals:
                self.totals |= {number}
                self.touched.add(("sum", number))

    def set(self, cell: int, value: Fraction) -> None:
        if self.formula(cell) is not None:
            raise RefusedError("sheet.formula")
        self.told[cell] = replace(self.told[cell], given=value)

    def set_new(self, name: str, value: Fraction) -> None:
        if self.is_taken(name):
            raise RefusedError("sheet.taken")
        cell = self.new_cell()
        self.names[cell] = name
        self.told[cell] = Told(given=value)

    def define(self, cell: int, formula: Written) -> None:
        if cell not in self.names and self.columns[self.home(cell)[1]].formula is not None:
            raise RefusedError("sheet.in_rows")
        self.note_totals(formula)
        self.told[cell] = Told(formula=formula, instead=self.told[cell].instead)
        self.touched.add(cell)
        self.expect_acyclic()

    def define_new(self, name: str, formula: Written) -> None:
        if self.is_taken(name):
            raise RefusedError("sheet.taken")
        self.note_totals(formula)
        cell = self.new_cell()
        self.names[cell] = name
        self.told[cell] = Told(formula=formula)
        self.touched.add(cell)

    def define_column(self, column: int, formula: Written) -> None:
        self.note_totals(formula)
        self.columns[column] = replace(self.columns[column], formula=formula)
        self.touched.update(self.inputs(("sum", column)))
        self.expect_acyclic()

    def add_column(self, name: str, formula: Written) -> int:
        self.note_totals(formula)
        column = self.new_cell()
        self.columns[column] = Column(name, formula)
        for place, row in enumerate(self.rows):
            cell = self.new_cell()
            self.told[cell] = Told()
            self.rows[place] = Row(row.name, (*row.cells, cell))
            self.touched.add(cell)
        if self.rows:
            self.touched.update(("sum", each) for each in self.totals)
        self.expect_acyclic()
        return column

    def remove_column(self, column: int) -> None:
        if any(("column", column) in what.formula.reads for what in self.columns.values()
               if what.formula):  # fmt: skip
            raise RefusedError("sheet.read")
        place = list(self.columns).index(column)
        cells = tuple(row.cells[place] for row in self.rows)
        for cell in cells:
            self.expect_unread(cell, cells)
        self.expect_total_unread(column)
        if self.rows:
            self.touched.update(("sum", each) for each in self.totals)
        elif column in self.totals:
            self.touched.add(("sum", column))  # for what takes the removal back
        self.touched.update(cells)
        del self.columns[column]
        self.totals -= {column}
        for cell in cells:
            del self.told[cell]
        self.rows = [Row(row.name, row.cells[:place] + row.cells[place + 1 :]) for row in self.rows]

    def expect_total_unread(self, column: int) -> None:
        formulas = [self.formula(cell) for cell in self.cells()]
        formulas += [what.formula for what in self.columns.values()]
        if any(("sum", column) in formula.reads for formula in formulas if formula):
            raise RefusedError("sheet.read")

    def override(self, cell: int, value: Fraction) -> None:
        self.told[cell] = replace(self.told[cell], instead=value)
        self.touched.add(cell)

    def release(self, cell: int) -> None:
        if self.told[cell].instead is None:
            raise RefusedError("sheet.released")
        self.told[cell] = replace(self.told[cell], instead=None)
        self.touched.add(cell)

    def remove(self, cell: int) -> None:
        if cell not in self.names:
            raise RefusedError("sheet.in_rows")
        self.expect_unread(cell)
        del self.names[cell], self.told[cell]
        self.touched.add(cell)

    def rename(self, cell: int, name: str) -> None:
        if cell not in self.names:
            raise RefusedError("sheet.in_rows")
        if self.is_taken(name):
            raise RefusedError("sheet.taken")
        self.names[cell] = name

    def rename_column(self, column: int, name: str) -> None:
        if any(what.name == name for what in self.columns.values()):
            raise RefusedError("sheet.taken")
        self.columns[column] = replace(self.columns[column], name=name)

    def rename_row(self, place: int, name: str) -> None:
        if any(row.name == name for row in self.rows):
            raise RefusedError("sheet.taken")
        self.rows[place] = replace(self.rows[place], name=name)

    def add_row(self, name: str, given: dict[int, Fraction | Written], place: int) -> None:
        if any(row.name == name for row in self.rows):
            raise RefusedError("sheet.taken")
        cells = []
        for column, what in self.columns.items():
            cell = self.new_cell()
            one = given.get(column)
            self.told[cell] = Told(
                given=one if isinstance(one, Fraction) else None,
                formula=one if isinstance(one, Written) else None,
            )
            if what.formula is not None or isinstance(one, Written):
                self.touched.add(cell)
            cells.append(cell)
        self.rows.insert(place, Row(name, tuple(cells)))
        self.touched.update(("sum", each) for each in self.totals)
        for one in given.values():
            if isinstance(one, Written):
                self.note_totals(one)
        self.expect_acyclic()

    def remove_row(self, place: int) -> None:
        row = self.rows[place]
        for cell in row.cells:
            self.expect_unread(cell, row.cells)
        for cell in row.cells:
            del self.told[cell]
            self.touched.add(cell)
        del self.rows[place]
        self.touched.update(("sum", each) for each in self.totals)

    def move_row(self, place: int, before: int) -> None:
        row = self.rows.pop(place)
        self.rows.insert(before if before <= place else before - 1, row)

    # Figures.

    def outcomes(self) -> dict[Node, Outcome]:
        done: dict[Node, Outcome] = {}
        for node in self.nodes():
            self._work_out(node, done)
        return done

    def _work_out(self, node: Node, done: dict[Node, Outcome]) -> Outcome:
        if node not in done:
            for each in self.inputs(node):
                self._work_out(each, done)
            try:
                done[node] = self._figure(node, done)
            except FailedError as failure:
                done[node] = failure.args[0]
            except ArithmeticError as error:
                done[node] = Failure(str(error), node)
        return done[node]

    def _figure(self, node: Node, done: dict[Node, Outcome]) -> Bounds:
        if isinstance(node, tuple):
            return self._total([done[each] for each in self.inputs(node)])
        told = self.told[node]
        if told.instead is not None:
            return exactly(told.instead)
        formula = self.formula(node)
        if formula is None:
            assert told.given is not None
            return exactly(told.given)
        inputs = self.inputs(node)

        def read(place: int) -> Bounds:
            outcome = done[inputs[place]]
            if isinstance(outcome, Failure):
                raise FailedError(outcome)
            return outcome

        return SHAPES[formula.shape][2](read)

    @staticmethod
    def _total(members: list[Outcome]) -> Bounds:
        known = [one for one in members if not isinstance(one, Failure)]
        if len(known) < len(members) and any(low < 0 for low, _ in known):
            raise ArithmeticError("sheet.rows")
        total = exactly(0)
        for one in known:
            total = plus(total, one)
        return total if len(known) == len(members) else (total[0], None)
