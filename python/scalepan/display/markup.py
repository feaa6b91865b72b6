"""HTML put together safely: this module alone writes a tag or escapes a text."""

from __future__ import annotations

import html

from scalepan.display.harmless import (
    MOST,
    left_out,
    plain,
    set_apart,
    shortened,
    title_text,
    visible,
)

# As wide as what is around it, and high enough to read half a sheet at once.
_FRAME = "display:block;width:100%;height:48em;box-sizing:border-box;border:1px solid"


class Markup(str):
    """HTML that is safe as it is; every other text is escaped where it meets some."""

    __slots__ = ()


def element(tag: str, *content: str, **attributes: str) -> Markup:
    """An element around markup and texts.

    Args:
        tag: its name.
        content: markup as it is, and other texts as ``words``.
        attributes: made harmless, and left out where empty; ``of`` stands for ``class``.
    """
    inside = "".join(part if isinstance(part, Markup) else words(part) for part in content)
    return Markup(f"<{tag}{_attributes(attributes)}>{inside}</{tag}>")


def empty_element(tag: str, **attributes: str) -> Markup:
    """An element that HTML leaves without content and end."""
    return Markup(f"<{tag}{_attributes(attributes)}/>")


def document(head: list[Markup], body: list[Markup]) -> Markup:
    """A whole page, in the English of its own words."""
    whole = element("html", element("head", *head), element("body", *body), lang="en")
    return Markup(f"<!doctype html>\n{whole}\n")


def framed(page: Markup, title: str) -> Markup:
    """A whole page inside another one, which it can neither see nor touch."""
    whole = html.escape(page, quote=True)
    attributes = _attributes({"title": title, "style": _FRAME})
    return Markup(f'<iframe sandbox="" srcdoc="{whole}"{attributes}></iframe>')


def words(text: str, most: int = MOST) -> Markup:
    """A text of others: escaped, its direction kept to itself, and cut where it is too long."""
    head, more = shortened(text, most)
    shown = set_apart(html.escape(visible(head), quote=False), "<bdi>", "</bdi>")
    if more:
        whole = _attributes({"title": text})
        return Markup(f"<bdi{whole}>{shown}</bdi><small>{left_out(more)}</small>")
    return Markup(shown if shown.isascii() else f"<bdi>{shown}</bdi>")


def text_alone(text: str, most: int = MOST) -> Markup:
    """A text of others where no element may stand: in the title of a document."""
    return Markup(html.escape(plain(text, most), quote=False))


def together(parts: list[Markup]) -> Markup:
    """Markup behind markup."""
    return Markup("".join(parts))


def retold(safe_html: str) -> list[Markup]:
    """The tags and texts of HTML that the core made, its texts set as ``words``."""
    pieces: list[Markup] = []
    for place, run in enumerate(safe_html.split("<")):
        tag, closed, text = run.partition(">")
        if place and closed:
            pieces.append(Markup(f"<{tag}>"))
            run = text
        if run:
            pieces.append(words(html.unescape(run)))
    return pieces


def _attributes(attributes: dict[str, str]) -> str:
    return "".join(
        f' {"class" if name == "of" else name}="{html.escape(title_text(value), quote=True)}"'
        for name, value in attributes.items()
        if value
    )
