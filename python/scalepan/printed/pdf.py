"""PDF by the print of a browser that is installed."""

from __future__ import annotations

import os
import shutil
import subprocess
import tempfile
from pathlib import Path
from typing import TYPE_CHECKING

from scalepan.errors import make_error
from scalepan.files import read_bytes, write_whole_bytes

if TYPE_CHECKING:
    from scalepan.errors import Error
    from scalepan.files import PathLike

BROWSERS = ("chromium", "chromium-browser", "google-chrome", "google-chrome-stable", "chrome")
_FLAGS = (
    "--headless",
    "--disable-gpu",
    "--disable-background-networking",
    "--no-first-run",
    "--no-pdf-header-footer",
)
_SECONDS = 120


def save_pdf(html: str, path: PathLike) -> None:
    """Prints a document to a file.

    Raises:
        FileError: ``file.pdf``, ``file.unwritable``.
    """
    browser = next((found for name in BROWSERS if (found := shutil.which(name))), None)
    if browser is None:
        raise _failed(f"no browser of {', '.join(BROWSERS)} is found", path)
    with tempfile.TemporaryDirectory() as folder:
        page, made = Path(folder, "page.html"), Path(folder, "page.pdf")
        page.write_text(html, encoding="utf-8")
        _run([browser, *_flags(folder), f"--print-to-pdf={made}", page.as_uri()], path)
        if not made.exists():
            raise _failed(f"{browser} made no file", path)
        write_whole_bytes(path, read_bytes(made))


def _run(command: list[str], path: PathLike) -> None:
    try:
        subprocess.run(command, capture_output=True, timeout=_SECONDS, check=True)
    except (OSError, subprocess.SubprocessError) as problem:
        raise _failed(f"{command[0]} did not print: {_reason(problem)}", path) from None


def _reason(problem: Exception) -> str:
    if isinstance(problem, subprocess.CalledProcessError):
        return f"it ended with {problem.returncode}"
    if isinstance(problem, subprocess.TimeoutExpired):
        return f"it took more than {_SECONDS} s"
    return getattr(problem, "strerror", None) or str(problem)


def _flags(folder: str) -> list[str]:
    """With a profile of its own; a browser's sandbox does not run as root."""
    flags = [*_FLAGS, f"--user-data-dir={Path(folder, 'profile')}"]
    is_root = hasattr(os, "geteuid") and os.geteuid() == 0
    return [*flags, "--no-sandbox"] if is_root else flags


def _failed(message: str, path: PathLike) -> Error:
    hint = "save the HTML file and print that from a browser"
    return make_error("file.pdf", message, hint, file=str(path))
