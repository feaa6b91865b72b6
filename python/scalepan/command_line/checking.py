"""What ``scalepan check`` prints."""

from __future__ import annotations

from collections import Counter
from typing import TYPE_CHECKING, Any

from scalepan.checks import check_files, found_files
from scalepan.command_line.sections import NOTE, Section, Table, Texts, report_lines
from scalepan.command_line.tables import terminal_width
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
    sections = [_file_section(file) for file in files if file.finds]
    codes = Counter(find.code for file in files for find in file.finds)
    counts = sorted(codes.items(), key=lambda count: (-count[1], count[0]))
    parts: list[Part] = [Texts(_summary(files, errors, doubts))]
    if len(counts) > 1:
        parts.append(Table(("", ""), [(code, str(count)) for code, count in counts], (1,)))
    summary = Section("", parts)
    return document, report_lines([*sections, summary], terminal_width()), 1 if errors else 0


def _file_section(file: CheckedFile) -> Section:
    parts = [
        Texts((visible(text),), lead)
        for find in file.finds
        for text, lead in ((_told(find), NOTE), (find.hint, NOTE * 3))
        if text
    ]
    return Section(visible(file.path), parts)


def _told(find: Find) -> str:
    return f"{find.place}: {'error: ' if find.is_error else ''}{find.message} [{find.code}]"


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
