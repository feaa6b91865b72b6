"""Needs told by what the packs count: heads and bunches, not pieces."""

from __future__ import annotations

import re
from typing import TYPE_CHECKING

from scalepan.command_line.sections import Figure

if TYPE_CHECKING:
    from collections.abc import Sequence

_COUNTED = re.compile("1 ([a-z]+)")
_PIECES = re.compile(r"\bpieces?\b")


def by_noun(told: str, packs: Sequence[tuple[int, str]]) -> str:
    """``1.8 heads`` in the place of ``1.8 pieces``, where each pack is ``1 head``."""
    nouns = {found[1] for _, pack in packs if (found := _COUNTED.fullmatch(pack))}
    pieces = _PIECES.search(told)
    if len(nouns) != 1 or not pieces:
        return told
    noun = nouns.pop()
    if pieces[0] == "pieces":
        noun += "es" if noun.endswith(("ch", "sh", "x")) else "s"
    text = f"{told[: pieces.start()]}{noun}{told[pieces.end() :]}"
    return Figure(text, told.exact) if isinstance(told, Figure) else text
