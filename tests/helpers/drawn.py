"""What a plot has drawn, read back from matplotlib's own objects."""

from __future__ import annotations

from typing import Any

import pytest
from matplotlib.axes import Axes
from matplotlib.colors import same_color


def floats(figures: Any) -> list[float]:
    return [float(figure) for figure in figures]


def near(figures: Any) -> Any:
    """Sums of floats on the way may move the last digit."""
    return pytest.approx(floats(figures), rel=1e-12, abs=1e-12)


def labels(axes: Axes) -> list[tuple[str, str]]:
    """Names on the left with the figures on the right."""
    (column,) = axes.child_axes
    left = [label.get_text() for label in axes.get_yticklabels()]
    right = [label.get_text() for label in column.get_yticklabels()]  # type: ignore[attr-defined]
    return list(zip(left, right, strict=True))


def bars(axes: Axes, colour: str) -> list[tuple[float, float, float]]:
    """Row, start and length of the bars of a colour, from the top."""
    found = [
        (bar.get_y() + bar.get_height() / 2, bar.get_x(), bar.get_width())
        for container in axes.containers
        for bar in container
        if same_color(bar.get_facecolor(), colour)
    ]
    return sorted(found)


def stairs(axes: Axes, colour: str) -> tuple[list[float], list[float]]:
    """Heights and turns of the steps of a colour."""
    for patch in axes.patches:
        if same_color(patch.get_edgecolor(), colour):
            values, turns, _ = patch.get_data()  # type: ignore[attr-defined]
            return list(values), list(turns)
    raise AssertionError(f"no steps in {colour}")


def dots(axes: Axes, colour: str, marker: str) -> list[tuple[float, float]]:
    for line in axes.lines:
        if same_color(line.get_color(), colour) and line.get_marker() == marker:
            return list(zip(line.get_xdata(), line.get_ydata(), strict=True))
    raise AssertionError(f"no {marker} in {colour}")


def said(axes: Axes) -> str:
    return axes.get_title(loc="left")
