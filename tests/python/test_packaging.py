"""How the sdist is laid out to be built from, and which wheels a release has."""

from __future__ import annotations

import importlib.util
import os
import subprocess
import sys
import tarfile
from pathlib import Path
from types import ModuleType

import pytest

ROOT = Path(__file__).parents[2]
PYTHONS = ("cp311", "cp312", "cp313", "cp314", "cp314t", "cp315", "cp315t")


@pytest.fixture(scope="module")
def layout() -> ModuleType:
    spec = importlib.util.spec_from_file_location("layout", ROOT / "tools" / "lay_out_sdist.py")
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


def sdist_of(folder: Path, files: dict[str, str]) -> Path:
    path = folder / "pot-1.0.tar.gz"
    with tarfile.open(path, "w:gz") as archive:
        for name, text in files.items():
            source = folder / "source"
            source.write_text(text, encoding="utf-8")
            archive.add(source, f"pot-1.0/{name}")
    return path


def test_only_what_changed_is_written_and_what_left_goes(
    layout: ModuleType, tmp_path: Path
) -> None:
    laid_out = tmp_path / "laid_out"
    first = {"a.cpp": "one", "in/b.cpp": "two", "in/gone.py": "three"}
    layout.lay_out(layout.contents_of(sdist_of(tmp_path, first)), laid_out)
    (laid_out / "build").mkdir()
    (laid_out / "build" / "a.o").touch()
    for path in laid_out.rglob("*.cpp"):
        os.utime(path, (1, 1))
    second = {"a.cpp": "one", "in/b.cpp": "two and a half", "c.py": "four"}
    layout.lay_out(layout.contents_of(sdist_of(tmp_path, second)), laid_out)
    files = {path.relative_to(laid_out).as_posix(): path for path in laid_out.rglob("*.*")}
    assert set(files) == {*second, "build/a.o"}
    assert {name: files[name].read_text(encoding="utf-8") for name in second} == second
    assert files["a.cpp"].stat().st_mtime == 1
    assert files["in/b.cpp"].stat().st_mtime > 1


@pytest.mark.parametrize(
    ("platform", "kinds"),
    [
        (
            "linux",
            ["manylinux_x86_64", "manylinux_aarch64", "musllinux_x86_64", "musllinux_aarch64"],
        ),
        ("macos", ["macosx_arm64"]),
        ("windows", []),
    ],
)
def test_a_release_has_wheels_for(platform: str, kinds: list[str]) -> None:
    command = [sys.executable, "-m", "cibuildwheel", "--print-build-identifiers"]
    done = subprocess.run(
        [*command, "--platform", platform, str(ROOT)], capture_output=True, text=True, check=True
    )
    wanted = {f"{python}-{kind}" for kind in kinds for python in PYTHONS}
    # A newer cibuildwheel knows newer Pythons.
    assert wanted - set(done.stdout.split()) == set()
    assert {name.split("-")[1] for name in done.stdout.split()} == set(kinds)
