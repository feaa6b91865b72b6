"""Controls of a panel: what each shows, and the change that an edit of it makes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan._core import Changes, Interval, Quantity, Text, Thing
from scalepan.display.harmless import plain, title_text, visible
from scalepan.errors import Error, SheetError
from scalepan.sheet_comparison import told

if TYPE_CHECKING:
    from typing import TypeAlias, TypeGuard

    from scalepan.sheet_comparison import Outcome
    from scalepan.sheets import Sheet

    Shown: TypeAlias = dict[str, Any]

AMOUNT, YES_NO, TEXT, NOTHING = "amount", "yes or no", "text", "nothing"


class Control:
    """One input of a panel.

    Attributes:
        name: of its cell.
        kind: of what it gives: ``amount``, ``yes or no``, ``text``, or ``nothing`` while its cell
            holds what no control can give.
    """

    def __init__(self, sheet: Sheet, name: str, value: Outcome) -> None:
        """Raises SheetError (``panel.control``) for a food, offers and the like."""
        self._sheet = sheet
        self.name = name
        self.kind = AMOUNT
        self._refusal: Shown = {}
        self._overridden = False
        if isinstance(value, Thing):
            message = f"{name} holds {value.kind}, which no control can give"
            hint = "choose cells that hold an amount, yes or no, or a text"
            raise SheetError("panel.control", message, hint)

    def shown(self, value: Outcome) -> Shown:
        """What it shows while its cell holds this."""
        self.kind = _kind_of(value, self.kind)
        own, source = self._override()
        self._overridden = bool(source)
        shown: Shown = {"kind": self.kind, "text": _field_text(value), **self._refusal}
        if self.kind == YES_NO:
            shown["yes"] = value is True
        if self._gives_override:
            shown["formula"] = title_text(self._formula)
        elif _is_whole(value):
            shown["steps"] = True
        if self._overridden:
            shown |= {"overridden": title_text(source), "own": own}
        return shown

    def change(self, given: object, why: object) -> None:
        """Gives the cell a value as written, or overrides it. Raises what those verbs raise."""
        value = self._read(given)
        reason = _whole_text(why) if isinstance(why, str) else ""
        self._refusal = {}
        if self._gives_override:
            self._sheet.override(self.name, value, why=reason)
        else:
            self._sheet.set(self.name, value)

    def step(self, by: object) -> None:
        """A whole number up or down by one. Raises what ``Sheet.set`` raises."""
        value = self._sheet.value(self.name)
        if self._gives_override or not _is_whole(value) or by not in (1, -1):
            raise SheetError("panel.message", f"{self.name} has no such step")
        self._refusal = {}
        self._sheet.set(self.name, value + by)

    def release(self) -> None:
        """Takes the override away. Raises what ``Sheet.release`` raises."""
        self._refusal = {}
        self._sheet.release(self.name)

    def refuse(self, error: Error, given: object) -> None:
        """Shows why, and what was given, until something else is."""
        self._refusal = {"problem": title_text(error.message), "hint": title_text(error.hint)}
        if isinstance(given, str):
            self._refusal["typed"] = visible(given)

    def forget(self) -> None:
        """Shows what the cell holds in the place of what was refused."""
        self._refusal = {}

    @property
    def _formula(self) -> str:
        return self._sheet.formula(self.name) if self.name in self._sheet else ""

    @property
    def _gives_override(self) -> bool:
        return self._overridden or bool(self._formula)

    def _override(self) -> tuple[str, str]:
        """What the cell would hold without its override, and who overrode it why."""
        released = Changes()
        released.release(self.name)
        try:
            (own,) = self._sheet.values_with(released, [self.name])
        except Error:
            return "", ""
        return plain(told(own)), self._sheet.explain(self.name).source

    def _read(self, given: object) -> str | bool | Text:
        if isinstance(given, bool) and self.kind == YES_NO:
            return given
        if isinstance(given, str) and self.kind in (AMOUNT, TEXT):
            text = _whole_text(given)
            return Text(text) if self.kind == TEXT else text
        message = f"{self.name} is given a {type(given).__name__}, but its control gives"
        raise SheetError("panel.message", f"{message} {self.kind}")


def _whole_text(text: str) -> str:
    """A page may send half of a pair, which is no character."""
    if any("\ud800" <= char <= "\udfff" for char in text):
        raise SheetError("panel.message", "what was given holds half a character")
    return text


def _is_whole(value: Outcome) -> TypeGuard[Quantity]:
    return isinstance(value, Quantity) and not value.unit and value.value.denominator == 1


def _kind_of(value: Outcome, before: str) -> str:
    """A cell that fails keeps its kind."""
    if isinstance(value, Error):
        return NOTHING if value.code == "sheet.unknown" else before
    if isinstance(value, bool):
        return YES_NO
    if isinstance(value, Quantity | Interval):
        return AMOUNT
    return TEXT if isinstance(value, str) else NOTHING


def _field_text(value: Outcome) -> str:
    """As it is read back: exactly."""
    return "" if isinstance(value, bool | Error) else visible(str(value))
