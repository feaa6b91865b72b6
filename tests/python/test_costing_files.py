"""Costings in files: read back as they were, whatever holds today, and refreshed.

All prices are invented.
"""

from __future__ import annotations

import builtins
import contextlib
import json
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from costing_model import DISHES, PORTIONS, Item, costed
from dishes import HEAD, dish, prices
from hypothesis import given, settings
from hypothesis import strategies as st
from scalepan_command.start import main
from sheet_agreement import expect_agreement

LEEKS = "leeks,AP,1 kg,2.10,GBP,no"
SHELF = (LEEKS, "leeks,AP,500 g,1.20,GBP,no", "pearl barley,AP,500 g,0.95,GBP,yes")


def pot(*shelf: str, catalog: scalepan.Catalog | None = None) -> scalepan.Costing:
    text = (
        'name = "Pot"\nserves = 4\nmeasures = "us"  # of the old card\n'
        'lines = ["500 g leeks, trimmed", "1 cup pearl barley"]\n'
    )
    recipe = scalepan.parse_recipe(text, file="pot.toml", catalog=catalog)
    return scalepan.cost(recipe.scale(portions=40), prices(*(shelf or SHELF)))


def figures(costing: scalepan.Costing) -> dict[str, str]:
    return {name: str(costing.sheet.value(name)) for name in costing.cells}


def whys(costing: scalepan.Costing) -> list[str]:
    return [costing.why(name) for name in costing.cells]


@settings(max_examples=60, deadline=None)
@given(DISHES, st.integers(1, 12), PORTIONS)
def test_any_dish_is_read_back_with_the_figures_of_its_plan(
    items: list[Item], serves: int, portions: Fraction
) -> None:
    text = costed(items, serves, portions).text()
    expect_agreement(costed(items, serves, portions), scalepan.parse_costing(text))
    assert scalepan.parse_costing(text).text() == text


def test_derivations_are_read_back_with_their_sources_and_places() -> None:
    costing = pot()
    again = scalepan.parse_costing(costing.text())
    assert whys(again) == whys(costing)
    assert "[prices.csv:2" in again.why("leeks.packs")
    assert '["500 g leeks, trimmed", pot.toml:4:11]' in again.why("leeks.need")


def test_nothing_else_is_read(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    stock = 'name = "Stock"\nserves = 10\nmakes = "1 kg"\nlines = ["1 kg carrots"]\n'
    (tmp_path / "stock.toml").write_text(stock, encoding="utf-8")
    soup = (
        'name = "Soup"\nserves = 4\nregion = "GB"\nbases = { stock = "stock.toml" }\n'
        'lines = ["500 g leeks, trimmed", "500 g of the stock"]\n'
    )
    (tmp_path / "soup.toml").write_text(soup, encoding="utf-8")
    recipe = scalepan.read_recipe(tmp_path / "soup.toml").scale(portions=14, spare=2)
    shelf = prices(LEEKS, "carrots,AP,1 kg,0.80,GBP,yes")
    costing = scalepan.cost(recipe, shelf, strict=True, taxes="without", day="2026-11-20")
    costing.save(tmp_path / "kept.toml")
    known, told = figures(costing), costing.to_check
    (tmp_path / "soup.toml").unlink()
    (tmp_path / "stock.toml").unlink()
    scalepan.bundled_catalog.cache_clear()
    opened = []

    def watched(path: object, *arguments: object, **named: object) -> object:
        opened.append(Path(str(path)).name)
        return real(path, *arguments, **named)  # type: ignore[call-overload]

    real = builtins.open
    monkeypatch.setattr(builtins, "open", watched)
    again = scalepan.read_costing(tmp_path / "kept.toml")
    assert figures(again) == known
    assert [name for name in opened if not name.endswith(".py")] == ["kept.toml"]
    assert again.to_check == told
    assert again.recipe.made == 16
    assert again.options | {"stock": None} == {
        "strict": True,
        "taxes": "without",
        "stock": None,
        "day": "2026-11-20",
    }


def test_what_is_on_hand_own_facts_and_terms_are_kept() -> None:
    own = scalepan.catalog_with(
        [{"fact": "own.leek", "food": "leeks", "kind": "edible", "value": "0.50 EP/AP"}]
    )
    text = (
        'name = "Pot"\nserves = 4\nmeasures = "us"\n'
        'lines = ["500 g leeks, trimmed", "1 cup pearl barley"]\n'
    )
    recipe = scalepan.parse_recipe(text, catalog=own).scale(portions=40)
    shelf = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps,shop,date,offer,tax,deposit\n"
        "leeks,AP,1 kg,2.10,GBP,no,market,2026-11-20,3 for 6.00,7 % added,\n"
        "pearl barley,AP,1 pint,1.05,GBP,30 days,mill,2026-11-19,,,0.15\n",
        file="prices.csv",
        measures="imperial",
    )
    stock = scalepan.parse_stock(
        "item,stage,amount,value,currency,use_by\nleeks,AP,1200 g,2.00,GBP,2026-11-30\n",
        file="larder.csv",
    )
    costing = scalepan.cost(recipe, shelf, stock=stock, day="2026-11-21")
    again = scalepan.parse_costing(costing.text())
    assert whys(again) == whys(costing)
    expect_agreement(
        scalepan.cost(recipe, shelf, stock=stock, day="2026-11-21"),
        scalepan.parse_costing(costing.text()),
    )
    # 5 kg EP at a half are 10 kg, of which 1.2 kg is on hand: nine packs, three at a time for 6.00,
    # and 7 % on top.
    assert again.explain("leeks.till").figure == figures(costing)["leeks.till"]
    assert again.sheet.value("leeks.till") == scalepan.quantity("18.00 GBP") * Fraction("1.07")


def test_overrides_own_cells_and_variants_are_kept() -> None:
    costing = pot()
    costing.override("leeks.edible", "0.5", why="own trim, 3 cases", who="the night cook")
    costing.sheet.set("guests", 36)
    costing.sheet.define("a_guest", "till / guests")
    costing.sheet.variants["a full dome"] = scalepan.Changes()
    costing.sheet.variants["a full dome"].set("portions", 60)
    text = costing.text()
    again = scalepan.parse_costing(text)
    assert figures(again) == figures(costing)
    assert again.to_check == costing.to_check
    assert again.text() == text
    # 5 kg at a half: ten packs of 2.10, and four of barley for 10 cups of 200 g.
    assert again.till == scalepan.quantity("24.80 GBP")
    assert again.sheet.told("a_guest") == costing.sheet.told("a_guest")
    side = again.sheet.compare(["leeks.need"])
    assert side.outcome("leeks.need", "a full dome") == scalepan.quantity("7500 g EP")


def test_a_refresh_lists_what_moved() -> None:
    costing = pot()
    costing.override("leeks.edible", "0.5", why="own trim, 3 cases")
    shelf = prices("leeks,AP,1 kg,2.30,GBP,no", SHELF[2], "pearl barley,AP,1 kg,1.70,GBP,yes")
    dear = costing.refresh(shelf)
    assert [str(moved) for moved in dear.prices] == [
        "leeks AP, 1 kg: 2.10 GBP -> 2.30 GBP",
        "gone: leeks AP, 500 g = 1.20 GBP",
        "new: pearl barley AP, 1 kg = 1.70 GBP",
    ]
    assert dear.facts == []
    moved = {one.name: (one.was, one.now) for one in dear.figures}
    # Ten packs of leeks each way; two kilograms of barley now come as two packs of 1.70.
    assert moved["till"] == ("24.80 GBP", "26.40 GBP")
    assert moved["pearl_barley.packs"] == ("4 x 500 g", "2 x 1 kg")
    assert "leeks.buy" not in moved
    assert dear.costing.till == scalepan.quantity("26.40 GBP")
    assert dear.refused == []
    assert "leeks.edible is overridden" in dear.costing.to_check[0]
    assert "gone: leeks AP, 500 g = 1.20 GBP\n" in str(dear)
    assert str(pot().refresh()) == "nothing moved"


def test_a_refresh_heeds_facts_and_tells_changes_without_a_place() -> None:
    own = scalepan.catalog_with(
        [{"fact": "own.leek", "food": "leeks", "kind": "edible", "value": "0.50 EP/AP"}]
    )
    costing = pot(catalog=own)
    costing.override("leeks.edible", "0.55", why="own trim, 1 case")
    found = costing.refresh(prices("leeks,EP,1 kg,4.10,GBP,no", SHELF[2]))
    assert [str(moved) for moved in found.facts] == ["gone: own.leek = 0.5 EP/AP"]
    assert found.missing == ["own.leek"]
    assert str(found).splitlines()[0] == (
        "1 fact of your own that the kept costing goes by is not among the facts given (own.leek): "
        "give it with --facts FILE, or catalog=scalepan.read_facts(FILE)"
    )
    assert costing.refresh(catalog=own).missing == []
    # Trimmed leeks need no share.
    assert found.refused == ['no cell is called "leeks.edible"']
    assert found.costing.sheet.value("leeks.till") == scalepan.quantity("20.50 GBP")


def test_a_figure_that_is_at_least_something_is_told_by_the_minor_unit() -> None:
    """Thirds of a kilogram of leeks at 2.10, and barley without a price."""
    third = scalepan.parse_recipe(
        'name = "Pot"\nserves = 3\nlines = ["1 kg leeks", "100 g pearl barley"]\n',
        file="pot.toml",
    )
    both = prices("leeks,AP,1 kg,2.20,GBP,yes", "pearl barley,AP,100 g,0.50,GBP,yes")
    found = scalepan.cost(third.scale(portions=1), both).refresh(
        prices("leeks,AP,1 kg,2.20,GBP,yes")
    )
    moved = {one.name: (one.was, one.now) for one in found.figures}
    # 2.20 / 3 is 0.7333..., and with a third of 0.50 it is 0.90.
    assert moved["borne"] == ("0.90 GBP", "at least ≈ 0.73 GBP")
    assert moved["till"] == ("2.70 GBP", "at least 2.20 GBP")


def test_a_recipe_without_a_file_and_things_put_in_cells_are_refused() -> None:
    costing = pot()
    other = pot("leeks,AP,1 kg,3.00,GBP,no")
    costing.sheet.set("leeks.offers", other.sheet.value("leeks.offers"))
    with pytest.raises(scalepan.CostError) as caught:
        costing.text()
    assert str(caught.value) == (
        "leeks.offers was given offers of weight AP in GBP, which a file cannot hold "
        "(cost the recipe by other prices or facts)"
    )
    with pytest.raises(scalepan.SheetError) as sheet:
        pot().sheet.text()
    assert str(sheet.value) == (
        "leeks.food holds a food, which the file of a sheet cannot hold "
        "(save the costing: costing.save(path))"
    )
    inside = dish(
        "Soup",
        "1 kg of the stock",
        extra='bases = { stock = { name = "Stock", serves = 4, lines = ["1 kg carrots"] } }',
    )
    base = inside.bases[0].recipe
    with pytest.raises(scalepan.CostError) as alone:
        scalepan.cost(base, prices("carrots,AP,1 kg,0.80,GBP,yes")).text()
    assert str(alone.value) == (
        "Stock is no recipe that was read from a text of its own "
        "(cost the recipe that its file has)"
    )


KEPT = pot().text()


@pytest.mark.parametrize(
    ("old", "new", "told"),
    [
        ("scalepan_costing = 1", "scalepan_costing = 2", "kept.toml:1:20: the file has version 2, "
         "but this Scalepan reads up to 1 (install a newer Scalepan)"),
        ("scalepan_costing = 1\n", "", "kept.toml: the file says no version "
         "(it begins with scalepan_costing = 1)"),
        ("served = 40", "served = 0", "kept.toml:5:10: a recipe cannot be made for 0 portions "
         "(the number of portions must be above zero)"),
        ("served = 40\n", "", "kept.toml:3:1: costing has no served"),
        ('recipe = "pot.toml"', 'recipe = "../etc/pot.toml"',
         "kept.toml:4:11: no text of ../etc/pot.toml is kept"),
        ("serves = 4", "serves = 0", "kept.toml:4:11: pot.toml:2:10: serves is 0, but must be "
         "above zero (write the number of portions the amounts are for)"),
        ('price = "2.10"', 'price = "-2.10"', "kept.toml:19:3: the price -2.10 is below zero"),
        ('price = "2.10"', "price = 2.10", "kept.toml:19:60: pinned prices 1 price is not a text"),
        ('value = "0.44 EP/AP"', 'value = "0.44 AP"',
         "kept.toml:36:3: fact leek.edible: an edible share is in EP/AP, but 0.44 AP is written"),
        ("[pinned]", "[pins]", 'kept.toml:17:1: unknown key "pins" (keys: scalepan_costing, '
         "costing, recipes, pinned, chosen, sheet, variants)"),
        ('layer = "bundled"', 'layer = "guessed"', 'kept.toml:35:3: "guessed" is no '
         "layer of facts (layers: own, bundled, dataset, convention)"),
    ],
)  # fmt: skip
def test_what_a_file_has_wrong_is_told_with_its_place(old: str, new: str, told: str) -> None:
    assert old in KEPT
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_costing(KEPT.replace(old, new), file="kept.toml")
    assert str(caught.value) == told


def test_an_error_of_a_kept_recipe_stays_a_recipes() -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_costing(KEPT.replace("serves = 4", "serves = 0"), file="kept.toml")
    assert caught.value.code == "recipe.serves"
    assert caught.value.place == "kept.toml:4:11"


HARM = ["", "\0", "}", "'''", '"', "= =", "9" * 30, "[", "\n", "ß"]


@settings(max_examples=300, deadline=None)
@given(st.integers(0, len(KEPT)), st.integers(0, 40), st.sampled_from(HARM))
def test_a_damaged_file_gives_one_error_or_a_costing(start: int, length: int, harm: str) -> None:
    damaged = KEPT[:start] + harm + KEPT[start + length :]
    with contextlib.suppress(scalepan.Error):
        assert scalepan.parse_costing(damaged, file="kept.toml").till.value >= 0


def test_the_command_line_keeps_refreshes_and_shows_costings(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    recipe, shelf = tmp_path / "pot.toml", tmp_path / "prices.csv"
    recipe.write_text('name = "Pot"\nserves = 4\nlines = ["500 g leeks, trimmed"]\n', "utf-8")
    shelf.write_text(f"{HEAD}{LEEKS}\n", "utf-8")
    kept, now = str(tmp_path / "kept.toml"), str(tmp_path / "now.toml")
    size = ["--portions", "40", "--save", kept]
    assert main(["cost", str(recipe), "--prices", str(shelf), *size]) == 0
    shelf.write_text(f"{HEAD}{LEEKS.replace('2.10', '2.30')}\n", "utf-8")
    capsys.readouterr()
    assert main(["refresh", kept, "--prices", str(shelf), "--save", now]) == 0
    # Twelve packs for 5 kg EP at 44 %.
    assert capsys.readouterr().out.splitlines()[:2] == [
        "leeks AP, 1 kg: 2.10 GBP -> 2.30 GBP",
        "leeks.till: 25.20 GBP -> 27.60 GBP",
    ]
    assert main(["sheet", now, "till"]) == 0
    assert capsys.readouterr().out == "27.60 GBP\n"
    assert main(["refresh", kept, "--prices", str(shelf), "--json"]) == 0
    told = json.loads(capsys.readouterr().out)
    assert told["prices"] == [{"name": "leeks AP, 1 kg", "was": "2.10 GBP", "now": "2.30 GBP"}]
    assert {"name": "till", "was": "25.20 GBP", "now": "27.60 GBP"} in told["figures"]
