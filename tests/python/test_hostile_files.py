"""Files that are huge, of another kind, or of another encoding: one clear error in little memory.

Each is read in a process of its own whose address space and time are bounded.
"""

from __future__ import annotations

import os
import subprocess
import sys
import threading
from collections.abc import Callable
from pathlib import Path

import pytest
import scalepan

READERS = {
    "recipe": "scalepan.read_recipe",
    "prices": "scalepan.read_prices",
    "stock": "scalepan.read_stock",
    "facts": "scalepan.read_facts",
    "page": "scalepan.read_json_ld",
    "trials": "scalepan.read_yield_test",
    "sheet": "scalepan.read_sheet",
    "costing": "scalepan.read_costing",
}
MOST = {"recipe": 2, "page": 5, "sheet": 64, "costing": 64}

PROGRAM = """
import resource, sys
import scalepan
megabytes, call, path = sys.argv[1:]
scalepan.bundled_catalog()
held = int(open("/proc/self/statm").read().split()[0]) * resource.getpagesize()
most = held + int(megabytes) * 1_000_000
resource.setrlimit(resource.RLIMIT_AS, (most, most))
try:
    eval(call)(path)
except scalepan.Error as error:
    print(type(error).__name__, error.code, error)
"""


def refusal(call: str, path: Path, megabytes: int, seconds: int = 120) -> str:
    """What reading says, with no more than so much memory beside what the package itself holds."""
    done = subprocess.run(
        [sys.executable, "-c", PROGRAM, str(megabytes), call, str(path)],
        capture_output=True, text=True, check=False, timeout=seconds,
    )  # fmt: skip
    assert done.stderr == ""
    return done.stdout.strip()


@pytest.mark.parametrize("kind", READERS)
def test_a_hundred_megabytes(kind: str, tmp_path: Path) -> None:
    huge = tmp_path / "huge"
    with huge.open("wb") as stream:
        stream.truncate(100_000_000)
    most = MOST.get(kind, 20) * 1_000_000
    told = f"FileError file.too_large {huge}: the file has more than {most} bytes"
    assert refusal(READERS[kind], huge, 20) == told


def filled(start: str, part: str, end: str, size: int) -> str:
    return start + part * ((size - len(start) - len(end)) // len(part)) + end


NO_DATA = '(a recipe is an object with "@type": "Recipe", which many pages have in a script)'
HEAD = "item,sold_as,pack,price,keeps\n"
FULL: dict[str, tuple[str, str, int, str]] = {
    "many rows": (
        "prices", filled(HEAD, "a,AP,1,1,no\n", "", 19_999_000), 400,
        "FileError file.too_many_rows {}:100002: the file has more than 100000 rows "
        "(split it into several files)",
    ),
    "many fields": (
        "prices", filled(HEAD, ",", "x\n", 19_999_000), 600,
        "PriceError price.fields {}:2: the row has 19998969 fields, which no file of this kind has "
        "(columns: item, sold_as, pack, price, keeps; also currency, shop, date, note, offer, "
        "least, limit, tax, deposit, measures)",
    ),
    "one long field": (
        "facts", filled('fact,food,kind,value\n"', "a\n", "", 19_999_000), 400,
        "FoodError fact.syntax {}:65538: not CSV: field larger than field limit (131072)",
    ),
    "a long text": (
        "recipe", filled('name = "', "a", '"\nserves = 4\nlines = []\n', 1_999_000), 400,
        "RecipeError recipe.syntax",
    ),
    "brackets": (
        "recipe", filled("lines = ", "[", "", 1_999_000), 100,
        "RecipeError recipe.syntax {}: brackets nest too deeply",
    ),
    "scripts": (
        "page", filled("", '<script type="application/ld+json">', "", 4_999_000), 100,
        f"RecipeError recipe.json_ld {{}}: no JSON-LD is in the file {NO_DATA}",
    ),
    "open tags": (
        "page", filled("", "<script <p ", "", 4_999_000), 100,
        f"RecipeError recipe.json_ld {{}}: no JSON-LD is in the file {NO_DATA}",
    ),
    "blanks": (
        "page", filled("<script type='application/ld+json'>", " ", "</script>", 4_999_000), 100,
        f"RecipeError recipe.json_ld {{}}: no JSON-LD is in the file {NO_DATA}",
    ),
    "many lines": (
        "page",
        filled('{"@type":"Recipe","name":"x","yield":4,"ingredients":[', '"2 eggs",', '"1 egg"]}',
               4_999_000), 600,
        "RecipeError recipe.too_many_lines {}:1:1: the recipe has more than 2000 lines",
    ),
    "lists": (
        "page", filled("[", "[],", "[]]", 4_999_000), 600,
        f"RecipeError recipe.json_ld {{}}: no recipe is in its JSON-LD {NO_DATA}",
    ),
    "JSON brackets": (
        "page", filled("", "[", "", 4_999_000), 100,
        "FileError json.syntax {}:1:1: not JSON: brackets nest too deeply",
    ),
}  # fmt: skip


@pytest.mark.parametrize("name", FULL)
def test_as_large_as_may_be_read(name: str, tmp_path: Path) -> None:
    kind, text, megabytes, told = FULL[name]
    path = tmp_path / "full"
    path.write_text(text, encoding="utf-8")
    said = refusal(READERS[kind], path, megabytes)
    if name == "a long text":
        told = "RecipeError recipe.no_lines {}:3:9: the recipe has no lines"
    assert said == told.format(path)


BROTH = 'name = "Crème"\nserves = 4\nlines = ["2 eggs"]\n'
PRICES = "item,sold_as,pack,price,keeps\ncrème,AP,1 kg,2.10,no\n"
PAGE = '{"@type": "Recipe", "name": "Crème", "yield": 4, "ingredients": ["2 eggs"]}'
SHORT = [
    (scalepan.read_recipe, BROTH, 1),
    (scalepan.read_prices, PRICES, 2),
    (scalepan.read_json_ld, PAGE, 1),
]


@pytest.mark.parametrize(("read", "text", "line"), SHORT)
@pytest.mark.parametrize("encoding", ["utf-16", "utf-16-le", "latin-1", "utf-8-sig"])
def test_encodings(
    read: Callable[[Path], object], text: str, line: int, encoding: str, tmp_path: Path
) -> None:
    path = tmp_path / "file"
    path.write_bytes(text.encode(encoding))
    if encoding == "utf-8-sig":
        assert read(path)
        return
    with pytest.raises(scalepan.FileError) as caught:
        read(path)
    if encoding == "latin-1":
        byte = text.encode("latin-1").index(b"\xe8") + 1
        told = f"{path}:{line}: byte {byte} is not UTF-8 (save the file as UTF-8)"
    elif encoding == "utf-16":
        told = f"{path}:1: byte 1 is not UTF-8 (it is UTF-16: save the file as UTF-8)"
    else:
        byte = text.encode("utf-16-le").index("è".encode("utf-16-le")) + 1
        told = str(caught.value)
        assert f"byte {byte} is not UTF-8" in told
    assert (caught.value.code, str(caught.value)) == ("file.encoding", told)


@pytest.mark.parametrize(
    ("read", "text", "code", "told"),
    [
        (scalepan.read_recipe, BROTH.replace("2 eggs", "2 \0eggs"), "recipe.syntax",
         "file:3:13: not TOML: Illegal character '\\x00'"),
        (scalepan.read_prices, PRICES.replace("1 kg", "1 \0kg"), "price.control_character",
         "file:2:10: the field holds a control character"),
        (scalepan.read_json_ld, PAGE.replace("2 eggs", "2 \0eggs"), "line.control_character",
         "file:1:69: the line holds a control character (or have another line read: "
         'replace={"2 ?eggs": "..."})'),
    ],
)  # fmt: skip
def test_nul_bytes(
    read: Callable[[str], object],
    text: str,
    code: str,
    told: str,
    tmp_path: Path,
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("file").write_text(text, encoding="utf-8")
    with pytest.raises(scalepan.Error) as caught:
        read("file")
    assert (caught.value.code, str(caught.value)) == (code, told)


def test_a_nul_in_a_remark_leaves_a_text_that_can_be_read() -> None:
    text = PAGE.replace("}", ', "description": "a\\u0000b\\u2028c"}')
    made = scalepan.parse_json_ld(text)
    assert scalepan.recipe_text(made).startswith("# description: a b c\n")
    assert scalepan.parse_recipe(scalepan.recipe_text(made)).name == "Crème"


@pytest.mark.parametrize("kind", READERS)
def test_devices_and_pipes(kind: str, tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    read = getattr(scalepan, READERS[kind].removeprefix("scalepan."))
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    monkeypatch.setattr("scalepan.files._PATIENCE", 0.05)
    for path, why in (
        ("/dev/zero", "it is a device, not a file"),
        (pipe, "nothing came out of the pipe in 0.05 s"),
        (tmp_path, "Is a directory (it is a folder: name a file in it)"),
    ):
        with pytest.raises(scalepan.FileError) as caught:
            read(path)
        assert (caught.value.code, str(caught.value)) == (
            "file.unreadable",
            f"{path}: cannot read the file: {why}",
        )


def test_a_pipe_that_something_writes_into_is_read(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)
    writer = threading.Thread(target=lambda: pipe.write_text(BROTH, encoding="utf-8"))
    writer.start()
    assert scalepan.read_recipe(pipe).name == "Crème"
    writer.join()


def test_a_pipe_without_end_is_too_large(tmp_path: Path) -> None:
    pipe = tmp_path / "pipe"
    os.mkfifo(pipe)

    def pour() -> None:
        with pipe.open("wb", buffering=0) as stream:
            try:
                while True:
                    stream.write(b"a" * 65536)
            except BrokenPipeError:
                return

    writer = threading.Thread(target=pour)
    writer.start()
    with pytest.raises(scalepan.FileError) as caught:
        scalepan.read_recipe(pipe)
    assert caught.value.code == "file.too_large"
    writer.join()


POT = scalepan.recipe("Pot", 2, ["2 eggs"])
WRITERS: dict[str, Callable[[str], None]] = {
    "recipe": lambda path: scalepan.write_recipe(POT, path),
    "page": lambda path: scalepan.write_json_ld(POT, path),
    "workbook": lambda path: scalepan.write_xlsx(POT, path),
}


@pytest.mark.parametrize("kind", WRITERS)
def test_nothing_but_a_file_gives_way_to_a_file(kind: str, tmp_path: Path) -> None:
    ending = ".xlsx" if kind == "workbook" else ""
    pipe, terminal, folder = (tmp_path / f"{name}{ending}" for name in ("pipe", "tty", "folder"))
    os.mkfifo(pipe)
    terminal.symlink_to(os.ttyname(os.openpty()[1]))
    folder.mkdir()
    for path, why in (
        (str(pipe), "it is a device or a pipe, not a file"),
        (str(terminal), "it is a device or a pipe, not a file"),
        (str(folder), "Is a directory"),
        (f"a\0b{ending}", "embedded null byte"),
    ):
        with pytest.raises(scalepan.FileError) as caught:
            WRITERS[kind](path)
        assert (caught.value.code, str(caught.value)) == (
            "file.unwritable",
            f"{path}: cannot write the file: {why}",
        )
    assert pipe.is_fifo()
    assert {path.stem for path in tmp_path.iterdir()} == {"folder", "pipe", "tty"}
