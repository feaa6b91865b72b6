"""The site that `make docs` builds: without a warning, without a request, every link leads."""

from __future__ import annotations

import importlib.util
import subprocess
import sys
from dataclasses import dataclass, field
from html.parser import HTMLParser
from pathlib import Path
from urllib.parse import unquote, urlsplit

import pytest
from docs_site.error_pages import examples
from docs_site.reference import full_name, groups
from docs_site.sources import TABLES, publication_of, publications, sources
from markdown_pages import ROOT

NEEDED = ("sphinx", "myst_parser", "furo", "matplotlib", "anywidget")
LOADED = {("link", "href"), ("script", "src"), ("img", "src"), ("source", "src")}


@dataclass
class Page(HTMLParser):
    """Links, anchors and what is loaded of one page."""

    links: list[str] = field(default_factory=list)
    anchors: set[str] = field(default_factory=set)
    loaded: list[str] = field(default_factory=list)
    text: list[str] = field(default_factory=list)

    def __post_init__(self) -> None:
        super().__init__()

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        given = {name: value or "" for name, value in attrs}
        self.anchors |= {given[name] for name in ("id", "name") if name in given}
        if tag == "a" and "href" in given:
            self.links.append(given["href"])
        # What says how pages belong together is not loaded.
        kind = given.get("rel", "stylesheet")
        if kind in ("stylesheet", "icon", "preload"):
            self.loaded += [given[name] for at, name in LOADED if at == tag and name in given]

    def handle_data(self, data: str) -> None:
        self.text.append(data)


@pytest.fixture(scope="module")
def site(tmp_path_factory: pytest.TempPathFactory) -> Path:
    missing = [name for name in NEEDED if importlib.util.find_spec(name) is None]
    if missing:
        pytest.skip(f"the site is built with {', '.join(missing)} (dependency group docs)")
    folder = tmp_path_factory.mktemp("site")
    command = [sys.executable, str(ROOT / "tools" / "build_docs.py"), str(folder)]
    done = subprocess.run(command, capture_output=True, text=True, check=False)
    assert (done.returncode, done.stderr) == (0, "")
    return folder


@pytest.fixture(scope="module")
def read(site: Path) -> dict[Path, Page]:
    found = {}
    for path in site.rglob("*.html"):
        found[path] = Page()
        found[path].feed(path.read_text(encoding="utf-8"))
    return found


def test_every_link_of_the_site_leads_to_a_page_and_its_place(read: dict[Path, Page]) -> None:
    broken = []
    for path, page in read.items():
        for link in page.links:
            parts = urlsplit(link)
            if parts.scheme:
                continue
            aim = (path.parent / unquote(parts.path)).resolve() if parts.path else path
            anchor = unquote(parts.fragment)
            there = aim.exists() and (aim not in read or not anchor or anchor in read[aim].anchors)
            if not there:
                broken.append((path.name, link))
    assert broken == []


def test_pages_load_nothing_from_elsewhere(read: dict[Path, Page], site: Path) -> None:
    loaded = [(path, one) for path, page in read.items() for one in page.loaded]
    assert len(loaded) > len(read)
    for path, one in loaded:
        if not one.startswith("data:"):
            assert urlsplit(one).scheme == "", (path.name, one)
            assert (path.parent / unquote(urlsplit(one).path)).exists(), (path.name, one)
    for style in site.rglob("*.css"):
        text = style.read_text(encoding="utf-8")
        assert "url(http" not in text, style
        assert "@import" not in text, style


def test_every_code_and_every_name_has_its_place(read: dict[Path, Page], site: Path) -> None:
    for one in examples():
        page = read[site / "errors" / f"{one.code}.html"]
        assert one.code in "".join(page.text)
    for group in groups():
        page = read[site / "reference" / f"{group.page}.html"]
        assert {full_name(name) for name in group.names} <= page.anchors
    assert "scalepan.Recipe.scale" in read[site / "reference" / "recipes.html"].anchors


def test_every_figure_is_of_a_publication_that_is_listed(
    read: dict[Path, Page], site: Path
) -> None:
    text = "".join(read[site / "sources.html"].text)
    for one in publications():
        assert one.title in text


def test_every_source_of_the_data_is_of_a_publication() -> None:
    among = publications()
    found = [publication_of(source, among) for table in TABLES for source in sources(table)]
    assert None not in found
    assert set(found) == set(among)
