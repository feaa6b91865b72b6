"""Where a plot is drawn: into axes given, or into a figure of its own."""

from __future__ import annotations

from collections.abc import Iterable
from fractions import Fraction
from typing import TYPE_CHECKING

from scalepan import _core
from scalepan.errors import make_error
from scalepan.plots.lettering import NOTE_WIDTH, as_written, lettered, note

if TYPE_CHECKING:
    from collections.abc import Sequence
    from typing import TypeAlias

    from matplotlib.axes import Axes
    from matplotlib.figure import Figure

    from scalepan._core import Quantity

    # One, or several in any arrangement that can be gone through, such as those of `subplots`.
    GivenAxes: TypeAlias = Axes | Iterable[Axes] | None

WIDTH = 8
ROW_HEIGHT = 0.3
_PAD = 0.1
_MOST_TIMES = 20
_MOST = Fraction(10) ** 100


def panels(
    given: GivenAxes, heights: Sequence[float], *, share_x: bool = False, what: str = "the plot"
) -> list[Axes]:
    """As many axes as there are heights, in inches, from the top down.

    Raises PlotError: ``plot.library``, ``plot.axes``.
    """
    try:
        from matplotlib.layout_engine import ConstrainedLayoutEngine

        from scalepan.plots.shown import ShownAxes, ShownFigure, ShownPanels
    except ImportError:
        hint = "pip install scalepan[plot]"
        raise make_error("plot.library", "drawing needs matplotlib", hint) from None
    if given is not None:
        return _as_many(given, len(heights), what)
    figure = ShownFigure(
        figsize=(WIDTH, sum(heights)), layout=ConstrainedLayoutEngine(w_pad=_PAD, h_pad=_PAD)
    )
    grid = figure.add_gridspec(len(heights), 1, height_ratios=heights)
    drawn = ShownPanels()
    for row in range(len(heights)):
        above = drawn[0] if share_x and drawn else None
        drawn.append(figure.add_subplot(grid[row], axes_class=ShownAxes, sharex=above))
    if share_x:
        for axes in drawn[:-1]:
            axes.tick_params(axis="x", labelbottom=False)
    return drawn


def one_panel(given: GivenAxes, height: float, what: str) -> Axes:
    return panels(given, [height], what=what)[0]


def share_a_scale(sizes: Iterable[Fraction]) -> bool:
    """Whether nothing is so many times another that nothing is to be seen of the smaller."""
    seen = [size for size in sizes if size]
    return not seen or max(seen) <= _MOST_TIMES * min(seen)


def to_draw(figure: Fraction) -> float:
    """Near enough for a drawing. Raises PlotError (``plot.too_large``)."""
    if abs(figure) > _MOST:
        told = f"a figure of {len(str(abs(int(figure))))} digits"
        raise make_error("plot.too_large", f"{told} is beyond what a plot can show")
    return float(figure)


def number_in(amount: Quantity, unit: str) -> Fraction:
    """How many of the unit; a plain number may have none."""
    if amount.unit == unit:
        return amount.value
    return amount.to(unit).value if unit else amount.to("%").value / 100


def ink() -> str:
    """The colour of text in force."""
    from matplotlib import rcParams

    return str(rcParams["text.color"])


def figure_of(axes: Axes) -> Figure:
    """The whole figure, of which they may stand in a part."""
    from matplotlib.figure import Figure

    part = axes.figure
    while not isinstance(part, Figure):
        part = part.figure
    return part


def money(amount: Fraction, currency: str) -> str:
    """For people, to the smallest unit of the currency."""
    return _core.quantity(amount, currency).told_money


def in_unit(what: str, unit: str) -> str:
    """A label of an axis; XXX stands for no currency."""
    return f"{what} ({unit})" if unit and unit != "XXX" else what


def named_x(axes: Axes, label: str) -> None:
    as_written([axes.set_xlabel(lettered(label, 80))])


def named_y(axes: Axes, label: str) -> None:
    as_written([axes.set_ylabel(lettered(label, 40))])


def headed(axes: Axes, title: str, said: str = "", *, room: float = 0) -> None:
    """The title, below it what the picture has to say; ``room`` points stay free below both."""
    from matplotlib import rcParams

    size, width = ("medium", NOTE_WIDTH) if said else ("large", NOTE_WIDTH * 4 // 5)
    told = "\n".join(part for part in (note(title, width), note(said)) if part)
    pad = rcParams["axes.titlepad"] + room
    as_written([axes.set_title(told, loc="left", fontsize=size, pad=pad)])


def finish(axes: Axes, grid: str = "both") -> None:
    """Plain spines, a light grid below the drawing, numbers in full."""
    from matplotlib.ticker import ScalarFormatter

    axes.spines[["top", "right"]].set_visible(False)
    axes.set_axisbelow(True)
    axes.grid(visible=True, axis=grid, alpha=0.3)  # type: ignore[arg-type]
    for axis in (axes.xaxis, axes.yaxis):
        formatter = axis.get_major_formatter()
        if isinstance(formatter, ScalarFormatter):
            formatter.set_useOffset(False)
            formatter.set_powerlimits((-4, 9))


def nothing_drawn(axes: Axes, why: str) -> None:
    """Says why there is nothing to see."""
    axes.set_axis_off()
    as_written([axes.text(0.5, 0.5, note(why), transform=axes.transAxes, ha="center", va="center")])


def _as_many(given: Axes | Iterable[Axes], wanted: int, what: str) -> list[Axes]:
    drawn = _flat(given)
    if len(drawn) != wanted:
        message = f"{what} has {_told(wanted)}, and axes= gives {len(drawn)}"
        raise make_error("plot.axes", message, f"give {wanted}, from the top down, or none")
    return drawn


def _told(panel_count: int) -> str:
    return f"{panel_count} panel{'' if panel_count == 1 else 's'}"


def _flat(given: Axes | Iterable[object]) -> list[Axes]:
    from matplotlib.axes import Axes

    if isinstance(given, Axes):
        return [given]
    if not isinstance(given, Iterable) or isinstance(given, str):
        message = f"axes= is given a {type(given).__name__}, which is no matplotlib Axes"
        raise make_error("plot.axes", message, "give what plt.subplots gives, or none")
    return [axes for part in given for axes in _flat(part)]  # type: ignore[arg-type]
