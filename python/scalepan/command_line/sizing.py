"""Sizes as the command line asks for them."""

from __future__ import annotations

import argparse
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.errors import Error, make_error
from scalepan.trays import fill_trays

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import Recipe

_WAYS = ("portions", "factor", "batch", "raw_batch", "stock", "tray")
_BESIDE = ("portion_size", "spare", "serving_loss")


def number(text: str) -> Fraction:
    """An argument such as ``40`` or ``2 1/2``."""
    try:
        return _core.parse_amount_number(text)
    except Error as error:
        raise argparse.ArgumentTypeError(str(error)) from None


def add_arguments(command: argparse.ArgumentParser) -> None:
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
    tray.add_argument("--trays", type=number, default=1, metavar="N", help="how many of them")
    tray.add_argument(
        "--by", choices=("area", "volume"), default="area", help="area keeps the depth (default)"
    )


def sized(recipe: Recipe, options: argparse.Namespace) -> Recipe:
    """The recipe at the size asked for; as it is where none is.

    Raises:
        RecipeError: what ``Recipe.scale`` raises.
        MeasureError: what ``fill_trays`` raises.
    """
    given = {name: getattr(options, name) for name in _WAYS + _BESIDE}
    asked = {name: value for name, value in given.items() if value is not None}
    if not asked:
        return recipe
    if "stock" in asked:
        asked["stock"] = dict(_stocked(entry) for entry in asked["stock"])
    if "tray" in asked:
        _expect_alone(asked)
        return fill_trays(recipe, options.tray, options.trays, by=options.by)
    return recipe.scale(**asked)


def _expect_alone(asked: dict[str, Any]) -> None:
    """A tray is a size of its own."""
    other = next((name for name in asked if name != "tray"), None)
    if other is not None:
        message = f"a size is given in two ways, by tray and by {other}"
        raise make_error("recipe.size", message, "write one of the two")


def _stocked(entry: str) -> tuple[str, str]:
    line, equals, amount = entry.partition("=")
    if not equals:
        message = f'"{entry}" is no amount of a line'
        raise make_error("recipe.size", message, "write --stock eggs=30")
    return line.strip(), amount.strip()
