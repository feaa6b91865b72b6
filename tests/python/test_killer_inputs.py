"""Sums that catch floats, lost bits and forgotten stages, each worked out by hand."""

from __future__ import annotations

import subprocess
import sys
from collections.abc import Callable
from fractions import Fraction

import pytest
import scalepan

LARGE = 2**62 - 1


def test_thirds_and_fifths_near_the_machine_word() -> None:
    """(2^62-1)/3 + (2^62-1)/5 = 8 (2^62-1) / 15, and 15 divides 2^62-1 three times in all."""
    total = scalepan.quantity(Fraction(LARGE, 3), "g") + scalepan.quantity(Fraction(LARGE, 5), "g")
    direct = scalepan.quantity("12297829382473034408/5 g")
    assert total.value == Fraction(12297829382473034408, 5)
    assert total == direct
    assert hash(total) == hash(direct)


def test_half_of_it_is_back_in_the_machine_word() -> None:
    total = scalepan.quantity(Fraction(LARGE, 3), "g") + scalepan.quantity(Fraction(LARGE, 5), "g")
    half = total * Fraction(1, 2)
    direct = scalepan.quantity("6148914691236517204/5 g")
    assert half.value == Fraction(6148914691236517204, 5)
    assert half == direct
    assert hash(half) == hash(direct)


def test_three_small_packs_beat_a_large_and_a_small() -> None:
    """600 g: 3 x 0.45 = 1.35, against 1.00 + 0.45 = 1.45; prices invented."""
    found = scalepan.cover("600 g", [("500 g", "1.00"), ("200 g", "0.45")])
    assert found.packs == [(3, "200 g")]
    assert found.price.value == Fraction("1.35")
    assert found.leftover == scalepan.quantity("0 g")


def test_the_leek_pot_for_forty(forty: scalepan.Costing) -> None:
    """5 kg EP of leeks at 44 % is 125000/11 g AP: 11 x 2.10 + 1.20 = 24.30; barley 5 x 0.95 =
    4.75; eggs 4 x 2.30 = 9.20; chickpeas 10 x 0.60 = 6.00.
    """
    assert forty.till.value == Fraction("24.30") + Fraction("4.75") + Fraction("9.20") + 6
    assert forty.till.value == Fraction("44.25")


def test_the_leeks_of_the_pot_use_607500_over_253_pence(forty: scalepan.Costing) -> None:
    """2430 pence x (125000/11) / 11500."""
    share = Fraction(2430) * Fraction(125000, 11) / 11500
    assert share == Fraction(607500, 253)
    barley = Fraction("4.75") * Fraction(2200, 2500)
    assert forty.used.value == share / 100 + barley + Fraction("9.20") + 6
    assert forty.thrown.value == Fraction("24.30") - share / 100
    assert forty.closing.value == Fraction("4.75") - barley


def test_the_leek_pot_bears_43_68_to_the_penny(forty: scalepan.Costing) -> None:
    """All but the 300 g of barley that keep: 44.25 - 0.57."""
    assert forty.borne == forty.used + forty.thrown
    assert forty.borne.value == Fraction("43.68")


def test_a_tenth_written_as_a_float_is_a_tenth() -> None:
    assert scalepan.quantity(0.1, "kg").value == Fraction(1, 10)


def test_a_float_that_nobody_wrote_is_refused_with_advice() -> None:
    with pytest.raises(scalepan.NumberError) as caught:
        scalepan.quantity(0.1 + 0.2, "kg")
    assert caught.value.code == "number.float"
    assert str(caught.value) == (
        "the float 0.30000000000000004 stands for no exact figure "
        '(write it as text ("0.3"), an int, a Fraction or a Decimal)'
    )


SAMPHIRE = 'name = "Salad"\nserves = 4\nlines = [\n  "500 g samphire, trimmed",\n]\n'
SAMPHIRE_PRICES = "item,sold_as,pack,price,currency,keeps\nsamphire,AP,200 g,1.00,EUR,no\n"


def test_a_peeled_need_is_not_covered_by_whole_packs() -> None:
    with pytest.raises(scalepan.PriceError) as caught:
        scalepan.cover("1 kg EP", [("500 g AP", "1.00")])
    assert caught.value.code == "cover.dimension"
    assert str(caught.value) == (
        "a pack cannot meet the need: 1 kg EP and 500 g AP: weight EP and weight AP; "
        "stages EP (edible portion) and AP (as purchased) "
        "(a share links the stages: multiply by it one way, divide by it the other)"
    )


def test_a_strict_costing_names_both_stages_and_the_line() -> None:
    salad = scalepan.parse_recipe(SAMPHIRE, file="salad.toml")
    with pytest.raises(scalepan.CostError) as caught:
        scalepan.cost(salad, scalepan.parse_prices(SAMPHIRE_PRICES), strict=True)
    assert caught.value.code == "cost.stage"
    assert str(caught.value) == (
        "salad.toml:4:4: samphire is needed at EP (edible portion) but sold at AP (as purchased), "
        "and no edible share links the two (add the share as a fact of your own)"
    )


def test_a_costing_takes_all_as_edible_and_says_so() -> None:
    salad = scalepan.parse_recipe(SAMPHIRE, file="salad.toml")
    costing = scalepan.cost(salad, scalepan.parse_prices(SAMPHIRE_PRICES))
    assert costing.till.value == 3
    assert costing.to_check == [
        'samphire: the catalogue has no food "samphire", so it has no facts, allergens or cautions',
        "samphire: no edible share (EP/AP) is known, so all of it is taken as edible",
    ]


def recipe(line: str) -> Callable[[], object]:
    text = f'name = "x"\nserves = 4\nlines = ["{line}"]\n'
    return lambda: scalepan.parse_recipe(text, file="x.toml")


def prices(text: str) -> Callable[[], object]:
    return lambda: scalepan.parse_prices(text, file="x.csv")


HEAD = "item,sold_as,pack,price,keeps\n"
TWICE = 'name = "x"\nserves = 4\nlines = ["1 leek", { id = "leek", line = "2 onions" }]\n'


@pytest.mark.parametrize(
    ("call", "kind", "code", "text"),
    [
        (
            recipe("9" * 10_000 + " g leeks"),
            scalepan.RecipeError,
            "line.too_long",
            "x.toml:3:1011: the line has 10008 characters (at most 1000 are read)",
        ),
        (
            lambda: scalepan.quantity("9" * 10_000 + " g"),
            scalepan.NumberError,
            "number.too_many_digits",
            "a number of 10000 digits is too long (at most 1000 digits are read)",
        ),
        (
            lambda: scalepan.quantity("1/0", "g"),
            scalepan.NumberError,
            "number.zero_denominator",
            "the denominator of a fraction is zero",
        ),
        (
            recipe("1/0 cup leeks"),
            scalepan.NumberError,
            "number.zero_denominator",
            "x.toml:3:13: the denominator of a fraction is zero",
        ),
        (
            recipe("500 tbps leeks"),
            scalepan.MeasureError,
            "unit.unknown",
            'x.toml:3:15: unknown unit "tbps"; understood so far: 500 (nearest: tbsp, tsp, lb)',
        ),
        (
            prices("item,sold_as,price,keeps\nleeks,AP,2.10,no\n"),
            scalepan.PriceError,
            "price.column",
            "x.csv:1: the header has no column pack (columns: item, sold_as, pack, price, "
            "keeps; also currency, shop, date, note, offer, least, limit, tax, deposit, measures)",
        ),
        (
            prices(HEAD + "leeks,AP,1 kg,2.10,no\nleeks,AP,500 g,-1.20,no\n"),
            scalepan.PriceError,
            "price.negative",
            "x.csv:3:16: the price -1.20 is below zero",
        ),
        (
            lambda: scalepan.parse_recipe(TWICE, file="x.toml"),
            scalepan.RecipeError,
            "recipe.duplicate_id",
            "x.toml:3:43: two lines have the id leek, this one and the one at x.toml:3:11 "
            '(give one an id of its own: { id = "leek_2", line = "2 onions" })',
        ),
        (
            lambda: scalepan.parse_recipe("500 g leeks, trimmed\n", file="x.toml"),
            scalepan.RecipeError,
            "recipe.syntax",
            "x.toml:1:5: not TOML: Expected '=' after a key in a key/value pair "
            '(a recipe has keys: name = "Soup", serves = 4, lines = ["500 g leeks, trimmed"])',
        ),
    ],
)
def test_a_mistake_is_one_clear_error(
    call: Callable[[], object], kind: type[scalepan.Error], code: str, text: str
) -> None:
    with pytest.raises(kind) as caught:
        call()
    assert (caught.value.code, str(caught.value)) == (code, text)


# Short texts of numbers with a thousand million digits: they must be refused, not worked out.
@pytest.mark.parametrize(
    "call",
    [
        "scalepan.quantity(decimal.Decimal('1e999999999'), 'g')",
        'scalepan.parse_recipe(\'name = "x"\\nserves = 1e999999999\\nlines = ["1 leek"]\\n\')',
        'scalepan.parse_recipe(\'name = "x"\\nserves = 1e-999999999\\nlines = ["1 leek"]\\n\')',
    ],
)
def test_a_huge_exponent_is_refused_at_once(call: str) -> None:
    program = f"""
import decimal, scalepan
try:
    {call}
except scalepan.NumberError as error:
    print(error.code)
"""
    done = subprocess.run(
        [sys.executable, "-c", program], capture_output=True, text=True, check=False, timeout=20
    )
    assert (done.stdout, done.stderr) == ("number.exponent\n", "")
