"""One of every kind that is displayed, with a name of one's choice wherever a name may stand.

The kitchen is that of an observatory on a hill; all prices are invented.
"""

from __future__ import annotations

import csv
import io
import json
import unicodedata

import scalepan
from scalepan._core import Changes

NAME = "Night watch supper"

_GRATIN = """\
name = "Gratin"
serves = 4
measures = "metric"
lines = ["700 g leeks, trimmed", {{ id = "sauce", line = "2/5 of the white sauce" }}]

[bases.white_sauce]
name = {name}
serves = 4
measures = "metric"
lines = ["60 g butter", "60 g plain flour", "900 g milk"]
"""
_DISH = """\
name = {name}
serves = 4
measures = "metric"
tested_at = [4]
lines = [
  {{ line = "800 g fennel, trimmed", note = {note} }},
  "240 g butter beans, drained",
  "2 onions, chopped",
  {{ id = {id}, line = "4 eggs", rule = "one per portion" }},
  "500 mL milk",
  {{ id = "own", line = {food} }},
  "To serve:",
  "20 g parsley, chopped",
  "salt, to taste",
]
"""
_OFFERS = (
    ("fennel", "AP", "1 kg", "3.20", "no", ""),
    ("fennel", "AP", "250 g", "1.05", "no", ""),
    ("butter beans", "drained", "400 g tin (240 g drained)", "0.95", "no", ""),
    ("onions", "AP", "2.5 kg", "2.60", "yes", ""),
    ("eggs", "AP", "10", "2.90", "21 days", "3 for 8.00"),
    ("milk", "AP", "1 L", "1.25", "no", ""),
    ("parsley", "AP", "100 g", "1.60", "no", ""),
)


def food_of(name: str) -> str:
    """The name where a line reads it as a food, as it reads most words."""
    try:
        line = scalepan.read_line(f"300 g {name}")
    except scalepan.Error:
        return "leeks"
    return name if line.foods == [name] else "leeks"


def in_one_line(name: str) -> str:
    """The name where ids and notes take it."""
    return name if name.isprintable() else "night"


def _toml(text: str) -> str:
    return json.dumps(text, ensure_ascii=False)


def recipe(name: str = NAME) -> scalepan.Recipe:
    """The dish at forty portions."""
    own = _toml(in_one_line(name))
    food = _toml(f"300 g {food_of(name)}")
    text = _DISH.format(name=_toml(name), note=own, id=own, food=food)
    return scalepan.parse_recipe(text, file="supper.toml").scale(portions=40)


def with_base(name: str = NAME) -> scalepan.Recipe:
    """A dish whose sauce is made first."""
    text = _GRATIN.format(name=_toml(name))
    return scalepan.parse_recipe(text)


def price_book(name: str = NAME) -> scalepan.PriceBook:
    """Every other offer is of the shop of that name."""
    stream = io.StringIO()
    writer = csv.writer(stream)
    writer.writerow(["item", "sold_as", "pack", "price", "currency", "keeps", "offer", "shop"])
    own = (food_of(name), "AP", "100 g", "0.77", "no", "")
    for place, (item, stage, pack, price, keeps, offer) in enumerate([*_OFFERS, own]):
        shop = name if place % 2 else "market"
        writer.writerow([item, stage, pack, price, "EUR", keeps, offer, shop])
    return scalepan.parse_prices(stream.getvalue(), file="prices.csv")


def sheet(text: str = NAME) -> scalepan.Sheet:
    """Cells, a block of rows, a text, a failure and a variant."""
    made = scalepan.Sheet()
    made.set("portions", 40)
    made.set("fennel.need", "8 kg EP", source=text)
    made.set("fennel.edible", "0.72 EP/AP", source="USDA SR28 11957")
    made.define("fennel.buy", "fennel.need / fennel.edible")
    made.set("remark", scalepan.Text(text))
    made.set("spare", 0)
    made.define("share_of_spare", "portions / spare")
    made.add_rows(
        "trays", given={"weight": "kg", "price": "EUR/kg"}, formulas={"cost": "weight*price"}
    )
    made.add_row("trays", "upper", {"weight": "13/7 kg", "price": "3.20"})
    made.add_row("trays", "lower", {"weight": "2 kg", "price": "10/3"})
    made.define("trays_needed", "portions / 12")
    made.define("trays_cost", "sum(trays.cost)")
    if text.isprintable():
        changes = Changes()
        changes.set("portions", 60)
        changes.override("fennel.edible", "0.68", why=text, who="Ines")
        made.variants[text] = changes
    return made


def yield_test(part: str = "celeriac") -> scalepan.YieldTest:
    """Two trials with a price and a by-product."""
    rows = [
        {"trial": "1", "what": "bought", "part": part, "weight": "4 kg", "value": "1.50 EUR/kg"},
        {"trial": "1", "what": "by-product", "part": part, "weight": "0.9 kg", "use": part,
         "value": "0.20 EUR/kg"},
        {"trial": "1", "what": "loss", "part": "dirt", "weight": "rest"},
        {"trial": "1", "what": "edible", "weight": "2.9 kg"},
        {"trial": "1", "what": "cooked", "weight": "2.4 kg"},
        {"trial": "2", "what": "bought", "part": part, "weight": "2 kg", "value": "1.50 EUR/kg"},
        {"trial": "2", "what": "loss", "weight": "rest"},
        {"trial": "2", "what": "edible", "weight": "1.5 kg"},
    ]  # fmt: skip
    return scalepan.yield_test(rows, source=part)


def fact(text: str = "own trim, 3 cases") -> scalepan.Fact:
    """A fact of one's own, with a spread."""
    row = {"fact": "own.leeks", "food": "leeks", "kind": "edible", "value": "0.50 EP/AP",
           "low": "0.47 EP/AP", "high": "0.55 EP/AP", "source": text}  # fmt: skip
    return scalepan.catalog_with(facts=[row]).facts("leeks")[0]


def error(text: str = NAME) -> scalepan.Error:
    """With everything an error can say."""
    return scalepan.FoodError("food.unknown", f'no food is called "{text}"', f"nearest: {text}",
                              f"{text}.toml", 4, 10)  # fmt: skip


def displayed(name: str = NAME) -> dict[str, object]:
    """By what they are."""
    caught = error(name)
    if any(unicodedata.category(char) in ("Cc", "Cs") for char in name):
        name = NAME  # the core takes no control character and no half of a pair
    dish = recipe(name)
    prices = price_book(name)
    costing = scalepan.cost(dish, prices)
    figures = sheet(name)
    changed = sheet(name)
    changed.override("fennel.edible", "0.5", why=name)
    packs = [("1 kg", "2.10 EUR"), ("2.5 kg", "4.10 EUR")]
    return {
        "rounded quantity": costing.shopping[0].need,
        "exact quantity": scalepan.quantity("1/3 kg EP"),
        "money": costing.per_portion("borne") * scalepan.quantity("1 portion"),
        "interval": scalepan.Interval("1 kg", "4/3 kg"),
        "loads": scalepan.loads("13 kg", "4 kg"),
        "recipe": dish,
        "line": dish.lines[0],
        "base": with_base(name).bases[0],
        "written line": scalepan.read_line(f"1 1/2 cups {food_of(name)}, sifted"),
        "label": scalepan.label(dish),
        "costing": costing,
        "shopping": costing.shopping,
        "shopping row": costing.shopping[0],
        "swap": costing.swaps([("fennel", "700 g leeks, trimmed")])[0],
        "one shop": scalepan.by_shop(dish, prices)[1],
        "made or bought": scalepan.cost(with_base(name), prices).make_or_buy("white_sauce", "milk"),
        "conversion": scalepan.convert("2 cup", "g", food="granulated sugar", measures="us"),
        "measured out": scalepan.measure_out("172.3 g", "scales 5 g"),
        "curve": costing.curve(range(1, 13)),
        "why": costing.explain("fennel.buy"),
        "why of a sheet": figures.explain("fennel.buy"),
        "basket": scalepan.basket(
            [scalepan.Dish(recipe=dish), scalepan.Dish(recipe=recipe("Early supper"))], prices
        ),
        "price book": prices,
        "offer": prices.offers[4],
        "cover": scalepan.cover("6.3 kg", packs),
        "cover function": scalepan.cover_function(packs),
        "price": scalepan.selling_price("1.24 EUR", food_cost="30 %", tax="7 %", ending="0.90"),
        "selling": scalepan.sold_at("1.24 EUR", "4.90 EUR", tax="7 %"),
        "yield test": yield_test(name),
        "fact": fact(name),
        "catalogue": scalepan.bundled_catalog(),
        "sheet": figures,
        "sheet of a costing": costing.sheet,
        "comparison": figures.compare(["portions", "fennel.buy", "share_of_spare"]),
        "sweep": figures.sweep("portions", range(10, 14), ["trays_needed", "share_of_spare"]),
        "difference": scalepan.sheet_difference(figures, changed),
        "error": caught,
    }
