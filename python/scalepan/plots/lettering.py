"""Names and notes as a font can draw them: cut where long, harmless whatever they hold."""

from __future__ import annotations

import re
import unicodedata
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from matplotlib.ft2font import FT2Font
    from matplotlib.text import Text

NAME_WIDTH = 28
NOTE_WIDTH = 60
_STAND_INS = "□?"


def lettered(name: str, width: int = NAME_WIDTH) -> str:
    """The name in one line and at most so wide; of a long one both ends stay.

    What no font in force can draw becomes a box: matplotlib would warn of it.
    """
    faces = _faces()
    stand_in = next(sign for sign in _STAND_INS if _is_drawn(sign, faces) or sign == "?")
    signs = [
        sign if sign == " " or _is_drawn(sign, faces) else stand_in for sign in _in_one_line(name)
    ]
    return _cut(signs, width)


def note(text: str, width: int = NOTE_WIDTH) -> str:
    """A text in as many lines as it takes."""
    lines = [lettered(line, 2 * len(line)) for line in text.splitlines()]
    return "\n".join(part for line in lines for part in _wrapped(line, width))


def listed(names: Sequence[str], most: int = 4) -> str:
    """The first few, each cut, and how many more there are."""
    told = ", ".join(lettered(name, 20) for name in names[:most])
    return f"{told} and {len(names) - most} more" if len(names) > most else told


def as_written(texts: Iterable[Text]) -> None:
    """A dollar or an underscore is a sign like any other."""
    for text in texts:
        text.set_parse_math(False)
        text.set_usetex(False)


def _in_one_line(name: str) -> str:
    spaced = "".join(" " if unicodedata.category(sign) in _BREAKS else sign for sign in name)
    composed = unicodedata.normalize("NFC", spaced)
    # Marks of direction would turn round what stands beside the name.
    kept = "".join(sign for sign in composed if unicodedata.category(sign) != "Cf")
    return " ".join(_MANY_ACCENTS.sub(r"\1", kept).split())


_BREAKS = ("Cc", "Zl", "Zp")
# More than two on one letter would run into the lines above.
_MANY_ACCENTS = re.compile("([\u0300-\u036f]{2})[\u0300-\u036f]+")


def _wrapped(line: str, width: int) -> list[str]:
    parts: list[str] = []
    for word in line.split():
        if parts and _wide(f"{parts[-1]} {word}") <= width:
            parts[-1] += f" {word}"
            continue
        while word:
            part = "".join(_as_wide(list(word), width))
            parts.append(part)
            word = word[len(part) :]
    return parts


def _cut(signs: list[str], width: int) -> str:
    if _wide(signs) <= width:
        return "".join(signs)
    end = width // 3
    head = _as_wide(signs, width - end - 1)
    tail = _as_wide(signs[::-1], end)[::-1]
    return f"{''.join(head).rstrip()}…{''.join(tail).lstrip()}"


def _as_wide(signs: list[str], width: int) -> list[str]:
    taken: list[str] = []
    for sign in signs:
        width -= _width(sign)
        if width < 0:
            break
        taken.append(sign)
    return taken


def _wide(signs: Iterable[str]) -> int:
    """In the width of a letter."""
    return sum(map(_width, signs))


def _width(sign: str) -> int:
    return 2 if sign in _STAND_INS[0] or unicodedata.east_asian_width(sign) in "WF" else 1


def _faces() -> list[FT2Font]:
    """Those that matplotlib looks a sign up in, one for each family in force."""
    from matplotlib.font_manager import FontProperties, findfont, get_font

    paths = []
    for family in FontProperties().get_family():
        try:
            paths.append(findfont(FontProperties(family=[family]), fallback_to_default=False))
        except ValueError:
            continue
    return [get_font(path) for path in paths or [findfont(FontProperties())]]


def _is_drawn(sign: str, faces: Sequence[FT2Font]) -> bool:
    return any(face.get_char_index(ord(sign)) for face in faces)
