"""Recipe lines as cooks write them, read one by one."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.errors import make_error
from scalepan.foods import bundled_catalog

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import Catalog, WrittenLine
    from scalepan.errors import Error


def read_line(
    text: str,
    *,
    measures: str | None = None,
    decimal: str = "point",
    catalog: Catalog | None = None,
) -> WrittenLine:
    """What one ingredient line says: amount, food, and everything beside them.

    >>> scalepan.read_line("2 x 400 g tins chickpeas, drained").container_size
    '400 g'

    Args:
        text: ``"2 x 400 g tins chickpeas, drained"``, ``"juice of 2 lemons"``.
        measures: ``us``, ``metric``, ``imperial`` or ``au``; left out, a cup stays a cup.
        decimal: ``comma`` where the text writes 2,5 for two and a half.
        catalog: foods; left out, the bundled ones.

    Raises:
        RecipeError, MeasureError, NumberError: with the column, and what was understood so far.
    """
    place = (text, "", 1, 1)
    return _core.read_line(place, measures or "", decimal, catalog or bundled_catalog())


def read_lines(
    texts: Iterable[str],
    *,
    measures: str | None = None,
    decimal: str = "point",
    catalog: Catalog | None = None,
) -> list[WrittenLine | Error]:
    """As ``read_line``, for many: a line that cannot be read gives its error, not raised.

    The ``line`` of an error is the place of the text among ``texts``, counted from 1.
    """
    return _core.read_lines(
        list(texts), measures or "", decimal, catalog or bundled_catalog(), make_error
    )
