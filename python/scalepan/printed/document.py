"""One HTML document that stands alone: no script, nothing fetched, and a policy that says so."""

from __future__ import annotations

import base64
import hashlib
from typing import TYPE_CHECKING

from scalepan.display.harmless import plain
from scalepan.display.markup import Markup, document, element, empty_element, text_alone
from scalepan.printed.style import STYLE, part_rules

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan.printing import Paper, Part


def whole_document(parts: Sequence[Part], paper: Paper) -> str:
    """The parts one after the other, each from a new sheet on."""
    style = STYLE + "".join(part_rules(place, part, paper) for place, part in enumerate(parts))
    titles = dict.fromkeys(plain(part.title) for part in parts)
    head = [
        empty_element("meta", charset="utf-8"),
        empty_element("meta", content=_policy(style), **{"http-equiv": "Content-Security-Policy"}),
        empty_element("meta", name="viewport", content="width=device-width, initial-scale=1"),
        element("title", text_alone("; ".join(titles))),
        element("style", Markup(style)),
    ]
    bodies = [
        element("main", part.body, of=f"part{place} {part.kind.replace(' ', '-')}")
        for place, part in enumerate(parts)
    ]
    return document(head, bodies)


def _policy(style: str) -> str:
    """Nothing is loaded, run or sent; the one style is known by its digest."""
    digest = base64.b64encode(hashlib.sha256(style.encode()).digest()).decode()
    return f"default-src 'none'; style-src 'sha256-{digest}'; base-uri 'none'; form-action 'none'"
