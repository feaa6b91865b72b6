"""Text files, read whole; whatever the system says becomes one clear error."""

from __future__ import annotations

import contextlib
import os
import stat
from typing import TYPE_CHECKING, TypeVar

from scalepan.errors import Error, make_error

if TYPE_CHECKING:
    from collections.abc import Callable
    from io import RawIOBase

    PathLike = str | os.PathLike[str]

# A recipe or a price book is never near this; a mistaken path to something huge is.
MOST_BYTES = 20_000_000
MOST_NAMES = 1000
# What writes into a pipe may take so many seconds before its first byte.
_PATIENCE = 10

_Read = TypeVar("_Read")


def read_bytes(path: PathLike, most: int = MOST_BYTES) -> bytes:
    """The whole of a file, or of a pipe that something writes into; no more than ``most`` is held.

    Raises:
        FileError: ``file.unreadable``, also for a device, for a pipe that says nothing, and for a
            name that is no UTF-8; ``file.too_large``.
    """
    name = str(path)
    shown = name.encode(errors="replace").decode()
    if shown != name:
        message = "the name of the file or of its folder is not UTF-8"
        raise make_error("file.unreadable", message, "give it another name", shown)
    try:
        with open(path, "rb", buffering=0, opener=_opened) as stream:
            data = _read_at_most(stream, most)
    except (OSError, ValueError) as problem:
        reason = getattr(problem, "strerror", None) or str(problem)
        hint = _looked_in(name) if isinstance(problem, FileNotFoundError) else ""
        if os.path.isdir(name):
            hint = "it is a folder: name a file in it"
        raise make_error("file.unreadable", f"cannot read the file: {reason}", hint, name) from None
    if data is None:
        raise make_error("file.too_large", f"the file has more than {most} bytes", file=name)
    return data


def _looked_in(name: str) -> str:
    """Where a file was looked for, and the nearest names of files there."""
    from scalepan._core import nearest_names  # here: this module is loaded before the core

    folder, base = os.path.split(os.path.abspath(name))
    if not os.path.isdir(folder):
        return f"there is no folder {folder}"
    try:
        names = sorted(name for name in os.listdir(folder) if name.isprintable())
    except OSError:
        names = []
    stem = os.path.splitext(base)[0]
    near = [
        name
        for name in nearest_names(base, names[:MOST_NAMES])
        if (other := os.path.splitext(name)[0]) == stem or nearest_names(stem, [other])
    ]
    return f"looked in {folder}" + (f"; nearest there: {', '.join(near)}" if near else "")


def _opened(path: str, flags: int) -> int:
    """Without waiting for something to write into a pipe, which could be for ever."""
    return os.open(path, flags | getattr(os, "O_NONBLOCK", 0))


def _read_at_most(stream: RawIOBase, most: int) -> bytes | None:
    """None where there is more."""
    status = os.fstat(stream.fileno())
    if stat.S_ISDIR(status.st_mode):
        raise ValueError("Is a directory")
    if stat.S_ISFIFO(status.st_mode):
        _await_writer(stream)
    elif not stat.S_ISREG(status.st_mode):
        raise ValueError("it is a device, not a file")
    elif status.st_size > most:
        return None
    read = bytearray()
    while len(read) <= most and (part := stream.read(min(most + 1 - len(read), 1 << 20))):
        read += part
    return bytes(read) if len(read) <= most else None


def _await_writer(pipe: RawIOBase) -> None:
    """Until there is something to read, or the end. Raises ValueError where neither comes."""
    import select  # here, so that `import scalepan` stays quick

    if not select.select([pipe], [], [], _PATIENCE)[0]:
        raise ValueError(f"nothing came out of the pipe in {_PATIENCE} s")
    os.set_blocking(pipe.fileno(), True)


def read_text(path: PathLike, most: int = MOST_BYTES) -> str:
    """The text of a UTF-8 file, without a byte order mark.

    Raises:
        FileError: ``file.unreadable``, ``file.too_large`` or ``file.encoding``.
    """
    return decoded(read_bytes(path, most), str(path))


def decoded(data: bytes, name: str) -> str:
    """The text of UTF-8 bytes; ``name`` is the one that errors show.

    Raises:
        FileError: ``file.encoding``.
    """
    try:
        return data.decode("utf-8-sig")
    except UnicodeDecodeError as problem:
        line = data.count(b"\n", 0, problem.start) + 1
        message = f"byte {problem.start + 1} is not UTF-8"
        wide = data[:2] in (b"\xff\xfe", b"\xfe\xff")
        hint = "it is UTF-16: save the file as UTF-8" if wide else "save the file as UTF-8"
        raise make_error("file.encoding", message, hint, name, line) from None


def write_whole(path: PathLike, text: str) -> None:
    """Writes a UTF-8 file, whole or not at all: where that fails, an older file is still there.

    Raises:
        FileError: ``file.unwritable``, also for a device and a pipe.
    """
    write_whole_bytes(path, text.encode())


def write_whole_bytes(path: PathLike, data: bytes) -> None:
    """The same of bytes."""
    import secrets  # here, so that `import scalepan` stays quick

    name = str(path)
    try:
        target = os.path.realpath(path)
        _expect_replaceable(target)
        folder, base = os.path.split(target)
        beside = os.path.join(folder, f".{base[:100]}.{secrets.token_hex(8)}.part")
        handle = os.open(beside, os.O_WRONLY | os.O_CREAT | os.O_EXCL, 0o666)
    except (OSError, ValueError) as problem:
        raise _unwritable(problem, name) from None
    try:
        with open(handle, "wb") as stream:
            stream.write(data)
            stream.flush()
            os.fsync(stream.fileno())
        with contextlib.suppress(FileNotFoundError):
            os.chmod(beside, os.stat(target).st_mode & 0o777)
        os.replace(beside, target)
    except BaseException as problem:
        with contextlib.suppress(OSError):
            os.unlink(beside)
        if isinstance(problem, OSError):
            raise _unwritable(problem, name) from None
        raise


def _expect_replaceable(target: str) -> None:
    """A device or a pipe must not give way to a file."""
    with contextlib.suppress(FileNotFoundError):
        mode = os.stat(target).st_mode
        if not (stat.S_ISREG(mode) or stat.S_ISDIR(mode)):
            raise ValueError("it is a device or a pipe, not a file")


def _unwritable(problem: Exception, name: str) -> Error:
    reason = getattr(problem, "strerror", None) or str(problem)
    return make_error("file.unwritable", f"cannot write the file: {reason}", file=name)


def at_place(field: tuple[str, str, int, int], read: Callable[[], _Read]) -> _Read:
    """Runs ``read``; its error leaves with the place of the field, if it has none of its own."""
    _, file, line, column = field
    try:
        return read()
    except Error as error:
        if error.place:
            raise
        raise make_error(error.code, error.message, error.hint, file, line, column) from None
