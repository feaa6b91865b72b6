"""What the README shows is what the current build prints."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
import scalepan
from scalepan.command_line.main import main
from scalepan.demo import lines_of_demo

ROOT = Path(__file__).parents[2]
README = (ROOT / "README.md").read_text(encoding="utf-8")


def test_the_printed_demo_is_the_demo_of_today() -> None:
    shown = re.search(r"<!-- demo -->\n```text\n(.*?)\n```", README, flags=re.DOTALL)
    assert shown is not None
    assert shown[1] in "\n".join(lines_of_demo(80))


def test_the_recipe_and_the_python_of_the_readme_run(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    recipe = re.search(r"```toml\n(.*?)```", README, flags=re.DOTALL)
    code = "\n".join(re.findall(r"```python\n(.*?)```", README, flags=re.DOTALL))
    table = re.findall(r"^\| (leeks|eggs|chickpeas) \| (.*) \|$", README, flags=re.MULTILINE)
    assert recipe is not None
    assert "read_costing" in code
    assert len(table) == 3
    rows = ["item,sold_as,pack,price,currency,keeps"]
    rows += [",".join([item, *rest.split(" | ")]) for item, rest in table]
    Path("soup.toml").write_text(recipe[1], encoding="utf-8")
    Path("prices.csv").write_text("\n".join(rows), encoding="utf-8")
    names: dict[str, object] = {}
    exec(compile(code, "README.md", "exec"), names)
    costing = names["costing"]
    assert isinstance(costing, scalepan.Costing)
    # 5 kg of leeks at 0.44 EP/AP (USDA SR28 11246) need twelve packs of 1 kg: 11.364 kg.
    assert costing.shopping[0].packs == [(12, "1 kg")]


def shown_commands(page: str) -> list[tuple[str, str]]:
    """Each command shown with what stands below it."""
    blocks = re.findall(r"```text\n(\$ scalepan .*?)```", page, flags=re.DOTALL)
    examples = [example for block in blocks for example in block.split("$ scalepan ")[1:]]
    return [(command, printed) for command, printed in (e.split("\n", 1) for e in examples)]


@pytest.mark.parametrize(
    ("page", "commands"), [("README.md", 7), ("docs/recipes.md", 2), ("docs/buying.md", 8)]
)
def test_every_command_shown_prints_what_is_shown(
    page: str,
    commands: int,
    tmp_path: Path,
    capsys: pytest.CaptureFixture[str],
    monkeypatch: pytest.MonkeyPatch,
) -> None:
    text = (ROOT / page).read_text(encoding="utf-8")
    for name, content in re.findall(r"```(?:toml|csv)\n# (\S+)\n(.*?)```", text, flags=re.DOTALL):
        (tmp_path / name).write_text(content, encoding="utf-8")
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    examples = shown_commands(text)
    assert len(examples) == commands
    for command, printed in examples:
        status = main(shlex.split(command))
        shown = capsys.readouterr()
        assert shown.out + shown.err == printed
        assert status == (1 if shown.err else 0)


@pytest.mark.parametrize("page", ["README.md", "docs/recipes.md", "docs/buying.md"])
def test_every_recipe_file_shown_is_read(page: str, tmp_path: Path) -> None:
    text = (ROOT / page).read_text(encoding="utf-8")
    files = re.findall(r"```toml\n(?:# (\S+\.toml)\n)?(.*?)```", text, flags=re.DOTALL)
    files = [(name, content) for name, content in files if "dishes = [" not in content]
    for name, content in files:
        (tmp_path / (name or "dish.toml")).write_text(content, encoding="utf-8")
    assert files
    for name, _ in files:
        recipe = scalepan.read_recipe(tmp_path / (name or "dish.toml"))
        assert recipe.scale(portions=40).portions == 40


def test_the_lines_said_to_be_read_are_read_and_those_refused_are_refused() -> None:
    section = README.split("## Lines as cooks write them")[1].split("\n## ")[0]
    rows = re.findall(r"^\| (`.*) \| .* \|$", section, flags=re.MULTILINE)
    said = [line for row in rows for line in re.findall(r"`([^`]+)`", row)]
    others = section.split("Refused, among others:")[1].split("`scalepan")[0]
    refused = re.findall(r"`([^`]+)`", others)
    assert (len(said), len(refused)) == (23, 9)
    foods = ("", " flour", " of flour")  # where the README leaves the food out
    for line in said:
        read = scalepan.read_lines([line + food for food in foods], measures="us")
        assert any(isinstance(one, scalepan.WrittenLine) for one in read), line
    for line in refused:
        read = scalepan.read_lines([line + food for food in foods], measures="us")
        assert all(isinstance(one, scalepan.Error) for one in read), line
