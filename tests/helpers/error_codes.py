"""Every code that an error can have, found in the sources."""

from __future__ import annotations

import re
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
SUFFIXES = {".cpp", ".hpp", ".py"}

# Codes stand in quotes, in calls of fail, fail_at, fail_dimensions, make_error or an error class.
CALL = re.compile(
    r"\b(?:fail|fail_at|fail_dimensions|expect_same_dimension|make_error|_error|[A-Z]\w*Error)"
    r'\([^";]{0,80}"([a-z]+\.[a-z_]+)"'
)
# Some are handed on: of rows of a list, or of an error that is made first and thrown later.
HANDED_ON = re.compile(r'"((?:line|yield|food)\.[a-z_]+)"')
# Tables of any subject share readers, which put the subject in front of their codes: one reader of
# files, and one of rows out of the program.
SUBJECT = re.compile(r'\bColumns\(\s*"([a-z]+)"')
PART = re.compile(r'\b(?:columns|self)\.error\(\s*"([a-z_]+)"|\.subject\}\.([a-z_]+)"')
FILES = ROOT / "python" / "scalepan" / "csv_document.py"
ROWS = ROOT / "python" / "scalepan" / "own_tables.py"


def codes() -> dict[str, str]:
    """Every code with a file that uses it."""
    found: dict[str, str] = {}
    of_files: set[str] = set()
    of_rows: set[str] = set()
    for folder in (ROOT / "cpp", ROOT / "python"):
        for path in sorted(folder.rglob("*")):
            if path.suffix in SUFFIXES:
                text = path.read_text(encoding="utf-8")
                here = [*CALL.findall(text), *HANDED_ON.findall(text)]
                found |= dict.fromkeys(here, str(path.relative_to(ROOT)))
                subjects = set(SUBJECT.findall(text))
                of_files |= subjects if path == ROWS or "read_rows" in text else set()
                of_rows |= subjects if path == ROWS or "rows_of_table" in text else set()
    read_by = ((FILES, of_files), (ROWS, of_rows))
    return found | {
        f"{subject}.{part}": path.name
        for path, subjects in read_by
        for subject in subjects
        for part in parts(path)
    }


def parts(path: Path) -> set[str]:
    """What a reader puts behind the subject."""
    return {a or b for a, b in PART.findall(path.read_text(encoding="utf-8"))}
