"""What to buy, as a list that a notebook shows as a table."""

from __future__ import annotations

from typing import TYPE_CHECKING, Generic, TypeVar

from scalepan.displays import repr_mimebundle, text

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import Basket, Costing

_Row = TypeVar("_Row")


class Shopping(list[_Row], Generic[_Row]):
    """Rows, one an item, of a costing or a basket.

    Attributes:
        bought_for: the costing or the basket.
    """

    _repr_mimebundle_ = repr_mimebundle
    __str__ = text

    def __init__(self, rows: Iterable[_Row], bought_for: Costing | Basket) -> None:
        super().__init__(rows)
        self.bought_for = bought_for
