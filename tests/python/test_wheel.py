"""The wheel that `make` built: small, and enough by itself."""

from __future__ import annotations

import os
import subprocess
import sys
import venv
import zipfile
from pathlib import Path

import pytest

ROOT = Path(__file__).parents[2]
MOST_BYTES = 2_000_000


@pytest.fixture(scope="module")
def wheel() -> Path:
    wheels = list((ROOT / "dist").glob("scalepan-*.whl"))
    if not wheels:
        pytest.skip("no wheel in dist; make test builds one")
    return wheels[0]


def test_the_wheel_is_below_two_megabytes(wheel: Path) -> None:
    assert wheel.stat().st_size < MOST_BYTES


def test_the_wheel_holds_types_data_and_licence_and_no_sources(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    data = ("scalepan/data/facts.csv", "scalepan/data/pans.csv", "scalepan/panels/panel.js")
    for part in ("scalepan/py.typed", "scalepan/_core.pyi", *data, "/LICENSE"):
        assert any(name.endswith(part) for name in names), part
    assert not [name for name in names if name.endswith((".cpp", ".hpp", ".a", ".inc"))]


def test_the_wheel_runs_in_an_environment_with_nothing_else(wheel: Path, tmp_path: Path) -> None:
    home = tmp_path / "environment"
    venv.create(home, with_pip=False)
    install = [sys.executable, "-m", "pip", "--python", str(home), "install", "--quiet"]
    subprocess.run([*install, "--no-index", "--no-cache-dir", str(wheel)], check=True)
    # Neither a compiler nor any other tool is to be found there.
    environment = {"PATH": str(home / "bin"), "HOME": os.environ.get("HOME", "/")}
    arguments = [str(home / "bin" / "scalepan"), "convert", "1 lb 4 oz", "g"]
    done = subprocess.run(
        arguments, capture_output=True, text=True, env=environment, cwd=tmp_path, check=True
    )
    # The pound is 453.59237 g exactly (UK Weights and Measures Act 1985); 5/4 of it.
    assert done.stdout == "1 lb 4 oz = 566.9904625 g\n"
    listed = subprocess.run(
        [sys.executable, "-m", "pip", "--python", str(home), "list", "--format=freeze"],
        capture_output=True,
        text=True,
        check=True,
    )
    assert listed.stdout.strip() == "scalepan==0.1.0"
