"""Checks of whole folders: everything that is wrong or doubtful in recipes, prices and the like."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.checks.finds import Find, find_of
from scalepan.checks.found_files import found_files
from scalepan.checks.of_prices import PriceRows
from scalepan.checks.of_recipes import RecipeCheck
from scalepan.checks.of_tables import check_other, own_catalog
from scalepan.errors import Error

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable, Sequence

    from scalepan.checks.finds import CheckedFile

__all__ = ["check_files", "found_files"]


def check_files(
    files: Sequence[CheckedFile], progress: Callable[[int], None] | None = None
) -> None:
    """Adds to each file, as ``found_files`` gives them, what is found in it.

    Facts, foods and names of your own among them are laid over the bundled ones; recipes are
    costed, at the size they are written for, by all price books together. Nothing that a file
    holds ends the check.

    Args:
        progress: called with how many of the files are done.
    """
    catalog = own_catalog(files)
    recipes = RecipeCheck(files, catalog)
    recipes_first = sorted(files, key=lambda file: file.kind != "recipe")
    for done, file in enumerate(recipes_first, start=1):
        if file.kind == "recipe":
            _guarded(file, files, recipes.read)
        else:
            _guarded(file, files, lambda one: check_other(one, catalog, recipes.measures))
        if progress is not None:
            progress(done)
    prices = PriceRows(recipes.measures, catalog)
    for file in _of(files, "price book"):
        _guarded(file, files, prices.read)
    prices.look_at_dates()
    book = prices.book()
    for file in _of(files, "recipe"):
        _guarded(file, files, lambda one: recipes.look_at(one, book))


def _of(files: Iterable[CheckedFile], kind: str) -> list[CheckedFile]:
    return [file for file in files if file.kind == kind]


def _guarded(
    file: CheckedFile, files: Iterable[CheckedFile], check: Callable[[CheckedFile], None]
) -> None:
    """Runs a check; one that fails is a find too, and the others go on."""
    try:
        check(file)
    except Error as error:
        # The row of a price book can be wrong for a recipe only.
        at = next((other for other in files if other.path == error.file), file)
        at.add(find_of(error, file.path))
    except Exception as fault:
        message = f"the program itself failed: {type(fault).__name__}: {fault}"
        file.add(Find("command.fault", message, "report it, with the file", file.path))
