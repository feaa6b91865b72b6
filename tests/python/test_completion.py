"""Completion: the script is run in a shell, which needs no Python to complete."""

from __future__ import annotations

import shutil
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest
from scalepan.command_line.main import COMMANDS
from scalepan_command.start import main

if TYPE_CHECKING:
    from pathlib import Path

pytest.importorskip("shtab")


@pytest.fixture
def script(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    assert main(["completion", "bash"]) == 0
    path = tmp_path / "scalepan.bash"
    path.write_text(capsys.readouterr().out, encoding="utf-8")
    for name in ("fennel_bake.toml", "fennel_trials.csv", "prices.csv"):
        (tmp_path / name).touch()
    return path


def completed(script: Path, *words: str) -> list[str]:
    """What Tab offers behind the words, in a shell without any other command to call."""
    program = f"""
        source {script.name}
        COMP_WORDS=(scalepan "$@"); COMP_CWORD=$#
        $(complete -p scalepan | sed -E 's/.*-F ([^ ]+) .*/\\1/')
        printf '%s\\n' "${{COMPREPLY[@]}}"
    """
    run = subprocess.run(
        [shutil.which("bash") or "bash", "--norc", "-c", program, "bash", *words],
        capture_output=True,
        text=True,
        cwd=script.parent,
        env={"PATH": "/usr/bin:/bin"},
        check=True,
    )
    return run.stdout.split()


@pytest.mark.skipif(shutil.which("bash") is None, reason="no bash here")
@pytest.mark.parametrize(
    ("words", "offered"),
    [
        ([""], sorted(COMMANDS)),
        (["br"], ["break-even"]),
        (["cost", "--por"], ["--portion-size", "--portions"]),
        (["convert", "1 g", "kg", "--measures", ""], ["au", "imperial", "metric", "us"]),
        (["scale", "fennel"], ["fennel_bake.toml", "fennel_trials.csv"]),
        (["cost", "fennel_bake.toml", "--prices", "pri"], ["prices.csv"]),
        (["completion", ""], ["bash", "fish", "zsh"]),
    ],
)
def test_tab_offers(words: list[str], offered: list[str], script: Path) -> None:
    assert sorted(completed(script, *words)) == offered


def test_no_python_is_called_to_complete(script: Path) -> None:
    text = script.read_text(encoding="utf-8")
    assert "python" not in text
    # The name of the command stands in names and comments, at the head of what is offered to, and
    # is called nowhere.
    assert not [line for line in text.splitlines() if line.strip().startswith("scalepan ")]


@pytest.mark.parametrize("shell", ["bash", "zsh", "fish"])
def test_each_shell_has_a_script_of_all_commands(
    shell: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["completion", shell]) == 0
    script = capsys.readouterr().out
    assert [name for name in COMMANDS if name not in script] == []


def test_without_the_library_one_error_says_how_to_get_it(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(sys.modules, "shtab", None)
    assert main(["completion", "bash"]) == 1
    assert capsys.readouterr().err.splitlines() == [
        "scalepan: completion scripts are made by shtab, which is not installed "
        "[command.completion]",
        '  pip install "scalepan[completion]"',
    ]
