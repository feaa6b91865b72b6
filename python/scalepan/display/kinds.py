"""Which kind of object is displayed how."""

from __future__ import annotations

from dataclasses import dataclass
from functools import singledispatch
from typing import TYPE_CHECKING

from scalepan.display.first_of_many import first_of_many
from scalepan.display.page import sections_html
from scalepan.display.plain_text import WIDTH, text_of

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

    from scalepan.command_line.sections import Section
    from scalepan.display.markup import Markup


@dataclass(frozen=True)
class Display:
    """The inside of a display, the text that stands for it, and the report both are made of."""

    body: Markup
    text: str
    sections: Sequence[Section] = ()


@singledispatch
def display_of(shown: object) -> Display:
    """Each kind is registered by the module of its group."""
    raise TypeError(f"{type(shown).__name__} has no display")


def of_sections(sections: Iterable[Section], width: int = WIDTH) -> Display:
    """A report, as a page and as a terminal of so many columns has it."""
    whole = list(sections)
    short = first_of_many(whole)
    return Display(sections_html(short), text_of(short, width), whole)
