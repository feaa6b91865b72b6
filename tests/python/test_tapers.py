"""Tapers in recipes: what they give, what they cost, where they end. The prices are invented."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan


def seasoned(rule: str, serves: int = 4) -> scalepan.Recipe:
    text = f'name = "x"\nserves = {serves}\nlines = ["1 kg beef stock", "8 g salt | {rule}"]\n'
    return scalepan.parse_recipe(text, file="x.toml")


@pytest.mark.parametrize(
    ("factor", "multiple"),
    [("1/4", "1/4"), ("1", "1"), ("3/2", "5/4"), ("2", "3/2"), ("3", "7/4"), ("4", "2")],
)
def test_straight_between_the_points(factor: str, multiple: str) -> None:
    salt = seasoned("tapered (2, 1.5), (4, 2)").scale(factor=factor).lines[1]
    assert salt.amount.to("g AP").value == 8 * Fraction(multiple)
    assert salt.rule == "tapered (2, 1.5), (4, 2)"


def test_on_behind_the_last_point() -> None:
    tapered = seasoned("tapered (1, 1), then 1/2")
    assert tapered.lines[1].rule == "tapered (1, 1), then 0.5"
    for factor in (1, 2, 5, Fraction(31, 3)):
        salt = tapered.scale(factor=factor).lines[1]
        assert salt.amount.to("g AP").value == 8 * (1 + Fraction(factor - 1) / 2)


def test_refused_behind_its_end_at_the_place_of_the_line() -> None:
    tapered = seasoned("tapered (2, 1.5), (4, 2)")
    with pytest.raises(scalepan.RecipeError) as caught:
        tapered.scale(factor=5)
    assert caught.value.code == "rule.taper_end"
    assert str(caught.value) == (
        "x.toml:3:30: the taper ends at 4 times the written amounts; 5 times is asked for "
        "(give it a further point, or say how it goes on: then 1/2)"
    )


def test_the_batch_follows_the_taper() -> None:
    doubled = seasoned("tapered (2, 1.5), (4, 2)").scale(batch="2012 g")
    assert doubled.factor == 2


def test_a_batch_beyond_the_end() -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        seasoned("tapered (2, 1.5)").scale(batch="3 kg")
    assert caught.value.code == "size.unreachable"
    assert str(caught.value) == (
        "a batch of 3 kg cannot be made: 8 portions come to 2.012 kg, and a taper ends there (give "
        "the taper a further point)"
    )


def test_a_line_that_runs_out_costs_nothing() -> None:
    tapered = seasoned("tapered (1/2, 0)")
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\nsalt,AP,1 kg,0.80,GBP,yes\n"
    )
    costing = scalepan.cost(tapered.scale(portions=1), prices)
    assert costing.till.value == costing.used.value == 0
    assert scalepan.cost(tapered, prices).till.value == Fraction("0.80")


def test_why_names_the_source() -> None:
    prices = scalepan.parse_prices(
        "item,sold_as,pack,price,currency,keeps\nsalt,AP,1 kg,0.80,GBP,yes\n"
    )
    why = scalepan.cost(seasoned("tapered as herbs").scale(factor=8), prices).why("salt.need")
    assert "salt.need = 40 g AP" in why
    assert "Baron Spices, Spice Handbook" in why


@pytest.mark.parametrize(
    ("rule", "code", "message"),
    [
        (
            "tapered as salt",
            "rule.taper",
            'x.toml:3:41: no taper is called "salt" (there are: herbs, red pepper, when doubling; '
            "or write points: tapered (2, 1.5), (4, 2), then 1/4)",
        ),
        (
            "tapered 2, 1.5",
            "rule.taper",
            'x.toml:3:41: "2, 1.5" is no taper (write points: tapered (2, 1.5), (4, 2), then 1/4)',
        ),
        (
            "tapered (2, 3), (4, 2)",
            "ramp.order",
            "x.toml:3:41: the point (4, 2) does not lie to the right of (2, 3) and as high or "
            "higher (write the points from the smallest size to the largest)",
        ),
        (
            "tapered (2, 1.5), then -1/4",
            "ramp.order",
            "x.toml:3:41: behind the last point it would fall by 0.25 (the further slope must be 0 "
            "or above)",
        ),
        (
            "tapered (1, 2)",
            "rule.taper",
            "x.toml:3:41: the taper gives 2 times the amount at the written size, but that has the "
            "amount as it is written",
        ),
    ],
)
def test_errors(rule: str, code: str, message: str) -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        seasoned(rule)
    assert (caught.value.code, str(caught.value)) == (code, message)
