"""A live panel in a notebook: inputs as controls, and the cells that follow from them.

scalepan.panel(costing, inputs=["portions", "leeks.edible"])

Needs anywidget (``pip install scalepan[panel]``), which is loaded when a panel is asked for.
"""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.errors import SheetError

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Costing
    from scalepan.panels.widget import Panel
    from scalepan.sheets import Sheet


def panel(
    of: Sheet | Costing,
    inputs: str | Sequence[str] = "portions",
    cells: str | Sequence[str] | None = None,
) -> Panel:
    """A panel that shows cells live while inputs are changed by hand.

    Each input has a control: a field for an amount as written (with steps where it is a whole
    number), a box for yes or no, a field for a text. One of a cell with a formula overrides it,
    which needs a reason, and releases it. What is refused is told beside the control, and the
    sheet stays as it was. Only what changed is sent to the page.

    Undo takes back the last change of the sheet, once the panel has made one. In a notebook the
    panel follows changes made in cells as soon as these have run; elsewhere ``refresh`` it.

    Args:
        of: a sheet, or a costing, whose notes and cautions are shown too.
        inputs: names of cells.
        cells: names; left out, the costs of a costing, and of a sheet all cells with a formula.

    Raises:
        SheetError: ``panel.missing`` without anywidget; ``sheet.unknown``; ``panel.control`` for
            an input that no control can give; ``panel.many`` for more than 5000 cells.
    """
    try:
        import anywidget  # noqa: F401  it is an extra, and slow to load
    except ImportError:
        message = "a panel needs anywidget, which is not installed"
        raise SheetError("panel.missing", message, "pip install scalepan[panel]") from None
    from scalepan.panels.desk import desk_of
    from scalepan.panels.widget import Panel

    return Panel(desk_of(of, inputs, cells))
