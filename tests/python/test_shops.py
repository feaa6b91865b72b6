"""One shop only, or free choice among several."""

from __future__ import annotations

import json
from fractions import Fraction
from typing import TYPE_CHECKING

import pytest
import scalepan
from scalepan_command.start import main

if TYPE_CHECKING:
    from pathlib import Path

PRICES = """item,sold_as,pack,price,currency,keeps,shop,limit
fennel,AP,1 kg,3.20,EUR,no,market hall,
fennel,AP,1 kg,2.90,EUR,no,farm gate,
onions,AP,1 kg,1.30,EUR,yes,market hall,
onions,AP,1 kg,1.60,EUR,yes,farm gate,
salt,AP,500 g,0.45,EUR,yes,market hall,
fennel,AP,500 g,1.00,EUR,no,stall,2
"""


def dish(*lines: str) -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(f'name = "Night pan"\nserves = 4\nlines = [{listed}]\n')


def rows(*lines: str) -> list[tuple[str | None, Fraction | None, list[str]]]:
    found = scalepan.by_shop(dish(*lines), scalepan.parse_prices(PRICES))
    return [
        (
            row.shop,
            row.costing and row.costing.till.value,
            row.costing.unpriced if row.costing else [],
        )
        for row in found
    ]


def test_free_choice_first_then_shops_by_what_they_lack_and_by_their_till() -> None:
    assert rows("900 g AP fennel", "800 g AP onions", "10 g salt") == [
        (None, Fraction("2.00") + Fraction("1.30") + Fraction("0.45"), []),
        ("market hall", Fraction("4.95"), []),
        ("farm gate", Fraction("4.50"), ["salt"]),
        ("stall", Fraction("2.00"), ["onions", "salt"]),
    ]


def test_a_shop_that_sells_too_little_is_named_with_its_reason() -> None:
    found = scalepan.by_shop(dish("1.4 kg AP fennel"), scalepan.parse_prices(PRICES))
    assert [row.shop for row in found] == [None, "farm gate", "market hall", "stall"]
    assert found[-1].costing is None
    assert found[-1].problem == "of fennel at most 1 kg can be bought, but 1.4 kg is needed"


def test_shops_and_days_narrow_the_price_book() -> None:
    text = PRICES.replace("shop,limit", "shop,date").replace(",stall,2", ",stall,2026-11-20")
    prices = scalepan.parse_prices(text)
    assert {offer.shop for offer in prices.on("2026-11-19").offers} == {"market hall", "farm gate"}
    assert {offer.shop for offer in prices.on("2026-11-20", ["stall"]).offers} == {"stall"}


def test_the_newer_row_counts_where_two_spell_the_item_differently() -> None:
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps,shop,date\n"
        "onion,AP,1 kg,0.90,EUR,yes,market hall,2026-10-01\n"
        "onions,AP,1 kg,1.30,EUR,yes,market hall,2026-11-20\n"
    )
    found = scalepan.cost(dish("900 g AP onions"), prices)
    assert found.till.value == Fraction("1.30")
    assert found.to_check == [
        "onions: the pack 1 kg of onion is left out: the row of onions is newer"
    ]


def test_the_command_counts_what_a_shop_takes_at_least(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    pan, prices = tmp_path / "pan.toml", tmp_path / "prices.csv"
    pan.write_text('name = "Night pan"\nserves = 4\nlines = ["800 g AP onions", "5 g salt"]\n')
    prices.write_text(PRICES)
    assert main(["shops", str(pan), "--prices", str(prices)]) == 0
    printed = capsys.readouterr().out.splitlines()
    # What a shop sells in a form that no fact leads to has no price there either.
    assert printed[1].split("  ")[-1] == "not priced there"
    # The stall sells neither, so that no row says in what currency it sells.
    rows = {line.split("  ")[1]: line.split() for line in printed if line.startswith("  ")}
    assert rows["farm gate"][2:-1] == ["at", "least", "1.60", "at", "least", "1.28"]
    assert rows["stall"][1:-2] == ["at", "least", "0.00", "at", "least", "0.00"]


def test_the_command_tells_what_is_past_its_day(
    tmp_path: Path, capsys: pytest.CaptureFixture[str], monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setenv("COLUMNS", "80")
    files = {
        "pan.toml": 'name = "Night pan"\nserves = 4\nlines = ["800 g AP onions"]\n',
        "prices.csv": PRICES,
        "larder.csv": "item,stage,amount,value,currency,use_by\n"
        "onions,AP,1 kg,1.00,EUR,2026-11-20\n",
    }
    paths = {name: tmp_path / name for name in files}
    for name, text in files.items():
        paths[name].write_text(text, encoding="utf-8")
    command = ["shops", str(paths["pan.toml"]), "--prices", str(paths["prices.csv"])]
    command += ["--on-hand", str(paths["larder.csv"]), "--date", "2026-11-25"]
    note = "onions: the 1 kg on hand had to be used by 2026-11-20 and is not counted"
    assert main(command) == 0
    assert capsys.readouterr().out.endswith(f"\n\nTo check\n  - {note}\n")
    assert main([*command, "--json"]) == 0
    assert json.loads(capsys.readouterr().out)["to_check"] == [note]


def test_an_option_that_is_none() -> None:
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cost(dish("1 kg AP fennel"), scalepan.parse_prices(PRICES), taxes="half")
    assert str(caught.value) == 'prices are not counted "half" taxes (there are: with, without)'
