"""What docs/sheet_studies.md shows is what happens."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest
import scalepan

PAGE = (Path(__file__).parents[2] / "docs" / "sheet_studies.md").read_text(encoding="utf-8")
REFUSED = re.findall(
    r"^\| `([a-z_.]+)` \| `(.+?)` \| (.+) \|$",
    PAGE.split("## What is refused")[1],
    flags=re.MULTILINE,
)


def shown_sheet() -> scalepan.Sheet:
    code = "\n".join(re.findall(r"```python\n(.*?)```", PAGE, flags=re.DOTALL))
    name = "sheet_studies.md"
    test = doctest.DocTestParser().get_doctest(code, {}, name, name, 0)
    assert len(test.examples) > 15
    assert doctest.DocTestRunner().run(test, clear_globs=False).failed == 0
    sheet = test.globs["sheet"]
    assert isinstance(sheet, scalepan.Sheet)
    return sheet


SHEET = shown_sheet()


@pytest.mark.parametrize(("code", "example", "told"), REFUSED)
def test_what_is_refused_is_told_as_shown(code: str, example: str, told: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        eval(example, {"s": SHEET})
    assert (caught.value.code, str(caught.value)) == (code, told)
