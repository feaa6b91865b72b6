"""Names of types for annotations: what functions take, and dicts of known keys that they give.

Nothing loads it when `scalepan` is imported.
"""

from __future__ import annotations

from collections.abc import Sequence
from decimal import Decimal
from fractions import Fraction
from typing import Literal, TypeAlias, TypedDict

from scalepan import _core

# A float stands for its shortest decimal, of at most 12 digits.
Number: TypeAlias = int | Fraction | Decimal | float | str
# What a cell can be given. A str is an amount as written: ``"5 kg EP"``.
CellInput: TypeAlias = Number | _core.Quantity | bool | _core.Interval | _core.Text | _core.Thing
CellValue: TypeAlias = _core.Quantity | bool | _core.Interval | str
# What stands in a frame: an exact number is a text.
FrameCell: TypeAlias = str | int | float | bool | None
Taxes: TypeAlias = Literal["with", "without"]

# A text and where it stands: file, line and column.
Placed: TypeAlias = tuple[str, str, int, int]
MeasureRow: TypeAlias = tuple[
    str,
    str,
    _core.Quantity,
    Number | None,
    Sequence[tuple[_core.Quantity, _core.Quantity, _core.Quantity]],
    str,
]


class CostOptions(TypedDict, total=False):
    """What ``scalepan.cost`` takes beside the recipe and the prices."""

    strict: bool
    taxes: Taxes
    stock: _core.Stock | None
    day: str


class WhyData(TypedDict):
    """A figure and what it came from."""

    name: str
    figure: str
    how: str
    source: str
    parts: list[WhyData]


class OutcomeTexts(TypedDict, total=False):
    """Of a cell: its figure or its error, and by how much it is more in a variant."""

    figure: str
    error: str
    difference: str | None


ComparedTexts = TypedDict(
    "ComparedTexts", {"cell": str, "as it is": OutcomeTexts, "variants": dict[str, OutcomeTexts]}
)
