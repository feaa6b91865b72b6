"""What docs/command_line.md shows is what is printed in a folder made by ``scalepan new``."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
from scalepan.command_line.main import COMMANDS
from scalepan_command.start import main

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "command_line.md").read_text(encoding="utf-8")
LEFT_OUT = "..."
REFUSED = {
    'read "a glass of sherry"': 1,
    "scale fennel_bake.toml --portion 40": 2,
    'convert "2 cup" g --food "granulated sugar" --json': 1,
}


def examples() -> list[tuple[str, list[str]]]:
    """Each command shown, and the lines below it."""
    blocks = re.findall(r"```text\n(\$ scalepan .*?)```", PAGE, flags=re.DOTALL)
    shown = [example for block in blocks for example in block.split("$ scalepan ")[1:]]
    return [(lines[0], lines[1:]) for lines in (example.splitlines() for example in shown)]


def is_shown(printed: list[str], shown: list[str]) -> bool:
    """Whether these are the lines, with any number of them where some are left out."""
    if LEFT_OUT not in shown:
        return printed == shown
    gap = shown.index(LEFT_OUT)
    rest = shown[gap + 1 :]
    if printed[:gap] != shown[:gap]:
        return False
    return not rest or any(is_shown(printed[i:], rest) for i in range(gap, len(printed)))


def run(words: list[str]) -> int:
    try:
        return main(words)
    except SystemExit as leaving:
        return int(leaving.code or 0)


def test_every_command_prints_what_is_shown(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    told = examples()
    assert told[0][0] == "new"
    for command, lines in told:
        status = run(shlex.split(command))
        shown = capsys.readouterr()
        assert is_shown((shown.out + shown.err).splitlines(), lines), command
        assert status == REFUSED.get(command, 0), command


def test_lines_left_out_are_taken_for_no_others() -> None:
    assert is_shown(["a", "b", "c", "d"], ["a", "...", "d"])
    assert is_shown(["a", "b"], ["a", "..."])
    assert not is_shown(["a", "b", "c"], ["a", "...", "d"])
    assert not is_shown(["a", "b"], ["a"])
    assert not is_shown(["a", "b", "c"], ["a", "...", "b"])


def test_every_command_is_on_the_page() -> None:
    named = {command.split()[0] for command, _ in examples()}
    assert set(COMMANDS) - named == {"completion"}
    assert "scalepan completion bash" in PAGE


def test_every_code_of_the_command_line_is_on_the_page() -> None:
    folders = [ROOT / "python" / name for name in ("scalepan_command", "scalepan/command_line")]
    texts = [path.read_text("utf-8") for folder in folders for path in folder.glob("*.py")]
    used = {code for text in texts for code in re.findall(r'"(command\.\w+|file\.exists)"', text)}
    assert len(used) == 4
    assert [code for code in used if f"`{code}`" not in PAGE] == []


def test_every_code_of_a_check_is_on_the_page() -> None:
    sources = (ROOT / "python" / "scalepan" / "checks").glob("*.py")
    used = {
        code for path in sources for code in re.findall(r'"(check\.\w+)"', path.read_text("utf-8"))
    }
    assert used == set(re.findall(r"`(check\.\w+)`", PAGE))
    assert len(used) == 12
