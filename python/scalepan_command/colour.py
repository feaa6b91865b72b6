"""Colour on a terminal: little of it, and none where it is not wanted.

``NO_COLOR`` with any text takes it away, ``FORCE_COLOR`` with any text brings it to files and
pipes too (the conventions of no-color.org and force-color.org); the first of the two wins.
"""

from __future__ import annotations

import os
from typing import TextIO

_CODES = {"head": "1", "code": "31", "hint": "2"}


def is_wanted(stream: TextIO | None) -> bool:
    """Whether what goes to this stream is coloured."""
    if os.environ.get("NO_COLOR"):
        return False
    if os.environ.get("FORCE_COLOR"):
        return True
    return stream is not None and stream.isatty() and os.environ.get("TERM") != "dumb"


def painted(text: str, what: str, stream: TextIO | None) -> str:
    """The text as a ``head``, the ``code`` of an error, or a ``hint``."""
    return f"\033[{_CODES[what]}m{text}\033[0m" if is_wanted(stream) else text
