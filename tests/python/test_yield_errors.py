"""What is wrong with a yield test is said once, with its place, both sides and the nearest fix."""

from __future__ import annotations

import pytest
import scalepan
from scalepan import parse_yield_test

HEADER = "trial,what,part,weight,value,use\n"
BOUGHT = "1,bought,leeks,4 kg,,\n"
PAID = "1,bought,leeks,4 kg,2 EUR/kg,\n"
EDIBLE = "1,edible,,3 kg,,\n"

WORDS = (
    "there are: bought, by-product, loss, edible, drained, into the pan, cooked, taken off, "
    "carving loss, served"
)

ERRORS = {
    "no trial": (
        ",bought,leeks,4 kg,,\n",
        "yield.missing",
        "t.csv:2:2: the row has no trial",
    ),
    "no weight": ("1,bought,leeks,,,\n", "yield.missing", "t.csv:2:3: the row has no weight"),
    "unknown word": (
        "1,edibel,leeks,4 kg,,\n",
        "yield.what",
        f't.csv:2:3: no row of a yield test is called "edibel" (nearest: edible; {WORDS})',
    ),
    "a count": (
        "1,bought,leeks,4,,\n",
        "yield.weight",
        't.csv:2:16: "4" is neither a weight nor a volume, but a plain number '
        "(write it with its unit, such as 2.5 kg or 3 lb 5 oz)",
    ),
    "a weight too long": (
        "1,bought,leeks,1.00000000000000000001 kg,,\n",
        "yield.weight",
        't.csv:2:16: "1.00000000000000000001 kg" has more digits than any scale or till gives',
    ),
    "a value too long": (
        "1,bought,leeks,1 kg,1/10000000000000000000 EUR,\n",
        "yield.value",
        't.csv:2:21: "1/10000000000000000000 EUR" has more digits than any scale or till gives',
    ),
    "unit misspelt": (
        "1,bought,leeks, 4 kq,,\n",
        "unit.unknown",
        't.csv:2:19: unknown unit "kq" (nearest: kg)',
    ),
    "nothing bought": (
        "1,bought,leeks,0 kg,,\n",
        "yield.weight",
        't.csv:2:16: the weight of "bought" is zero',
    ),
    "below zero": (
        BOUGHT + "1,by-product,tops,-1 kg,,\n",
        "yield.weight",
        't.csv:3:19: the weight of "by-product" is below zero',
    ),
    "stage of another row": (
        "1,bought,leeks,4 kg EP,,\n",
        "yield.stage",
        't.csv:2:16: the weight of "bought" is at AP, but 4 kg EP is written (leave the stage out)',
    ),
    "stage of a part": (
        BOUGHT + "1,by-product,tops,1 kg AP,,\n",
        "yield.stage",
        't.csv:3:19: the weight of "by-product" is written without a stage, but 1 kg AP is written '
        "(leave the stage out)",
    ),
    "edible is the rest": (
        BOUGHT + "1,edible,,rest,,\n",
        "yield.weight",
        't.csv:3:11: the weight of "edible" cannot be the rest '
        "(weigh it; only a loss is what the other weights leave over)",
    ),
    "value of what has none": (
        BOUGHT + "1,edible,,3 kg,2 EUR/kg,\n",
        "yield.value",
        't.csv:3:16: a row "edible" has no value '
        "(values stand at bought, by-product and taken off)",
    ),
    "value without currency": (
        "1,bought,leeks,4 kg,2.10,\n",
        "yield.value",
        't.csv:2:21: "2.10" is no value of 4 kg AP: it is of the kind plain number '
        "(write money per unit, such as 5.00 USD/lb, or in all, such as 150.00 USD)",
    ),
    "value of another kind": (
        "1,bought,leeks,4 kg,2 EUR/L,\n",
        "yield.value",
        't.csv:2:21: "2 EUR/L" is no value of 4 kg AP: it is of the kind EUR/mL '
        "(write money per unit, such as 5.00 USD/lb, or in all, such as 150.00 USD)",
    ),
    "value below zero": (
        "1,bought,leeks,4 kg,-2 EUR,\n",
        "yield.value",
        "t.csv:2:21: the value -2 EUR is below zero",
    ),
    "for nothing": (
        "1,bought,leeks,4 kg,0 EUR,\n1,loss,,rest,,\n" + EDIBLE,
        "yield.value",
        "t.csv:2:3: trial 1: what was bought cost nothing (leave the value out)",
    ),
    "bought twice": (
        BOUGHT + BOUGHT + EDIBLE,
        "yield.duplicate",
        't.csv:3:3: trial 1: a second row "bought" (add the weights up, or begin another trial)',
    ),
    "a part twice": (
        BOUGHT + "1,by-product,tops,1 kg,,\n1,by-product,tops,1 kg,,\n" + EDIBLE,
        "yield.duplicate",
        't.csv:4:3: trial 1: the part "tops" is there twice '
        "(add the weights up, or give the parts different names)",
    ),
    "two rests": (
        BOUGHT + "1,loss,a,rest,,\n1,loss,b,rest,,\n" + EDIBLE,
        "yield.duplicate",
        "t.csv:4:3: trial 1: two losses are the rest (weigh one of them)",
    ),
    "part without a name": (
        BOUGHT + "1,by-product,,1 kg,,\n" + EDIBLE,
        "yield.missing",
        't.csv:3:3: trial 1: a row "by-product" does not say which part it is '
        "(name it in the column part)",
    ),
    "nothing remains": (
        BOUGHT,
        "yield.missing",
        't.csv:2:3: trial 1: there is a row "bought", but none "edible" or "drained"',
    ),
    "nothing bought but a part": (
        "1,by-product,tops,1 kg,,\n" + EDIBLE,
        "yield.missing",
        't.csv:2:3: trial 1: there is a row "by-product", but none "bought"',
    ),
    "nothing cooked": (
        BOUGHT + "1,loss,,rest,,\n" + EDIBLE + "1,into the pan,,2 kg,,\n",
        "yield.missing",
        't.csv:5:3: trial 1: there is a row "into the pan", but none "cooked"',
    ),
    "nothing served": (
        EDIBLE + "1,cooked,,2 kg,,\n1,taken off,skin,1 kg,,\n",
        "yield.missing",
        't.csv:4:3: trial 1: there is a row "taken off", but none "served"',
    ),
    "one weight": (
        EDIBLE,
        "yield.missing",
        "t.csv:2:3: trial 1: there is one weight and nothing to compare it with "
        "(add a row bought, or cooked)",
    ),
    "edible and drained": (
        BOUGHT + EDIBLE + "1,drained,,1 kg,,\n",
        "yield.stages",
        "t.csv:4:3: trial 1: it has an edible weight and a drained weight "
        "(make two trials of them)",
    ),
    "drained and cooked": (
        BOUGHT + "1,drained,,4 kg,,\n1,into the pan,,1 kg,,\n1,cooked,,1 kg,,\n",
        "yield.stages",
        "t.csv:4:3: trial 1: it has a drained weight and was cooked (a cooked share is of the "
        "edible weight: make a trial of its own of the cooking)",
    ),
    "trials at different stages": (
        BOUGHT + "1,loss,,rest,,\n" + EDIBLE + "2,bought,,1 kg,,\n2,drained,,1 kg,,\n",
        "yield.stages",
        "t.csv:5:3: of the trials 2 and 1 one has a drained weight and one has not "
        "(make two tests of them)",
    ),
    "weight and volume": (
        BOUGHT + "1,edible,,3 L,,\n",
        "yield.kind",
        "t.csv:3:3: trial 1: 4 kg AP is a weight, but 3 L EP is a volume "
        "(one trial is weighed throughout, or measured by volume throughout)",
    ),
    "trials of different kinds": (
        BOUGHT + "1,loss,,rest,,\n" + EDIBLE + "2,edible,,1 L,,\n2,cooked,,1 L,,\n",
        "yield.kind",
        "t.csv:5:3: trial 2 is by volume, trial 1 by weight (make two tests of them)",
    ),
    "two currencies in a trial": (
        PAID + "1,by-product,tops,1 kg,1 GBP/kg,\n" + EDIBLE,
        "yield.currency",
        't.csv:3:3: trial 1: "tops" is in money in GBP, but what was bought in money in EUR',
    ),
    "two currencies in a test": (
        PAID + "1,loss,,rest,,\n" + EDIBLE + "2,bought,,1 kg,1 GBP,\n2,edible,,1 kg,,\n",
        "yield.currency",
        "t.csv:5:3: trial 2 is in money in GBP, trial 1 in money in EUR "
        "(one test is in one currency)",
    ),
    "a value without a price": (
        BOUGHT + "1,by-product,tops,1 kg,1 EUR/kg,\n" + EDIBLE,
        "yield.missing",
        't.csv:3:3: trial 1: "tops" has a value, but what was bought has no price '
        '(state the price in the value of a row "bought")',
    ),
    "parts worth too much": (
        PAID + "1,by-product,tops,1 kg,9 EUR/kg,\n" + EDIBLE,
        "yield.credit",
        "t.csv:2:3: trial 1: the parts are worth 9 EUR, more than the 8 EUR they came from",
    ),
    "too little": (
        BOUGHT + "1,by-product,tops,500 g,,\n" + EDIBLE,
        "yield.closing",
        "t.csv:4:3: trial 1: 4 kg bought, but parts, losses and edible weight make 3.5 kg: "
        '0.5 kg is missing (weigh again, or add a row "loss" whose weight is rest)',
    ),
    "a loss below zero": (
        BOUGHT + "1,by-product,tops,1.5 kg,,\n1,loss,,rest,,\n" + EDIBLE,
        "yield.closing",
        "t.csv:5:3: trial 1: 4 kg bought, but parts, losses and edible weight make 4.5 kg: "
        "0.5 kg too much (weigh again; no loss is below zero)",
    ),
    "too little served": (
        EDIBLE + "1,cooked,,2 kg,,\n1,served,,1.9 kg,,\n",
        "yield.closing",
        "t.csv:4:3: trial 1: 2 kg cooked, but parts, losses and served weight make 1.9 kg: "
        '0.1 kg is missing (weigh again, or add a row "carving loss" whose weight is rest)',
    ),
    "more in the pan than there was": (
        EDIBLE + "1,into the pan,,4 kg,,\n1,cooked,,2 kg,,\n",
        "yield.closing",
        "t.csv:3:3: trial 1: 4 kg EP went into the pan, but only 3 kg EP was there",
    ),
    "two foods": (
        BOUGHT + "1,loss,,rest,,\n" + EDIBLE + "2,bought,onions,1 kg,,\n2,edible,,1 kg,,\n",
        "yield.food",
        't.csv:5:3: trial 2 is of "onions", trial 1 of "leeks" (a yield test is of one food)',
    ),
}


@pytest.mark.parametrize(("rows", "code", "said"), ERRORS.values(), ids=ERRORS)
def test_errors(rows: str, code: str, said: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        parse_yield_test(HEADER + rows, file="t.csv")
    assert (caught.value.code, str(caught.value)) == (code, said)


def test_too_many_rows() -> None:
    rows = [f"{n},edible,,3 kg,,\n{n},cooked,,2 kg,,\n" for n in range(1001)]
    assert len(parse_yield_test(HEADER + "".join(rows[:1000])).trials) == 1000
    with pytest.raises(scalepan.FoodError) as caught:
        parse_yield_test(HEADER + "".join(rows))
    assert str(caught.value) == "there are 2002 rows (a yield test has at most 2000)"


@pytest.mark.parametrize(
    ("text", "said"),
    [
        ("trial,what\n1,bought\n", "t.csv:1: the header has no column weight"),
        (
            HEADER,
            "t.csv: no rows stand below the header",
        ),
        ("trial,what,weight,wait\n", 't.csv:1:19: unknown column "wait"'),
    ],
)
def test_errors_of_the_table(text: str, said: str) -> None:
    with pytest.raises(scalepan.FoodError) as caught:
        parse_yield_test(text, file="t.csv")
    assert f"{caught.value.place}: {caught.value.message}" == said


@pytest.mark.parametrize(
    ("size", "said"),
    [
        ("0 g", "a portion of 0 g is no portion (write a size above zero, such as 5 oz)"),
        (
            "2 L",
            "cannot turn 2 L into kg EP: volume and weight EP; stages no stage and "
            "EP (edible portion)",
        ),
    ],
)
def test_portions_that_are_none(size: str, said: str) -> None:
    cost = parse_yield_test(HEADER + PAID + "1,loss,,rest,,\n" + EDIBLE).cost("EP")
    with pytest.raises(scalepan.Error) as caught:
        cost.portion_cost(size)
    assert str(caught.value) == said


def test_a_price_below_zero() -> None:
    cost = parse_yield_test(HEADER + PAID + "1,loss,,rest,,\n" + EDIBLE).cost("EP")
    with pytest.raises(scalepan.FoodError) as caught:
        cost.at_price("-1 EUR/kg")
    assert str(caught.value) == "the price -1 EUR/kg is below zero"
