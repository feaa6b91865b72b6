"""Scalepan: exact scaling, whole-pack buying and costing of recipes.

import scalepan

    pot = scalepan.read_recipe("pot.toml").scale(portions=40)
    costing = scalepan.cost(pot, scalepan.read_prices("prices.csv"))
    print(costing.till, costing.per_portion("borne"))
"""

from scalepan._core import (
    BaseUse,
    Breakpoint,
    CashTotal,
    Catalog,
    Costing,
    Cover,
    CoverFunction,
    CoverStep,
    Curve,
    Driver,
    Fact,
    Label,
    LabelItem,
    Line,
    Loads,
    MadeBase,
    MeasureSet,
    MethodStep,
    Offer,
    PartShare,
    PriceBook,
    PriceFound,
    Quantity,
    Recipe,
    Selling,
    ShoppingRow,
    StageCost,
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
from scalepan.conversion import Conversion, OtherFact, UsedFact, convert
from scalepan.costs import cost
from scalepan.covers import Purchase, cover, cover_function
from scalepan.errors import (
    CostError,
    Error,
    FileError,
    FoodError,
    MeasureError,
    NumberError,
    PriceError,
    RecipeError,
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
from scalepan.prices import parse_prices, read_prices
from scalepan.recipes import parse_recipe, read_recipe
from scalepan.selling import cash_total, selling_price, sold_at
from scalepan.trays import fill_trays
from scalepan.usda import read_usda_sr
from scalepan.yield_tests import YieldTest, parse_yield_test, read_yield_test, yield_test

__all__ = [
    "BaseUse",
    "Breakpoint",
    "CashTotal",
    "Catalog",
    "Conversion",
    "CostError",
    "Costing",
    "Cover",
    "CoverFunction",
    "CoverStep",
    "Curve",
    "Driver",
    "Error",
    "Fact",
    "FileError",
    "FoodError",
    "Label",
    "LabelItem",
    "Line",
    "Loads",
    "MadeBase",
    "MeasureError",
    "MeasureSet",
    "MeasuredLine",
    "MeasuredOut",
    "MethodStep",
    "NumberError",
    "Offer",
    "OtherFact",
    "Pan",
    "PartShare",
    "PriceBook",
    "PriceError",
    "PriceFound",
    "PrintedVolume",
    "Purchase",
    "Quantity",
    "Recipe",
    "RecipeError",
    "Selling",
    "ShoppingRow",
    "StageCost",
    "TrialPart",
    "TrialRatio",
    "UsedFact",
    "Why",
    "WithinSpend",
    "WrittenLine",
    "YieldShare",
    "YieldTest",
    "YieldTrial",
    "__version__",
    "bundled_catalog",
    "cash_total",
    "catalog_with",
    "convert",
    "cost",
    "cover",
    "cover_function",
    "fill_trays",
    "hand_over",
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
    "pans",
    "parse_prices",
    "parse_recipe",
    "parse_yield_test",
    "quantity",
    "read_facts",
    "read_line",
    "read_lines",
    "read_measure_sets",
    "read_pans",
    "read_prices",
    "read_recipe",
    "read_usda_sr",
    "read_yield_test",
    "selling_price",
    "sold_at",
    "yield_test",
]
