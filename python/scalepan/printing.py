"""Pages to print: one HTML file for a kitchen, which a browser also prints to PDF.

pot = scalepan.read_recipe("pot.toml").scale(portions=40)
scalepan.kitchen_page(pot, volumes="us spoons and cups").save("pot.html")

A page stands alone: no script is in it, nothing is fetched, and its own security policy forbids
both. It prints on A4 or Letter, black on white, and is read on a screen in light and in dark.
"""

from __future__ import annotations

from typing import TYPE_CHECKING, Literal, NamedTuple

from scalepan.displays import displayed
from scalepan.errors import make_error
from scalepan.files import write_whole

if TYPE_CHECKING:
    from collections.abc import Sequence
    from fractions import Fraction

    from scalepan._core import Basket, Costing, MeasureSet, Quantity, Recipe
    from scalepan.display.markup import Markup
    from scalepan.files import PathLike

    Paper = Literal["A4", "Letter"]

PAPERS = ("A4", "Letter")


class Part(NamedTuple):
    """What one page, or one run of pages, holds.

    Attributes:
        title: stands at the head of each of its sheets.
        kind: what the page is for, ``kitchen page``.
        body: its content.
    """

    title: str
    kind: str
    body: Markup


@displayed
class PrintedPages(NamedTuple):
    """Pages ready to print, in one file; what ``kitchen_page`` and its like give.

    Attributes:
        parts: what they hold, one a page or run of pages.
        paper: ``A4`` or ``Letter``.
    """

    parts: Sequence[Part]
    paper: Paper = "A4"

    @property
    def html(self) -> str:
        """The whole document."""
        from scalepan.printed.document import whole_document  # so that `import` stays quick

        return whole_document(self.parts, self.paper)

    def save(self, path: PathLike) -> None:
        """Writes the HTML file, whole or not at all.

        Raises:
            FileError: ``file.unwritable``.
        """
        write_whole(path, self.html)

    def save_pdf(self, path: PathLike) -> None:
        """Prints to a PDF file by a Chromium or Chrome on this machine.

        Raises:
            FileError: ``file.pdf`` where there is none, or where it fails; ``file.unwritable``.
        """
        from scalepan.printed.pdf import save_pdf  # here, so that `import` stays quick

        save_pdf(self.html, path)

    def __str__(self) -> str:
        return "\n".join(f"{part.title}: {part.kind}, {self.paper}" for part in self.parts)

    def __repr__(self) -> str:
        return f"<PrintedPages {'; '.join(str(self).splitlines())}>"


def kitchen_page(
    recipe: Recipe,
    volumes: MeasureSet | str | None = None,
    weights: MeasureSet | str | None = None,
    within: Quantity | str | Fraction | None = None,
    paper: Paper = "A4",
) -> PrintedPages:
    """What ``hand_over`` says, to hang up in a kitchen: amounts large, and the sources of facts.

    Args:
        recipe: at the size wanted.
        volumes, weights, within: as ``hand_over`` has them.
        paper: ``A4`` or ``Letter``.

    Raises:
        MeasureError: what ``hand_over`` raises.
        FileError: ``file.paper``.
    """
    from scalepan.printed.kitchen import kitchen_part  # here, so that `import` stays quick

    sets = {"volumes": volumes, "weights": weights, "within": within}
    return pages_of([kitchen_part(recipe, sets)], paper)


def shopping_page(costing: Costing | Basket, paper: Paper = "A4") -> PrintedPages:
    """The packs to buy, shop by shop, with a box to tick for each kind of pack.

    Raises:
        FileError: ``file.paper``.
    """
    from scalepan.printed.shopping import shopping_part  # here, so that `import` stays quick

    return pages_of([shopping_part(costing)], paper)


def costing_page(costing: Costing, paper: Paper = "A4") -> PrintedPages:
    """The four costs, exactly too, those of each line, and the prices and facts they go by.

    Raises:
        FileError: ``file.paper``.
    """
    from scalepan.printed.costing import costing_part  # here, so that `import` stays quick

    return pages_of([costing_part(costing)], paper)


def printed_pages(pages: Sequence[PrintedPages], paper: Paper | None = None) -> PrintedPages:
    """Several pages in one file, each beginning on a sheet of its own.

    Args:
        pages: in their order.
        paper: of all; left out, that of the first.

    Raises:
        FileError: ``file.paper``, also where there is no page.
    """
    if not pages:
        raise make_error("file.paper", "no page is given to print", "give at least one page")
    return pages_of([part for each in pages for part in each.parts], paper or pages[0].paper)


def pages_of(parts: Sequence[Part], paper: Paper) -> PrintedPages:
    """The parts on that paper, if there is such a paper.

    Raises:
        FileError: ``file.paper``.
    """
    if paper not in PAPERS:
        message = f'no paper is called "{paper}"'
        raise make_error("file.paper", message, f"write {' or '.join(PAPERS)}")
    return PrintedPages(parts, paper)
