"""Files that cannot be read: one error each, with the file's name."""

from __future__ import annotations

from collections.abc import Callable
from pathlib import Path

import pytest
import scalepan

READERS = [scalepan.read_recipe, scalepan.read_prices, scalepan.read_facts, scalepan.read_json_ld]
Reader = Callable[[Path], object]


@pytest.fixture
def here(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    monkeypatch.chdir(tmp_path)
    return tmp_path


def refusal(read: Reader, path: Path) -> tuple[str, str]:
    with pytest.raises(scalepan.FileError) as caught:
        read(path)
    return caught.value.code, str(caught.value)


@pytest.mark.usefixtures("here")
@pytest.mark.parametrize("read", READERS)
def test_a_missing_file(read: Reader) -> None:
    missing = "cannot read the file: No such file or directory"
    assert refusal(read, Path("none.txt")) == (
        "file.unreadable",
        f"none.txt: {missing} (looked in {Path.cwd()})",
    )
    for name in ("soup.toml", "soups.toml", "prices.csv"):
        Path(name).write_text("", encoding="utf-8")
    assert refusal(read, Path("soop.toml"))[1] == (
        f"soop.toml: {missing} (looked in {Path.cwd()}; nearest there: soup.toml, soups.toml)"
    )
    assert refusal(read, Path("none/soup.toml"))[1] == (
        f"none/soup.toml: {missing} (there is no folder {Path.cwd() / 'none'})"
    )


@pytest.mark.parametrize("read", READERS)
def test_a_folder(read: Reader, here: Path) -> None:
    (here / "folder").mkdir()
    assert refusal(read, Path("folder")) == (
        "file.unreadable",
        "folder: cannot read the file: Is a directory (it is a folder: name a file in it)",
    )


@pytest.mark.parametrize("read", READERS)
def test_only_names_that_are_near_are_offered(read: Reader, here: Path) -> None:
    for name in ("hp2.toml", "noop.csv", "nope.tml"):
        (here / name).write_text("", encoding="utf-8")
    # hp2 is three slips from nope, near only by the ending that both have.
    hint = f"looked in {Path.cwd()}; nearest there: nope.tml"
    assert refusal(read, Path("nope.toml"))[1] == (
        f"nope.toml: cannot read the file: No such file or directory ({hint})"
    )


@pytest.mark.parametrize("read", READERS)
def test_bytes_that_are_not_utf_8(read: Reader, here: Path) -> None:
    (here / "old.txt").write_bytes(b"one\r\ntwo\r\ncr\xe8me\r\n")
    assert refusal(read, Path("old.txt")) == (
        "file.encoding",
        "old.txt:3: byte 13 is not UTF-8 (save the file as UTF-8)",
    )


@pytest.mark.parametrize(
    ("read", "most"),
    [
        (scalepan.read_recipe, 2_000_000),
        (scalepan.read_prices, 20_000_000),
        (scalepan.read_json_ld, 5_000_000),
    ],
)
def test_a_file_that_is_none_of_its_kind_by_its_size(read: Reader, most: int, here: Path) -> None:
    with (here / "huge.txt").open("wb") as stream:
        stream.truncate(most + 1)
    assert refusal(read, Path("huge.txt")) == (
        "file.too_large",
        f"huge.txt: the file has more than {most} bytes",
    )


@pytest.mark.parametrize("read", READERS)
def test_a_name_that_no_file_can_have(read: Reader) -> None:
    code, text = refusal(read, Path("a\0b"))
    assert code == "file.unreadable"
    assert text.endswith("cannot read the file: embedded null byte")


@pytest.mark.parametrize("read", [*READERS, scalepan.read_sheet, scalepan.read_costing])
def test_a_name_of_another_encoding(read: Reader, here: Path) -> None:
    """The byte E8 is no UTF-8; Python has it as half a character."""
    folder = here / "cr\udce8me"
    folder.mkdir()
    (folder / "pot.toml").write_text("name = 1", encoding="utf-8")
    assert refusal(read, Path("cr\udce8me/pot.toml")) == (
        "file.unreadable",
        "cr?me/pot.toml: the name of the file or of its folder is not UTF-8 (give it another name)",
    )
