"""`scalepan curve`: tables that fit, all of it in JSON, and the picture. Prices are invented."""

from __future__ import annotations

import json
import sys
from pathlib import Path

import pytest
import scalepan
from scalepan.command_line.curving import curve_sections
from scalepan.command_line.sections import report_lines
from scalepan.plots import plot_curve
from scalepan_command.start import main

POT = """\
name = "Chickpea pot"
serves = 4
lines = ["240 g chickpeas, drained", "4 eggs | one per portion", "3 samphires"]
"""
# A quarter of a tin and one egg a portion; all of it keeps.
PRICES = """\
item,sold_as,pack,price,currency,keeps
chickpeas,drained,400 g tin (240 g drained),0.60,GBP,yes
eggs,AP,6,1.50,GBP,yes
eggs,AP,10,2.30,GBP,yes
"""


@pytest.fixture
def curve(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    (tmp_path / "pot.toml").write_text(POT, encoding="utf-8")
    (tmp_path / "prices.csv").write_text(PRICES, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    return ["curve", "pot.toml", "--prices", "prices.csv", "--portions", "1:13"]


def test_the_tables(curve: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    """Six eggs are 1.50 and ten 2.30, so 11 and 12 take 3.00, and 13 six and ten, 3.80.

    Of what is used, tins take 0.15 a portion; eggs 0.25 out of sixes and 0.23 out of tens.
    """
    assert main(curve) == 0
    text = capsys.readouterr().out
    assert all(len(line) <= 80 for line in text.splitlines())
    sections = text.split("\n\n")
    assert sections[0].splitlines()[:6] == [
        "Costs by portions, at least, in GBP",
        "  portions  till  used  thrown  borne  till each  borne each",
        "  --------  ----  ----  ------  -----  ---------  ----------",
        "         1  2.10  0.40    0.00   0.40       2.10        0.40",
        "         2  2.10  0.80    0.00   0.80       1.05        0.40",
        "         3  2.10  1.20    0.00   1.20       0.70        0.40",
    ]
    assert sections[0].splitlines()[-1] == "  At least: not priced: samphires."
    assert sections[1:4] == [
        "Least a portion, of what has a price\n"
        "  cost    a portion  at portions\n"
        "  ------  ---------  -----------\n"
        "  till         0.40  12\n"
        "  used         0.38  7 to 10\n"
        "  thrown       0.00  1 to 13\n"
        "  borne        0.38  7 to 10",
        "Where a larger batch costs no more at the till\n"
        "  portions  so many cost no more  till\n"
        "  --------  --------------------  ----\n"
        "    1 to 3                     4  2.10\n"
        "         5                     6  2.70\n"
        "         7                     8  3.50\n"
        "         9                    10  4.10\n"
        "        11                    12  4.80",
        "Where packs come out even, with nothing left\n"
        "  item       portions\n"
        "  ---------  --------------------\n"
        "  chickpeas  4 to 12, every 4\n"
        "  eggs       6; 10 to 12, every 2",
    ]
    changes = sections[4].splitlines()
    assert changes[0] == "Where the packs change"
    assert changes[1].split() == ["from", "item", "packs", "before", "packs", "then"]
    rows = [line.split()[:2] for line in changes[3:] if line[:6].strip()]
    assert rows == [
        ["5", "chickpeas"],
        ["7", "eggs"],
        ["9", "chickpeas"],
        ["11", "eggs"],
        ["13", "chickpeas"],
        ["13", "eggs"],
    ]
    assert changes[-1].split("eggs")[1].split() == [
        "2",
        "x",
        "6",
        "1",
        "x",
        "6",
        "+",
        "1",
        "x",
        "10",
    ]


def test_its_points_are_counted_as_they_are_told(curve: list[str]) -> None:
    pot, prices = scalepan.read_recipe("pot.toml"), scalepan.read_prices("prices.csv")
    points = scalepan.cost(pot, prices).curve(range(1, 14))
    told: list[int] = []
    report_lines(curve_sections(points, told.append), 80)
    assert told == list(range(1, 14))


def test_the_document(curve: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main([*curve, "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert document["portions"] == [str(n) for n in range(1, 14)]
    assert document["till"][0] == "21/10"
    assert document["even"][0] == {
        "item": "chickpeas",
        "portions": [{"first": "4", "last": "12", "every": "4"}],
    }
    assert document["cheapest"]["till"] == {
        "portions": "12",
        "per_portion": "2/5",
        "all": [{"first": "12", "last": "12", "every": "0"}],
    }
    assert document["dominated"]["till"][0] == {
        "first": "1",
        "last": "3",
        "by": "4",
        "costs": "21/10",
    }
    assert document["breakpoints"][0] == {
        "portions": "5",
        "item": "chickpeas",
        "packs_before": [{"count": 1, "pack": "400 g tin (240 g drained)"}],
        "packs": [{"count": 2, "pack": "400 g tin (240 g drained)"}],
    }
    assert document["kernel"].startswith("till in words: ")
    assert document["unpriced"] == ["samphires"]


def test_a_curve_without_prices_or_points_is_told_and_drawn_too(
    curve: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "prices.csv").write_text(
        PRICES.splitlines()[0] + "\nwalnuts,AP,1 kg,9,GBP,yes\n", encoding="utf-8"
    )
    assert main([*curve, "--plot", "none.png"]) == 0
    assert "At least: not priced: chickpeas, eggs, samphires." in capsys.readouterr().out
    assert (tmp_path / "none.png").read_bytes().startswith(b"\x89PNG")
    costing = scalepan.cost(scalepan.parse_recipe(POT), scalepan.parse_prices(PRICES))
    assert len(plot_curve(costing.curve([]))) == 3


def test_the_picture_marks_breakpoints_and_even_counts() -> None:
    costing = scalepan.cost(scalepan.parse_recipe(POT), scalepan.parse_prices(PRICES))
    changes = plot_curve(costing.curve(range(1, 14)))[2]
    strokes = [list(rows.get_positions()) for rows in changes.collections]
    assert strokes == [[4.5, 8.5, 12.5], [6.5, 10.5, 12.5]]
    rings = [list(line.get_xdata()) for line in changes.lines]
    assert rings == [[4, 8, 12], [6, 10, 12]]
    assert [label.get_text() for label in changes.get_yticklabels()] == ["chickpeas", "eggs"]


def test_without_matplotlib_the_plot_is_one_clear_error(
    curve: list[str], capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "matplotlib.layout_engine", None)
    assert main([*curve, "--plot", "pot.png"]) == 1
    assert capsys.readouterr().err == (
        "scalepan: drawing needs matplotlib [plot.library]\n  pip install scalepan[plot]\n"
    )
    assert not Path("pot.png").exists()
