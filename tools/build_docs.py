#!/usr/bin/env python3
"""Build the documentation site, from the pages in docs, the docstrings and the errors' tables.

    build_docs.py [FOLDER]    into FOLDER, or build/docs/site

Needs the dependency group docs and the installed package, whose examples it runs. Nothing is
fetched, neither here nor by the pages.
"""

from __future__ import annotations

import shutil
import subprocess
import sys
from pathlib import Path

from docs_site import error_pages, error_texts, pages, reference, sources
from docs_site.api import ROOT

CONTENTS = {
    "Start": ["tutorial", "Overview <overview>", "words"],
    "How to": [*pages.how_to(), "notebooks"],
    "Reference": ["reference/index", "errors/index", "sources", "food_data"],
    "The project": ["how_tested", "changelog", "contributing"],
}


def write_source(folder: Path) -> None:
    """All pages of the site, as Sphinx reads them."""
    shutil.rmtree(folder, ignore_errors=True)
    for name in ("errors", "reference", "as_they_are/notebooks"):
        (folder / name).mkdir(parents=True)
    for place, path in pages.by_hand().items():
        text = pages.with_links_of_the_site(path.read_text(encoding="utf-8"), path)
        _write(folder / place, text + (_contents() if place == "index.md" else ""))
    _write(folder / "notebooks.md", pages.notebooks_page())
    _write(folder / "sources.md", sources.page())
    for picture in pages.pictures():
        shutil.copy(picture, folder)
    for place, path in pages.as_they_are().items():
        shutil.copy(path, folder / "as_they_are" / place)
    _write_errors(folder / "errors")
    _write_reference(folder / "reference")


def _write_errors(folder: Path) -> None:
    examples = error_pages.examples()
    for one in examples:
        shown, mended = error_pages.run(one), error_pages.run(one, mended=True)
        _write(folder / f"{one.code}.md", error_texts.page_of(one, shown, mended))
    _write(folder / "index.md", error_texts.index_page(examples, error_pages.subjects()))


def _write_reference(folder: Path) -> None:
    codes = {one.code for one in error_pages.examples()}
    groups = reference.groups()
    for group in groups:
        _write(folder / f"{group.page}.md", reference.page_of(group, codes))
    _write(folder / "index.md", reference.index_page(groups))


def _contents() -> str:
    return "".join(
        f"\n```{{toctree}}\n:hidden:\n:caption: {caption}\n\n{chr(10).join(names)}\n```\n"
        for caption, names in CONTENTS.items()
    )


def _write(path: Path, text: str) -> None:
    path.write_text(text, encoding="utf-8")


def main(site: Path) -> int:
    """The exit status of Sphinx; a warning is an error."""
    source = ROOT / "build" / "docs" / "source"
    write_source(source)
    command = [sys.executable, "-m", "sphinx", "--fail-on-warning", "--keep-going", "--quiet"]
    settings = [
        "-c",
        str(ROOT / "docs" / "site"),
        "-d",
        str(source.parent / "doctrees"),
        "-j",
        "auto",
    ]
    return subprocess.run([*command, *settings, source, site], check=False).returncode


if __name__ == "__main__":
    sys.exit(main(Path(sys.argv[1]) if len(sys.argv) > 1 else ROOT / "build" / "docs" / "site"))
