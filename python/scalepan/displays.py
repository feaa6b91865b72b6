"""How objects are displayed in a notebook: what does it is loaded when the first one is."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from scalepan import _core

if TYPE_CHECKING:
    from collections.abc import Container

_OF_THE_CORE = (
    _core.Basket,
    _core.Catalog,
    _core.Costing,
    _core.Cover,
    _core.CoverFunction,
    _core.Curve,
    _core.Fact,
    _core.Interval,
    _core.Label,
    _core.Line,
    _core.Loads,
    _core.MadeBase,
    _core.MakeOrBuy,
    _core.Offer,
    _core.PriceBook,
    _core.PriceFound,
    _core.Quantity,
    _core.Recipe,
    _core.Selling,
    _core.Sheet,
    _core.ShoppingRow,
    _core.Swap,
    _core.Why,
    _core.WrittenLine,
)
_METHOD = "_repr_mimebundle_"
Kind = TypeVar("Kind")


def repr_mimebundle(
    self: object,
    include: Container[str] | None = None,
    exclude: Container[str] | None = None,
) -> dict[str, str]:
    """``text/html`` and ``text/plain`` with the same figures, as notebooks ask for them."""
    from scalepan.display import bundle  # here, so that `import scalepan` stays quick

    return bundle(self, include, exclude)


def text(self: object) -> str:
    """What ``print`` shows: the plain text of the display."""
    from scalepan.display.kinds import display_of  # here, so that `import scalepan` stays quick

    return display_of(self).text


def displayed(kind: type[Kind]) -> type[Kind]:
    """Gives a named tuple, whose body takes no such name, the method that notebooks call."""
    setattr(kind, _METHOD, repr_mimebundle)
    return kind


def display_core_classes() -> None:
    """Gives the classes of the core the methods that notebooks call, and a text to print."""
    for kind in _OF_THE_CORE:
        displayed(kind)
        if kind.__str__ is object.__str__:
            kind.__str__ = text  # type: ignore[method-assign]
