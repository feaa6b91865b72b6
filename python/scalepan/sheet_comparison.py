"""Variants of a sheet side by side."""

from __future__ import annotations

from collections.abc import Mapping
from typing import TYPE_CHECKING, Final, NamedTuple

from scalepan import _core
from scalepan._core import Changes, Interval, Quantity
from scalepan.displays import displayed
from scalepan.errors import Error, SheetError

if TYPE_CHECKING:
    from collections.abc import Iterable
    from typing import TypeAlias

    from scalepan.sheets import Sheet
    from scalepan.type_names import ComparedTexts, OutcomeTexts

    Outcome: TypeAlias = Quantity | bool | str | Interval | Error

AS_IT_IS: Final = "as it is"


@displayed
class Comparison(NamedTuple):
    """Cells against variants.

    Attributes:
        cells: names, one a row.
        variants: names, one a column beside the sheet as it is.
        as_it_is: what each cell is now, or the error it holds.
        outcomes: by variant the same with its changes; where these are refused, the refusal.
    """

    cells: list[str]
    variants: list[str]
    as_it_is: list[Outcome]
    outcomes: dict[str, list[Outcome]]

    def outcome(self, cell: str, variant: str | None = None) -> Outcome:
        """The value or error of a cell. Raises SheetError (``sheet.unknown``)."""
        column = self.as_it_is if variant is None else self.outcomes[self._variant(variant)]
        return column[self._row(cell)]

    def difference(self, cell: str, variant: str) -> Quantity | None:
        """By how much the cell is more in the variant, exactly; None where no amounts of one kind
        meet. Raises SheetError (``sheet.unknown``)."""
        return difference(self.outcome(cell), self.outcome(cell, variant))

    def to_data(self) -> list[ComparedTexts]:
        """A row a cell, of texts: exact figures, differences and errors."""
        return [
            {
                "cell": cell,
                AS_IT_IS: _data(now),
                "variants": {
                    name: {
                        **_data(self.outcomes[name][row]),
                        "difference": _text_or_none(difference(now, self.outcomes[name][row])),
                    }
                    for name in self.variants
                },
            }
            for row, (cell, now) in enumerate(zip(self.cells, self.as_it_is, strict=True))
        ]

    def __str__(self) -> str:
        from scalepan.command_line.sections import section_lines  # so that importing stays quick
        from scalepan.command_line.sheeting import comparison_section

        return "\n".join(section_lines(comparison_section(self), WIDTH))

    def _row(self, cell: str) -> int:
        return _place(self.cells, cell, "cell")

    def _variant(self, variant: str) -> str:
        return self.variants[_place(self.variants, variant, "variant")]


WIDTH = 100
_STAGES = ("AP", "EP", "cooked", "drained", "served")


def compared(
    sheet: Sheet, cells: list[str], variants: Iterable[str] | Mapping[str, Changes] | None
) -> Comparison:
    chosen = _chosen(sheet, variants)
    now: list[Outcome] = sheet.values_with(Changes(), cells)
    outcomes = {name: _outcomes(sheet, changes, cells) for name, changes in chosen.items()}
    for row, (cell, one) in enumerate(zip(cells, now, strict=True)):
        columns = [one, *(column[row] for column in outcomes.values())]
        if not any(_is_known(cell, outcome) for outcome in columns):
            assert isinstance(one, Error)
            raise one
    return Comparison(cells, list(chosen), now, outcomes)


def _chosen(
    sheet: Sheet, variants: Iterable[str] | Mapping[str, Changes] | None
) -> Mapping[str, Changes]:
    if variants is None:
        return dict(sheet.variants)
    if isinstance(variants, Mapping):
        return dict(variants)
    known = list(sheet.variants)
    return {name: sheet.variants[known[_place(known, name, "variant")]] for name in variants}


def _outcomes(sheet: Sheet, changes: Changes, cells: list[str]) -> list[Outcome]:
    try:
        return sheet.values_with(changes, cells)
    except Error as refused:
        return [refused] * len(cells)


def _is_known(cell: str, outcome: Outcome) -> bool:
    return not (isinstance(outcome, Error) and outcome.code == "sheet.unknown")


def _place(known: list[str], name: str, what: str) -> int:
    if name in known:
        return known.index(name)
    near = _core.nearest_names(name, known)
    hint = f"nearest: {', '.join(near)}" if near else ""
    raise SheetError("sheet.unknown", f'no {what} is called "{name[:40]}"', hint)


def difference(old: object, new: object) -> Quantity | None:
    """What a figure has become more by, where both are amounts of one kind."""
    if not isinstance(old, Quantity) or not isinstance(new, Quantity):
        return None
    return new - old if old.dimension == new.dimension else None


def signed(more: Quantity) -> str:
    """For people, with its sign: ``+3``, ``≈ -2.273 kg``."""
    sign = "+" if more.value > 0 else "-"
    text = abs(more).told
    about = "≈ " if text.startswith("≈ ") else ""
    return f"{about}{sign}{text.removeprefix(about)}"


def told(outcome: Outcome) -> str:
    """For people, in one line."""
    if isinstance(outcome, bool):
        return "yes" if outcome else "no"
    if isinstance(outcome, Error):
        return f"failed: {outcome}"
    if isinstance(outcome, Interval):
        low = _told_amount(outcome.low)
        return (
            f"at least {low}" if outcome.high is None else f"{low} to {_told_amount(outcome.high)}"
        )
    return _told_amount(outcome) if isinstance(outcome, Quantity) else str(outcome)


def _told_amount(amount: Quantity) -> str:
    """Short, with its stage; a share of one stage in another as it is."""
    if amount.stage:
        return f"{amount.told} {amount.stage}"
    return str(amount) if any(stage in amount.unit for stage in _STAGES) else amount.told


def _data(outcome: Outcome) -> OutcomeTexts:
    if isinstance(outcome, Error):
        return {"error": str(outcome)}
    return {"figure": told(outcome) if isinstance(outcome, bool) else str(outcome)}


def _text_or_none(quantity: Quantity | None) -> str | None:
    return None if quantity is None else str(quantity)
