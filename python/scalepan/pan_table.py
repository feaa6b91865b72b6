"""Pans and trays as data, and how many times one pan goes into another.

pan,length,width,diameter,depth,volume,volume_high,filled,source
deep tray,60 cm,40 cm,,9 cm,18 L,,usable,own measuring
"""

from __future__ import annotations

import os
import re
from fractions import Fraction
from functools import cache, partial
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.errors import make_error
from scalepan.files import at_place, read_text
from scalepan.pan_size import (
    PI_ERROR,
    Pan,
    PrintedVolume,
    area_of,
    expect_length,
    pan_of_size,
    volume_of,
)

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping

    from scalepan._core import Quantity
    from scalepan.files import PathLike
    from scalepan.type_names import Placed

    Row = Mapping[str, Placed]
    Number = int | Fraction | str

PAN_COLUMNS = (
    "pan",
    "length",
    "width",
    "diameter",
    "depth",
    "volume",
    "volume_high",
    "filled",
    "source",
)

_SIZES = ("length", "width", "diameter", "depth")
_SIDES = r"(\d+(?: \d+/\d+)?) x (\d+(?: \d+/\d+)?)(?= x )"


def pans() -> dict[str, Pan]:
    """The bundled pans by their names. Each has its source (``data/pans.csv``)."""
    return dict(_bundled_pans())


def read_pans(path: PathLike) -> dict[str, Pan]:
    """The pans of a CSV file by their names.

    The file has the columns of ``PAN_COLUMNS``, of which pan is required: length and width, or a
    diameter, with their units (``60 cm``); what the pan holds (``18 L``, ``8 cup_us``), up to
    ``volume_high`` where the source gives a range; ``filled`` says how full. Further rows of one
    pan below the first are further sources for what it holds.

    Raises:
        MeasureError: ``pan.size``, ``pan.length``, ``pan.volume``, ``pan.twice``, ``pan.name``,
            ``pan.column``, ``pan.fields``, ``pan.no_rows``, ``pan.syntax``,
            ``pan.decimal``, ``pan.control_character`` and what reading an amount raises, with file
            and line.
    """
    from scalepan.csv_document import Columns, read_rows  # here: `import scalepan` stays quick

    found: dict[str, Pan] = {}
    columns = Columns("pan", ("pan",), PAN_COLUMNS[1:], (*_SIZES, "volume", "volume_high"))
    for row in read_rows(read_text(path), str(path), columns):
        at_place(row["pan"], partial(_take, found, row))
    return {pan.name: pan for pan in found.values()}


def pan(
    name: str,
    *,
    volume: Quantity | str | None = None,
    measures: str | None = None,
    pans: Mapping[str, Pan] | None = None,
) -> Pan:
    """A pan by its name, or of a size of your own.

    Args:
        name: of a known pan, ``"GN 1/1 65"``, or a size: ``"30 x 20 x 6 cm"``, ``"9 x 13 in"``,
            ``"8 x 2 inch round"``, ``"20 cm square"``. A size alone has no volume.
        volume: what it holds by your own measuring; goes before what others say.
        measures: ``us``, ``metric``, ``imperial`` or ``au``: which cup ``volume`` means.
        pans: by name, as ``read_pans`` gives them; left out, the bundled ones.

    Raises:
        MeasureError: ``pan.unknown`` with the nearest names, ``pan.size``, ``pan.length``,
            ``pan.volume`` and what reading an amount raises.
    """
    known = _bundled_pans() if pans is None else pans
    chosen = _named(name, known) or _sized(name, known)
    if volume is None:
        return chosen
    given = _core.quantity(volume, measures=measures) if isinstance(volume, str) else volume
    own = PrintedVolume(_expect_volume(given), given, "", "as given")
    return chosen._replace(printed=(own, *chosen.printed))


def pan_ratio(
    new: Pan | str,
    old: Pan | str,
    count_new: Number = 1,
    count_old: Number = 1,
    by: str = "area",
) -> Fraction:
    """The factor from ``count_old`` old pans to ``count_new`` new ones.

    By ``area`` the food stands as deep as before; by ``volume`` the pans are filled alike, and
    each needs a published or own volume. Exact, except by area between a round pan and one that is
    not: pi is rounded half up to 15 decimals there, and ``pan_ratio_error`` bounds the error.

    >>> scalepan.pan_ratio("9 x 13 in", "8 in square")
    Fraction(117, 64)

    Raises:
        MeasureError: ``pan.no_area``, ``pan.no_volume``, ``pan.count``, ``pan.by``, and what
            ``pan`` raises.
    """
    measure = {"area": area_of, "volume": volume_of}.get(by)
    if measure is None:
        raise make_error("pan.by", f'pans are not compared by "{by}"', "by: area, volume")
    share = measure(_pan(new)) / measure(_pan(old))
    return share.value * _count(count_new) / _count(count_old)


def pan_ratio_error(
    new: Pan | str,
    old: Pan | str,
    count_new: Number = 1,
    count_old: Number = 1,
    by: str = "area",
) -> Fraction:
    """The most that ``pan_ratio`` of the same pans is off: zero where that is exact.

    Raises what ``pan_ratio`` raises.
    """
    ratio = pan_ratio(new, old, count_new, count_old, by)
    rounds = [_pan(each).diameter is not None for each in (new, old)]
    if by == "volume" or rounds[0] == rounds[1]:
        return Fraction(0)
    # Pi and its rounding both lie above 3, so its relative error is below PI_ERROR / 3.
    return ratio * PI_ERROR / 3


@cache
def _bundled_pans() -> dict[str, Pan]:
    return read_pans(os.path.join(os.path.dirname(__file__), "data", "pans.csv"))


def _pan(given: Pan | str) -> Pan:
    return given if isinstance(given, Pan) else pan(given)


def _count(given: Number) -> Fraction:
    count = _core.number(given)
    if count <= 0:
        message = f"there are no {_core.exact_text(count)} pans"
        raise make_error("pan.count", message, "give a number above zero")
    return count


def _key(name: str) -> str:
    """Spelling that names are compared by.

    Case, spaces, 2-1/2 beside 2 1/2, and 9 x 13 beside 13 x 9 do not matter.
    """
    plain = re.sub(r"(?<=\d)-(?=\d+/\d)", " ", name.replace("×", "x"))
    key = " ".join(plain.casefold().split())
    if "round" in key:
        return key
    return re.sub(_SIDES, lambda sides: _in_order(sides[1], sides[2]), key)


def _in_order(*sides: str) -> str:
    return " x ".join(sorted(sides))


def _named(name: str, known: Mapping[str, Pan]) -> Pan | None:
    key = _key(name)
    return next((pan for pan in known.values() if _key(pan.name) == key), None)


def _sized(name: str, known: Mapping[str, Pan]) -> Pan:
    if not name.strip()[:1].isalpha():
        return pan_of_size(name)
    near = _core.nearest_names(_key(name), [_key(other) for other in known])
    names = [pan.name for pan in known.values() if _key(pan.name) in near]
    nearest = f"nearest: {', '.join(names)}; " if names else ""
    hint = f"{nearest}a pan of your own is written as 30 x 20 x 6 cm"
    raise make_error("pan.unknown", f'no pan is called "{name}"', hint)


def _take(found: dict[str, Pan], row: Row) -> None:
    new = _pan_of(row)
    key = _key(new.name)
    found[key] = _joined(found[key], new) if key in found else new


def _pan_of(row: Row) -> Pan:
    name = _text(row, "pan")
    if not name:
        raise make_error("pan.name", "a pan has no name")
    length, width, diameter, depth = (_length(row, column) for column in _SIZES)
    printed = _printed(row)
    if (length is None) != (width is None) or (length is not None and diameter is not None):
        message = f'the size of "{name}" is neither length and width nor a diameter'
        raise make_error("pan.size", message, "give length and width, or diameter")
    if length is None and diameter is None and not printed:
        message = f'"{name}" has neither a size nor a volume'
        raise make_error("pan.size", message, "give length and width, a diameter, or a volume")
    return Pan(name, length, width, diameter, depth, printed, _text(row, "source"))


def _joined(old: Pan, new: Pan) -> Pan:
    """The pan of an earlier row with the volume of a further one."""
    sizes = [(getattr(old, column), getattr(new, column)) for column in _SIZES]
    if not new.printed or any(given is not None and given != known for known, given in sizes):
        message = f'"{new.name}" is there twice'
        hint = "a further row of a pan gives another source's volume for the same size"
        raise make_error("pan.twice", message, hint)
    return old._replace(printed=(*old.printed, *new.printed))


def _printed(row: Row) -> tuple[PrintedVolume, ...]:
    volume = _volume(row, "volume")
    high = _volume(row, "volume_high")
    if volume is None:
        if high is not None:
            raise make_error("pan.volume", "a highest volume stands without the volume")
        return ()
    if high is not None and high < volume:
        raise make_error("pan.volume", f"a range goes up, and {high} is below {volume}")
    return (PrintedVolume(volume, high or volume, _text(row, "filled"), _text(row, "source")),)


def _length(row: Row, column: str) -> Quantity | None:
    return _read(row, column, expect_length)


def _volume(row: Row, column: str) -> Quantity | None:
    return _read(row, column, _expect_volume)


def _read(row: Row, column: str, expect: Callable[[Quantity], Quantity]) -> Quantity | None:
    text = _text(row, column)
    return at_place(row[column], lambda: expect(_core.quantity(text))) if text else None


def _expect_volume(volume: Quantity) -> Quantity:
    if volume.dimension != "volume" or volume <= 0:
        message = f"a pan holds a volume above zero, and {volume} is none"
        raise make_error("pan.volume", message, "write it as 3.2 L or 14 cup_us")
    return volume


def _text(row: Row, column: str) -> str:
    return row[column][0].strip() if column in row else ""
