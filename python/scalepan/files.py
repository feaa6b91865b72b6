"""Text files, read whole; whatever the system says becomes one clear error."""

from __future__ import annotations

from typing import TYPE_CHECKING, TypeVar

from scalepan.errors import Error, make_error

if TYPE_CHECKING:
    import os
    from collections.abc import Callable

    PathLike = str | os.PathLike[str]

# A recipe or a price book is never near this; a mistaken path to something huge is.
MOST_BYTES = 20_000_000

_Read = TypeVar("_Read")


def read_bytes(path: PathLike) -> bytes:
    """The whole of a file.

    Raises:
        FileError: ``file.unreadable`` or ``file.too_large``.
    """
    name = str(path)
    try:
        with open(path, "rb") as stream:
            data = stream.read(MOST_BYTES + 1)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or str(problem)
        raise make_error("file.unreadable", f"cannot read the file: {reason}", file=name) from None
    if len(data) > MOST_BYTES:
        raise make_error("file.too_large", f"the file has more than {MOST_BYTES} bytes", file=name)
    return data


def read_text(path: PathLike) -> str:
    """The text of a UTF-8 file, without a byte order mark.

    Raises:
        FileError: ``file.unreadable``, ``file.too_large`` or ``file.encoding``.
    """
    data = read_bytes(path)
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        line = data.count(b"\n", 0, problem.start) + 1
        message = f"byte {problem.start + 1} is not UTF-8"
        hint = "save the file as UTF-8"
        raise make_error("file.encoding", message, hint, str(path), line) from None


def at_place(field: tuple[str, str, int, int], read: Callable[[], _Read]) -> _Read:
    """Runs ``read``; its error leaves with the place of the field, if it has none of its own."""
    _, file, line, column = field
    try:
        return read()
    except Error as error:
        if error.place:
            raise
        raise make_error(error.code, error.message, error.hint, file, line, column) from None
