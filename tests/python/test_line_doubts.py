"""Lines and numbers that can mean two things, and whether the advice of each error can be followed.

A case marked as failing states what should be; it passes once the reader does it.
"""

from __future__ import annotations

import pytest
import scalepan
from line_refusal import expect, refusal

RECIPE = scalepan.RecipeError
NUMBER = scalepan.NumberError
MEASURE = scalepan.MeasureError

WRITE_TINS = "write 2 x 400 g tins"
ONE_UNIT = "write the range in one unit"
DIGITS = "write numbers with the digits 0 to 9"


@pytest.mark.parametrize(
    ("line", "code", "text"),
    [
        (
            "1-3 cup milk",
            "amount.doubtful",
            '1: "1-3 cup" can mean 1/3 or 1 to 3 (write 1/3, or 1 to 3)',
        ),
        (
            "1 1/2-oz can anchovies",
            "amount.doubtful",
            '1: "1 1/2-oz can" does not tell how many there are of what size (write 2 x 400 g '
            "tins)",
        ),
        (
            "1 to 2 lb tin beans",
            "amount.doubtful",
            f"1: the size of a container is one figure ({WRITE_TINS})",
        ),
        (
            "1 lb 20 cup leeks",
            "amount.doubtful",
            '6: "20 cup" does not go on with a smaller unit of the same kind as lb',
        ),
        (
            "2 cups + 1 tin milk",
            "amount.doubtful",
            '10: "1 tin" does not go on with a smaller unit of the same kind as cup',
        ),
        (
            "1 to 2 lb 3 oz leeks",
            "amount.doubtful",
            f"11: a range is followed by a second amount ({ONE_UNIT})",
        ),
        (
            "2 lb to 1 lb leeks",
            "amount.doubtful",
            f'9: "2 lb to 1 lb" is no range that rises in one kind of measure ({ONE_UNIT})',
        ),
        (
            "4–2 leeks",
            "amount.doubtful",
            '2: "–2" is neither the rest of a mixed number nor the end of a range '
            "(write 1 1/2, or 1 to 2)",
        ),
        ("4 G flour", "unit.doubtful", '3: "G" can mean g or gal (write the unit out)'),
        (
            "3 tbps crème fraîche",
            "unit.unknown",
            '3: unknown unit "tbps"; understood so far: 3 (nearest: tbsp, tsp, lb)',
        ),
    ],
)
def test_amounts_that_can_mean_two_things(line: str, code: str, text: str) -> None:
    expect(refusal(line), MEASURE, code, text)


def test_a_sum_of_cups_and_spoons_needs_its_measures() -> None:
    expect(
        refusal("2 c 3 tbsp flour", None),
        MEASURE,
        "unit.which_measures",
        "5: how many tbsp make a cup is not the same in all measures, and none are stated "
        "(measures = one of: metric, us, imperial, au)",
    )


@pytest.mark.parametrize(
    ("line", "decimal", "code", "text"),
    [
        (
            "11/2 cups flour",
            "point",
            "number.doubtful",
            '1: "11/2" may be a mixed number that lost its space (write 5 1/2, or 1 1/2)',
        ),
        (
            "two-three eggs",
            "point",
            "number.doubtful",
            '1: "two-three" is two numbers (write 2 to 3)',
        ),
        (
            "1.2.3 kg leeks",
            "point",
            "number.doubtful",
            '1: "1.2.3" can be read as more than one number '
            "(write one number, such as 1.5, 3/2 or 1 1/2)",
        ),
        (
            "1,000 g leeks",
            "point",
            "number.comma",
            "2: a comma stands inside a number "
            "(write 1000 for a thousand and 1.5 for one and a half)",
        ),
        (
            "1.000 g leeks",
            "comma",
            "number.point",
            "2: a full stop stands inside a number, where decimals are written with a comma "
            "(write 1000 for a thousand and 1,5 for one and a half)",
        ),
        (
            "٣ eggs",
            "point",
            "number.script",
            f"1: a digit of another script stands in the line ({DIGITS})",
        ),
        (
            "½ kg leeks, ３ cm",
            "point",
            "number.script",
            f"13: a digit of another script stands in the line ({DIGITS})",
        ),
    ],
)
def test_numbers(line: str, decimal: str, code: str, text: str) -> None:
    expect(refusal(line, decimal=decimal), NUMBER, code, text)


def test_a_decimal_mark_that_does_not_exist() -> None:
    with pytest.raises(NUMBER) as caught:
        scalepan.read_line("1 leek", decimal="dot")
    assert (caught.value.code, str(caught.value)) == (
        "number.decimal",
        'no decimal mark is called "dot" (there are: point, comma)',
    )


# The line refused, what its hint says to write, and low, high, unit and food of that. In metric
# measures a cup is 250 mL and a tablespoon 15 mL: (125 + 30) / 250 of a cup.
@pytest.mark.parametrize(
    ("refused", "advised", "reading"),
    [
        ("1-3 cup milk", "1/3 cup milk", "1/3 1/3 cup milk"),
        ("1-3 cup milk", "1 to 3 cup milk", "1 3 cup milk"),
        ("11/2 cups milk", "5 1/2 cups milk", "11/2 11/2 cup milk"),
        ("11/2 cups milk", "1 1/2 cups milk", "3/2 3/2 cup milk"),
        ("two-three eggs", "2 to 3 eggs", "2 3 piece eggs"),
        ("2 pound cans leeks", "2 x 400 g tins leeks", "2 2 tin leeks"),
        ("2 1/2-inch slices onion", "2 x 1 cm slices onion", "2 2 slice onion"),
        ("2 cm garlic", "2 cm piece garlic", "1 1 piece garlic"),
        ("cup milk", "2 cup milk", "2 2 cup milk"),
        ("fl oz milk", "2 fl oz milk", "2 2 fl oz milk"),
        ("1 teaspoon or tablespoon salt", "1 tsp salt", "1 1 tsp salt"),
        ("15c milk", "15 cups milk", "15 15 cup milk"),
        ("1/2 cup milk, plus 2 tablespoons", "1/2 cup plus 2 tbsp milk", "31/50 31/50 cup milk"),
        ("1,5 kg leeks", "1.5 kg leeks", "3/2 3/2 kg leeks"),
    ],
)
def test_what_a_hint_says_is_read(refused: str, advised: str, reading: str) -> None:
    refusal(refused)
    line = scalepan.read_line(advised, measures="metric")
    assert f"{line.low} {line.high} {line.unit} {line.food}" == reading


@pytest.mark.parametrize("advised", ["1 lb of cake", "1 piece pound cake"])
def test_what_the_hint_of_a_pound_cake_says_is_read(advised: str) -> None:
    expect(
        refusal("1 pound cake"),
        MEASURE,
        "amount.doubtful",
        '3: "pound cake" can be a weight or the name of a cake '
        "(write 1 lb of cake, or 1 piece pound cake)",
    )
    assert scalepan.read_line(advised, measures="metric").low == 1


# The part of the message that should show what the line has.
@pytest.mark.parametrize(
    ("line", "shown"),
    [
        ("5 cents worth of yeast", '"5 cents" is a price'),
        ("a pennyworth of yeast", '"a pennyworth" is a price'),
        ("1 tsp each cumin and coriander", '"each cumin and coriander" gives one amount'),
        ("2 pound cans tomatoes", '"2 pound cans" does not tell'),
        ("2 1/2-inch slices bread", '"2 1/2-inch slices" does not tell'),
        ("four-six eggs", "(write 4 to 6)"),
        ("31/4 cups flour", "3 1/4"),
        ("500xg leeks", "understood so far: 500"),
    ],
)
def test_messages_show_what_they_mean(line: str, shown: str) -> None:
    assert shown in str(refusal(line))


@pytest.mark.parametrize("line", ["I cup milk", "heaping tsp salt"])
def test_what_was_not_read_is_not_told_as_understood(line: str) -> None:
    error = refusal(line)
    assert error.code == "line.no_amount"
    assert "understood so far" not in error.message


@pytest.mark.parametrize(
    ("line", "food"),
    [
        ("500 g twice-cooked chips", "twice-cooked chips"),
        ("6 minute steaks", "minute steaks"),
        ("2 finger chillies", "finger chillies"),
    ],
)
def test_names_of_foods_that_hold_refused_words(line: str, food: str) -> None:
    assert scalepan.read_line(line, measures="metric").food == food


def test_two_counts_of_one_food_contradict() -> None:
    assert refusal("2 (3) eggs").code == "line.second_measure"


@pytest.mark.parametrize("line", ["1 000 000 g flour", "1 2 3 eggs"])
def test_three_numbers_side_by_side(line: str) -> None:
    assert refusal(line).code == "line.two_numbers"


@pytest.mark.parametrize("line", ["10/2 cups flour", "100/2 g flour"])
def test_a_fraction_that_no_lost_space_explains(line: str) -> None:
    assert scalepan.read_line(line, measures="metric").low in (5, 50)


def test_a_sum_in_a_unit_that_the_measures_lack() -> None:
    assert refusal("1 quart + 1 cup milk").code == "unit.which_measures"


# For forty, the line is told with two eggs, two small onions or one bunch as for four.
@pytest.mark.parametrize(
    "line",
    [
        "500 g leeks with 2 eggs",
        "500 g leeks, plus 2 eggs",
        "1 large or 2 small onions",
        "2 onions (or 4 leeks)",
        "500 g leeks (1 bunch)",
    ],
)
def test_a_second_count_is_refused_or_listed(line: str) -> None:
    text = f'name = "x"\nserves = 4\nlines = ["{line}"]\n'
    # Invented.
    prices = (
        "item,sold_as,pack,price,currency,keeps\nleeks,AP,1 kg,2,EUR,no\nonions,AP,1 kg,1,EUR,no\n"
    )
    try:
        recipe = scalepan.parse_recipe(text).scale(portions=40)
    except RECIPE:
        return
    assert scalepan.cost(recipe, scalepan.parse_prices(prices)).to_check
