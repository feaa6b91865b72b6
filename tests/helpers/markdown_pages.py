"""Pages in Markdown: their blocks, links and anchors."""

from __future__ import annotations

import re
from dataclasses import dataclass
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
FENCE = re.compile(r"^(`{3,})(\w*)[^\n]*\n(.*?)^\1$", re.MULTILINE | re.DOTALL)
NAMED = re.compile(r"(?:# |<!-- )(\S+\.[a-z]+)(?: -->)?\n(.*)", re.DOTALL)
TABLE = re.compile(r"^This is `(\S+\.csv)`:\n\n```csv\n(.*?)^```$", re.MULTILINE | re.DOTALL)
COMMAND = "$ scalepan "


@dataclass(frozen=True)
class Shown:
    """A command and what stands below it; ``...`` on a line of its own is for lines left out."""

    command: str
    printed: str

    def is_in(self, output: str) -> bool:
        at = 0
        parts = re.split(r"^\.\.\.\n", self.printed, flags=re.MULTILINE)
        for place, part in enumerate(parts):
            found = output.find(part, at)
            if found < 0 or (place == 0 and found != 0):
                return False
            at = found + len(part)
        return not parts[-1] or at == len(output)


def pages() -> list[Path]:
    """Every page of the repository."""
    return [
        *sorted(ROOT.glob("*.md")),
        *sorted((ROOT / "docs").glob("*.md")),
        ROOT / "data-sources" / "README.md",
    ]


def blocks(text: str) -> list[tuple[str, str]]:
    """Language and content of each fenced block."""
    return [(language, content) for _, language, content in FENCE.findall(text)]


def prose(text: str) -> str:
    """The text without its fenced blocks and its code."""
    return re.sub(r"`[^`\n]+`", "``", FENCE.sub("", text))


def files_shown(text: str) -> dict[str, str]:
    """Files by the name in their first line, or in the line above a table."""
    named = [NAMED.fullmatch(content) for kind, content in blocks(text) if kind != "python"]
    return {found[1]: found[2] for found in named if found} | dict(TABLE.findall(text))


def commands_shown(text: str) -> list[Shown]:
    """Commands with what they print, in their order."""
    found = []
    for language, content in blocks(text):
        if language == "text" and content.startswith(COMMAND):
            found += [Shown(*one.split("\n", 1)) for one in content.split(COMMAND)[1:]]
    return found


def links(text: str) -> list[str]:
    """What the page's links and pictures lead to."""
    return re.findall(r"\]\(([^)\s]+)\)", prose(text))


def anchors(text: str) -> set[str]:
    """Of its headings, as readers of Markdown make them: small letters, hyphens for spaces."""
    headings = re.findall(r"^#{1,6} +(.+?) *$", FENCE.sub("", text), flags=re.MULTILINE)
    plain = [re.sub(r"[^\w\- ]", "", heading.lower()) for heading in headings]
    return {heading.replace(" ", "-") for heading in plain}
