"""Help: grouped by the job, within the terminal's width, with examples that run."""

from __future__ import annotations

import re
import shlex
from typing import TYPE_CHECKING

import pytest
from scalepan.command_line.main import COMMANDS
from scalepan.command_line.tables import text_width
from scalepan_command.arguments import parser
from scalepan_command.help_page import example_lines
from scalepan_command.help_texts import EXAMPLES, GROUPS
from scalepan_command.start import main

if TYPE_CHECKING:
    from pathlib import Path

GROUPED = [name for _, names in GROUPS for name in names]


def help_of(capsys: pytest.CaptureFixture[str], *words: str) -> str:
    with pytest.raises(SystemExit) as leaving:
        main([*words, "--help"])
    assert leaving.value.code == 0
    shown = capsys.readouterr()
    assert shown.err == ""
    return shown.out


def joined(text: str) -> str:
    """The text with the commands in it on one line each."""
    return re.sub(r" \\\n +", " ", text)


def test_every_command_stands_in_one_group_and_has_examples() -> None:
    assert sorted(GROUPED) == sorted(COMMANDS) == sorted(parser().commands) == sorted(EXAMPLES)
    assert [name for name in GROUPED if not 2 <= len(EXAMPLES[name]) <= 3] == []


def test_the_first_lines_of_the_help(capsys: pytest.CaptureFixture[str]) -> None:
    assert help_of(capsys).splitlines()[:11] == [
        "usage: scalepan COMMAND [options]",
        "",
        "Scale a recipe, buy it in whole packs, and cost it, on exact numbers.",
        "",
        "To begin:",
        "  new             Recipes, prices and facts to start from, in a folder.",
        "                  scalepan new night_kitchen",
        "  check           Everything doubtful in recipes and price books.",
        "                  scalepan check",
        "  read            What a line of a recipe says.",
        '                  scalepan read "1 lb 4 oz carrots, peeled"',
    ]


def test_the_command_alone_shows_the_same_and_is_a_wrong_command_line(
    capsys: pytest.CaptureFixture[str],
) -> None:
    expected = help_of(capsys)
    with pytest.raises(SystemExit) as leaving:
        main([])
    assert leaving.value.code == 2
    assert capsys.readouterr().err == expected


def test_the_commands_stand_in_their_order_each_with_an_example_of_it(
    capsys: pytest.CaptureFixture[str],
) -> None:
    lines = joined(help_of(capsys)).splitlines()
    named = [line.split()[0] for line in lines if re.match(r"  [a-z]", line)]
    assert named == GROUPED
    examples = [line.split()[1] for line in lines if line.startswith(" " * 18 + "scalepan ")]
    assert examples == GROUPED


@pytest.mark.parametrize("columns", [40, 57, 80, 120])
def test_no_line_of_help_is_wider_than_the_terminal(
    columns: int, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    for words in ([], *([name] for name in GROUPED)):
        wide = [line for line in help_of(capsys, *words).splitlines() if text_width(line) > columns]
        # What stands in one pair of quotes is never divided.
        assert [line for line in wide if '"' not in line] == [], words


@pytest.mark.parametrize(("columns", "widest"), [(20, 40), (300, 120)])
def test_help_is_set_for_forty_to_a_hundred_and_twenty_columns(
    columns: int, widest: int, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", str(columns))
    lines = [line for line in help_of(capsys).splitlines() if '"' not in line]
    assert widest - 20 < max(map(len, lines)) <= widest


def test_the_help_of_a_command_whole(capsys: pytest.CaptureFixture[str]) -> None:
    assert (
        help_of(capsys, "loads")
        == """\
usage: scalepan loads TOTAL CAPACITY [options]

A total shared out into as few loads as hold it.

positional arguments:
  TOTAL                  such as "13 kg" or "52"
  CAPACITY               of one load, such as "4 kg", or a pan: "GN 1/1 65"

options:
  -h, --help             show this help message and exit
  --json                 one JSON document, exact figures
  --debug                also how the program came to an error
  --equal                all alike, none short
  --time TIME            that one load takes, as "30 min"
  --measures {metric,us,imperial,au}
                         which cup and pint are meant

examples:
  scalepan loads "13 kg" "4 kg" --time "30 min"
  scalepan loads "13 L" "GN 1/1 65" --equal
"""
    )


def test_an_example_is_broken_where_a_shell_reads_on() -> None:
    command = 'scalepan price a.toml --prices b.csv --food-cost "30 %" --json > c.txt'
    lines = example_lines(command, 40)
    assert lines == [
        "  scalepan price a.toml --prices b.csv \\",
        '      --food-cost "30 %" --json \\',
        "      > c.txt",
    ]
    assert shlex.split(" ".join(line.rstrip("\\") for line in lines)) == shlex.split(command)


@pytest.mark.parametrize("name", GROUPED)
def test_the_examples_of_a_command_run_in_a_new_folder(
    name: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    for needed, option in (("shtab", "completion"), ("matplotlib", "curve")):
        if name == option:
            pytest.importorskip(needed)
    monkeypatch.chdir(tmp_path)
    assert main(["new"]) == 0
    shown = joined(help_of(capsys, name)).split("\nexamples:\n")[1].splitlines()
    assert [line.strip() for line in shown] == list(EXAMPLES[name])
    for example in EXAMPLES[name]:
        command, _, target = example.partition(" > ")
        assert main(shlex.split(command)[1:]) == 0, example
        printed = capsys.readouterr()
        assert printed.out.strip(), example
        assert printed.err == "", example
        if target:
            (tmp_path / target).write_text(printed.out, encoding="utf-8")
