"""Pans: their size as written, their area, and what published sources say they hold.

size   = length x width [ x depth ]
       | diameter [ x depth ] "round"
       | side [ x depth ] "square"

A length without a unit takes the unit of the last one: ``30 x 20 x 6 cm``, ``9 x 13 in``.
"""

from __future__ import annotations

import re
from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan.errors import make_error

if TYPE_CHECKING:
    from scalepan._core import Quantity

# Pi (UCUM [pi]) rounded half up to 15 decimals, and the most that this is off.
PI = Fraction(3_141_592_653_589_793, 10**15)
PI_ERROR = Fraction(1, 2 * 10**15)

# Patterns are texts, compiled when first used: `import scalepan` stays quick.
_SHAPE = r"(?i)\s+(round|square)$"
_TIMES = r"(?i)\s*[x×]\s*"
# `9 in`, `9"`: no unit elsewhere, since "in" is a word and a quotation mark is none.
_INCH_SIGN = r"(?i)(?<=\d)\s*(?:in\b\.?|\"|″)$"
_HINT = "write 30 x 20 x 6 cm, 8 x 2 inch round, or 20 cm square"


class PrintedVolume(NamedTuple):
    """What one source says a pan holds.

    Attributes:
        volume: the least it says.
        high: the most, mostly the same.
        filled: how full, where the source says so: ``usable``, ``rim``, ``overflowing``.
        source: where it is printed.
    """

    volume: Quantity
    high: Quantity
    filled: str
    source: str


class Pan(NamedTuple):
    """A pan, tray or container.

    Attributes:
        name: ``GN 1/1 65``, or its size as written.
        length, width, diameter, depth: lengths; None where no source gives them.
        printed: what sources say it holds, the one used first.
        source: of its sizes.
    """

    name: str
    length: Quantity | None
    width: Quantity | None
    diameter: Quantity | None
    depth: Quantity | None
    printed: tuple[PrintedVolume, ...]
    source: str

    @property
    def area(self) -> Quantity | None:
        """In cm²; of a round pan with pi rounded, which ``area_error`` bounds."""
        if self.diameter is not None:
            return self.diameter * self.diameter * (PI / 4)
        if self.length is not None and self.width is not None:
            return self.length * self.width
        return None

    @property
    def area_error(self) -> Quantity | None:
        """The most that ``area`` is off, in cm²: zero but for round pans."""
        area = self.area
        if area is None or self.diameter is None:
            return None if area is None else area * 0
        return self.diameter * self.diameter * (PI_ERROR / 4)

    @property
    def volume(self) -> Quantity | None:
        """In mL, what its first source says it holds; never worked out from name or size."""
        return self.printed[0].volume.to("mL") if self.printed else None

    @property
    def beside(self) -> tuple[PrintedVolume, ...]:
        """What further sources say; it moves nothing."""
        return self.printed[1:]

    def __str__(self) -> str:
        return self.name


def area_of(pan: Pan) -> Quantity:
    """The area. Raises ``pan.no_area``."""
    if pan.area is None:
        hint = 'measure it and give its size: pan("30 x 20 x 6 cm")'
        raise make_error("pan.no_area", f'the source of "{pan.name}" gives no size', hint)
    return pan.area


def volume_of(pan: Pan) -> Quantity:
    """What the pan holds, in the unit of its first source. Raises ``pan.no_volume``."""
    if not pan.printed:
        message = f'no source says what "{pan.name}" holds, and its size does not tell'
        hint = f'fill it with measured water and give that: pan("{pan.name}", volume="3.2 L")'
        raise make_error("pan.no_volume", message, hint)
    return pan.printed[0].volume


def pan_of_size(text: str) -> Pan:
    """A pan of a size as written, without a volume. Raises ``pan.size`` and ``pan.length``."""
    text = text.strip()
    shape = re.search(_SHAPE, text)
    lengths = _lengths_of(re.sub(_SHAPE, "", text))
    kind = shape[1].lower() if shape else ""
    across = 1 if kind else 2
    if not across <= len(lengths) <= across + 1:
        message = f'"{text}" is no size of a pan: {_told_count(len(lengths))}'
        raise make_error("pan.size", message, _HINT)
    depth = lengths[across] if len(lengths) > across else None
    name = " ".join(text.split())
    if kind == "round":
        return Pan(name, None, None, lengths[0], depth, (), "size as given")
    return Pan(name, lengths[0], lengths[across - 1], None, depth, (), "size as given")


def expect_length(length: Quantity) -> Quantity:
    """The length itself. Raises ``pan.length`` for what is none or not above zero."""
    if length.dimension != "length":
        message = f"a length belongs here, and {length} is of the kind {length.dimension}"
        raise make_error("pan.length", message, _HINT)
    if length <= 0:
        raise make_error("pan.length", f"a pan has no length of {length}", _HINT)
    return length


def _lengths_of(text: str) -> list[Quantity]:
    parts = re.split(_TIMES, text)
    lengths = [_core.quantity(re.sub(_INCH_SIGN, " inch", part)) for part in parts]
    unit = lengths[-1].unit
    if not unit:
        raise make_error("pan.size", f'"{text}" has no unit at its end', _HINT)
    one = _core.quantity(1, unit)
    return [expect_length(length if length.unit else length * one) for length in lengths]


def _told_count(lengths: int) -> str:
    return "one length" if lengths == 1 else f"{lengths} lengths"
