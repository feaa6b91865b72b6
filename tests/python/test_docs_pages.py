"""What the pages of the repository show is what happens, and their links lead somewhere."""

from __future__ import annotations

import doctest
import shlex
from pathlib import Path

import pytest
from docs_site.error_pages import command_line
from docs_site.pages import by_hand, how_to, place_of, with_links_of_the_site
from markdown_pages import (
    ROOT,
    Shown,
    anchors,
    blocks,
    commands_shown,
    files_shown,
    links,
    pages,
)

PAGES = {path.relative_to(ROOT).as_posix(): path for path in pages()}
# Their commands and files are tested with the examples that they go on from.
ELSEWHERE = {"README.md", "docs/recipes.md", "docs/buying.md", "docs/printed_pages.md"}


@pytest.mark.parametrize("name", sorted(set(PAGES) - ELSEWHERE))
def test_commands_and_python_of_a_page_do_what_is_shown(
    name: str,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    text = PAGES[name].read_text(encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    for file, content in files_shown(text).items():
        Path(file).write_text(content, encoding="utf-8")
    for shown in commands_shown(text):
        status = status_of(shown.command)
        told = capsys.readouterr()
        assert shown.is_in(told.out + told.err), told.out + told.err
        assert (status == 0) == (not told.err)
    run_python([content for kind, content in blocks(text) if kind == "python"], name)


def status_of(command: str) -> object:
    """The exit status; a command line that is wrong ends by leaving."""
    try:
        return command_line()(shlex.split(command, comments=True))
    except SystemExit as end:
        return end.code


def run_python(shown: list[str], name: str) -> None:
    """Blocks with prompts give what they show; others run, with what the ones before made."""
    names: dict[str, object] = {}
    for content in shown:
        if ">>> " in content:
            test = doctest.DocTestParser().get_doctest(content, names, name, name, 0)
            assert doctest.DocTestRunner().run(test, clear_globs=False).failed == 0
            names = test.globs
        else:
            exec(compile(content, name, "exec"), names)


def test_a_page_whose_python_is_wrong_is_found() -> None:
    run_python(["a = 1\n", ">>> a + 1\n2\n"], "page")
    with pytest.raises(AssertionError):
        run_python([">>> 1 + 1\n3\n"], "page")
    with pytest.raises(NameError):
        run_python(["a + 1\n"], "page")


def test_every_command_that_the_readme_lists_is_understood(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    text = PAGES["README.md"].read_text(encoding="utf-8")
    listed = "".join(content for kind, content in blocks(text) if kind == "sh").splitlines()
    commands = [line.removeprefix("scalepan ") for line in listed if line.startswith("scalepan ")]
    assert len(commands) >= 20
    for command in commands:
        # Without its files it comes as far as those; a wrong command line would end in 2.
        status = status_of(command)
        told = capsys.readouterr().err
        assert (status, told) == (0, "") or (status == 1 and "[file.unreadable]" in told), told


def test_the_tutorial_costs_a_dish_at_forty() -> None:
    text = (ROOT / "docs" / "tutorial.md").read_text(encoding="utf-8")
    assert set(files_shown(text)) == {"broth.toml", "prices.csv", "own.csv"}
    assert [one.command.split()[0] for one in commands_shown(text)] == [
        "scale",
        "cost",
        "why",
        "cost",
    ]
    # 5 kg of trimmed leeks at 0.44 EP/AP (USDA SR28 11246) are 11.364 kg: 11 x 2.10 + 1.20.
    assert "24.30" in text


@pytest.mark.parametrize(
    ("printed", "output", "is_in"),
    [
        ("a\nb\n", "a\nb\n", True),
        ("a\n", "a\nb\n", False),
        ("a\n...\n", "a\nb\n", True),
        ("...\nb\n", "a\nb\n", True),
        ("...\nb\n...\n", "a\nb\nc\n", True),
        ("b\n...\n", "a\nb\n", False),
        ("...\nb\n...\na\n", "a\nb\n", False),
    ],
)
def test_what_is_left_out_stands_as_points(printed: str, output: str, is_in: bool) -> None:
    assert Shown("", printed).is_in(output) == is_in


@pytest.mark.parametrize("name", PAGES)
def test_links_inside_the_repository_lead_somewhere(name: str) -> None:
    path = PAGES[name]
    for link in links(path.read_text(encoding="utf-8")):
        if link.startswith(("http://", "https://")):
            continue
        target, _, anchor = link.partition("#")
        aim = (path.parent / target).resolve() if target else path
        assert aim.exists(), link
        assert aim.is_relative_to(ROOT), link
        if anchor:
            assert anchor in anchors(aim.read_text(encoding="utf-8")), link


def test_the_site_has_every_page_and_leads_their_links_to_its_own() -> None:
    assert {path for path in by_hand().values()} == set(PAGES.values())
    assert {f"{name}.md" for name in how_to()} <= set(by_hand())
    for place, path in by_hand().items():
        text = with_links_of_the_site(path.read_text(encoding="utf-8"), path)
        assert "](../" not in text, place
    guide = ROOT / "docs" / "costing_sheets.md"
    led = with_links_of_the_site("[a](sheets.md#what-is-refused) [b](../README.md)", guide)
    assert led == "[a](sheets.md#what-is-refused) [b](overview.md)"
    notebook = with_links_of_the_site("[c](notebooks/what_if.ipynb)", guide)
    assert notebook == '<a href="notebooks/what_if.html">c</a>'
    with pytest.raises(LookupError, match=r"^the site has no page of Makefile$"):
        place_of(ROOT / "Makefile")
