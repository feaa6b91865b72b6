"""Values of another kind than an amount, a size or a pack: one short error, no bare one."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

import pytest
import scalepan

if TYPE_CHECKING:
    from collections.abc import Callable

POT = scalepan.parse_recipe('name = "Pot"\nserves = 4\nlines = ["200 g leeks"]\n')
PRICES = "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,EUR,no\n"
COSTING = scalepan.cost(POT, scalepan.parse_prices(PRICES))
AMOUNT = 'an amount is a text, a number or a quantity, not {} (write 40, or with a unit "1 1/2 kg")'
PAIR = 'a pack is a size and a price, not {} (write ("2.5 kg", "4.10"))'
PACKS: Any = [("1 kg", "1")]


@pytest.mark.parametrize(
    ("call", "told"),
    [
        (lambda: POT.scale(portions=True), AMOUNT.format("bool")),
        (lambda: POT.scale(factor=[2]), AMOUNT.format("list")),  # type: ignore[arg-type]
        (lambda: scalepan.quantity([1], "g"), AMOUNT.format("list")),  # type: ignore[arg-type]
        (lambda: scalepan.quantity(True, "g"), AMOUNT.format("bool")),
        (lambda: scalepan.loads("6 kg", True), AMOUNT.format("bool")),
        (lambda: scalepan.cover([6], PACKS), AMOUNT.format("list")),  # type: ignore[arg-type]
        (lambda: COSTING.curve([True, 2]), AMOUNT.format("bool")),
        (
            lambda: scalepan.cover("6 kg", "1 kg"),  # type: ignore[arg-type]
            'cover() takes a list as its packs, not the text "1 kg" (write cover(need, packs))',
        ),
        (
            lambda: scalepan.cover_function("1 kg"),  # type: ignore[arg-type]
            'cover_function() takes a list as its packs, not the text "1 kg" (write '
            "cover_function(packs); it also takes order)",
        ),
        (lambda: scalepan.cover("6 kg", ["1 kg"]), PAIR.format("'1 kg'")),  # type: ignore[list-item]
        (lambda: scalepan.cover("6 kg", {"1 kg": "1"}), PAIR.format("'1 kg'")),  # type: ignore[arg-type]
        (lambda: scalepan.cover_function([("1 kg",)]), PAIR.format("('1 kg',)")),  # type: ignore[list-item]
        (
            lambda: scalepan.break_even("6 kg", "1 kg", [("2 kg", "3", "4")]),  # type: ignore[list-item]
            PAIR.format("('2 kg', '3', '4')"),
        ),
    ],
)
def test_it_is_told_what_belongs_there(call: Callable[[], Any], told: str) -> None:
    with pytest.raises(scalepan.Error) as caught:
        call()
    assert type(caught.value).__name__ == "ArgumentError"
    assert (caught.value.code, str(caught.value)) == ("argument.kind", told)


@pytest.mark.parametrize(
    "call",
    [
        lambda number: scalepan.quantity(number, "EUR").value,
        lambda number: POT.scale(portions=number).portions,
        lambda number: scalepan.price_book(
            [{"item": "leeks", "sold_as": "AP", "pack": "1 kg", "price": number, "keeps": True}]
        ).offers[0].price.value,
    ],
)  # fmt: skip
def test_every_door_takes_short_floats_and_no_long_ones(call: Callable[[float], Any]) -> None:
    assert call(2.5) == scalepan.quantity("2.5").value
    with pytest.raises(scalepan.Error) as caught:
        call(1.1 + 2.2)
    assert caught.value.code in ("number.float", "price.float")
    assert 'write it as text ("3.3"), an int, a Fraction or a Decimal' in caught.value.hint
