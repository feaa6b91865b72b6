"""What a sheet holds, by name: the sections of its file, and the sides of a difference."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan._core import Formula

if TYPE_CHECKING:
    from scalepan._core import Changes
    from scalepan.sheet_forms import Given

_Listed = list[tuple[str, dict[str, Any]]]


class Block(NamedTuple):
    """Rows.

    Attributes:
        given: the columns that are given row by row, with what they hold.
        formulas: of the other columns.
        rows: in their order, what each is given.
    """

    given: dict[str, str]
    formulas: dict[str, str]
    rows: dict[str, dict[str, Given]]


class Content:
    """What the changes that make a sheet come to.

    Attributes:
        cells: name to a formula, or to a value and where it comes from; sorted by name.
        blocks: by name.
        overrides: name to ``value``, ``why``, ``who`` and ``when``.
        order: the names of cells and blocks, each behind those it builds on.
    """

    def __init__(self, changes: Changes) -> None:
        self.cells: dict[str, Given] = {}
        self.blocks: dict[str, Block] = {}
        self.overrides: dict[str, dict[str, Any]] = {}
        self.order: list[str] = []
        for verb, given in _with_own_formulas(changes.listed()):
            self._note(verb, given)
        self.cells = dict(sorted(self.cells.items()))

    def _note(self, verb: str, given: dict[str, Any]) -> None:
        if verb == "add_rows":
            self.blocks[given["name"]] = Block(given["given"], dict(given["formulas"]), {})
        elif verb == "add_row":
            row = {column: _with_source(one) for column, one in given["given"].items()}
            self.blocks[given["rows"]].rows[given["row"]] = row
        elif verb == "override":
            self.overrides[given["name"]] = {k: v for k, v in given.items() if k != "name"}
        elif verb == "set":
            self.cells[given["name"]] = (given["value"], given["source"])
        elif verb == "define":
            self._note_formula(given["name"], given["formula"])
        if verb in ("add_rows", "set", "define") and self._stands_alone(given["name"]):
            self.order.append(given["name"])

    def _stands_alone(self, name: str) -> bool:
        return name in self.cells or name in self.blocks

    def _note_formula(self, name: str, formula: str) -> None:
        block, _, column = name.rpartition(".")
        if block in self.blocks:
            self.blocks[block].formulas[column] = formula
        else:
            self.cells[name] = Formula(formula)


def _with_source(given: Any) -> Given:
    return given if isinstance(given, Formula | tuple) else (given, "")


def _with_own_formulas(listed: _Listed) -> _Listed:
    """A sheet's changes with each formula of one row's own at its row."""
    rows = {
        f"{given['row']}.{column}": given["given"]
        for verb, given in listed
        if verb == "add_row"
        for column, one in given["given"].items()
        if one is None
    }
    kept = []
    for verb, given in listed:
        row = rows.get(given.get("name", "")) if verb == "define" else None
        if row is None:
            kept.append((verb, given))
        else:
            row[given["name"].rpartition(".")[2]] = Formula(given["formula"])
    return kept
