"""Texts as a TOML document has them."""

from __future__ import annotations

import re

# What a literal text of several lines cannot hold.
_NOT_LITERAL = re.compile("'''|'$|[\\x00-\\x08\\x0b-\\x1f\\x7f]")
_ESCAPED = {"\\": "\\\\", '"': '\\"', "\n": "\\n", "\t": "\\t", "\r": "\\r"}
_TO_ESCAPE = re.compile('[\\x00-\\x1f\\x7f"\\\\]')
_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")


def quoted(text: str) -> str:
    """On one line, in quotes."""
    return '"' + _TO_ESCAPE.sub(lambda found: _escape(found[0]), text) + '"'


def whole(text: str) -> str:
    """A text of several lines, as it is where TOML allows."""
    return quoted(text) if _NOT_LITERAL.search(text) else f"'''\n{text}'''"


def key_text(name: str) -> str:
    """A key, in quotes where it needs them."""
    return name if _BARE_KEY.fullmatch(name) else quoted(name)


def _escape(character: str) -> str:
    return _ESCAPED.get(character, f"\\u{ord(character):04x}")
