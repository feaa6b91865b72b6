"""What the README shows is what the current build prints."""

from __future__ import annotations

import re
import shlex
from pathlib import Path

import pytest
import scalepan
from scalepan.demo import lines_of_demo
from scalepan_command.start import main

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
    write_files(README, tmp_path)
    code = "\n".join(re.findall(r"```python\n(.*?)```", README, flags=re.DOTALL))
    assert "read_costing" in code
    names: dict[str, object] = {}
    exec(compile(code, "README.md", "exec"), names)
    costing = names["costing"]
    assert isinstance(costing, scalepan.Costing)
    # 5 kg of leeks at 0.44 EP/AP (USDA SR28 11246) are 11.364 kg.
    assert costing.shopping[0].packs == [(11, "1 kg"), (1, "500 g")]
    assert "costing.shopping[0].packs  # [(11, '1 kg'), (1, '500 g')]\n" in code
    assert costing.unpriced == []
    assert f'"{costing.borne.told_money}"\n' in code


def test_every_command_listed_runs_on_the_files_shown(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)
    files = write_files(README, tmp_path)
    assert files == {
        *("soup.toml", "prices.csv", "larder.csv", "week.toml"),
        *("own.csv", "celeriac.csv", "my_sets.csv"),
    }
    blocks = re.findall(r"```sh\n(.*?)```", README, flags=re.DOTALL)
    commands = [line for block in blocks for line in block.splitlines()]
    commands = [line for line in commands if line.startswith("scalepan ")]
    commands += re.findall(r"`(scalepan [a-z]+ [^`]*\"[^`]*)`", README)
    assert len(commands) == 26
    for command in commands:
        assert main(shlex.split(command, comments=True)[1:]) == 0, command
        assert ": not priced:" not in capsys.readouterr().out, command


def test_the_figures_said_of_the_files_are_those_they_give(tmp_path: Path) -> None:
    write_files(README, tmp_path)
    own = scalepan.read_facts(tmp_path / "own.csv")
    soup = scalepan.read_recipe(tmp_path / "soup.toml", catalog=own).scale(portions=40)
    prices = scalepan.read_prices(tmp_path / "prices.csv")
    assert "5 kg of trimmed leeks take 10 kg" in README
    assert scalepan.cost(soup, prices).shopping[0].need == scalepan.quantity("10 kg AP")
    garlic = scalepan.parse_recipe(
        'name = "Garlic"\nserves = 1\nlines = ["4 cloves garlic"]', catalog=own
    )
    head = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\ngarlic,AP,1 head,0.60,EUR,yes\n"
    )
    assert "`4 cloves garlic` are bought by the `1 head`" in README
    assert scalepan.cost(garlic, head).shopping[0].packs == [(1, "1 head")]


def write_files(page: str, folder: Path) -> set[str]:
    """The files that a page shows, written into a folder."""
    files = dict(re.findall(r"```(?:toml|csv)\n# (\S+)\n(.*?)```", page, flags=re.DOTALL))
    files |= dict(re.findall(r"`(\S+\.csv)`:\n\n```csv\n(.*?)```", page, flags=re.DOTALL))
    for name, content in files.items():
        (folder / name).write_text(content, encoding="utf-8")
    return set(files)


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
    write_files(text, tmp_path)
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
    assert (len(said), len(refused)) == (24, 9)
    foods = ("", " flour", " of flour")  # where the README leaves the food out
    for line in said:
        read = scalepan.read_lines([line + food for food in foods], measures="us")
        assert any(isinstance(one, scalepan.WrittenLine) for one in read), line
    for line in refused:
        read = scalepan.read_lines([line + food for food in foods], measures="us")
        assert all(isinstance(one, scalepan.Error) for one in read), line


def test_what_is_said_of_second_measures_and_of_prices_without_a_currency_holds() -> None:
    assert "a fifth apart is an error; of two kinds, as in `200 g (1 cup) gruyere`" in README
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.read_line("250 g (12 oz) flour")
    assert caught.value.code == "line.second_measure"
    dish = 'name = "Dish"\nserves = 4\nmeasures = "us"\nlines = ["200 g (1 cup) gruyere"]'
    cheese = scalepan.parse_recipe(dish)
    apart = "gruyere: its second measure, 1 cup, lies more than a fifth from the first"
    assert scalepan.cost(cheese, book("EUR")).to_check == [apart]
    assert "where no row of a costing names one" in README
    assert scalepan.cost(cheese, book("")).to_check == [apart, "the prices name no currency"]
    with pytest.raises(scalepan.CostError) as of_two:
        scalepan.cost(cheese, book("EUR", "gruyere,AP,500 g,9.00,,no\n"))
    assert of_two.value.message == (
        "prices in EUR (gruyere) and in no currency (gruyere) meet in one costing"
    )


def book(currency: str, more: str = "") -> scalepan.PriceBook:
    header = "item,sold_as,pack,price,currency,keeps\n"
    return scalepan.parse_prices(f"{header}gruyere,AP,250 g,4.50,{currency},no\n{more}")


def test_a_dish_of_your_own_begins_with_the_environment() -> None:
    section = README.split("## Your own dish\n\n```sh\n")[1]
    assert section.startswith("source .venv/bin/activate ")
    makefile = (ROOT / "Makefile").read_text(encoding="utf-8")
    assert "Your own dish: source $(VENV)/bin/activate, then scalepan new night_kitchen" in makefile
