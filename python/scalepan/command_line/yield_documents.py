"""What ``scalepan yield --json`` prints: a yield test, every number exact as text ``n/d``."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan.command_line.documents import quantity_document, quantity_or_null
from scalepan.command_line.yielding import WEIGHTS, asked_costs

if TYPE_CHECKING:
    from scalepan._core import Quantity, StageCost, TrialPart, TrialRatio, YieldTrial
    from scalepan.yield_tests import YieldTest


def yield_document(
    test: YieldTest, portion: Quantity | None, price: Quantity | None
) -> dict[str, Any]:
    """Everything exact, for ``--json``."""
    asked = asked_costs(test, portion, price)
    return {
        "food": test.food,
        "source": test.source,
        "trials": [_trial_document(trial) for trial in test.trials],
        "shares": [
            {
                "share": f"{share.stage}/{share.of}",
                **_ratio_document(share.share),
                "loss": {"of": share.of, **_ratio_document(share.loss)},
            }
            for share in test.shares
        ],
        "parts": [
            {
                "part": part.name,
                "what": part.what,
                "use": part.use,
                "weight": quantity_document(part.weight),
                "value": quantity_or_null(part.value),
                "of": part.of,
                **_ratio_document(part.share),
            }
            for part in test.parts
        ],
        "costs": [_cost_document(cost, price) for cost in test.costs],
        "portions": [_portion_document(cost, portion, price) for cost in asked if portion],
    }


def _ratio_document(ratio: TrialRatio) -> dict[str, Any]:
    return {
        "ratio_of_sums": quantity_document(ratio.ratio_of_sums),
        "mean_of_ratios": quantity_document(ratio.mean_of_ratios),
        "low": quantity_document(ratio.low),
        "high": quantity_document(ratio.high),
        "trials": ratio.trials,
    }


def _trial_document(trial: YieldTrial) -> dict[str, Any]:
    return {
        "trial": trial.name,
        **{name: quantity_or_null(getattr(trial, name)) for name in WEIGHTS},
        "paid": quantity_or_null(trial.cost),
        "cut": [_part_document(part) for part in trial.cut],
        "off": [_part_document(part) for part in trial.off],
    }


def _part_document(part: TrialPart) -> dict[str, Any]:
    return {
        "part": part.name,
        "what": part.what,
        "weight": quantity_document(part.weight),
        "is_rest": part.is_rest,
        "value": quantity_or_null(part.value),
        "use": part.use,
    }


def _cost_document(cost: StageCost, price: Quantity | None) -> dict[str, Any]:
    figures = ("weight", "value", "bought", "paid", "credit", "per_unit", "price", "factor")
    return {
        "stage": cost.stage,
        "trials": cost.trials,
        **{name: quantity_document(getattr(cost, name)) for name in (*figures, "yield_factor")},
        "at_price": None if price is None else quantity_document(cost.at_price(price)),
    }


def _portion_document(cost: StageCost, portion: Quantity, price: Quantity | None) -> dict[str, Any]:
    return {
        "stage": cost.stage,
        "size": quantity_document(portion),
        "cost": quantity_document(cost.portion_cost(portion)),
        "factor": quantity_document(cost.portion_factor(portion)),
        "at_price": None if price is None else quantity_document(cost.portion_cost(portion, price)),
    }
