"""The command line: what it prints, its exit status, and its one clear error.

Figures are those of the leek pot, worked out by hand beside each check; its prices are invented.
Edible share of leeks: USDA SR28 11246, refuse 56 %.
"""

from __future__ import annotations

import json
import os
import subprocess
import sys
from fractions import Fraction
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st
from scalepan.command_line.tables import fits, table, text_width, wrapped
from scalepan_command.start import main

RECIPE = """name = "Leek and barley pot"
serves = 4
tested_at = [4]
lines = ["500 g leeks, trimmed", "220 g pearl barley", "4 eggs | one per portion", "240 g chickpeas, drained"]
"""  # noqa: E501
PRICES = """item,sold_as,pack,price,currency,keeps
leeks,AP,1 kg,2.10,GBP,no
leeks,AP,500 g,1.20,GBP,no
pearl barley,AP,500 g,0.95,GBP,yes
eggs,AP,6,1.50,GBP,yes
eggs,AP,10,2.30,GBP,yes
chickpeas,drained,400 g tin (240 g drained),0.60,GBP,no
"""


@pytest.fixture
def pot(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> list[str]:
    """Arguments naming the recipe and the price book in an own folder, at forty portions."""
    (tmp_path / "pot.toml").write_text(RECIPE, encoding="utf-8")
    (tmp_path / "prices.csv").write_text(PRICES, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    return ["pot.toml", "--prices", "prices.csv", "--portions", "40"]


def document(capsys: pytest.CaptureFixture[str]) -> dict[str, object]:
    parsed = json.loads(capsys.readouterr().out)
    assert isinstance(parsed, dict)
    assert parsed["schema"] == "scalepan/1"
    return parsed


def test_scale_tells_ten_times_the_amounts(
    pot: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["scale", "pot.toml", "--portions", "40"]) == 0
    out = capsys.readouterr().out
    for amount in ("5 kg leeks, trimmed", "2.2 kg pearl barley", "40 eggs", "2.4 kg chickpeas"):
        assert amount in out
    assert "tested at 4; 40 is computed" in out


def test_buy_lists_packs_and_the_till(pot: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["buy", *pot]) == 0
    out = capsys.readouterr().out
    # 5 kg / 0.44 = 11.364 kg: eleven of 1 kg and one of 500 g, 11 x 2.10 + 1.20 = 24.30.
    assert "11 x 1 kg + 1 x 500 g    24.30" in out
    # 24.30 + 5 x 0.95 + 4 x 2.30 + 10 x 0.60 = 44.25.
    assert "till 44.25 GBP" in out


def test_cost_in_json_is_exact_and_the_four_costs_close(
    pot: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["cost", *pot, "--json"]) == 0
    costs = document(capsys)
    exact = {name: Fraction(cost["value"]) for name, cost in costs["costs"].items()}  # type: ignore[attr-defined]
    closing = Fraction(costs["closing"]["value"])  # type: ignore[index]
    leeks_used = Fraction("24.30") * (Fraction(5000) / Fraction(44, 100)) / 11500
    barley_used = Fraction("4.75") * 2200 / 2500
    assert exact["till"] == Fraction("44.25")
    assert exact["used"] == leeks_used + barley_used + Fraction("9.20") + 6
    assert exact["thrown"] == Fraction("24.30") - leeks_used
    assert exact["borne"] == exact["used"] + exact["thrown"]
    assert exact["till"] == exact["used"] + exact["thrown"] + closing


def test_cost_shows_the_amounts_a_portion(
    pot: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["cost", *pot]) == 0
    out = capsys.readouterr().out
    # 44.25 / 40 = 1.10625.
    assert "till           44.25       1.11  whole packs paid for today" in out
    assert "no figure\n  here shows that a dish is safe." in out


def test_no_line_is_wider_than_eighty_columns(
    pot: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["cost", *pot]) == 0
    assert max(text_width(line) for line in capsys.readouterr().out.splitlines()) <= 80


def test_curve_gives_each_point_and_a_picture(
    pot: list[str], capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    pytest.importorskip("matplotlib")
    pot[-1] = "1:8"
    assert main(["curve", *pot, "--json", "--plot", "curve.png"]) == 0
    curve = document(capsys)
    assert curve["portions"] == [str(n) for n in range(1, 9)]
    # At four: leeks 1.136 kg in 1 kg + 500 g = 3.30, barley 0.95, eggs 1.50, one tin 0.60.
    assert curve["till"][3] == "127/20"  # type: ignore[index]
    assert (tmp_path / "curve.png").read_bytes().startswith(b"\x89PNG")


def test_why_draws_the_tree_down_to_the_source(
    pot: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["why", "pot.toml", "leeks.buy", *pot[1:]]) == 0
    out = capsys.readouterr().out
    assert out.startswith(
        "leeks.buy = ≈ 11.36 kg  (exactly 11 4/11 kg AP)\n  = leeks.need / leeks.edible\n"
    )
    assert "USDA SR28 11246, refuse 56 %" in out
    assert "pot.toml:4:11" in out


def test_convert_names_its_fact(capsys: pytest.CaptureFixture[str]) -> None:
    # GNU units: `units -t '2 cups sugar' g` gives 400.
    arguments = ["convert", "2 cup", "g", "--food", "granulated sugar", "--measures", "us"]
    assert main(arguments) == 0
    out = capsys.readouterr().out
    assert out.startswith("2 cup = 400 g\n")
    assert "USDA SR28 19335" in out


def test_wrong_input_is_one_error_on_the_error_stream(
    pot: list[str], capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "pot.toml").write_text(RECIPE.replace("500 g", "500 tbps"), encoding="utf-8")
    assert main(["cost", *pot]) == 1
    said = capsys.readouterr()
    assert said.out == ""
    lines = said.err.splitlines()
    assert lines[0] == (
        'scalepan: pot.toml:4:15: unknown unit "tbps"; understood so far: 500 [unit.unknown]'
    )
    assert lines[1].startswith("  nearest: tbsp")
    assert len(lines) == 2


def test_wrong_input_with_json_is_one_object(
    pot: list[str], capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    (tmp_path / "prices.csv").unlink()
    assert main(["cost", *pot, "--json"]) == 1
    error = json.loads(capsys.readouterr().err)
    assert error["code"] == "file.unreadable"
    assert error["place"] == "prices.csv"
    assert error["message"] == "cannot read the file: No such file or directory"


@pytest.mark.parametrize(
    "arguments",
    [
        [],
        ["bake"],
        ["cost", "pot.toml"],
        ["cost", "pot.toml", "--prices", "p.csv", "--portions", "forty"],
        ["curve", "pot.toml", "--prices", "p.csv", "--portions", "9:1"],
        ["curve", "pot.toml", "--prices", "p.csv", "--portions", "1:1000000"],
        ["convert", "2 cup", "g", "--measures", "martian"],
    ],
)
def test_a_wrong_command_line_exits_with_two(
    arguments: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    with pytest.raises(SystemExit) as leaving:
        main(arguments)
    assert leaving.value.code == 2
    shown = capsys.readouterr()
    assert shown.out == ""
    assert "[command.line]" in shown.err or shown.err.startswith("usage: scalepan COMMAND")


def test_zero_portions_are_refused(pot: list[str], capsys: pytest.CaptureFixture[str]) -> None:
    pot[-1] = "0"
    assert main(["cost", *pot]) == 1
    assert capsys.readouterr().err.splitlines() == [
        "scalepan: a recipe cannot be made for 0 portions [recipe.portions]",
        "  the number of portions must be above zero",
    ]


def test_a_closed_pipe_is_no_error(pot: list[str]) -> None:
    command = [sys.executable, "-m", "scalepan", "curve", *pot[:-1], "1:2000"]
    run = subprocess.Popen(command, stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    assert run.stdout is not None
    assert run.stderr is not None
    run.stdout.read(100)
    run.stdout.close()
    assert run.stderr.read() == b""
    run.stderr.close()
    assert run.wait(timeout=60) == 0


def test_output_survives_a_terminal_without_unicode(pot: list[str]) -> None:
    environment = {**os.environ, "PYTHONIOENCODING": "ascii"}
    command = [sys.executable, "-m", "scalepan", "why", "pot.toml", "leeks.buy", *pot[1:]]
    run = subprocess.run(command, capture_output=True, env=environment, check=False)
    assert run.returncode == 0
    assert b"leeks.buy = ? 11.36 kg" in run.stdout


def test_a_table_wraps_its_widest_text_column_and_keeps_numbers_whole() -> None:
    text = "a long text that has to wrap"
    rows = [(text, "1234.50")]
    lines = table(("what", "sum"), rows, right=(1,), width=30)
    assert lines[0].split() == ["what", "sum"]
    assert max(map(len, lines)) <= 30
    assert lines[2].endswith("1234.50")
    assert " ".join(line[:20].strip() for line in lines[2:]) == text


@given(st.text(st.sampled_from("ab -\t\n\xa0é日"), max_size=8), st.integers(1, 9))
def test_a_cell_that_fits_is_as_wrapping_leaves_it(text: str, width: int) -> None:
    if fits(text, width):
        assert wrapped(text, width) == [text]
    assert fits("ab c", 4)
    assert not fits("ab c", 3)


def test_width_counts_wide_and_combining_characters() -> None:
    assert text_width("日本") == 4
    assert text_width("e\u0301") == 1


def test_a_wrapped_paragraph_hangs_below_its_lead() -> None:
    assert wrapped("one two three", 9, "- ") == ["- one two", "  three"]


def test_read_takes_a_line_apart(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["read", "250 g (8 oz) flour, sifted, plus extra for dusting"]) == 0
    assert capsys.readouterr().out.splitlines() == [
        "amount   250 g (8 oz)",
        "of       flour",
        "state    sifted",
        "notes    plus extra for dusting",
    ]
    assert main(["read", "2 x 400 g tins chickpeas", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert (document["low"], document["unit"], document["container_size"]) == ("2", "tin", "400 g")


def test_read_refuses_with_the_place(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["read", "a glass of sherry"]) == 1
    assert capsys.readouterr().err.splitlines() == [
        'scalepan: line 1:3: "glass" has no agreed size [line.no_measure]',
        "  write a weight, a volume or a count",
    ]


def test_scale_tells_every_line_by_the_measures_named(
    pot: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    weights = ["--weights", "scales 5 g", "--volumes", "metric spoons and jug"]
    assert main(["scale", pot[0], "--portions", "7", *weights]) == 0
    said = capsys.readouterr().out
    assert "875 g leeks, trimmed" in said
    assert "7 eggs" in said
    assert "counted" in said
