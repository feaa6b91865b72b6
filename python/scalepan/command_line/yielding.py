"""What ``scalepan yield`` prints: a yield test's weights, shares, parts, costs and portions."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.command_line.report import bare_money, heading, joined
from scalepan.command_line.tables import table, wrapped

if TYPE_CHECKING:
    from scalepan._core import (
        PartShare,
        Quantity,
        StageCost,
        TrialRatio,
        YieldShare,
        YieldTrial,
    )
    from scalepan.yield_tests import YieldTest

_STAGES = {"AP": "bought", "EP": "edible"}
WEIGHTS = ("bought", "edible", "drained", "into_the_pan", "cooked", "served")
_STEPS = (("EP", "AP"), ("drained", "AP"), ("cooked", "EP"), ("served", "cooked"))
_OUNCES = 16
_PLACES = 2
_FACTOR_PLACES = 3


def yield_lines(
    test: YieldTest, portion: Quantity | None, price: Quantity | None, width: int
) -> list[str]:
    """All sections; ``portion`` and ``price`` add the portion's and the new price's figures.

    Raises:
        FoodError: ``yield.no_stage`` where a figure is asked that the test has not.
    """
    count = len(test.trials)
    trials = f"{count} trials" if count > 1 else "1 trial"
    title = heading(f"Yield test{' of ' + test.food if test.food else ''}, {trials}")
    sections = [
        [title, "", *_trials_table(test.trials, width)],
        _shares_section(test, width),
        _parts_section(test.parts, width),
        _costs_section(test, price, width),
        _portion_section(asked_costs(test, portion, price), portion, price, width),
        ["Shown rounded half up; --json has exact figures."],
    ]
    return joined(sections)


def facts_lines(test: YieldTest) -> list[str]:
    """The test's facts as a CSV file that ``--facts`` takes."""
    import csv
    import io

    rows = test.facts()
    stream = io.StringIO()
    writer = csv.DictWriter(stream, list(rows[0]), lineterminator="\n")
    writer.writeheader()
    writer.writerows(rows)
    return stream.getvalue().splitlines()


def asked_costs(
    test: YieldTest, portion: Quantity | None, price: Quantity | None
) -> list[StageCost]:
    """The stages that the portion may be of: its own, or every one where it states none."""
    if portion is None and price is None:
        return []
    if portion is not None and portion.stage:
        return [test.cost(portion.stage)]
    return test.costs or [test.cost("EP")]


def _trials_table(trials: list[YieldTrial], width: int) -> list[str]:
    """The weights of each trial, in the columns that some trial has."""
    columns = [name for name in WEIGHTS if any(_shown_weight(t, name) for t in trials)]
    priced = any(trial.cost for trial in trials)
    rows = []
    for trial in trials:
        weights = [_told(_shown_weight(trial, name)) for name in columns]
        paid = [trial.cost.told_money if trial.cost else "not priced"] if priced else []
        rows.append((trial.name, *weights, *paid))
    header = ("trial", *(name.replace("_", " ") for name in columns), *(["paid"] * priced))
    return table(header, rows, right=range(1, len(header)), width=width)


def _shown_weight(trial: YieldTrial, name: str) -> Quantity | None:
    """What went into the pan is shown where it is not all of the edible weight."""
    weight: Quantity | None = getattr(trial, name)
    if name == "into_the_pan" and weight is not None and weight == trial.edible:
        return None
    return weight


def _shares_section(test: YieldTest, width: int) -> list[str]:
    """What remained at each stage, below it what came off there, which together make 100."""
    groups = [_share_rows(test, share) for share in test.shares if _is_step(share)]
    later = [share for share in test.shares if not _is_step(share)]
    for share in later[:1]:
        groups.append([(f"of {_stage_name(share.of)}, in the end", None)])
    groups += [[(f"  {_stage_name(share.stage)}", share.share)] for share in later]
    rows = [row for group in groups for row in group]
    lines = [heading("Shares, in percent")]
    if len(test.trials) == 1:
        single = [(name, _percents(ratio)[0]) for name, ratio in rows]
        return [*lines, *table(("share", "one trial"), single, right=(1,), width=width)]
    header = ("share", "ratio of sums", "mean of ratios", "lowest", "highest", "trials")
    figures = [(name, *_percents(ratio)) for name, ratio in rows]
    lines += table(header, figures, right=range(1, len(header)), width=width)
    text = "Ratio of sums: all weights count alike. Mean of ratios: all trials count alike."
    return lines + wrapped(text, width, "  ")


def _is_step(share: YieldShare) -> bool:
    return (share.stage, share.of) in _STEPS


def _share_rows(test: YieldTest, share: YieldShare) -> list[tuple[str, TrialRatio | None]]:
    """One step: what remained, and what came off."""
    # A trial may cook less than all of its edible weight.
    whole = "edible in the pan" if share.of == "EP" else f"the {_stage_name(share.of)} weight"
    rows: list[tuple[str, TrialRatio | None]] = [
        (f"of {whole}", None),
        (f"  {_stage_name(share.stage)}", share.share),
    ]
    if share.of == "EP":
        gained = share.loss.ratio_of_sums < 0
        return [*rows, ("  lost (minus: gained)" if gained else "  cooking loss", share.loss)]
    parts = [part for part in test.parts if part.of == share.of]
    rows += [(f"  {part.name}", part.share) for part in parts]
    if len(parts) > 1:
        rows.append(("  all that came off", share.loss))
    return rows


def _parts_section(parts: list[PartShare], width: int) -> list[str]:
    """What came off in all trials, what became of it and what it is worth."""
    if not parts:
        return []
    columns: dict[str, list[str]] = {
        "part": [part.name for part in parts],
        "what it is": [part.what for part in parts],
        "use": [part.use for part in parts],
        "weight": [_told(part.weight) for part in parts],
        "worth": [_money(part.value) for part in parts],
    }
    header = [name for name, cells in columns.items() if any(cells)]
    rows = list(zip(*(columns[name] for name in header), strict=True))
    right = [i for i, name in enumerate(header) if name in ("weight", "worth")]
    return [heading("What came off"), *table(header, rows, right=right, width=width)]


def _costs_section(test: YieldTest, price: Quantity | None, width: int) -> list[str]:
    """The cost at each stage, in all and per unit, and what it is against the price."""
    if not test.costs:
        return []
    first = test.costs[0]
    unit = _unit_of(first.price)
    rows: list[tuple[str, ...]] = [
        (
            *(
                _of_trials("bought", first, test),
                _told(first.bought.to(unit)),
                bare_money(first.paid),
            ),
            *(_each(first.price, first), "", "", _new_price(first, price)),
        )
    ]
    if first.credit:
        rows.append(("credit", "", bare_money(-first.credit), "", "", "", ""))
    rows += [_cost_row(cost, test, price) for cost in test.costs]
    code = "" if first.paid.unit == "XXX" else f"{first.paid.unit} "
    header = (
        *("stage", "weight", f"{code}in all", f"a {unit}"),
        *("cost factor", "yield factor", f"at {_new_price(first, price)}"),
    )
    columns = len(header) if price else len(header) - 1
    cells = [row[:columns] for row in rows]
    lines = [heading("Costs")]
    lines += table(header[:columns], cells, right=range(1, columns), width=width)
    lines += wrapped(
        "Cost factor: what a unit costs over the price of a unit bought. Times a new price it "
        "gives the new cost, as if the worth of what came off rose and fell with it. Yield "
        "factor: what the cost factor would be if nothing that came off were worth anything.",
        width,
        "  ",
    )
    return lines


def _cost_row(cost: StageCost, test: YieldTest, price: Quantity | None) -> tuple[str, ...]:
    stage = _of_trials(_stage_name(cost.stage), cost, test)
    weight = _told(cost.weight.to(_unit_of(cost.price)))
    return (
        *(stage, weight, bare_money(cost.value)),
        *(_each(cost.per_unit, cost), _fixed(cost.factor), _fixed(cost.yield_factor)),
        _each(cost.at_price(price), cost) if price else "",
    )


def _of_trials(stage: str, cost: StageCost, test: YieldTest) -> str:
    """The stage, and of how many trials where that is not all."""
    if cost.trials == len(test.trials):
        return stage
    return f"{stage}, {cost.trials} trial{'s' if cost.trials > 1 else ''}"


def _new_price(cost: StageCost, price: Quantity | None) -> str:
    """A price in the unit that the table is in."""
    if price is None:
        return ""
    return _each((cost.at_price(price) / cost.factor).to(cost.price.unit), cost)


def _portion_section(
    costs: list[StageCost], portion: Quantity | None, price: Quantity | None, width: int
) -> list[str]:
    if portion is None:
        return []
    rows = []
    unit = _unit_of(costs[0].price)
    for cost in costs:
        factor = cost.portion_factor(portion)
        new = [bare_money(cost.portion_cost(portion, price))] if price else []
        money = bare_money(cost.portion_cost(portion))
        rows.append((_stage_name(cost.stage), money, f"{_fixed(factor)} {unit}", *new))
    header = ["weighed", _currency(costs[0].paid), "portion factor"]
    header += ["at the new price"] if price else []
    lines = [heading(f"A portion of {portion.told}")]
    lines += table(header, rows, right=range(1, len(header)), width=width)
    text = f"Portion factor: times the price of a {unit} bought it gives the cost of a portion."
    return lines + wrapped(text, width, "  ")


def _stage_name(stage: str) -> str:
    return _STAGES.get(stage, stage)


def _told(amount: Quantity | None) -> str:
    """Pounds with their ounces, where these are whole."""
    if amount is None:
        return ""
    ounces = amount.value * _OUNCES
    if amount.unit.split(" ")[0] != "lb" or ounces.denominator != 1:
        return amount.told
    pounds, rest = divmod(int(ounces), _OUNCES)
    parts = (f"{pounds} lb" if pounds else "", f"{rest} oz" if rest else "")
    return " ".join(part for part in parts if part) or amount.told


def _money(value: Quantity | None) -> str:
    return "" if value is None else value.told_money


def _currency(money: Quantity) -> str:
    return "cost" if money.unit == "XXX" else money.unit


def _each(rate: Quantity, cost: StageCost) -> str:
    """Money per unit, to the currency's minor unit."""
    return bare_money(_core.quantity(rate.value, cost.paid.unit))


def _unit_of(amount: Quantity) -> str:
    """The weight unit of ``USD/(lb AP)``."""
    return amount.unit.split("(")[-1].split(" ")[0]


def _fixed(figure: Quantity) -> str:
    return _core.fixed_text(figure.value, _FACTOR_PLACES)


def _percent(share: Quantity) -> str:
    return _core.fixed_text(share.value * 100, _PLACES)


def _percents(ratio: TrialRatio | None) -> tuple[str, ...]:
    """The figures of a row, or blanks for the row that heads a group."""
    if ratio is None:
        return ("",) * 5
    figures = (ratio.ratio_of_sums, ratio.mean_of_ratios, ratio.low, ratio.high)
    return (*(_percent(figure) for figure in figures), str(ratio.trials))
