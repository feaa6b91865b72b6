"""Completion: the scripts are run in their shells, which need no Python to complete."""

from __future__ import annotations

import shlex
import shutil
import subprocess
import sys
from typing import TYPE_CHECKING

import pytest
from scalepan.command_line.main import COMMANDS
from scalepan_command.start import main

if TYPE_CHECKING:
    from collections.abc import Callable
    from pathlib import Path

pytest.importorskip("shtab")


@pytest.fixture
def folder(tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> Path:
    """The script of each shell, where that shell looks for it, beside files to complete to."""
    for shell, name in (("bash", "scalepan.bash"), ("zsh", "_scalepan"), ("fish", "scalepan.fish")):
        assert main(["completion", shell]) == 0
        (tmp_path / name).write_text(capsys.readouterr().out, encoding="utf-8")
    for name in ("fennel_bake.toml", "fennel_trials.csv", "prices.csv"):
        (tmp_path / name).touch()
    return tmp_path


def ran(folder: Path, *command: str) -> str:
    """What the shell prints, with no other command of this machine's to call but the usual ones."""
    surroundings = {"PATH": "/usr/bin:/bin", "HOME": str(folder)}
    run = subprocess.run(
        command, capture_output=True, text=True, cwd=folder, env=surroundings, check=True
    )
    return run.stdout


def in_bash(folder: Path, words: list[str]) -> list[str]:
    program = """
        source scalepan.bash
        COMP_WORDS=(scalepan "$@"); COMP_CWORD=$#
        $(complete -p scalepan | sed -E 's/.*-F ([^ ]+) .*/\\1/')
        printf '%s\\n' "${COMPREPLY[@]}"
    """
    return ran(folder, "bash", "--norc", "-c", program, "bash", *words).split()


def in_fish(folder: Path, words: list[str]) -> list[str]:
    line = shlex.join(["scalepan", *words[:-1]]) + f" {words[-1]}"
    program = f"source scalepan.fish; complete -C {shlex.quote(line)}"
    return [
        row.partition("\t")[0]
        for row in ran(folder, "fish", "--no-config", "-c", program).splitlines()
    ]


def in_zsh(folder: Path, words: list[str]) -> list[str]:
    """zsh completes in a terminal alone."""
    pexpect = pytest.importorskip("pexpect")
    surroundings = {"PATH": "/usr/bin:/bin", "HOME": str(folder), "TERM": "dumb"}
    shell = pexpect.spawn(
        "zsh", ["-f", "-i"], cwd=folder, env=surroundings, encoding="utf-8", timeout=30
    )
    shell.setwinsize(200, 100)
    # What Tab offers is taken as it comes to the completion's listing, before zsh draws it.
    shell.sendline(
        "PS1='> '; fpath=($PWD $fpath); autoload -Uz compinit; compinit -u -D; "
        'compadd() { builtin compadd -O offered "$@"; print -l -- $offered >> offers; '
        "builtin compadd \"$@\" }; print 'set' up"
    )
    shell.expect("set up\r\n")
    shell.send(shlex.join(["scalepan", *words[:-1]]) + f" {words[-1]}\t")
    shell.sendline("\x15print 'all' done")
    shell.expect("all done\r\n")
    shell.close()
    return list(dict.fromkeys((folder / "offers").read_text(encoding="utf-8").split()))


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
@pytest.mark.parametrize("tab", [in_bash, in_zsh, in_fish])
def test_tab_offers(
    tab: Callable[[Path, list[str]], list[str]], words: list[str], offered: list[str], folder: Path
) -> None:
    shell = tab.__name__.removeprefix("in_")
    if shutil.which(shell) is None:
        pytest.skip(f"no {shell} here")
    assert sorted(tab(folder, words)) == offered


def test_no_python_is_called_to_complete(folder: Path) -> None:
    text = (folder / "scalepan.bash").read_text(encoding="utf-8")
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
