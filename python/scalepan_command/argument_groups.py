"""Numbers and groups of arguments that several commands take; nothing here needs the core."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from fractions import Fraction

MOST_POINTS = 100_000


def number(text: str) -> Fraction:
    """An argument such as ``40`` or ``2 1/2``."""
    from scalepan import _core  # here, so that help needs no core
    from scalepan.errors import Error

    try:
        return _core.parse_amount_number(text)
    except Error as error:
        raise argparse.ArgumentTypeError(str(error)) from None


def range_of_portions(text: str) -> range:
    """An argument such as ``1:60``, both ends counted."""
    ends = [number(end) for end in text.split(":")]
    if len(ends) != 2 or any(end.denominator != 1 for end in ends):
        raise argparse.ArgumentTypeError("write first and last number, as 1:60")
    first, last = (int(end) for end in ends)
    if first < 1 or last < first or last - first >= MOST_POINTS:
        message = f"a range goes up from 1 or more, by at most {MOST_POINTS} points, as 1:60"
        raise argparse.ArgumentTypeError(message)
    return range(first, last + 1)


def add_size(command: argparse.ArgumentParser) -> None:
    """One way to ask for a size, and what goes with portions or with a tray."""
    size = command.add_argument_group("size", "one of these; left out, the size as written")
    size.add_argument("--portions", type=number, metavar="N", help="how many to serve")
    size.add_argument("--factor", type=number, metavar="N", help="times the written amounts")
    size.add_argument("--batch", metavar="AMOUNT", help='what it shall make, such as "12 kg"')
    size.add_argument("--raw-batch", metavar="AMOUNT", help="the same before cooking")
    size.add_argument(
        "--stock",
        action="append",
        metavar="LINE=AMOUNT",
        help="the most whole portions that so much of a line allows; may repeat",
    )
    size.add_argument("--tray", metavar="PAN", help='a pan to fill, such as "GN 1/1 65"')
    beside = command.add_argument_group("with --portions")
    beside.add_argument("--portion-size", metavar="AMOUNT", help='of each, such as "5 oz"')
    beside.add_argument("--spare", type=number, metavar="N", help="portions to make beside them")
    beside.add_argument(
        "--serving-loss", metavar="SHARE", help='of what is made that is never served, as "5 %%"'
    )
    tray = command.add_argument_group("with --tray")
    tray.add_argument("--trays", type=number, metavar="N", help="how many of them (1)")
    tray.add_argument("--by", choices=("area", "volume"), help="area keeps the depth (default)")


def add_page(command: argparse.ArgumentParser) -> None:
    """Where a page to print goes, and its paper."""
    group = command.add_argument_group("a page to print, beside the text")
    group.add_argument("--html", metavar="FILE", help="one HTML file that stands alone")
    group.add_argument("--pdf", metavar="FILE", help="the same by a Chromium that is installed")
    group.add_argument("--paper", choices=("A4", "Letter"), default="A4", help="of the page (A4)")
