"""The parsers of the command line: their help, and what they say of a wrong one."""

from __future__ import annotations

import argparse
import re
from typing import TYPE_CHECKING, Any, NoReturn

from scalepan_command import help_page

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

WRONG = 2
ALL_COMMANDS = "scalepan --help lists the commands"
_MISSING = "the following arguments are required"
_OPTION = re.compile(r"--?[a-zA-Z][\w-]*")
_ARGUMENT = re.compile(r"argument ([^:]+): (.*)", re.DOTALL)


class Parser(argparse.ArgumentParser):
    """What is common to both kinds.

    Attributes:
        as_json: whether it tells what is wrong as one object.
    """

    as_json = False
    color = False  # the library's own, from Python 3.14 on

    def print_help(self, file: Any = None) -> None:
        """As the library does it, but an error of the stream is not passed over."""
        print(self.format_help(), end="", file=file, flush=True)

    def refuse(self, message: str, *, place: str = "", hint: str = "") -> NoReturn:
        """Tells what is wrong, and ends the process."""
        from scalepan.errors import make_error

        from scalepan_command.start import print_error

        print_error(make_error("command.line", message, hint, place), as_json=self.as_json)
        self.exit(WRONG)


class TopParser(Parser):
    """Of ``scalepan`` itself."""

    @property
    def commands(self) -> dict[str, CommandParser]:
        """The parsers of the commands by their names."""
        actions = (each for each in self._actions if isinstance(each.choices, dict))
        return dict(next(actions).choices or {})

    @property
    def texts(self) -> dict[str, str]:
        """The commands, each with what it does."""
        return {name: command.description or "" for name, command in self.commands.items()}

    def format_help(self) -> str:
        return help_page.overview(self.texts)

    def error(self, message: str) -> NoReturn:
        self.refuse(message, hint=ALL_COMMANDS)


class CommandParser(Parser):
    """Of one command; its help names the sets of measures where it takes one."""

    takes_sets = False
    words: Sequence[str] = ()  # of the command line

    def __init__(self, **options: Any) -> None:
        super().__init__(**options, usage=argparse.SUPPRESS, formatter_class=help_page.Formatter)

    @property
    def short(self) -> str:
        return self.prog.split()[-1]

    def format_usage(self) -> str:
        """What must be given, and that there is more."""
        parts = [_form(each) for each in self._actions if each.required or not each.option_strings]
        return " ".join(["usage:", self.prog, *parts, "[options]"])

    def format_help(self) -> str:
        text = super().format_help()
        return help_page.command_help(self.format_usage(), text, self.short, self._sets())

    def error(self, message: str) -> NoReturn:
        """One error with its place, and how the command is written."""
        if message.startswith(_MISSING):  # maybe since its option is misspelt
            self.expect_options(self.words)
        found = _ARGUMENT.fullmatch(message)
        place, told = (found[1], found[2]) if found else ("", message)
        hint = f"{self.format_usage()}; scalepan {self.short} --help has examples"
        self.refuse(told, place=place, hint=hint)

    def expect_options(self, words: Iterable[str]) -> None:
        """Refuses the first option that the command has not."""
        for word in words:
            option = word.split("=")[0]
            if _OPTION.fullmatch(option) and option not in self._option_string_actions:
                near = nearest(option, self._option_string_actions)
                hint = near or f"scalepan {self.short} --help lists its options"
                self.refuse(f"{self.prog} has no option {option}", place=option, hint=hint)

    def _sets(self) -> str:
        if not self.takes_sets:
            return ""
        from scalepan.measure_sets import measure_sets  # here: other help needs no core

        return "sets of measures: " + "; ".join(measure_sets())


def refuse_rest(top: TopParser, name: str | None, rest: Sequence[str]) -> NoReturn:
    """Of words that nothing takes: an option that is not known, or one argument too many."""
    if name is not None:
        top.commands[name].expect_options(rest)
        top.commands[name].error(f'"{rest[0]}" is one argument too many')
    word = rest[0].split("=")[0]
    hint = nearest(word, top._option_string_actions) or ALL_COMMANDS
    top.refuse(f"{top.prog} has no option {word}", place=word, hint=hint)


def nearest(word: str, known: Iterable[str]) -> str:
    """The hint that names what is near; empty without any."""
    import difflib

    near = difflib.get_close_matches(word, list(known), n=3, cutoff=0.7)
    return "nearest: " + ", ".join(near) if near else ""


def _form(action: argparse.Action) -> str:
    shown = action.metavar or "|".join(map(str, action.choices or ())) or action.dest
    if action.option_strings:
        return f"{action.option_strings[-1]} {shown}"
    return (
        f"[{shown}]"
        if action.nargs == "?"
        else f"[{shown} ...]"
        if action.nargs == "*"
        else str(shown)
    )
