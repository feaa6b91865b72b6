"""A costing as the text of its file: the recipe, facts and prices it goes by, and its changes."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.errors import CostError
from scalepan.foods import FACT_COLUMNS, FOOD_COLUMNS
from scalepan.sheet_forms import BareNumber
from scalepan.sheet_writer import change_lines, key_text, pairs, section, variant_lines
from scalepan.toml_text import whole

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping, Sequence

    from scalepan._core import Catalog, Changes, Costing, Recipe
    from scalepan.type_names import CostOptions

VERSION = 1


def costing_file_text(
    costing: Costing, catalog: Catalog, changes: Changes, variants: Mapping[str, Changes]
) -> str:
    """The text of the file.

    Args:
        costing: by a recipe read from a text.
        catalog: what of its catalogue is kept.
        changes: those made to its sheet.
        variants: of its sheet.

    Raises:
        CostError: ``cost.recipe_text``.
        SheetError, NumberError: as ``Sheet.text``.
    """
    recipe = costing.recipe
    options = costing.options
    lines = [f"scalepan_costing = {VERSION}"]
    lines += section("costing", {**_size(recipe), **_options(options)})
    lines += ["", "[recipes]"]
    lines += [f"{key_text(name)} = {whole(text)}" for name, text in recipe_files(recipe).items()]
    stock = options["stock"]
    lines += ["", "[pinned]"]
    lines += _listed("prices", (offer.row for offer in costing.offers))
    lines += _listed("stock", (item.row for item in (stock.items if stock else ())))
    lines += _listed("foods", map(food_row, catalog.food_rows))
    lines += _listed("names", map(name_row, catalog.name_rows))
    lines += _listed("facts", map(fact_row, catalog.fact_rows))
    region, choices = catalog.choices
    lines += section("chosen", {"region": region} if region else {})
    lines += section("chosen.names", choices)
    made = change_lines(changes)
    lines += ["", "[sheet]", "changes = [", *made, "]"] if made else []
    return "\n".join([*lines, *variant_lines(variants)]) + "\n"


def recipe_files(recipe: Recipe) -> dict[str, str]:
    """The texts it was read from, its own first, by the names of their files.

    Raises:
        CostError: ``cost.recipe_text``.
    """
    if recipe.file is None:
        message = f"{recipe.name} is no recipe that was read from a text of its own"
        raise CostError("cost.recipe_text", message, "cost the recipe that its file has")
    files = [recipe.file, *(base.recipe.file for base in recipe.bases)]
    return dict(file for file in files if file is not None)


def _size(recipe: Recipe) -> dict[str, str]:
    assert recipe.file is not None
    sizes = (("served", recipe.portions), ("portions", recipe.made), ("factor", recipe.factor))
    return {"recipe": recipe.file[0], **{key: _number(size) for key, size in sizes}}


def _number(number: Any) -> str:
    text = _core.exact_text(number)
    return BareNumber(text) if text.isdecimal() and len(text) < 16 else text


def _options(options: CostOptions) -> dict[str, Any]:
    told: dict[str, Any] = {"strict": True} if options["strict"] else {}
    if options["taxes"] != "with":
        told["taxes"] = options["taxes"]
    return {**told, "day": options["day"]} if options["day"] else told


def food_row(
    row: tuple[Sequence[str], Sequence[str], Sequence[str], Sequence[str]],
) -> dict[str, str]:
    """One of ``Catalog.food_rows`` by column, as the others of its two kin below."""
    texts, *lists = row
    told = dict(zip(FOOD_COLUMNS, (*texts, *(";".join(one) for one in lists)), strict=True))
    return {column: text for column, text in told.items() if text}


def name_row(row: tuple[str, str, str, str, bool]) -> dict[str, str]:
    name, plural, region, food, near = row
    told = {"name": name, "plural": plural, "region": region, "food": food}
    told["match"] = "near" if near else ""
    return {column: text for column, text in told.items() if text}


def fact_row(row: tuple[Sequence[str], str]) -> dict[str, str]:
    texts, layer = row
    told = dict(zip((*FACT_COLUMNS, "layer"), (*texts, layer), strict=True))
    return {column: text for column, text in told.items() if text}


def _listed(name: str, rows: Iterable[Mapping[str, str]]) -> list[str]:
    lines = [f"  {{ {', '.join(pairs(row))} }}," for row in rows]
    return [f"{name} = [", *lines, "]"] if lines else []
