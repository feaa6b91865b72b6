"""What docs/files_and_frames.md and docs/json.md show is what happens."""

from __future__ import annotations

import doctest
import re
from pathlib import Path

import pytest
from scalepan.errors import make_error

DOCS = Path(__file__).parents[2] / "docs"
PAGES = {"files_and_frames.md": 20, "json.md": 7}
FILE = re.compile(r"```\w+\n(?:# |<!-- )([a-z_]+\.[a-z]+)(?: -->)?\n(.*?)```", re.DOTALL)


@pytest.mark.parametrize(("name", "examples"), PAGES.items())
def test_the_examples_of_the_page(
    name: str, examples: int, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    page = (DOCS / name).read_text(encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    for file, text in FILE.findall(page):
        Path(file).write_text(text, encoding="utf-8")
    code = "\n".join(re.findall(r"```python\n(.*?)```", page, flags=re.DOTALL))
    test = doctest.DocTestParser().get_doctest(code, {}, name, name, 0)
    assert len(test.examples) >= examples
    assert doctest.DocTestRunner().run(test).failed == 0


@pytest.mark.parametrize("name", PAGES)
def test_every_code_of_the_page_is_one_of_ours(name: str) -> None:
    page = (DOCS / name).read_text(encoding="utf-8")
    codes = {
        code
        for row in re.findall(r"^\| (`[a-z]+\..*?) \|", page, flags=re.MULTILINE)
        for code in re.findall(r"`([a-z]+\.[a-z_]+)`", row)
    }
    assert len(codes) >= 8
    sources = "\n".join(
        path.read_text(encoding="utf-8")
        for path in (DOCS.parent / "python" / "scalepan").rglob("*.py")
    )
    for code in codes:
        subject, part = code.split(".")
        assert f'"{code}"' in sources or f'"{part}"' in sources or f".{part}" in sources, code
        assert make_error(code, "").code == f"{subject}.{part}"
