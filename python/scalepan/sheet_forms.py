"""What a file of a sheet has for a value and for a change: tables of texts, numbers and flags.

A change is a table whose first key is its verb: ``{ set = "portions", value = 60 }``,
``{ override = "leeks.edible", value = "0.5 EP/AP", why = "own trim" }``.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan._core import Formula, Interval, Quantity, Text

if TYPE_CHECKING:
    from typing import TypeAlias

    Value: TypeAlias = Quantity | bool | Text | Interval
    Given: TypeAlias = Formula | tuple[Value, str]

Entries = dict[str, Any]

# The first key of a change, the others it may have, and of these the ones it cannot do without.
VALUES = ("value", "text", "low", "high")
VERBS: dict[str, tuple[tuple[str, ...], tuple[str, ...]]] = {
    "set": ((*VALUES, "source"), ()),
    "redeclare": ((*VALUES, "source"), ()),
    "define": (("formula",), ("formula",)),
    "override": ((*VALUES, "why", "who", "when"), ("why",)),
    "release": ((), ()),
    "remove": ((), ()),
    "rename": (("to",), ("to",)),
    "add_rows": (("given", "formulas"), ("given",)),
    "add_row": (("row", "given", "before"), ("row",)),
    "remove_row": (("row",), ("row",)),
    "move_row": (("row", "before"), ("row",)),
}

# Plain numbers that are written without quotes.
_SHORT_NUMBER = re.compile(r"-?(?:0|[1-9][0-9]{0,14})(?:\.[0-9]{1,15})?")


# A longer number may have more digits than can be read.
_LONGEST_SURE = 900


class BareNumber(str):
    """A number that stands in a file without quotes."""


def value_entries(value: Value) -> Entries:
    """``{"value": "5 kg"}``, ``{"text": "leek"}`` or ``{"low": "3 kg", "high": "5 kg"}``."""
    if isinstance(value, bool):
        return {"value": value}
    if isinstance(value, Text):
        return {"text": str(value)}
    if isinstance(value, Interval):
        high = {} if value.high is None else {"high": _amount(value.high)}
        return {"low": _amount(value.low), **high}
    return {"value": _amount(value)}


def expect_readable(quantity: Quantity) -> Quantity:
    """Raises NumberError (``number.too_many_digits``) where its text could not be read."""
    text = str(quantity)
    if len(text) > _LONGEST_SURE:
        _core.quantity(text)
    return quantity


def _amount(quantity: Quantity) -> str:
    text = str(expect_readable(quantity))
    return BareNumber(text) if _SHORT_NUMBER.fullmatch(text) else text


def given_form(given: Given | Value) -> Any:
    """What a cell is given: as short as can be, or a table."""
    if isinstance(given, Formula):
        return {"formula": str(given)}
    value, source = given if isinstance(given, tuple) else (given, "")
    entries = value_entries(value)
    if source:
        return {**entries, "source": source}
    return entries["value"] if list(entries) == ["value"] else entries


def change_entries(verb: str, given: dict[str, Any]) -> Entries:
    """One of ``Changes.listed()`` as a table."""
    first = "rows" if "rows" in given else "name"
    entries: Entries = {verb: given[first]}
    for key, told in given.items():
        if key == "value":
            entries |= value_entries(told)
        elif verb == "add_row" and key == "given":
            entries[key] = {column: given_form(one) for column, one in told.items()}
        elif key != first and (told or key in VERBS[verb][1]):
            entries[key] = told
    return entries
