"""The demo prints what independent arithmetic gives; its prices are invented."""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from scalepan.demo import demo_costings, demo_files, demo_folder, draw_curve, lines_of_demo


def test_the_till_for_forty_is_the_sum_of_its_packs() -> None:
    _, large = demo_costings()
    # Packs worked out by hand from the needs: fennel 7 kg EP / 0.72 = 9.722 kg, tins of 240 g,
    # 20 onions of 110 g EP / 0.9, 30 cloves of 3 g EP / 0.87, and so on down the recipe.
    prices = {
        "fennel": 9 * Fraction("3.20") + 3 * Fraction("1.05"),
        "butter beans": 10 * Fraction("0.95"),
        "onions": Fraction("2.60"),
        "garlic": Fraction("1.80"),
        "eggs": 4 * Fraction("2.90"),
        "plain yoghurt": Fraction("1.25") + Fraction("2.15"),
        "olive oil": Fraction("5.40"),
        "paprika": Fraction("2.20"),
        "parsley": 3 * Fraction("1.60"),
        "bay leaf": Fraction("1.50"),
        "salt": Fraction("0.45"),
    }
    assert {row.item: row.price.value for row in large.shopping} == prices
    assert large.till.value == sum(prices.values()) == Fraction("75.20")


def test_only_the_eggs_left_from_a_box_are_to_be_looked_at() -> None:
    small, large = demo_costings()
    assert large.to_check == []
    assert small.to_check == ["eggs: what is left keeps 21 days and is counted as kept"]
    assert small.unpriced == large.unpriced == []


def test_the_demo_says_what_times_ten_would_have_said_wrongly() -> None:
    small, large = demo_costings()
    text = "\n".join(lines_of_demo(80))
    assert f"{float(small.till.value * 10):.2f} EUR" in text
    assert f"{float(small.till.value * 10 - large.till.value):.2f} EUR" in text
    assert "All prices are invented." in text


def test_an_own_trim_test_runs_the_fennel_and_the_totals_alone() -> None:
    text = "\n".join(lines_of_demo(80))
    # 7 kg at 0.68 are 10.294 kg: ten packs of 1 kg and two of 250 g, 34.10 where it was 31.95.
    assert "10 x 1 kg + 2 x 250 g" in text
    assert "77.35 EUR" in text
    after = text.split("After a trim test of your own")[1]
    assert "fennel.buy, fennel.packs" in " ".join(after.split())
    assert "onions" not in after


def test_the_curve_is_drawn(tmp_path: Path) -> None:
    pytest.importorskip("matplotlib")
    picture = tmp_path / "curve.png"
    draw_curve(str(picture))
    assert picture.read_bytes().startswith(b"\x89PNG")


def test_the_demo_is_laid_into_a_folder_of_its_own(tmp_path: Path) -> None:
    folder = tmp_path / "kitchen" / "demo"
    assert demo_folder(folder) == str(folder)
    files = [Path(file) for file in demo_files()]
    assert sorted(folder.iterdir()) == [folder / file.name for file in files]
    assert [(folder / file.name).read_text() for file in files] == [
        file.read_text() for file in files
    ]


def test_a_file_of_ones_own_is_never_laid_over(tmp_path: Path) -> None:
    own = tmp_path / "prices.csv"
    own.write_text("my own prices", encoding="utf-8")
    demo_folder(tmp_path)
    assert own.read_text(encoding="utf-8") == "my own prices"
    assert (tmp_path / "fennel_bake.toml").is_file()


def test_a_folder_that_cannot_be_made_is_told(tmp_path: Path) -> None:
    (tmp_path / "demo").write_text("", encoding="utf-8")
    with pytest.raises(scalepan.FileError) as caught:
        demo_folder(tmp_path / "demo")
    assert str(caught.value) == f"{tmp_path / 'demo'}: cannot make the folder: File exists"
    assert caught.value.code == "file.unwritable"
