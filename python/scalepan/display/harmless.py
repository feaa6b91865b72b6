"""Texts of others made harmless for the eye: no character in them moves what stands beside."""

from __future__ import annotations

import re
import unicodedata

# So many characters of a cell, and of a paragraph, are shown.
MOST = 200
MOST_OF_TEXT = 1000
_FIRST_PICTURE = 0x2400  # Unicode's pictures of the control characters 0 to 31
_DELETE, _PICTURE_OF_DELETE = 0x7F, "\u2421"
# Embeddings, overrides and isolates of the bidirectional algorithm (Unicode UAX #9), which reach
# beyond a name where their end is missing, and the separators that end a line.
_REACHING = (*range(0x202A, 0x202F), *range(0x2066, 0x206A), 0x2028, 0x2029)
_SHOWN = {
    **{code: chr(_FIRST_PICTURE + code) for code in range(32)},
    _DELETE: _PICTURE_OF_DELETE,
    **{code: f"[U+{code:04X}]" for code in (*range(0x80, 0xA0), *_REACHING)},
    # Half a pair is no character, and no file can hold it.
    **dict.fromkeys(range(0xD800, 0xE000), "\ufffd"),
}
# What is written from right to left: letters of the ranges that Unicode keeps for such scripts
# (UAX #9, default bidirectional classes), and what joins the words of one name.
_LEFTWARD = (
    "\u0590-\u08ff\u200f\ufb1d-\ufdff\ufe70-\ufeff\U00010800-\U00010fff\U0001e800-\U0001efff"
)
_LEFTWARD_RUN = re.compile(f"[{_LEFTWARD}](?:[\\s'\"-]*[{_LEFTWARD}])*")


def set_apart(text: str, before: str, behind: str) -> str:
    """The text with marks around each run that goes from right to left: what stands beside it
    keeps its place."""
    return _LEFTWARD_RUN.sub(lambda run: f"{before}{run[0]}{behind}", text)


def visible(text: str) -> str:
    """The text with a picture or the number of each character that would be obeyed, not seen."""
    if text.isascii() and text.isprintable():
        return text
    return text.translate(_SHOWN)


def shortened(text: str, most: int = MOST) -> tuple[str, int]:
    """The beginning of a text, and how many characters are left out of it."""
    if len(text) <= most:
        return text, 0
    end = most
    # A letter keeps its accents.
    while end > most // 2 and unicodedata.combining(text[end]):
        end -= 1
    return text[:end], len(text) - end


def left_out(count: int) -> str:
    """What stands in the place of characters that are left out."""
    return f"… {count} more character{'s' if count > 1 else ''}"


def plain(text: str, most: int = MOST) -> str:
    """A text of others for plain text: visible, and not too long."""
    head, more = shortened(text, most)
    return f"{visible(head)}{left_out(more)}" if more else visible(head)


def title_text(text: str) -> str:
    """The same for what is shown when one points at it: the whole text, up to a limit."""
    return plain(text, MOST_OF_TEXT)
