"""Covers: whole packs that meet a need, for one need or for all of them."""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, NamedTuple, TypeVar

from scalepan import _core
from scalepan._core import BreakEven, Cover, CoverFunction, Quantity
from scalepan.errors import ArgumentError, make_error

if TYPE_CHECKING:
    from collections.abc import Iterable

    Amount = Quantity | str

_Pack = TypeVar("_Pack")


class Purchase(NamedTuple):
    """What can be bought of an item: a pack, or several of them at one price.

    Attributes:
        size: of one pack, ``"400 g"``.
        price: of all ``packs`` together, ``"4.10"`` or ``"4.10 EUR"``.
        packs: how many are bought at once; 3 for ``3 for 2`` at the price of two.
        row: whose packs they are, counted from 0; its own place where None.
        least: bought so many times or not at all; 6 for a price that holds from 6 on.
        limit: bought so many times at most.
    """

    size: Amount
    price: Amount
    packs: int = 1
    row: int | None = None
    least: int = 1
    limit: int | None = None


def cover(need: Amount, packs: Iterable[tuple[Amount, Amount]]) -> Cover:
    """The cheapest whole packs whose sum is at least the need.

    >>> scalepan.cover("6.3 kg", [("2.5 kg", "4.10"), ("1 kg", "1.95")]).packs
    [(1, '2.5 kg'), (4, '1 kg')]

    Args:
        need: an amount, ``"6.3 kg"``.
        packs: sizes and prices, ``("2.5 kg", "4.10")`` or ``("2.5 kg", "4.10 EUR")``; a price
            without a currency is held in XXX.

    Raises:
        PriceError: ``cover.dimension``, naming both sides, ``cover.money``, ``cover.no_packs``,
            ``cover.pack_size``, ``cover.price``, ``cover.too_many``.
    """
    rows = [(str(size), _amount(size), _money(price)) for size, price in map(_pair, _each(packs))]
    return _core.cover(_amount(need), rows)


def cover_function(
    packs: Iterable[Purchase | tuple[Amount, Amount]],
    *,
    order: Literal["price", "leftover"] = "price",
) -> CoverFunction:
    """The cheapest whole packs for every need: an exact step function.

    ``.at(need)`` is the cover of a need, ``.steps(low, high)`` lists where it changes, ``.period``
    is what it repeats by, and ``.kernel`` names the way taken.

    Args:
        packs: sizes and prices as for ``cover``, or ``Purchase`` where there is more to say.
        order: what goes first, the ``"price"`` or the ``"leftover"``; then the other of them, then
            fewest packs, then more of an earlier row.

    Raises:
        PriceError: as ``cover``, and ``cover.count``, ``cover.row``, ``cover.order``.
    """
    purchases = [
        pack if isinstance(pack, Purchase) else Purchase(*_pair(pack)) for pack in _each(packs)
    ]
    rows = [
        (
            str(each.size),
            _amount(each.size),
            _money(each.price),
            _row(each, place),
            each.packs,
            each.least,
            each.limit,
        )
        for place, each in enumerate(purchases)
    ]
    return _core.make_cover_function(rows, order)


def break_even(need: Amount, pack: Amount, others: Iterable[tuple[Amount, Amount]]) -> BreakEven:
    """The highest price at which a pack is among the cheapest for a need: exact, by covers.

    Beside it stands the price by size alone, as if packs could be divided.

    Args:
        need: an amount, ``"6.3 kg"``.
        pack: its size, ``"2.5 kg"``.
        others: sizes and prices as for ``cover``.

    Raises:
        PriceError: as ``cover``, and ``cover.need`` where nothing is needed.
    """
    rows = [(str(size), _amount(size), _money(price)) for size, price in map(_pair, _each(others))]
    return _core.break_even(_amount(need), (str(pack), _amount(pack)), rows)


def _each(packs: Iterable[_Pack]) -> Iterable[_Pack]:
    """A text is no list of packs, though its letters are one of texts."""
    if isinstance(packs, str):
        raise TypeError
    return packs


def _pair(pack: tuple[Amount, Amount]) -> tuple[Amount, Amount]:
    if isinstance(pack, str) or not hasattr(pack, "__len__") or len(pack) != 2:
        hint = 'write ("2.5 kg", "4.10")'
        raise ArgumentError("argument.kind", f"a pack is a size and a price, not {pack!r}", hint)
    return pack


def _row(purchase: Purchase, place: int) -> int:
    row = place if purchase.row is None else purchase.row
    if row < 0:
        raise make_error("cover.row", f"there is no row {row}", "rows are counted from 0")
    return row


def _amount(given: Amount) -> Quantity:
    return given if isinstance(given, Quantity) else _core.quantity(given)


def _money(given: Amount) -> Quantity:
    price = _amount(given) if isinstance(given, Quantity | str) else _core.quantity(given)
    if price.dimension == "plain number":
        return _core.quantity(price.value, "XXX")
    return price
