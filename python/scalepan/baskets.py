"""Baskets: several dishes, each at its own size, bought together.

basket([broth.scale(portions=40), pie.scale(portions=30)], prices).saving
basket(read_dishes("week.toml"), prices)

The file of dishes is TOML; each dish has a recipe, by relative path, and a size:

dishes = [
  { recipe = "broth.toml", portions = 40, spare = 2 },
  { recipe = "broth.toml", factor = 1, name = "Broth for the late watch" },
  { recipe = "pie.toml", tray = "GN 1/1 65", trays = 3 },
  { recipe = "porridge.toml" },     # at the size it is written for
]
"""

from __future__ import annotations

import os
from typing import TYPE_CHECKING, Any, NamedTuple

from scalepan import _core
from scalepan._core import Basket, PriceBook, Recipe
from scalepan.errors import ArgumentError, FileError
from scalepan.files import read_text
from scalepan.recipes import Library
from scalepan.toml_table import TomlTable, name_of
from scalepan.trays import fill_trays

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import Catalog, Stock
    from scalepan.files import PathLike
    from scalepan.toml_places import Path, Places
    from scalepan.type_names import Taxes

_SIZES = ("portions", "factor", "batch", "raw_batch", "stock", "tray")
_BESIDE = {
    "portion_size": "portions",
    "spare": "portions",
    "serving_loss": "portions",
    "trays": "tray",
    "by": "tray",
}
_NUMBERS = ("portions", "factor", "spare", "trays")
_KEYS = ("recipe", "name", *_SIZES, *_BESIDE)
_HINT = 'dishes = [{ recipe = "broth.toml", portions = 40 }]'


class Dish(NamedTuple):
    """A recipe at its size, as one of the dishes of a basket.

    Attributes:
        recipe: scaled to the size wanted.
        name: what tells it from the others; empty: that of the recipe.
        file, line, column: where the dish is written, for errors.
    """

    recipe: Recipe
    name: str = ""
    file: str = ""
    line: int = 0
    column: int = 0


def basket(
    dishes: Iterable[Recipe | Dish],
    prices: PriceBook,
    *,
    strict: bool = False,
    taxes: Taxes = "with",
    stock: Stock | None = None,
    day: str = "",
) -> Basket:
    """The dishes bought together: the needs of one item are pooled before packs are chosen.

    Each dish is charged its share of every item by use, so that the dishes come to the basket
    exactly. A base of several dishes is made by each for itself; what it takes is pooled too.

    Args:
        dishes: recipes, or ``Dish`` where two of them have one name.
        prices: as for ``cost``.
        strict, taxes, stock, day: as for ``cost``. What is on hand is used for all dishes
            together; what buying together saves is counted without it.

    Raises:
        CostError: ``basket.no_dishes``, ``basket.name``, and what ``cost`` raises.
    """
    each = [_dish(dish) for dish in dishes]
    placed = [
        ((dish.name or dish.recipe.name, dish.file, dish.line, dish.column), dish.recipe)
        for dish in each
    ]
    return _core.basket(placed, prices.on(), strict, taxes, stock, day)


def _dish(given: object) -> Dish:
    if isinstance(given, Dish):
        return given
    if isinstance(given, _core.Recipe):
        return Dish(given)
    shown = f'"{given}"' if isinstance(given, str) else f"of the type {type(given).__name__}"
    message = f"a dish of a basket is a recipe or a Dish, and one given is {shown}"
    hint = f'write scalepan.read_recipe("{given}")' if isinstance(given, str) else ""
    raise ArgumentError("argument.kind", message, hint)


def read_dishes(path: PathLike, *, catalog: Catalog | None = None) -> list[Dish]:
    """Reads a file of dishes, their recipes, and those of their bases.

    Args:
        path: a TOML file.
        catalog: as for ``read_recipe``.

    Raises:
        RecipeError, CostError, MeasureError, NumberError, FoodError, FileError: with file, line
            and column.
    """
    return parse_dishes(read_text(path), file=str(path), catalog=catalog)


def parse_dishes(text: str, *, file: str = "", catalog: Catalog | None = None) -> list[Dish]:
    """As ``read_dishes``, from text; ``file`` is the name that errors show, and its folder the one
    that paths of recipes start from."""
    from scalepan.toml_document import load  # here, so that `import scalepan` stays quick

    return _DishReader(*load(text, file), file, Library(catalog)).dishes()


class _DishReader(TomlTable):
    def __init__(self, data: dict[str, Any], places: Places, file: str, library: Library) -> None:
        super().__init__(data, places, file, ())
        self._library = library

    def dishes(self) -> list[Dish]:
        self._expect_keys(self._data, ("dishes",), ())
        dishes = self._data.get("dishes")
        if dishes is None:
            raise self._error("recipe.missing", "the file has no dishes", (), _HINT)
        if not isinstance(dishes, list):
            raise self._error("recipe.type", "dishes is not a list", ("dishes",), _HINT)
        if not dishes:
            raise self._error("basket.no_dishes", "the file has no dishes", ("dishes",), _HINT)
        return [self._dish(("dishes", i), dish) for i, dish in enumerate(dishes)]

    def _dish(self, path: Path, dish: object) -> Dish:
        if not isinstance(dish, dict):
            raise self._error("recipe.type", f"{name_of(path)} is not a table", path, _HINT)
        self._expect_keys(dish, _KEYS, path)
        if "recipe" not in dish:
            raise self._error("recipe.missing", "a dish has no recipe", path, _HINT)
        name, *_ = self._text((*path, "name"), dish.get("name", ""))
        recipe = self._recipe((*path, "recipe"), dish["recipe"])
        line, column = self._place((*path, "name") if name else path)
        return Dish(self._sized(recipe, path, dish), name, self._file, line, column)

    def _recipe(self, path: Path, written: object) -> Recipe:
        text, *_ = self._text(path, written)
        file = os.path.join(os.path.dirname(self._file), text)
        try:
            return self._library.read(file)
        except FileError as error:
            message = f"the recipe cannot be read: {error.message} ({file})"
            raise self._error(error.code, message, path, error.hint) from None

    def _sized(self, recipe: Recipe, path: Path, dish: dict[str, Any]) -> Recipe:
        ways = [key for key in _SIZES if key in dish]
        if len(ways) > 1:
            message = f"a size is given in two ways, by {ways[0]} and by {ways[1]}"
            raise self._error("recipe.size", message, (*path, ways[1]), "write one of the two")
        for key, way in _BESIDE.items():
            if key in dish and ways != [way]:
                other = f"the size is given by {ways[0]}" if ways else "that is not given"
                message = f"{key} goes with {way}, but {other}"
                raise self._error("recipe.size", message, (*path, key), f"write {way} beside it")
        if not ways:
            return recipe
        asked = {
            key: self._value((*path, key), dish[key]) for key in (*ways, *_BESIDE) if key in dish
        }
        return self._at((*path, ways[0]), lambda: _scaled(recipe, asked))

    def _value(self, path: Path, value: Any) -> Any:
        key = path[-1]
        if key in _NUMBERS:
            return self._number(path, value)
        if key != "stock":
            return self._text(path, value)[0]
        if not isinstance(value, dict):
            raise self._error(
                "recipe.type", "stock is not a table", path, 'stock = { eggs = "30" }'
            )
        return {line: self._text((*path, line), amount)[0] for line, amount in value.items()}


def _scaled(recipe: Recipe, asked: dict[str, Any]) -> Recipe:
    if "tray" not in asked:
        return recipe.scale(**asked)
    return fill_trays(recipe, asked["tray"], asked.get("trays", 1), by=asked.get("by", "area"))
