"""What is to be seen in a plot: its pixels, its texts, and whether they are all there."""

from __future__ import annotations

import io
import itertools
from collections.abc import Iterable
from typing import Any

import numpy as np
from matplotlib.axes import Axes
from matplotlib.colors import to_rgb
from matplotlib.figure import Figure
from matplotlib.image import imread
from matplotlib.text import Text
from matplotlib.transforms import Bbox


def whole(drawn: Axes | Iterable[Axes]) -> Figure:
    axes = drawn if isinstance(drawn, Axes) else next(iter(drawn))
    assert isinstance(axes.figure, Figure)
    return axes.figure


def pixels(figure: Figure) -> Any:
    """Rows, columns and red, green and blue from 0 to 1, as it would be written."""
    stream = io.BytesIO()
    figure.savefig(stream, format="png")
    stream.seek(0)
    return imread(stream)[..., :3]


def ink(image: Any, colour: str) -> int:
    """How many pixels are of a colour, or nearly so at the edge of a thin line."""
    return int((np.abs(image - to_rgb(colour)).max(axis=2) < 0.12).sum())


def has_clear_border(image: Any, ground: str) -> bool:
    """Whether nothing touches the edges, where it would be cut off."""
    edges = (image[:3], image[-3:], image[:, :3], image[:, -3:])
    return all(bool((np.abs(edge - to_rgb(ground)) < 0.02).all()) for edge in edges)


def texts(figure: Figure) -> list[Text]:
    """All that are seen; the figure must have been written.

    Ticks beyond the limits, and those of axes switched off, are kept but not drawn.
    """
    hidden: set[int] = set()
    for axes in figure.findobj(Axes):
        assert isinstance(axes, Axes)
        for axis in (axes.xaxis, axes.yaxis):
            drawn = axis._update_ticks() if axes.axison else []  # type: ignore[attr-defined]
            kept = [tick for tick in (*axis.majorTicks, *axis.minorTicks) if tick not in drawn]
            hidden |= {id(label) for tick in kept for label in (tick.label1, tick.label2)}
            if not axes.axison:
                hidden |= {id(axis.label)}
    found = [text for text in figure.findobj(Text) if isinstance(text, Text)]
    seen = [text for text in found if text.get_visible() and id(text) not in hidden]
    return [text for text in seen if text.get_text().strip()]


def overlapping(figure: Figure) -> list[tuple[str, str]]:
    """Texts that run into each other."""
    boxes = [(text.get_text(), text.get_window_extent()) for text in texts(figure)]
    pairs = itertools.combinations(boxes, 2)
    return [(a, b) for (a, one), (b, other) in pairs if _meet(one, other)]


def _meet(one: Bbox, other: Bbox) -> bool:
    common = Bbox.intersection(one, other)
    return common is not None and common.width > 1 and common.height > 1


def contrast(colour: str, ground: str) -> float:
    """By WCAG 2.2, success criterion 1.4.3: of text at least 4.5, of what is drawn 3."""
    light, dark = sorted((_luminance(colour), _luminance(ground)), reverse=True)
    return (light + 0.05) / (dark + 0.05)


def _luminance(colour: Any) -> float:
    linear = [c / 12.92 if c <= 0.04045 else ((c + 0.055) / 1.055) ** 2.4 for c in to_rgb(colour)]
    return float(np.dot(linear, (0.2126, 0.7152, 0.0722)))
