"""Loads, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.command_line.documents import quantity_document
from scalepan.command_line.tables import wrapped

if TYPE_CHECKING:
    from scalepan._core import Loads, Quantity

TIME_NOTE = (
    "the time of a load is the cook's own figure and is never scaled: separate pieces take as long "
    "as one, big pots heat slower (common practice; Gisslen, Professional Cooking)"
)


def loads_section(
    total: str, capacity: str, split: Loads, time: Quantity | None, width: int
) -> list[str]:
    """The loads, and the time they take one after the other where that of one is given."""
    lines = wrapped(f"{total}, at most {capacity} a load = {split.text}", width)
    if time is not None:
        told = _told_time(split.in_turn(time))
        lines += wrapped(f"one after the other, {time.told} a load: {told}", width, "  ")
        lines += wrapped(TIME_NOTE, width, "  * ")
    return lines


def loads_document(split: Loads, time: Quantity | None) -> dict[str, Any]:
    """Everything exact, for ``--json``; ``in_turn`` is null where no time of a load is given."""
    in_turn = None if time is None else quantity_document(split.in_turn(time))
    return {
        "text": split.text,
        "count": split.count,
        "full": split.full,
        "capacity": quantity_document(split.capacity),
        "each": quantity_document(split.each),
        "short": quantity_document(split.short),
        "parts": [{"count": count, "each": quantity_document(each)} for count, each in split.parts],
        "in_turn": in_turn,
    }


def _told_time(time: Quantity) -> str:
    """In the unit given, and in hours too from one hour on."""
    hours = time.to("h")
    return time.told if hours.value < 1 or time.unit == "h" else f"{time.told} = {hours.told}"
