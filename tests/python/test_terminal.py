"""The command line as a terminal and a script meet it: colour, errors, streams, exit status."""

from __future__ import annotations

import argparse
import io
import json
import os
import signal
import subprocess
import sys
import time
from pathlib import Path

import pytest
import scalepan
from scalepan.command_line import main as commands
from scalepan.printing import PAPERS
from scalepan_command import argument_groups
from scalepan_command.start import main

RUN = [sys.executable, "-m", "scalepan"]
LEEKS = 'name = "Leeks"\nserves = 4\ntested_at = [4]\nlines = ["500 g leeks, trimmed"]\n'
PRICES = "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2.10,GBP,no\n"


@pytest.fixture(autouse=True)
def in_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    (tmp_path / "leeks.toml").write_text(LEEKS, encoding="utf-8")
    (tmp_path / "prices.csv").write_text(PRICES, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    for name in ("NO_COLOR", "FORCE_COLOR"):
        monkeypatch.delenv(name, raising=False)
    monkeypatch.setenv("TERM", "xterm")


def refused(capsys: pytest.CaptureFixture[str], *words: str) -> tuple[int | str | None, str]:
    """The status and standard error of a wrong command line; nothing is on standard output."""
    with pytest.raises(SystemExit) as leaving:
        main(words)
    shown = capsys.readouterr()
    assert shown.out == ""
    return leaving.value.code, shown.err


# Errors of the command line


@pytest.mark.parametrize(
    ("words", "lines"),
    [
        (
            ["scael", "leeks.toml"],
            ['scalepan: no command is called "scael" [command.line]', "  nearest: scale"],
        ),
        (
            ["scale", "leeks.toml", "--portion", "8"],
            [
                "scalepan: --portion: scalepan scale has no option --portion [command.line]",
                "  nearest: --portions, --portion-size",
            ],
        ),
        (
            ["cost", "leeks.toml"],
            [
                "scalepan: the following arguments are required: --prices [command.line]",
                "  usage: scalepan cost RECIPE --prices FILE [options]; "
                "scalepan cost --help has examples",
            ],
        ),
        (
            ["cost", "leeks.toml", "--price", "p.csv", "--portion=40"],
            [
                "scalepan: --price: scalepan cost has no option --price [command.line]",
                "  nearest: --prices, --spare",
            ],
        ),
        (
            ["cost", "leeks.toml", "--prices", "p.csv", "-p", "40"],
            [
                "scalepan: -p: scalepan cost has no option -p [command.line]",
                "  scalepan cost --help lists its options",
            ],
        ),
        (
            ["scale", "leeks.toml", "--portions", "forty"],
            [
                'scalepan: --portions: no number is written in "forty" [command.line]',
                "  usage: scalepan scale RECIPE [options]; scalepan scale --help has examples",
            ],
        ),
        (
            ["scale", "leeks.toml", "40"],
            [
                'scalepan: "40" is one argument too many [command.line]',
                "  usage: scalepan scale RECIPE [options]; scalepan scale --help has examples",
            ],
        ),
        (
            ["--loud"],
            [
                "scalepan: --loud: scalepan has no option --loud [command.line]",
                "  scalepan --help lists the commands",
            ],
        ),
        (
            ["cost", "-", "--prices", "-"],
            [
                "scalepan: -: standard input is read once, but recipe and prices both name it "
                "[command.line]",
                "  name a file for one of them",
            ],
        ),
    ],
)
def test_a_wrong_command_line_is_one_error(
    words: list[str], lines: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    status, told = refused(capsys, *words)
    assert (status, told.splitlines()) == (2, lines)


def test_with_json_it_is_one_object(capsys: pytest.CaptureFixture[str]) -> None:
    status, told = refused(capsys, "scale", "leeks.toml", "--portion", "8", "--json")
    assert status == 2
    assert json.loads(told) == {
        "code": "command.line",
        "message": "scalepan scale has no option --portion",
        "place": "--portion",
        "hint": "nearest: --portions, --portion-size",
    }


@pytest.mark.parametrize("words", [["--json", "scale", "no.toml"], ["scale", "no.toml", "--json"]])
def test_json_may_stand_before_or_behind_the_command(
    words: list[str], capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(words) == 1
    assert json.loads(capsys.readouterr().err) == {
        "code": "file.unreadable",
        "message": "cannot read the file: No such file or directory",
        "place": "no.toml",
        "hint": f"looked in {os.getcwd()}",
    }


def test_behind_two_dashes_it_is_no_option(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["scale", "--", "--json"]) == 1
    assert capsys.readouterr().err.splitlines() == [
        "scalepan: --json: cannot read the file: No such file or directory [file.unreadable]",
        f"  looked in {os.getcwd()}",
    ]


@pytest.mark.parametrize("name", sorted(commands.COMMANDS))
def test_every_command_takes_json_and_debug(name: str, capsys: pytest.CaptureFixture[str]) -> None:
    with pytest.raises(SystemExit):
        main([name, "--help"])
    out = capsys.readouterr().out
    assert "--json" in out
    assert "--debug" in out


def test_the_version(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--version"]) == 0
    assert capsys.readouterr().out == f"scalepan {scalepan.__version__}\n"
    assert main(["--version", "--json"]) == 0
    assert json.loads(capsys.readouterr().out) == {
        "schema": "scalepan/1",
        "version": scalepan.__version__,
        "python": ".".join(map(str, sys.version_info[:3])),
    }


# Faults and interrupts


def failing(problem: BaseException) -> object:
    def command(_: object) -> object:
        raise problem

    return command


def test_a_fault_of_the_program_is_told_without_a_traceback(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(commands.COMMANDS, "scale", failing(ZeroDivisionError("by zero")))
    assert main(["scale", "leeks.toml"]) == 1
    assert capsys.readouterr().err.splitlines() == [
        "scalepan: the program itself failed: ZeroDivisionError: by zero [command.fault]",
        "  report it, with what --debug prints",
    ]
    assert main(["scale", "leeks.toml", "--debug"]) == 1
    told = capsys.readouterr().err
    assert told.startswith("Traceback (most recent call last):\n")
    assert told.endswith("failed: ZeroDivisionError: by zero [command.fault]\n")


def test_debug_also_tells_how_an_error_came_about(capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["--debug", "scale", "no.toml"]) == 1
    told = capsys.readouterr().err
    assert told.startswith("Traceback")
    said = "No such file or directory [file.unreadable]"
    assert told.endswith(f"{said}\n  looked in {os.getcwd()}\n")


def test_ctrl_c_is_one_line_and_status_130(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setitem(commands.COMMANDS, "scale", failing(KeyboardInterrupt()))
    assert main(["scale", "leeks.toml"]) == 130
    assert capsys.readouterr().err == "scalepan: stopped\n"


@pytest.mark.skipif(os.name != "posix", reason="signals as POSIX has them")
def test_ctrl_c_while_it_waits_for_standard_input() -> None:
    run = subprocess.Popen(
        [*RUN, "scale", "-"], stdin=subprocess.PIPE, stdout=subprocess.PIPE, stderr=subprocess.PIPE
    )
    assert run.stdin is not None
    assert run.stderr is not None
    run.stdin.write(b"name")
    run.stdin.flush()
    waits = Path(f"/proc/{run.pid}/wchan")
    until = time.monotonic() + 60
    while time.monotonic() < until and "pipe" not in (waits.read_text() if waits.exists() else ""):
        time.sleep(0.1)
    run.send_signal(signal.SIGINT)
    out, err = run.communicate(timeout=60)
    assert (run.returncode, out, err) == (130, b"", b"scalepan: stopped\n")


@pytest.mark.skipif(not os.path.exists("/dev/full"), reason="no device that is always full")
@pytest.mark.parametrize("words", [["scale", "leeks.toml"], ["--help"]])
def test_a_full_disk_is_one_error(words: list[str]) -> None:
    with open("/dev/full", "wb") as full:
        run = subprocess.run([*RUN, *words], stdout=full, stderr=subprocess.PIPE, check=False)
    assert run.returncode == 1
    assert run.stderr.decode().splitlines() == [
        "scalepan: cannot write what is to be printed: No space left on device [file.unwritable]"
    ]


@pytest.mark.parametrize(
    "words", [["--help"], ["why", "leeks.toml", "till", "--prices", "prices.csv"]]
)
def test_a_reader_that_goes_away_is_no_error(words: list[str]) -> None:
    run = subprocess.Popen([*RUN, *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE)
    assert run.stdout is not None
    run.stdout.close()
    assert run.stderr is not None
    assert run.stderr.read() == b""
    run.stderr.close()
    assert run.wait(timeout=60) == 0


# Standard input


def with_input(monkeypatch: pytest.MonkeyPatch, data: bytes) -> None:
    monkeypatch.setattr(sys, "stdin", io.TextIOWrapper(io.BytesIO(data), encoding="ascii"))


def test_a_recipe_or_prices_may_come_from_standard_input(
    capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    assert main(["cost", "leeks.toml", "--prices", "prices.csv"]) == 0
    expected = capsys.readouterr().out
    with_input(monkeypatch, LEEKS.encode())
    assert main(["cost", "-", "--prices", "prices.csv"]) == 0
    assert capsys.readouterr().out == expected
    with_input(monkeypatch, b"\xef\xbb\xbf" + PRICES.encode())
    assert main(["cost", "leeks.toml", "--prices", "-"]) == 0
    assert capsys.readouterr().out == expected


@pytest.mark.parametrize(
    ("data", "told"),
    [
        (b"", "standard input: the recipe has no name [recipe.missing]"),
        (b"name = \xff", "standard input:1: byte 8 is not UTF-8 [file.encoding]"),
        (
            LEEKS.replace("500 g leeks", "a glass of leeks").encode(),
            'standard input:4:13: "glass" has no agreed size [line.no_measure]',
        ),
        (b"#" * 20_000_001, "standard input: the file has more than 20000000 bytes"),
    ],
)
def test_errors_name_standard_input(
    data: bytes,
    told: str,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    with_input(monkeypatch, data)
    assert main(["scale", "-"]) == 1
    first = capsys.readouterr().err.splitlines()[0]
    assert first.startswith(f"scalepan: {told}")


# Colour


BOLD, RED, FAINT, PLAIN = "\033[1m", "\033[31m", "\033[2m", "\033[0m"


def in_a_terminal(words: list[str], **environment: str) -> str:
    """What the command writes, by both streams, to a terminal of its own."""
    pty = pytest.importorskip("pty")
    ours, theirs = pty.openpty()
    run = subprocess.Popen(
        [*RUN, *words],
        stdin=subprocess.DEVNULL,
        stdout=theirs,
        stderr=theirs,
        env={**os.environ, **environment},
    )
    os.close(theirs)
    data = b""
    while True:
        try:
            part = os.read(ours, 65536)
        except OSError:  # the other end is closed
            break
        if not part:
            break
        data += part
    os.close(ours)
    run.wait(timeout=60)
    return data.decode().replace("\r\n", "\n")


def test_a_terminal_gets_bold_heads_and_nothing_else() -> None:
    words = ["scale", "leeks.toml"]
    coloured = in_a_terminal(words)
    assert coloured.startswith(f"{BOLD}Leeks, 4 portions{PLAIN}\n")
    plain = subprocess.run([*RUN, *words], capture_output=True, check=True).stdout.decode()
    assert "\033" not in plain
    assert coloured.replace(BOLD, "").replace(PLAIN, "") == plain


def test_an_error_has_its_code_in_red_and_its_hint_faint() -> None:
    (Path("wrong.toml")).write_text(LEEKS.replace("500 g leeks", "a glass of leeks"), "utf-8")
    assert in_a_terminal(["scale", "wrong.toml"]).splitlines() == [
        f'scalepan: wrong.toml:4:13: "glass" has no agreed size {RED}[line.no_measure]{PLAIN}',
        f"{FAINT}  write a weight, a volume or a count{PLAIN}",
    ]


def test_the_heads_of_help_are_bold_and_its_examples_faint() -> None:
    lines = in_a_terminal(["--help"]).splitlines()
    assert f"{BOLD}To begin:{PLAIN}" in lines
    assert f"{FAINT}                  scalepan check{PLAIN}" in lines


@pytest.mark.parametrize(
    ("environment", "is_coloured"),
    [
        ({}, True),
        ({"NO_COLOR": "1"}, False),
        ({"NO_COLOR": ""}, True),
        ({"TERM": "dumb"}, False),
        ({"NO_COLOR": "1", "FORCE_COLOR": "1"}, False),
    ],
)
def test_when_a_terminal_is_coloured(environment: dict[str, str], is_coloured: bool) -> None:
    assert ("\033" in in_a_terminal(["scale", "leeks.toml"], **environment)) == is_coloured


@pytest.mark.parametrize(("value", "is_coloured"), [("1", True), ("", False)])
def test_force_color_brings_it_to_a_pipe(
    value: str,
    is_coloured: bool,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.setenv("FORCE_COLOR", value)
    assert main(["scale", "leeks.toml"]) == 0
    assert ("\033" in capsys.readouterr().out) == is_coloured


def test_json_is_never_coloured() -> None:
    for words in (["scale", "leeks.toml", "--json"], ["scale", "no.toml", "--json"]):
        assert "\033" not in in_a_terminal(words, FORCE_COLOR="1")


# What is loaded


@pytest.mark.parametrize("words", [["--help"], ["cost", "--help"], ["new", "--help"], []])
def test_help_loads_no_part_of_the_package(words: list[str]) -> None:
    program = """
import sys
from scalepan_command.start import main
try:
    main(sys.argv[1:])
except SystemExit:
    pass
print([name for name in sys.modules if name.partition(".")[0] == "scalepan"], file=sys.stderr)
"""
    run = subprocess.run(
        [sys.executable, "-c", program, *words], capture_output=True, text=True, check=True
    )
    assert run.stderr.splitlines()[-1] == "[]"


def test_the_papers_are_those_of_printed_pages() -> None:
    page = argparse.ArgumentParser()
    argument_groups.add_page(page)
    (paper,) = [action for action in page._actions if action.dest == "paper"]
    assert (paper.choices, paper.default) == (PAPERS, PAPERS[0])


@pytest.mark.parametrize("written", ["--html", "--save"])
def test_no_output_is_written_over_what_is_read(
    capsys: pytest.CaptureFixture[str], written: str
) -> None:
    for read in ("leeks.toml", "./prices.csv"):
        asked = ["cost", "leeks.toml", "--prices", "prices.csv", "--portions", "8", written, read]
        assert main(asked) == 1
        assert capsys.readouterr().err == (
            f"scalepan: {read}: it is read by this command, so nothing is written over it "
            "[file.exists]\n  name another file\n"
        )
    assert Path("leeks.toml").read_text(encoding="utf-8") == LEEKS
    assert Path("prices.csv").read_text(encoding="utf-8") == PRICES
