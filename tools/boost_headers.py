"""Lays out the headers of Boost, out of its wheel on PyPI, where CMake finds them.

The wheel is made for some Pythons only, but headers are the same for all: so a wheel for musl, for
free-threaded or for newer Pythons is built with them too.

    python tools/boost_headers.py build/boost
    CMAKE_PREFIX_PATH=$PWD/build/boost pip wheel --no-build-isolation --no-deps .
"""

from __future__ import annotations

import subprocess
import sys
import tempfile
import zipfile
from pathlib import Path

WHEEL = ["--platform", "manylinux_2_28_x86_64", "--python-version", "3.14", "--abi", "cp314"]
PARTS = ("cmeel.prefix/include/", "cmeel.prefix/lib/cmake/")


def download(folder: str) -> Path:
    options = ["--quiet", "--no-deps", "--only-binary=:all:", "--implementation", "cp", *WHEEL]
    command = [sys.executable, "-m", "pip", "download", *options, "--dest", folder]
    subprocess.run([*command, "cmeel-boost>=1.90"], check=True)
    return next(Path(folder).glob("*.whl"))


def main(target: str) -> None:
    with tempfile.TemporaryDirectory() as folder, zipfile.ZipFile(download(folder)) as wheel:
        names = [name for name in wheel.namelist() if name.startswith(PARTS)]
        wheel.extractall(target, names)


if __name__ == "__main__":
    main(sys.argv[1])
