"""Layers of the core: a layer includes only what lies below it."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

CPP = Path(__file__).resolve().parents[2] / "cpp"

# Every layer with all the layers below it.
BELOW = {
    "exact": set[str](),
    "measure": {"exact"},
    "food": {"exact", "measure"},
    "packs": {"exact", "measure"},
    "recipe": {"exact", "measure", "food"},
    "sheet": {"exact", "measure"},
    "costing": {"exact", "measure", "food", "packs", "recipe", "sheet"},
    "bindings": {"exact", "measure", "food", "packs", "recipe", "sheet", "costing"},
}
INCLUDE = re.compile(r'^\s*#\s*include\s*([<"])([^>"]+)[>"]', re.MULTILINE)
PRINTS_OR_READS_FILES = {"iostream", "cstdio", "stdio.h", "fstream", "filesystem", "print"}


def includes(layer: str) -> list[tuple[str, str, str]]:
    """File, bracket and name of every include of a layer."""
    found = []
    for path in sorted((CPP / layer).rglob("*")):
        if path.suffix in {".cpp", ".hpp", ".inc"}:
            text = path.read_text(encoding="utf-8")
            found += [(path.name, bracket, name) for bracket, name in INCLUDE.findall(text)]
    return found


def test_every_folder_is_a_known_layer() -> None:
    assert {path.name for path in CPP.iterdir() if path.is_dir()} - {"cmake"} == set(BELOW)


@pytest.mark.parametrize("layer", BELOW)
def test_a_layer_includes_only_layers_below(layer: str) -> None:
    own = [(file, name) for file, bracket, name in includes(layer) if bracket == '"']
    assert own
    allowed = {layer, *BELOW[layer]}
    assert [(file, name) for file, name in own if name.split("/")[0] not in allowed] == []


@pytest.mark.parametrize("layer", BELOW)
def test_every_own_include_is_a_file_of_the_core(layer: str) -> None:
    own = {name for _, bracket, name in includes(layer) if bracket == '"'}
    assert [name for name in sorted(own) if not (CPP / name).is_file()] == []


@pytest.mark.parametrize("layer", [layer for layer in BELOW if layer != "bindings"])
def test_the_core_knows_no_python_and_neither_prints_nor_reads_files(layer: str) -> None:
    names = [(file, name) for file, _, name in includes(layer)]
    assert names
    for file, name in names:
        assert "pybind11" not in name, file
        assert name not in PRINTS_OR_READS_FILES, file
        assert name != "Python.h", file


TYPE = re.compile(
    r"^(?:struct|class|enum class|using) (\w+)(?= (?:final )?(?::[^:]|\{|=)| \{)", re.MULTILINE
)
OWN_TO_A_FILE = re.compile(r"^namespace \{.*?^\}  // namespace$", re.DOTALL | re.MULTILINE)


def test_no_type_has_a_second_meaning_in_another_file() -> None:
    """All stand in one namespace: the linker would take one for the other without a word."""
    homes: dict[str, set[str]] = {}
    for layer in BELOW:
        for path in (CPP / layer).rglob("*.?pp"):
            text = OWN_TO_A_FILE.sub("", path.read_text(encoding="utf-8"))
            for name in TYPE.findall(text):
                homes.setdefault(name, set()).add(f"{layer}/{path.name}")
    assert len(homes) > 200
    # The one of packs is a template.
    twice = {name: files for name, files in homes.items() if len(files) > 1}
    assert twice == {"Stair": {"exact/stairs.hpp", "packs/stair.hpp"}}
