"""Printed pages, in a frame that keeps their style to themselves."""

from __future__ import annotations

from scalepan.display.harmless import MOST_OF_TEXT, plain
from scalepan.display.kinds import Display, display_of
from scalepan.display.markup import Markup, framed
from scalepan.printing import PrintedPages


@display_of.register
def _(shown: PrintedPages) -> Display:
    titles = [plain(line, MOST_OF_TEXT) for line in str(shown).splitlines()]
    return Display(framed(Markup(shown.html), titles[0]), "\n".join(titles))
