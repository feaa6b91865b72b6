"""``scalepan completion``: a script for the shell, which then needs no Python to complete."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan_command.arguments import parser

from scalepan.errors import make_error

if TYPE_CHECKING:
    import argparse

    from scalepan.command_line.output import Output

_FILES = ("FILE", "RECIPE", "DISHES", "OLD", "NEW", "PATH")


def completion_command(options: argparse.Namespace) -> Output:
    """The script, as shtab makes it of the arguments.

    Raises:
        CommandError: ``command.completion`` where shtab is not installed.
    """
    try:
        import shtab  # a library that is not needed otherwise
    except ImportError:
        message = "completion scripts are made by shtab, which is not installed"
        hint = 'pip install "scalepan[completion]"'
        raise make_error("command.completion", message, hint) from None
    top = parser()
    for command in top.commands.values():
        for action in command._actions:
            if action.metavar in _FILES:
                action.complete = shtab.FILE  # type: ignore[attr-defined]
            elif action.metavar == "FOLDER":
                action.complete = shtab.DIRECTORY  # type: ignore[attr-defined]
    script = shtab.complete(top, options.shell)
    return {"shell": options.shell, "script": script}, script.splitlines()
