"""``scalepan check`` on files of every sort: none of them stops it."""

from __future__ import annotations

import json
import os
from pathlib import Path

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st
from scalepan.checks import check_files, found_files
from scalepan_command.start import main

LEEKS = 'name = "Leeks"\nserves = 4\ntested_at = [4]\nlines = ["500 g leeks"]\n'


@pytest.fixture(autouse=True)
def in_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)


def finds(capsys: pytest.CaptureFixture[str], *paths: str) -> list[tuple[str, str, str]]:
    """Place, code and message of each find."""
    assert main(["check", "--json", *paths]) in (0, 1)
    shown = capsys.readouterr()
    assert shown.err == ""
    return [
        (find["place"], find["code"], find["message"])
        for file in json.loads(shown.out)["files"]
        for find in file["finds"]
    ]


@pytest.mark.skipif(os.name != "posix", reason="files as POSIX has them")
def test_no_file_stops_it(capsys: pytest.CaptureFixture[str]) -> None:
    Path("good.toml").write_text(LEEKS, encoding="utf-8")
    Path("binary.csv").write_bytes(bytes(range(256)) * 64)
    Path("zeros.toml").write_bytes(b"\0" * 4096)
    Path("empty.toml").touch()
    Path("empty.csv").touch()
    Path(".hidden.toml").write_text("lines = [", encoding="utf-8")
    Path("loop").mkdir()
    Path("loop/again").symlink_to("..")
    Path("self.toml").symlink_to("self.toml")
    Path("gone.csv").symlink_to("nowhere.csv")
    Path("folder.toml").mkdir()
    os.mkfifo("pipe.csv")
    Path(os.fsdecode(b"caf\xe9.toml")).write_text(LEEKS, encoding="utf-8")
    Path("bell\a.toml").write_text(LEEKS, encoding="utf-8")
    Path("deep.toml").write_text("lines = " + "[" * 5000, encoding="utf-8")
    Path("huge.csv").write_bytes(b"item,price\n" + b"x" * 70_000_000)
    Path("digits.toml").write_text(f"serves = {'9' * 5000}\nlines = []\n", encoding="utf-8")
    Path("moved\u202e.toml").write_text(LEEKS, encoding="utf-8")
    assert [(place, code) for place, code, _ in finds(capsys)] == [
        ("bell\\x07.toml", "file.name"),
        ("binary.csv:2", "file.encoding"),
        ("caf\\xe9.toml", "file.name"),
        ("deep.toml", "recipe.syntax"),
        ("digits.toml", "recipe.syntax"),
        ("gone.csv", "file.unreadable"),
        ("huge.csv", "file.too_large"),
        ("moved\\x202e.toml", "file.name"),
        ("pipe.csv", "file.unreadable"),
        ("self.toml", "file.unreadable"),
    ]


def test_a_folder_or_file_that_is_not_there_is_an_error(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert finds(capsys, "nowhere", "-") == [
        ("nowhere", "file.unreadable", "cannot read the file: No such file or directory"),
        ("-", "file.unreadable", "cannot read the file: No such file or directory"),
    ]


def test_progress_is_told_file_by_file() -> None:
    for name in ("a.toml", "b.toml", "c.toml"):
        Path(name).write_text(LEEKS, encoding="utf-8")
    done: list[int] = []
    check_files(list(found_files(["."])), done.append)
    assert done == [1, 2, 3]


def test_texts_that_a_terminal_would_obey_are_shown(capsys: pytest.CaptureFixture[str]) -> None:
    text = LEEKS.replace("leeks", "zur\\u001b[31mkle")
    Path("dish.toml").write_text(text, encoding="utf-8")
    main(["check"])
    assert "\033" not in capsys.readouterr().out


def test_a_path_that_no_file_can_have_is_one_find() -> None:
    (file,) = found_files(["no\0name.toml"])
    assert [(find.place, find.code) for find in file.finds] == [("no\\x00name.toml", "file.name")]


_WORDS = st.sampled_from(
    [
        *'"[]{}=,\n\t#;1',
        *("lines", "serves", "name", "bases", "dishes", "method", "scalepan", "_sheet", "_costing"),
        *("item", "sold_as", "pack", "price", "keeps", "fact", "food", "trial", "what", "weight"),
        *("set", "measure", "size", "pan", " = ", "AP", "1 kg", "leeks", "\u202e", "é"),
    ]
)


@settings(max_examples=150, suppress_health_check=[HealthCheck.function_scoped_fixture])
@given(
    texts=st.lists(
        st.one_of(st.lists(_WORDS, max_size=30).map("".join), st.text(max_size=40)), max_size=4
    ),
    raw=st.binary(max_size=40),
)
def test_whatever_files_hold_it_ends_with_a_document(
    texts: list[str], raw: bytes, capsys: pytest.CaptureFixture[str]
) -> None:
    for i, text in enumerate(texts):
        for kind in ("toml", "csv"):
            Path(f"{i}.{kind}").write_bytes(text.encode("utf-8", "surrogatepass"))
    Path("raw.toml").write_bytes(b"lines = [" + raw)
    codes = [code for _, code, _ in finds(capsys)]
    assert "command.fault" not in codes
