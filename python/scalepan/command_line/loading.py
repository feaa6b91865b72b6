"""Loads, as the command line prints them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.documents import loads_document, quantity_document
from scalepan.command_line.tables import wrapped
from scalepan.pan_size import Pan

if TYPE_CHECKING:
    from scalepan._core import Loads, Quantity
    from scalepan.load_split import Amount

TIME_NOTE = (
    f"the time of a load is the cook's own figure and is never scaled: {_core.times_practice()}"
)


def loads_section(
    total: str, capacity: Amount | Pan, split: Loads, time: Quantity | None, width: int
) -> list[str]:
    """The loads, what a pan holds by its source, and the time one after the other if asked for."""
    most = split.capacity.told if isinstance(capacity, Pan) else capacity
    lines = wrapped(f"{total}, at most {most} a load = {split.text}", width)
    if isinstance(capacity, Pan):
        source = capacity.printed[0].source
        lines += wrapped(f"{capacity} holds {most}   [{source}]", width, "  * ")
    if time is not None:
        told = _told_time(split.in_turn(time))
        lines += wrapped(f"one after the other, {time.told} a load: {told}", width, "  ")
        lines += wrapped(TIME_NOTE, width, "  * ")
    return lines


def split_document(capacity: Amount | Pan, split: Loads, time: Quantity | None) -> dict[str, Any]:
    """Everything exact, for ``--json``.

    ``in_turn`` is null where no time of a load is given, and ``pan`` where no pan is named.
    """
    in_turn = None if time is None else quantity_document(split.in_turn(time))
    return {
        **loads_document(split),
        "in_turn": in_turn,
        "pan": _pan_document(capacity) if isinstance(capacity, Pan) else None,
    }


def _pan_document(pan: Pan) -> dict[str, str]:
    return {"name": pan.name, "source": pan.printed[0].source}


def _told_time(time: Quantity) -> str:
    """In the unit given, and in hours too from one hour on."""
    hours = time.to("h")
    return time.told if hours.value < 1 or time.unit == "h" else f"{time.told} = {hours.told}"
