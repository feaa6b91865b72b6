"""Sizes as the command line asks for them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.errors import make_error
from scalepan.trays import fill_trays

if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable
    from fractions import Fraction

    from scalepan._core import Recipe

_WAYS = ("portions", "factor", "batch", "raw_batch", "stock", "tray")
_BESIDE = ("portion_size", "spare", "serving_loss")
_COMPANIONS = (("portions", "40", _BESIDE), ("tray", '"GN 1/1 65"', ("trays", "by")))


def sized(recipe: Recipe, options: argparse.Namespace) -> Recipe:
    """The recipe at the size asked for; as it is where none is.

    Raises:
        RecipeError: ``recipe.size`` for two sizes, two stocks of one line, and what goes with
            another way to ask; what ``Recipe.scale`` raises.
        MeasureError: what ``fill_trays`` raises.
    """
    _expect_one_way(options)
    if options.tray is not None:
        return fill_trays(recipe, options.tray, _count(options), by=_way(options))
    asked = {name: getattr(options, name) for name in _given(options, _WAYS + _BESIDE)}
    if options.stock is not None:
        asked["stock"] = _stock(options.stock)
    return recipe.scale(**asked) if asked else recipe


def remarks(recipe: Recipe, options: argparse.Namespace) -> list[str]:
    """What the size asked for comes from: the line that limits it, or the trays it fills."""
    texts = [fills] if (fills := trays_filled(recipe, options)) else []
    if options.stock is not None:
        line, portions = recipe.stock_limit(_stock(options.stock))
        allows = f"its stock allows exactly {_core.mixed_text(portions)} portions"
        texts.append(f"{line} limits the size: {allows}")
    return texts


def trays_filled(recipe: Recipe, options: argparse.Namespace) -> str:
    """The trays asked for, and the recipe's own that they stand for; empty where none are."""
    if options.tray is None:
        return ""
    asked = f"{_core.quantity(_count(options)).told} x {options.tray}"
    own = f"{_core.quantity(recipe.trays * recipe.factor).told} x {recipe.tray}"
    return f"fills {asked}: by {_way(options)} as much as {own}"


def document(recipe: Recipe, options: argparse.Namespace) -> dict[str, Any]:
    """The same for ``--json``; nothing for a size that was asked for as such."""
    if options.stock is not None:
        line, portions = recipe.stock_limit(_stock(options.stock))
        return {"stock_limit": {"line": line, "portions": str(portions)}}
    if options.tray is not None:
        count = str(_count(options))
        return {"fills": {"tray": options.tray, "trays": count, "by": _way(options)}}
    return {}


def _count(options: argparse.Namespace) -> Fraction | int:
    return 1 if options.trays is None else options.trays


def _way(options: argparse.Namespace) -> str:
    return options.by or "area"


def _given(options: argparse.Namespace, names: Iterable[str]) -> list[str]:
    return [name for name in names if getattr(options, name) is not None]


def _expect_one_way(options: argparse.Namespace) -> None:
    """One size, and beside it only what goes with it."""
    ways = _given(options, _WAYS)
    if len(ways) > 1:
        message = f"a size is given in two ways, by {_flag(ways[0])} and by {_flag(ways[1])}"
        raise make_error("recipe.size", message, "write one of the two")
    for way, example, companions in _COMPANIONS:
        for name in _given(options, companions):
            if ways != [way]:
                other = f"the size is given by {_flag(ways[0])}" if ways else "that is not given"
                message = f"{_flag(name)} goes with {_flag(way)}, but {other}"
                hint = f"write {_flag(way)} {example} {_flag(name)} {_written(options, name)}"
                raise make_error("recipe.size", message, hint)


def _written(options: argparse.Namespace, name: str) -> str:
    value = getattr(options, name)
    text = value if isinstance(value, str) else _core.exact_text(value)
    return f'"{text}"' if " " in text else text


def _flag(name: str) -> str:
    return "--" + name.replace("_", "-")


def _stock(entries: list[str]) -> dict[str, str]:
    stock: dict[str, str] = {}
    for entry in entries:
        line, amount = _stocked(entry)
        if line in stock:
            message = f'the stock of {line} is given twice, as "{stock[line]}" and as "{amount}"'
            raise make_error("recipe.size", message, "write one of the two, or their sum")
        stock[line] = amount
    return stock


def _stocked(entry: str) -> tuple[str, str]:
    line, equals, amount = entry.partition("=")
    if not equals:
        message = f'"{entry}" is no amount of a line'
        raise make_error("recipe.size", message, "write --stock eggs=30")
    return line.strip(), amount.strip()
