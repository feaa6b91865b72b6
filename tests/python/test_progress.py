"""The bar of what takes over a second."""

from __future__ import annotations

import io
import sys
import time

import pytest
from scalepan.progress import progress_bar


class Terminal(io.StringIO):
    def isatty(self) -> bool:
        return True


def test_a_bar_is_drawn_after_a_second_and_taken_away(monkeypatch: pytest.MonkeyPatch) -> None:
    terminal = Terminal()
    monkeypatch.setattr(sys, "stderr", terminal)
    with progress_bar(100, "sweep of portions") as told:
        assert told is not None
        told(10)
        assert terminal.getvalue() == ""
        time.sleep(1.1)
        told(40)
        assert "sweep of portions:  40%" in terminal.getvalue()
    assert terminal.getvalue().endswith("\r")


def test_where_nobody_looks_there_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stderr", io.StringIO())
    with progress_bar(100, "sweep") as told:
        assert told is None


def test_without_the_library_there_is_none(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(sys, "stderr", Terminal())
    monkeypatch.setitem(sys.modules, "tqdm.std", None)
    with progress_bar(100, "sweep") as told:
        assert told is None
