"""Slips that newcomers make, and the fix that each is told, word for word."""

from __future__ import annotations

from typing import TYPE_CHECKING

import pytest
import scalepan
from scalepan_command.start import main

if TYPE_CHECKING:
    from pathlib import Path

DISH = """name = "Leek barley"
serves = {serves}
measures = "metric"
load = "{load}"
lines = ["{line}", "200 g pearl barley", "4 eggs"]
method = [{{ text = "Sweat the leeks.", uses = ["leeks"], time = "{time}" }}]
"""

PRICES = "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,EUR,no\n"


def dish(
    serves: str = "4", load: str = "12 portions", line: str = "800 g leeks", time: str = ""
) -> str:
    return DISH.format(serves=serves, load=load, line=line, time=time or "12 min")


def refused(text: str) -> str:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_recipe(text, file="d.toml")
    return str(caught.value)


def told(words: list[str], capsys: pytest.CaptureFixture[str]) -> list[str]:
    assert main(words) == 1
    return capsys.readouterr().err.splitlines()


def test_a_misspelt_unit_of_time_is_told_by_times() -> None:
    assert refused(dish(time="12 minuts")) == 'd.toml:6:69: unknown unit "minuts" (nearest: min)'
    assert refused(dish(time="1 huor")) == 'd.toml:6:68: unknown unit "huor" (nearest: h)'
    assert refused(dish(time="1 glorp")) == 'd.toml:6:68: unknown unit "glorp"'


def test_a_number_in_words_is_told_by_figures() -> None:
    assert refused(dish(serves='"four"')) == (
        'd.toml:2:11: no number is written in "four" (write one number in figures, as 4 or 1.5)'
    )


def test_a_bare_load_may_mean_portions() -> None:
    assert refused(dish(load="12")) == (
        "d.toml:4:9: a load takes 12 pieces, but how much the recipe makes in count is not known "
        '(write "12 portions", or state it: makes = "...")'
    )


def test_gr_is_a_gram_or_a_grain() -> None:
    # 7000 grains are an avoirdupois pound: NIST Handbook 44, appendix C.
    assert refused(dish(line="800 gr leeks")) == (
        'd.toml:5:15: "gr" has no agreed size '
        "(nearest: g; in old books it is a grain, of which a pound has 7000)"
    )


def test_kinds_that_only_a_food_links_ask_for_the_food(
    capsys: pytest.CaptureFixture[str],
) -> None:
    with pytest.raises(scalepan.MeasureError) as caught:
        scalepan.convert("2 cups", "g AP", measures="us")
    assert caught.value.hint == 'say of which food: food="granulated sugar"'
    assert told(["convert", "2 cups", "g", "--measures", "us"], capsys) == [
        "scalepan: cannot turn 2 cup_us into g: volume and weight [quantity.convert]",
        '  say of which food: --food "granulated sugar"',
    ]
    # No food makes a time of a volume.
    assert told(["convert", "2 cups", "min", "--measures", "us"], capsys) == [
        "scalepan: cannot turn 2 cup_us into min: volume and time [quantity.convert]"
    ]


@pytest.mark.parametrize(
    ("most", "lines"),
    [
        ("50 €", ['scalepan: "€" cannot be read after "50 " [amount.unreadable]']),
        ("€50", ['scalepan: no number is written at the start of "€50" [amount.unreadable]']),
        ("$ 50", ['scalepan: no number is written at the start of "$ 50" [amount.unreadable]']),
    ],
)
def test_a_sign_of_money_is_told_by_its_code(
    most: str, lines: list[str], tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    (tmp_path / "d.toml").write_text(dish(), encoding="utf-8")
    (tmp_path / "p.csv").write_text(PRICES, encoding="utf-8")
    words = ["spend", str(tmp_path / "d.toml"), "--prices", str(tmp_path / "p.csv"), "--most", most]
    hint = "  write the code of the currency behind the number: 50 EUR"
    assert told(words, capsys) == [*lines, hint]


def test_lines_that_no_step_uses_are_told_together(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, capsys: pytest.CaptureFixture[str]
) -> None:
    monkeypatch.chdir(tmp_path)  # so that no long path breaks the lines
    path = "d.toml"
    (tmp_path / path).write_text(dish(), encoding="utf-8")
    note = "pearl_barley, eggs: no step of the method uses them"
    costing = scalepan.cost(scalepan.read_recipe(path), scalepan.parse_prices(PRICES))
    assert [each for each in costing.to_check if "no step" in each] == [note]
    assert f"- {note}" in scalepan.hand_over(scalepan.read_recipe(path))
    assert main(["check", path]) == 0
    shown = " ".join(capsys.readouterr().out.split())
    assert (
        f'd.toml:5:26: {note} [check.line] a step says what it takes: uses = ["pearl_barley", ...]'
    ) in shown
