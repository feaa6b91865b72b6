"""Random yield tests against arithmetic with fractions: shares, spread, credit, portions."""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import quantity, yield_test

# Grams of the units that weights are written in; the pound is 453.59237 g exactly.
GRAMS = {"g": Fraction(1), "kg": Fraction(1000), "lb": Fraction("453.59237")}
PART_NAMES = ["fat", "bones", "peel", "tops"]


@dataclass(frozen=True)
class Trial:
    """Weights in grams; ``loss`` is derived, what was carved is what was not served."""

    parts: dict[str, tuple[Fraction, int]]  # with the worth in cents, in all
    loss: Fraction
    edible: Fraction
    pan: Fraction
    cooked: Fraction
    served: Fraction
    unit: str
    extra: int  # cents paid beyond what the parts are worth

    @property
    def bought(self) -> Fraction:
        return self.loss + self.edible + sum((grams for grams, _ in self.parts.values()))

    @property
    def worth(self) -> Fraction:
        return Fraction(sum(cents for _, cents in self.parts.values()), 100)

    @property
    def paid(self) -> Fraction:
        return self.worth + Fraction(self.extra, 100)

    def rows(self, name: str) -> list[dict[str, str]]:
        def row(what: str, grams: Fraction | None, part: str = "", value: str = "") -> None:
            weight = "rest" if grams is None else f"{grams / GRAMS[self.unit]} {self.unit}"
            cells = {"trial": name, "what": what, "weight": weight, "part": part, "value": value}
            rows.append(cells)

        rows: list[dict[str, str]] = []
        row("bought", self.bought, "x", f"{self.paid} EUR")
        for part, (grams, cents) in self.parts.items():
            row("by-product", grams, part, f"{Fraction(cents, 100)} EUR")
        row("loss", None)
        row("edible", self.edible)
        row("into the pan", self.pan)
        row("cooked", self.cooked)
        row("carving loss", None)
        row("served", self.served)
        return rows


def grams(low: int) -> st.SearchStrategy[Fraction]:
    return st.fractions(low, 10_000, max_denominator=8)


@st.composite
def trials(draw: st.DrawFn) -> Trial:
    edible = draw(grams(1))
    cooked = draw(grams(1))
    return Trial(
        draw(
            st.dictionaries(st.sampled_from(PART_NAMES), st.tuples(grams(0), st.integers(0, 500)))
        ),
        draw(grams(0)),
        edible,
        edible * draw(st.fractions(Fraction(1, 8), 1, max_denominator=8)),
        cooked,
        cooked * draw(st.fractions(Fraction(1, 8), 1, max_denominator=8)),
        draw(st.sampled_from(sorted(GRAMS))),
        draw(st.integers(1, 5000)),
    )


LISTS = st.lists(trials(), min_size=1, max_size=5)


def of_trials(tried: list[Trial]) -> scalepan.YieldTest:
    return yield_test([row for n, trial in enumerate(tried) for row in trial.rows(str(n))])


@given(LISTS)
def test_shares_are_the_sums_and_means_of_fractions(tried: list[Trial]) -> None:
    test = of_trials(tried)
    oracle = {
        ("EP", "AP"): [(t.edible, t.bought) for t in tried],
        ("cooked", "EP"): [(t.cooked, t.pan) for t in tried],
        ("served", "cooked"): [(t.served, t.cooked) for t in tried],
        ("cooked", "AP"): [(t.cooked, t.bought * t.pan / t.edible) for t in tried],
        ("served", "AP"): [(t.served, t.bought * t.pan / t.edible) for t in tried],
    }
    assert {(share.stage, share.of) for share in test.shares} == set(oracle)
    for (stage, of), pairs in oracle.items():
        ratio = test.share(stage, of).share
        own = [above / below for above, below in pairs]
        assert ratio.ratio_of_sums == quantity(
            sum(above for above, _ in pairs) / sum(below for _, below in pairs), f"{stage}/{of}"
        )
        assert ratio.mean_of_ratios.value == sum(own) / len(own)
        assert (ratio.low.value, ratio.high.value) == (min(own), max(own))
        assert ratio.low <= ratio.ratio_of_sums <= ratio.high
        assert ratio.low <= ratio.mean_of_ratios <= ratio.high
        loss = test.share(stage, of).loss
        assert loss.ratio_of_sums.value == 1 - ratio.ratio_of_sums.value
        assert loss.low.value == 1 - max(own)


@given(LISTS)
def test_shares_of_all_parts_losses_and_the_edible_make_one(tried: list[Trial]) -> None:
    test = of_trials(tried)
    for of, stage in (("AP", "EP"), ("cooked", "served")):
        remained = test.share(stage, of).share
        parts = [part.share for part in test.parts if part.of == of]
        assert remained.ratio_of_sums.value + sum(p.ratio_of_sums.value for p in parts) == 1
        assert remained.mean_of_ratios.value + sum(p.mean_of_ratios.value for p in parts) == 1
        for part in parts:
            assert part.low <= part.ratio_of_sums <= part.high
            assert part.low <= part.mean_of_ratios <= part.high


@given(LISTS)
def test_parts_count_with_none_where_a_trial_has_them_not(tried: list[Trial]) -> None:
    for part in of_trials(tried).parts:
        if part.what != "by-product":
            continue
        weights = [t.parts.get(part.name, (Fraction(0), 0))[0] for t in tried]
        own = [w / t.bought for w, t in zip(weights, tried, strict=True)]
        assert part.weight.to("g").value == sum(weights)
        assert part.share.mean_of_ratios.value == sum(own) / len(own)
        assert (part.share.low.value, part.share.high.value) == (min(own), max(own))


@given(LISTS)
def test_money_is_what_was_paid_less_what_came_off(tried: list[Trial]) -> None:
    test = of_trials(tried)
    edible, cooked, served = test.costs
    value = sum(t.paid - t.worth for t in tried)
    assert edible.value == quantity(value, "EUR")
    assert edible.credit == quantity(sum(t.worth for t in tried), "EUR")
    carried = sum((t.paid - t.worth) * t.pan / t.edible for t in tried)
    assert cooked.value == served.value == quantity(carried, "EUR")
    weight = sum(t.served for t in tried) / 1000
    assert served.per_unit.to("EUR/(kg served)").value == carried / weight
    bought = sum(t.bought * t.pan / t.edible for t in tried) / 1000
    paid = sum(t.paid * t.pan / t.edible for t in tried)
    assert served.factor.value == (carried / weight) / (paid / bought)
    assert served.yield_factor.value == bought / weight


@given(LISTS, st.fractions(1, 1000, max_denominator=16), st.integers(1, 9999))
def test_portion_factor_times_price_is_portion_cost(
    tried: list[Trial], size: Fraction, cents: int
) -> None:
    price = quantity(Fraction(cents, 100), "EUR/(kg AP)")
    for cost in of_trials(tried).costs:
        portion = f"{size} g"
        assert cost.portion_cost(portion) == cost.portion_factor(portion) * cost.price
        assert cost.portion_cost(portion, price) == cost.portion_factor(portion) * price
        assert cost.portion_cost(portion) == cost.per_unit * quantity(f"{portion} {cost.stage}")
        assert cost.at_price(price) == cost.factor * price
        assert cost.at_price(cost.price) == cost.per_unit


@given(LISTS)
def test_facts_lie_in_their_spread_and_read_back(tried: list[Trial]) -> None:
    for by in ("ratio of sums", "mean of ratios"):
        rows = of_trials(tried).facts(food="leeks", by=by)
        catalog = scalepan.catalog_with(facts=rows, catalog=scalepan.bundled_catalog())
        facts = {fact.kind: fact for fact in catalog.facts("leeks") if fact.layer == "own"}
        edible = facts["edible share"].value.value
        own = [t.edible / t.bought for t in tried]
        whole = sum(t.edible for t in tried) / sum(t.bought for t in tried)
        assert edible == (whole if by == "ratio of sums" else sum(own) / len(own))
        assert set(facts) == {"edible share", "cooked share"}
