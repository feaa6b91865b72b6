"""What ``scalepan yield`` prints: a yield test's weights, shares, parts, costs and portions."""

from __future__ import annotations

from fractions import Fraction
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.command_line.pricing import ROUNDED
from scalepan.command_line.report import bare_money, money_of, told_of
from scalepan.command_line.sections import NOTE, Figure, Gap, Group, Rounded, Section, Table, Texts

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


def yield_sections(
    test: YieldTest, portion: Quantity | None = None, price: Quantity | None = None
) -> list[Section]:
    """All sections; ``portion`` and ``price`` add the portion's and the new price's figures.

    Raises:
        FoodError: ``yield.no_stage`` where a figure is asked that the test has not.
    """
    count = len(test.trials)
    trials = f"{count} trials" if count > 1 else "1 trial"
    title = f"Yield test{' of ' + test.food if test.food else ''}, {trials}"
    return [
        Section(title, (Gap(), _trials_table(test.trials))),
        _shares_section(test),
        _parts_section(test.parts),
        _costs_section(test, price),
        _portion_section(asked_costs(test, portion, price), portion, price),
        Section("", (Rounded(ROUNDED.texts),)),
    ]


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


def _trials_table(trials: list[YieldTrial]) -> Table:
    """The weights of each trial, in the columns that some trial has."""
    columns = [name for name in WEIGHTS if any(_shown_weight(t, name) for t in trials)]
    priced = any(trial.cost for trial in trials)
    rows = []
    for trial in trials:
        weights = [_told(_shown_weight(trial, name)) for name in columns]
        paid = [money_of(trial.cost) if trial.cost else "not priced"] if priced else []
        rows.append((trial.name, *weights, *paid))
    header = ("trial", *(name.replace("_", " ") for name in columns), *(["paid"] * priced))
    return Table(header, rows, range(1, len(header)), whole="test.trials")


def _shown_weight(trial: YieldTrial, name: str) -> Quantity | None:
    """What went into the pan is shown where it is not all of the edible weight."""
    weight: Quantity | None = getattr(trial, name)
    if name == "into_the_pan" and weight is not None and weight == trial.edible:
        return None
    return weight


def _shares_section(test: YieldTest) -> Section:
    """What remained at each stage, below it what came off there, which together make 100."""
    groups = [_share_rows(test, share) for share in test.shares if _is_step(share)]
    later = [share for share in test.shares if not _is_step(share)]
    for share in later[:1]:
        groups.append([(f"of {_stage_name(share.of)}, in the end", None)])
    groups += [[(f"  {_stage_name(share.stage)}", share.share)] for share in later]
    rows = [row for group in groups for row in group]
    title = "Shares, in percent"
    if len(test.trials) == 1:
        single = [
            Group(name, 2) if ratio is None else (name, _percents(ratio)[0]) for name, ratio in rows
        ]
        return Section(title, (Table(("share", "one trial"), single, (1,)),))
    header = ("share", "ratio of sums", "mean of ratios", "lowest", "highest", "trials")
    figures = [
        Group(name, len(header)) if ratio is None else (name, *_percents(ratio))
        for name, ratio in rows
    ]
    text = "Ratio of sums: all weights count alike. Mean of ratios: all trials count alike."
    body = Table(header, figures, range(1, len(header)), whole="test.shares")
    return Section(title, (body, Texts((text,), NOTE)))


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


def _parts_section(parts: list[PartShare]) -> Section:
    """What came off in all trials, what became of it and what it is worth."""
    if not parts:
        return Section()
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
    return Section("What came off", (Table(header, rows, right, whole="test.parts"),))


def _costs_section(test: YieldTest, price: Quantity | None) -> Section:
    """The cost at each stage, in all and per unit, and what it is against the price."""
    if not test.costs:
        return Section()
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
    note = (
        "Cost factor: what a unit costs over the price of a unit bought. Times a new price it "
        "gives the new cost, as if the worth of what came off rose and fell with it. Yield "
        "factor: what the cost factor would be if nothing that came off were worth anything."
    )
    body = Table(header[:columns], cells, range(1, columns))
    return Section("Costs", (body, Texts((note,), NOTE)))


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
    costs: list[StageCost], portion: Quantity | None, price: Quantity | None
) -> Section:
    if portion is None:
        return Section()
    rows = []
    unit = _unit_of(costs[0].price)
    for cost in costs:
        factor = cost.portion_factor(portion)
        new = [bare_money(cost.portion_cost(portion, price))] if price else []
        money = bare_money(cost.portion_cost(portion))
        rows.append((_stage_name(cost.stage), money, f"{_fixed(factor)} {unit}", *new))
    header = ["weighed", _currency(costs[0].paid), "portion factor"]
    header += ["at the new price"] if price else []
    text = f"Portion factor: times the price of a {unit} bought it gives the cost of a portion."
    body = Table(header, rows, range(1, len(header)))
    return Section(f"A portion of {portion.told}", (body, Texts((text,), NOTE)))


def _stage_name(stage: str) -> str:
    return _STAGES.get(stage, stage)


def _told(amount: Quantity | None) -> str:
    """Pounds with their ounces, where these are whole."""
    if amount is None:
        return ""
    ounces = amount.value * _OUNCES
    if amount.unit.split(" ")[0] != "lb" or ounces.denominator != 1:
        return told_of(amount)
    pounds, rest = divmod(int(ounces), _OUNCES)
    parts = (f"{pounds} lb" if pounds else "", f"{rest} oz" if rest else "")
    return " ".join(part for part in parts if part) or told_of(amount)


def _money(value: Quantity | None) -> str:
    return "" if value is None else money_of(value)


def _currency(money: Quantity) -> str:
    return "cost" if money.unit == "XXX" else money.unit


def _each(rate: Quantity, cost: StageCost) -> str:
    """Money per unit, to the currency's minor unit."""
    return bare_money(_core.quantity(rate.value, cost.paid.unit))


def _unit_of(amount: Quantity) -> str:
    """The weight unit of ``USD/(lb AP)``."""
    return amount.unit.split("(")[-1].split(" ")[0]


def _fixed(figure: Quantity) -> str:
    return _to_places(figure.value, _FACTOR_PLACES)


def _percent(share: Quantity) -> str:
    return _to_places(share.value * 100, _PLACES)


def _to_places(number: Fraction, places: int) -> str:
    """With the exact number beside it where it is rounded."""
    told = _core.fixed_text(number, places)
    return told if Fraction(told) == number else Figure(told, _core.exact_text(number))


def _percents(ratio: TrialRatio) -> tuple[str, ...]:
    """The figures of a row."""
    figures = (ratio.ratio_of_sums, ratio.mean_of_ratios, ratio.low, ratio.high)
    return (*(_percent(figure) for figure in figures), str(ratio.trials))
