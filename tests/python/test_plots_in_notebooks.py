"""Plots as a notebook shows them, run in a kernel: what is given back is seen as a picture."""

from __future__ import annotations

import subprocess
import sys
from pathlib import Path

import nbformat
import pytest

pytest.importorskip("matplotlib")

RUN = """\
import sys
import nbclient, nbformat
notebook = nbformat.read(sys.argv[1], as_version=4)
nbclient.NotebookClient(notebook, timeout=300).execute()
nbformat.write(notebook, sys.argv[1])
"""
SETUP = """\
from scalepan import plots
from scalepan.demo import demo_costings
small, large = demo_costings()
"""
CELLS = {
    "axes": "plots.plot_shares(small)",
    "several axes": "plots.plot_curve(large.curve(range(1, 9)))",
    "their figure": "plots.plot_leftovers(small).figure",
    "not the last expression": "kept = plots.plot_leftovers(small)",
    "pyplot": "%matplotlib inline\nimport matplotlib.pyplot as plt",
    "axes of one's own": "figure, axes = plt.subplots()\nplots.plot_shares(small, axes=axes)",
    "after pyplot": "plots.plot_shares(small)",
    "figure after pyplot": "plots.plot_shares(small).figure",
}


@pytest.fixture(scope="module")
def shown(tmp_path_factory: pytest.TempPathFactory) -> dict[str, list[str]]:
    """The kinds of pictures that each cell puts out, by a run in a kernel of its own."""
    path = tmp_path_factory.mktemp("notebook") / "plots.ipynb"
    cells = [nbformat.v4.new_code_cell(code) for code in (SETUP, *CELLS.values())]
    nbformat.write(nbformat.v4.new_notebook(cells=cells), path)
    subprocess.run([sys.executable, "-c", RUN, path], check=True)
    return {
        name: [kind for out in cell.outputs for kind in out.get("data", {}) if "image" in kind]
        for name, cell in zip(CELLS, read(path).cells[1:], strict=True)
    }


def read(path: Path) -> nbformat.NotebookNode:
    return nbformat.read(path, as_version=4)


@pytest.mark.parametrize("cell", sorted(CELLS))
def test_each_plot_is_shown_once_and_only_when_asked_for(
    cell: str, shown: dict[str, list[str]]
) -> None:
    nothing = cell in ("not the last expression", "pyplot")
    assert shown[cell] == ([] if nothing else ["image/png"])
