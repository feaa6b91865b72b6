"""What ``scalepan check`` prints."""

from __future__ import annotations

import sys
from collections import Counter
from typing import TYPE_CHECKING, Any

from scalepan_command.colour import painted

from scalepan.checks import check_files, found_files
from scalepan.command_line.sections import (
    NOTE,
    Section,
    Table,
    Texts,
    heading,
    joined,
    section_lines,
)
from scalepan.command_line.tables import terminal_width, wrapped
from scalepan.display.harmless import visible
from scalepan.progress import progress_bar

if TYPE_CHECKING:
    import argparse

    from scalepan.checks.finds import CheckedFile, Find
    from scalepan.command_line.output import Output
    from scalepan.command_line.sections import Part


def check_command(options: argparse.Namespace) -> Output:
    """Lists what is found; the status is 1 where an error is among it."""
    files = list(found_files(options.paths))
    with progress_bar(len(files), "check") as bar:
        check_files(files, bar)
    errors = sum(find.is_error for file in files for find in file.finds)
    doubts = sum(not find.is_error for file in files for find in file.finds)
    document = {
        "files": [_file_document(file) for file in files],
        "errors": errors,
        "doubts": doubts,
    }
    codes = Counter(find.code for file in files for find in file.finds)
    counts = sorted(codes.items(), key=lambda count: (-count[1], count[0]))
    width = terminal_width()
    found = [_file_lines(file, width) for file in files if file.finds]
    parts: list[Part] = [Texts(_summary(files, errors, doubts))]
    if len(counts) > 1:
        parts.append(Table(("", ""), [(code, str(count)) for code, count in counts], (1,)))
    lines = joined([*found, section_lines(Section("", parts), width)])
    return document, lines, 1 if errors else 0


def _file_lines(file: CheckedFile, width: int) -> list[str]:
    return [
        heading(visible(file.path)),
        *(line for find in file.finds for line in _find_lines(find, width)),
    ]


def _find_lines(find: Find, width: int) -> list[str]:
    """Place and message, what is below them set in, with the code at the end; then the hint."""
    code = f"[{find.code}]"
    told = f"{find.place}: {'error: ' if find.is_error else ''}{find.message} {code}"
    first, *below = wrapped(visible(told), width - len(NOTE), NOTE)
    lines = [first, *(NOTE + line for line in below)]
    paint = "code" if find.is_error else "hint"
    lines[-1] = lines[-1].replace(code, painted(code, paint, sys.stdout))
    hint = wrapped(visible(find.hint), width, NOTE * 3)
    return [*lines, *(painted(line, "hint", sys.stdout) for line in hint)]


def _summary(files: list[CheckedFile], errors: int, doubts: int) -> list[str]:
    if not files:
        return ["Nothing to check here: no recipe, no price book, no table of your own."]
    kinds = Counter(file.kind or "file" for file in files)
    listed = ", ".join(_counted(count, kind) for kind, count in sorted(kinds.items()))
    found = (
        "nothing doubtful"
        if errors == doubts == 0
        else (f"{_counted(errors, 'error')}, {doubts} to check")
    )
    lines = [f"{listed}: {found}."]
    if "recipe" in kinds and "price book" not in kinds:
        lines.append("No price book is among them, so what is not priced is not looked for.")
    return lines


def _counted(count: int, noun: str) -> str:
    first, of, rest = noun.partition(" of ")
    return f"{count} {first}{'' if count == 1 else 's'}{of}{rest}"


def _file_document(file: CheckedFile) -> dict[str, Any]:
    return {
        "file": file.path,
        "kind": file.kind or None,
        "finds": [_find_document(find) for find in file.finds],
    }


def _find_document(find: Find) -> dict[str, Any]:
    return {
        "error": find.is_error,
        "code": find.code,
        "message": find.message,
        "place": find.place,
        "line": find.line or None,
        "column": find.column or None,
        "hint": find.hint,
    }
