"""The wheel that `make` built, and the sdist that it was built from: small, and complete."""

from __future__ import annotations

import json
import os
import re
import subprocess
import sys
import tarfile
import tomllib
import venv
import zipfile
from importlib.metadata import version
from pathlib import Path

import pytest
import scalepan

ROOT = Path(__file__).parents[2]
MOST_BYTES = 2_000_000
VERSION = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]["version"]


def built(pattern: str) -> Path:
    found = list((ROOT / "dist").glob(pattern))
    if not found:
        pytest.skip(f"no {pattern} in dist; make test builds one")
    return found[0]


@pytest.fixture(scope="module")
def wheel() -> Path:
    return built("scalepan-*.whl")


@pytest.fixture(scope="module")
def sdist() -> Path:
    return built("scalepan-*.tar.gz")


def test_the_wheel_is_below_two_megabytes(wheel: Path) -> None:
    assert wheel.stat().st_size < MOST_BYTES


def test_the_wheel_holds_types_data_and_licence_and_no_sources(wheel: Path) -> None:
    names = zipfile.ZipFile(wheel).namelist()
    data = ("scalepan/data/facts.csv", "scalepan/data/pans.csv", "scalepan/panels/panel.js")
    licences = ("/licenses/LICENSE", "/licenses/pybind11.txt")
    for part in ("scalepan/py.typed", "scalepan/_core.pyi", *data, *licences):
        assert any(name.endswith(part) for name in names), part
    assert not [name for name in names if name.endswith((".cpp", ".hpp", ".a", ".inc"))]


def test_the_sdist_holds_what_is_built_from_and_little_else(sdist: Path) -> None:
    with tarfile.open(sdist) as archive:
        names = {name.split("/", 1)[1] for name in archive.getnames()}
    files = {"LICENSE", "README.md", "licenses/pybind11.txt", "CMakeLists.txt", "pyproject.toml"}
    assert files - names == set()
    assert not [name for name in names if name.startswith(("tests", "data-sources", "tools", "."))]
    assert sdist.stat().st_size < MOST_BYTES // 2


def test_their_metadata_can_be_shown_by_an_index(wheel: Path, sdist: Path) -> None:
    command = [sys.executable, "-m", "twine", "check", "--strict", str(wheel), str(sdist)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert done.returncode == 0, done.stdout


def test_all_tell_the_one_version(wheel: Path, sdist: Path) -> None:
    assert wheel.name.split("-")[1] == VERSION
    assert sdist.name == f"scalepan-{VERSION}.tar.gz"
    assert scalepan.__version__ == VERSION == version("scalepan")


def test_the_wheel_tells_what_is_compiled_in(wheel: Path) -> None:
    archive = zipfile.ZipFile(wheel)
    told = json.loads(archive.read(f"scalepan-{VERSION}.dist-info/sboms/scalepan.cdx.json"))
    assert told["metadata"]["component"]["purl"] == f"pkg:pypi/scalepan@{VERSION}"
    parts = {part["name"]: part for part in told["components"]}
    includes = set()
    for path in (ROOT / "cpp").rglob("*.[ch]pp"):
        includes |= set(re.findall(r"^#include <(\w+)/", path.read_text(encoding="utf-8"), re.M))
    assert includes - {"sys"} == {name.lower() for name in parts}
    assert parts["pybind11"]["version"] == version("pybind11")
    assert version("cmeel-boost").startswith(parts["Boost"]["version"])


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
    assert listed.stdout.strip() == f"scalepan=={VERSION}"
