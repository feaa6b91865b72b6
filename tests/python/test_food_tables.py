"""The shape of the bundled tables: ids, stages, spreads, defaults, allergens."""

from __future__ import annotations

import re
from collections import Counter

import pytest
from food_tables import DATA, FACTS, FOOD, FOODS, SELECTION, SOURCES, number, rows_of, unit

# The tail of each second figure's id, by id.
SECOND = {
    ".".join(part for part in (row["food"], row["kind"], row["label"], row["tail"]) if part): row[
        "tail"
    ]
    for row in rows_of(SOURCES / "second_figures.csv")
}


def test_ids_are_unique_and_well_formed() -> None:
    facts = [row["fact"] for row in rows_of(DATA / "facts.csv")]
    assert len(set(facts)) == len(facts)
    assert len(FOOD) == len(FOODS) >= 150
    for fact, row in FACTS.items():
        label = (row["size"] if row["kind"] == "piece" else row["state"]).lower()
        tail = re.sub(r"[^a-z0-9]+", "_", label).strip("_")
        base = ".".join(part for part in (row["food"], row["kind"], tail) if part)
        assert fact in (base, f"{base}.{SECOND.get(fact, '')}")
        assert row["food"] in FOOD
        assert row["source"]


def test_value_texts_and_spreads() -> None:
    form = re.compile(r"\d+(?:\.\d*[1-9]|/\d+)? [^ ].*")
    for row in FACTS.values():
        assert form.fullmatch(row["value"]), row
        if row["low"] or row["high"]:
            assert unit(row["low"]) == unit(row["value"]) == unit(row["high"])
            assert number(row["low"]) <= number(row["value"]) <= number(row["high"])


def test_stages_fit_the_kind() -> None:
    same = {
        ("any", "any"),
        ("AP", "AP"),
        ("EP", "EP"),
        ("cooked", "cooked"),
        ("drained", "drained"),
    }
    allowed = {
        "density": same,
        "piece": {("AP", "EP"), ("AP", "AP")},
        "edible": {("AP", "EP")},
        "cooked": {("EP", "cooked")},
        "drained": {("AP", "drained")},
    }
    for row in FACTS.values():
        assert (row["from_stage"], row["to_stage"]) in allowed[row["kind"]]


def test_shares_are_shares() -> None:
    for row in FACTS.values():
        if row["kind"] in ("edible", "drained"):
            assert 0 < number(row["value"]) <= 1


def test_one_figure_for_a_food_and_state_but_for_the_second_ones() -> None:
    firsts = [row for fact, row in FACTS.items() if fact not in SECOND]
    counts = Counter((r["food"], r["kind"], r["state"], r["size"]) for r in firsts)
    assert max(counts.values()) == 1
    assert not [fact for fact in SECOND if FACTS[fact]["kind"] == "density"]


@pytest.mark.parametrize("fact", SECOND)
def test_a_second_figure_comes_behind_its_first(fact: str) -> None:
    """Facts of one layer are used in the order of their ids."""
    first = FACTS[fact.removesuffix(f".{SECOND[fact]}")]
    same = ("food", "kind", "state", "size", "from_stage", "to_stage")
    assert [FACTS[fact][key] for key in same] == [first[key] for key in same]
    assert first["fact"] < fact
    assert first["source"] != FACTS[fact]["source"]


def test_defaults_name_a_fact() -> None:
    for row in FOODS:
        own = [fact for fact in FACTS.values() if fact["food"] == row["food"]]
        if row["default_state"]:
            assert row["default_state"] in {f["state"] for f in own if f["kind"] == "density"}
        if row["default_size"]:
            assert row["default_size"] in {f["size"] for f in own if f["kind"] == "piece"}


def test_every_food_has_an_edible_share_or_says_why_not() -> None:
    reasons = {row["food"]: row["note"] for row in SELECTION if row["kind"] == "no edible"}
    for food in FOOD:
        assert (f"{food}.edible" in FACTS) != bool(reasons.get(food)), food


EU = (  # Reg. (EU) 1169/2011 Annex II
    "gluten crustaceans eggs fish peanuts soybeans milk nuts celery mustard sesame sulphites "
    "lupin molluscs"
)
US = "milk;eggs;fish;crustacean shellfish;tree nuts;peanuts;wheat;soybeans;sesame"  # FDA, nine
CAUTIONS = (
    "poultry minced_meat whole_meat egg fish shellfish dried_kidney_bean cooked_rice sprouts "
    "salt leavening gelling"
)


def test_allergens_and_cautions_use_the_closed_words() -> None:
    allowed = {
        "allergens_eu": {*EU.split(), "check the pack"},
        "allergens_us": {*US.split(";"), "check the pack"},
        "cautions": set(CAUTIONS.split()),
    }
    for row in FOODS:
        for column, words in allowed.items():
            assert set(filter(None, row[column].split(";"))) <= words, row


@pytest.mark.parametrize(
    ("food", "eu", "us"),
    [
        ("plain_flour", "gluten", "wheat"),
        ("pearl_barley", "gluten", ""),
        ("rolled_oat", "gluten", ""),
        ("celery", "celery", ""),
        ("mussel", "molluscs", ""),
        ("prawn", "crustaceans", "crustacean shellfish"),
        ("soy_sauce", "gluten;soybeans", "wheat;soybeans"),
        ("white_wine", "sulphites", ""),
        ("butter", "milk", "milk"),
        ("egg_white", "eggs", "eggs"),
        ("walnut", "nuts", "tree nuts"),
        ("tahini", "sesame", "sesame"),
        ("leek", "", ""),
    ],
)
def test_the_two_lists_of_allergens_differ(food: str, eu: str, us: str) -> None:
    """No gluten, celery, mollusc or sulphite entry among the nine of the FDA."""
    assert (FOOD[food]["allergens_eu"], FOOD[food]["allergens_us"]) == (eu, us)


def test_same_stuff_same_allergens() -> None:
    """US milk, egg, fish, soya and sesame rows have their EU counterpart."""
    for row in FOODS:
        eu, us = (set(row[f"allergens_{place}"].split(";")) for place in ("eu", "us"))
        for word in ("milk", "eggs", "fish", "soybeans", "sesame"):
            assert (word in eu) == (word in us), row
        assert ("crustaceans" in eu) == ("crustacean shellfish" in us), row
        assert "wheat" not in us or "gluten" in eu, row
