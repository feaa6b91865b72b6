"""Figures, Axes and lists of Axes that a notebook shows as pictures, without pyplot.

Imports matplotlib: to be imported where one is drawn.
"""

from __future__ import annotations

import io

from matplotlib.axes import Axes
from matplotlib.figure import Figure

from scalepan.plots.pictures import figure_of


class ShownFigure(Figure):
    """A figure that shows itself as the last expression of a notebook's cell."""

    def _repr_png_(self) -> bytes:
        return _png(self)


class ShownAxes(Axes):
    """Axes that show their whole figure."""

    def _repr_png_(self) -> bytes:
        return _png(figure_of(self))


class ShownPanels(list[Axes]):
    """Axes from the top down, that show their figure."""

    def _repr_png_(self) -> bytes:
        return _png(figure_of(self[0]))


def _png(figure: Figure) -> bytes:
    stream = io.BytesIO()
    figure.savefig(stream, format="png")
    return stream.getvalue()
