"""Printed pages have the exact figures and every word of the reports. All prices are invented."""

from __future__ import annotations

import csv
import re
import tomllib
from fractions import Fraction
from pathlib import Path

import pytest
import scalepan
from page_reader import Cell, Page, document_of
from scalepan.command_line.facts_used import facts_of_weights, weight_of
from scalepan.demo import demo_files

RECIPE, PRICES = (Path(path) for path in demo_files())
US = {"volumes": "us spoons and cups", "weights": "scales 1 oz"}
# Of the units of the demo's lines: g, mL (a metric spoon is 15 or 5 mL), pieces.
UNITS = {"kg": 1000, "g": 1, "tbsp": 15, "tsp": 5, "": 1, "cloves": 1}
# NIST Handbook 44, appendix C: a pound is 453.59237 g and has 16 ounces.
OUNCE = Fraction(45359237, 1600000)

SAUCED = """\
name = "Leeks in white sauce"
serves = 6
measures = "metric"
tested_at = [6]
makes = "1.2 kg"
load = "12 portions"
lines = ["1 kg leeks, trimmed and sliced", "3/5 of the white sauce", "200 g prawns, peeled"]
method = [
  { text = "Stew the leeks.", uses = ["leeks"], time = "20 min" },
  { text = "Layer.", uses = ["white_sauce"], at = "190 °C", time = "25 min", each_load = true },
]
[bases.white_sauce]
name = "White sauce"
serves = 6
makes = "540 g"
lines = ["500 mL whole milk", "40 g butter", "40 g plain flour"]
method = [{ text = "Boil the milk.", uses = ["whole_milk"], time = "8 min" }]
"""


def demo(portions: int = 40) -> scalepan.Recipe:
    return scalepan.read_recipe(RECIPE).scale(portions=portions)


def costing(portions: int = 40) -> scalepan.Costing:
    return scalepan.cost(demo(portions), scalepan.read_prices(PRICES))


def texts(row: list[Cell]) -> list[str]:
    return [cell.text.replace("\u00a0", " ") for cell in row]


def table_under(page: Page, head: str) -> list[list[Cell]]:
    """The rows of the table whose first head this is, without the heads."""
    (found,) = [table for table in page.tables if table[0][0].text == head]
    return found[1:]


def plain(page: Page) -> str:
    return page.text.replace("\u00a0", " ")


def exact(cell: Cell) -> Fraction:
    """A figure with what one sees who points at it."""
    told = cell.exact.removeprefix("exactly ") or f"{cell.text.removeprefix('at least ')} EUR"
    return scalepan.quantity(told).value


def written() -> list[tuple[Fraction, str]]:
    """Amounts of the demo's file in g, mL and pieces, with their rules, read by hand."""
    lines = tomllib.loads(RECIPE.read_text(encoding="utf-8"))["lines"]
    pattern = r"(\d+)(?: (\d+)/(\d+))? (kg|g|tbsp|tsp|cloves)?"
    found = [re.match(pattern, line) for line in lines]
    amounts = [
        (Fraction(m[1]) + Fraction(int(m[2] or 0), int(m[3] or 1))) * UNITS[m[4] or ""]
        for m in found
        if m
    ]
    assert len(amounts) == len(lines) == 11
    return list(zip(amounts, (line.partition(" | ")[2] for line in lines), strict=True))


def amount_of(text: str) -> Fraction:
    """Of a cell such as ``7 kg`` or ``1 1/2 tsp``."""
    numbers = re.findall(r"[\d./]+", text)
    unit = text.rpartition(" ")[2]
    return sum(map(Fraction, numbers), Fraction(0)) * UNITS[unit if unit.isalpha() else ""]


@pytest.mark.parametrize("portions", [4, 40])
def test_amounts_are_those_of_the_file_times_the_size(portions: int) -> None:
    rows = table_under(document_of(scalepan.kitchen_page(demo(portions))), "ingredients")
    for row, (amount, rule) in zip(rows, written(), strict=True):
        wanted = amount * portions / 4
        if "per 8 portions" in rule:
            wanted = Fraction(-(-portions // 8))
        assert amount_of(texts(row)[0]) == wanted


@pytest.mark.parametrize("portions", [4, 7, 40])
def test_what_a_line_says_is_its_amount_and_the_rest(portions: int) -> None:
    for sets in ({}, US):
        recipe = demo(portions)
        page = document_of(scalepan.kitchen_page(recipe, **sets))
        told = [
            measured.told for measured in scalepan.measure_out_recipe(recipe, within="2 %", **sets)
        ]
        rows = table_under(page, "ingredients")
        assert [" ".join(texts(row)[:2]) for row in rows] == told
        assert all(texts(row)[0][0] in "≈123456789" for row in rows)


def test_weights_by_the_ounce_are_near_and_have_the_exact_one_beside() -> None:
    page = document_of(scalepan.kitchen_page(demo(), **US))
    weighed = 0
    for row, (amount, _) in zip(table_under(page, "ingredients"), written(), strict=True):
        told = re.fullmatch(r"(?:(\d+) lb)? ?(?:(\d+) oz)?", texts(row)[0])
        if told is None:
            continue
        given = (int(told[1] or 0) * 16 + int(told[2] or 0)) * OUNCE
        assert abs(given - amount * 10) <= amount * 10 * Fraction(2, 100)
        assert amount_of(texts(row)[2]) == amount * 10
        weighed += 1
    assert weighed == 4


def test_the_steps_take_all_there_is_and_no_more() -> None:
    page = document_of(scalepan.kitchen_page(demo()))
    taken: dict[str, Fraction] = {}
    for row in table_under(page, "amounts"):
        for number, unit, food in re.findall(
            r"([\d.]+) (?:(kg|g|tbsp|tsp|cloves) )?(\D+)", texts(row)[0]
        ):
            taken[food] = taken.get(food, Fraction(0)) + Fraction(number) * UNITS[unit]
    needed = {}
    for row in table_under(page, "ingredients"):
        amount, food, *_ = texts(row)
        needed[food.partition(",")[0]] = amount_of(amount)
    assert taken == needed


@pytest.mark.parametrize("sets", [{}, US], ids=["as written", "us"])
def test_every_word_of_the_text_page_is_on_the_printed_one(sets: dict[str, str]) -> None:
    for recipe in (demo(), demo(4), scalepan.parse_recipe(SAUCED).scale(portions=40)):
        page = document_of(scalepan.kitchen_page(recipe, **sets))
        shown = re.findall(r"\w+", " ".join(text for text, _ in page.texts))
        text = scalepan.hand_over(recipe, **sets, width=200)
        assert set(re.findall(r"\w+", text)) <= set(shown)


def test_sizes_loads_and_pans_stand_below_the_title() -> None:
    page = document_of(scalepan.kitchen_page(demo()))
    facts = [text for text, tags in page.texts if "li" in tags][:6]
    assert facts == [
        "Tested at 4; 40 is computed.",
        "Written for 4; this is 10 times as much.",
        "Makes 13.6 kg, 340 g a portion.",
        "3 loads of 12 portions and one of 4 portions, or 4 loads of 10 portions.",
        "Fills 10 x GN 1/3 65.",
        "As written: metric tbsp\u00a015\u00a0mL, tsp\u00a05\u00a0mL.",
    ]
    assert "times as much" not in document_of(scalepan.kitchen_page(demo(4))).text


def test_measures_of_a_dish_without_spoons_end_in_one_full_stop() -> None:
    recipe = scalepan.parse_recipe('name = "x"\nserves = 4\nlines = ["300 g plain flour"]\n')
    page = document_of(scalepan.kitchen_page(recipe, weights="scales 5 g"))
    facts = [text for text, tags in page.texts if "li" in tags]
    assert "By scales 5 g, to within 2 % unless said." in facts


def test_allergens_are_emphasised_and_nothing_else_in_the_label() -> None:
    recipe = scalepan.parse_recipe(SAUCED.replace("200 g prawns, peeled", "50 g BBQ sauce"))
    page = document_of(scalepan.kitchen_page(recipe))
    inside = [text for text, tags in page.texts if tags[-3:] == ["section", "p", "b"]]
    assert inside == ["Label: ", "MILK", "MILK", "GLUTEN", "WHEAT"]
    assert "BBQ sauce" in page.text


def test_bases_come_first_and_once() -> None:
    page = document_of(scalepan.kitchen_page(scalepan.parse_recipe(SAUCED).scale(portions=40)))
    # 3/5 of 540 g for 6 of the written size: 2160 g for 40.
    assert page.text.count("First make: White sauce, 2.16 kg, 4 batches") == 1
    first, second = (table for table in page.tables if table[0][0].text == "ingredients")
    assert texts(first[1])[:2] == ["2 L", "whole milk"]
    assert texts(second[2])[:2] == ["2.16 kg", "white sauce (3/5 of each batch)"]
    heads = [text for text, tags in page.texts if tags[-1:] == ["h2"]]
    assert heads == ["First make: White sauce, 2.16 kg, 4 batches", "Leeks in white sauce",
                     "Cautions", "To check"]  # fmt: skip


def test_temperatures_are_in_both_scales_and_times_have_their_remark() -> None:
    text = plain(document_of(scalepan.kitchen_page(demo())))
    for pair in ("200 °C (392 °F)", "170 °C (338 °F)", "71 °C (160 °F)"):
        assert pair in text
    assert "Times are those of the tested 4 portions and are not scaled" in text


def test_cautions_stand_apart_and_whole() -> None:
    name = "x" * 3000
    source = f'name = "x"\nserves = 4\nlines = [{{ id = "{name}", line = "4 eggs" }}]\n'
    page = document_of(scalepan.kitchen_page(scalepan.parse_recipe(source)))
    care = page.elements.index(("div", {"class": "care", "role": "note"}))
    assert page.elements[care + 1][0] == "h2"
    assert f"{name}: Cook egg dishes through: 71 °C (160 °F). [" in page.text
    assert "no figure here shows that a dish is safe" in page.text


def test_the_facts_used_are_those_of_the_label_each_source_once() -> None:
    recipe = demo()
    catalog = recipe.catalog
    grams = {item.name: item.grams for item in scalepan.label(recipe).items}
    for line in recipe.lines:
        assert line.amount is not None
        weight, _ = weight_of(line, line.amount, catalog)
        if line.food != "bay leaf":  # taken out, so that it weighs nothing in the dish
            assert weight is not None
            assert weight.to("g").value == grams[line.food]
    text = document_of(scalepan.kitchen_page(recipe)).text
    used = facts_of_weights(recipe, catalog)
    assert len(used) > 5
    for fact in used:
        assert text.count(f"{fact.id}: {fact.source}") == 1


def test_own_facts_lead_from_weights_to_measures() -> None:
    own = {"fact": "own.flour", "food": "plain flour", "kind": "density",
           "value": "100 g/cup_us", "source": "own cup"}  # fmt: skip
    source = 'name = "x"\nserves = 4\nlines = ["300 g plain flour"]\n'
    catalog = scalepan.catalog_with(facts=[own])
    recipe = scalepan.parse_recipe(source, catalog=catalog)
    page = document_of(scalepan.kitchen_page(recipe, volumes="us spoons and cups"))
    assert texts(table_under(page, "ingredients")[0])[:2] == ["3 cups", "plain flour"]
    assert "own.flour: own cup" in page.text


def offers() -> list[dict[str, str]]:
    with PRICES.open(encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def test_a_shopping_page_has_each_shop_with_what_it_takes() -> None:
    page = document_of(scalepan.shopping_page(costing()))
    prices = {(row["shop"], row["pack"], Fraction(row["price"])) for row in offers()}
    takes: dict[str, Fraction] = {}
    boxes, shop = 0, ""
    for row in table_under(page, "item"):
        if len(row) == 1:
            shop = row[0].text.partition(": ")[0]
            takes[shop] = -scalepan.quantity(row[0].text.partition(": ")[2]).value
            continue
        packs = re.findall(r"(\d+) x (.+?)(?=\d+ x |$)", texts(row)[1])
        cost = Fraction(texts(row)[2])
        choices = [
            [int(count) * price for at, pack, price in prices if (at, pack) == (shop, each)]
            for count, each in packs
        ]
        assert any(cost == total for total in sums(choices))
        takes[shop] += cost
        boxes += len(packs)
    assert takes == {"market hall": 0, "village shop": 0}
    inputs = [attributes for tag, attributes in page.elements if tag == "input"]
    assert len(inputs) == boxes == 13
    assert {each["type"] for each in inputs} == {"checkbox"}
    # 31.95 + 9.50 + 2.60 + 1.80 + 11.60 + 3.40 + 5.40 + 2.20 + 4.80 + 1.50 + 0.45
    assert "till 75.20 EUR" in page.text


def sums(choices: list[list[Fraction]]) -> set[Fraction]:
    """Of one of each."""
    totals = {Fraction(0)}
    for each in choices:
        totals = {total + one for total in totals for one in each}
    return totals


SHOPS = """\
item,sold_as,pack,price,currency,keeps,shop,deposit
leeks,AP,1 kg,2.00,EUR,no,lower gate,
leeks,AP,250 g,0.60,EUR,no,upper gate,
butter,AP,250 g,2.00,EUR,21 days,upper gate,
milk,AP,1 L,1.20,EUR,no,,0.15
"""


def shopped(**options: object) -> Page:
    source = (
        'name = "x"\nserves = 4\nlines = ["1.25 kg leeks", "50 g butter", "1 L milk", '
        '"1 kg star dust", "1 kg salt"]\n'
    )
    recipe, prices = scalepan.parse_recipe(source), scalepan.parse_prices(SHOPS)
    return document_of(scalepan.shopping_page(scalepan.cost(recipe, prices, **options)))


def test_several_shops_no_shop_and_no_price() -> None:
    rows = [texts(row) for row in table_under(shopped(), "item")]
    assert rows == [
        ["upper gate: 2.00 EUR"],
        ["butter", "1 x 250 g", "2.00", "0.00", "50 g AP", "200 g kept 21 days"],
        ["lower gate and upper gate: 2.60 EUR"],
        ["leeks", "1 x 1 kg (lower gate)1 x 250 g (upper gate)", "2.60", "0.00", "1.25 kg AP",
         "none"],
        ["rows without a shop: 1.20 EUR"],
        ["milk", "1 x 1 L", "1.20", "0.15", "1 L AP", "none"],
        ["not priced"],
        ["star dust", "", "", "", "1 kg AP", ""],
        ["salt", "", "", "", "1 kg AP", ""],
    ]  # fmt: skip
    text = shopped().text
    assert "till at least 5.80 EUR" in text
    assert "At least: 2 lines unpriced. What costs nothing needs a price of 0." in text
    assert "a deposit of 0.15 EUR besides, given back for the empty packs" in text


def test_what_is_on_hand_is_not_bought() -> None:
    stock = scalepan.parse_stock("item,stage,amount,value,currency\nbutter,AP,500 g,3.00,EUR\n")
    page = shopped(stock=stock)
    rows = [texts(row) for row in page.tables[0]]
    assert ["on hand"] in rows
    assert ["butter", "none", "0.00", "0.00", "50 g AP", "none"] in rows
    assert "What is left" in page.text


def test_dishes_bought_together_have_one_shopping_page() -> None:
    dishes = [scalepan.Dish(demo(4), "Weeknight bake"), scalepan.Dish(demo(40), "Open night bake")]
    basket = scalepan.basket(dishes, scalepan.read_prices(PRICES))
    page = document_of(scalepan.shopping_page(basket))
    assert f"till {basket.till.told_money}" in page.text
    assert "Weeknight bake, 4 portions; Open night bake, 40 portions" in page.text


def test_a_costing_page_has_the_four_costs_to_the_digit() -> None:
    made = costing()
    page = document_of(scalepan.costing_page(made))
    rows = {row[0].text: row for row in table_under(page, "cost")}
    lines = table_under(page, "line")
    for place, name in enumerate(("till", "used", "thrown", "borne"), 1):
        whole = exact(rows[name][1])
        assert whole == sum(exact(row[place]) for row in lines)
        assert exact(rows[name][2]) == whole / 40
        told = re.search(rf"{name} (\d[^;]*) EUR;", page.text)
        assert (told is None) == (rows[name][1].exact == "")
    assert exact(rows["till"][1]) == Fraction("75.20")
    assert exact(rows["borne"][1]) == exact(rows["used"][1]) + exact(rows["thrown"][1])
    assert exact(rows["till"][1]) == exact(rows["borne"][1]) + exact(rows["closing stock"][1])
    assert "Exactly: used 69 1672768813318327/2033617845659400 EUR" in page.text


def test_prices_have_their_shop_and_date() -> None:
    page = document_of(scalepan.costing_page(costing()))
    (prices,) = [table for table in page.tables if table[0][1].text == "pack"]
    shown = [tuple(texts(row)) for row in prices[1:]]
    book = [
        (each["item"], each["pack"], each["sold_as"], f"{each['price']} EUR", each["keeps"],
         each["shop"], each["date"])
        for each in offers()
    ]  # fmt: skip
    assert set(shown) <= set(book)
    # Four rows are for another dish; all but onions by 1 kg, eggs by 6 and oil by 1 L are bought.
    assert len(shown) == len(book) - 4 - 3


def test_overrides_have_their_reason() -> None:
    made = costing()
    made.override("fennel.edible", "0.68", why="own trim", who="Ines", when="2026-11-21")
    page = document_of(scalepan.costing_page(made))
    assert [texts(row) for row in table_under(page, "figure")] == [
        ["fennel.edible", "0.68 EP/AP", "own trim", "Ines", "2026-11-21"]
    ]
    assert "Overrides" not in document_of(scalepan.costing_page(costing())).text
    # USDA SR28 11282: onions, refuse 10 %.
    assert "onions.edible: USDA SR28 11282, refuse 10 %" in page.text


def test_lines_without_a_price_say_so() -> None:
    recipe = scalepan.parse_recipe(
        'name = "x"\nserves = 4\nlines = ["1 kg leeks", "1 kg star dust", "salt, to taste"]\n'
    )
    page = document_of(scalepan.costing_page(scalepan.cost(recipe, scalepan.parse_prices(SHOPS))))
    assert [texts(row) for row in table_under(page, "line")] == [
        ["1 kg leeks", "2.00", "2.00", "0.00", "2.00"],
        ["1 kg star dust", "not priced", "", "", ""],
        ["salt (to taste)", "", "", "", ""],
    ]
    assert texts(table_under(page, "cost")[0])[1] == "at least 2.00"
