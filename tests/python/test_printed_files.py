"""Files of printed pages: from Python and from the command line, with and without a browser."""

from __future__ import annotations

import shutil
import stat
from pathlib import Path

import pytest
import scalepan
from scalepan.demo import demo_files
from scalepan_command.start import main

RECIPE, PRICES = demo_files()


def demo() -> scalepan.Recipe:
    return scalepan.read_recipe(RECIPE).scale(portions=40)


def costing() -> scalepan.Costing:
    return scalepan.cost(demo(), scalepan.read_prices(PRICES))


@pytest.mark.parametrize(("paper", "size"), [("A4", "A4"), ("Letter", "letter")])
def test_a_file_is_the_page_on_its_paper(tmp_path: Path, paper: str, size: str) -> None:
    page = scalepan.kitchen_page(demo(), paper=paper)
    page.save(tmp_path / "page.html")
    html = (tmp_path / "page.html").read_text(encoding="utf-8")
    assert html == page.html
    assert html.startswith('<!doctype html>\n<html lang="en"><head><meta charset="utf-8"/>')
    assert f"size:{size};" in html


def test_pages_put_together_are_one_file() -> None:
    pages = [scalepan.kitchen_page(demo(), paper="Letter"), scalepan.shopping_page(costing())]
    together = scalepan.printed_pages(pages)
    assert together.html.count("<main") == 2
    assert together.html.count("size:letter;") == 2
    assert scalepan.printed_pages(pages, "A4").html.count("size:A4;") == 2
    assert str(together).splitlines() == [
        "Fennel and butter bean bake, 40 portions: kitchen page, Letter",
        "Fennel and butter bean bake, 40 portions: shopping page, Letter",
    ]
    assert repr(scalepan.kitchen_page(demo())) == (
        "<PrintedPages Fennel and butter bean bake, 40 portions: kitchen page, A4>"
    )


def test_other_papers_and_no_page_are_refused() -> None:
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.kitchen_page(demo(), paper="A5")  # type: ignore[arg-type]
    assert caught.value.code == "file.paper"
    assert str(caught.value) == 'no paper is called "A5" (write A4 or Letter)'
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.printed_pages([])
    assert str(caught.value) == "no page is given to print (give at least one page)"


def test_a_file_that_cannot_be_written_is_one_clear_error(tmp_path: Path) -> None:
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.shopping_page(costing()).save(tmp_path / "nowhere" / "page.html")
    assert caught.value.code == "file.unwritable"


PRICED = ["--prices", PRICES]
COMMANDS = {
    "page": ([], lambda: scalepan.kitchen_page(demo(), paper="Letter")),
    "buy": (PRICED, lambda: scalepan.shopping_page(costing(), "Letter")),
    "cost": (PRICED, lambda: scalepan.costing_page(costing(), "Letter")),
}


@pytest.mark.parametrize("command", COMMANDS)
def test_a_command_writes_the_page_beside_its_text(
    command: str, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    more, page = COMMANDS[command]
    asked = [command, RECIPE, *more, "--portions", "40"]
    assert main(asked) == 0
    text = capsys.readouterr().out
    file = tmp_path / "page.html"
    assert main([*asked, "--html", str(file), "--paper", "Letter"]) == 0
    assert capsys.readouterr().out == text
    assert file.read_text(encoding="utf-8") == page().html


def test_the_size_that_was_asked_for_is_on_the_page(tmp_path: Path) -> None:
    file = tmp_path / "page.html"
    by_tray = ["--tray", "GN 1/1 65", "--trays", "2"]
    assert main(["page", RECIPE, *by_tray, "--html", str(file)]) == 0
    assert "Fills 2 x GN 1/1 65: by area as much as" in file.read_text(encoding="utf-8")
    by_stock = ["--stock", "eggs=30"]
    assert main(["buy", RECIPE, *PRICED, *by_stock, "--html", str(file)]) == 0
    limit = "Eggs limits the size: its stock allows exactly 30 portions"
    assert limit in file.read_text(encoding="utf-8")


def test_dishes_bought_together_from_the_command_line(tmp_path: Path) -> None:
    dishes, file = tmp_path / "week.toml", tmp_path / "page.html"
    dishes.write_text(f"[[dishes]]\nrecipe = '{RECIPE}'\nportions = 12\n", encoding="utf-8")
    assert main(["basket", str(dishes), *PRICED, "--html", str(file)]) == 0
    assert "Fennel and butter bean bake, 12 portions</h1>" in file.read_text(encoding="utf-8")


def test_without_a_browser_a_pdf_is_one_clear_error(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.setattr(shutil, "which", lambda name: None)
    file = tmp_path / "page.pdf"
    assert main(["page", RECIPE, "--pdf", str(file)]) == 1
    assert capsys.readouterr().err == (
        f"scalepan: {file}: no browser of chromium, chromium-browser, google-chrome, "
        "google-chrome-stable, chrome is found [file.pdf]\n"
        "  save the HTML file and print that from a browser\n"
    )
    assert not file.exists()


def browser_of(folder: Path, monkeypatch: pytest.MonkeyPatch, script: str) -> Path:
    """A program in the place of a browser."""
    program = folder / "chromium"
    program.write_text(f"#!/bin/sh\n{script}\n", encoding="utf-8")
    program.chmod(program.stat().st_mode | stat.S_IXUSR)
    monkeypatch.setattr(shutil, "which", lambda name: str(program) if name == "chromium" else None)
    return program


@pytest.mark.parametrize(
    ("script", "message"),
    [("exit 3", "{} did not print: it ended with 3"), ("exit 0", "{} made no file")],
)
def test_a_browser_that_fails_leaves_the_older_file(
    script: str, message: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    program = browser_of(tmp_path, monkeypatch, script)
    file = tmp_path / "page.pdf"
    file.write_text("older", encoding="utf-8")
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.kitchen_page(demo()).save_pdf(file)
    assert caught.value.code == "file.pdf"
    assert caught.value.message == message.format(program)
    assert file.read_text(encoding="utf-8") == "older"


def test_a_browser_is_given_the_page_and_a_new_profile(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    script = (
        'for each in "$@"; do case "$each" in\n'
        '--print-to-pdf=*) made="${each#--print-to-pdf=}";;\n'
        '--user-data-dir=*) profile="${each#--user-data-dir=}";;\n'
        'file://*) page="${each#file://}";;\nesac; done\n'
        'test ! -e "$profile" && cp "$page" "$made"'
    )
    browser_of(tmp_path, monkeypatch, script)
    page = scalepan.kitchen_page(demo())
    page.save_pdf(tmp_path / "page.pdf")
    assert (tmp_path / "page.pdf").read_text(encoding="utf-8") == page.html
