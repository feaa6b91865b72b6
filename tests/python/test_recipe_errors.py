"""Everything that can be wrong in a recipe file: class, code, place and the whole text."""

from __future__ import annotations

import pytest
import scalepan

Refusal = tuple[type[scalepan.Error], str, str]


def refusal(text: str) -> Refusal:
    with pytest.raises(scalepan.Error) as caught:
        scalepan.parse_recipe(text, file="dish.toml")
    return type(caught.value), caught.value.code, str(caught.value)


def with_line(line: str, more: str = "") -> str:
    """The line's first character stands at 4:4."""
    return f'name = "Dish"\nserves = 4{more}\nlines = [\n  "{line}",\n]\n'


KEYS = (
    "keys: name, serves, measures, decimal, region, names, tested_at, "
    "makes, loss, load, rounding, flour, tray, trays, bases, lines, method"
)
LINE_KEYS = "keys: id, line, stage, state, rule, note, optional"
RULES = (
    "the rules: in proportion, fixed, whole, one per portion, one per 4 portions, "
    "25 g per portion, one per load, tapered (2, 1.5), (4, 2), to taste, 15 % taken up, taken out"
)

RECIPE = scalepan.RecipeError
NUMBER = scalepan.NumberError
MEASURE = scalepan.MeasureError
FOOD = scalepan.FoodError


@pytest.mark.parametrize(
    ("text", "code", "message"),
    [
        ("", "recipe.missing", f"dish.toml: the recipe has no name ({KEYS})"),
        ('name = "x"', "recipe.missing", f"dish.toml: the recipe has no serves ({KEYS})"),
        (
            'name = "x"\nserves = 4\n',
            "recipe.missing",
            f"dish.toml: the recipe has no lines ({KEYS})",
        ),
        (
            'name = "x"\nserves = 4\nlines = []\n',
            "recipe.no_lines",
            "dish.toml:3:9: the recipe has no lines",
        ),
        (
            'name = ""\nserves = 4\nlines = ["1 leek"]\n',
            "recipe.name",
            "dish.toml:1:9: the recipe has no name",
        ),
        (
            'name = "a\\u0007b"\nserves = 4\nlines = ["1 leek"]\n',
            "recipe.name",
            "dish.toml:1:9: the name of the recipe holds a control character",
        ),
        (
            'name = 3\nserves = 4\nlines = ["1 leek"]\n',
            "recipe.type",
            "dish.toml:1:8: name is not a text",
        ),
        (
            'name = "x"\nserves = true\nlines = ["1 leek"]\n',
            "recipe.type",
            "dish.toml:2:10: serves is not a number",
        ),
        (
            'name = "x"\nserves = [4]\nlines = ["1 leek"]\n',
            "recipe.type",
            "dish.toml:2:10: serves is not a number",
        ),
        (
            'name = "x"\nserves = 4\nlines = "1 leek"\n',
            "recipe.type",
            'dish.toml:3:10: lines is not a list (lines = ["..."])',
        ),
        (
            'name = "x"\nserves = 4\nlines = ["1 leek", 7]\n',
            "recipe.type",
            "dish.toml:3:20: lines 2 is not a text",
        ),
        (
            'name = "x"\nserves = 4\nlines = [{ line = "1 leek", note = 7 }]\n',
            "recipe.type",
            "dish.toml:3:36: lines 1 note is not a text",
        ),
        (
            'name = "x"\nserves = 4\nlines = [{ line = "1 leek", optional = "yes" }]\n',
            "recipe.type",
            "dish.toml:3:41: optional is not true or false",
        ),
        (
            'name = "x"\nserves = 4\nlines = [{ id = "leek" }]\n',
            "recipe.missing",
            "dish.toml:3:10: a line's table has no line",
        ),
        (
            'name = "x"\nserves = 0\nlines = ["1 leek"]\n',
            "recipe.serves",
            "dish.toml:2:10: serves is 0, but must be above zero "
            "(write the number of portions the amounts are for)",
        ),
        (
            'name = "x"\nserves = -4\nlines = ["1 leek"]\n',
            "recipe.serves",
            "dish.toml:2:10: serves is -4, but must be above zero "
            "(write the number of portions the amounts are for)",
        ),
        (
            'name = "x"\nserves = 4\ntested_at = [4, 0]\nlines = ["1 leek"]\n',
            "recipe.tested_at",
            "dish.toml:3:13: tested_at holds 0, but must be above zero",
        ),
        (
            "][",
            "recipe.syntax",
            "dish.toml:1:1: not TOML: Invalid statement (a recipe has keys: "
            'name = "Soup", serves = 4, lines = ["500 g leeks, trimmed"])',
        ),
        (
            'name = "x"\nserves = 4 portions\n',
            "recipe.syntax",
            "dish.toml:2:12: not TOML: Expected newline or end of document after a statement",
        ),
        (
            'name = "x"\nserves = 2,5\n',
            "recipe.syntax",
            "dish.toml:2:11: not TOML: Expected newline or end of document after a statement "
            "(a number has a decimal point: write 2.5, or a text)",
        ),
        (
            'name = "x"\nname = "y"\n',
            "recipe.syntax",
            "dish.toml:2:11: not TOML: Cannot overwrite a value",
        ),
        (
            "lines = " + "[" * 100_000,
            "recipe.syntax",
            "dish.toml: brackets nest too deeply",
        ),
    ],
)
def test_the_file_as_a_whole(text: str, code: str, message: str) -> None:
    assert refusal(text) == (RECIPE, code, message)


@pytest.mark.parametrize(
    ("text", "message"),
    [
        (
            'name = "x"\ncolour = "red"\nserves = 4\nlines = ["1 leek"]\n',
            f'dish.toml:2:11: unknown key "colour" ({KEYS})',
        ),
        (
            'name = "x"\nserves = 4\nlines = [\n  { line = "1 leek", ruel = "whole" },\n]\n',
            f'dish.toml:4:30: unknown key "ruel" ({LINE_KEYS})',
        ),
        (
            'name = "x"\nserves = 4\nlines = ["1 leek"]\n[colour]\nred = 1\n',
            f'dish.toml:4:1: unknown key "colour" ({KEYS})',
        ),
    ],
)
def test_unknown_keys(text: str, message: str) -> None:
    assert refusal(text) == (RECIPE, "recipe.unknown_key", message)


@pytest.mark.parametrize("written", ["colour.red = 1", "[[colour]]\nred = 1", "[colour.red]"])
def test_unknown_keys_of_parts_have_a_line(written: str) -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(f'name = "x"\nserves = 4\nlines = ["1 leek"]\n{written}\n')
    assert caught.value.message == 'unknown key "colour"'
    assert caught.value.line == 4


@pytest.mark.parametrize(
    ("line", "kind", "code", "message"),
    [
        (
            "leeks",
            RECIPE,
            "line.no_amount",
            '4: no amount is written in "leeks" '
            "(write one, or say that it is left to the cook: leeks, to taste)",
        ),
        (
            "",
            RECIPE,
            "line.empty",
            "4: the line is empty (write an amount and a food: 500 g leeks)",
        ),
        ("0 g leeks", RECIPE, "line.amount", "4: an amount must be above zero"),
        ("-5 g leeks", RECIPE, "line.amount", "4: an amount must be above zero"),
        (
            "500 g",
            RECIPE,
            "line.no_food",
            "9: no food is written after the amount; understood so far: 500 g "
            "(write what it is an amount of: 500 g leeks)",
        ),
        (
            "5 g leeks | often",
            RECIPE,
            "rule.unreadable",
            f'16: "often" is no rule ({RULES})',
        ),
        (
            "5 g leeks | one per 0 portions",
            RECIPE,
            "rule.unreadable",
            f'16: "one per 0 portions" is no rule ({RULES})',
        ),
        (
            "5 g leeks | whole",
            RECIPE,
            "rule.unit",
            "8: only a count can be held to whole pieces, and the line is measured in g",
        ),
        (
            "5 g leeks | 1 mL per portion",
            RECIPE,
            "rule.unit",
            "16: the rule counts in mL, the line in g",
        ),
        (
            "5 eggs | one per portion",
            RECIPE,
            "rule.contradiction",
            "4: the line has 5 piece AP for 4 portions, but its rule (1 per portion) gives "
            "4 piece AP (change the amount or the rule)",
        ),
        (
            "5 g pepper",
            FOOD,
            "food.ambiguous",
            '8: "pepper" means more than one food (write one of: green peppers, black pepper; '
            'or choose in the recipe: names = { pepper = "green_pepper" })',
        ),
        (
            "5 tbps leeks",
            MEASURE,
            "unit.unknown",
            '6: unknown unit "tbps"; understood so far: 5 (nearest: tbsp, tsp, lb)',
        ),
        (
            "1 cup leeks",
            MEASURE,
            "unit.which_measures",
            "6: which cup is meant is not stated (measures = one of: us 236.6 mL, "
            "imperial 284.1 mL, metric 250.0 mL, au 250.0 mL)",
        ),
        (
            "5 G leeks",
            MEASURE,
            "unit.doubtful",
            '6: "G" can mean g or gal (write the unit out)',
        ),
        (
            "2-1 leeks",
            MEASURE,
            "amount.doubtful",
            '5: "-1" is neither the rest of a mixed number nor the end of a range '
            "(write 1 1/2, or 1 to 2)",
        ),
        (
            "1 to 2 kg 3 g leeks",
            MEASURE,
            "amount.doubtful",
            "14: a range is followed by a second amount (write the range in one unit)",
        ),
        (
            "1 lb 4 lb leeks",
            MEASURE,
            "amount.doubtful",
            '9: "4 lb" does not go on with a smaller unit of the same kind as lb',
        ),
        (
            "1,5 kg leeks",
            NUMBER,
            "number.comma",
            "5: a comma stands inside a number "
            "(write 1000 for a thousand and 1.5 for one and a half)",
        ),
        (
            "1 3/2 kg leeks",
            NUMBER,
            "number.doubtful",
            '6: the fraction of a mixed number is not below one: "3/2" '
            "(write one number, or put the unit between the two)",
        ),
        (
            "1/2/3 kg leeks",
            NUMBER,
            "number.doubtful",
            '4: "1/2/3" can be read as more than one number '
            "(write one number, such as 1.5, 3/2 or 1 1/2)",
        ),
        (
            "1/0 kg leeks",
            NUMBER,
            "number.zero_denominator",
            "6: the denominator of a fraction is zero",
        ),
    ],
)
def test_lines(line: str, kind: type[scalepan.Error], code: str, message: str) -> None:
    assert refusal(with_line(line)) == (kind, code, f"dish.toml:4:{message}")


# The table's first value stands at 4:13, the second behind it.
@pytest.mark.parametrize(
    ("table", "code", "message"),
    [
        (
            '{ line = "5 g leeks", stage = "peeled" }',
            "line.stage",
            '34: "peeled" is no stage (stage is one of AP, EP, cooked, drained, served)',
        ),
        (
            '{ line = "5 g leeks", rule = "often" }',
            "rule.unreadable",
            f'33: "often" is no rule ({RULES})',
        ),
        (
            '{ line = "5 g leeks | fixed", rule = "fixed" }',
            "line.rule",
            "41: the line has a rule in its text and another beside it",
        ),
    ],
)
def test_tables_of_lines(table: str, code: str, message: str) -> None:
    text = f'name = "x"\nserves = 4\nlines = [\n  {table},\n]\n'
    assert refusal(text) == (RECIPE, code, f"dish.toml:4:{message}")


def test_measures_that_do_not_exist() -> None:
    assert refusal(with_line("1 leek", '\nmeasures = "uk"')) == (
        MEASURE,
        "unit.measures",
        'dish.toml:3:13: no measures are called "uk" (there are: metric, us, imperial, au)',
    )


FIGURES = "write one number in figures, as 4 or 1.5"


@pytest.mark.parametrize(
    ("serves", "code", "message"),
    [
        (
            '"some"',
            "number.unreadable",
            f'2:11: no number is written in "some" ({FIGURES})',
        ),
        ('"4 or 5"', "number.unreadable", f'2:11: "or 5" follows the number 4 ({FIGURES})'),
        ('"1/0"', "number.zero_denominator", "2:11: the denominator of a fraction is zero"),
        (
            "nan",
            "number.float",
            "2:10: the Decimal NaN stands for no exact figure (write a number)",
        ),
        (
            "inf",
            "number.float",
            "2:10: the Decimal Infinity stands for no exact figure (write a number)",
        ),
    ],
)
def test_numbers_of_portions(serves: str, code: str, message: str) -> None:
    text = f'name = "x"\nserves = {serves}\nlines = ["1 leek"]\n'
    assert refusal(text) == (NUMBER, code, f"dish.toml:{message}")


def test_a_number_of_ten_thousand_digits_is_told_in_our_words() -> None:
    kind, code, message = refusal(f'name = "x"\nserves = {"9" * 10_000}\nlines = ["1 leek"]\n')
    assert issubclass(kind, scalepan.Error)
    assert code in ("recipe.syntax", "number.too_many_digits")
    assert "sys." not in message


def test_a_place_without_a_file_is_a_line_and_a_column() -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(with_line("leeks"))
    error = caught.value
    assert (error.file, error.line, error.column, error.cell) == ("", 4, 4, "")
    assert error.place == "line 4:4"
    assert str(error).startswith("line 4:4: no amount")


def test_columns_count_characters_not_bytes() -> None:
    text = 'name = "x"\nserves = 4\nlines = ["½ kg leeks", "1½ tbps crème fraîche"]\n'
    assert refusal(text)[2] == (
        'dish.toml:3:28: unknown unit "tbps"; understood so far: 1½ (nearest: tbsp, tsp, lb)'
    )


def test_a_line_within_a_long_string_has_its_own_line() -> None:
    text = 'name = "x"\nserves = 4\nlines = ["""\n5 tbps leeks"""]\n'
    assert (
        refusal(text)[2]
        == 'dish.toml:4:3: unknown unit "tbps"; understood so far: 5 (nearest: tbsp, tsp, lb)'
    )


@pytest.mark.parametrize(
    ("text", "place", "hint"),
    [
        ("lines = [\u201c500 g leeks\u201d]", "1:10",
         'write straight quotes: "500 g leeks, trimmed"'),
        ('lines = [\n  "500 g leeks"\n  "4 eggs",\n]', "3:3",
         "a comma is missing at the end of line 2"),
        ('lines = [\n  "500 g leeks"\n\n  { line = "4 eggs" },\n]', "4:3",
         "a comma is missing at the end of line 2"),
        ('name = "Soup\nserves = 4', "1:13", "the text has no closing quote"),
        ("name = Soup", "1:8", 'a text stands in straight quotes: name = "Barley soup"'),
        ('lines = ["500 g leeks"', "", "a bracket is not closed"),
        ("item,sold_as,pack,price,keeps\nleeks,AP,1 kg,2.10,no\n", "1:5",
         "this is a table, such as a price book: read_prices reads those"),
        ("soup.toml", "",
         "this is the name of a file: read_recipe, read_sheet and so on read files"),
    ],
)  # fmt: skip
def test_a_slip_of_the_form_has_its_hint(text: str, place: str, hint: str) -> None:
    with pytest.raises(scalepan.RecipeError) as caught:
        scalepan.parse_recipe(text, file="soup.toml")
    assert caught.value.code == "recipe.syntax"
    assert caught.value.place == (f"soup.toml:{place}" if place else "soup.toml")
    assert caught.value.hint == hint
