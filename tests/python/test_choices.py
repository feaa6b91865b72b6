"""Least spends, swaps and bases bought ready: against dishes written anew. Prices invented."""

from __future__ import annotations

import json
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from dishes import HEAD
from hypothesis import given, settings
from hypothesis import strategies as st
from scalepan import quantity
from scalepan_command.start import main

FOODS = ("leeks", "onions", "carrots", "celery", "sour cream", "butter")
BOOK = scalepan.parse_prices(
    HEAD
    + "".join(
        f"{food},AP,{grams} g,{grams * (i + 2)}/1000,EUR,{'yes' if i % 2 else 'no'}\n"
        for i, food in enumerate(FOODS)
        for grams in (150, 400)
    )
    + "vegetable stock,AP,1 kg,3.20,EUR,no\n"
)


def dish(*lines: str, serves: int = 4, extra: str = "") -> scalepan.Recipe:
    listed = ", ".join(f'"{line}"' for line in lines)
    return scalepan.parse_recipe(
        f'name = "Dish"\nserves = {serves}\n{extra}\nlines = [{listed}]\n', file="dish.toml"
    )


def costed(recipe: scalepan.Recipe, portions: Fraction | int = 4) -> scalepan.Costing:
    return scalepan.cost(recipe.scale(portions=portions), BOOK)


# Least spends.


@settings(max_examples=60, deadline=None)
@given(st.integers(5, 400), st.integers(5, 400), st.integers(1, 30))
def test_the_least_spend_and_how_far_it_goes(leeks: int, onions: int, portions: int) -> None:
    recipe = dish(f"{leeks} g leeks", f"{onions} g onions")
    least = costed(recipe).least_spend(portions)
    assert least.portions == portions
    assert least.till == costed(recipe, portions).till
    most = portions
    while costed(recipe, most + 1).till <= least.till:
        most += 1
    assert least.most == most
    assert least.till_next == costed(recipe, most + 1).till


def test_a_fixed_dish_takes_no_more_for_any_number() -> None:
    least = costed(dish("1 kg leeks | fixed")).least_spend(3)
    assert (least.most, least.till_next) == (1_000_000, None)


@pytest.mark.parametrize(("portions", "told"), [("2 1/2", "2.5"), (0, "0"), (1_000_001, "1000001")])
def test_portions_are_whole(portions: str | int, told: str) -> None:
    with pytest.raises(scalepan.CostError) as caught:
        costed(dish("1 kg leeks")).least_spend(portions)
    assert (caught.value.code, str(caught.value)) == (
        "cost.portions",
        f"the least spend is asked for {told} portions (give a whole number from 1 to 1000000)",
    )


# Swaps.


@settings(max_examples=60, deadline=None)
@given(
    st.lists(st.integers(5, 400), min_size=4, max_size=4),
    st.integers(1, 12),
    st.sampled_from(["till", "used", "thrown", "borne"]),
)
def test_swaps_equal_dishes_written_anew(grams: list[int], portions: int, by: str) -> None:
    leeks, onions, carrots, celery = grams
    costing = costed(dish(f"{leeks} g leeks", f"{onions} g onions"), portions)
    asked: list[tuple[str, list[str]]] = [
        ("onions", [f"{carrots} g carrots"]),
        ("leeks", [f"{celery} g celery | fixed", f"{carrots} g carrots"]),
        ("onions", [f"{celery} g celery"]),
    ]
    anew = [
        dish(f"{leeks} g leeks", f"{carrots} g carrots"),
        dish(f"{celery} g celery | fixed", f"{carrots} g carrots", f"{onions} g onions"),
        dish(f"{leeks} g leeks", f"{celery} g celery"),
    ]
    expected = [
        (getattr(costing, by) - getattr(costed(recipe, portions), by), line, lines, recipe)
        for (line, lines), recipe in zip(asked, anew, strict=True)
    ]
    expected.sort(key=lambda each: each[0].value, reverse=True)  # equals stay as asked
    swaps = costing.swaps(asked, by)
    assert [(swap.line, swap.lines) for swap in swaps] == [each[1:3] for each in expected]
    for swap, (*_, recipe) in zip(swaps, expected, strict=True):
        other = costed(recipe, portions)
        assert (swap.till, swap.borne) == (other.till, other.borne)
        assert swap.saved_till == costing.till - other.till
        assert swap.saved_borne == costing.borne - other.borne
        assert swap.unpriced == []


def test_a_swap_pools_with_what_the_dish_has_already() -> None:
    # 100 g + 50 g of butter are one pack of 150 g.
    costing = costed(dish("100 g butter", "50 g leeks"))
    (swap,) = costing.swaps([("leeks", "50 g butter")])
    assert swap.till.value == Fraction(150 * 7, 1000)
    assert swap.saved_till.value == Fraction(150 * 2, 1000)


def test_a_line_of_a_base_is_swapped_at_the_size_of_the_base() -> None:
    # Half a batch of stock: 300 g of onions become 200 g of carrots.
    base = '{ name = "Stock", serves = 4, makes = "1 kg", lines = ["600 g onions"] }'
    costing = costed(dish("500 g stock", extra=f"bases = {{ stock = {base} }}"))
    (swap,) = costing.swaps([("stock.onions", "400 g carrots")])
    other = costed(dish("200 g carrots"))
    assert (swap.till, swap.borne) == (other.till, other.borne)


def test_allergens_that_come_and_go() -> None:
    costing = costed(dish("200 g butter", "100 g celery"))
    milk, celery, strange = costing.swaps(
        [("butter", "200 g leeks"), ("celery", ["50 g butter", "9 eggs"]), ("celery", "1 g xylk")]
    )
    assert (milk.allergens_gained, milk.allergens_lost) == ([], ["milk (EU, US)"])
    # Eggs and xylk have no price, so they stand last, in the order asked.
    assert (celery.allergens_gained, celery.allergens_lost) == (
        ["eggs (EU, US)"],
        ["celery (EU)"],
    )
    assert (celery.unpriced, strange.unpriced) == (["eggs"], ["xylk"])
    assert (celery.allergens_unknown, strange.allergens_unknown) == ([], ["xylk"])


@pytest.mark.parametrize(
    ("asked", "code", "message"),
    [
        (
            ("leek", "1 kg onions"),
            "swap.line",
            'no line of a food has the id "leek" (nearest: leeks)',
        ),
        (
            ("leeks", []),
            "swap.line",
            "no lines are given in place of leeks (to leave it out, write the dish without it)",
        ),
        (("leeks", "For the crust:"), "line.no_food", '"For the crust:" is no ingredient'),
        (
            ("leeks", "1 kg"),
            "line.no_food",
            "no food is written after the amount; understood so far: 1 kg "
            "(write what it is an amount of: 500 g leeks)",
        ),
    ],
)
def test_swaps_that_are_none(asked: tuple[str, str | list[str]], code: str, message: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        costed(dish("1 kg leeks")).swaps([asked])
    assert (caught.value.code, str(caught.value)) == (code, message)


# Bases bought ready.

STOCK = '{ name = "Stock", serves = 4, makes = "1 kg", lines = ["600 g onions", "50 g celery"] }'


@settings(max_examples=60, deadline=None)
@given(st.integers(50, 900), st.integers(5, 400), st.integers(1, 12))
def test_made_or_bought_equal_dishes_written_anew(stock: int, onions: int, portions: int) -> None:
    bases = f"bases = {{ stock = {STOCK} }}"
    costing = costed(dish(f"{stock} g stock", f"{onions} g onions", extra=bases), portions)
    found = costing.make_or_buy("stock", "vegetable stock")
    ready = costed(dish(f"{stock} g vegetable stock", f"{onions} g onions"), portions)
    assert found.amount.to("g").value == Fraction(stock * portions, 4)
    assert (found.dish_made_till, found.dish_made_borne) == (costing.till, costing.borne)
    assert (found.dish_bought_till, found.dish_bought_borne) == (ready.till, ready.borne)
    row = next(row for row in ready.shopping if row.item == "vegetable stock")
    assert (found.bought_till, found.packs) == (row.price, row.packs)
    assert found.bought_borne == row.price  # what is left will not keep
    # The base's lines: all of the celery, and onions by use.
    celery = next(row for row in costing.shopping if row.item == "celery")
    pooled = next(row for row in costing.shopping if row.item == "onions")
    share = Fraction(600 * stock, 1000) / (Fraction(600 * stock, 1000) + onions)
    assert found.made_till.value == celery.price.value + pooled.price.value * share
    assert found.lines == ["stock.onions", "stock.celery"]


def test_bases_of_the_base_go_with_it() -> None:
    gravy = f'{{ name = "Gravy", serves = 1, bases = {{ stock = {STOCK} }}, makes = "1 kg", '
    gravy += 'lines = ["1 kg stock", "50 g butter"] }'
    costing = costed(dish("500 g gravy", "100 g leeks", extra=f"bases = {{ gravy = {gravy} }}"))
    found = costing.make_or_buy("gravy", "vegetable stock")
    assert found.lines == ["stock.onions", "stock.celery", "gravy.butter"]
    ready = costed(dish("500 g vegetable stock", "100 g leeks"))
    assert (found.dish_bought_till, found.dish_bought_borne) == (ready.till, ready.borne)


def test_what_is_not_priced_is_said() -> None:
    bases = 'bases = { stock = { name = "Stock", serves = 1, makes = "1 kg", lines = ["9 eggs"] } }'
    found = costed(dish("500 g stock", extra=bases)).make_or_buy("stock", "bone broth")
    assert (found.unpriced_made, found.unpriced_bought) == (["stock.eggs"], ["bone broth"])
    assert (found.made_till, found.packs) == (quantity("0 XXX"), [])


@pytest.mark.parametrize(
    ("recipe", "base", "item", "code", "message"),
    [
        (
            dish("500 g stock", extra=f"bases = {{ stock = {STOCK} }}"),
            "stok",
            "vegetable stock",
            "base.unknown",
            'Dish takes from no base called "stok" (nearest: stock)',
        ),
        (
            dish("500 g leeks"),
            "stock",
            "vegetable stock",
            "base.unknown",
            'Dish takes from no base called "stock" (it has no bases)',
        ),
        (
            dish(
                "2 portions of stock",
                extra='bases = { stock = { name = "S", serves = 4, lines = ["9 leaves kelp"] } }',
            ),
            "stock",
            "vegetable stock",
            "base.ready",
            "how much of stock is taken is not known "
            '(say in its recipe what it makes: makes = "1.4 kg")',
        ),
    ],
)
def test_bases_that_cannot_be_bought_ready(
    recipe: scalepan.Recipe, base: str, item: str, code: str, message: str
) -> None:
    with pytest.raises(scalepan.Error) as caught:
        costed(recipe).make_or_buy(base, item)
    assert (caught.value.code, str(caught.value)) == (code, message)


def test_a_base_that_shares_its_own_base_is_left_to_the_cook(tmp_path: Path) -> None:
    (tmp_path / "stock.toml").write_text(
        'name = "Stock"\nserves = 4\nmakes = "1 kg"\nlines = ["600 g onions"]\n'
    )
    (tmp_path / "gravy.toml").write_text(
        'name = "Gravy"\nserves = 1\nmakes = "1 kg"\nbases = { stock = "stock.toml" }\n'
        'lines = ["1 kg stock"]\n'
    )
    text = (
        'name = "Dish"\nserves = 4\nbases = { gravy = "gravy.toml", stock = "stock.toml" }\n'
        'lines = ["300 g gravy", "200 g stock"]\n'
    )
    recipe = scalepan.parse_recipe(text, file=str(tmp_path / "dish.toml"))
    with pytest.raises(scalepan.Error) as caught:
        costed(recipe).make_or_buy("gravy", "vegetable stock")
    assert (caught.value.code, str(caught.value)) == (
        "base.ready",
        "gravy takes from stock, which other lines take from too "
        "(write the dish with gravy bought ready, and cost that)",
    )


# The commands.


@pytest.fixture
def kitchen(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    (tmp_path / "dish.toml").write_text(
        f'name = "Dish"\nserves = 4\nbases = {{ stock = {STOCK} }}\n'
        'lines = ["300 g leeks", "500 g stock", "200 g sour cream"]\n'
    )
    rows = "".join(f"{o.item},AP,{o.pack},{o.price.value},EUR,no\n" for o in BOOK.offers)
    (tmp_path / "prices.csv").write_text(HEAD + rows)
    monkeypatch.chdir(tmp_path)
    monkeypatch.setenv("COLUMNS", "80")
    return tmp_path


def printed(
    capsys: pytest.CaptureFixture[str], *arguments: str
) -> tuple[dict[str, object], list[str]]:
    command = [*arguments, "--prices", "prices.csv"]
    assert main([*command, "--json"]) == 0
    document = json.loads(capsys.readouterr().out)
    assert main(command) == 0
    lines = capsys.readouterr().out.splitlines()
    assert max(len(line) for line in lines) <= 80
    return document, lines


@pytest.mark.usefixtures("kitchen")
def test_the_command_tells_the_least_spend(capsys: pytest.CaptureFixture[str]) -> None:
    document, lines = printed(capsys, "spend", "dish.toml", "--portions", "10")
    least = scalepan.cost(
        scalepan.read_recipe("dish.toml"), scalepan.read_prices("prices.csv")
    ).least_spend(10)
    assert document["most"] == str(least.most)
    assert lines[1] == f"  10 portions: the till takes {least.till.told_money}"


@pytest.mark.usefixtures("kitchen")
def test_the_command_tells_break_evens(capsys: pytest.CaptureFixture[str]) -> None:
    document, lines = printed(capsys, "break-even", "dish.toml", "leeks")
    # 300 g: two packs of 150 g at 0.30, or one of 400 g at 0.80, which is worth 0.60.
    assert document["packs"] == [
        {
            "pack": "150 g",
            "shop": "",
            "price": {"value": "3/10", "unit": "EUR", "told": "0.30 EUR"},
            "taken": True,
            "only": False,
            "worth": {"value": "2/5", "unit": "EUR", "told": "0.40 EUR"},
            "taken_at_worth": True,
            "by_size": {"value": "3/10", "unit": "EUR", "told": "0.30 EUR"},
        },
        {
            "pack": "400 g",
            "shop": "",
            "price": {"value": "4/5", "unit": "EUR", "told": "0.80 EUR"},
            "taken": False,
            "only": False,
            "worth": {"value": "3/5", "unit": "EUR", "told": "0.60 EUR"},
            "taken_at_worth": False,
            "by_size": {"value": "4/5", "unit": "EUR", "told": "0.80 EUR"},
        },
    ]
    assert lines[:5] == [
        "Packs of leeks",
        "  pack   now EUR  taken  worth  by size  at that price",
        "  -----  -------  -----  -----  -------  ------------------------------",
        "  150 g     0.30  yes     0.40     0.30  taken",
        "  400 g     0.80  no      0.60     0.80  others taken, at the same cost",
    ]


@pytest.mark.usefixtures("kitchen")
def test_the_command_ranks_swaps(capsys: pytest.CaptureFixture[str]) -> None:
    document, lines = printed(
        capsys,
        *("swap", "dish.toml", "--swap", "sour_cream = 100 g butter; 50 g leeks"),
        *("--swap", "leeks=150 g onions", "--portions", "8", "--rank", "borne"),
    )
    swaps = document["swaps"]
    assert isinstance(swaps, list)
    assert sorted(swap["line"] for swap in swaps) == ["leeks", "sour_cream"]
    saved = [Fraction(swap["saved_borne"]["value"]) for swap in swaps]
    assert saved == sorted(saved, reverse=True)
    text = " ".join(" ".join(lines).split())
    assert "- leeks = 150 g onions: no allergen gained or lost that is known" in text


@pytest.mark.usefixtures("kitchen")
def test_the_command_tells_made_from_bought(capsys: pytest.CaptureFixture[str]) -> None:
    document, lines = printed(capsys, "make-or-buy", "dish.toml", "stock", "vegetable stock")
    assert document["packs"] == [{"count": 1, "pack": "1 kg"}]
    assert lines[0] == "stock, 500 g: made, or vegetable stock bought"


@pytest.mark.usefixtures("kitchen")
@pytest.mark.parametrize("text", ["leeks", "leeks =", "= 3 kg onions", "leeks = ;"])
def test_swaps_are_written_with_a_line_on_each_side(
    text: str, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["swap", "dish.toml", "--prices", "prices.csv", "--swap", text]) == 1
    assert capsys.readouterr().err == (
        f'scalepan: "{text}" is no line with others in its place [swap.text]\n'
        '  write --swap "creme_fraiche = 150 g sour cream; 50 g butter"\n'
    )
