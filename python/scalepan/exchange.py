"""Recipes, costings and the rest handed to other programs, and taken from them.

Everything here is loaded when it is used: ``import scalepan`` stays quick.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.files import read_text, write_whole, write_whole_bytes

if TYPE_CHECKING:
    from collections.abc import Mapping
    from fractions import Fraction

    from scalepan._core import Catalog, Recipe
    from scalepan.files import PathLike
    from scalepan.frames import Frame, Numbers


# Pages are seldom near this.
MOST_OF_A_PAGE = 5_000_000


def recipe(
    name: str,
    serves: object,
    lines: object,
    *,
    catalog: Catalog | None = None,
    file: str = "",
    **keys: object,
) -> Recipe:
    """A recipe out of Python: what its file would say, key by key.

    scalepan.recipe("Broth", 4, ["200 g pearl barley", "1 L water"], tested_at=[4])

    Args:
        name: of the dish.
        serves: how many portions the amounts are for.
        lines: texts, or mappings with the keys of a line; or a frame with the columns line and, if
            wanted, id, stage, state, rule, note and optional.
        catalog: as for ``read_recipe``.
        file: the name of its file, which errors show, and the folder paths of bases start from.
        keys: any other key of a recipe file: measures, method, bases, makes and so on. Numbers are
            int, Fraction, Decimal or text.

    Raises:
        RecipeError: ``recipe.unknown_key``, ``recipe.type``, and what ``read_recipe`` raises, with
            the line or key; ``line.table``, ``line.column``, ``line.cell`` for a frame.
    """
    from scalepan.recipe_writer import recipe_of

    return recipe_of({"name": name, "serves": serves, **keys}, lines, catalog, file)


def recipe_text(recipe: Recipe) -> str:
    """The text of its file: that of a recipe read from a file word for word.

    The text is of the written size, whatever size the recipe is at; ``tested_at``, rules, ids and
    bases are those it was read with, and paths of bases start from where its file was.

    Raises:
        RecipeError: ``recipe.no_text`` for a base that stands inside the file of another.
    """
    from scalepan.recipe_writer import recipe_text

    return recipe_text(recipe)


def write_recipe(recipe: Recipe, path: PathLike) -> None:
    """Writes ``recipe_text`` to a file, whole or not at all.

    Raises:
        RecipeError: what ``recipe_text`` raises; ``base.file`` where a base's file would not be
            found from the new place.
        FileError: ``file.unwritable``.
    """
    from scalepan.recipe_writer import write_recipe

    write_recipe(recipe, path)


def read_json_ld(
    path: PathLike,
    *,
    name: str | None = None,
    serves: int | Fraction | str | None = None,
    measures: str | None = None,
    decimal: str = "point",
    region: str = "",
    replace: Mapping[str, str] | None = None,
    draft: bool = False,
    catalog: Catalog | None = None,
) -> Recipe:
    """The recipe in a JSON-LD file, or in the JSON-LD scripts of an HTML page.

    Its own TOML text, for ``write_recipe``, has the lines and steps as they are published, without
    tags and entities, and the other properties as remarks at its head.

    Args:
        path: the file.
        name: of the recipe that is meant, where there are several.
        serves: portions, where the yield does not say one number of them.
        measures: ``us``, ``metric``, ``imperial`` or ``au``: which cup and spoon the lines mean,
            which JSON-LD has no word for.
        decimal: ``comma`` where numbers are written 2,5.
        region: whose names of foods are meant.
        replace: lines as they are published, and what to read in their place: for lines that
            cannot be read.
        draft: leave such lines out and note them among the remarks, in place of an error.
        catalog: as for ``read_recipe``.

    Raises:
        FileError: ``json.syntax``, ``json.duplicate``, ``file.unreadable`` and others.
        RecipeError: ``recipe.json_ld`` where no recipe is there, or none of that name, or several,
            or where a property is there twice, in two forms; ``recipe.missing``, ``recipe.yield``,
            ``recipe.type``; and what reading a line raises, with file and line, and the column
            where the text is written without escapes.
    """
    return parse_json_ld(
        read_text(path, MOST_OF_A_PAGE),
        file=str(path),
        name=name,
        serves=serves,
        measures=measures,
        decimal=decimal,
        region=region,
        replace=replace,
        draft=draft,
        catalog=catalog,
    )


def parse_json_ld(
    text: str,
    *,
    file: str = "",
    name: str | None = None,
    serves: int | Fraction | str | None = None,
    measures: str | None = None,
    decimal: str = "point",
    region: str = "",
    replace: Mapping[str, str] | None = None,
    draft: bool = False,
    catalog: Catalog | None = None,
) -> Recipe:
    """As ``read_json_ld``, from text; ``file`` is the name that errors show."""
    from scalepan.json_ld_reader import Asked, recipe_of_json_ld

    asked = Asked(name, serves, measures or "", decimal, region, dict(replace or {}), draft)
    return recipe_of_json_ld(text, file, asked, catalog)


def json_ld(recipe: Recipe) -> str:
    """The recipe at its size, for ``<script type="application/ld+json">`` of a page.

    Amounts are exact, as numbers a cook writes (``1 1/3 cup``); each line is read back, and has the
    same amount and food, before it is given. Bases come first, their lines and steps under their
    names, as JSON-LD knows no recipe inside another. Rules, stages and tested sizes have no place
    in it, nor have notes, what a step uses, and which cup is meant.

    Raises:
        RecipeError: ``recipe.json_ld`` for a line that no text says exactly.
    """
    from scalepan.json_ld_writer import json_ld_text

    return json_ld_text(recipe)


def write_json_ld(recipe: Recipe, path: PathLike) -> None:
    """Writes ``json_ld`` to a file, whole or not at all.

    Raises what ``json_ld`` raises, and FileError (``file.unwritable``).
    """
    write_whole(path, json_ld(recipe) + "\n")


def frame(shown: object, *, numbers: Numbers = "exact") -> Frame:
    """The rows of an object as columns of a frame, with the Arrow PyCapsule interface.

    polars.DataFrame(scalepan.frame(costing.shopping))

    Args:
        shown: a costing (its lines' costs), a shopping list, a basket (its dishes), a curve, a
            price book, stock, a catalogue (its facts), a yield test (its trials, as its file has
            them), a sheet (its cells) or a recipe (its lines).
        numbers: ``"exact"`` for text ``n/d``; ``"float64"`` rounds each to the nearest double,
            half to even (IEEE 754), which is off by at most 1/2^53 of it.

    Raises:
        FileError: ``frame.kind`` for another object, ``frame.numbers``.
    """
    from scalepan.frame_columns import frame_of

    return frame_of(shown, numbers)


def write_xlsx(shown: object, path: PathLike) -> None:
    """Writes a workbook: a worksheet for each section of the object's report.

    The rows are those that a notebook and a printed page show. A figure is a number, rounded as it
    is told (money half up to the currency's minor unit); where that rounds it, a column of text
    beside has it exactly. Texts are never written as formulas or links.

    Args:
        shown: a costing, its shopping, a curve, a price book, a basket, or whatever else has a
            report in a notebook.
        path: of the file, written whole or not at all.

    Raises:
        FileError: ``file.library`` without XlsxWriter (``pip install 'scalepan[xlsx]'``);
            ``file.xlsx`` for what has no report, and for more rows or longer texts than such a file
            holds; ``file.form`` for a name that does not end in .xlsx; ``file.unwritable``.
    """
    import os

    from scalepan.errors import make_error
    from scalepan.workbook import workbook_bytes

    name = str(path)
    if not name.lower().endswith(".xlsx"):
        meant = f"{os.path.splitext(name)[0]}.xlsx"
        message = "a workbook is written in the form xlsx, which this name does not say"
        raise make_error("file.form", message, f'name it "{meant}"', name)

    write_whole_bytes(path, workbook_bytes(shown))


def to_json(shown: object) -> str:
    """An object as JSON, after ``docs/scalepan.schema.json``.

    Exact numbers are text, ``n/d`` or ``n``; amounts have ``value`` and ``unit``. An input (recipe,
    prices, facts, sheet, costing and so on) can be read back with ``from_json``; a result has all
    its public attributes.

    Args:
        shown: any object of this package that is data, or a list of them.

    Raises:
        FileError: ``json.no_form`` for any other object.
        RecipeError: ``recipe.no_text`` for a base inside the file of another recipe.
        CostError, SheetError, NumberError: as ``Costing.text`` and ``Sheet.text``.
    """
    from scalepan.json_writer import json_text

    return json_text(shown)


def from_json(text: str, *, file: str = "", catalog: Catalog | None = None) -> object:
    """The object that ``to_json`` wrote, made anew from what it goes by.

    What is made is compared with the text, figure by figure: one that differs is refused.

    Args:
        text: JSON.
        file: the name that errors show.
        catalog: foods and facts for recipes; left out, the bundled ones. A costing has its own.

    Raises:
        FileError: ``json.syntax``, ``json.duplicate``, ``json.schema``, ``json.missing``,
            ``json.type``, ``json.key``; ``json.not_read`` for a result, with what to make it from;
            ``json.figure`` with both figures; ``file.too_large``. Each with line and column.
        Error: what reading the inputs raises.
    """
    from scalepan.json_reader import object_of

    return object_of(text, file, catalog)
