"""Lines without a measurable amount of a food: class, code, and the whole text with its column.

`test_line_doubts.py` has the lines that can mean two things, `test_recipe_errors.py` the errors of
recipe files.
"""

from __future__ import annotations

import pytest
import scalepan
from line_refusal import expect, refusal

RECIPE = scalepan.RecipeError

BEGIN = "begin with a number and a unit: 500 g leeks, 3 eggs"
BEGIN_BEHIND = "begin with a number: 500 g leeks, 3 eggs"
WRITE_LINE = "write an amount and a food: 500 g leeks"
WRITE_FOOD = "write what it is an amount of: 500 g leeks"
WRITE_AMOUNT = "write a weight, a volume or a count"
WRITE_RULE = "write the rule last, behind a bar: 4 eggs | one per portion"
WRITE_SINGLY = "write one line a food"
WRITE_TINS = "write 2 x 400 g tins"
PRICE_BOOK = "prices stand in the price book"


@pytest.mark.parametrize(
    ("line", "code", "text"),
    [
        (" ", "line.empty", f"1: the line is empty ({WRITE_LINE})"),
        ("* ,", "line.empty", f"1: the line is empty ({WRITE_LINE})"),
        ("| fixed", "line.empty", f"1: the line is empty ({WRITE_LINE})"),
        ("5 g\x07 salt", "line.control_character", "4: the line holds a control character"),
        ("5 g salt\x7f", "line.control_character", "9: the line holds a control character"),
        (
            "2 cups",
            "line.no_food",
            f"7: no food is written after the amount; understood so far: 2 cups ({WRITE_FOOD})",
        ),
        (
            "½ kg | fixed",
            "line.no_food",
            f"5: no food is written after the amount; understood so far: ½ kg ({WRITE_FOOD})",
        ),
        (
            "4 oz. can",
            "line.no_food",
            f"10: no food is written after the amount; understood so far: 4 oz. can ({WRITE_FOOD})",
        ),
        ("Serves 4", "line.no_food", '1: "Serves 4" is no ingredient'),
        ("  Page 42", "line.no_food", '3: "Page 42" is no ingredient'),
        ("www.example.org", "line.no_food", '1: "www.example.org" is no ingredient'),
        (
            "Chop the onions",
            "line.no_food",
            f'1: "Chop the onions" reads like a step of the method ({WRITE_LINE})',
        ),
        (
            "2 tsp kindness",
            "line.no_food",
            '7: "kindness" is no food; understood so far: 2 tsp',
        ),
        ("12 people", "line.no_food", '4: "people" is no food; understood so far: 12'),
        (
            "1 cup portions",
            "line.no_food",
            '7: "portions" cannot be read as a food; understood so far: 1 cup',
        ),
        ("4 500", "line.no_food", '3: "500" cannot be read as a food; understood so far: 4'),
        (
            "1 can of 9",
            "line.no_food",
            '10: "9" cannot be read as a food; understood so far: 1 can',
        ),
        (
            "leeks 44 7",
            "line.no_amount",
            f'1: no amount can be read in "leeks 44 7" ({BEGIN_BEHIND})',
        ),
        (
            "to 2 eggs",
            "line.no_amount",
            f'1: no amount can be read in "to 2 eggs" ({BEGIN_BEHIND})',
        ),
        (
            "fl oz canola oil",
            "line.no_amount",
            '1: the unit "fl oz" has no number (write how many: 2 fl oz)',
        ),
        (
            "  cup milk",
            "line.no_amount",
            '3: the unit "cup" has no number (write how many: 2 cup)',
        ),
        (
            "25. Apple Pie",
            "line.no_amount",
            f'1: "25. Apple Pie" does not begin with an amount ({BEGIN})',
        ),
        (
            "2nd course",
            "line.no_amount",
            f'1: "2nd course" does not begin with an amount ({BEGIN})',
        ),
        (
            "350° oven",
            "line.no_amount",
            f'1: "350° oven" does not begin with an amount ({BEGIN})',
        ),
        ("0 cups milk", "line.amount", "1: an amount must be above zero"),
        ("salt -5 g", "line.amount", "6: an amount must be above zero"),
        (
            "a couple of eggs",
            "line.vague",
            '1: "a couple" may mean two or a few (write the number)',
        ),
        ("couple of eggs", "line.vague", '1: "couple" may mean two or a few (write the number)'),
        (
            "a few milk",
            "line.vague",
            '1: "a few milk" counts what is not in the plural; understood so far: a few '
            "(write the amount)",
        ),
    ],
)
def test_no_amount_or_no_food(line: str, code: str, text: str) -> None:
    expect(refusal(line), RECIPE, code, text)


@pytest.mark.parametrize(
    ("line", "code", "text"),
    [
        (
            "1 wineglass sherry",
            "line.no_measure",
            f'3: "wineglass" has no agreed size ({WRITE_AMOUNT})',
        ),
        (
            "½ saltspoon salt",
            "line.no_measure",
            f'3: "saltspoon" has no agreed size ({WRITE_AMOUNT})',
        ),
        ("3 parts flour", "line.no_measure", f'3: "parts" has no agreed size ({WRITE_AMOUNT})'),
        (
            "2 cm ginger",
            "line.no_measure",
            '3: "cm" measures a length, which is no amount of food '
            "(write what has that length: 2 cm piece)",
        ),
        (
            "2 oz butter the size of a walnut",
            "line.no_measure",
            f'17: "size of a walnut" compares sizes, which is no measure ({WRITE_AMOUNT})',
        ),
        (
            "dough as big as an egg",
            "line.no_measure",
            f'7: "as big as an egg" compares sizes, which is no measure ({WRITE_AMOUNT})',
        ),
        (
            "the weight of 2 eggs in flour",
            "line.relative",
            f'1: "the weight of 2 eggs in flour" gives an amount by another one ({WRITE_AMOUNT})',
        ),
        (
            "3 eggs and their weight in sugar",
            "line.relative",
            f'12: "their weight in sugar" gives an amount by another one ({WRITE_AMOUNT})',
        ),
        (
            "salt to every lb of flour",
            "line.ratio",
            f'6: "to every lb of flour" gives a ratio, not an amount ({WRITE_AMOUNT})',
        ),
        (
            "5 g salt per kg flour",
            "line.ratio",
            f'10: "per kg flour" gives a ratio, not an amount ({WRITE_AMOUNT})',
        ),
        (
            "2 slices bread per person",
            "line.per_person",
            f'16: "per person" gives an amount for each person ({WRITE_AMOUNT})',
        ),
        (
            "1 tsp of each spice",
            "line.refers",
            f'7: "of each spice" refers to other lines ({WRITE_AMOUNT})',
        ),
        (
            "1 cup of the following",
            "line.refers",
            f'10: "the following" refers to other lines ({WRITE_AMOUNT})',
        ),
        (
            "150 g cod per portion",
            "line.rule",
            f'11: "per portion" reads like a rule without its bar ({WRITE_RULE})',
        ),
        (
            "butter and sugar, 1 cup each",
            "line.each",
            '19: "1 cup each" gives one amount of each of several foods; '
            f"understood so far: butter and sugar ({WRITE_SINGLY})",
        ),
        (
            "2 apples for $3",
            "line.price",
            f'14: "2 apples for $3" holds a price, not an amount ({PRICE_BOOK})',
        ),
        ("½ £ tea", "line.price", f'3: "½ £ tea" holds a price, not an amount ({PRICE_BOOK})'),
        ("1d. yeast", "line.price", f'1: "1d" is a price, not an amount ({WRITE_AMOUNT})'),
        (
            "10 minutes simmering",
            "line.time",
            '4: "minutes" is a time, not an amount (times stand in the method)',
        ),
        (
            "180C oven",
            "line.temperature",
            '1: "180C" may be cups, cents or degrees (write cups for cups)',
        ),
        (
            "2 eggs, 3",
            "line.two_numbers",
            '9: "3" counts what is not told; understood so far: 2 eggs (write what it counts)',
        ),
        (
            "2 400 g tins tomatoes",
            "line.two_numbers",
            '3: two numbers stand side by side in "2 400 g" '
            f"({WRITE_TINS}, or one number without spaces)",
        ),
        (
            "1 teaspoon or tablespoon salt",
            "line.two_units",
            '15: one number has two units in "1 teaspoon or tablespoon" (write one amount: 1 tsp)',
        ),
        (
            "2 cans + 9 cups beans",
            "line.sum",
            '8: "+ 9 cups beans" is added to something of another kind; '
            "understood so far: 2 cans (write two lines)",
        ),
        (
            "1/2 cup sugar, plus 2 tablespoons",
            "line.sum",
            '21: "2 tablespoons" adds to the amount behind the food; '
            "understood so far: 1/2 cup sugar "
            "(write the sum in front: 1/2 cup plus 2 tbsp sugar)",
        ),
        # 1.5 L is 1500 mL; two imperial pints are 1136.5 mL, and of 1500 a fifth is 300.
        (
            "1.5 litres (2 pt) stock",
            "line.second_measure",
            "13: two measures of one amount contradict: 1.5 L and 2 pt lie more than a fifth "
            "apart; understood so far: 1.5 litres stock (write the one that is right)",
        ),
        (
            "2 oz/500 g butter",
            "line.second_measure",
            "5: two measures of one amount contradict: 2 oz and 500 g lie more than a fifth "
            "apart; understood so far: 2 oz (write the one that is right)",
        ),
        (
            "500 g leeks, (washed",
            "line.bracket",
            "14: a bracket is not closed; understood so far: 500 g",
        ),
        (
            "500 g leeks) washed",
            "line.bracket",
            "12: a bracket closes that was not opened; understood so far: 500 g",
        ),
    ],
)
def test_amounts_that_measure_nothing(line: str, code: str, text: str) -> None:
    measures = "imperial" if "pt" in line else "metric"
    expect(refusal(line, measures), RECIPE, code, text)
