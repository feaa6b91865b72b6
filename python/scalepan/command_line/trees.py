"""How a figure came about, as the command line prints it: a large tree to a depth."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from scalepan._core import Why

_BRANCH = re.compile("((?:│  |   )*)[├└]─ ")
_LARGE, _DEPTH = 60, 3  # a tree of more lines is shown so deep


def tree_lines(why: Why, depth: int | None = None) -> list[str]:
    """The tree, with a count in the place of what is deeper.

    Args:
        why: the figure.
        depth: levels below the figure; left out, a large tree is shown three deep.
    """
    lines = str(why).splitlines()
    if depth is None:
        if len(lines) <= _LARGE:
            return lines
        depth = _DEPTH
    shown: list[str] = []
    left_out = 0
    inside = 0
    for line in [*lines, ""]:
        branch = _BRANCH.match(line)
        if branch or not line:
            inside = len(branch[1]) // 3 + 1 if branch else 0
            if inside > depth:
                left_out += 1
                continue
            if left_out:
                shown.append(_below(shown[-1], left_out))
                left_out = 0
        if inside <= depth:
            shown.append(line)
    return shown[:-1]


def _below(above: str, count: int) -> str:
    """Under the last line shown, whose own signs do not go on."""
    start = re.match("(?:│  |   |├─ |└─ )*", above)
    lead = start[0].replace("├─ ", "│  ").replace("└─ ", "   ") if start else ""
    return f"{lead}  … {count} more below: --depth"
