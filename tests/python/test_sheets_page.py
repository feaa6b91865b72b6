"""What docs/sheets.md shows is what happens."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest
import scalepan

ROOT = Path(__file__).parents[2]
PAGE = (ROOT / "docs" / "sheets.md").read_text(encoding="utf-8")
EXAMPLES, FILES = (
    re.findall(r"^\| `([a-z_.]+)` \| `(.+?)` \| (.+) \|$", part, flags=re.MULTILINE)
    for part in PAGE.split("## What is refused")[1].split("What a file has wrong")
)
# Of sweeps and targets, of totals, and of costings, which other pages tell.
ELSEWHERE = {
    "sheet.column",
    "sheet.kept",
    "sheet.no_form",
    "sheet.none",
    "sheet.several",
    "sheet.target",
    "sheet.thing",
}


def shown_sheet() -> scalepan.Sheet:
    code = "\n".join(re.findall(r"```python\n(.*?)```", PAGE, flags=re.DOTALL))
    test = doctest.DocTestParser().get_doctest(code, {}, "sheets.md", "sheets.md", 0)
    assert len(test.examples) > 40
    result = doctest.DocTestRunner().run(test, clear_globs=False)
    assert result.failed == 0
    sheet = test.globs["sheet"]
    assert isinstance(sheet, scalepan.Sheet)
    return sheet


SHEET = shown_sheet()


def test_the_file_shown_is_read_and_written_as_it_is() -> None:
    shown = re.search(r"```toml\n(.*?)```", PAGE, flags=re.DOTALL)
    assert shown is not None
    assert scalepan.parse_sheet(shown[1]).text() == shown[1]


@pytest.mark.parametrize(("code", "example", "told"), EXAMPLES)
def test_what_is_refused_is_told_as_shown(code: str, example: str, told: str) -> None:
    sheet = scalepan.parse_sheet(SHEET.text())
    with pytest.raises(scalepan.Error) as caught:
        exec(example, {"s": sheet, "scalepan": scalepan})
    assert (caught.value.code, str(caught.value)) == (code, told)


@pytest.mark.parametrize(("code", "line", "told"), FILES)
def test_what_a_file_has_wrong_is_told_as_shown(code: str, line: str, told: str) -> None:
    first = "" if line.startswith("scalepan_sheet") else "scalepan_sheet = 1\n"
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_sheet(first + line, file="night.toml")
    assert (caught.value.code, str(caught.value)) == (code, told)


def test_every_code_of_sheets_is_shown() -> None:
    codes = set()
    for folder in ("cpp/sheet", "cpp/bindings", "python/scalepan"):
        for path in (ROOT / folder).rglob("*.*pp" if "cpp" in folder else "*.py"):
            codes |= set(re.findall(r'"(sheet\.[a-z_]+)"', path.read_text(encoding="utf-8")))
    shown = {code for code, _, _ in (*EXAMPLES, *FILES)}
    assert codes - shown - ELSEWHERE == set()
    assert len(codes) > 25
