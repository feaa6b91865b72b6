"""An error that ends a cell of a notebook is told in a few lines."""

from __future__ import annotations

import subprocess
import sys

import nbformat
import pytest
import scalepan

RUN = """\
import sys
import nbclient, nbformat
notebook = nbformat.read(sys.argv[1], as_version=4)
nbclient.NotebookClient(notebook, timeout=120, allow_errors=True).execute(cwd=sys.argv[2])
nbformat.write(notebook, sys.argv[1])
"""
CELLS = [
    'import scalepan\npot = \'name = "Pot"\\nserves = 4\\nlines = ["500 g leeks"]\'\n',
    "pot = scalepan.parse_recipe(pot)\npot.scale(40)",
    "def double(amount):\n    return scalepan.quantity(amount) * 2\n\n\ndouble('5 tbps')",
    "import kitchen\nkitchen.stock()",
    "scalepan.Error.whole_traceback = True\nscalepan.quantity('5 tbps')",
    "1 / 0",
]
REST = ["", "All calls on the way: scalepan.Error.whole_traceback = True, then %tb"]


@pytest.fixture(scope="module")
def tracebacks(tmp_path_factory: pytest.TempPathFactory) -> list[list[str]]:
    """Of each cell, as the kernel gives it to a notebook."""
    folder = tmp_path_factory.mktemp("kernel")
    (folder / "kitchen.py").write_text(
        "import scalepan\n\n\ndef stock():\n    return scalepan.read_recipe('stock.toml')\n",
        encoding="utf-8",
    )
    path = folder / "cells.ipynb"
    notebook = nbformat.v4.new_notebook(cells=[nbformat.v4.new_code_cell(cell) for cell in CELLS])
    nbformat.write(notebook, path)
    subprocess.run([sys.executable, "-c", RUN, path, folder], check=True)
    done = nbformat.read(path, as_version=4)
    return [
        next((out.traceback for out in cell.outputs if out.output_type == "error"), [])
        for cell in done.cells
    ]


def test_the_error_its_hint_and_the_line_of_the_cell(tracebacks: list[list[str]]) -> None:
    assert tracebacks[0] == []
    assert tracebacks[1] == [
        "ArgumentError: scale() takes its arguments by name, but is given 1 [argument.by_name]",
        "  write portions=40",
        "",
        "at line 2 of the cell: pot.scale(40)",
        *REST,
    ]


def test_the_last_line_of_ones_own_is_told(tracebacks: list[list[str]]) -> None:
    assert tracebacks[2][0].startswith('MeasureError: unknown unit "tbps"')
    assert tracebacks[2][-3:] == [
        "at line 2 of the cell: return scalepan.quantity(amount) * 2",
        *REST,
    ]
    assert tracebacks[3][-3:] == [
        "at line 5 of kitchen.py: return scalepan.read_recipe('stock.toml')",
        *REST,
    ]


def test_the_whole_is_shown_where_it_is_asked_for(tracebacks: list[list[str]]) -> None:
    whole = "\n".join(tracebacks[4])
    assert "Traceback (most recent call last)" in whole
    assert 'unknown unit "tbps"' in whole
    assert "wrong_arguments.py" in whole
    assert "Traceback (most recent call last)" in "\n".join(tracebacks[5])


def test_what_a_name_holds_does_no_harm() -> None:
    error = scalepan.Error("food.unknown", "no food is called \x1b[31mleeks\u202e")
    shown = error._render_traceback_()
    assert shown[0] == "Error: no food is called \u241b[31mleeks[U+202E] [food.unknown]"
