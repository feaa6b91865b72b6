"""Notebooks run from top to bottom, and are kept without what they print."""

from __future__ import annotations

import re
import subprocess
import sys
from pathlib import Path

import nbformat
import pytest

FOLDER = Path(__file__).resolve().parents[2] / "docs" / "notebooks"
NOTEBOOKS = sorted(FOLDER.glob("*.ipynb"))
RUN = """\
import sys
import nbclient, nbformat
notebook = nbformat.read(sys.argv[1], as_version=4)
nbclient.NotebookClient(notebook, timeout=300).execute(cwd=sys.argv[3])
nbformat.write(notebook, sys.argv[2])
"""


def run(notebook: Path, folder: Path) -> nbformat.NotebookNode:
    """In a process of its own, since the kernel's libraries warn of their own affairs."""
    done = folder / notebook.name
    subprocess.run([sys.executable, "-c", RUN, notebook, done, folder], check=True)
    return nbformat.read(done, as_version=4)


def outputs(notebook: nbformat.NotebookNode) -> list[nbformat.NotebookNode]:
    return [out for cell in notebook.cells if cell.cell_type == "code" for out in cell.outputs]


def test_there_are_notebooks() -> None:
    assert [notebook.name for notebook in NOTEBOOKS] == ["where_floats_go_wrong.ipynb"]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_no_output_is_kept(path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    code = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert [cell.outputs for cell in code] == [[]] * len(code)
    assert {cell.execution_count for cell in code} == {None}


def test_floats_are_counted_wrong_and_the_picture_is_drawn(tmp_path: Path) -> None:
    """The notebook itself checks every exact point against fractions."""
    found = outputs(run(FOLDER / "where_floats_go_wrong.ipynb", tmp_path))
    printed = "".join(out.text for out in found if out.output_type == "stream")
    assert "70 portions: 3 packs, in floats 4\n71 portions: 4 packs, in floats 4\n" in printed
    counts = dict(re.findall(r"^(\w+): (\d+) of 40000 points wrong$", printed, re.MULTILINE))
    assert counts["scalepan"] == "0"
    assert int(counts["by_portion"]) > int(counts["one_by_one"]) > 0
    assert any("image/png" in out.get("data", {}) for out in found)
