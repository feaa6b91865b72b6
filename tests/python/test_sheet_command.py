"""What the commands on saved sheets print."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from scalepan_command.start import main

SOUP = """\
scalepan_sheet = 1

[cells]
"leeks.buy" = { formula = "leeks.need / leeks.edible" }
"leeks.edible" = { value = "0.44 EP/AP", source = "USDA SR28 11246" }
"leeks.need" = "5.5 kg EP"
none = 0
wrong = { formula = "1 / none" }

[rows.lines.given]
amount = "g EP"

[rows.lines.cells]
barley = { amount = "220 g EP" }
"""


@pytest.fixture
def soup(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    (tmp_path / "soup.toml").write_text(SOUP, encoding="utf-8")
    return tmp_path


def test_the_cells_are_a_table(soup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "soup.toml"]) == 0
    # 5.5 kg at 0.44.
    assert capsys.readouterr().out == (
        "  cell          figure                             formula\n"
        "  ------------  ---------------------------------  -------------------------\n"
        "  leeks.buy     12.5 kg AP                         leeks.need / leeks.edible\n"
        "  leeks.edible  0.44 EP/AP\n"
        "  leeks.need    5.5 kg EP\n"
        "  none          0\n"
        "  wrong         failed: wrong:3: division by zero  1 / none\n"
        "\n"
        "  lines   amount\n"
        "  ------  --------\n"
        "  barley  220 g EP\n"
    )


def test_one_cell_and_how_it_came_about(soup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "soup.toml", "leeks.buy"]) == 0
    assert capsys.readouterr().out == "12.5 kg AP\n"
    assert main(["sheet", "soup.toml", "leeks.buy", "--why"]) == 0
    assert capsys.readouterr().out == (
        "leeks.buy = 12.5 kg AP\n"
        "  = leeks.need / leeks.edible\n"
        "├─ leeks.need = 5.5 kg EP\n"
        "└─ leeks.edible = 0.44 EP/AP   [USDA SR28 11246]\n"
    )


def test_a_document_has_exact_figures(soup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "soup.toml", "--json"]) == 0
    cells = {cell.pop("cell"): cell for cell in json.loads(capsys.readouterr().out)["cells"]}
    assert cells["leeks.buy"] == {
        "figure": "12500 g AP",
        "error": None,
        "formula": "leeks.need / leeks.edible",
    }
    assert cells["wrong"]["error"] == "wrong:3: division by zero"
    assert main(["sheet", "soup.toml", "wrong", "--why", "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert (document["figure"], document["error"]) == (None, "wrong:3: division by zero")


def test_what_cannot_be_told_is_one_error(soup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["sheet", "soup.toml", "leeks.bye"]) == 1
    assert capsys.readouterr().err == (
        'scalepan: no cell is called "leeks.bye" [sheet.unknown]\n'
        "  nearest: leeks.buy, leeks.need\n"
    )
    assert main(["sheet", "soup.toml", "wrong"]) == 1
    assert capsys.readouterr().err == (
        "scalepan: wrong:3: division by zero [number.division_by_zero]\n"
    )
    (soup / "soup.toml").write_text("scalepan_sheet = 7\n", encoding="utf-8")
    assert main(["sheet", "soup.toml"]) == 1
    assert capsys.readouterr().err == (
        "scalepan: soup.toml:1:18: the file has version 7, but this Scalepan reads up to 1 "
        "[sheet.version]\n  install a newer Scalepan\n"
    )


def test_a_difference_is_a_list(soup: Path, capsys: pytest.CaptureFixture[str]) -> None:
    (soup / "new.toml").write_text(SOUP.replace("none = 0", "none = 2"), encoding="utf-8")
    assert main(["sheet-difference", "soup.toml", "new.toml"]) == 0
    assert capsys.readouterr().out == "none: 0 -> 2\n"
    assert main(["sheet-difference", "soup.toml", "soup.toml", "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["differences"] == []
