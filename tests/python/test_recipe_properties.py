"""Random recipes at random sizes against a model of its own in plain fractions."""

from __future__ import annotations

import tempfile
from collections import defaultdict
from fractions import Fraction
from math import ceil
from pathlib import Path

import scalepan
from hypothesis import assume, given, settings
from hypothesis import strategies as st
from recipe_model import BASE_NAMES, EGGS, BaseLine, Dish, FoodLine, Rule, Size

FOODS = ["moonmeal", "domewort", "starroot"]
PACK = {EGGS: 6}
PRICES = scalepan.parse_prices(
    "item,sold_as,pack,price,currency,keeps\n"
    + "".join(f"{food},AP,100 g,1.00,GBP,no\n" for food in FOODS)
    + "eggs,AP,6,1.00,GBP,no\n"
)

SMALL = st.fractions(Fraction(1, 8), 40, max_denominator=8)
FACTORS = st.fractions(Fraction(1, 9), 30, max_denominator=9)


@st.composite
def tapers(draw: st.DrawFn) -> Rule:
    x, y = Fraction(1), Fraction(1)
    points = []
    for _ in range(draw(st.integers(1, 2))):
        x += draw(st.fractions(Fraction(1, 2), 3, max_denominator=2))
        y += draw(st.fractions(0, 2, max_denominator=4))
        points.append((x, y))
    further = draw(st.fractions(Fraction(1, 8), 1, max_denominator=8))
    return Rule("tapered", points=tuple(points), further=further)


@st.composite
def food_lines(draw: st.DrawFn, serves: int, load: int | None) -> FoodLine:
    kinds = ["in proportion", "fixed", "whole", "per portions", "tapered"]
    kind = draw(st.sampled_from([*kinds, "per load"] if load else kinds))
    food = EGGS if kind == "whole" else draw(st.sampled_from([*FOODS, EGGS]))
    amount = draw(SMALL) * (1 if food == EGGS else 20)
    if kind == "per portions":
        per = draw(st.integers(1, 6))
        return FoodLine(food, amount * ceil(Fraction(serves, per)), Rule(kind, amount, per))
    if kind == "per load":
        return FoodLine(food, amount * ceil(Fraction(serves, load or 1)), Rule(kind, amount))
    return FoodLine(food, amount, draw(tapers()) if kind == "tapered" else Rule(kind))


SHARES = st.fractions(Fraction(1, 10), Fraction(9, 10), max_denominator=10)


@st.composite
def base_lines(draw: st.DrawFn, base: int) -> list[BaseLine]:
    way = draw(st.sampled_from(["share", "rest", "both", "grams", "portions"]))
    if way == "grams":
        rule = draw(st.sampled_from([Rule(), Rule("fixed")]))
        return [BaseLine(base, "grams", draw(SMALL) * 10, rule)]
    if way == "portions":
        return [BaseLine(base, "portions", draw(SMALL), Rule())]
    share = [BaseLine(base, "share", draw(SHARES))] if way != "rest" else []
    return share + ([BaseLine(base, "rest")] if way != "share" else [])


@st.composite
def dishes(draw: st.DrawFn) -> Dish:
    """Later bases may be used by all before them, and by the dish."""
    bases: list[Dish] = []
    count = draw(st.integers(0, 3))
    made: list[Dish] = []
    for number in range(count, -1, -1):
        serves = draw(st.integers(1, 8))
        load = draw(st.none() | st.integers(1, 9))
        lines: list[FoodLine | BaseLine] = [
            draw(food_lines(serves, load)) for _ in range(draw(st.integers(1, 4)))
        ]
        for other in range(number, count):
            if draw(st.booleans()):
                lines += draw(base_lines(other))
        made.append(Dish(serves, lines, load))
    dish, *rest = reversed(made)
    bases += rest
    for each in made:
        each.bases = bases
    return dish


def read(dish: Dish) -> scalepan.Recipe:
    with tempfile.TemporaryDirectory() as folder:
        for number, base in enumerate(dish.bases):
            Path(folder, f"base{number}.toml").write_text(base.toml(number), encoding="utf-8")
        path = Path(folder, "dish.toml")
        path.write_text(dish.toml(), encoding="utf-8")
        return scalepan.read_recipe(path)


def made_sizes(dish: Dish, size: Size, recipe: scalepan.Recipe) -> dict[int, Size]:
    """The size of each base that is used, users first; checks what the engine made of each."""
    engine = {base.name: base for base in recipe.bases}
    batches: dict[int, Fraction] = defaultdict(Fraction)
    sizes: dict[int, Size] = {}
    for user, at in [(dish, size), *((base, None) for base in dish.bases)]:
        if at is None:
            number = next(i for i, base in enumerate(dish.bases) if base is user)
            if not batches[number]:
                assert BASE_NAMES[number] not in engine
                continue
            found = engine[BASE_NAMES[number]]
            assert found.batches == batches[number]
            at = user.size(user.serves * batches[number], batches[number])
            wanted = user.weight() * batches[number]
            # Portions asked for are so many portions, whatever they weigh.
            by_amount = any(use.amount.unit != "portion" for use in found.uses)
            if (
                by_amount and user.weight(at) < wanted
            ):  # made larger: exactly, or to the next whole portions
                factor = found.recipe.factor
                assert factor > batches[number]
                at = user.size(user.serves * factor, factor)
                if user.weight(at) != wanted:
                    assert at.portions.denominator == 1
                    fewer = at.portions - 1
                    assert user.weight(at) > wanted
                    assert user.weight(user.size(fewer, fewer / user.serves)) <= wanted
            assert found.recipe.factor == at.factor
            sizes[number] = at
        for line in user.lines:
            if isinstance(line, BaseLine):
                batches[line.base] += user.batches(line, at)
    return sizes


def check(dish: Dish, size: Size, recipe: scalepan.Recipe) -> dict[str, Fraction]:
    """Amounts, loads, weights and bases; the pooled needs."""
    assert recipe.loads == size.loads
    assert [line.amount.value for line in recipe.lines] == [
        dish.amount(line, size) for line in dish.lines
    ]
    assert recipe.batch_weight.to("g").value == dish.weight(size)
    needs: dict[str, Fraction] = defaultdict(Fraction)
    sizes = made_sizes(dish, size, recipe)
    amounts = {line.id: line.amount.value for line in recipe.food_lines}
    every = [("", dish, size)]
    every += [(f"{BASE_NAMES[i]}.", dish.bases[i], at) for i, at in sizes.items()]
    expected = {}
    for prefix, made, at in every:
        for i, line in enumerate(made.lines):
            if isinstance(line, FoodLine):
                expected[f"{prefix}l{i}"] = made.amount(line, at)
                needs[line.food] += made.amount(line, at)
    assert amounts == expected
    for base in recipe.bases:
        number = BASE_NAMES.index(base.name)
        made = dish.bases[number]
        assert base.recipe.batch_weight.to("g").value == made.weight(sizes[number])
        # What its uses take comes to what is wanted of it, and it makes enough of any amount.
        assert sum(use.batches for use in base.uses) == base.batches
        if any(use.amount.unit != "portion" for use in base.uses):
            assert base.recipe.batch_weight.to("g").value >= made.weight() * base.batches
    return dict(needs)


def till_of(needs: dict[str, Fraction]) -> int:
    return sum(ceil(need / PACK.get(food, 100)) for food, need in needs.items())


def scaled(dish: Dish, **size: object) -> scalepan.Recipe:
    """Leaves out dishes with a base that is fixed, and so cannot be made larger."""
    try:
        return read(dish).scale(**size)
    except scalepan.RecipeError as error:
        if error.code != "size.target" or not error.message.startswith("the base "):
            raise
        assume(False)
        raise


@settings(max_examples=250, deadline=None)
@given(dishes(), FACTORS)
def test_recipes_equal_the_model(dish: Dish, factor: Fraction) -> None:
    recipe = scaled(dish, factor=factor)
    size = dish.size(dish.serves * factor, factor)
    needs = check(dish, size, recipe)
    costing = scalepan.cost(recipe, PRICES)
    bought = {row.item: row.need.value for row in costing.shopping}
    assert bought == {food: need for food, need in needs.items()}
    assert costing.till.value == till_of(needs)


@settings(max_examples=100, deadline=None)
@given(dishes(), st.integers(1, 60), st.integers(0, 5), st.fractions(0, Fraction(1, 2)))
def test_serving(dish: Dish, portions: int, spare: int, loss: Fraction) -> None:
    made = (portions + spare) / (1 - loss)
    recipe = scaled(dish, portions=portions, spare=spare, serving_loss=loss)
    assert (recipe.portions, recipe.made) == (portions, made)
    check(dish, dish.size(made, made / dish.serves), recipe)


@settings(max_examples=100, deadline=None)
@given(dishes(), FACTORS)
def test_a_batch_that_some_size_has_is_met(dish: Dish, factor: Fraction) -> None:
    target = dish.weight(dish.size(dish.serves * factor, factor))
    try:
        recipe = read(dish).scale(batch=scalepan.quantity(target, "g"))
    except scalepan.RecipeError as error:
        grows = any(line.rule.kind != "fixed" for line in dish.lines)
        if error.code != "size.target" or (grows and not error.message.startswith("the base ")):
            raise
        assume(False)
        raise
    assert recipe.factor >= factor
    size = dish.size(dish.serves * recipe.factor, recipe.factor)
    assert dish.weight(size) == target
    check(dish, size, recipe)
    # It is the largest of that weight.
    behind = recipe.factor + Fraction(1, 10**9)
    assert dish.weight(dish.size(dish.serves * behind, behind)) > target


@settings(max_examples=60, deadline=None)
@given(dishes(), FACTORS, FACTORS)
def test_by_f_and_then_by_g_is_by_f_times_g(dish: Dish, f: Fraction, g: Fraction) -> None:
    written = scaled(dish, factor=1)
    once = scaled(dish, portions=dish.serves * f)
    direct = scaled(dish, portions=dish.serves * f * g)
    twice = once.scale(portions=once.portions * g)
    assert [line.amount for line in twice.food_lines] == [line.amount for line in direct.food_lines]
    for line, first in zip(direct.lines, written.lines, strict=True):
        if line.rule == "in proportion":
            assert line.amount == first.amount * (f * g)


@settings(max_examples=60, deadline=None)
@given(dishes())
def test_shares_and_rest_come_to_the_base(dish: Dish) -> None:
    for user in (dish, *dish.bases):
        for number, base in enumerate(dish.bases):
            uses = [x for x in user.lines if isinstance(x, BaseLine) and x.base == number]
            if any(use.what == "rest" for use in uses):
                size = user.written_size()
                assert sum(user.amount(use, size) for use in uses) == base.weight()
    recipe = scaled(dish, factor=1)
    written = [line.amount.value for line in recipe.lines]
    for number, base in enumerate(dish.bases):
        indices = [
            i for i, x in enumerate(dish.lines) if isinstance(x, BaseLine) and x.base == number
        ]
        if any(dish.lines[i].what == "rest" for i in indices):
            assert sum(written[i] for i in indices) == base.weight()


@settings(max_examples=40, deadline=None)
@given(dishes())
def test_curves_are_costings_point_by_point(dish: Dish) -> None:
    points = [Fraction(x) for x in (1, 2, 3, 5, 8, Fraction(25, 2))]
    sized = [scaled(dish, portions=x) for x in points]
    recipe = scaled(dish, factor=1)
    curve = scalepan.cost(recipe, PRICES).curve(portions=points)
    for i, (x, at) in enumerate(zip(points, sized, strict=True)):
        costing = scalepan.cost(at, PRICES)
        assert curve.till[i] == costing.till.value
        assert curve.used[i] == costing.used.value
        assert curve.till[i] == till_of(check(dish, dish.size(x, x / dish.serves), at))


@settings(max_examples=40, deadline=None)
@given(dishes(), st.integers(1, 9), st.integers(1, 4))
def test_curves_of_whole_portions_are_costings_point_by_point(
    dish: Dish, first: int, step: int
) -> None:
    points = range(first, first + 8 * step, step)
    sized = [scaled(dish, portions=Fraction(n)) for n in points]
    curve = scalepan.cost(scaled(dish, factor=1), PRICES).curve(portions=points)
    column = curve.column()
    for i, (n, at) in enumerate(zip(points, sized, strict=True)):
        costing = scalepan.cost(at, PRICES)
        till = till_of(check(dish, dish.size(Fraction(n), Fraction(n, dish.serves)), at))
        assert curve.till[i] == memoryview(column)[i] * column.step == costing.till.value == till
        assert curve.used[i] == costing.used.value
        assert curve.borne[i] == costing.borne.value


@settings(max_examples=80, deadline=None)
@given(
    amount=st.fractions(min_value=Fraction(1, 1000), max_value=10**6, max_denominator=1000),
    way=st.sampled_from(
        [
            ("granulated sugar", "g EP", "mL EP"),
            ("olive oil", "oz EP", "cup_us EP"),
            ("carrots", "kg AP", "lb EP"),
            ("eggs", "piece AP", "g EP"),
        ]
    ),
)
def test_a_conversion_there_and_back_is_exact(amount: Fraction, way: tuple[str, str, str]) -> None:
    food, unit, other = way
    there = scalepan.convert(scalepan.quantity(amount, unit), other, food=food).amount
    assert scalepan.convert(there, unit, food=food).amount == scalepan.quantity(amount, unit)
