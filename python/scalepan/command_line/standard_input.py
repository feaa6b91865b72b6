"""A file named ``-`` is read from standard input."""

from __future__ import annotations

import sys
from typing import TYPE_CHECKING, Any, TypeVar

from scalepan.errors import make_error
from scalepan.files import MOST_BYTES, decoded, read_text

if TYPE_CHECKING:
    from collections.abc import Callable

_NAME = "standard input"

_Read = TypeVar("_Read")


def read_from(path: str, parse: Callable[..., _Read], **options: Any) -> _Read:
    """What ``parse`` makes of the text of a file, or of standard input.

    Raises:
        FileError: as ``read_text``; what ``parse`` raises.
    """
    return parse(text_of(path), file=name_of(path), **options)


def name_of(path: str) -> str:
    """The name that errors show."""
    return _NAME if path == "-" else path


def text_of(path: str, most: int = MOST_BYTES) -> str:
    """The text alone. Raises FileError as ``read_text``."""
    if path != "-":
        return read_text(path, most)
    data = b"" if sys.stdin is None else sys.stdin.buffer.read(most + 1)
    if len(data) > most:
        raise make_error("file.too_large", f"the file has more than {most} bytes", file=_NAME)
    return decoded(data, _NAME)
