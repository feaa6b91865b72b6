"""What a user's own file looks like to type checkers: every public name, and what it gives.

It is checked, not run; `tests/python/test_typing.py` holds it to name all of `scalepan.__all__`.
"""

from __future__ import annotations

from fractions import Fraction
from pathlib import Path
from typing import assert_type

import scalepan
from scalepan.type_names import CellInput, CellValue, CostOptions, FrameCell, Number, WhyData


def quantities() -> None:
    flour = scalepan.quantity("1 1/2 kg")
    assert_type(flour, scalepan.Quantity)
    assert_type(flour.to("g").value, Fraction)
    assert_type(flour * 2 + "30 g", scalepan.Quantity)
    assert_type("2 kg" - flour, scalepan.Quantity)
    assert_type(-flour / 3, scalepan.Quantity)
    assert_type(flour > "1 kg", bool)
    assert_type(flour.told, str)
    number: Number = Fraction(1, 3)
    column = scalepan.NumberColumn([number, 0.25, "1/2", 4])
    assert_type(column.sum(), Fraction)
    assert_type(column[0], Fraction)
    assert_type(scalepan.__version__, str)


def foods(path: Path) -> None:
    catalog = scalepan.bundled_catalog()
    assert_type(catalog, scalepan.Catalog)
    assert_type(catalog.food_of("leeks"), str | None)
    assert_type(catalog.facts("leeks"), list[scalepan.Fact])
    assert_type(catalog.facts("leeks")[0].low, scalepan.Quantity | None)
    assert_type(scalepan.catalog_with([], catalog=catalog), scalepan.Catalog)
    assert_type(scalepan.read_facts(path), scalepan.Catalog)
    assert_type(scalepan.read_usda_sr(path), scalepan.Catalog)
    converted = scalepan.convert("1 cup", "g", food="plain flour", measures="us")
    assert_type(converted, scalepan.Conversion)
    assert_type(converted.value, Fraction)
    assert_type(converted.facts, tuple[scalepan.UsedFact, ...])
    assert_type(converted.facts[0].beside, tuple[scalepan.OtherFact, ...])


def yields(path: Path) -> None:
    trimmed = scalepan.read_yield_test(path)
    assert_type(trimmed, scalepan.YieldTest)
    assert_type(scalepan.parse_yield_test(path.read_text()), scalepan.YieldTest)
    assert_type(scalepan.yield_test([{"what": "bought"}]), scalepan.YieldTest)
    assert_type(trimmed.trials, list[scalepan.YieldTrial])
    assert_type(trimmed.trials[0].cut, list[scalepan.TrialPart])
    assert_type(trimmed.share("EP", "AP"), scalepan.YieldShare)
    assert_type(trimmed.share("EP", "AP").share, scalepan.TrialRatio)
    assert_type(trimmed.parts, list[scalepan.PartShare])
    assert_type(trimmed.cost("EP"), scalepan.StageCost)
    assert_type(trimmed.cost("EP").at_price("3 EUR/kg"), scalepan.Quantity)


def measures(path: Path) -> None:
    sets = scalepan.measure_sets()
    assert_type(sets, dict[str, scalepan.MeasureSet])
    assert_type(scalepan.read_measure_sets(path), dict[str, scalepan.MeasureSet])
    spoons = scalepan.measure_set("spoons", [{"measure": "tbsp", "size": "15 mL"}])
    out = scalepan.measure_out("100 mL", spoons)
    assert_type(out, scalepan.MeasuredOut)
    assert_type(out.pieces, list[tuple[int, str]])
    assert_type(out.error_share, Fraction)
    pan = scalepan.pan("GN 1/3 65")
    assert_type(pan, scalepan.Pan)
    assert_type(pan.printed, tuple[scalepan.PrintedVolume, ...])
    assert_type(pan.area, scalepan.Quantity | None)
    assert_type(scalepan.pans() | scalepan.read_pans(path), dict[str, scalepan.Pan])
    assert_type(scalepan.pan_ratio(pan, "20 cm round"), Fraction)
    assert_type(scalepan.pan_ratio_error(pan, "20 cm round"), Fraction)
    split = scalepan.loads("13 kg", "4 kg")
    assert_type(split, scalepan.Loads)
    assert_type(split.parts, list[tuple[int, scalepan.Quantity]])


def recipes(path: Path) -> scalepan.Recipe:
    recipe = scalepan.read_recipe(path)
    assert_type(scalepan.parse_recipe(path.read_text()), scalepan.Recipe)
    assert_type(recipe.scale(portions=40), scalepan.Recipe)
    assert_type(recipe.factor, Fraction)
    assert_type(recipe.lines, list[scalepan.Line])
    assert_type(recipe.lines[0].amount, scalepan.Quantity | None)
    assert_type(recipe.method, list[scalepan.MethodStep])
    assert_type(recipe.bases, list[scalepan.MadeBase])
    assert_type(recipe.bases[0].uses, list[scalepan.BaseUse])
    assert_type(recipe.load_split(), scalepan.Loads | None)
    assert_type(recipe.bakers_percents(["flour"]), list[tuple[str, Fraction]])
    line = scalepan.read_line("2 onions, chopped")
    assert_type(line, scalepan.WrittenLine)
    assert_type(line.low, Fraction | None)
    assert_type(scalepan.read_lines(["salt"]), list[scalepan.WrittenLine | scalepan.Error])
    assert_type(scalepan.fill_trays(recipe, "GN 1/1 65", 2), scalepan.Recipe)
    measured = scalepan.measure_out_recipe(recipe)
    assert_type(measured, list[scalepan.MeasuredLine])
    assert_type(scalepan.measure_out_lines(recipe.lines), list[scalepan.MeasuredLine])
    assert_type(scalepan.hand_over(recipe), str)
    assert_type(scalepan.label(recipe), scalepan.Label)
    assert_type(scalepan.label(recipe).items, list[scalepan.LabelItem])
    return recipe


def covers() -> None:
    cover = scalepan.cover("7 kg", [("2.5 kg", "3.10"), ("1 kg", "1.45")])
    assert_type(cover, scalepan.Cover)
    assert_type(cover.packs, list[tuple[int, str]])
    function = scalepan.cover_function([scalepan.Purchase(size="400 g", price="0.95")])
    assert_type(function, scalepan.CoverFunction)
    assert_type(function.at("1 kg"), scalepan.Cover)
    assert_type(function.steps("0 g", "2 kg"), list[scalepan.CoverStep])
    assert_type(scalepan.break_even("7 kg", "5 kg", [("1 kg", "1")]), scalepan.BreakEven)


def costings(recipe: scalepan.Recipe, path: Path) -> scalepan.Costing:
    prices = scalepan.read_prices(path)
    assert_type(prices + prices, scalepan.PriceBook)
    assert_type(prices, scalepan.PriceBook)
    assert_type(scalepan.parse_prices(path.read_text(), currency="EUR"), scalepan.PriceBook)
    assert_type(prices.offers, list[scalepan.Offer])
    assert_type(prices.offers[0].limit, Fraction | None)
    options: CostOptions = {"stock": scalepan.read_stock(path), "taxes": "without"}
    options["stock"] = scalepan.parse_stock(path.read_text())
    costing = scalepan.cost(recipe, prices, **options)
    assert_type(costing, scalepan.Costing)
    assert_type(costing.per_portion("till"), scalepan.Quantity)
    assert_type(list(costing.shopping), list[scalepan.ShoppingRow])
    assert_type(costing.explain("till"), scalepan.Why)
    assert_type(costing.explain("till").data(), WhyData)
    assert_type(costing.options, CostOptions)
    assert_type(costing.cautions, list[tuple[str, str, list[str]]])
    assert_type(costing.sheet, scalepan.Sheet)
    assert_type(costing.refresh(prices).costing, scalepan.Costing)
    assert_type(scalepan.read_costing(path), scalepan.Costing)
    assert_type(scalepan.parse_costing(costing.text()), scalepan.Costing)
    assert_type(scalepan.by_shop(recipe, prices, **options), list[scalepan.ShopCosting])
    assert_type(scalepan.by_shop(recipe, prices)[0].costing, scalepan.Costing | None)
    return costing


def choices(costing: scalepan.Costing) -> None:
    assert_type(costing.most_portions("50 EUR"), scalepan.WithinSpend)
    assert_type(costing.least_spend(40), scalepan.LeastSpend)
    assert_type(costing.pack_prices("milk"), list[scalepan.PackPrice])
    assert_type(costing.swaps([("milk", "500 mL oat drink")]), list[scalepan.Swap])
    assert_type(costing.make_or_buy("stock", "stock cubes"), scalepan.MakeOrBuy)
    assert_type(costing.drivers(), list[scalepan.Driver])
    curve = costing.curve(range(4, 81))
    assert_type(curve, scalepan.Curve)
    assert_type(curve.till, list[Fraction])
    assert_type(curve.column("till"), scalepan.ExactColumn)
    assert_type(memoryview(curve.column()), memoryview)
    assert_type(curve.breakpoints, list[scalepan.Breakpoint])
    assert_type(curve.cheapest(), scalepan.CheapestCount | None)
    assert_type(curve.dominated(), list[scalepan.DominatedCounts])
    assert_type(curve.even_counts, list[scalepan.EvenCounts])
    assert_type(curve.even_counts[0].counts, list[scalepan.CountRun])
    priced = scalepan.selling_price(costing.per_portion(), food_cost="30 %", tax="7 %")
    assert_type(priced, scalepan.PriceFound)
    assert_type(priced.shelf, scalepan.Selling)
    assert_type(scalepan.sold_at("1.20 EUR", "4.90 EUR").food_cost_share, Fraction)
    assert_type(scalepan.cash_total("1.23 EUR"), scalepan.CashTotal)


def dishes(recipe: scalepan.Recipe, prices: scalepan.PriceBook, path: Path) -> None:
    menu = [*scalepan.read_dishes(path), *scalepan.parse_dishes(path.read_text())]
    assert_type(menu, list[scalepan.Dish])
    bought = scalepan.basket([recipe, *menu], prices)
    assert_type(bought, scalepan.Basket)
    assert_type(bought.dishes, list[scalepan.BasketDish])
    assert_type(list(bought.shopping), list[scalepan.BasketRow])
    assert_type(next(iter(bought.shopping)).dishes, list[scalepan.DishNeed])
    assert_type(bought.saving, scalepan.Quantity)


def sheets(costing: scalepan.Costing, path: Path) -> None:
    sheet = scalepan.Sheet()
    given: CellInput = scalepan.Interval("3 kg", "5 kg")
    sheet.set("need", given, source="own scale")
    sheet.set("remark", scalepan.Text("by hand"))
    sheet.define("buy", "need / 0.9")
    sheet.add_rows("trays", given={"weight": "kg"})
    sheet.add_row("trays", "upper", {"weight": scalepan.Formula("need / 2")})
    value: CellValue = sheet.value("buy")
    if isinstance(value, scalepan.Interval):
        assert_type(value.high, scalepan.Quantity | None)
    with sheet.together() as changes:
        assert_type(changes, scalepan.Changes)
        changes.override("need", "4 kg", why="weighed")
    assert_type(changes.listed(), list[tuple[str, dict[str, object]]])
    assert_type(sheet.explain("buy"), scalepan.Why)
    assert_type(sheet.undo(), bool)
    assert_type(
        sheet.sweep("need", ["3 kg"], cells=["buy"])["buy"].fractions, list[Fraction | None]
    )
    assert_type(
        sheet.values_for("need", "buy", at_most="9 kg", between=("1 kg", "9 kg")),
        list[scalepan.ValueRange],
    )
    assert_type(scalepan.read_sheet(path), scalepan.Sheet)
    assert_type(scalepan.parse_sheet(sheet.text()), scalepan.Sheet)
    difference = scalepan.sheet_difference(sheet, path)
    assert_type(difference, scalepan.SheetDifference)
    assert_type(difference.changes(), scalepan.Changes)
    assert_type(scalepan.panel(costing).sheet, scalepan.Sheet)


def pages(recipe: scalepan.Recipe, costing: scalepan.Costing) -> None:
    kitchen = scalepan.kitchen_page(recipe)
    assert_type(kitchen, scalepan.PrintedPages)
    both = [scalepan.shopping_page(costing), scalepan.costing_page(costing, paper="Letter")]
    assert_type(scalepan.printed_pages([kitchen, *both]).html, str)


def exchanged(recipe: scalepan.Recipe, prices: scalepan.PriceBook, path: Path) -> None:
    made = scalepan.recipe("Broth", 4, ["200 g pearl barley"], tested_at=[4])
    assert_type(made, scalepan.Recipe)
    assert_type(scalepan.recipe_text(made), str)
    scalepan.write_recipe(made, path)
    assert_type(scalepan.read_json_ld(path), scalepan.Recipe)
    assert_type(scalepan.parse_json_ld(scalepan.json_ld(recipe)), scalepan.Recipe)
    scalepan.write_json_ld(recipe, path)
    assert_type(scalepan.price_book({"item": ["leeks"]}), scalepan.PriceBook)
    assert_type(scalepan.prices_text(prices), str)
    scalepan.write_prices(prices, path)
    on_hand = scalepan.stock([{"item": "leeks", "stage": "AP", "amount": "1 kg"}])
    assert_type(scalepan.stock_text(on_hand), str)
    scalepan.write_stock(on_hand, path)
    scalepan.write_xlsx(prices, path)
    assert_type(scalepan.frame(prices).to_dict(), dict[str, list[FrameCell]])
    assert_type(scalepan.plots.__all__, list[str])
    read = scalepan.from_json(scalepan.to_json(prices))
    if isinstance(read, scalepan.PriceBook):
        assert_type(read.offers, list[scalepan.Offer])


def errors() -> type[scalepan.Error]:
    """The class of the error that a text raises."""
    try:
        scalepan.quantity("three spoons")
    except (scalepan.NumberError, scalepan.MeasureError, scalepan.FoodError) as error:
        assert_type(error.code, str)
        assert_type(error.line, int)
        return scalepan.MeasureError
    except (scalepan.RecipeError, scalepan.PriceError, scalepan.CostError) as error:
        assert_type(error.hint, str)
        return type(error)
    except (scalepan.SheetError, scalepan.FileError, scalepan.PlotError) as error:
        return type(error)
    except scalepan.ArgumentError as error:
        return type(error)
    return scalepan.Error
