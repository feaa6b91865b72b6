"""``scalepan new``: what it writes runs, and nothing is ever overwritten."""

from __future__ import annotations

import csv
import json
import os
import shlex
from pathlib import Path

import pytest
import scalepan
from scalepan_command.start import main

FILES = [
    "bean_pot.toml",
    "facts.csv",
    "fennel_bake.toml",
    "fennel_trials.csv",
    "larder.csv",
    "open_night.toml",
    "prices.csv",
]


@pytest.fixture(autouse=True)
def in_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")


def test_it_tells_what_is_written_and_what_to_run_next(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert main(["new", "dome"]) == 0
    assert (
        capsys.readouterr().out
        == """\
Written into dome, for the night kitchen of a hill-top observatory:
  fennel_bake.toml   a dish for four, with comments that say how it is written
  bean_pot.toml      a second dish, whose sauce is made first
  open_night.toml    both, each at its size, to be bought together
  prices.csv         a price book: one pack of one item a row
  larder.csv         what is on hand
  facts.csv          shares and weights of your own, which go before the bundled
                     ones
  fennel_trials.csv  a record of trimming, from which such shares come
The dishes, the prices and the weights are invented.

Next:
  scalepan check dome
  scalepan cost dome/fennel_bake.toml --prices dome/prices.csv --portions 40
"""
    )
    assert sorted(os.listdir("dome")) == FILES


@pytest.mark.parametrize("folder", [None, "dome", "in/a deep one", "-dash"])
def test_the_two_next_commands_run_without_an_error(
    folder: str | None, capsys: pytest.CaptureFixture[str]
) -> None:
    asked = [] if folder is None else ["--", folder] if folder.startswith("-") else [folder]
    assert main(["new", "--json", *asked]) == 0
    written = json.loads(capsys.readouterr().out)
    assert sorted(written["files"]) == FILES
    assert len(written["next"]) == 2
    for command in written["next"]:
        name, *words = shlex.split(command)
        assert name == "scalepan"
        assert main(words) == 0
        assert capsys.readouterr().err == ""


def test_every_dish_is_priced_whole_and_every_file_is_marked_invented() -> None:
    assert main(["new"]) == 0
    prices = scalepan.read_prices("prices.csv")
    for name in ("fennel_bake.toml", "bean_pot.toml"):
        assert scalepan.cost(scalepan.read_recipe(name), prices).unpriced == []
    assert [name for name in FILES if "nvented" not in Path(name).read_text("utf-8")] == []
    first, *_ = csv.DictReader(Path("prices.csv").read_text("utf-8").splitlines())
    assert first["note"] == "all prices invented"


def test_what_is_there_is_never_overwritten(capsys: pytest.CaptureFixture[str]) -> None:
    Path("dome").mkdir()
    Path("dome/prices.csv").write_text("mine", encoding="utf-8")
    assert main(["new", "dome"]) == 1
    assert capsys.readouterr().err.splitlines() == [
        "scalepan: dome: prices.csv is there already, so nothing is written [file.exists]",
        "  name another folder: scalepan new dome_2",
    ]
    assert os.listdir("dome") == ["prices.csv"]
    assert Path("dome/prices.csv").read_text(encoding="utf-8") == "mine"


def test_a_link_to_nowhere_is_there_too(capsys: pytest.CaptureFixture[str]) -> None:
    Path("larder.csv").symlink_to("nowhere.csv")
    Path("facts.csv").touch()
    assert main(["new"]) == 1
    told = "larder.csv, facts.csv are there already, so nothing is written [file.exists]"
    assert capsys.readouterr().err.splitlines()[0] == f"scalepan: {told}"
    assert sorted(os.listdir()) == ["facts.csv", "larder.csv"]


@pytest.mark.parametrize(
    ("folder", "reason"),
    [("a_file", "File exists"), ("a_file/below", "Not a directory"), ("no\0name", "embedded null")],
)
def test_a_folder_that_cannot_be_made_is_one_error(
    folder: str, reason: str, capsys: pytest.CaptureFixture[str]
) -> None:
    Path("a_file").touch()
    assert main(["new", folder, "--json"]) == 1
    error = json.loads(capsys.readouterr().err)
    assert error["code"] == "file.unwritable"
    assert error["message"].startswith("cannot write the files: ")
    assert reason in error["message"]
    assert os.listdir() == ["a_file"]


def test_where_one_file_fails_none_stays(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    from scalepan.command_line import beginning

    # The fifth cannot be read, as if the package were broken.
    files = {**beginning.FILES, "larder.csv": ""}
    monkeypatch.setattr(beginning, "FILES", {**files, "not_there.csv": ""})
    assert main(["new", "dome"]) == 1
    assert "[file.unreadable]" in capsys.readouterr().err
    assert os.listdir("dome") == []
