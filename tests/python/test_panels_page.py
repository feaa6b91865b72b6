"""What docs/panels.md shows is what happens."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest
import scalepan

pytest.importorskip("anywidget", reason="anywidget is not installed")
PAGE = (Path(__file__).parents[2] / "docs" / "panels.md").read_text(encoding="utf-8")
REFUSED = re.findall(
    r"^\| `([a-z_.]+)` \| `(.+?)` \| (.+) \|$",
    PAGE.split("## What is refused")[1],
    flags=re.MULTILINE,
)


def shown_sheet() -> scalepan.Sheet:
    code = "\n".join(re.findall(r"```python\n(.*?)```", PAGE, flags=re.DOTALL))
    test = doctest.DocTestParser().get_doctest(code, {}, "panels.md", "panels.md", 0)
    assert len(test.examples) == 10
    assert doctest.DocTestRunner().run(test, clear_globs=False).failed == 0
    sheet = test.globs["sheet"]
    assert isinstance(sheet, scalepan.Sheet)
    return sheet


SHEET = shown_sheet()
POT = scalepan.parse_recipe(
    'name = "Leek pot"\nserves = 4\nmeasures = "metric"\nlines = ["500 g leeks, trimmed"]\n'
)
COSTING = scalepan.cost(
    POT, scalepan.parse_prices("item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,GBP,no\n")
)


@pytest.mark.parametrize(("code", "example", "told"), REFUSED)
def test_what_is_refused_is_told_as_shown(code: str, example: str, told: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        eval(example, {"scalepan": scalepan, "s": SHEET, "c": COSTING})
    assert (caught.value.code, str(caught.value)) == (code, told)
