"""Makes the sdist in dist and lays it out in build/sdist, from where `make` builds the wheel.

So every wheel shows that the sdist is enough to build from. A file whose content is the same is
left as it is, so that only what changed is compiled again; a file that left the sdist goes, and the
folder that the wheel is built in stays.

    python tools/lay_out_sdist.py
"""

from __future__ import annotations

import os
import tarfile
from pathlib import Path

from scikit_build_core.build import build_sdist

ROOT = Path(__file__).parents[1]
LAID_OUT = ROOT / "build" / "sdist"
BUILT_IN = "build"


def contents_of(sdist: Path) -> dict[str, bytes]:
    """By path below the one folder that an sdist has at its top."""
    contents = {}
    with tarfile.open(sdist) as archive:
        for member in archive:
            file = archive.extractfile(member)
            if file is not None:
                contents[member.name.split("/", 1)[1]] = file.read()
    return contents


def lay_out(contents: dict[str, bytes], folder: Path) -> None:
    for path in stale(contents, folder):
        path.unlink()
    for name, content in contents.items():
        path = folder / name
        if not path.is_file() or path.read_bytes() != content:
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(content)


def stale(contents: dict[str, bytes], folder: Path) -> list[Path]:
    files = []
    for parent, folders, names in os.walk(folder):
        if Path(parent) == folder and BUILT_IN in folders:
            folders.remove(BUILT_IN)
        files += [Path(parent) / name for name in names]
    return [path for path in files if path.relative_to(folder).as_posix() not in contents]


def main() -> None:
    os.chdir(ROOT)
    lay_out(contents_of(Path("dist") / build_sdist("dist")), LAID_OUT)


if __name__ == "__main__":
    main()
