"""Plots with matplotlib, imported only when one is drawn (``pip install scalepan[plot]``).

Each function draws into ``axes=`` where they are given, else into a figure of its own, and gives
the Axes back: one, or a list from the top down where there are several panels. A notebook shows
what is given back as a picture; ``axes.figure.savefig(path)`` writes it. None shows a window, and
none changes a setting of matplotlib. Text, lines and ground have the colours of the style in force
when it is drawn, so ``with matplotlib.style.context("dark_background"):`` draws on dark; the ground
is not transparent, so that a picture can be read on any page.

Floats are made for drawing only; every figure told in a picture is exact, or marked as rounded.

Raises PlotError: ``plot.library`` without matplotlib, ``plot.axes`` where the axes given are not as
many as the panels, ``plot.too_large`` for figures beyond drawing.
"""

from scalepan.plots.curves import plot_curve
from scalepan.plots.leftovers import plot_leftovers
from scalepan.plots.shares import plot_shares
from scalepan.plots.sweeps import plot_sweep
from scalepan.plots.trials import plot_trials
from scalepan.plots.variants import plot_variants

__all__ = [
    "plot_curve",
    "plot_leftovers",
    "plot_shares",
    "plot_sweep",
    "plot_trials",
    "plot_variants",
]
