"""Notebooks run and are kept without outputs; their pages show what they show today."""

from __future__ import annotations

import importlib.util
import re
from functools import cache
from html.parser import HTMLParser
from pathlib import Path
from typing import Any

import nbformat
import pytest

ROOT = Path(__file__).resolve().parents[2]
NOTEBOOKS = sorted((ROOT / "docs" / "notebooks").glob("*.ipynb"))
OWN = {name: f"my own {name}" for name in ("prices.csv", "fennel_bake.toml", "open_night.toml")}
PICTURE = re.compile(r'src="data:image/png;base64,[^"]*"')


def _renderer() -> Any:
    path = ROOT / "tools" / "render_notebooks.py"
    spec = importlib.util.spec_from_file_location("render_notebooks", path)
    assert spec is not None
    assert spec.loader is not None
    module = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(module)
    return module


RENDERER = _renderer()


@cache
def run(name: str, folder: Path) -> nbformat.NotebookNode:
    return RENDERER.executed(ROOT / "docs" / "notebooks" / f"{name}.ipynb", folder)


@pytest.fixture(scope="session")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Where the notebooks run, with files of one's own under names that theirs have too."""
    made = tmp_path_factory.mktemp("notebooks")
    for name, text in OWN.items():
        (made / name).write_text(text, encoding="utf-8")
    return made


def outputs(notebook: nbformat.NotebookNode) -> list[nbformat.NotebookNode]:
    return [out for cell in notebook.cells if cell.cell_type == "code" for out in cell.outputs]


def test_there_are_notebooks() -> None:
    assert [notebook.stem for notebook in NOTEBOOKS] == [
        "cost_curves",
        "four_to_forty",
        "many_costings",
        "one_till",
        "packs_and_leftovers",
        "what_if",
        "where_floats_go_wrong",
        "yield_study",
    ]


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_no_output_is_kept(path: Path) -> None:
    notebook = nbformat.read(path, as_version=4)
    code = [cell for cell in notebook.cells if cell.cell_type == "code"]
    assert [cell.outputs for cell in code] == [[]] * len(code)
    assert {cell.execution_count for cell in code} == {None}


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_the_page_shown_is_what_the_notebook_shows_today(path: Path, folder: Path) -> None:
    """All but the dots of its pictures, which differ from one drawing library to the next."""
    shown = (path.parent / "rendered" / f"{path.stem}.html").read_text(encoding="utf-8")
    today = RENDERER.page_of(path.stem, run(path.stem, folder))
    assert PICTURE.sub("", today) == PICTURE.sub("", shown), "run tools/render_notebooks.py"
    assert len(PICTURE.findall(today)) == len(PICTURE.findall(shown))


class Reached(HTMLParser):
    """What a page would run or fetch."""

    def __init__(self) -> None:
        super().__init__()
        self.found: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        if tag in ("script", "link", "iframe"):
            self.found.append(tag)
        for name, value in attrs:
            reaches = name in ("src", "href") and not (value or "").startswith(("data:", "#"))
            if reaches or name.startswith("on"):
                self.found.append(f"{tag} {name}={value}")


@pytest.mark.parametrize("path", NOTEBOOKS, ids=lambda path: path.stem)
def test_the_page_shown_runs_and_fetches_nothing(path: Path) -> None:
    reached = Reached()
    reached.feed((path.parent / "rendered" / f"{path.stem}.html").read_text(encoding="utf-8"))
    assert reached.found == []


def test_floats_are_counted_wrong_and_the_picture_is_drawn(folder: Path) -> None:
    """The notebook itself checks every exact point against fractions."""
    found = outputs(run("where_floats_go_wrong", folder))
    printed = "".join(out.text for out in found if out.output_type == "stream")
    assert "70 portions: 3 packs, in floats 4\n71 portions: 4 packs, in floats 4\n" in printed
    counts = dict(re.findall(r"^(\w+): (\d+) of 40000 points wrong$", printed, re.MULTILINE))
    assert counts["scalepan"] == "0"
    assert int(counts["by_portion"]) > int(counts["one_by_one"]) > 0
    assert any("image/png" in out.get("data", {}) for out in found)


def test_files_of_ones_own_beside_the_notebooks_are_let_be(folder: Path) -> None:
    """Whatever a notebook writes goes into its folder ``demo``."""
    for path in NOTEBOOKS:
        run(path.stem, folder)
    assert {name: (folder / name).read_text(encoding="utf-8") for name in OWN} == OWN
    beside = {path.name for path in folder.iterdir() if path.suffix != ".ipynb"}
    assert beside == {"demo", *OWN}


def test_the_page_of_the_notebooks_links_each_with_what_it_shows() -> None:
    page = (ROOT / "docs" / "notebooks" / "README.md").read_text(encoding="utf-8")
    numbered = re.findall(
        r"^(\d)\. \[(\w+)\.ipynb\]\(\2\.ipynb\): .*\(rendered/\2\.html\)\)$", page, re.M
    )
    assert [int(number) for number, _ in numbered] == list(range(1, len(NOTEBOOKS) + 1))
    assert sorted(name for _, name in numbered) == [notebook.stem for notebook in NOTEBOOKS]
    readme = (ROOT / "README.md").read_text(encoding="utf-8")
    linked = set(re.findall(r"\(docs/notebooks/(\w+\.ipynb)\)", readme))
    assert linked == {notebook.name for notebook in NOTEBOOKS}
