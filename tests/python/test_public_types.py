"""Every public function, class and attribute has a type that says all."""

from __future__ import annotations

import ast
from collections.abc import Iterator
from pathlib import Path

import public_types
import pytest
import scalepan
from mypy.build import BuildResult
from scalepan import plots

ROOT = Path(__file__).parents[2]
SAMPLE = ROOT / "tests" / "typing" / "sample_user.py"
PROBE = """\
from typing import Any

import scalepan.plots

Loose = dict[str, Any]

class Held:
    loose: Loose
    said: int

def holding() -> list[Held]:
    return []
"""


@pytest.fixture(scope="module")
def types() -> Iterator[BuildResult]:
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(ROOT)
        yield public_types.built(PROBE)


def test_no_public_type_holds_any(types: BuildResult) -> None:
    assert types.errors == []
    assert public_types.names_with_any(types, "scalepan", scalepan.__all__) == []
    assert public_types.names_with_any(types, "scalepan.plots", plots.__all__) == []


def test_what_public_functions_give_is_looked_into(types: BuildResult) -> None:
    of_package = dict(public_types.public_types(types, "scalepan", scalepan.__all__))
    assert len(of_package) > 700
    # What `Costing.refresh` gives is a class that the package itself does not name.
    assert "scalepan.costing_files.Refreshed.costing" in of_package


def test_an_alias_hides_no_any(types: BuildResult) -> None:
    loose = public_types.names_with_any(types, "probe", ["holding"], package="probe.")
    assert loose == ["probe.Held.loose"]


def test_the_sample_uses_every_public_name() -> None:
    used = {
        node.attr
        for node in ast.walk(ast.parse(SAMPLE.read_text(encoding="utf-8")))
        if isinstance(node, ast.Attribute)
        and isinstance(node.value, ast.Name)
        and node.value.id == "scalepan"
    }
    assert set(scalepan.__all__) - used == set()
