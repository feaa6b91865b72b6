"""Beside its HTML a display has the text that a terminal prints. All prices are invented."""

from __future__ import annotations

from pathlib import Path

import pytest
import scalepan
from displayed import error, sheet
from page_reader import bundle_of
from scalepan_command.start import main

DISH = """\
name = "Night watch supper"
serves = 4
tested_at = [4]
lines = ["800 g fennel, trimmed", "2 onions, chopped", "4 eggs | one per portion"]
"""
PRICES = """\
item,sold_as,pack,price,currency,keeps
fennel,AP,1 kg,3.20,EUR,no
onions,AP,2.5 kg,2.60,EUR,yes
eggs,AP,10,2.90,EUR,21 days
"""
DISHES = """\
[[dishes]]
recipe = "supper.toml"
portions = 40
"""
TRIALS = """\
trial,what,part,weight,value,use
1,bought,celeriac,4 kg,1.50 EUR/kg,
1,loss,,rest,,
1,edible,,3 kg,,
"""


@pytest.fixture(autouse=True)
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder with the files, and no terminal: then lines have 80 columns."""
    monkeypatch.chdir(tmp_path)
    monkeypatch.delenv("COLUMNS", raising=False)
    for name, text in (
        ("supper.toml", DISH),
        ("prices.csv", PRICES),
        ("week.toml", DISHES),
        ("celeriac.csv", TRIALS),
        ("sheet.toml", sheet().text()),
    ):
        Path(name).write_text(text, encoding="utf-8")


def supper() -> scalepan.Recipe:
    return scalepan.read_recipe("supper.toml")


def costing(portions: int = 40) -> scalepan.Costing:
    return scalepan.cost(supper().scale(portions=portions), scalepan.read_prices("prices.csv"))


def basket() -> scalepan.Basket:
    return scalepan.basket(scalepan.read_dishes("week.toml"), scalepan.read_prices("prices.csv"))


PRICED = ("--prices", "prices.csv")
SAME = {
    "scale supper.toml --portions 40": lambda: supper().scale(portions=40),
    "cost supper.toml --prices prices.csv --portions 40": costing,
    "curve supper.toml --prices prices.csv --portions 1:20": lambda: costing(4).curve(range(1, 21)),
    "why supper.toml fennel.buy --prices prices.csv --portions 40": lambda: costing().explain(
        "fennel.buy"
    ),
    "basket week.toml --prices prices.csv": basket,
    "yield celeriac.csv": lambda: scalepan.read_yield_test("celeriac.csv"),
    "sheet sheet.toml": lambda: scalepan.read_sheet("sheet.toml"),
}


@pytest.mark.parametrize("command", SAME)
def test_the_text_is_what_the_command_prints(
    command: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(command.split()) == 0
    assert bundle_of(SAME[command]())["text/plain"] + "\n" == capsys.readouterr().out


def test_an_error_is_told_as_the_command_line_tells_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["scale", "nowhere.toml"]) == 1
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.read_recipe("nowhere.toml")
    assert "scalepan: " + bundle_of(caught.value)["text/plain"] + "\n" == capsys.readouterr().err


def test_an_error_with_all_it_can_say() -> None:
    assert bundle_of(error("fennle"))["text/plain"] == (
        'fennle.toml:4:10: no food is called "fennle" [food.unknown]\n  nearest: fennle'
    )


def test_variants_are_told_as_str_has_them() -> None:
    compared = sheet("sixty portions on Friday").compare(["portions", "share_of_spare"])
    assert bundle_of(compared)["text/plain"] == str(compared)
