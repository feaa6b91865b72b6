"""Sizes on the command line: what goes with what, what limits a size, and the trays it fills."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
from scalepan_command.start import main

if TYPE_CHECKING:
    from pathlib import Path

PIE = """name = "Barley bake"
serves = 4
tray = "GN 1/2 65"
measures = "metric"
lines = ["600 g pearl barley", "3 eggs"]
"""


@pytest.fixture(autouse=True)
def in_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "bake.toml").write_text(PIE, encoding="utf-8")
    rows = "pearl barley,AP,1 kg,2.00,EUR,yes\neggs,AP,1,0.30,EUR,yes\n"
    (tmp_path / "prices.csv").write_text(
        f"item,sold_as,pack,price,currency,keeps\n{rows}", encoding="utf-8"
    )
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")


def refusal(capsys: pytest.CaptureFixture[str], *asked: str) -> str:
    assert main(["scale", "bake.toml", *asked]) == 1
    return capsys.readouterr().err


def printed(capsys: pytest.CaptureFixture[str], command: str, *asked: str) -> str:
    assert main([command, "bake.toml", *asked]) == 0
    return capsys.readouterr().out


@pytest.mark.parametrize(
    ("asked", "message", "hint"),
    [
        (
            ["--stock", "eggs=30", "--stock", "eggs=12"],
            'the stock of eggs is given twice, as "30" and as "12"',
            "write one of the two, or their sum",
        ),
        (
            ["--trays", "2"],
            "--trays goes with --tray, but that is not given",
            'write --tray "GN 1/1 65" --trays 2',
        ),
        (
            ["--by", "volume", "--portions", "8"],
            "--by goes with --tray, but the size is given by --portions",
            'write --tray "GN 1/1 65" --by volume',
        ),
        (
            ["--spare", "2"],
            "--spare goes with --portions, but that is not given",
            "write --portions 40 --spare 2",
        ),
        (
            ["--portion-size", "5 oz", "--batch", "2 kg"],
            "--portion-size goes with --portions, but the size is given by --batch",
            'write --portions 40 --portion-size "5 oz"',
        ),
        (
            ["--serving-loss", "5 %", "--tray", "GN 1/1 65"],
            "--serving-loss goes with --portions, but the size is given by --tray",
            'write --portions 40 --serving-loss "5 %"',
        ),
        (
            ["--raw-batch", "2 kg", "--factor", "2"],
            "a size is given in two ways, by --factor and by --raw-batch",
            "write one of the two",
        ),
    ],
)
def test_what_does_not_go_together(
    asked: list[str], message: str, hint: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert refusal(capsys, *asked) == f"scalepan: {message} [recipe.size]\n  {hint}\n"


def test_the_line_that_limits_the_size_is_told(capsys: pytest.CaptureFixture[str]) -> None:
    # 20 of 3 eggs for 4: 26 2/3 portions; 6 kg of 600 g: 40.
    asked = ["--stock", "eggs=20", "--stock", "pearl barley=6 kg"]
    out = printed(capsys, "scale", *asked).splitlines()
    assert out[:2] == [
        "Barley bake, 26 portions",
        "eggs limits the size: its stock allows exactly 26 2/3 portions",
    ]
    for command, more in (("buy", []), ("price", ["--food-cost", "30 %"])):
        out = printed(capsys, command, *asked, "--prices", "prices.csv", *more).splitlines()
        to_check = out[out.index("To check") + 1]
        assert to_check == "  - eggs limits the size: its stock allows exactly 26 2/3 portions"
    for command, more in (("scale", []), ("page", []), ("cost", ["--prices", "prices.csv"])):
        found = json.loads(printed(capsys, command, *asked, *more, "--json"))["stock_limit"]
        assert (found["line"], Fraction(found["portions"])) == ("eggs", Fraction(20 * 4, 3))


def test_the_trays_asked_for_are_told(capsys: pytest.CaptureFixture[str]) -> None:
    # EN 631-1: a GN 1/1 is two GN 1/2 side by side; 530 x 325 mm to 325 x 265 mm.
    asked = ["--tray", "GN 1/1 65", "--trays", "3"]
    told = "ills 3 x GN 1/1 65: by area as much as 6 x GN 1/2 65"
    assert f"F{told}." in " ".join(printed(capsys, "page", *asked).split())
    assert printed(capsys, "scale", *asked).splitlines()[1] == f"f{told}"
    document = json.loads(printed(capsys, "scale", *asked, "--json"))
    assert document["fills"] == {"tray": "GN 1/1 65", "trays": "3", "by": "area"}
    assert "Fills 2 x GN 1/2 65." in " ".join(printed(capsys, "page", "--factor", "2").split())


@pytest.mark.parametrize("command", ["scale", "page", "measure"])
def test_help_names_the_sets_of_measures(command: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main([command, "--help"])
    out = " ".join(capsys.readouterr().out.split())
    assert "sets of measures: " in out
    assert "us spoons and cups; " in out
    assert "imperial spoons and jug; " in out
