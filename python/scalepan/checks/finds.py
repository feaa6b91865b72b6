"""What a check finds."""

from __future__ import annotations

from dataclasses import dataclass, field
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from scalepan.errors import Error


@dataclass(frozen=True)
class Find:
    """An error, or something to look at.

    Attributes:
        code: that of the error, or ``check.`` and what is doubted.
        message: what it is.
        hint: what can be done.
        file, line, column: where, counted from 1; 0 where unknown.
    """

    code: str
    message: str
    hint: str = ""
    file: str = ""
    line: int = 0
    column: int = 0

    @property
    def is_error(self) -> bool:
        return not self.code.startswith("check.")

    @property
    def place(self) -> str:
        """``pot.toml:4:10``, as far as it is known."""
        return ":".join(
            [self.file, *(str(number) for number in (self.line, self.column) if number)]
        )


def find_of(error: Error, file: str) -> Find:
    """An error as it was raised, in ``file`` where it names none."""
    return Find(error.code, error.message, error.hint, error.file or file, error.line, error.column)


@dataclass(eq=False)
class CheckedFile:
    """A file with what was found in it.

    Attributes:
        path: as it was asked for.
        kind: ``recipe``, ``file of dishes``, ``costing``, ``sheet``, ``price book``,
            ``stock list``, ``yield test``, ``table of facts`` (foods, names, measures, pans), or
            empty where it could not be told.
        finds: each once, in their order in the file.
    """

    path: str
    kind: str = ""
    text: str = ""
    found: dict[Find, None] = field(default_factory=dict)

    @property
    def finds(self) -> list[Find]:
        return sorted(self.found, key=lambda find: (find.line, find.column))

    def add(self, find: Find) -> None:
        """Notes a find, once."""
        self.found[find] = None
