"""What the README shows is what the current build prints."""

from __future__ import annotations

import re
from pathlib import Path

import pytest
import scalepan
from scalepan.demo import lines_of_demo

README = (Path(__file__).parents[2] / "README.md").read_text(encoding="utf-8")


def test_the_printed_demo_is_the_demo_of_today() -> None:
    shown = re.search(r"<!-- demo -->\n```text\n(.*?)\n```", README, flags=re.DOTALL)
    assert shown is not None
    assert shown[1] in "\n".join(lines_of_demo(80))


def test_the_recipe_and_the_python_of_the_readme_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    recipe = re.search(r"```toml\n(.*?)```", README, flags=re.DOTALL)
    code = re.search(r"```python\n(.*?)```", README, flags=re.DOTALL)
    table = re.findall(r"^\| (leeks|eggs|chickpeas) \| (.*) \|$", README, flags=re.MULTILINE)
    assert recipe is not None
    assert code is not None
    assert len(table) == 3
    rows = ["item,sold_as,pack,price,currency,keeps"]
    rows += [",".join([item, *rest.split(" | ")]) for item, rest in table]
    Path("soup.toml").write_text(recipe[1], encoding="utf-8")
    Path("prices.csv").write_text("\n".join(rows), encoding="utf-8")
    names: dict[str, object] = {}
    exec(compile(code[1], "README.md", "exec"), names)
    costing = names["costing"]
    assert isinstance(costing, scalepan.Costing)
    # 5 kg of leeks at 0.44 EP/AP (USDA SR28 11246) need twelve packs of 1 kg: 11.364 kg.
    assert costing.shopping[0].packs == [(12, "1 kg")]
