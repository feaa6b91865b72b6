"""The catalogue of foods and facts: the bundled one, and tables of your own laid over it."""

from __future__ import annotations

import os
from functools import cache
from typing import TYPE_CHECKING

from scalepan._core import Catalog

if TYPE_CHECKING:
    from collections.abc import Iterable, Iterator, Mapping

    from scalepan.csv_document import Columns
    from scalepan.files import PathLike
    from scalepan.own_tables import PlacedRow

FACT_COLUMNS = (
    "fact",
    "food",
    "kind",
    "state",
    "size",
    "from_stage",
    "to_stage",
    "value",
    "low",
    "high",
    "source",
)
FOOD_COLUMNS = (
    "food",
    "name",
    "plural",
    "default_state",
    "default_size",
    "allergens_eu",
    "allergens_us",
    "cautions",
)
NAME_COLUMNS = ("name", "plural", "region", "food", "match")

# As the bundled table has it where makers differ.
_UNKNOWN_ALLERGENS = "check the pack"
_KIND_STAGES = {
    "density": ("any", "any"),
    "piece": ("AP", "EP"),
    "edible": ("AP", "EP"),
    "cooked": ("EP", "cooked"),
    "drained": ("AP", "drained"),
}


@cache
def bundled_catalog() -> Catalog:
    """The foods, names and facts that come with the package; read once.

    Every fact has its source beside it (``data/facts.csv``), mostly USDA SR28. What words such as
    ``pinch`` measure is a convention (``data/words.csv``), used where a food has no figure.
    """
    catalog = Catalog()
    for row in _rows("foods.csv"):
        add_food_row(catalog, row)
    for row in _rows("names.csv"):
        add_name_row(catalog, row)
    for row in _rows("facts.csv"):
        catalog.add_fact([row[column] for column in FACT_COLUMNS], "bundled")
    for row in _rows("words.csv"):
        fact = ["word." + row["word"], "", "word", "", row["word"], "AP", "any", row["value"]]
        catalog.add_fact([*fact, row["low"], row["high"], row["source"]], "convention")
    catalog.name_base("bundled")
    return catalog


@cache
def _untouched_catalog() -> Catalog:
    return bundled_catalog.__wrapped__()


def base_catalog(name: str) -> Catalog:
    """The bundled catalogue as it came with the package, for what was kept beside it.

    Raises:
        FileError: ``pickle.catalog`` for the name of other bundled data than these.
    """
    catalog = bundled_catalog() if bundled_catalog().is_base else _untouched_catalog()
    if catalog.base != name:
        from scalepan.errors import make_error

        message = f"the pickle goes by the facts {name}, and there are {catalog.base}"
        raise make_error("pickle.catalog", message, "read it where the same version is installed")
    return catalog


def catalog_with(
    facts: object = (),
    *,
    foods: object = (),
    names: object = (),
    prefer: Iterable[str] = (),
    region: str = "",
    choose: Mapping[str, str] | None = None,
    catalog: Catalog | None = None,
) -> Catalog:
    """A catalogue with tables of your own laid over it; own facts win.

    Each table is an iterable of mappings, or a data frame (what has ``to_dicts()``,
    ``to_pylist()`` or ``to_dict("records")``). Figures are text with their unit
    (``"0.50 EP/AP"``); a float is refused.

    Args:
        facts: columns of ``FACT_COLUMNS``; fact, food, kind and value are required. Stages left
            out are those of the kind. ``food`` is a food's id or any of its names.
        foods: foods that the catalogue has not; columns of ``FOOD_COLUMNS``, food (its id) is
            required. Allergens and cautions are parted by ``;``.
        names: more names; columns of ``NAME_COLUMNS``, name and food are required. ``match`` is
            ``same`` or ``near``.
        prefer: ids of facts to use before all others on the same thing, as if they were own.
        region: whose names are meant, ``"GB"``, where one name has several foods.
        choose: foods by such a name, ``{"cornflour": "corn_starch"}``; these go before the region.
        catalog: what is laid under; left out, the bundled one. It is left as it is.

    Raises:
        FoodError: ``fact.value``, ``fact.kind``, ``fact.stage``, ``fact.duplicate``,
            ``fact.unknown``, ``food.unknown``, ``food.duplicate``, ``food.region``,
            ``name.match``, and of each table ``.table``, ``.column``, ``.float``, ``.cell``;
            those of a row with its number.
    """
    from scalepan import own_tables  # here: `import scalepan` stays quick

    laid = _laid(
        catalog,
        own_tables.rows_of_table(foods, own_tables.FOODS),
        own_tables.rows_of_table(names, own_tables.NAMES),
        own_tables.rows_of_table(facts, own_tables.FACTS),
        prefer,
    )
    if region or choose:
        laid.choose(region, choose or {})
    return laid


def read_facts(
    path: PathLike | None = None,
    *,
    foods: PathLike | None = None,
    names: PathLike | None = None,
    prefer: Iterable[str] = (),
    catalog: Catalog | None = None,
) -> Catalog:
    """As ``catalog_with``, from CSV files; those parted by semicolons have decimal commas.

    Raises:
        FoodError: ``fact.column``, ``fact.fields``, ``fact.no_rows``, ``fact.syntax`` (``food.``
            and ``name.`` likewise), ``fact.decimal``, and what ``catalog_with`` raises, each with
            file and line.
        FileError: ``file.unreadable`` and others.
    """
    from scalepan import own_tables

    def rows(file: PathLike | None, columns: Columns) -> Iterator[PlacedRow]:
        return iter(()) if file is None else own_tables.rows_of_file(file, columns)

    return _laid(
        catalog,
        rows(foods, own_tables.FOODS),
        rows(names, own_tables.NAMES),
        rows(path, own_tables.FACTS),
        prefer,
    )


def _laid(
    base: Catalog | None,
    foods: Iterator[PlacedRow],
    names: Iterator[PlacedRow],
    facts: Iterator[PlacedRow],
    prefer: Iterable[str],
) -> Catalog:
    catalog = (base or bundled_catalog()).copy()
    for row in foods:
        row.pass_to(lambda texts: _add_own_food(catalog, texts))
    for row in names:
        row.pass_to(lambda texts: _add_own_name(catalog, texts))
    for row in facts:
        row.pass_to(lambda texts: _add_own_fact(catalog, texts))
    for fact in prefer:
        catalog.prefer(fact)
    return catalog


def _add_own_food(catalog: Catalog, row: dict[str, str]) -> None:
    name = row["name"] or row["food"].replace("_", " ")
    whole = {**row, "name": name, "plural": row["plural"] or name}
    for allergens in ("allergens_eu", "allergens_us"):
        whole[allergens] = _UNKNOWN_ALLERGENS if not row[allergens] else row[allergens]
        if row[allergens] == "none":
            whole[allergens] = ""
    add_food_row(catalog, whole)
    catalog.add_name(name, whole["plural"], "", row["food"], False)


def _add_own_name(catalog: Catalog, row: dict[str, str]) -> None:
    if row["match"] not in ("", "same", "near"):
        from scalepan.errors import make_error

        raise make_error("name.match", f'"{row["match"]}" is no match', "write same or near")
    food = catalog.food_of(row["food"]) or row["food"]
    add_name_row(catalog, {**row, "plural": row["plural"] or row["name"], "food": food})


def _add_own_fact(catalog: Catalog, row: dict[str, str]) -> None:
    start, end = _KIND_STAGES.get(row["kind"], ("any", "any"))
    whole = {
        **row,
        "food": catalog.food_of(row["food"]) or row["food"],
        "from_stage": row["from_stage"] or start,
        "to_stage": row["to_stage"] or end,
    }
    catalog.add_fact([whole[column] for column in FACT_COLUMNS], "own")


def lay_row(catalog: Catalog, table: str, row: dict[str, str]) -> None:
    """Lays one row of an own table over a catalogue: of ``food``, ``name`` or ``fact``."""
    add = {"food": _add_own_food, "name": _add_own_name, "fact": _add_own_fact}
    add[table](catalog, row)


def add_food_row(catalog: Catalog, row: Mapping[str, str]) -> None:
    """Adds a row with all of ``FOOD_COLUMNS``. Raises FoodError (``food.duplicate``)."""
    catalog.add_food(
        [row[column] for column in FOOD_COLUMNS[:5]],
        _parts(row["allergens_eu"]),
        _parts(row["allergens_us"]),
        _parts(row["cautions"]),
    )


def add_name_row(catalog: Catalog, row: Mapping[str, str]) -> None:
    """Adds a row with all of ``NAME_COLUMNS``. Raises FoodError (``food.unknown``)."""
    near = row["match"] == "near"
    catalog.add_name(row["name"], row["plural"], row["region"], row["food"], near)


def _rows(name: str) -> list[dict[str, str]]:
    import csv  # here, so that `import scalepan` stays quick

    path = os.path.join(os.path.dirname(__file__), "data", name)
    with open(path, encoding="utf-8", newline="") as stream:
        return list(csv.DictReader(stream))


def _parts(field: str) -> list[str]:
    return field.split(";") if field else []
