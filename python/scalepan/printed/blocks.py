"""What all printed pages are put together from."""

from __future__ import annotations

from dataclasses import replace
from typing import TYPE_CHECKING

from scalepan.command_line.sections import Section, Texts
from scalepan.display.harmless import MOST, MOST_OF_TEXT
from scalepan.display.markup import Markup, element, empty_element, together, words
from scalepan.display.page import Manner, longest_word, sections_html

if TYPE_CHECKING:
    from collections.abc import Iterable, Sequence

# More characters than any file that is read has.
_WHOLE = 100_000_000
_ROUNDED = "Shown to the currency's minor unit, rounded half up."
PAPER = Manner("h2", MOST, MOST_OF_TEXT, _ROUNDED, folds=False, longest_word=24)
_UNCUT = replace(PAPER, of_text=_WHOLE)


def head(title: str, facts: Iterable[str] = ()) -> Markup:
    """The title of a page, and below it a list of what is to know first."""
    points = [element("li", paragraph_of(fact)) for fact in facts]
    listed = element("ul", *points, of="facts") if points else Markup()
    return together([element("h1", words(title, MOST)), listed])


def reports(*sections: Section) -> Markup:
    """Sections of a report as they are."""
    return sections_html([each for each in sections if each.title or each.parts], PAPER)


def care(texts: Sequence[Texts], title: str) -> Markup:
    """Cautions in a frame of their own, never cut."""
    return sections_html([Section(title, texts, is_caution=True)], _UNCUT)


def small_print(title: str, texts: Sequence[str]) -> Markup:
    """What few will read, one after the other; nothing where there is nothing."""
    if not texts:
        return Markup()
    told = [part for text in texts for part in (Markup("; "), paragraph_of(text))]
    return element("p", element("b", f"{title}: "), *told[1:], ".", of="small")


def sources_told(sources: Iterable[tuple[Sequence[str], str]]) -> list[str]:
    """What goes by which source."""
    return [f"{', '.join(ids)}: {source}" for ids, source in sources]


def signature(by: str) -> Markup:
    """Lines to fill in by hand: by whom, when, and what else."""
    asked = (f"{by} by", "Date", "Remarks")
    blanks = [element("span", f"{word} ", element("span", of="line")) for word in asked]
    return element("p", *blanks, of="sign")


def box(label: str) -> Markup:
    """A box to tick, on a screen as well as on paper."""
    return empty_element("input", type="checkbox", **{"aria-label": label})


def whole(text: str) -> Markup:
    """What a cook goes by, and is never cut."""
    return words(text, _WHOLE)


def paragraph_of(text: str) -> Markup:
    """A text of others that ends with a count where it is very long."""
    return words(text, MOST_OF_TEXT)


def wild(text: str, kind: str = "") -> str:
    """A class that lets a text break inside a word, where it has a very long one."""
    return f"{kind} wild".strip() if longest_word(text) > PAPER.longest_word else kind
