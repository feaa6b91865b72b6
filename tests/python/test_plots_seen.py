"""Every plot, looked at: its ink, its edges, its letters, on light and on dark ground.

The setting and all prices are invented.
"""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable, Iterator
from typing import Any

import pytest
import scalepan

pytest.importorskip("matplotlib")

import matplotlib
import matplotlib.pyplot as plt
import matplotlib.style
from picture import contrast, has_clear_border, ink, overlapping, pixels, texts, whole
from plotted import compared, costing, swept, trials
from scalepan import plots
from scalepan.plots.colours import AMBER, BLUE, CYCLE, GREEN, ORANGE, PURPLE, SKY

GROUNDS = {"light": ("default", "white"), "dark": ("dark_background", "black")}
# Each with the colours that must be there.
PLOTS: dict[str, tuple[Callable[..., Any], set[str]]] = {
    "curve": (
        lambda **given: plots.plot_curve(costing().curve(range(1, 41)), **given),
        {ORANGE, BLUE, GREEN},
    ),
    "shares": (lambda **given: plots.plot_shares(costing(), **given), {GREEN, PURPLE}),
    "leftovers": (lambda **given: plots.plot_leftovers(costing(), **given), {SKY, PURPLE}),
    "trials": (
        lambda **given: plots.plot_trials(trials(), **given),
        {BLUE, ORANGE, GREEN, PURPLE},
    ),
    "variants": (lambda **given: plots.plot_variants(compared(), **given), {BLUE, ORANGE}),
    "sweep": (lambda **given: plots.plot_sweep(swept(), **given), {BLUE, ORANGE}),
}


@pytest.fixture(params=sorted(PLOTS))
def plot(request: pytest.FixtureRequest) -> tuple[Callable[..., Any], set[str]]:
    return PLOTS[request.param]


@pytest.fixture(params=sorted(GROUNDS))
def ground(request: pytest.FixtureRequest) -> Iterator[str]:
    """Drawn under the style, looked at when it is no longer in force."""
    style, colour = GROUNDS[request.param]
    matplotlib.style.use("default")
    with matplotlib.style.context(style):
        yield colour


def test_every_plot_is_whole_on_light_and_dark_ground(
    plot: tuple[Callable[..., Any], set[str]], ground: str
) -> None:
    draw, colours = plot
    figure = whole(draw(title="Swede and barley pot (invented prices)"))
    with matplotlib.style.context("default"):
        image = pixels(figure)
        assert {colour: ink(image, colour) for colour in colours if ink(image, colour) < 20} == {}
        assert has_clear_border(image, ground)
        assert ink(image, ground) > image.shape[0] * image.shape[1] / 3
        assert overlapping(figure) == []
        seen = texts(figure)
        assert len(seen) > 10
        assert [t.get_text() for t in seen if contrast(t.get_color(), ground) < 4.5] == []
        inside = figure.bbox
        assert [t.get_text() for t in seen if not _is_inside(t.get_window_extent(), inside)] == []


def _is_inside(box: Any, outer: Any) -> bool:
    return box.x0 >= outer.x0 and box.y0 >= outer.y0 and box.x1 <= outer.x1 and box.y1 <= outer.y1


@pytest.mark.parametrize("paper", ["white", "black"])
def test_what_is_drawn_stands_out_from_the_ground(paper: str) -> None:
    """Amber and sky are for areas and later lines: on white they are pale, yet seen."""
    assert {c for c in CYCLE if contrast(c, paper) < 3} <= {AMBER, SKY, PURPLE}
    assert min(contrast(c, paper) for c in CYCLE) > 2


@pytest.mark.parametrize(
    "name",
    [
        "$x_1$ 50 % \\frac{1}{2} _under_ ^up^",
        "$",
        "$\\nosuchmacro{$",
        "x" * 300,
        "leek \N{LEAFY GREEN} \U0001f469\N{ZERO WIDTH JOINER}\U0001f373",
        "\N{HEBREW LETTER SHIN}\N{HEBREW LETTER VAV}\N{HEBREW LETTER MEM} "
        "\N{RIGHT-TO-LEFT OVERRIDE}backwards",
        "line\nbreak\tand \x07 bell",
        "\u6d0b\u8471" * 20,
        "e" + "\N{COMBINING ACUTE ACCENT}" * 30,
        "<b>bold</b> & \\alpha \ud800",
        "",
    ],
    ids=ascii,
)
def test_a_hostile_name_is_drawn_as_it_is_written(name: str, ground: str) -> None:
    """In titles and names; that nothing warns is what is tested most."""
    comparison = compared(name)
    test = trials()._replace(food=name.encode(errors="ignore").decode())
    for drawn in (
        plots.plot_shares(costing(), title=name),
        plots.plot_variants(comparison, title=name),
        plots.plot_trials(test, title=name),
    ):
        figure = whole(drawn)
        assert has_clear_border(pixels(figure), ground)
        assert overlapping(figure) == []


@pytest.mark.parametrize("item", ["leeks_of_the_dome", "leeks " + "of the upper terraces " * 9])
def test_a_hostile_item_is_drawn_by_every_plot_of_a_costing(item: str, ground: str) -> None:
    text = 'name = "Pot"\nserves = 4\nlines = ["5 ' + item + '"]'
    prices = f"item,sold_as,pack,price,currency,keeps\n{item},AP,3,1.20,GBP,no\n"
    pot = scalepan.cost(scalepan.parse_recipe(text), scalepan.parse_prices(prices))
    assert pot.unpriced == []
    for drawn in (
        plots.plot_curve(pot.curve(range(1, 9))),
        plots.plot_shares(pot),
        plots.plot_leftovers(pot),
    ):
        figure = whole(drawn)
        assert has_clear_border(pixels(figure), ground)
        shown = [text.get_text() for text in texts(figure)]
        assert item in shown or any("…" in one and one.startswith("leeks of") for one in shown)


def test_a_small_figure_of_ones_own_is_drawn_into() -> None:
    figure, axes = plt.subplots(figsize=(8, 5), layout="constrained")
    assert plots.plot_shares(costing(), axes=axes) is axes
    assert has_clear_border(pixels(figure), "white")
    assert overlapping(figure) == []
    plt.close(figure)


def test_axes_in_any_arrangement_are_drawn_into() -> None:
    figure, grid = plt.subplots(2, 2)
    drawn = plots.plot_curve(costing().curve(range(1, 9)), axes=grid.flat[:3])
    assert drawn == list(grid.flat[:3])
    plt.close(figure)


@pytest.mark.parametrize(
    ("axes", "message"),
    [
        (1, "axes= is given a int, which is no matplotlib Axes (give what plt.subplots gives,"),
        ("x", "axes= is given a str, which is no matplotlib Axes (give what plt.subplots gives,"),
        ([], "a curve has 3 panels, and axes= gives 0 (give 3, from the top down,"),
    ],
)
def test_axes_that_do_not_fit_are_refused(axes: Any, message: str) -> None:
    with pytest.raises(scalepan.PlotError) as caught:
        plots.plot_curve(costing().curve(range(1, 9)), axes=axes)
    assert caught.value.code == "plot.axes"
    assert str(caught.value) == f"{message} or none)"


def test_two_axes_for_one_panel_are_refused() -> None:
    figure, axes = plt.subplots(2)
    with pytest.raises(scalepan.PlotError) as caught:
        plots.plot_shares(costing(), axes=axes)
    assert str(caught.value) == (
        "a plot of shares has 1 panel, and axes= gives 2 (give 1, from the top down, or none)"
    )
    plt.close(figure)


def test_no_setting_is_changed_and_no_window_is_known(
    plot: tuple[Callable[..., Any], set[str]],
) -> None:
    before = dict(matplotlib.rcParams)
    pixels(whole(plot[0]()))
    assert dict(matplotlib.rcParams) == before
    assert plt.get_fignums() == []


LAZY = """
import sys
import scalepan.plots
from scalepan.demo import demo_costings
assert "matplotlib" not in sys.modules
axes = scalepan.plots.plot_shares(demo_costings()[0])
axes.figure.savefig(sys.argv[1])
assert "matplotlib.figure" in sys.modules and "matplotlib.pyplot" not in sys.modules
"""


def test_matplotlib_is_imported_when_one_draws_and_pyplot_never(tmp_path: Any) -> None:
    picture = tmp_path / "shares.png"
    subprocess.run([sys.executable, "-W", "error", "-c", LAZY, str(picture)], check=True)
    assert picture.read_bytes().startswith(b"\x89PNG")


def test_without_matplotlib_there_is_one_clear_error(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setitem(sys.modules, "matplotlib.layout_engine", None)
    with pytest.raises(scalepan.PlotError) as caught:
        plots.plot_shares(costing())
    assert caught.value.code == "plot.library"
    assert str(caught.value) == "drawing needs matplotlib (pip install scalepan[plot])"


@pytest.mark.parametrize("fonts", ["serif", "monospace"])
def test_other_fonts_are_looked_through_for_signs(fonts: str) -> None:
    with matplotlib.rc_context({"font.family": [fonts, "no such family"]}):
        figure = whole(plots.plot_shares(costing(), title="a \N{LEAFY GREEN} b"))
        assert has_clear_border(pixels(figure), "white")
        assert any(text.get_text().startswith("a □ b\n") for text in texts(figure))
