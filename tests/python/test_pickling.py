"""Pickles of every public class, what counts as equal, and pickles that cannot be read."""

from __future__ import annotations

import copy
import pickle
import subprocess
import sys
from fractions import Fraction
from typing import Any

import kept
import pytest
import scalepan
from hypothesis import given, settings
from hypothesis import strategies as st
from scalepan import _core

ONE, OTHER = 31, 32
OBJECTS = kept.objects(ONE)
CHANGE = {"Catalog", "Changes", "Costing", "Sheet", "Variants"}
PROTOCOLS = range(2, pickle.HIGHEST_PROTOCOL + 1)


READER = """
import pickle, sys
sent = {name: pickle.loads(one) for name, one in pickle.load(sys.stdin.buffer).items()}
pickle.dump({name: pickle.dumps(one) for name, one in sent.items()}, sys.stdout.buffer)
"""


@pytest.fixture(scope="module")
def sent() -> dict[str, Any]:
    """The objects, sent to a process that was started anew and back; by name and protocol."""
    bundle = {
        f"{name} {protocol}": pickle.dumps(one, protocol)
        for name, one in OBJECTS.items()
        for protocol in PROTOCOLS
    }
    ran = subprocess.run(
        [sys.executable, "-c", READER], input=pickle.dumps(bundle), capture_output=True
    )
    assert ran.returncode == 0, ran.stderr.decode()
    return {name: pickle.loads(one) for name, one in pickle.loads(ran.stdout).items()}


@pytest.fixture(scope="module")
def others() -> dict[str, Any]:
    return kept.objects(OTHER)


@pytest.fixture(scope="module")
def again() -> dict[str, Any]:
    return kept.objects(ONE)


def test_every_public_class_is_tried() -> None:
    classes = {name for name, one in vars(scalepan).items() if isinstance(one, type)}
    public = classes & set(scalepan.__all__)
    assert len(public) > 75
    assert public - OBJECTS.keys() == set()
    of_core = {name for name, one in vars(_core).items() if isinstance(one, type)}
    assert of_core - OBJECTS.keys() == set()


@pytest.mark.parametrize("name", OBJECTS)
def test_objects_are_equal_after_another_process(name: str, sent: dict[str, Any]) -> None:
    one = OBJECTS[name]
    for protocol in PROTOCOLS:
        twin = sent[f"{name} {protocol}"]
        assert type(twin) is type(one)
        assert twin == one
        assert one == twin
        assert (twin != one) is False
        if " object at 0x" not in str(one):
            assert str(twin) == str(one)
        if _has_hash(one):
            assert hash(twin) == hash(one)


def _has_hash(one: object) -> bool:
    try:
        hash(one)
    except TypeError:
        return False
    return True


@pytest.mark.parametrize("name", OBJECTS)
def test_objects_with_other_figures_are_not_equal(name: str, others: dict[str, Any]) -> None:
    assert OBJECTS[name] != others[name]
    assert others[name] != OBJECTS[name]
    assert OBJECTS[name] != 31
    assert OBJECTS[name] is not None


@pytest.mark.parametrize("name", OBJECTS)
def test_copies_are_equal(name: str) -> None:
    one = OBJECTS[name]
    for twin in (copy.copy(one), copy.deepcopy(one), copy.deepcopy([one])[0]):
        assert type(twin) is type(one)
        assert twin == one


@pytest.mark.parametrize("name", OBJECTS)
def test_objects_made_twice_are_equal(name: str, again: dict[str, Any]) -> None:
    assert again[name] == OBJECTS[name]


@pytest.mark.parametrize("name", sorted(CHANGE))
def test_what_can_change_has_no_hash(name: str) -> None:
    with pytest.raises(TypeError, match="unhashable"):
        hash(OBJECTS[name])
    assert copy.copy(OBJECTS[name]) is not OBJECTS[name]


# What equal means.


def test_the_unit_shown_and_the_place_in_a_file_count_for_nothing() -> None:
    in_grams = scalepan.cover("1000 g", [("500 g", "2.10 EUR")])
    assert in_grams == scalepan.cover("1 kg", [("500 g", "2.10 EUR")])
    assert hash(in_grams) == hash(scalepan.cover("1 kg", [("500 g", "2.10 EUR")]))
    text = 'name = "Broth"\nserves = 4\nlines = ["200 g leeks"]\n'
    broth = scalepan.parse_recipe(text, file="broth.toml")
    assert broth == scalepan.parse_recipe("# of the dome\n" + text, file="other.toml")
    assert broth != scalepan.parse_recipe(text.replace("200", "201"))
    assert broth != broth.scale(portions=8)
    assert broth == broth.scale(portions=8).scale(portions=4)


def test_a_change_of_a_costing_makes_it_another() -> None:
    costing = kept.costing(ONE)
    twin = pickle.loads(pickle.dumps(costing))
    costing.override("leeks.edible", "0.5 EP/AP", why="own trim")
    assert costing != twin
    changed = pickle.loads(pickle.dumps(costing))
    assert changed == costing
    assert changed.used == costing.used != twin.used
    assert changed.why("leeks.buy") == costing.why("leeks.buy")
    changed.release("leeks.edible")
    assert changed.used == twin.used


def test_a_costing_that_came_back_answers_as_before() -> None:
    """Also what asks for prices that its own lines do not need."""
    costing = kept.costing(ONE)
    twin = pickle.loads(pickle.dumps(costing))
    assert twin.text() == costing.text()
    assert twin.to_check == costing.to_check
    asked = [("leeks", "300 g butter")]
    assert twin.swaps(asked) == costing.swaps(asked)
    assert twin.curve(range(1, 90)).till == costing.curve(range(1, 90)).till
    assert twin.options["stock"] == costing.options["stock"]


def test_a_curve_of_changed_figures_stays_as_it_was_made() -> None:
    costing = kept.changed_costing(ONE)
    curve = costing.curve([4, 40])
    costing.release("leeks.edible")
    twin = pickle.loads(pickle.dumps(curve))
    assert twin.used == curve.used != costing.curve([4, 40]).used
    assert (twin.kernel, twin.currency, twin.unpriced) == (
        curve.kernel,
        curve.currency,
        curve.unpriced,
    )
    assert twin.breakpoints == curve.breakpoints
    assert twin.even_counts == curve.even_counts


def test_the_sheet_of_a_costing_comes_with_its_costing() -> None:
    sheet = pickle.loads(pickle.dumps(kept.changed_costing(ONE).sheet))
    assert sheet.of_costing
    assert sheet.value("till") == kept.changed_costing(ONE).till
    assert list(sheet.variants) == ["sixty"]


# Sharing.


def test_recipes_share_the_bundled_catalogue() -> None:
    assert pickle.loads(pickle.dumps(scalepan.bundled_catalog())) is scalepan.bundled_catalog()
    assert len(pickle.dumps(scalepan.bundled_catalog())) < 200


def test_the_lines_of_one_pickle_share_their_recipe() -> None:
    lines = kept.recipe(ONE).lines
    alone = len(pickle.dumps(lines[0]))
    assert len(pickle.dumps(lines)) < alone + 600 * len(lines)
    assert [line.told for line in pickle.loads(pickle.dumps(lines))] == [
        line.told for line in lines
    ]


def test_an_own_catalogue_is_kept_as_what_it_adds() -> None:
    catalog = kept.catalog(ONE)
    assert len(pickle.dumps(catalog)) < 600
    twin = pickle.loads(pickle.dumps(catalog))
    assert twin.facts("leeks") == catalog.facts("leeks")
    assert twin.food_of("tripolium") == "sea_aster"
    assert twin.facts("carrots")[0].layer == "own"
    assert twin.fact_rows == catalog.fact_rows
    assert twin.name_rows == catalog.name_rows
    assert twin.choices == ("GB", {})
    twin.choose("", {})
    assert twin != catalog


def test_a_catalogue_of_rows_alone_is_kept_whole() -> None:
    part = scalepan.bundled_catalog().part({"leek", "carrot"})
    twin = pickle.loads(pickle.dumps(part))
    assert twin == part
    assert twin.fact_rows == part.fact_rows
    assert twin.food_rows == part.food_rows
    assert twin != scalepan.bundled_catalog().part({"leek"})


# Pickles that cannot be read.


def _state(one: Any) -> tuple[Any, list[Any]]:
    restore, arguments = one.__reduce__()
    return restore, list(arguments)


def test_a_pickle_of_another_version_is_refused() -> None:
    restore, (name, state) = _state(scalepan.loads("13 kg", "4 kg"))
    version = scalepan.__version__
    older = state.replace(f"{version}/1".encode(), b"0.0.9/1")
    with pytest.raises(scalepan.FileError) as refused:
        restore(name, older)
    assert str(refused.value) == (
        f"the pickle was made by scalepan 0.0.9/1, and this is scalepan {version}/1 "
        "(keep costings and sheets in files, which later versions read)"
    )
    assert refused.value.code == "pickle.version"


DAMAGED = "the pickle is damaged: bytes of it are missing or changed (make it anew from the object)"


def test_every_changed_byte_and_every_cut_is_noticed() -> None:
    restore, (name, state, *beside) = _state(kept.recipe(ONE))
    head = 1 + state[0]
    for place in range(len(state)):
        changed = bytearray(state)
        changed[place] ^= 0x55
        with pytest.raises(scalepan.FileError) as refused:
            restore(name, bytes(changed), *beside)
        if place >= head:
            assert str(refused.value) == DAMAGED
    for end in range(len(state)):
        with pytest.raises(scalepan.FileError) as refused:
            restore(name, state[:end], *beside)
        assert str(refused.value) == DAMAGED


def test_objects_that_are_missing_or_of_another_class_are_noticed() -> None:
    restore, (name, state, recipe) = _state(kept.recipe(ONE).lines[0])
    for beside in ([], [31], [kept.prices(ONE)]):
        with pytest.raises(scalepan.FileError) as refused:
            restore(name, state, *beside)
        assert str(refused.value) == DAMAGED
    assert restore(name, state, recipe) == kept.recipe(ONE).lines[0]
    with pytest.raises(scalepan.FileError) as refused:
        restore("Ladle", state, recipe)
    assert str(refused.value) == DAMAGED


def test_other_bundled_facts_are_refused() -> None:
    name = scalepan.bundled_catalog().base
    with pytest.raises(scalepan.FileError) as refused:
        scalepan.foods.base_catalog("bundled/0123456789abcdef")
    assert str(refused.value) == (
        f"the pickle goes by the facts bundled/0123456789abcdef, and there are {name} "
        "(read it where the same version is installed)"
    )


def test_offers_alone_are_refused() -> None:
    offers = kept.costing(ONE).sheet.value("leeks.offers")
    assert offers == kept.costing(ONE).sheet.value("leeks.offers")
    with pytest.raises(scalepan.FileError) as refused:
        pickle.dumps(offers)
    assert str(refused.value) == (
        "offers and packs are parts of a costing, and go into no pickle without it "
        "(make a pickle of the costing)"
    )


# Anything.

fractions = st.builds(
    Fraction, st.integers(-(10**40), 10**40), st.integers(1, 10**30)
) | st.fractions(max_denominator=1000)
amounts = st.fractions(min_value=Fraction(1, 1000), max_value=10**6, max_denominator=10**6)


@given(st.lists(fractions, max_size=30))
def test_numbers_come_back_exactly(numbers: list[Fraction]) -> None:
    column = pickle.loads(pickle.dumps(scalepan.NumberColumn(numbers)))
    assert [column[i] for i in range(len(column))] == numbers


@settings(deadline=None)
@given(amounts, amounts, st.sampled_from(["kg", "lb", "oz", "g EP", "g AP"]))
def test_covers_come_back_exactly(need: Fraction, price: Fraction, unit: str) -> None:
    amount = scalepan.quantity(need, unit)
    money = scalepan.quantity(price, "GBP")
    cover = scalepan.cover(amount, [(scalepan.quantity(1000, unit), money), (amount, money)])
    twin = pickle.loads(pickle.dumps(cover))
    assert twin == cover
    assert twin.packs == cover.packs
    assert (twin.price.value, twin.price.unit) == (price, "GBP")
    assert (twin.leftover.value, twin.leftover.unit) == (cover.leftover.value, cover.leftover.unit)


@settings(deadline=None, max_examples=50)
@given(st.lists(amounts, min_size=1, max_size=8), amounts, st.integers(1, 500))
def test_recipes_come_back_exactly(grams: list[Fraction], serves: Fraction, portions: int) -> None:
    lines = ", ".join(f'"{grams_} g food{i}"' for i, grams_ in enumerate(grams))
    text = f'name = "Any"\nserves = "{serves}"\nlines = [{lines}]\n'
    recipe = scalepan.parse_recipe(text).scale(portions=portions)
    twin = pickle.loads(pickle.dumps(recipe))
    assert twin == recipe
    assert [line.amount.value for line in twin.lines] == [
        each * portions / serves for each in grams
    ]


@settings(deadline=None, max_examples=50)
@given(st.lists(st.tuples(amounts, amounts, st.booleans()), max_size=8))
def test_price_books_come_back_exactly(rows: list[tuple[Fraction, Fraction, bool]]) -> None:
    text = "item,sold_as,pack,price,currency,keeps,tax\n" + "".join(
        f"item {i},AP,{size} g,{price},GBP,{'yes' if keeps else '3 days'},5 %\n"
        for i, (size, price, keeps) in enumerate(rows)
    )
    if not rows:
        return
    book = scalepan.parse_prices(text, file="any.csv")
    twin = pickle.loads(pickle.dumps(book))
    assert twin == book
    for offer, (size, price, keeps) in zip(twin.offers, rows, strict=True):
        assert (offer.content.value, offer.price.value) == (size, price)
        assert (offer.keeps, offer.keeps_days) == (True, None if keeps else 3)
    assert [offer.row for offer in twin.offers] == [offer.row for offer in book.offers]
