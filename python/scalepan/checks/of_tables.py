"""Checks of tables of your own, and of what is kept: whether they can be read."""

from __future__ import annotations

from functools import partial
from typing import TYPE_CHECKING

from scalepan.baskets import parse_dishes
from scalepan.checks.finds import Find, find_of
from scalepan.costs import parse_costing
from scalepan.errors import Error
from scalepan.foods import bundled_catalog, lay_row
from scalepan.measure_sets import read_measure_sets
from scalepan.own_tables import FACTS, FOODS, NAMES, rows_of_file
from scalepan.pan_table import read_pans
from scalepan.prices import parse_stock
from scalepan.sheets import parse_sheet
from scalepan.toml_document import has_key
from scalepan.yield_tests import parse_yield_test

if TYPE_CHECKING:
    from collections.abc import Sequence

    from scalepan._core import Catalog
    from scalepan.checks.finds import CheckedFile
    from scalepan.csv_document import Columns

# In the order in which one may name what another brings.
_LAID = {"table of foods": FOODS, "table of names": NAMES, "table of facts": FACTS}


def own_catalog(files: Sequence[CheckedFile]) -> Catalog:
    """The bundled catalogue with all rows of own tables that can be laid over it."""
    catalog = bundled_catalog().copy()
    for kind, columns in _LAID.items():
        for file in files:
            if file.kind == kind:
                _lay(file, columns, catalog)
    return catalog


def _lay(file: CheckedFile, columns: Columns, catalog: Catalog) -> None:
    try:
        for row in rows_of_file(file.path, columns):
            try:
                row.pass_to(partial(lay_row, catalog, columns.subject))
            except Error as error:
                file.add(find_of(error, file.path))
    except Error as error:
        file.add(find_of(error, file.path))


def check_other(file: CheckedFile, catalog: Catalog, measures: str | None) -> None:
    """Reads what is neither a recipe nor laid over the catalogue. Raises what reading raises."""
    if file.kind == "file of dishes":
        _check_dishes(file, catalog)
    elif file.kind == "stock list" or _has_stock_too(file):
        parse_stock(file.text, file=file.path, measures=measures)
    elif file.kind == "yield test":
        parse_yield_test(file.text, file=file.path, measures=measures)
    elif file.kind == "table of measures":
        read_measure_sets(file.path)
    elif file.kind == "table of pans":
        read_pans(file.path)
    elif file.kind == "costing":
        parse_costing(file.text, file=file.path)
    elif file.kind == "sheet":
        parse_sheet(file.text, file=file.path)


def _has_stock_too(file: CheckedFile) -> bool:
    """Whether a price book in TOML also says what is on hand."""
    is_toml = file.path.lower().endswith(".toml")
    return file.kind == "price book" and is_toml and has_key(file.text, "stock")


def _check_dishes(file: CheckedFile, catalog: Catalog) -> None:
    try:
        parse_dishes(file.text, file=file.path, catalog=catalog)
    except Error as error:
        if error.file in ("", file.path):
            raise
        message = f"its dishes cannot be sized, since {error.file} is wrong: {error.message}"
        file.add(Find(error.code, message, error.hint, file.path))
