"""Costings kept in files, with all they go by, and brought up to date again.

costing.save("bake_at_forty.toml")
again = scalepan.read_costing("bake_at_forty.toml")
print(again.refresh(prices=scalepan.read_prices("prices.csv")))
"""

from __future__ import annotations

import contextlib
from dataclasses import dataclass, field
from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan._core import Changes, Thing
from scalepan.costing_reader import CostingReader, KeptRecipes, placed_row
from scalepan.costing_writer import costing_file_text, recipe_files
from scalepan.costs import cost
from scalepan.errors import CostError, Error, FoodError, RecipeError
from scalepan.files import write_whole
from scalepan.foods import FACT_COLUMNS, bundled_catalog
from scalepan.sheet_comparison import told
from scalepan.sheet_content import Content
from scalepan.sheet_edits import edits
from scalepan.wrong_arguments import explained

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from scalepan._core import Catalog, Costing, Line, PriceBook, Recipe
    from scalepan.files import PathLike
    from scalepan.sheets import Sheet


class Moved(NamedTuple):
    """A price, a fact or a figure that is another than it was; empty where there is none."""

    name: str
    was: str
    now: str

    def __str__(self) -> str:
        if not self.was:
            return f"new: {self.name} = {self.now}"
        if not self.now:
            return f"gone: {self.name} = {self.was}"
        return f"{self.name}: {self.was} -> {self.now}"


@dataclass(frozen=True)
class Refreshed:
    """A costing by the prices and facts of another day. ``str()`` has what moved as a list.

    Attributes:
        costing: with the changes that the kept one had.
        prices: of packs.
        facts: of foods.
        figures: of cells.
        refused: changes that have no place any more, and why.
        missing: facts of one's own that the kept costing goes by and the catalogue given has not.
    """

    costing: Costing
    prices: list[Moved] = field(default_factory=list)
    facts: list[Moved] = field(default_factory=list)
    figures: list[Moved] = field(default_factory=list)
    refused: list[str] = field(default_factory=list)
    missing: list[str] = field(default_factory=list)

    def __str__(self) -> str:
        lines = [*self._missing_told(), *map(str, [*self.prices, *self.facts, *self.figures])]
        return "\n".join([*lines, *(f"refused: {why}" for why in self.refused)]) or "nothing moved"

    def _missing_told(self) -> list[str]:
        if not self.missing:
            return []
        count, one = len(self.missing), len(self.missing) == 1
        return [
            f"{count} fact{'' if one else 's'} of your own that the kept costing goes by "
            f"{'is' if one else 'are'} not among the facts given ({', '.join(self.missing)}): give "
            f"{'it' if one else 'them'} with --facts FILE, or catalog=scalepan.read_facts(FILE)"
        ]


def save_costing(costing: Costing, path: PathLike) -> None:
    """As ``Costing.save``."""
    write_whole(path, costing_text(costing))


def costing_text(costing: Costing) -> str:
    """As ``Costing.text``."""
    recipe_files(costing.recipe)
    whole = costing.recipe.catalog
    foods = {line.food_id for line in _lines(costing.recipe) if line.food_id}
    for catalog in (whole.part(foods), whole):
        with contextlib.suppress(RecipeError, FoodError):
            text = _text_with(costing, catalog)
            if _is_same(costing_of(text, ""), costing):
                return text
    raise _not_kept()


def expect_same_figures(kept: Costing, costing: Costing) -> None:
    """Raises CostError (``cost.kept``) where the kept costing is another than it was."""
    if not _is_same(kept, costing):
        raise _not_kept()


def costing_of(text: str, file: str) -> Costing:
    """As ``scalepan.parse_costing``."""
    reader = CostingReader(text, file)
    costing = reader.costing()
    changes = reader.changes()
    variants = reader.variants()
    if len(changes):
        _apply(costing.sheet, changes, reader)
    for name, variant in variants.items():
        costing.sheet.variants[name] = variant
    return costing


def _refreshed(costing: Costing, prices: PriceBook | None, catalog: Catalog | None) -> Refreshed:
    """As ``Costing.refresh``."""
    recipe = _read_anew(costing.recipe, catalog or bundled_catalog())
    book = _kept_prices(costing) if prices is None else prices
    new = cost(recipe, book, **costing.options)
    plain = costing_of(_text_with(costing, costing.recipe.catalog, Changes()), "")
    refused = []
    for change in _changes(plain, costing).singly():
        try:
            new.sheet.apply(change)
        except Error as error:
            refused.append(str(error))
    for name, variant in costing.sheet.variants.items():
        new.sheet.variants[name] = variant
    return Refreshed(
        new,
        _moved(_prices(costing), _prices(new)),
        _moved(_facts(costing), _facts(new)),
        _figures_moved(costing, new),
        refused,
        sorted(_own_facts(costing) - _facts(new).keys()),
    )


refreshed = explained(_refreshed, "refresh")


def _text_with(costing: Costing, catalog: Catalog, changes: Changes | None = None) -> str:
    """With the changes given, or those made to its sheet."""
    variants: Mapping[str, Changes] = {} if changes is not None else costing.sheet.variants
    if changes is None:
        plain = costing_of(costing_file_text(costing, catalog, Changes(), {}), "")
        changes = _changes(plain, costing)
    return costing_file_text(costing, catalog, changes, variants)


def _changes(plain: Costing, costing: Costing) -> Changes:
    """Those made to the sheet of a costing, from that of the same one without any."""
    changes = edits(Content(plain.sheet.changes()), Content(costing.sheet.changes()))
    for _, given in changes.listed():
        value = given.get("value")
        if isinstance(value, Thing):
            message = f"{given['name']} was given {value.kind}, which a file cannot hold"
            raise CostError("cost.kept", message, "cost the recipe by other prices or facts")
    return changes


def _not_kept() -> CostError:
    message = "what was written is not read back as it is"
    return CostError(
        "cost.kept", message, "keep the recipe, the prices and the changes by themselves"
    )


def _is_same(one: Costing, other: Costing) -> bool:
    return _figures(one) == _figures(other) and one.sheet.cells() == other.sheet.cells()


def _apply(sheet: Sheet, changes: Changes, reader: CostingReader) -> None:
    """All, in one go; where that is refused, the error is of the first that is refused singly."""
    try:
        sheet.apply(changes)
    except Error as error:
        for i, change in enumerate(changes.singly()):
            try:
                sheet.apply(change)
            except Error as refused:
                raise reader.refused(i, refused) from None
        raise error from None


def _read_anew(recipe: Recipe, catalog: Catalog) -> Recipe:
    assert recipe.file is not None
    written = KeptRecipes(catalog, recipe_files(recipe)).read(recipe.file[0])
    return _core.sized_recipe(written, recipe.portions, recipe.made, recipe.factor)


def _kept_prices(costing: Costing) -> PriceBook:
    rows = [placed_row(offer.row) for offer in costing.offers]
    return _core.make_price_book(rows, "")


def _lines(recipe: Recipe) -> Iterable[Line]:
    yield from recipe.lines
    yield from recipe.food_lines


def _figures_moved(was: Costing, now: Costing) -> list[Moved]:
    """As they are told; exactly, where they are told alike."""
    exactly = _moved(_figures(was), _figures(now))

    def of(costing: Costing, one: Moved, exact: str) -> str:
        return told(costing.sheet.value(one.name)) if exact else ""

    found = (Moved(one.name, of(was, one, one.was), of(now, one, one.now)) for one in exactly)
    return [
        one if short.was == short.now else short for one, short in zip(exactly, found, strict=True)
    ]


def _moved(was: Mapping[str, str], now: Mapping[str, str]) -> list[Moved]:
    names = [*was, *(name for name in now if name not in was)]
    found = (Moved(name, was.get(name, ""), now.get(name, "")) for name in names)
    return [moved for moved in found if moved.was != moved.now]


def _prices(costing: Costing) -> dict[str, str]:
    told = {}
    for offer in costing.offers:
        shop = f" at {offer.shop}" if offer.shop else ""
        terms = "".join(f"; {term}" for term in offer.terms)
        told[f"{offer.item} {offer.sold_as}, {offer.pack}{shop}"] = (
            f"{offer.price.told_money}{terms}"
        )
    return told


def _facts(costing: Costing) -> dict[str, str]:
    """The value of each fact about its foods."""
    return {fact["fact"]: fact["value"] for fact, _ in _placed_facts(costing)}


def _own_facts(costing: Costing) -> set[str]:
    return {fact["fact"] for fact, layer in _placed_facts(costing) if layer == "own"}


def _placed_facts(costing: Costing) -> Iterable[tuple[dict[str, str], str]]:
    recipe = costing.recipe
    foods = {line.food_id for line in _lines(recipe) if line.food_id}
    for row, layer in recipe.catalog.part(foods).fact_rows:
        fact = dict(zip(FACT_COLUMNS, row, strict=True))
        if fact["food"] in foods:
            yield fact, layer


def _figures(costing: Costing) -> dict[str, str]:
    """Of all cells that have one, exactly."""
    sheet = costing.sheet
    return {name: str(sheet.value(name)) for name in costing.cells}
