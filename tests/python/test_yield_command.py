"""``scalepan yield``: the table it prints, its JSON, its exit status.

Weights and prices are invented; figures are worked out by hand beside each check.
"""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest
from scalepan_command.start import main

# 60 - 2 = 58 EUR for 4 kg, 14.50 a kg against 12: factor 1.208333; yield factor 5 / 4.
# Cooked 3 kg: 19.3333 a kg. 58 EUR for 2.5 kg served: 23.20.
BRISKET = """\
trial,what,part,weight,value,use,note
1,bought,brisket,5 kg,12 EUR/kg,,
1,by-product,fat,0.8 kg,2.50 EUR/kg,dripping,
1,loss,cutting loss,rest,,,
1,edible,,4 kg,,,
1,cooked,,3 kg,,,braised
1,taken off,bones,400 g,,stock,
1,carving loss,,rest,,,
1,served,,2.5 kg,,,
"""

PRINTED = """\
Yield test of brisket, 1 trial

  trial  bought  edible  cooked  served       paid
  -----  ------  ------  ------  ------  ---------
  1        5 kg    4 kg    3 kg  2.5 kg  60.00 EUR

Shares, in percent
  share                  one trial
  ---------------------  ---------
  of the bought weight
    edible                   80.00
    fat                      16.00
    cutting loss              4.00
    all that came off        20.00
  of edible in the pan
    cooked                   75.00
    cooking loss             25.00
  of the cooked weight
    served                   83.33
    bones                    13.33
    carving loss              3.33
    all that came off        16.67
  of bought, in the end
    cooked                   60.00
    served                   50.00

What came off
  part          what it is    use       weight     worth
  ------------  ------------  --------  ------  --------
  fat           by-product    dripping   800 g  2.00 EUR
  cutting loss  loss                     200 g
  bones         taken off     stock      400 g
  carving loss  carving loss             100 g

Costs
  stage   weight  EUR in all   a kg  cost factor  yield factor  at 15.00
  ------  ------  ----------  -----  -----------  ------------  --------
  bought    5 kg       60.00  12.00                                15.00
  credit               -2.00
  edible    4 kg       58.00  14.50        1.208         1.250     18.13
  cooked    3 kg       58.00  19.33        1.611         1.667     24.17
  served  2.5 kg       58.00  23.20        1.933         2.000     29.00
  Cost factor: what a unit costs over the price of a unit bought. Times a new
  price it gives the new cost, as if the worth of what came off rose and fell
  with it. Yield factor: what the cost factor would be if nothing that came off
  were worth anything.

A portion of 150 g
  weighed   EUR  portion factor  at the new price
  -------  ----  --------------  ----------------
  edible   2.18        0.181 kg              2.72
  cooked   2.90        0.242 kg              3.63
  served   3.48        0.290 kg              4.35
  Portion factor: times the price of a kg bought it gives the cost of a portion.

Shown rounded half up; --json has exact figures.
"""


@pytest.fixture
def brisket(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> str:
    (tmp_path / "brisket.csv").write_text(BRISKET, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    return "brisket.csv"


def test_the_whole_table(brisket: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["yield", brisket, "--portion", "150 g", "--price", "15 EUR/kg"]) == 0
    out = capsys.readouterr().out
    assert out == PRINTED
    assert max(map(len, out.splitlines())) <= 80


def test_two_trials_show_both_ratios_and_the_spread(
    brisket: str, capsys: pytest.CaptureFixture[str]
) -> None:
    more = "2,bought,brisket,3 kg,,,\n2,loss,cutting loss,rest,,,\n2,edible,,2.1 kg,,,\n"
    Path(brisket).write_text(BRISKET + more, encoding="utf-8")
    assert main(["yield", brisket]) == 0
    out = capsys.readouterr().out
    # 6.1 of 8 kg; 80 and 70 %.
    names = "ratio of sums  mean of ratios  lowest  highest  trials"
    assert names in out
    assert (
        "    edible                       76.25           75.00   70.00    80.00       2\n" in out
    )
    assert (
        "    cutting loss                 13.75           17.00    4.00    30.00       2\n" in out
    )
    assert "Ratio of sums: all weights count alike. Mean of ratios: all trials count" in out
    assert "  2        3 kg  2.1 kg                  not priced\n" in out
    assert "bought, 1 trial" in " ".join(out.split())
    assert max(map(len, out.splitlines())) <= 80


def test_food_that_gains_by_cooking(brisket: str, capsys: pytest.CaptureFixture[str]) -> None:
    rows = "trial,what,part,weight\n1,edible,rice,200 g\n1,cooked,,560 g\n"
    Path(brisket).write_text(rows, encoding="utf-8")
    assert main(["yield", brisket]) == 0
    out = capsys.readouterr().out
    assert "    cooked                   280.00\n" in out
    assert "    lost (minus: gained)    -180.00\n" in out
    assert "Costs" not in out
    assert "What came off" not in out


def test_pounds_are_told_with_their_ounces_and_prices_by_the_first_unit(
    brisket: str, capsys: pytest.CaptureFixture[str]
) -> None:
    rows = "trial,what,part,weight,value\n1,bought,ham,12 lb 6 oz,2 USD/lb\n"
    rows += "1,by-product,rind,6 oz,\n1,edible,,12 lb,\n"
    rows += "2,bought,ham,4 kg,16 USD\n2,edible,,4 kg,\n2,cooked,,3 kg,\n"
    Path(brisket).write_text(rows, encoding="utf-8")
    assert main(["yield", brisket]) == 0
    out = capsys.readouterr().out
    assert "  1      12 lb 6 oz   12 lb          24.75 USD\n" in out
    assert "  rind  by-product    6 oz\n" in out
    # 16 USD over 3 kg is 5.3333 a kg, 2.4192 a lb of 0.45359237 kg.
    assert "USD in all  a lb" in out
    assert "16.00  2.42" in out


def test_json_is_exact(brisket: str, capsys: pytest.CaptureFixture[str]) -> None:
    arguments = ["yield", brisket, "--portion", "150 g served", "--price", "15 EUR/kg", "--json"]
    assert main(arguments) == 0
    document = json.loads(capsys.readouterr().out)
    assert document["schema"] == "scalepan/1"
    assert [share["share"] for share in document["shares"]] == [
        "EP/AP",
        "cooked/EP",
        "served/cooked",
        "cooked/AP",
        "served/AP",
    ]
    served = document["shares"][2]
    assert Fraction(served["ratio_of_sums"]["value"]) == Fraction(5, 6)
    assert served["ratio_of_sums"]["unit"] == "served/cooked"
    assert served["loss"]["of"] == "cooked"
    assert Fraction(served["loss"]["mean_of_ratios"]["value"]) == Fraction(1, 6)
    costs = {cost["stage"]: cost for cost in document["costs"]}
    assert Fraction(costs["EP"]["factor"]["value"]) == Fraction("14.50") / 12
    assert Fraction(costs["cooked"]["at_price"]["value"]) == Fraction(58, 3) / 12 * 15
    (portion,) = document["portions"]
    assert portion["stage"] == "served"
    assert Fraction(portion["cost"]["value"]) == Fraction("3.48")
    trial = document["trials"][0]
    assert (trial["cut"][1]["is_rest"], trial["cut"][1]["weight"]["value"]) == (True, "1/5")
    assert trial["drained"] is None


def test_facts_as_a_file(brisket: str, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["yield", brisket, "--as-facts"]) == 0
    source = '"yield test of 1 trial, ratio of sums, brisket.csv"'
    assert capsys.readouterr().out == (
        "fact,food,kind,state,value,low,high,source\n"
        f"own.brisket.edible,brisket,edible,,0.8 EP/AP,,,{source}\n"
        f"own.brisket.cooked,brisket,cooked,,0.75 cooked/EP,,,{source}\n"
    )


def test_one_clear_error(brisket: str, capsys: pytest.CaptureFixture[str]) -> None:
    Path(brisket).write_text(BRISKET.replace("2.5 kg", "2.7 kg"), encoding="utf-8")
    assert main(["yield", brisket]) == 1
    assert capsys.readouterr().err == (
        "scalepan: brisket.csv:9:3: trial 1: 3 kg cooked, but parts, losses and served weight make "
        "3.1 kg: 0.1 kg too much [yield.closing]\n  weigh again; no loss is below zero\n"
    )
    Path(brisket).write_text(BRISKET.replace("12 EUR/kg", "").replace("2.50 EUR/kg", ""))
    assert main(["yield", brisket, "--portion", "150 g"]) == 1
    assert capsys.readouterr().err == (
        "scalepan: the yield test has no cost at EP [yield.no_stage]\n  no trial has a price\n"
    )
