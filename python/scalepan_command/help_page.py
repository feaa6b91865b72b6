"""How help is set: within the terminal's width, and all commands grouped by the job."""

from __future__ import annotations

import argparse
import re
import shutil
import sys
import textwrap
from typing import TYPE_CHECKING

from scalepan_command.colour import painted
from scalepan_command.help_texts import EXAMPLES, GROUPS

if TYPE_CHECKING:
    from collections.abc import Mapping

_NARROWEST, _WIDEST = 40, 120
_NARROW = 70
_CLOSING = (
    "scalepan COMMAND --help tells the rest, with examples that run in a folder made by "
    "scalepan new. A file named - is read from standard input. Every command takes --json.",
    "exit: 0 done, 1 the input is wrong (one clear error), 2 the command line is wrong",
)


def help_width() -> int:
    """Columns of the terminal, from 40 to 120; 80 where there is none."""
    columns = shutil.get_terminal_size((80, 24)).columns
    return min(max(columns, _NARROWEST), _WIDEST)


class Formatter(argparse.HelpFormatter):
    """Of the options of one command."""

    def __init__(self, prog: str) -> None:
        width = help_width()
        super().__init__(prog, max_help_position=25 if width >= _NARROW else 8, width=width)


def command_help(usage: str, text: str, name: str, sets: str) -> str:
    """The help of one command: its usage, the rest by argparse, sets of measures, examples."""
    width = help_width()
    parts = ["\n".join(textwrap.wrap(usage, width, subsequent_indent="    ")), text.strip()]
    if sets:
        parts.append("\n".join(textwrap.wrap(sets, width)))
    examples = [line for each in EXAMPLES[name] for line in example_lines(each, width)]
    parts.append("\n".join(["examples:", *examples]))
    return _with_heads("\n\n".join(parts)) + "\n"


def overview(texts: Mapping[str, str]) -> str:
    """All commands, grouped by the job, each with an example."""
    width = help_width()
    first = "Scale a recipe, buy it in whole packs, and cost it, on exact numbers."
    lines = ["usage: scalepan COMMAND [options]", "", *textwrap.wrap(first, width)]
    for head, names in GROUPS:
        lines += ["", f"{head}:"]
        for name in names:
            lines += _listed(name, texts[name], width)
    for text in _CLOSING:
        lines += ["", *textwrap.wrap(text, width)]
    return _with_heads("\n".join(lines)) + "\n"


def example_lines(example: str, width: int, indent: int = 2) -> list[str]:
    """A command, broken where the shell goes on reading the next line."""
    lines, room = [""], width - 2
    for part in _parts(example):
        if lines[-1].strip() and len(lines[-1]) + 1 + len(part) > room:
            lines[-1] += " \\"
            lines.append(" " * (indent + 4) + part)
        else:
            lines[-1] = f"{lines[-1]} {part}" if lines[-1] else " " * indent + part
    return lines


def _listed(name: str, text: str, width: int) -> list[str]:
    column = 18 if width >= _NARROW else 4
    lead = f"  {name}"
    told = textwrap.wrap(text, width - column)
    if len(lead) + 2 <= column:
        told[0] = lead.ljust(column) + told[0]
    else:
        told.insert(0, lead)
    below = [line if line.startswith("  ") else " " * column + line for line in told]
    shown = next(each for each in EXAMPLES[name] if each.split()[1] == name)
    example = example_lines(shown, width, column)
    return [*below, *(painted(line, "hint", sys.stdout) for line in example)]


def _parts(example: str) -> list[str]:
    """Words of the command, an option with its value, and nothing in quotes divided."""
    words = re.findall(r'(?:"[^"]*"|\S)+', example)
    parts: list[str] = []
    for word in words:
        option_before = bool(parts) and parts[-1].startswith("-") and " " not in parts[-1]
        if (option_before and word[0] not in "->") or (parts and parts[-1] == ">"):
            parts[-1] += f" {word}"
        else:
            parts.append(word)
    return parts


def _with_heads(text: str) -> str:
    return re.sub(
        r"^(?:usage:|\S.*:$)", lambda found: painted(found[0], "head", sys.stdout), text, flags=re.M
    )
