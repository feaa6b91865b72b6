"""The bundled names: regions, near relatives, and what is asked."""

from __future__ import annotations

from collections import defaultdict

import pytest
import scalepan
from food_names import find, the_food
from food_tables import FOOD, FOODS, NAMES


def test_names_lead_to_foods() -> None:
    keys = [(row["name"], row["region"], row["food"]) for row in NAMES]
    assert len(set(keys)) == len(keys)
    for row in NAMES:
        assert row["food"] in FOOD
        assert row["match"] in ("same", "near")
        assert row["region"] in ("", "GB", "US", "AU", "NZ")
        assert row["plural"]
        assert row["name"] == row["name"].lower()
    for row in FOODS:
        own = [name for name in NAMES if name["food"] == row["food"] and name["match"] == "same"]
        assert (row["name"], row["plural"]) in {(name["name"], name["plural"]) for name in own}


def test_the_table_has_150_regional_names_and_150_plurals() -> None:
    assert len([row for row in NAMES if row["region"]]) >= 150
    assert len([row for row in NAMES if row["name"] != row["plural"]]) >= 150
    shared = [
        food
        for food in FOOD
        if {"GB", "US"} <= {row["region"] for row in NAMES if row["food"] == food}
    ]
    assert len(shared) >= 60


def test_a_name_that_regions_use_for_different_foods_is_settled_by_each() -> None:
    """Common practice, no published source."""
    assert (the_food("cornflour", "GB"), the_food("cornflour", "US")) == (
        "corn_starch",
        "corn_flour_wholegrain",
    )
    assert (the_food("coriander", "GB"), the_food("coriander", "US")) == (
        "coriander_leaf",
        "coriander_seed",
    )


def test_only_the_meant_names_are_ambiguous() -> None:
    foods: dict[tuple[str, str], set[str]] = defaultdict(set)
    for row in NAMES:
        foods[row["name"], row["region"]].add(row["food"])
    assert {name for (name, _), found in foods.items() if len(found) > 1} == {
        "pepper",
        "kidney bean",
        "red kidney bean",
        "white bean",
        "cannellini bean",
        "olive",
        "chicken",
    }


@pytest.mark.parametrize(
    ("name", "food"),
    [
        ("leeks", "leek"),
        ("pearl barley", "pearl_barley"),
        ("eggs", "egg"),
        ("chickpeas", "chickpea"),
        ("onions", "onion"),
        ("granulated sugar", "granulated_sugar"),
        ("tomatoes", "tomato"),
        ("cloves of garlic", "garlic"),
        ("peppers", "green_pepper"),
        ("lentils", "lentil"),
        ("dried chickpeas", "chickpea_dried"),
    ],
)
def test_names_a_cook_writes(name: str, food: str) -> None:
    assert the_food(name) == food


@pytest.mark.parametrize(
    ("gb", "us"),
    [
        ("courgettes", "zucchini"),
        ("aubergine", "eggplant"),
        ("spring onion", "scallion"),
        ("spring onions", "green onions"),
        ("coriander leaf", "cilantro"),
        ("cornflour", "cornstarch"),
        ("icing sugar", "powdered sugar"),
        ("icing sugar", "confectioners' sugar"),
        ("bicarbonate of soda", "baking soda"),
        ("double cream", "heavy cream"),
        ("plain flour", "all-purpose flour"),
        ("self-raising flour", "self-rising flour"),
        ("wholemeal flour", "whole-wheat flour"),
        ("prawns", "shrimp"),
        ("chickpeas", "garbanzo beans"),
        ("swede", "rutabaga"),
        ("beetroot", "beets"),
        ("rocket", "arugula"),
        ("caster sugar", "superfine sugar"),
        ("beef mince", "ground beef"),
        ("haricot beans", "navy beans"),
        ("butter beans", "lima beans"),
        ("tomato puree", "tomato paste"),
        ("red chilli", "red chili"),
        ("linseeds", "flaxseeds"),
    ],
)
def test_regional_names_find_the_same_food(gb: str, us: str) -> None:
    assert the_food(gb, "GB") == the_food(us, "US")


def test_tomato_puree_is_not_the_same_thing_everywhere() -> None:
    assert the_food("tomato puree", "GB") != the_food("tomato puree", "US")


def test_near_names_are_marked() -> None:
    match = {(row["name"], row["food"]): row["match"] for row in NAMES}
    assert match["caster sugar", "granulated_sugar"] == "near"
    assert match["double cream", "heavy_cream"] == "near"
    assert match["smoked paprika", "paprika"] == "near"
    assert match["zucchini", "courgette"] == "same"


def test_a_plain_kidney_bean_is_asked_about() -> None:
    """Raw ones need their caution, so the plain name must not settle on the tin."""
    assert find("kidney beans") == {"kidney_bean_canned", "kidney_bean_dried"}
    assert FOOD["kidney_bean_dried"]["cautions"] == "dried_kidney_bean"
    assert FOOD["kidney_bean_canned"]["cautions"] == ""


@pytest.mark.parametrize("region", ["", "GB", "US"])
@pytest.mark.parametrize(
    "food", ["leek", "coriander_leaf", "spring_onion", "corn_starch", "heavy_cream"]
)
def test_a_part_of_the_catalogue_has_a_foods_names_and_facts_as_the_whole(
    food: str, region: str
) -> None:
    whole = scalepan.catalog_with(region=region) if region else scalepan.bundled_catalog()
    part = whole.part({food})

    def meant(catalog: scalepan.Catalog, name: str) -> str | None:
        try:
            return catalog.food_of(name)
        except scalepan.FoodError as error:
            return str(error)

    names = {text for row in whole.name_rows if row[3] == food for text in row[:2]}
    assert names
    assert {name: meant(part, name) for name in names} == {n: meant(whole, n) for n in names}
    assert [fact.id for fact in part.facts(food)] == [fact.id for fact in whole.facts(food)]
    assert part.food_count < 12
