"""One object of every class that users get in their hands, for the night kitchen of a hill-top
observatory; names and prices are invented. Two numbers give two sets that differ in their figures.
"""

from __future__ import annotations

from typing import Any

import scalepan
from scalepan import _core
from scalepan.costing_files import Moved, Refreshed
from scalepan.printing import Part

_SAUCE = """name = "Pea sauce"
serves = 10
makes = "1 kg"
lines = ["600 g peas", "{grams} g butter"]
"""

_DISH = """name = "Dumplings for the dome"
serves = 10
measures = "metric"
tested_at = [10]
loss = "4 % of the raw batch"
load = "12 portions"
region = "GB"
lines = [
  "TO BEGIN",
  "{grams} g leeks, trimmed | tapered (2, 1.5), (9, 6), then 1/2",
  "1 1/2 cups flour, sifted",
  "3 to 4 eggs | whole",
  "salt, to taste",
  "7/10 of the sauce",
  {{ id = "sheen", line = "15 g butter, melted", rule = "5 g per 4 portions", optional = true }},
]
method = [
  {{ text = "Stew the leeks at 160 °C.", uses = ["1/3 of leeks"], at = "160 °C", time = "8 min" }},
  {{ text = "Cook in turn.", each_load = true }},
]
[bases.sauce]
name = "Sauce"
serves = 10
makes = "1 kg"
lines = ["600 g peas", "{grams} g butter"]
"""

_PRICES = """item,sold_as,pack,price,currency,keeps,offer,tax,deposit,shop,limit
leeks,AP,1 kg,2.{grams},EUR,no,,7 %,,market,
leeks,AP,2.5 kg,4.90,EUR,no,,7 %,,market,
flour,AP,1 kg,0.{grams},EUR,yes,,7 %,,mill,
eggs,AP,10,2.40,EUR,21 days,3 for 6.60,7 %,,mill,
butter,AP,250 g,2.1{grams},EUR,30 days,from 6 at 1.90,7 %,,market,
peas,AP,1 kg,3.{grams},EUR,yes,,7 %,,market,40
salt,AP,500 g,0.90,EUR,yes,,7 %,,mill,
pea sauce,AP,1 kg tub,9.{grams},EUR,no,,7 %,0.50,market,
"""

_STOCK = "item,stage,amount,value,currency,use_by\nbutter,AP,{grams} g,1.20,EUR,2031-03-04\n"


def recipe(grams: int) -> scalepan.Recipe:
    """At forty portions."""
    text = _DISH.format(grams=grams)
    return scalepan.parse_recipe(text, file="dumplings.toml").scale(portions=40)


def prices(grams: int) -> scalepan.PriceBook:
    return scalepan.parse_prices(_PRICES.format(grams=grams), file="prices.csv")


def stock(grams: int) -> _core.Stock:
    return scalepan.parse_stock(_STOCK.format(grams=grams), file="stock.csv")


def costing(grams: int) -> scalepan.Costing:
    return scalepan.cost(recipe(grams), prices(grams), stock=stock(grams), day="2031-03-01")


def changed_costing(grams: int) -> scalepan.Costing:
    """With an override and a variant."""
    made = costing(grams)
    made.override("leeks.edible", f"0.{grams} EP/AP", why="own trim", who="Ines")
    made.sheet.variants["sixty"] = _portions(60)
    return made


def _portions(count: int) -> scalepan.Changes:
    changes = scalepan.Changes()
    changes.set("portions", count)
    return changes


def sheet(grams: int) -> scalepan.Sheet:
    """Cells of every kind, rows, an override and a variant."""
    made = scalepan.Sheet()
    made.set("portions", 40)
    made.set("leeks.need", f"{grams} g EP", source="own note")
    made.set("leeks.edible", "0.44 EP/AP", source="USDA SR28 11246")
    made.define("leeks.buy", "leeks.need / leeks.edible")
    made.set("remark", scalepan.Text("trimmed"))
    made.set("doubt", scalepan.Interval("1 kg", "4/3 kg"))
    made.set("frost", True)
    made.set("spare", 0)
    made.define("share_of_spare", "portions / spare")
    made.define("trays_needed", "up_to_multiple(portions / 12, 1)")
    made.add_rows("trays", given={"weight": "kg"}, formulas={"half": "weight / 2"})
    made.add_row("trays", "upper", {"weight": "13/7 kg"})
    made.add_row("trays", "lower", {"weight": scalepan.Formula("10 kg / 7")})
    made.override("leeks.edible", "0.5 EP/AP", why="own trim", who="Ines")
    made.variants["sixty"] = _portions(60)
    return made


def yield_test(grams: int) -> scalepan.YieldTest:
    rows = [
        {"trial": "1", "what": "bought", "part": "celeriac", "weight": "4 kg",
         "value": "1.50 EUR/kg"},
        {"trial": "1", "what": "by-product", "part": "peel", "weight": f"{grams} g",
         "use": "stock", "value": "0.20 EUR/kg"},
        {"trial": "1", "what": "loss", "weight": "rest"},
        {"trial": "1", "what": "edible", "weight": "2.9 kg"},
        {"trial": "1", "what": "cooked", "weight": "2.4 kg"},
        {"trial": "2", "what": "bought", "weight": "2 kg", "value": "1.50 EUR/kg"},
        {"trial": "2", "what": "loss", "weight": "rest"},
        {"trial": "2", "what": "edible", "weight": f"1.{grams} kg"},
        {"trial": "2", "what": "cooked", "weight": f"1.{grams} kg"},
    ]  # fmt: skip
    return scalepan.yield_test(rows, source="night of 4 March")


def catalog(grams: int) -> scalepan.Catalog:
    """The bundled one with a food, a name, a fact, a preferred fact and a region."""
    return scalepan.catalog_with(
        facts=[
            {"fact": "own.leek", "food": "leeks", "kind": "edible", "value": f"0.{grams} EP/AP"}
        ],
        foods=[{"food": "sea_aster", "name": "sea aster", "plural": "sea asters"}],
        names=[{"name": "tripolium", "food": "sea_aster"}],
        prefer=["carrot.edible.afrs"],
        region="GB",
    )


def _measures(grams: int) -> dict[str, object]:
    spoons = scalepan.measure_sets()["metric spoons"]
    line = scalepan.read_line(f"{grams} g butter, melted")
    oven = scalepan.pan("GN 1/1 65" if grams == 31 else "GN 1/2 65")
    state = "chopped" if grams == 31 else "grated"
    converted = scalepan.convert(f"{grams} g", "cup_us", food="carrots", state=state)
    return {
        "Quantity": scalepan.quantity(f"{grams}/3 kg EP"),
        "MeasureSet": spoons if grams == 31 else scalepan.measure_sets()["us spoons"],
        "Loads": scalepan.loads(f"{grams} kg", "4 kg"),
        "NumberColumn": scalepan.NumberColumn([grams, "1/3", 10**40]),
        "WrittenLine": line,
        "Pan": oven,
        "PrintedVolume": oven.printed[0],
        "MeasuredOut": scalepan.measure_out(f"{grams} mL", spoons),
        "MeasuredLine": scalepan.measure_out_recipe(recipe(grams))[1],
        "Conversion": converted,
        "UsedFact": converted.facts[0],
        "CashTotal": scalepan.cash_total(f"20.{grams} AUD"),
        "Interval": scalepan.Interval("1 kg", f"{grams} kg"),
        "Text": scalepan.Text(f"{grams} leeks"),
        "Formula": scalepan.Formula(f"portions / {grams}"),
    }


def _foods(grams: int) -> dict[str, object]:
    test = yield_test(grams)
    label = scalepan.label(recipe(grams))
    return {
        "Catalog": catalog(grams),
        "Fact": catalog(grams).facts("leeks")[0],
        "OtherFact": scalepan.OtherFact("own.leek", scalepan.quantity(f"0.{grams} EP/AP"), "own"),
        "YieldTest": test,
        "YieldTrial": test.trials[0],
        "TrialPart": test.trials[0].cut[0],
        "TrialRatio": test.shares[0].share,
        "YieldShare": test.shares[0],
        "PartShare": test.parts[0],
        "StageCost": test.costs[0],
        "Label": label,
        "LabelItem": next(item for item in label.items if item.parts),
    }


def _recipes(grams: int) -> dict[str, object]:
    dish = recipe(grams)
    return {
        "Recipe": dish,
        "Line": dish.lines[0],
        "MethodStep": dish.method[0],
        "MadeBase": dish.bases[0],
        "BaseUse": scalepan.parse_recipe(_DISH.format(grams=30)).scale(
            portions=grams).bases[0].uses[0],
        "Dish": scalepan.Dish(dish, "Early watch"),
    }  # fmt: skip


def _packs(grams: int) -> dict[str, object]:
    book = prices(grams)
    packs = [("1 kg", "2.10 EUR"), ("2.5 kg", f"4.{grams} EUR")]
    function = scalepan.cover_function(packs)
    return {
        "PriceBook": book,
        "Offer": book.offers[0],
        "Stock": stock(grams),
        "StockItem": stock(grams).items[0],
        "Cover": scalepan.cover(f"{grams} kg", packs),
        "CoverFunction": function,
        "CoverStep": function.steps("0 kg", f"{grams} kg")[-1],
        "Purchase": scalepan.Purchase(size="1 kg", price=f"2.{grams} EUR"),
        "BreakEven": scalepan.break_even("6 kg", f"{grams} kg", packs),
    }


def _costs(grams: int) -> dict[str, object]:
    made = costing(grams)
    curve = made.curve(range(1, 40 * (grams - 29)))
    even = next(one for one in curve.even_counts if one.counts)
    return {
        "Costing": made,
        "costing with changes": changed_costing(grams),
        "ShopCosting": scalepan.by_shop(made.recipe, prices(grams))[0],
        "Shopping": made.shopping,
        "ShoppingRow": made.shopping[0],
        "Leftover": made.left[0],
        "Curve": curve,
        "curve of changes": changed_costing(grams).curve([3, "7/2", grams]),
        "Breakpoint": curve.breakpoints[-1],
        "EvenCounts": even,
        "CountRun": even.counts[-1],
        "CheapestCount": curve.cheapest(),
        "DominatedCounts": curve.dominated()[-1],
        "ExactColumn": curve.column(),
        "Why": made.explain("till"),
        "Driver": made.drivers()[0],
        "WithinSpend": made.most_portions("80 EUR"),
        "LeastSpend": made.least_spend(grams),
        "PackPrice": made.pack_prices("leeks")[0],
        "Swap": made.swaps([("leeks", f"{grams}0 g onions, sliced")])[0],
        "MakeOrBuy": made.make_or_buy("sauce", "pea sauce"),
        "Refreshed": Refreshed(made, [Moved("leeks AP, 1 kg", "2.10 EUR", f"2.{grams} EUR")]),
        "Selling": scalepan.sold_at("1.24 EUR", f"4.{grams} EUR", tax="7 %"),
        "PriceFound": scalepan.selling_price(f"1.{grams} EUR", food_cost="30 %", tax="7 %"),
    }


def _baskets(grams: int) -> dict[str, object]:
    dishes = [scalepan.Dish(recipe(grams), name) for name in ("Early watch", "Late watch")]
    basket = scalepan.basket(dishes, prices(grams), stock=stock(grams))
    return {
        "Basket": basket,
        "BasketDish": basket.dishes[1],
        "BasketRow": basket.shopping[0],
        "DishNeed": basket.shopping[0].dishes[0],
    }


def _sheets(grams: int) -> dict[str, object]:
    made = sheet(grams)
    of_costing = costing(grams).sheet
    names = ["portions", "leeks.buy", "share_of_spare", "doubt"]
    swept = made.sweep("portions", range(10, grams), ["trays_needed", "share_of_spare"])
    return {
        "Sheet": made,
        "sheet of a costing": changed_costing(grams).sheet,
        "Changes": made.changes(),
        "changes of a costing": changed_costing(grams).sheet.variants["sixty"] if grams == 31
        else made.changes(),
        "Variants": made.variants if grams == 31 else scalepan.Sheet().variants,
        "SheetDifference": scalepan.sheet_difference(made, sheet(99)),
        "Comparison": made.compare(names),
        "Sweep": swept,
        "SweptCell": swept["share_of_spare"],
        "swept words": swept["trays_needed"],
        "ValueRange": made.values_for("portions", "trays_needed", equal=3, between=(1, grams))[0],
        "Thing": of_costing.value("leeks.food" if grams == 31 else "flour.food"),
        "PrintedPages": scalepan.PrintedPages([Part(f"{grams}", "kitchen page", _body())]),
    }  # fmt: skip


def _body() -> Any:
    from scalepan.display.markup import element

    return element("p", "Dumplings")


def _errors(grams: int) -> dict[str, object]:
    kinds = [
        kind
        for kind in map(vars(scalepan).get, scalepan.__all__)
        if isinstance(kind, type) and issubclass(kind, scalepan.Error)
    ]
    return {
        kind.__name__: kind("a.code", f"{grams} leeks are missing", "look", "pot.toml", 4, 10)
        for kind in kinds
    }


def objects(grams: int) -> dict[str, object]:
    """By the names of their classes, and a few besides; 31 and 32 give two sets."""
    groups = (
        _measures, _foods, _recipes, _packs, _costs, _baskets, _sheets, _errors,
    )  # fmt: skip
    return {name: one for group in groups for name, one in group(grams).items()}
