"""What a panel shows, and what it answers: Python's side of it, without a widget.

The state is all that a page needs. A patch holds what has become otherwise since the edition
``after``: figures and controls by name, everything else whole.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan._core import Costing
from scalepan.command_line.report import caution_parts
from scalepan.display.harmless import title_text
from scalepan.errors import Error, SheetError
from scalepan.panels.controls import Control
from scalepan.panels.figures import Figures

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence
    from typing import TypeAlias

    from scalepan.panels.figures import Told
    from scalepan.sheet_comparison import Outcome
    from scalepan.sheets import Sheet

    State: TypeAlias = dict[str, Any]

MOST_CELLS = 5000
_COSTS = ("till", "used", "thrown", "borne", "per_portion.borne")
_BY_NAME = ("figures", "controls")
_SAID = 3  # so many figures are read out


def desk_of(
    of: Sheet | Costing, inputs: str | Sequence[str], cells: str | Sequence[str] | None
) -> Desk:
    """The desk of a sheet or a costing. Raises what ``scalepan.panel`` raises."""
    costing = of if isinstance(of, Costing) else None
    sheet = of.sheet if isinstance(of, Costing) else of
    wanted = _names(cells) if cells is not None else _outcomes(sheet, costing)
    return Desk(sheet, costing, _names(inputs), wanted)


class Desk:
    """A sheet's inputs and cells, kept in step with it.

    Attributes:
        sheet: what it shows.
        costing: whose sheet it is, if it is one's.
        inputs, cells: names, in the order they are shown in.
        state: all that is shown; it is the same object for good.
    """

    def __init__(
        self, sheet: Sheet, costing: Costing | None, inputs: list[str], cells: list[str]
    ) -> None:
        watched = list(dict.fromkeys([*inputs, *cells]))
        if len(watched) > MOST_CELLS:
            message = f"a panel shows at most {MOST_CELLS} cells, not {len(watched)}"
            raise SheetError("panel.many", message, "choose some with cells=")
        self.sheet = sheet
        self.inputs = inputs
        self.cells = cells
        self.costing = costing
        self._figures = Figures(sheet, watched)
        for name in watched:
            value = self._figures[name]
            if isinstance(value, Error) and value.code == "sheet.unknown":
                raise value
        self._controls = {name: Control(sheet, name, self._figures[name]) for name in inputs}
        self._made = self._taken_back = 0  # changes by this panel
        self.state: State = {
            "edition": 0,
            "inputs": inputs,
            "cells": cells,
            "figures": dict(self._figures.told),
            "lit": {},
            "said": "",
            **self._beside(),
        }

    def value(self, name: str) -> Outcome:
        """What an input or cell held when it was last read."""
        return self._figures[name]

    def answer(self, message: object) -> State | None:
        """Does what a page asks for, and says what has become otherwise by it.

        Args:
            message: what to ``do``: ``set`` a ``cell`` to what is ``given``, with a reason ``why``
                where that overrides a formula; ``step`` it ``by`` 1 or -1; ``release`` it;
                ``forget`` what was refused; ``undo``; ``redo``; ``show`` the state, unless it is
                of the ``edition`` that the page has.
        """
        asked = message if isinstance(message, dict) else {}
        if asked.get("do") == "show":
            is_shown = asked.get("edition") == self.state["edition"]
            return None if is_shown else {"state": self.state}
        try:
            said = self._do(asked)
        except Error as error:
            said = title_text(f"Not changed: {error}")
        if said is None:
            return self._patch(self._read())
        return self._patch({"said": said, **self._beside()})

    def refresh(self) -> State | None:
        """Reads the sheet anew; None where all is as it was."""
        read = self._read()
        if not any(self._otherwise(key, read[key]) for key in read if key not in ("lit", "said")):
            return None
        return self._patch(read)

    def _do(self, asked: Mapping[str, Any]) -> str | None:
        """Changes the sheet; or, where it stays as it is, what is to be said."""
        do = str(asked.get("do"))
        if do == "undo":
            return self._undo()
        if do == "redo":
            return self._redo()
        control = self._controls.get(str(asked.get("cell")))
        if control is None or do not in (*_EDITS, "forget"):
            raise SheetError("panel.message", f"this panel cannot do {str(asked)[:80]}")
        if do == "forget":
            control.forget()
            return ""
        try:
            _EDITS[do](control, asked)
        except Error as error:
            control.refuse(error, asked.get("given"))
            raise
        self._made, self._taken_back = self._made + 1, 0
        return None

    def _undo(self) -> str | None:
        if not self._made or not self.sheet.undo():
            self._made = 0
            return "There is nothing to take back."
        self._made, self._taken_back = self._made - 1, self._taken_back + 1
        return None

    def _redo(self) -> str | None:
        if not self._taken_back or not self.sheet.redo():
            self._taken_back = 0
            return "There is nothing to make again."
        self._made, self._taken_back = self._made + 1, self._taken_back - 1
        return None

    def _read(self) -> State:
        figures, was = self._figures.read()
        return {"figures": figures, "lit": was, "said": _said(figures, was), **self._beside()}

    def _beside(self) -> State:
        """What is shown beside the figures."""
        shown: State = {
            "controls": {
                name: each.shown(self._figures[name]) for name, each in self._controls.items()
            },
            "undo": self._made > 0,
            "redo": self._taken_back > 0,
        }
        if self.costing is not None:
            cautions, footing = caution_parts(self.costing.cautions)
            shown["to_check"] = [title_text(text) for text in self.costing.to_check]
            shown["cautions"] = [title_text(text) for text in (*cautions.texts, *footing.texts)]
        return shown

    def _patch(self, new: State) -> State:
        """Takes it over into the state, and says what is otherwise by it."""
        patch: State = {"after": self.state["edition"], "edition": self.state["edition"] + 1}
        for key, value in new.items():
            if (part := self._otherwise(key, value)) is not None:
                patch[key] = part
                self.state[key] = {**self.state[key], **part} if key in _BY_NAME else part
        self.state["edition"] = patch["edition"]
        return {"patch": patch}

    def _otherwise(self, key: str, value: Any) -> Any:
        """What of a value is not in the state as yet; None where all is."""
        shown = self.state[key]
        if key in _BY_NAME:
            return {name: new for name, new in value.items() if shown[name] != new} or None
        return None if value == shown else value


_EDITS: dict[str, Callable[[Control, Mapping[str, Any]], None]] = {
    "set": lambda control, asked: control.change(asked.get("given"), asked.get("why")),
    "step": lambda control, asked: control.step(asked.get("by")),
    "release": lambda control, asked: control.release(),
}


def _said(figures: Mapping[str, Told], was: Mapping[str, Told]) -> str:
    """The first of the figures that changed, to be read out."""
    if not was:
        return "No figure changed."
    first = [f"{name}: {figures[name]['told']}, was {was[name]['was']}" for name in was][:_SAID]
    count = f"{len(was)} figure{'s' if len(was) > 1 else ''} changed."
    return f"{count} {'; '.join(first)}{'; …' if len(was) > _SAID else ''}"


def _names(names: str | Sequence[str]) -> list[str]:
    return [names] if isinstance(names, str) else list(dict.fromkeys(names))


def _outcomes(sheet: Sheet, costing: Costing | None) -> list[str]:
    """The costs of a costing, or all cells that follow from others."""
    if costing is not None:
        return [name for name in _COSTS if name in sheet]
    return [name for name in sheet.cells() if sheet.formula(name)]
