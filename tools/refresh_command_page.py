"""Runs the commands of docs/command_line.md anew, and puts what they print below them.

Where ``...`` stands in place of lines, as many are shown around it as before. Run it with the
package installed; then look at what changed.
"""

from __future__ import annotations

import contextlib
import io
import os
import re
import shlex
import tempfile
from pathlib import Path

PAGE = Path(__file__).parents[1] / "docs" / "command_line.md"
LEFT_OUT = "..."


def printed(command: str) -> list[str]:
    """The lines of both streams."""
    from scalepan_command.start import main

    out, err = io.StringIO(), io.StringIO()
    streams = contextlib.redirect_stdout(out), contextlib.redirect_stderr(err)
    with streams[0], streams[1], contextlib.suppress(SystemExit):
        main(shlex.split(command))
    return (out.getvalue() + err.getvalue()).splitlines()


def as_before(now: list[str], before: list[str]) -> list[str]:
    """The lines of now, cut where those before are."""
    if LEFT_OUT not in before:
        return now
    gap = before.index(LEFT_OUT)
    shown, rest = now[:gap], before[gap + 1 :]
    if not rest:
        return [*shown, LEFT_OUT]
    behind = now.index(rest[0], gap)
    return [*shown, LEFT_OUT, *as_before(now[behind : behind + len(rest)], rest)]


def refreshed(block: re.Match[str]) -> str:
    """A block of commands with what they print."""
    parts = []
    for example in block[1].split("$ scalepan ")[1:]:
        command, *before = example.splitlines()
        parts += [f"$ scalepan {command}", *as_before(printed(command), before)]
    return "\n".join(["```text", *parts, "```"])


def main() -> None:
    """Rewrites the page."""
    os.environ["COLUMNS"] = "80"
    with tempfile.TemporaryDirectory() as folder, contextlib.chdir(folder):
        text = PAGE.read_text(encoding="utf-8")
        text = re.sub(r"```text\n(\$ scalepan .*?)```", refreshed, text, flags=re.DOTALL)
    PAGE.write_text(text, encoding="utf-8")


if __name__ == "__main__":
    main()
