"""Several dishes bought together, against arithmetic with fractions and packs tried one by one.

Dishes and prices are invented.
"""

from __future__ import annotations

from dataclasses import dataclass
from fractions import Fraction

import scalepan
from dishes import HEAD
from hypothesis import given, settings
from hypothesis import strategies as st
from pack_model import PACK_GRAMS, REFUSE, Pack, cheapest


@dataclass(frozen=True)
class Shelf:
    packs: tuple[Pack, ...]
    keeps: bool


@dataclass(frozen=True)
class ModelLine:
    food: str
    grams: int
    trimmed: bool

    def need(self, factor: Fraction) -> Fraction:
        edible = Fraction(100 - REFUSE[self.food], 100) if self.trimmed else Fraction(1)
        return self.grams * factor / edible


@dataclass(frozen=True)
class ModelDish:
    lines: tuple[ModelLine, ...]
    serves: int
    portions: Fraction

    @property
    def needs(self) -> dict[str, Fraction]:
        return {line.food: line.need(self.portions / self.serves) for line in self.lines}


@dataclass(frozen=True)
class Bill:
    """Of one item, for all that need it."""

    till: Fraction
    used: Fraction
    rest: Fraction
    need: Fraction


SHELVES = st.fixed_dictionaries(
    {
        food: st.builds(
            Shelf,
            st.lists(
                st.builds(Pack, st.sampled_from(PACK_GRAMS), st.integers(1, 900)),
                min_size=1,
                max_size=3,
                unique_by=lambda pack: pack.grams,
            ).map(tuple),
            st.booleans(),
        )
        for food in REFUSE
    }
)
LINES = st.lists(
    st.builds(ModelLine, st.sampled_from(sorted(REFUSE)), st.integers(1, 900), st.booleans()),
    min_size=1,
    max_size=4,
    unique_by=lambda line: line.food,
).map(tuple)
PORTIONS = st.one_of(
    st.integers(1, 12).map(Fraction), st.fractions(Fraction(1, 4), 8, max_denominator=8)
)
DISHES = st.lists(st.builds(ModelDish, LINES, st.integers(1, 8), PORTIONS), min_size=1, max_size=5)


def book(shelves: dict[str, Shelf]) -> scalepan.PriceBook:
    rows = "".join(
        f"{food},AP,{pack.grams} g,{pack.pence}/100,GBP,{'yes' if shelf.keeps else 'no'}\n"
        for food, shelf in shelves.items()
        for pack in shelf.packs
    )
    return scalepan.parse_prices(HEAD + rows)


def recipe_of(dish: ModelDish, number: int) -> scalepan.Recipe:
    lines = ", ".join(
        f'"{line.grams} g {line.food}{", trimmed" if line.trimmed else ""}"' for line in dish.lines
    )
    text = f'name = "Dish {number}"\nserves = {dish.serves}\nlines = [{lines}]\n'
    return scalepan.parse_recipe(text).scale(portions=dish.portions)


def bill_of(need: Fraction, shelf: Shelf) -> Bill:
    pence, grams = cheapest(need, shelf.packs)
    till = Fraction(pence, 100)
    used = till * need / grams
    return Bill(till, used, till - used, need)


@settings(max_examples=150, deadline=None)
@given(DISHES, SHELVES)
def test_baskets_equal_the_arithmetic(dishes: list[ModelDish], shelves: dict[str, Shelf]) -> None:
    pooled: dict[str, Fraction] = {}
    for dish in dishes:
        for food, need in dish.needs.items():
            pooled[food] = pooled.get(food, Fraction(0)) + need
    bills = {food: bill_of(need, shelves[food]) for food, need in pooled.items()}
    recipes = [recipe_of(dish, i) for i, dish in enumerate(dishes)]
    bought = scalepan.basket(recipes, book(shelves))

    assert bought.till.value == sum(bill.till for bill in bills.values())
    assert bought.used.value == sum(bill.used for bill in bills.values())
    thrown = sum(bill.rest for food, bill in bills.items() if not shelves[food].keeps)
    assert bought.thrown.value == thrown
    rows = {row.item: row for row in bought.shopping}
    assert rows.keys() == bills.keys()
    for food, row in rows.items():
        users = [i for i, dish in enumerate(dishes) if food in dish.needs]
        assert [each.dish for each in row.dishes] == [f"Dish {i}" for i in users]
        assert [each.need.to("g").value for each in row.dishes] == [
            dishes[i].needs[food] for i in users
        ]
    for dish, charged in zip(dishes, bought.dishes, strict=True):
        shares = {food: need / pooled[food] for food, need in dish.needs.items()}
        assert charged.till.value == sum(bills[f].till * share for f, share in shares.items())
        assert charged.used.value == sum(bills[f].used * share for f, share in shares.items())
        assert charged.thrown.value == sum(
            bills[f].rest * share for f, share in shares.items() if not shelves[f].keeps
        )
        alone = [bill_of(need, shelves[food]) for food, need in dish.needs.items()]
        assert charged.apart.till.value == sum(bill.till for bill in alone)
        assert charged.saving.value == charged.apart.till.value - charged.till.value


@settings(max_examples=150, deadline=None)
@given(DISHES, SHELVES)
def test_dishes_come_to_the_basket_and_it_is_never_dearer_than_apart(
    dishes: list[ModelDish], shelves: dict[str, Shelf]
) -> None:
    recipes = [recipe_of(dish, i) for i, dish in enumerate(dishes)]
    prices = book(shelves)
    bought = scalepan.basket(recipes, prices)
    apart = [scalepan.cost(recipe, prices) for recipe in recipes]
    for name in ("till", "used", "thrown", "borne", "closing"):
        whole = getattr(bought, name).value
        assert sum(getattr(dish, name).value for dish in bought.dishes) == whole
        for dish, alone in zip(bought.dishes, apart, strict=True):
            assert getattr(dish.apart, name) == getattr(alone, name)
    for each in (bought, *bought.dishes):
        assert each.till == each.used + each.thrown + each.closing
        assert each.borne == each.used + each.thrown
    assert bought.apart_till.value == sum(alone.till.value for alone in apart)
    assert bought.apart_borne.value == sum(alone.borne.value for alone in apart)
    assert bought.saving == bought.apart_till - bought.till
    assert bought.saving_borne == bought.apart_borne - bought.borne
    assert bought.saving >= 0
    for dish in bought.dishes:
        assert dish.per_portion("till").value * dish.portions == dish.till.value


# Eggs by the piece and by weight (SR28 01123: 50 g), parsley by weight and by bunches, of which no
# fact gives the weight.
MIXED_LINES = st.sampled_from(
    ["2 large eggs", "7 large eggs", "130 g eggs", "1 kg eggs", "20 g parsley", "2 bunches parsley"]
)
MIXED_PACKS = st.lists(
    st.tuples(
        st.sampled_from(
            [
                *(("eggs", pack) for pack in ("1", "6", "10", "500 g", "1 kg")),
                *(("parsley", pack) for pack in ("1 bunch", "30 g", "100 g")),
            ]
        ),
        st.integers(1, 900),
        st.sampled_from(["yes", "no"]),
    ),
    min_size=1,
    unique_by=lambda each: each[0],
)


@settings(max_examples=200, deadline=None)
@given(st.lists(st.lists(MIXED_LINES, min_size=1, max_size=3), min_size=1, max_size=4), MIXED_PACKS)
def test_packs_of_many_kinds_are_never_dearer_nor_unpriced_together(
    dishes: list[list[str]], packs: list[tuple[tuple[str, str], int, str]]
) -> None:
    rows = (f"{item},AP,{pack},{pence}/100,GBP,{keeps}" for (item, pack), pence, keeps in packs)
    book_ = scalepan.parse_prices(HEAD + "\n".join(rows))
    recipes = []
    for d, lines in enumerate(dishes):
        tables = ", ".join(f'{{ id = "l{i}", line = "{line}" }}' for i, line in enumerate(lines))
        recipes.append(
            scalepan.parse_recipe(f'name = "Dish {d}"\nserves = 4\nlines = [{tables}]\n')
        )
    bought = scalepan.basket(recipes, book_)
    apart = [scalepan.cost(recipe, book_) for recipe in recipes]
    assert sorted(bought.unpriced) == sorted(
        f"dish_{d}.{line}" for d, alone in enumerate(apart) for line in alone.unpriced
    )
    for dish_, alone in zip(bought.dishes, apart, strict=True):
        assert dish_.unpriced == [f"{dish_.id}.{line}" for line in alone.unpriced]
    assert bought.till.value <= sum(alone.till.value for alone in apart)
    for name in ("till", "used", "thrown", "closing"):
        whole = getattr(bought, name).value
        assert sum(getattr(dish, name).value for dish in bought.dishes) == whole
    assert bought.till == bought.used + bought.thrown + bought.closing


GRAMS = st.integers(1, 900)


@settings(max_examples=100, deadline=None)
@given(
    st.tuples(GRAMS, GRAMS),
    st.lists(st.tuples(GRAMS, GRAMS, st.integers(1, 9)), min_size=1, max_size=4),
    SHELVES,
)
def test_each_dish_is_charged_its_use_of_a_base(
    base: tuple[int, int], uses: list[tuple[int, int, int]], shelves: dict[str, Shelf]
) -> None:
    """Of a base of leeks and carrots each dish takes some grams, and leeks of its own."""
    weight = sum(base)
    lines = f'"{base[0]} g leeks", "{base[1]} g carrots"'
    stock = f'{{ name = "Stock", serves = 1, makes = "{weight} g", lines = [{lines}] }}'
    recipes = [
        scalepan.parse_recipe(
            f'name = "Dish {d}"\nserves = 1\nbases = {{ stock = {stock} }}\n'
            f'lines = ["{taken} g stock", "{own} g leeks"]\n'
        ).scale(portions=portions)
        for d, (taken, own, portions) in enumerate(uses)
    ]
    needs = [
        {
            "leeks": (own + taken * Fraction(base[0], weight)) * portions,
            "carrots": taken * Fraction(base[1], weight) * portions,
        }
        for taken, own, portions in uses
    ]
    pooled = {food: sum(need[food] for need in needs) for food in ("leeks", "carrots")}
    bills = {food: bill_of(need, shelves[food]) for food, need in pooled.items()}
    bought = scalepan.basket(recipes, book(shelves))
    assert bought.till.value == sum(bill.till for bill in bills.values())
    for need, charged in zip(needs, bought.dishes, strict=True):
        for cost in ("till", "used"):
            assert getattr(charged, cost).value == sum(
                getattr(bill, cost) * need[food] / pooled[food] for food, bill in bills.items()
            )
