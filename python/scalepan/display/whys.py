"""How a figure came about: the core's tree, its texts made harmless, and cut where it is long."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan._core import Why
from scalepan.display.harmless import MOST_OF_TEXT, plain
from scalepan.display.kinds import Display, display_of
from scalepan.display.markup import Markup, element, retold, together

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator

_MOST_PARTS = 40  # of one figure
_MOST_LINES = 200
_ROOM = 100_000  # characters of HTML
_OPEN_LEVELS = 2


@display_of.register
def _(shown: Why) -> Display:
    return Display(together(list(_cut(retold(shown._tree_html())))), _text(str(shown)))


def _text(tree: str) -> str:
    lines = tree.splitlines()
    shown = [plain(line, MOST_OF_TEXT) for line in lines[:_MOST_LINES]]
    if (more := len(lines) - len(shown)) > 0:
        shown.append(f"… {more} more lines; all of them: str(why)")
    return "\n".join(shown)


def _cut(pieces: Iterable[Markup]) -> Iterator[Markup]:
    """The tree with the first parts of each figure, those far down folded."""
    shown: list[int] = []  # parts of each figure on the way down
    left: list[int] = []  # and those left out
    inside = 0  # how deep in a part that is left out
    room = _ROOM
    for piece in pieces:
        if inside:
            inside += (piece == "<li>") - (piece == "</li>")
            continue
        if piece == "<ul>":
            shown.append(0)
            left.append(0)
        elif piece == "</ul>":
            shown.pop()
            yield from _left_out(left.pop())
        elif piece == "<li>":
            if shown[-1] == _MOST_PARTS or room < 0:
                left[-1] += 1
                inside = 1
                continue
            shown[-1] += 1
        folded = piece == "<details open>" and len(shown) >= _OPEN_LEVELS
        room -= len(piece)
        yield Markup("<details>") if folded else piece


def _left_out(parts: int) -> Iterator[Markup]:
    if parts:
        text = f"… {parts} more part{'s' if parts > 1 else ''}; all of them: why.parts"
        yield element("li", element("small", text))
