"""Pages to print, as the commands write them beside what they print themselves."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.printing import PrintedPages

if TYPE_CHECKING:
    import argparse
    from collections.abc import Sequence

    from scalepan._core import Basket, Costing, Recipe
    from scalepan.printing import Part


def save_kitchen_page(
    options: argparse.Namespace, recipe: Recipe, sets: dict[str, Any], fills: str
) -> None:
    """Writes the files that are asked for, as the others do; a page is made only then."""
    if _asked(options):
        from scalepan.printed.kitchen import kitchen_part

        _save(options, kitchen_part(recipe, sets, fills))


def save_shopping_page(
    options: argparse.Namespace, costing: Costing | Basket, remarks: Sequence[str] = ()
) -> None:
    if _asked(options):
        from scalepan.printed.shopping import shopping_part

        _save(options, shopping_part(costing, remarks))


def save_costing_page(
    options: argparse.Namespace, costing: Costing, remarks: Sequence[str]
) -> None:
    if _asked(options):
        from scalepan.printed.costing import costing_part

        _save(options, costing_part(costing, remarks))


def _asked(options: argparse.Namespace) -> bool:
    return options.html is not None or options.pdf is not None


def _save(options: argparse.Namespace, part: Part) -> None:
    pages = PrintedPages([part], options.paper)
    if options.html is not None:
        pages.save(options.html)
    if options.pdf is not None:
        pages.save_pdf(options.pdf)
