"""``scalepan foods``, foods of your own, and price books that are joined. Own figures are invented.

Densities and shares of bundled foods: USDA SR28, as the sources beside them say.
"""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path
from typing import Any

import pytest
import scalepan
from scalepan_command.start import main

OWN = 'fact,food,kind,value,source\nown.kohlrabi,kohlrabi,edible,0.6 EP/AP,"own trim, 2 cases"\n'
PAN = """\
name = "Kohlrabi pan"
serves = 4
tested_at = [4]
lines = ["600 g kohlrabi, peeled"]
"""
HEAD = "item,sold_as,pack,price,currency,keeps,shop,date\n"


@pytest.fixture(autouse=True)
def in_folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    files = {
        "own.csv": OWN,
        "foods.csv": "food\nkohlrabi\n",
        "pan.toml": PAN,
        "market.csv": HEAD + "kohlrabi,AP,500 g,1.20,EUR,no,market,\n",
    }
    for name, text in files.items():
        Path(name).write_text(text, encoding="utf-8")


def printed(capsys: pytest.CaptureFixture[str], *words: str, status: int = 0) -> list[str]:
    assert main(list(words)) == status
    shown = capsys.readouterr()
    return (shown.err if status else shown.out).splitlines()


def document(capsys: pytest.CaptureFixture[str], *words: str) -> dict[str, Any]:
    assert main([*words, "--json"]) == 0
    found = json.loads(capsys.readouterr().out)
    assert isinstance(found, dict)
    return found


def test_a_food_is_found_by_the_beginnings_of_its_words(capsys: pytest.CaptureFixture[str]) -> None:
    # SR28 20027: 128 g a cup, no refuse.
    assert printed(capsys, "foods", "Maize", "st") == [
        "corn starch (corn_starch)",
        "  also called: cornflour (GB, AU), corn flour (GB, AU), cornstarch (US), maize",
        "  starch",
        "  fact                 value         source",
        "  -------------------  ------------  ---------------------------",
        "  corn_starch.density  128 g/cup_us  USDA SR28 20027, cup 128 g",
        "  corn_starch.edible   1 EP/AP       USDA SR28 20027, refuse 0 %",
    ]
    (leek,) = document(capsys, "foods", "baby", "leeks")["foods"]
    assert (leek["food"], leek["plural"], leek["near"]) == ("leek", "leeks", ["baby leek"])
    # SR28 11246: refuse 56 %.
    (edible,) = [fact for fact in leek["facts"] if fact["fact"] == "leek.edible"]
    assert edible["value"] == "0.44 EP/AP"
    assert edible["layer"] == "bundled"


def test_without_a_word_all_foods_are_listed(capsys: pytest.CaptureFixture[str]) -> None:
    lines = printed(capsys, "foods")
    count = scalepan.bundled_catalog().food_count
    assert lines[-1] == f"  {count} foods; scalepan foods WORD shows the facts about some"
    assert len(document(capsys, "foods")["foods"]) == count


def test_a_food_of_your_own_is_known_with_its_facts(capsys: pytest.CaptureFixture[str]) -> None:
    assert printed(capsys, "foods", "kohlrabi", status=1) == [
        'scalepan: no food is called "kohlrabi" [food.unknown]',
        "  a food of your own needs a table with a column food: --foods FILE",
    ]
    own = ("--foods", "foods.csv", "--facts", "own.csv")
    assert printed(capsys, "foods", "kohlrabi", *own) == [
        "kohlrabi (kohlrabi)",
        "  fact          value      source",
        "  ------------  ---------  -----------------",
        "  own.kohlrabi  0.6 EP/AP  own trim, 2 cases",
    ]
    # 600 g peeled / 0.6 = 1 kg: two packs.
    cost = document(capsys, "cost", "pan.toml", "--prices", "market.csv", "--strict", *own)
    assert cost["till"]["value"] == "12/5"
    converted = document(capsys, "convert", "1 kg AP", "g EP", "--food", "kohlrabi", *own)
    assert converted["amount"]["value"] == "600"


def test_a_fact_about_an_unknown_food_says_how_one_comes_in(
    capsys: pytest.CaptureFixture[str],
) -> None:
    assert printed(capsys, "foods", "--facts", "own.csv", status=1) == [
        "scalepan: own.csv:2: the fact own.kohlrabi is about an unknown food kohlrabi "
        "[food.unknown]",
        "  a food of your own needs a table with a column food: --foods FILE, or foods=",
    ]
    Path("own.csv").write_text(OWN.replace(",kohlrabi", ",leks"), encoding="utf-8")
    assert printed(capsys, "foods", "--facts", "own.csv", status=1) == [
        "scalepan: own.csv:2: the fact own.kohlrabi is about an unknown food leks [food.unknown]",
        "  nearest: leeks, elk, leek; a food of your own needs a table with a column food: --foods "
        "FILE, or foods=",
    ]


def test_the_facts_of_a_yield_test_are_taken_with_the_food(
    capsys: pytest.CaptureFixture[str],
) -> None:
    trials = "trial,what,part,weight\n1,bought,kohlrabi,2 kg\n1,loss,,rest\n1,edible,,1.3 kg\n"
    Path("trials.csv").write_text(trials, encoding="utf-8")
    facts = printed(capsys, "yield", "trials.csv", "--as-facts")
    Path("tested.csv").write_text("\n".join(facts) + "\n", encoding="utf-8")
    own = ("--foods", "foods.csv", "--facts", "tested.csv")
    (kohlrabi,) = document(capsys, "foods", "kohlrabi", *own)["foods"]
    # 1.3 kg of 2 kg.
    assert [fact["value"] for fact in kohlrabi["facts"]] == ["0.65 EP/AP"]


def test_rows_of_all_price_books_named_count(capsys: pytest.CaptureFixture[str]) -> None:
    Path("store.toml").write_text(
        'prices = [{ item = "salt", sold_as = "AP", pack = "500 g", price = "0.45", '
        'currency = "EUR", keeps = "yes", shop = "store" }]\n',
        encoding="utf-8",
    )
    Path("pan.toml").write_text(PAN.replace('"]', '", "20 g salt"]'), encoding="utf-8")
    books = ("--prices", "market.csv", "--prices", "store.toml")
    own = ("--foods", "foods.csv", "--facts", "own.csv")
    # 2 x 1.20 and 0.45.
    assert document(capsys, "cost", "pan.toml", *books, *own)["till"]["value"] == "57/20"
    told = "\n".join(printed(capsys, "why", "pan.toml", "salt.till", *books, *own))
    assert "store.toml:1:21" in told
    # What holds on the day is looked for in all of them: the newer row of one pack counts.
    Path("news.csv").write_text(
        HEAD + "kohlrabi,AP,500 g,1.50,EUR,no,market,2026-11-20\n", encoding="utf-8"
    )
    newer = (*books, "--prices", "news.csv")
    cost = document(capsys, "cost", "pan.toml", *newer, *own)
    assert cost["till"]["value"] == "69/20"
    assert printed(
        capsys, "cost", "pan.toml", "--prices", "news.csv", "--prices", "news.csv", status=1
    ) == [
        "scalepan: news.csv:2:1: the pack 500 g of kohlrabi is priced twice, here and at "
        "news.csv:2:1 [price.duplicate]",
        "  give the rows different shops or dates, or take one out",
    ]


def test_books_are_joined_in_python() -> None:
    market = scalepan.read_prices("market.csv")
    rows = [{"item": "salt", "sold_as": "AP", "pack": "500 g", "price": "0.45", "keeps": True}]
    salt = scalepan.price_book(rows, currency="EUR")
    both = market + salt
    assert [offer.item for offer in both.offers] == ["kohlrabi", "salt"]
    assert [offer.row["at"] for offer in both.offers] == [
        "market.csv:2:1",
        "row 1 of the price table",
    ]
    assert (len(market), len(salt)) == (1, 1)
    pan = scalepan.parse_recipe(PAN.replace('"]', '", "20 g salt"]'))
    # Without a share all of the 600 g is bought as it is: 2 x 1.20, and 0.45.
    assert scalepan.cost(pan, both).till.value == Fraction("2.85")
    with pytest.raises(scalepan.PriceError) as caught:
        _ = both + market
    assert (caught.value.code, str(caught.value)) == (
        "price.duplicate",
        "market.csv:2:1: the pack 500 g of kohlrabi is priced twice, here and at market.csv:2:1 "
        "(give the rows different shops or dates, or take one out)",
    )
    with pytest.raises(TypeError, match=r"unsupported operand type\(s\) for \+: .*PriceBook"):
        _ = market + 1  # type: ignore[operator]


def test_standard_input_is_one_of_the_books_and_read_once(
    capsys: pytest.CaptureFixture[str],
) -> None:
    with pytest.raises(SystemExit) as leaving:
        main(["cost", "-", "--prices", "market.csv", "--prices", "-"])
    assert leaving.value.code == 2
    assert capsys.readouterr().err.splitlines() == [
        "scalepan: -: standard input is read once, but recipe and prices both name it "
        "[command.line]",
        "  name a file for one of them",
    ]
