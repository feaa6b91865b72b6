"""Every code that an error can have, found in the sources."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SUFFIXES = {".cpp", ".hpp", ".py"}

# A code is the only thing in quotes that is two words with a point, the first one a subject.
QUOTED = re.compile(r'"([a-z]+)\.([a-z_]+)"')
NO_CODES = {"basket.dishes", "basket.shopping", "panel.css", "panel.js"}
CLASSES = re.compile(r'^    "([a-z]+)": \w+Error,$', re.MULTILINE)
# Tables of any subject share readers, which put the subject in front of their codes: one reader of
# files, and one of rows out of the program.
SUBJECT = re.compile(r'\bColumns\(\s*"([a-z]+)"')
PART = re.compile(r'\b(?:columns|self)\.error\(\s*"([a-z_]+)"|\.subject\}\.([a-z_]+)"')
FROM_PROGRAM = re.compile(r"rows_of_(?:table|frame)")
FILES = ROOT / "python" / "scalepan" / "csv_document.py"
ROWS = ROOT / "python" / "scalepan" / "own_tables.py"


def codes() -> dict[str, str]:
    """Every code with a file that uses it."""
    errors = ROOT / "python" / "scalepan" / "errors.py"
    known = set(CLASSES.findall(errors.read_text(encoding="utf-8")))
    found: dict[str, str] = {}
    of_files: set[str] = set()
    of_rows: set[str] = set()
    for folder in (ROOT / "cpp", ROOT / "python"):
        for path in sorted(folder.rglob("*")):
            if path.suffix in SUFFIXES:
                text = path.read_text(encoding="utf-8")
                here = [f"{one}.{part}" for one, part in QUOTED.findall(text) if one in known]
                found |= dict.fromkeys(here, str(path.relative_to(ROOT)))
                subjects = set(SUBJECT.findall(text))
                of_files |= subjects if path == ROWS or "read_rows" in text else set()
                of_rows |= subjects if path == ROWS or FROM_PROGRAM.search(text) else set()
    read_by = ((FILES, of_files), (ROWS, of_rows))
    for name in NO_CODES:
        found.pop(name, None)
    return found | {
        f"{subject}.{part}": path.name
        for path, subjects in read_by
        for subject in subjects
        for part in parts(path)
        # How floats are taken is asked of prices alone, and these two tables hold no numbers.
        if part != "floats" or subject == "price"
        if part != "decimal" or subject not in ("food", "name")
    }


def parts(path: Path) -> set[str]:
    """What a reader puts behind the subject."""
    return {a or b for a, b in PART.findall(path.read_text(encoding="utf-8"))}
