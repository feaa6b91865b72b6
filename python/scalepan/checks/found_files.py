"""The files to check: those named, and the recipes and tables of folders."""

from __future__ import annotations

import os
import re
import stat
from typing import TYPE_CHECKING

from scalepan.checks.finds import CheckedFile, Find, find_of
from scalepan.errors import Error
from scalepan.files import read_text
from scalepan.sheet_change_reader import MOST_BYTES
from scalepan.toml_document import has_key

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

_TYPES = (".toml", ".csv")
# Of a TOML file, by keys that only that kind has; the first that fits.
_KEYS = (
    ("costing", "scalepan_costing"),
    ("sheet", "scalepan_sheet"),
    ("file of dishes", "dishes"),
    ("recipe", "serves|lines|tested_at|bases|method"),
    ("price book", "prices"),
    ("stock list", "stock"),
)
# Of a CSV file, by columns that are all there; the first that fits.
_COLUMNS = (
    ("table of facts", ("fact", "food")),
    ("price book", ("item", "price")),
    ("price book", ("sold_as", "pack")),
    ("stock list", ("item", "stage", "amount")),
    ("yield test", ("trial", "what")),
    ("table of measures", ("set", "measure")),
    ("table of pans", ("pan",)),
    ("table of names", ("name", "food", "match")),
    ("table of names", ("name", "food", "region")),
    ("table of foods", ("food",)),
)


def found_files(paths: Iterable[str]) -> Iterator[CheckedFile]:
    """Each file once, read; those of folders that are of none of our kinds are passed over."""
    seen: set[str] = set()
    for path, named in _listed(paths):
        if isinstance(path, CheckedFile):
            yield path
            continue
        # No path is found behind a name that cannot be read, and _read will tell why.
        real = os.path.realpath(path) if path.isprintable() else path
        if real in seen:
            continue
        seen.add(real)
        file = _read(path)
        if named or file.found or file.kind:
            if named and not (file.found or file.kind):
                file.add(_unknown(path))
            yield file


def _listed(paths: Iterable[str]) -> Iterator[tuple[str | CheckedFile, bool]]:
    for path in paths:
        if not os.path.isdir(path):
            yield path, True
            continue
        unread: list[OSError] = []
        for folder, folders, names in os.walk(path, onerror=unread.append):
            folders[:] = sorted(name for name in folders if not name.startswith("."))
            for name in sorted(names):
                if name.lower().endswith(_TYPES) and not name.startswith("."):
                    yield os.path.normpath(os.path.join(folder, name)), False
        for problem in unread:
            yield _unread(problem), True


def _read(path: str) -> CheckedFile:
    if not path.isprintable():
        # Neither an error nor a base could name it.
        shown = os.fsencode(path).decode("utf-8", "backslashreplace")
        shown = "".join(c if c.isprintable() else f"\\x{ord(c):02x}" for c in shown)
        file = CheckedFile(shown)
        message = "the name of the file is not readable text, so it is not read"
        file.add(Find("file.name", message, "give it another name", shown))
        return file
    file = CheckedFile(path)
    try:
        if not stat.S_ISREG(os.stat(path).st_mode):
            file.add(Find("file.unreadable", "it is no file, but a pipe or a device", "", path))
            return file
    except (OSError, ValueError):
        pass  # reading it will tell why
    try:
        file.text = read_text(path, MOST_BYTES)
        file.kind = _kind(path, file.text)
    except Error as error:
        file.add(find_of(error, path))
    return file


def _kind(path: str, text: str) -> str:
    if path.lower().endswith(".csv"):
        first = next((line for line in text.splitlines() if line.strip()), "")
        columns = {cell.strip(' "').lower() for cell in re.split("[,;\t]", first)}
        return next((kind for kind, needed in _COLUMNS if columns.issuperset(needed)), "")
    return next((kind for kind, keys in _KEYS if has_key(text, keys)), "")


def _unknown(path: str) -> Find:
    message = "it is none of the files that are checked"
    hint = "recipes, dishes and what is kept are TOML; tables are CSV, prices and stock either"
    return Find("file.kind", message, hint, path)


def _unread(problem: OSError) -> CheckedFile:
    path = str(problem.filename)
    file = CheckedFile(path)
    reason = problem.strerror or str(problem)
    file.add(Find("file.unreadable", f"cannot read the folder: {reason}", "", path))
    return file
