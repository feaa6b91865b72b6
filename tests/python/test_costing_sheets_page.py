"""What docs/costing_sheets.md shows is what happens."""

from __future__ import annotations

import doctest
import re
import tomllib
from pathlib import Path

import pytest
import scalepan

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "costing_sheets.md").read_text(encoding="utf-8")
FUNCTIONS = re.findall(
    r"^\| `([a-z_]+)\(.*?\)` \| .+? \| `(.+?)` \| (.+) \|$",
    PAGE.split("## Functions")[1].split("## What is refused")[0],
    flags=re.MULTILINE,
)
REFUSED = re.findall(
    r"^\| `([a-z_.]+)` \| `(.+?)` \| (.+) \|$",
    PAGE.split("## What is refused")[1],
    flags=re.MULTILINE,
)


def shown() -> dict[str, object]:
    code = "\n".join(re.findall(r"```python\n(.*?)```", PAGE, flags=re.DOTALL))
    name = "costing_sheets.md"
    test = doctest.DocTestParser().get_doctest(code, {}, name, name, 0)
    assert len(test.examples) > 25
    assert doctest.DocTestRunner().run(test, clear_globs=False).failed == 0
    return {**test.globs, "scalepan": scalepan}


SHOWN = shown()
KEPT = SHOWN["pot"].text()  # type: ignore[attr-defined]  # before what is refused changes it


@pytest.mark.parametrize(("function", "example", "figure"), FUNCTIONS)
def test_a_function_gives_the_figure_shown(function: str, example: str, figure: str) -> None:
    sheet = SHOWN["s"]
    assert isinstance(sheet, scalepan.Sheet)
    assert function in example
    sheet.define("example", example)
    value = sheet.value("example")
    assert (str(value) if not isinstance(value, bool) else "yes" if value else "no") == figure


def test_every_function_of_costings_is_shown() -> None:
    files = ("kitchen_functions.cpp", "packs_functions.cpp")
    listed = "".join((ROOT / "cpp" / "costing" / one).read_text(encoding="utf-8") for one in files)
    signatures = set(re.findall(r'"([a-z_]+\((?:food|offers|packs|recipe)\b[a-z_, ]*\))"', listed))
    assert len(signatures) == 19
    assert {signature.split("(")[0] for signature in signatures} == {one for one, *_ in FUNCTIONS}
    assert [one for one in sorted(signatures) if f"| `{one}` |" not in PAGE] == []


@pytest.mark.parametrize(("code", "example", "told"), REFUSED)
def test_what_is_refused_is_told_as_shown(code: str, example: str, told: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        exec(example, dict(SHOWN))
    assert (caught.value.code, str(caught.value)) == (code, told)


def test_the_part_of_a_file_is_in_the_file() -> None:
    part = re.search(r"```toml\n(.*?)```", PAGE, flags=re.DOTALL)
    assert part is not None
    assert part[1] in KEPT
    assert tomllib.loads(KEPT)["pinned"]["prices"][0]["at"] == "prices.csv:2:1"
