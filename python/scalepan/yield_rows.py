"""The trials of a yield test as rows of its file."""

from __future__ import annotations

from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import Quantity, TrialPart, YieldTrial

Row = dict[str, str]


def yield_rows(trials: Iterable[YieldTrial]) -> list[Row]:
    """Rows that ``yield_test`` reads as the same trials; remarks are not kept in a trial."""
    return [row for trial in trials for row in _rows(trial)]


def _rows(trial: YieldTrial) -> list[Row]:
    rows = [_bought(trial)]
    rows += [_part(part) for part in trial.cut]
    rows += [_row("edible", trial.edible), _row("drained", trial.drained)]
    if trial.cooked is not None and trial.into_the_pan != (trial.edible or trial.drained):
        rows.append(_row("into the pan", trial.into_the_pan))
    rows.append(_row("cooked", trial.cooked))
    rows += [_part(part) for part in trial.off]
    rows.append(_row("served", trial.served))
    written = [{"trial": trial.name, **row} for row in rows if row]
    written[0]["part"] = trial.food
    return written


def _bought(trial: YieldTrial) -> Row:
    row = _row("bought", trial.bought, trial.cost)
    if trial.bought is not None and trial.cost is not None and trial.priced_per is not None:
        price = trial.cost * (1 / trial.bought.to(trial.priced_per).value)
        row["value"] = f"{price}/{trial.priced_per}"
    return row


def _row(what: str, weight: Quantity | None, value: Quantity | None = None) -> Row:
    if weight is None:
        return {}
    return {"what": what, "weight": str(weight), "value": "" if value is None else str(value)}


def _part(part: TrialPart) -> Row:
    weight = "rest" if part.is_rest else str(part.weight)
    value = "" if part.value is None else str(part.value)
    told = {"what": part.what, "part": part.name, "weight": weight, "value": value}
    return {**told, "use": part.use}
