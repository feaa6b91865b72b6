"""Yield tests: their rows, what they say together, and the facts made of them.

Weights and prices are invented: celeriac and brisket tried in the night kitchen of an observatory.
Figures are worked out by hand beside each check.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from scalepan import parse_yield_test, quantity, yield_test

HEADER = "trial,what,part,weight,value,use,note\n"

# Trial 1: 2.9 of 4 kg remain; trial 2: 1.5 of 2 kg.
CELERIAC = (
    HEADER
    + """\
first night,bought,celeriac,4 kg,1.50 EUR/kg,,
first night,by-product,peel,0.6 kg,0.20 EUR/kg,stock,
first night,by-product,woody core,300 g,,thrown,
first night,loss,,rest,,,
first night,edible,,2.9 kg,,,
first night,into the pan,,2.4 kg,,,the rest was eaten raw
first night,cooked,,2.1 kg,,,roasted
first night,taken off,skin,100 g,,thrown,
first night,carving loss,,rest,,,
first night,served,,1.9 kg,,,
second night,bought,celeriac,2 kg,2.60 EUR,,
second night,by-product,peel,0.5 kg,0.10 EUR,stock,
second night,edible,,1.5 kg,,,
second night,cooked,,1.2 kg,,,
"""
)


@pytest.fixture
def celeriac() -> scalepan.YieldTest:
    return parse_yield_test(CELERIAC, file="celeriac.csv")


def test_trials_hold_what_was_weighed(celeriac: scalepan.YieldTest) -> None:
    first, second = celeriac.trials
    assert (first.name, first.food, celeriac.food) == ("first night", "celeriac", "celeriac")
    assert first.bought == quantity("4 kg AP")
    assert first.cost == quantity("6 EUR")
    assert [(p.name, p.what, p.use, p.weight, p.value, p.is_rest) for p in first.cut] == [
        ("peel", "by-product", "stock", quantity("600 g"), quantity("0.12 EUR"), False),
        ("woody core", "by-product", "thrown", quantity("300 g"), None, False),
        ("loss", "loss", "", quantity("200 g"), None, True),
    ]
    assert [(p.name, p.weight) for p in first.off] == [
        ("skin", quantity("100 g")),
        ("carving loss", quantity("100 g")),
    ]
    weights = (first.edible, first.into_the_pan, first.cooked, first.served, first.drained)
    assert weights[:2] == (quantity("2.9 kg EP"), quantity("2.4 kg EP"))
    assert weights[2:] == (quantity("2.1 kg cooked"), quantity("1.9 kg served"), None)
    assert second.into_the_pan == second.edible == quantity("1.5 kg EP")
    assert second.served is None


def test_shares_stand_under_both_names_with_their_spread(celeriac: scalepan.YieldTest) -> None:
    share = celeriac.share("EP", "AP").share
    assert share.ratio_of_sums == quantity(Fraction("4.4") / 6, "EP/AP")
    assert share.mean_of_ratios == quantity((Fraction("0.725") + Fraction("0.75")) / 2, "EP/AP")
    assert (share.low, share.high) == (quantity("0.725 EP/AP"), quantity("0.75 EP/AP"))
    assert share.trials == 2
    # 2.1 of the 2.4 kg that went into the pan, 1.2 of 1.5.
    roasted = celeriac.share("cooked", "EP").share
    assert roasted.ratio_of_sums == quantity(Fraction("3.3") / Fraction("3.9"), "cooked/EP")
    assert roasted.mean_of_ratios == quantity((Fraction(7, 8) + Fraction(4, 5)) / 2, "cooked/EP")


def test_a_share_over_two_steps_is_of_what_went_on(celeriac: scalepan.YieldTest) -> None:
    # Behind the 2.4 kg in the pan stand 2.4 / 2.9 of the 4 kg bought.
    share = celeriac.share("served", "AP").share
    assert share.ratio_of_sums.value == Fraction("1.9") / (4 * Fraction("2.4") / Fraction("2.9"))
    assert share.trials == 1


def test_losses_say_what_they_are_of(celeriac: scalepan.YieldTest) -> None:
    loss = celeriac.share("EP", "AP").loss
    assert celeriac.share("EP", "AP").of == "AP"
    assert loss.ratio_of_sums == quantity(Fraction("1.6") / 6)
    assert (loss.low, loss.high) == (quantity("0.25"), quantity("0.275"))


def test_a_part_that_a_trial_has_not_counts_with_none(celeriac: scalepan.YieldTest) -> None:
    parts = {part.name: part for part in celeriac.parts}
    core = parts["woody core"].share
    assert core.ratio_of_sums == quantity(Fraction("0.3") / 6)
    assert core.mean_of_ratios == quantity(Fraction("0.3") / 4 / 2)
    assert (core.low, core.high) == (quantity("0"), quantity("0.075"))
    assert parts["peel"].weight == quantity("1.1 kg")
    assert parts["peel"].value == quantity("0.22 EUR")
    # Only the first trial was carved.
    assert (parts["skin"].of, parts["skin"].share.trials) == ("cooked", 1)
    assert parts["skin"].share.ratio_of_sums == quantity(Fraction("0.1") / Fraction("2.1"))


def test_money_goes_on_with_the_weight(celeriac: scalepan.YieldTest) -> None:
    edible, cooked, served = celeriac.costs
    assert [cost.stage for cost in celeriac.costs] == ["EP", "cooked", "served"]
    assert edible.paid == quantity("8.60 EUR")
    assert edible.value == quantity("8.38 EUR")  # less 0.12 and 0.10
    assert edible.per_unit == quantity(Fraction("8.38") / Fraction("4.4"), "EUR/(kg EP)")
    assert edible.factor.unit == "AP/EP"
    went_on = Fraction("2.4") / Fraction("2.9")
    value = Fraction("5.88") * went_on + Fraction("2.50")
    assert cooked.value == quantity(value, "EUR")
    assert cooked.per_unit == quantity(value / Fraction("3.3"), "EUR/(kg cooked)")
    price = (6 * went_on + Fraction("2.60")) / (4 * went_on + 2)
    assert cooked.price == quantity(price, "EUR/(kg AP)")
    assert cooked.factor == quantity(value / Fraction("3.3") / price, "AP/cooked")
    assert (served.trials, served.value) == (1, quantity(Fraction("5.88") * went_on, "EUR"))


def test_what_is_taken_off_after_cooking_may_be_worth_something() -> None:
    rows = "1,bought,brisket,5 kg,8 EUR/kg,,\n1,loss,,rest,,,\n1,edible,,4 kg,,,\n"
    rows += "1,cooked,,3 kg,,,\n1,taken off,fat,0.5 kg,2 EUR/kg,dripping,\n1,served,,2.5 kg,,,\n"
    test = parse_yield_test(HEADER + rows)
    assert test.cost("cooked").value == quantity("40 EUR")
    assert test.cost("served").value == quantity("39 EUR")
    assert test.cost("served").per_unit == quantity("15.60 EUR/(kg served)")


def test_mixing_stages_is_an_error(celeriac: scalepan.YieldTest) -> None:
    share = celeriac.share("EP", "AP").share.ratio_of_sums
    weight = quantity("1 kg EP")
    assert (weight / share).unit == "g AP"
    with pytest.raises(scalepan.MeasureError) as caught:
        (weight * share).to("kg AP")
    assert caught.value.code == "quantity.convert"
    with pytest.raises(scalepan.MeasureError) as caught:
        celeriac.cost("EP").portion_cost("150 g cooked")
    assert str(caught.value) == (
        "cannot turn 150 g cooked into kg EP: weight cooked and weight EP; stages cooked (cooked) "
        "and EP (edible portion) (a share links the stages: multiply by it one way, divide by it "
        "the other)"
    )


def test_a_price_is_of_what_is_bought(celeriac: scalepan.YieldTest) -> None:
    cost = celeriac.cost("EP")
    assert (
        cost.at_price("2 EUR/kg")
        == cost.at_price("2 EUR/(kg AP)")
        == cost.factor * quantity("2 EUR/(kg AP)")
    )
    for price, said in (
        ("2 EUR/(kg EP)", "2 EUR/(kg EP) is no price of what was bought, which is in EUR/(kg AP)"),
        ("2 USD/kg", "2 USD/kg is no price of what was bought, which is in EUR/(kg AP)"),
        ("2 EUR", "2 EUR is no price of what was bought, which is in EUR/(kg AP)"),
    ):
        with pytest.raises(scalepan.FoodError) as caught:
            cost.at_price(price)
        hint = "a price is money per unit bought, such as 7.00 EUR/(kg AP)"
        assert (caught.value.code, str(caught.value)) == ("yield.price", f"{said} ({hint})")


def test_facts_of_a_test_are_used_by_a_costing(celeriac: scalepan.YieldTest) -> None:
    rows = celeriac.facts(food="leeks")
    source = "yield test of 2 trials, ratio of sums, celeriac.csv"
    assert [(row["fact"], row["kind"], row["source"]) for row in rows] == [
        ("own.leeks.edible", "edible", source),
        ("own.leeks.cooked", "cooked", source),
    ]
    catalog = scalepan.catalog_with(facts=rows)
    (edible,) = (fact for fact in catalog.facts("leeks") if fact.id == "own.leeks.edible")
    assert (edible.low, edible.high) == (quantity("0.725 EP/AP"), quantity("0.75 EP/AP"))
    recipe = scalepan.parse_recipe(
        'name = "x"\nserves = 4\nlines = ["2.2 kg leeks, trimmed"]\n', catalog=catalog
    )
    prices = "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,1,EUR,no\n"
    costing = scalepan.cost(recipe, scalepan.parse_prices(prices))
    # 2.2 / (4.4 / 6) = 3 kg.
    assert costing.shopping[0].need == quantity("3 kg AP")
    assert source in costing.why("leeks.buy")
    cooked = scalepan.convert("3.9 kg EP", "kg cooked", food="leeks", catalog=catalog)
    assert cooked.value == Fraction("3.3")


def test_facts_by_the_mean_are_said_to_be_so(celeriac: scalepan.YieldTest) -> None:
    edible = celeriac.facts(by="mean of ratios", source="two nights", state="peeled")[0]
    assert edible["value"] == "0.7375 EP/AP"
    assert edible["source"] == "yield test of 2 trials, mean of ratios, two nights"
    assert (edible["fact"], edible["state"]) == ("own.celeriac.edible.peeled", "peeled")


def test_one_trial_has_no_spread() -> None:
    test = parse_yield_test(HEADER + "1,edible,rice,100 g,,,\n1,cooked,,280 g,,,\n")
    (row,) = test.facts()
    assert row["value"] == "2.8 cooked/EP"
    assert (row["low"], row["high"]) == ("", "")
    assert row["source"] == "yield test of 1 trial, ratio of sums"
    assert test.share("cooked", "EP").loss.ratio_of_sums == quantity("-1.8")


def test_facts_go_through_a_file_too(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], celeriac: scalepan.YieldTest
) -> None:
    from scalepan_command.start import main

    test = tmp_path / "test.csv"
    test.write_text(CELERIAC.replace("celeriac", "fennel"), encoding="utf-8")
    assert main(["yield", str(test), "--as-facts"]) == 0
    facts = tmp_path / "own.csv"
    facts.write_text(capsys.readouterr().out, encoding="utf-8")
    whole = ["convert", "4.4 kg EP", "kg AP", "--food", "fennel", "--facts", str(facts)]
    assert main(whole) == 0
    out = capsys.readouterr().out
    assert out.startswith("4.4 kg EP = 6 kg AP\n")
    assert "yield test of 2 trials, ratio of sums," in " ".join(out.split())


def test_drained_shares_make_facts() -> None:
    rows = "1,bought,chickpeas,400 g,,,\n1,by-product,brine,rest,,,\n1,drained,,240 g,,,\n"
    test = parse_yield_test(
        HEADER + rows.replace("by-product,brine,rest", "by-product,brine,160 g")
    )
    assert [(row["kind"], row["value"]) for row in test.facts()] == [("drained", "0.6 drained/AP")]


def test_rows_may_be_mappings() -> None:
    rows = [
        {"trial": "1", "what": "bought", "part": "leeks", "weight": "2 lb"},
        {"trial": "1", "what": "by-product", "part": "tops", "weight": "12 oz", "use": "stock"},
        {"trial": "1", "what": "loss", "weight": "rest"},
        {"trial": "1", "what": "Edible", "weight": "500 g"},
    ]
    test = yield_test(rows, source="own kitchen")
    pound = Fraction("453.59237")
    assert test.share("EP", "AP").share.ratio_of_sums.value == 500 / (2 * pound)
    assert test.trials[0].cut[1].weight.to("g").value == 2 * pound - 500 - pound * 12 / 16
    assert test.facts()[0]["source"] == "yield test of 1 trial, ratio of sums, own kitchen"
    rows[1]["weight"] = "12 ounzes"
    with pytest.raises(scalepan.MeasureError) as caught:
        yield_test(rows)
    assert caught.value.place == "row 2 of the yield table"
    with pytest.raises(scalepan.FoodError) as wrong:
        yield_test([{"trial": 1, "what": "bought", "weight": 1.5}])
    assert str(wrong.value).startswith(
        "row 1 of the yield table: weight is the float 1.5, which is no exact figure"
    )


def test_asking_for_what_was_not_weighed_is_an_error(celeriac: scalepan.YieldTest) -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        celeriac.share("drained", "AP")
    assert str(caught.value) == (
        "the yield test has no share drained/AP "
        "(there are: EP/AP, cooked/EP, served/cooked, cooked/AP, served/AP)"
    )
    with pytest.raises(scalepan.FoodError) as caught:
        celeriac.cost("drained")
    assert str(caught.value) == (
        "the yield test has no cost at drained (there are: EP, cooked, served)"
    )
    with pytest.raises(scalepan.FoodError) as caught:
        celeriac.facts(by="mean")
    assert str(caught.value) == (
        'no ratio is called "mean" (there are: ratio of sums, mean of ratios)'
    )
    unnamed = parse_yield_test(HEADER + "1,edible,,100 g,,,\n1,cooked,,80 g,,,\n")
    with pytest.raises(scalepan.FoodError) as caught:
        unnamed.facts()
    assert str(caught.value) == (
        "the yield test does not say which food it is of "
        "(name it in the part of the first row of a trial, or as food=)"
    )
    with pytest.raises(scalepan.FoodError) as caught:
        unnamed.cost("cooked")
    assert str(caught.value) == "the yield test has no cost at cooked (no trial has a price)"
