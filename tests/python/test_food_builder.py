"""tools/build_food_data.py: what it writes is what is committed, and faults are told."""

from __future__ import annotations

import re
import shutil
import subprocess
import sys
from pathlib import Path

import pytest
from food_tables import DATA, ROOT, SOURCES

BUILDER = ROOT / "tools" / "build_food_data.py"


def run_builder(*arguments: str) -> subprocess.CompletedProcess[str]:
    command = [sys.executable, str(BUILDER), *arguments]
    return subprocess.run(command, capture_output=True, text=True, check=False)


@pytest.fixture
def copied_root(tmp_path: Path) -> Path:
    shutil.copytree(SOURCES, tmp_path / "data-sources")
    shutil.copytree(DATA, tmp_path / "python" / "scalepan" / "data")
    return tmp_path


def test_committed_files_are_up_to_date() -> None:
    done = run_builder("--check")
    assert (done.returncode, done.stderr) == (0, "")


def test_check_tells_a_changed_file(copied_root: Path) -> None:
    path = copied_root / "python" / "scalepan" / "data" / "facts.csv"
    path.write_text(path.read_text(encoding="utf-8").replace("0.44", "0.45"), encoding="utf-8")
    done = run_builder("--check", "--root", str(copied_root))
    assert done.returncode == 1
    assert "facts.csv: out of date" in done.stderr


def test_an_unknown_measure_is_told_with_its_place(copied_root: Path) -> None:
    path = copied_root / "data-sources" / "foods_selection.csv"
    text = path.read_text(encoding="utf-8").replace("11246,leek,", "11246,basket,")
    path.write_text(text, encoding="utf-8")
    done = run_builder("--root", str(copied_root))
    assert done.returncode == 1
    assert re.search(r"foods_selection.csv:\d+: SR28 11246 has no measure 'basket'", done.stderr)
    assert "Traceback" not in done.stderr
