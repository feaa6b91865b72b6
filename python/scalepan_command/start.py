"""The command ``scalepan``: reads the command line, and only then loads what runs it.

Exit status: 0 done, 1 the input is wrong, 2 the command line is wrong, 130 stopped by Ctrl-C.
"""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING, Any

from scalepan_command.arguments import options_of
from scalepan_command.colour import painted

if TYPE_CHECKING:
    import argparse
    from collections.abc import Iterable, Sequence

    from scalepan.command_line.output import Output
    from scalepan.errors import Error

INTERRUPTED = 130


def main(arguments: Sequence[str] | None = None) -> int:
    """Runs one command line; that of the process where none is given."""
    words = sys.argv[1:] if arguments is None else list(arguments)
    try:
        try:
            return _run(options_of(words))
        finally:
            _flush()
    except BrokenPipeError:
        # The reader has what it wanted; keep the interpreter from flushing into the closed pipe.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 0
    except KeyboardInterrupt:
        print("scalepan: stopped", file=sys.stderr)
        return INTERRUPTED
    except OSError as problem:  # the output could not be written
        from scalepan.errors import make_error

        message = f"cannot write what is to be printed: {problem.strerror}"
        print_error(make_error("file.unwritable", message), as_json="--json" in words)
        # What is left in the buffer would fail once more as the interpreter ends.
        os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
        return 1


def print_error(error: Error, *, as_json: bool) -> None:
    """The error on standard error: one object, or a line and its hint."""
    _never_fails(sys.stderr)
    if as_json:
        import json

        from scalepan.command_line.documents import error_document

        print(json.dumps(error_document(error), ensure_ascii=False), file=sys.stderr)
        return
    from scalepan.command_line.report import error_lines

    lines = error_lines(error, lambda text, what: painted(text, what, sys.stderr))
    print("scalepan:", "\n".join(lines), file=sys.stderr)


def _run(options: argparse.Namespace) -> int:
    from scalepan.errors import Error, make_error

    try:
        document, lines, *status = _output(options)
        text = _text(document, lines, as_json=options.json)
    except Error as error:
        _trace(options)
        print_error(error, as_json=options.json)
        return 1
    except Exception as fault:
        _trace(options)
        message = f"the program itself failed: {type(fault).__name__}: {fault}"
        hint = "" if options.debug else "report it, with what --debug prints"
        print_error(make_error("command.fault", message, hint), as_json=options.json)
        return 1
    _never_fails(sys.stdout)
    print(text, flush=True)
    return status[0] if status else 0


def _output(options: argparse.Namespace) -> Output:
    if options.version:
        import scalepan

        document = {"version": scalepan.__version__, "python": sys.version.split()[0]}
        return document, [f"scalepan {scalepan.__version__}"]
    from scalepan.command_line.inputs import expect_inputs_kept
    from scalepan.command_line.main import COMMANDS

    expect_inputs_kept(options)
    return COMMANDS[options.command](options)


def _text(document: dict[str, Any], lines: Iterable[str], *, as_json: bool) -> str:
    if not as_json:
        return "\n".join(lines)
    import json

    from scalepan.command_line.documents import SCHEMA

    return json.dumps({"schema": SCHEMA, **document}, ensure_ascii=False, indent=2)


def _never_fails(stream: Any) -> None:
    """A character that the stream cannot write becomes a question mark."""
    if hasattr(stream, "reconfigure"):
        stream.reconfigure(errors="replace")


def _flush() -> None:
    if sys.stdout is not None:
        sys.stdout.flush()


def _trace(options: argparse.Namespace) -> None:
    if options.debug:
        import traceback

        traceback.print_exc()
