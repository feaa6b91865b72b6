"""Methods in recipe files: amounts bound in by line id, temperatures, times that stay."""

from __future__ import annotations

from fractions import Fraction

import pytest
import scalepan
from hypothesis import given
from hypothesis import strategies as st
from scalepan import quantity

HEAD = 'name = "Barley broth"\nserves = 4\ntested_at = [4]\n'
LINES = (
    'lines = ["200 g pearl barley", "3 tbsp olive oil", "salt, to taste"]\nmeasures = "metric"\n'
)


def with_method(method: str, more: str = "") -> scalepan.Recipe:
    """The method's list begins at 6:10."""
    return scalepan.parse_recipe(f"{HEAD}{LINES}method = {method}\n{more}", file="broth.toml")


def refusal(method: str) -> tuple[type[scalepan.Error], str, str]:
    with pytest.raises(scalepan.Error) as caught:
        with_method(method)
    return type(caught.value), caught.value.code, str(caught.value)


def test_a_step_is_a_text_or_a_table() -> None:
    broth = with_method(
        '["Soak the barley.", { text = "Toast at 150 °C.", uses = ["1/3 of olive_oil"], '
        'at = "350 F", time = "35 min" }, { text = "Stir.", uses = ["rest of olive oil", '
        '"pearl_barley", "salt"] }]'
    )
    soak, toast, stir = broth.method
    assert (soak.text, soak.uses, soak.at, soak.time) == ("Soak the barley.", [], None, None)
    # 150 °C is 302 °F exactly; 350 °F is 176.67 °C.
    assert toast.text == "Toast at 150 °C (302 °F)."
    assert (toast.at, toast.time) == ("350 °F (≈ 177 °C)", "35 min")
    assert [(use.id, use.amount, use.told) for use in toast.uses] == [
        ("olive_oil", quantity("15 mL AP"), "1 tbsp olive oil")
    ]
    assert [(use.id, use.amount, use.told) for use in stir.uses] == [
        ("olive_oil", quantity("30 mL AP"), "2 tbsp olive oil"),
        ("pearl_barley", quantity("200 g AP"), "200 g pearl barley"),
        ("salt", None, "salt"),
    ]


def test_amounts_follow_the_size_and_times_do_not() -> None:
    broth = with_method('[{ text = "Boil.", uses = ["1/4 of pearl_barley"], time = "40 min" }]')
    (step,) = broth.scale(portions=10).method
    assert step.uses[0].amount == quantity("125 g AP")  # 200 * 10/4 / 4
    assert step.time == "40 min"
    assert broth.times_remark == ""
    assert broth.scale(portions=10).times_remark == (
        "times are those of the tested 4 portions and are not scaled"
    )


def test_a_base_brings_its_own_method() -> None:
    broth = with_method(
        '["Pour the oil over."]',
        '[bases.crust]\nname = "Crust"\nserves = 2\nlines = ["100 g butter"]\n'
        'method = [{ text = "Melt.", uses = ["butter"], time = "5 min" }]\n',
    )
    assert broth.bases == []  # no line takes from it
    dish = scalepan.parse_recipe(
        f'{HEAD}lines = ["2 portions crust"]\n[bases.crust]\nname = "Crust"\nserves = 2\n'
        'lines = ["100 g butter"]\nmethod = [{ text = "Melt.", uses = ["butter"], '
        'time = "5 min" }]\n'
    ).scale(portions=12)
    (crust,) = dish.bases
    (melt,) = crust.recipe.method
    assert melt.uses[0].amount == quantity("300 g AP")  # 3 times 2 portions


@pytest.mark.parametrize(
    ("method", "code", "message"),
    [
        (
            '[{ text = "Boil.", uses = ["perl_barley"] }]',
            "method.line",
            'broth.toml:6:38: no line of the recipe has the id "perl_barley" '
            "(nearest: pearl_barley)",
        ),
        (
            '[{ text = "Boil.", uses = ["2/3 of olive_oil", "1/2 of olive_oil"] }]',
            "share.over",
            "broth.toml:6:58: the uses of olive_oil come to 2/3 + 1/2 = 1 1/6, more than the "
            "whole (make the shares smaller, or let one take the rest)",
        ),
        (
            '[{ text = "Boil.", time = "a while" }]',
            "method.time",
            'broth.toml:6:37: "a while" is no time (write 35 min, 30 to 35 min or 1 h 10 min; '
            "put other words into the step's text)",
        ),
        (
            '[{ text = "Boil.", at = "200" }]',
            "temperature.scale",
            'broth.toml:6:35: it is not said in which scale "200" is: 200 °C (392 °F) or 200 °F '
            "(≈ 93 °C) (write the scale: 200 °C or 200 °F)",
        ),
        (
            '["Chill to -300 °C."]',
            "temperature.below_zero",
            "broth.toml:6:21: -300 °C is below absolute zero, -273.15 °C",
        ),
        ('[""]', "method.text", "broth.toml:6:12: a step of the method has no text"),
        (
            '"Boil."',
            "recipe.type",
            "broth.toml:6:11: method is not a list "
            '(method = [{ text = "Roast until soft.", uses = ["fennel"], at = "200 °C" }])',
        ),
        ("[4]", "recipe.type", "broth.toml:6:11: method 1 is not a text"),
        (
            '[{ text = "Boil.", uses = "salt" }]',
            "recipe.type",
            'broth.toml:6:37: uses is not a list (uses = ["fennel", "2/3 of olive_oil"])',
        ),
        (
            '[{ text = "Boil.", each_load = 2 }]',
            "recipe.type",
            "broth.toml:6:41: each_load is not true or false",
        ),
        (
            '[{ text = "Boil.", heat = "high" }]',
            "recipe.unknown_key",
            'broth.toml:6:37: unknown key "heat" (keys: text, at, time, uses, each_load)',
        ),
        (
            '[{ at = "200 °C" }]',
            "recipe.missing",
            "broth.toml:6:11: a step's table has no text "
            '(method = [{ text = "Roast until soft.", uses = ["fennel"], at = "200 °C" }])',
        ),
        (
            '["Boil.\\u001b[31m"]',
            "recipe.control_character",
            "broth.toml:6:12: method 1 holds a control character",
        ),
    ],
)
def test_what_a_method_refuses(method: str, code: str, message: str) -> None:
    kind, found, text = refusal(method)
    assert (found, text) == (code, message)
    expected = scalepan.MeasureError if code.startswith("temperature") else scalepan.RecipeError
    assert kind is expected


SHARES = st.lists(st.integers(1, 9), min_size=1, max_size=6)


@given(SHARES, st.booleans(), st.integers(1, 400))
def test_the_uses_of_a_line_sum_to_the_line(parts: list[int], rest: bool, portions: int) -> None:
    whole = sum(parts)
    uses = [f"{part}/{whole} of pearl_barley" for part in parts]
    if rest and len(parts) > 1:
        uses[-1] = "rest of pearl_barley"
    steps = ", ".join(f'{{ text = "Stir.", uses = ["{use}"] }}' for use in uses)
    broth = with_method(f"[{steps}]").scale(portions=portions)
    taken = []
    for step in broth.method:
        amount = step.uses[0].amount
        assert amount is not None
        taken.append(amount.value)
    barley = Fraction(200 * portions, 4)
    assert sum(taken) == barley
    assert taken == [Fraction(part, whole) * barley for part in parts]
