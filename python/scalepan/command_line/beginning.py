"""``scalepan new``: files to start from, those of the demo among them."""

from __future__ import annotations

import contextlib
import os
import shlex
from typing import TYPE_CHECKING

from scalepan.command_line.sections import Section, Table, Texts, report_lines
from scalepan.command_line.tables import terminal_width
from scalepan.errors import Error, make_error
from scalepan.files import read_bytes

if TYPE_CHECKING:
    import argparse

    from scalepan.command_line.output import Output

FILES = {
    "fennel_bake.toml": "a dish for four, with comments that say how it is written",
    "bean_pot.toml": "a second dish, whose sauce is made first",
    "open_night.toml": "both, each at its size, to be bought together",
    "prices.csv": "a price book: one pack of one item a row",
    "larder.csv": "what is on hand",
    "facts.csv": "shares and weights of your own, which go before the bundled ones",
    "fennel_trials.csv": "a record of trimming, from which such shares come",
}
_FOLDER = os.path.join(os.path.dirname(os.path.dirname(__file__)), "data", "demo")


def new_command(options: argparse.Namespace) -> Output:
    """Writes all files or none."""
    folder = options.folder
    _expect_none(folder)
    _write_all(folder)
    commands = _next_commands(folder)
    document = {"folder": folder, "files": list(FILES), "next": commands}
    where = "this folder" if folder == "." else folder
    title = f"Written into {where}, for the night kitchen of a hill-top observatory:"
    note = "The dishes, the prices and the weights are invented."
    body = (Table(("", ""), list(FILES.items())), Texts((note,)))
    lines = report_lines([Section("", (Texts((title,)), *body))], terminal_width())
    return document, [*lines, "", "Next:", *(f"  {command}" for command in commands)]


def _expect_none(folder: str) -> None:
    there = [name for name in FILES if os.path.lexists(os.path.join(folder, name))]
    if not there:
        return
    are = "is" if len(there) == 1 else "are"
    message = f"{', '.join(there)} {are} there already, so nothing is written"
    other = "night_kitchen" if folder == "." else f"{folder.rstrip('/')}_2"
    hint = f"name another folder: scalepan new {other}"
    raise make_error("file.exists", message, hint, "" if folder == "." else folder)


def _write_all(folder: str) -> None:
    written: list[str] = []
    try:
        os.makedirs(folder, exist_ok=True)
        for name in FILES:
            path = os.path.join(folder, name)
            with open(path, "xb") as stream:
                written.append(path)
                stream.write(read_bytes(os.path.join(_FOLDER, name)))
    except (OSError, ValueError, Error) as problem:
        for path in written:
            with contextlib.suppress(OSError):
                os.unlink(path)
        if isinstance(problem, Error):
            raise
        reason = getattr(problem, "strerror", None) or str(problem)
        raise make_error(
            "file.unwritable", f"cannot write the files: {reason}", file=folder
        ) from None


def _next_commands(folder: str) -> list[str]:
    here = os.path.join(".", folder) if folder.startswith("-") else folder
    recipe, prices = (
        shlex.quote(name if folder == "." else os.path.join(here, name))
        for name in ("fennel_bake.toml", "prices.csv")
    )
    check = "scalepan check" if folder == "." else f"scalepan check {shlex.quote(here)}"
    return [check, f"scalepan cost {recipe} --prices {prices} --portions 40"]
