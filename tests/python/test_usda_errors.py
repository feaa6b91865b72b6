"""What is wrong with the files of a USDA release is said with file, line and column."""

from __future__ import annotations

from pathlib import Path

import pytest
import scalepan

LEEKS = "~11246~^~1100~^~Leeks, raw~^~LEEKS~^~~^~~^~Y~^~Tops~^56^~~^6.25^2.44^8.37^3.57\n"


def release(folder: Path, foods: str | None, weights: str | None) -> Path:
    for name, text in (("FOOD_DES.txt", foods), ("WEIGHT.txt", weights)):
        if text is not None:
            (folder / name).write_text(text, encoding="latin-1")
    return folder


def refusal(folder: Path) -> str:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.read_usda_sr(folder)
    text = f"{caught.value.code}: {caught.value}"
    return text.replace(f"{folder}/", "").replace(str(folder), "folder")


@pytest.mark.parametrize(
    ("foods", "weights", "said"),
    [
        (
            LEEKS,
            "~11246~^1^1^~cup~^89g^^\n",
            "food.release: WEIGHT.txt:1:19: a number belongs here, but 89g is written",
        ),
        (
            LEEKS,
            "~11246~^1^1^cup^89^^\n",
            "food.release: WEIGHT.txt:1:13: a text stands between tildes, but cup is written",
        ),
        (
            LEEKS,
            "~11246~^1^1^~cup~^89\n",
            "food.release: WEIGHT.txt:1:19: the row has 5 fields, 7 belong there",
        ),
        (LEEKS + LEEKS, "", "food.release: FOOD_DES.txt:2:1: the food 11246 is there twice"),
        (LEEKS, None, "file.unreadable: folder: the folder has neither WEIGHT.txt nor ABBREV.txt"),
        (
            None,
            "",
            "file.unreadable: FOOD_DES.txt: cannot read the file: No such file or directory "
            "(looked in folder)",
        ),
    ],
)
def test_what_is_wrong_with_a_release_is_said(
    tmp_path: Path, foods: str | None, weights: str | None, said: str
) -> None:
    assert refusal(release(tmp_path, foods, weights)) == said


def test_a_release_is_laid_over_once(tmp_path: Path) -> None:
    folder = release(tmp_path, LEEKS, "")
    once = scalepan.read_usda_sr(folder)
    with pytest.raises(scalepan.FoodError) as caught:
        scalepan.read_usda_sr(folder, catalog=once)
    assert caught.value.message == "the food sr28_11246 is there twice"
    assert scalepan.read_usda_sr(folder, release="SR27", catalog=once).food_of("sr27 11246")
