"""The page on printed pages: its files are read, its commands and its code run."""

from __future__ import annotations

import re
import shlex
import shutil
from pathlib import Path

import pytest
from markdown_pages import files_shown
from scalepan.printed.pdf import BROWSERS
from scalepan_command.start import main

PAGE = (Path(__file__).parents[2] / "docs" / "printed_pages.md").read_text(encoding="utf-8")
COMMANDS = re.findall(r"^scalepan (.*)$", PAGE, flags=re.MULTILINE)


@pytest.fixture(autouse=True)
def files(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """The page's files in a folder of their own."""
    monkeypatch.chdir(tmp_path)
    for name, text in files_shown(PAGE).items():
        Path(name).write_text(text, encoding="utf-8")


@pytest.mark.parametrize("command", COMMANDS)
def test_every_command_writes_its_page(command: str) -> None:
    if "--pdf" in command and not any(map(shutil.which, BROWSERS)):
        pytest.skip("no Chromium is installed")
    before = set(Path().iterdir())
    assert main(shlex.split(command)) == 0
    (made,) = set(Path().iterdir()) - before
    assert made.name in command
    assert made.read_bytes().startswith((b"<!doctype html>", b"%PDF"))


def test_the_code_runs() -> None:
    (code,) = re.findall(r"```python\n(.*?)```", PAGE, flags=re.DOTALL)
    exec(compile(code, "printed_pages.md", "exec"), {})
    assert Path("evening.html").read_text(encoding="utf-8").count("<main") == 3
    assert "oz" in Path("kitchen.html").read_text(encoding="utf-8")


def test_all_commands_are_there() -> None:
    assert len(COMMANDS) == 5
