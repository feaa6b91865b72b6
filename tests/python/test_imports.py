"""What `import scalepan` loads: itself and the standard library, nothing else."""

from __future__ import annotations

import json
import subprocess
import sys

import pytest
import scalepan

PROGRAM = """
import json, sys
before = set(sys.modules)
import scalepan
print(json.dumps(sorted(set(sys.modules) - before)))
"""


def loaded() -> set[str]:
    done = subprocess.run(
        [sys.executable, "-I", "-c", PROGRAM], capture_output=True, text=True, check=True
    )
    return set(json.loads(done.stdout))


def test_nothing_but_our_own_modules_is_loaded_beside_the_standard_library() -> None:
    foreign = {name for name in loaded() if name.split(".")[0] not in sys.stdlib_module_names}
    assert foreign == {
        "scalepan",
        "scalepan._core",
        "scalepan.baskets",
        "scalepan.conversion",
        "scalepan.costs",
        "scalepan.covers",
        "scalepan.displays",
        "scalepan.errors",
        "scalepan.exchange",
        "scalepan.files",
        "scalepan.foods",
        "scalepan.hand_over",
        "scalepan.lines",
        "scalepan.load_split",
        "scalepan.measure_sets",
        "scalepan.measuring",
        "scalepan.pan_size",
        "scalepan.pan_table",
        "scalepan.panels",
        "scalepan.pickles",
        "scalepan.prices",
        "scalepan.printing",
        "scalepan.progress",
        "scalepan.recipes",
        "scalepan.selling",
        "scalepan.sheet_content",
        "scalepan.sheet_differences",
        "scalepan.sheet_forms",
        "scalepan.sheet_studies",
        "scalepan.sheets",
        "scalepan.toml_table",
        "scalepan.trays",
        "scalepan.usda",
        "scalepan.wrong_arguments",
        "scalepan.yield_tests",
    }


def test_no_number_table_or_plot_library_is_loaded() -> None:
    assert not {name.split(".")[0] for name in loaded()} & {"numpy", "pandas", "matplotlib"}


def test_plots_are_loaded_when_they_are_asked_for() -> None:
    program = (
        "import sys, scalepan; before = 'scalepan.plots' in sys.modules; "
        "print(before, scalepan.plots.plot_curve.__module__, 'matplotlib' in sys.modules)"
    )
    done = subprocess.run(
        [sys.executable, "-I", "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout == "False scalepan.plots.curves False\n"


def test_a_name_that_is_not_there_is_told_as_of_any_module() -> None:
    with pytest.raises(AttributeError) as caught:
        scalepan.plot  # type: ignore[attr-defined]  # noqa: B018
    assert str(caught.value) == "module 'scalepan' has no attribute 'plot'"
    assert caught.value.name == "plot"


def test_the_public_names_are_there() -> None:
    program = "import scalepan; print([n for n in scalepan.__all__ if not hasattr(scalepan, n)])"
    done = subprocess.run(
        [sys.executable, "-I", "-c", program], capture_output=True, text=True, check=True
    )
    assert done.stdout == "[]\n"
