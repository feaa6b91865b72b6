"""Foods by written name in the bundled names table, read without the package."""

from __future__ import annotations

from food_tables import NAMES


def find(name: str, region: str = "") -> set[str]:
    """The foods that a written name leads to; a region's own rows come before the others."""
    hits = [row for row in NAMES if name in (row["name"], row["plural"])]
    local = {row["food"] for row in hits if row["region"] == region}
    return local or {row["food"] for row in hits if not row["region"]}


def the_food(name: str, region: str = "") -> str:
    foods = find(name, region)
    assert len(foods) == 1, (name, foods)
    return foods.pop()


def regional(name: str) -> str:
    """The food of a name in plain, American or British use, in this order."""
    found = next(foods for region in ("", "US", "GB") if (foods := find(name, region)))
    assert len(found) == 1, (name, found)
    return found.pop()
