"""Costings, and the same dish bought at one shop or another."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING, NamedTuple

from scalepan import _core
from scalepan._core import Quantity
from scalepan.displays import displayed
from scalepan.errors import CostError
from scalepan.files import read_text

if TYPE_CHECKING:
    from typing import Unpack

    from scalepan._core import Costing, PriceBook, Recipe, Stock
    from scalepan.files import PathLike
    from scalepan.type_names import CostOptions, Taxes

COSTS = ("till", "used", "thrown", "borne")


def cost(
    recipe: Recipe,
    prices: PriceBook,
    *,
    strict: bool = False,
    taxes: Taxes = "with",
    stock: Stock | None = None,
    day: str = "",
) -> Costing:
    """The recipe at its size, bought in whole packs, by each of the four costs.

    Args:
        recipe: scaled to the size wanted.
        prices: of each item, stage, pack and shop the newest row counts; narrow it with
            ``prices.on(date, shops)``.
        strict: an unknown edible share is an error, not a note under "to check".
        taxes: count prices ``"with"`` their tax, or ``"without"`` it where it is got back. A row
            that states no tax counts as it stands.
        stock: what is on hand; it is used before anything is bought, what must be used first first.
        day: ISO 8601; amounts on hand that had to be used before it are not counted.

    Raises:
        CostError: ``cost.stage``, ``cost.currencies``, ``cost.limit`` where limits leave too
            little to buy, ``cost.taxes``.
        PriceError: ``cover.too_many``, ``price.date``.
    """
    return _core.cost(recipe, prices.on(), strict, taxes, stock, day)


def read_costing(path: PathLike) -> Costing:
    """Reads a file that ``Costing.save`` wrote: the costing as it was, whatever holds today.

    Nothing else is read: no recipe, no price book, no fact that comes with the package.

    Raises:
        SheetError, CostError, RecipeError, PriceError, FoodError, MeasureError, NumberError,
        FileError: with file, line and column.
    """
    from scalepan.sheet_change_reader import MOST_BYTES  # so that `import scalepan` stays quick

    return parse_costing(read_text(path, MOST_BYTES), file=str(path))


def parse_costing(text: str, *, file: str = "") -> Costing:
    """As ``read_costing``, from text; ``file`` is the name that errors show."""
    from scalepan.costing_files import costing_of  # here, so that `import scalepan` stays quick

    return costing_of(text, file)


def line_costs(costing: Costing, line: str) -> dict[str, Quantity]:
    """A line's part of the four costs by their names; empty where it is not priced.

    Args:
        costing: whose.
        line: the id of a line of a food, of a base's too.
    """
    try:
        cells = [costing.explain(f"{line}.{name}").name for name in COSTS]
    except CostError:
        return {}
    values = zip(COSTS, map(costing.sheet.value, cells), strict=True)
    return {name: value for name, value in values if isinstance(value, Quantity)}


@displayed
class ShopCosting(NamedTuple):
    """The dish bought at one shop, or wherever each item is cheapest.

    Attributes:
        shop: its name; empty where rows name none; None for all shops together.
        costing: with ``unpriced`` lines for what the shop does not sell; None where it sells
            too little of an item, which ``problem`` then tells.
        problem: why there is no costing.
    """

    shop: str | None
    costing: Costing | None
    problem: str = ""


def by_shop(recipe: Recipe, prices: PriceBook, **options: Unpack[CostOptions]) -> list[ShopCosting]:
    """The dish bought at one shop alone, for each shop, and at all of them with free choice.

    All shops together come first, then shops by how many lines they leave unpriced and by their
    till, the cheapest first; shops of one till stand in the order of the price book.

    Args:
        recipe: scaled to the size wanted.
        prices: of one day: ``prices.on(date)``.
        options: those of ``cost``.

    Raises:
        CostError: as ``cost``, where all shops together cannot do it either.
    """
    shops = list(dict.fromkeys(offer.shop for offer in prices.offers))
    everywhere = ShopCosting(None, cost(recipe, prices, **options))
    alone = [_at_shop(shop, recipe, prices, options) for shop in shops]
    return [everywhere, *sorted(alone, key=_rank)]


def _at_shop(shop: str, recipe: Recipe, prices: PriceBook, options: CostOptions) -> ShopCosting:
    try:
        return ShopCosting(shop, cost(recipe, prices.on("", [shop]), **options))
    except CostError as error:
        if error.code != "cost.limit":
            raise
        return ShopCosting(shop, None, error.message)


def _rank(row: ShopCosting) -> tuple[bool, int, Fraction]:
    if row.costing is None:
        return (True, 0, Fraction())
    return (False, len(row.costing.unpriced), row.costing.till.value)
