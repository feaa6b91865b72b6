"""Pages that the repository has by hand, brought to the site: only their links change."""

from __future__ import annotations

import json
import os
import re
from pathlib import Path

from docs_site.api import ROOT

# Where a file of the repository stands on the site.
PLACES = {
    "README.md": "overview.md",
    "DEVELOPERS.md": "contributing.md",
    "CHANGELOG.md": "changelog.md",
    "data-sources/README.md": "food_data.md",
    "docs/errors": "errors/index.md",
    "docs/notebooks": "notebooks.md",
    "docs/notebooks/rendered": "notebooks.md",
}
PICTURES = (".png", ".svg")
LINK = re.compile(r"\[([^\]]+)\]\((?!https?:|#|mailto:)([^)\s#]+)(#[^)\s]*)?\)")
# Pages in the order they are read; those that are not named come behind, by name.
HOW_TO = (
    "recipes",
    "buying",
    "dishes",
    "command_line",
    "printed_pages",
    "costing_sheets",
    "sheets",
    "formulas",
    "sheet_studies",
    "panels",
    "files_and_frames",
    "json",
)
BY_THEMSELVES = ("index", "tutorial", "words", "how_tested")


def by_hand() -> dict[str, Path]:
    """Each page of the site that is written by hand, with its file."""
    pages = {PLACES[name]: ROOT / name for name in PLACES if name.endswith(".md")}
    return pages | {path.name: path for path in sorted((ROOT / "docs").glob("*.md"))}


def how_to() -> list[str]:
    """The names of the how-to pages, in their order."""
    names = {path.stem for path in (ROOT / "docs").glob("*.md")} - set(BY_THEMSELVES)
    return [name for name in HOW_TO if name in names] + sorted(names - set(HOW_TO))


def pictures() -> list[Path]:
    """What pages show."""
    return [path for path in sorted((ROOT / "docs").iterdir()) if path.suffix in PICTURES]


def as_they_are() -> dict[str, Path]:
    """What is no page of the site's own making, by its place: notebooks' pages, data."""
    notebooks = sorted((ROOT / "docs" / "notebooks" / "rendered").glob("*.html"))
    others = [path for path in sorted((ROOT / "docs").iterdir()) if path.is_file()]
    others = [path for path in others if path.suffix not in (".md", *PICTURES)]
    return {f"notebooks/{path.name}": path for path in notebooks} | {
        path.name: path for path in others
    }


def place_of(path: Path) -> str:
    """Where a file of the repository stands on the site.

    Raises LookupError for one that the site does not have.
    """
    name = path.relative_to(ROOT).as_posix()
    if name in PLACES:
        return PLACES[name]
    if path.parent == ROOT / "docs" and path.is_file():
        return path.name
    if path.suffix == ".ipynb" and rendered(path).is_file():
        return f"notebooks/{path.stem}.html"
    raise LookupError(f"the site has no page of {name}")


def rendered(notebook: Path) -> Path:
    """What a notebook shows, as a page."""
    return notebook.parent / "rendered" / f"{notebook.stem}.html"


def with_links_of_the_site(text: str, path: Path) -> str:
    """The text of a file with its links led to the pages of the site."""

    def led(found: re.Match[str]) -> str:
        place = place_of(Path(os.path.normpath(path.parent / found[2])))
        if Path(place).suffix not in (".md", *PICTURES):
            return f'<a href="{place}">{found[1]}</a>'
        return f"[{found[1]}]({place}{found[3] or ''})"

    return LINK.sub(led, text)


def notebooks_page() -> str:
    """The notebooks, each with what it begins with."""
    rows = []
    for path in sorted((ROOT / "docs" / "notebooks").glob("*.ipynb")):
        cells = json.loads(path.read_text(encoding="utf-8"))["cells"]
        first = "".join(cells[0]["source"]).strip().split("\n")
        title = first[0].lstrip("# ")
        said = next((line for line in first[1:] if line), "")
        rows.append(f'| <a href="notebooks/{path.stem}.html">{title}</a> | {said} |')
    table = "\n".join(rows)
    return f"""# Notebooks

Each tells one job as it is done. They lie in `docs/notebooks`, are run by the tests, and these
pages show what they show.

| notebook | what it does |
|---|---|
{table}
"""
