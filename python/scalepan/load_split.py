"""Loads: a total shared out into pans, trays or ovens that hold so much at a time.

loads("13 kg", "4 kg").text  # 3 loads of 4 kg and one of 1 kg
loads("52", "12", equal=True).text  # 2 loads of 11 and 3 of 10
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.pan_size import Pan, volume_of
from scalepan.pan_table import pan

if TYPE_CHECKING:
    from fractions import Fraction

    from scalepan._core import Loads, Quantity

    Amount = Quantity | Fraction | int | str


def loads(
    total: Amount,
    capacity: Amount | Pan,
    equal: bool = False,
    *,
    measures: str | None = None,
) -> Loads:
    """The fewest loads that take a total; their sum is the total, exactly.

    Full loads and one short one, or ``equal`` ones. Pieces, portions and plain counts stay whole,
    so that equal loads of them differ by one at most; all else is shared out exactly.

    ``in_turn`` of the result gives the time of all loads one after the other. How long a load
    takes is the cook's own figure, never scaled with what it holds (common practice; Gisslen,
    *Professional Cooking*: separate pieces take as long as one, big pots heat slower).

    >>> scalepan.loads("13 kg", "4 kg").text
    '3 loads of 4 kg and one of 1 kg'

    Args:
        total: a weight, volume, area, count or number of portions, as a quantity, its text or a
            number.
        capacity: what a load holds at most, of the same kind and stage; or a pan, or its name,
            which stands for the volume published for it.
        equal: as few loads, but all alike.
        measures: ``us``, ``metric``, ``imperial`` or ``au``: which cup the texts mean.

    Raises:
        MeasureError: ``load.kind``, ``load.capacity``, ``load.negative``, ``load.whole``,
            ``pan.unknown``, ``pan.no_volume`` and what reading an amount raises.
    """
    chosen = pan_meant(capacity)
    holds = volume_of(chosen) if isinstance(chosen, Pan) else _quantity(chosen, measures)
    return _core.loads(_quantity(total, measures), holds, equal)


def pan_meant(capacity: Amount | Pan) -> Amount | Pan:
    """The pan that a text names: no amount begins with a letter. All else as it is.

    Raises ``pan.unknown``.
    """
    named = isinstance(capacity, str) and capacity.strip()[:1].isalpha()
    return pan(str(capacity)) if named else capacity


def _quantity(amount: Amount, measures: str | None) -> Quantity:
    if isinstance(amount, _core.Quantity):
        return amount
    return _core.quantity(amount, measures=measures)
