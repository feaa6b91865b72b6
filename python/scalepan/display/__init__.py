"""What a notebook shows of an object: HTML, and beside it plain text with the same figures.

Loaded when the first object is displayed. Every name is escaped, keeps its direction to itself and
is cut where it is too long; long tables are cut with a count. There is no script and nothing is
fetched.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.display import (  # noqa: F401  each makes its kinds known
    errors,
    foods,
    offers,
    printed_pages,
    quantities,
    recipes,
    reports,
    sheets,
    whys,
)
from scalepan.display.kinds import display_of
from scalepan.display.page import html_of

if TYPE_CHECKING:
    from collections.abc import Container

HTML, PLAIN = "text/html", "text/plain"


def bundle(
    shown: object,
    include: Container[str] | None = None,
    exclude: Container[str] | None = None,
) -> dict[str, str]:
    """The object by MIME type, as a notebook's ``_repr_mimebundle_`` asks for it."""
    display = display_of(shown)
    whole = {HTML: html_of(display.body), PLAIN: display.text}
    return {
        kind: text
        for kind, text in whole.items()
        if (include is None or kind in include) and (exclude is None or kind not in exclude)
    }
