"""A display's HTML, read by the parser of the standard library."""

from __future__ import annotations

from dataclasses import dataclass, field
from html.parser import HTMLParser

import scalepan


@dataclass
class Cell:
    """A cell of a table."""

    tag: str
    attributes: dict[str, str]
    text: str = ""

    @property
    def exact(self) -> str:
        """What one sees who points at it."""
        return self.attributes.get("title", "")


@dataclass
class Page(HTMLParser):
    """What a display holds.

    Attributes:
        elements: each with its attributes, in order.
        texts: each text with the tags it stands in.
        tables: rows of cells.
        style: the text of the style.
    """

    source: str
    elements: list[tuple[str, dict[str, str]]] = field(default_factory=list)
    texts: list[tuple[str, list[str]]] = field(default_factory=list)
    tables: list[list[list[Cell]]] = field(default_factory=list)
    style: str = ""

    def __post_init__(self) -> None:
        super().__init__(convert_charrefs=True)
        self._open: list[str] = []
        self.feed(self.source)
        self.close()
        assert self._open == []

    @property
    def text(self) -> str:
        return "".join(text for text, _ in self.texts)

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        attributes = {name: value or "" for name, value in attrs}
        assert len(attributes) == len(attrs)
        self.elements.append((tag, attributes))
        self._open.append(tag)
        if tag == "table":
            self.tables.append([])
        elif tag == "tr":
            self.tables[-1].append([])
        elif tag in ("td", "th"):
            self.tables[-1][-1].append(Cell(tag, attributes))

    def handle_endtag(self, tag: str) -> None:
        assert self._open.pop() == tag

    def handle_data(self, data: str) -> None:
        if self._open[-1:] == ["style"]:
            self.style += data
            return
        self.texts.append((data, list(self._open)))
        if {"td", "th"} & set(self._open):
            self.tables[-1][-1][-1].text += data

    def handle_comment(self, data: str) -> None:
        raise AssertionError(f"a comment: {data}")

    def handle_decl(self, decl: str) -> None:
        raise AssertionError(f"a declaration: {decl}")

    def handle_pi(self, data: str) -> None:
        raise AssertionError(f"an instruction: {data}")

    def unknown_decl(self, data: str) -> None:
        raise AssertionError(f"a declaration: {data}")


def page_of(shown: object) -> Page:
    """The page of an object's HTML."""
    return Page(bundle_of(shown)["text/html"])


def bundle_of(shown: object) -> dict[str, str]:
    """As a notebook asks for it."""
    bundle: dict[str, str] = type(shown)._repr_mimebundle_(shown)  # type: ignore[attr-defined]
    return bundle


def document_of(pages: scalepan.PrintedPages) -> Page:
    """The whole document of pages to print."""
    start, _, rest = pages.html.partition("\n")
    assert start == "<!doctype html>"
    return Page(rest)
