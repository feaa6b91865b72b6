"""Scalepan: exact scaling, whole-pack buying and costing of recipes.

import scalepan

    pot = scalepan.read_recipe("pot.toml").scale(portions=40)
    costing = scalepan.cost(pot, scalepan.read_prices("prices.csv"))
    print(costing.till, costing.per_portion("borne"))
"""

from typing import TYPE_CHECKING

from scalepan._core import (
    BaseUse,
    Basket,
    BasketDish,
    BasketRow,
    BreakEven,
    Breakpoint,
    CashTotal,
    Catalog,
    Changes,
    CheapestCount,
    Costing,
    CountRun,
    Cover,
    CoverFunction,
    CoverStep,
    Curve,
    DishNeed,
    DominatedCounts,
    Driver,
    EvenCounts,
    ExactColumn,
    Fact,
    Formula,
    Interval,
    Label,
    LabelItem,
    LeastSpend,
    Line,
    Loads,
    MadeBase,
    MakeOrBuy,
    MeasureSet,
    MethodStep,
    NumberColumn,
    Offer,
    PackPrice,
    PartShare,
    PriceBook,
    PriceFound,
    Quantity,
    Recipe,
    Selling,
    ShoppingRow,
    StageCost,
    Swap,
    Text,
    TrialPart,
    TrialRatio,
    Why,
    WithinSpend,
    WrittenLine,
    YieldShare,
    YieldTrial,
    __version__,
    label,
    quantity,
)
from scalepan.baskets import Dish, basket, parse_dishes, read_dishes
from scalepan.conversion import Conversion, OtherFact, UsedFact, convert
from scalepan.costs import ShopCosting, by_shop, cost, parse_costing, read_costing
from scalepan.covers import Purchase, break_even, cover, cover_function
from scalepan.displays import display_core_classes
from scalepan.errors import (
    ArgumentError,
    CostError,
    Error,
    FileError,
    FoodError,
    MeasureError,
    NumberError,
    PlotError,
    PriceError,
    RecipeError,
    SheetError,
)
from scalepan.exchange import (
    frame,
    from_json,
    json_ld,
    parse_json_ld,
    read_json_ld,
    recipe,
    recipe_text,
    to_json,
    write_json_ld,
    write_recipe,
    write_xlsx,
)
from scalepan.foods import bundled_catalog, catalog_with, read_facts
from scalepan.hand_over import hand_over
from scalepan.lines import read_line, read_lines
from scalepan.load_split import loads
from scalepan.measure_sets import measure_set, measure_sets, read_measure_sets
from scalepan.measuring import (
    MeasuredLine,
    MeasuredOut,
    measure_out,
    measure_out_lines,
    measure_out_recipe,
)
from scalepan.pan_size import Pan, PrintedVolume
from scalepan.pan_table import pan, pan_ratio, pan_ratio_error, pans, read_pans
from scalepan.panels import panel
from scalepan.pickles import keep_core_classes
from scalepan.prices import (
    parse_prices,
    parse_stock,
    price_book,
    prices_text,
    read_prices,
    read_stock,
    stock,
    stock_text,
    write_prices,
    write_stock,
)
from scalepan.printing import PrintedPages, costing_page, kitchen_page, printed_pages, shopping_page
from scalepan.recipes import parse_recipe, read_recipe
from scalepan.selling import cash_total, selling_price, sold_at
from scalepan.sheet_differences import SheetDifference, sheet_difference
from scalepan.sheet_studies import ValueRange
from scalepan.sheets import Sheet, parse_sheet, read_sheet
from scalepan.trays import fill_trays
from scalepan.usda import read_usda_sr
from scalepan.wrong_arguments import (
    explain_core_methods,
    explain_functions,
    explain_methods,
)
from scalepan.yield_tests import YieldTest, parse_yield_test, read_yield_test, yield_test

display_core_classes()
keep_core_classes()
explain_core_methods()
for _kind in Sheet.__mro__[:2]:
    explain_methods(_kind)

__all__ = [
    "ArgumentError",
    "BaseUse",
    "Basket",
    "BasketDish",
    "BasketRow",
    "BreakEven",
    "Breakpoint",
    "CashTotal",
    "Catalog",
    "Changes",
    "CheapestCount",
    "Conversion",
    "CostError",
    "Costing",
    "CountRun",
    "Cover",
    "CoverFunction",
    "CoverStep",
    "Curve",
    "Dish",
    "DishNeed",
    "DominatedCounts",
    "Driver",
    "Error",
    "EvenCounts",
    "ExactColumn",
    "Fact",
    "FileError",
    "FoodError",
    "Formula",
    "Interval",
    "Label",
    "LabelItem",
    "LeastSpend",
    "Line",
    "Loads",
    "MadeBase",
    "MakeOrBuy",
    "MeasureError",
    "MeasureSet",
    "MeasuredLine",
    "MeasuredOut",
    "MethodStep",
    "NumberColumn",
    "NumberError",
    "Offer",
    "OtherFact",
    "PackPrice",
    "Pan",
    "PartShare",
    "PlotError",
    "PriceBook",
    "PriceError",
    "PriceFound",
    "PrintedPages",
    "PrintedVolume",
    "Purchase",
    "Quantity",
    "Recipe",
    "RecipeError",
    "Selling",
    "Sheet",
    "SheetDifference",
    "SheetError",
    "ShopCosting",
    "ShoppingRow",
    "StageCost",
    "Swap",
    "Text",
    "TrialPart",
    "TrialRatio",
    "UsedFact",
    "ValueRange",
    "Why",
    "WithinSpend",
    "WrittenLine",
    "YieldShare",
    "YieldTest",
    "YieldTrial",
    "__version__",
    "basket",
    "break_even",
    "bundled_catalog",
    "by_shop",
    "cash_total",
    "catalog_with",
    "convert",
    "cost",
    "costing_page",
    "cover",
    "cover_function",
    "fill_trays",
    "frame",
    "from_json",
    "hand_over",
    "json_ld",
    "kitchen_page",
    "label",
    "loads",
    "measure_out",
    "measure_out_lines",
    "measure_out_recipe",
    "measure_set",
    "measure_sets",
    "pan",
    "pan_ratio",
    "pan_ratio_error",
    "panel",
    "pans",
    "parse_costing",
    "parse_dishes",
    "parse_json_ld",
    "parse_prices",
    "parse_recipe",
    "parse_sheet",
    "parse_stock",
    "parse_yield_test",
    "price_book",
    "prices_text",
    "printed_pages",
    "quantity",
    "read_costing",
    "read_dishes",
    "read_facts",
    "read_json_ld",
    "read_line",
    "read_lines",
    "read_measure_sets",
    "read_pans",
    "read_prices",
    "read_recipe",
    "read_sheet",
    "read_stock",
    "read_usda_sr",
    "read_yield_test",
    "recipe",
    "recipe_text",
    "selling_price",
    "sheet_difference",
    "shopping_page",
    "sold_at",
    "stock",
    "stock_text",
    "to_json",
    "write_json_ld",
    "write_prices",
    "write_recipe",
    "write_stock",
    "write_xlsx",
    "yield_test",
]

explain_functions(__name__, globals(), __all__)

if TYPE_CHECKING:
    from scalepan import plots as plots
else:

    def __getattr__(name: str) -> object:
        """``scalepan.plots``, which nothing loads before it is asked for."""
        if name != "plots":
            raise AttributeError(f"module {__name__!r} has no attribute {name!r}", name=name)
        from importlib import import_module

        return import_module("scalepan.plots")
