"""The demo: a dish for four made for forty, in an invented setting with invented prices.

``python -m scalepan.demo [PICTURE]`` prints it, and draws the cost curve where a file is named.
"""

from __future__ import annotations

import os
import sys
from typing import TYPE_CHECKING

from scalepan.command_line import report
from scalepan.command_line.sections import NOTE, Section, Table, Texts, report_lines
from scalepan.command_line.tables import terminal_width
from scalepan.costs import cost
from scalepan.errors import make_error
from scalepan.files import read_text, write_whole
from scalepan.prices import read_prices
from scalepan.recipes import read_recipe

if TYPE_CHECKING:
    from scalepan._core import Costing, PriceBook, Recipe
    from scalepan.files import PathLike

WRITTEN, WANTED = 4, 40
LAST = 60


def demo_files() -> tuple[str, str]:
    """Paths of the demo's recipe and price book."""
    folder = os.path.join(os.path.dirname(__file__), "data", "demo")
    return os.path.join(folder, "fennel_bake.toml"), os.path.join(folder, "prices.csv")


def demo_folder(path: PathLike) -> str:
    """Lays the demo's recipe and price book into a folder, to be looked at and changed there.

    The folder is made where there is none. A file that is there already stays as it is.

    Args:
        path: such as ``"demo"``.

    Returns:
        The path.

    Raises:
        FileError: ``file.unwritable``.
    """
    try:
        os.makedirs(path, exist_ok=True)
    except OSError as problem:
        raise make_error(
            "file.unwritable", f"cannot make the folder: {problem.strerror}", file=str(path)
        ) from None
    for file in demo_files():
        laid = os.path.join(path, os.path.basename(file))
        if not os.path.lexists(laid):
            write_whole(laid, read_text(file))
    return str(path)


def demo_costings() -> tuple[Costing, Costing]:
    """The dish at four portions and at forty."""
    recipe, prices = _read()
    return cost(recipe, prices), cost(recipe.scale(portions=WANTED), prices)


def lines_of_demo(width: int) -> list[str]:
    """What the demo prints."""
    small, large = demo_costings()
    sections = [
        Section(
            "", (Texts(("The night kitchen of a hill-top observatory. All prices are invented.",)),)
        ),
        *report.recipe_sections(small.recipe),
        *report.recipe_sections(large.recipe),
        report.shopping_section(large),
        report.costs_section(large),
        _times_ten(small, large),
        report.notes_section(large.to_check),
        report.cautions_section(large.cautions),
        _after_a_trim(),
    ]
    return report_lines(sections, width)


def draw_curve(path: str) -> None:
    """Costs from 1 to 60 portions as a picture."""
    from scalepan.plots import plot_curve
    from scalepan.plots.pictures import figure_of

    recipe, prices = _read()
    curve = cost(recipe, prices).curve(range(1, LAST + 1))
    whole, *_ = plot_curve(curve, title=f"{recipe.name} (invented prices)")
    figure_of(whole).savefig(path, dpi=110)


def _read() -> tuple[Recipe, PriceBook]:
    recipe, prices = demo_files()
    return read_recipe(recipe), read_prices(prices)


def _times_ten(small: Costing, large: Costing) -> Section:
    factor = WANTED // WRITTEN
    guess = small.till * factor
    rows = [
        (f"till for {WRITTEN}, times {factor}", guess.told_money),
        (f"till for {WANTED}, bought in whole packs", large.till.told_money),
        ("the guess is out by", (guess - large.till).told_money),
        (f"what the {WANTED} really bear", large.borne.told_money),
    ]
    text = "Ten small shops would buy ten oil bottles and ten jars of paprika; one shop buys few."
    title = f'What "the till for {WRITTEN} times {factor}" would have said'
    return Section(title, (Table(("", ""), rows, (1,)), Texts((text,), NOTE)))


def _after_a_trim() -> Section:
    """The dish for forty once more, with an edible share of the kitchen's own."""
    costing = demo_costings()[1]
    before = _figures_of_trim(costing)
    costing.override("fennel.edible", "0.68", why="own trim, 3 cases (invented)")
    after = _figures_of_trim(costing)
    told = ("edible share", "fennel to buy", "packs", "till", "borne")
    rows = list(zip(told, before, after, strict=True))
    ran = [cell for cell in costing.sheet.ran if cell.startswith("fennel.")]
    text = (
        f"Run again: {len(costing.sheet.ran)} of {len(costing.sheet.cells())} cells: "
        f"{', '.join(ran)}, and the totals."
    )
    title = "After a trim test of your own: 68 % of the fennel is edible"
    return Section(title, (Table(("", "before", "after"), rows), Texts((text,), NOTE)))


def _figures_of_trim(costing: Costing) -> list[str]:
    fennel = costing.shopping[0]
    share = costing.explain("fennel.edible").figure
    packs = costing.explain("fennel.packs").figure
    return [share, fennel.need.told, packs, costing.till.told_money, costing.borne.told_money]


def main(arguments: list[str]) -> int:
    """Prints the demo; draws the curve into the file named."""
    print("\n".join(lines_of_demo(terminal_width())))
    for path in arguments:
        draw_curve(path)
        print(f"\nCost curve drawn: {path}")
    return 0


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
