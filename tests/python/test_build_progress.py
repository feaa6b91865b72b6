"""What is seen of a build while it runs, and where it fails."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import pytest

TOOL = Path(__file__).parents[2] / "tools" / "build_progress.py"
BUILD = """
import sys
for n in range(1, 46):
    print(f"  [{n}/45] Building CXX object {n}.o")
print("a warning", file=sys.stderr)
sys.exit(int(sys.argv[1]))
"""


@pytest.mark.parametrize("status", [0, 3])
def test_every_twentieth_step_is_told_and_the_rest_where_it_fails(status: int) -> None:
    command = [sys.executable, str(TOOL), sys.executable, "-c", BUILD, str(status)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == status
    assert done.stdout.splitlines() == ["  20 of 45 steps", "  40 of 45 steps", "  45 of 45 steps"]
    shown = sorted(done.stderr.splitlines())
    steps = [f"  [{n}/45] Building CXX object {n}.o" for n in range(1, 46)]
    assert shown == (sorted([*steps, "a warning"]) if status else [])
