"""Two thousand lines in odd forms: each is read right, or refused at its place.

What a line says is known before it is written: numbers, units and foods come from tables of the
kitchen's own words and are only then put into a form (`1½lb`, `2 x 400 g tins`).
Nothing here asks the package what it makes of a word. The seed is fixed, so the lines are too.
"""

from __future__ import annotations

import csv
import random
from dataclasses import dataclass, replace
from fractions import Fraction
from pathlib import Path
from typing import TYPE_CHECKING

import pytest
import scalepan

if TYPE_CHECKING:
    from collections.abc import Callable

    from scalepan._core import WrittenLine

SEED = 1861
LINES = 2000

with (Path(__file__).parent / "data" / "written_units.csv").open(encoding="utf-8") as stream:
    TABLE = list(csv.DictReader(stream))


def spellings(kind: str) -> dict[str, list[str]]:
    return {row["unit"]: row["spellings"].split("|") for row in TABLE if row["kind"] == kind}


UNITS, NOUNS, CONTAINERS = map(spellings, ("unit", "noun", "container"))
FOOD_OF_NOUN = {row["unit"]: row["foods"].split("|") for row in TABLE if row["kind"] == "noun"}
# Foods without a word that could be a unit, a number, a size or a state.
FOODS = ["flour", "brown sugar", "butter", "milk", "olive oil", "lentils", "oats", "pearl barley"]
FOODS += ["Crème fraîche", "double cream", "jalapeño sauce", "sunflower seeds"]
COUNTED = ["eggs", "onions", "carrots", "figs", "red peppers", "new potatoes", "crêpes"]

# In mL and g. US gallon 231 cubic inches, cup a sixteenth of it; imperial gallon 4.54609 L, with
# British kitchen spoons of 15 and 5 mL; metric cup 250, spoons 15 and 5; au as NSW Health has it.
ALL = ("us", "imperial", "metric", "au")
SIZES = {row["unit"]: {m: Fraction(row[m]) for m in ALL if row[m]} for row in TABLE if row["us"]}

VULGAR = {"1/2": "½", "1/3": "⅓", "2/3": "⅔", "1/4": "¼", "3/4": "¾", "1/8": "⅛", "7/8": "⅞"}
VULGAR |= {"1/5": "⅕", "4/5": "⅘", "1/6": "⅙", "5/6": "⅚", "3/8": "⅜", "5/8": "⅝"}
RAISED = str.maketrans("0123456789", "⁰¹²³⁴⁵⁶⁷⁸⁹")
LOWERED = str.maketrans("0123456789", "₀₁₂₃₄₅₆₇₈₉")
WORDS = ["one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven"]
SPACES = [" ", " ", " ", "\u00a0", "\u202f", "\u2009", "  "]
DASHES = ["-", " - ", "–", "—", "\u2011", "\u2012", " – ", " — "]


@dataclass(frozen=True)
class Said:
    """What a line says; of a bound that is open, nothing."""

    low: Fraction | None
    high: Fraction | None
    unit: str
    food: str
    holds: str = ""  # each container
    size: str = ""
    fill: str = ""
    part: str = ""
    states: tuple[str, ...] = ()
    second: tuple[str, ...] = ()
    choices: tuple[str, ...] = ()


@dataclass(frozen=True)
class Case:
    text: str
    said: Said | None  # nothing: the line must be refused
    measures: str = "us"
    decimal: str = "point"


def hundredths(number: Fraction, mark: str = ".") -> str:
    whole, rest = divmod(round(number * 100), 100)
    return f"{whole}{mark}{rest:02}"


class Dice(random.Random):
    def one(self, *choices: str) -> str:
        return self.choice(choices)

    def measure(self, shortest: int = 1) -> tuple[str, str]:
        """A unit and a spelling of at least so many letters."""
        unit = self.choice(list(UNITS))
        long = [spelt for spelt in UNITS[unit] if len(spelt.rstrip(".")) >= shortest]
        return (unit, self.choice(long)) if long else self.measure(shortest)

    def whole(self, most: int = 11) -> Fraction:
        return Fraction(self.randint(1, most))

    def number(self) -> Fraction:
        """A whole number, a fraction or both."""
        part = Fraction(self.choice(list(VULGAR)))
        return self.choice([self.whole(), part, self.whole(4) + part])

    def fraction(self, part: Fraction) -> str:
        top, bottom = str(part.numerator), str(part.denominator)
        raised = top.translate(RAISED) + "⁄" + bottom.translate(LOWERED)
        return self.one(VULGAR[str(part)], f"{top}/{bottom}", f"{top}⁄{bottom}", raised)

    def written(self, number: Fraction) -> str:
        """Without a hyphen, which inside a range would say something else."""
        whole, part = divmod(number, 1)
        if not part:
            return str(whole)
        below_one = self.fraction(part)
        if not whole:
            return below_one
        raised = below_one[0] not in "0123456789"
        return f"{whole}{self.one('', ' ') if raised else ' '}{below_one}"


def measured(dice: Dice) -> Case:
    """`1 ½ cups flour`, `2 lbs. of butter`, `1-1/2 cups flour`, `1&1/2 cups flour`."""
    number, (unit, spelt), food = dice.number(), dice.measure(), dice.one(*FOODS)
    spaces, written, whole = dice.choices(SPACES, k=2), dice.written(number), number // 1
    if dice.random() < 0.5 and 0 < whole < number:
        written = f"{whole}{dice.one('-', '&', ' & ', ' and ')}{number - whole}"
    text = f"{written}{spaces[0]}{spelt}{spaces[1]}{dice.one('', '', 'of ')}{food}"
    return Case(text, Said(number, number, unit, food))


def joined(dice: Dice) -> Case:
    """`1½lb butter`, `250g flour`, `¼-lb. suet`."""
    number, (unit, spelt), food = dice.number(), dice.measure(2), dice.one(*FOODS)
    text = f"{dice.written(number)}{dice.one('', '-')}{spelt} {food}"
    return Case(text, Said(number, number, unit, food))


def decimal(dice: Dice) -> Case:
    """`1.25 kg flour`, `.5 cup milk`; `1,25 kg flour` where the text has decimal commas."""
    number, (unit, spelt) = Fraction(dice.randint(1, 999), 100), dice.measure()
    said = Said(number, number, unit, dice.one(*FOODS))
    if dice.random() < 0.4:
        return Case(f"{hundredths(number, ',')} {spelt} {said.food}", said, decimal="comma")
    digits = hundredths(number)
    return Case(f"{dice.one(digits, digits.lstrip('0'))} {spelt} {said.food}", said)


def in_words(dice: Dice) -> Case:
    """`two and a half cups of flour`, `half a pound of butter`, `three-quarters of a pint`."""
    (unit, spelt), food, whole = dice.measure(5), dice.one(*FOODS), dice.whole()
    name, half = WORDS[int(whole) - 1], Fraction(1, 2)
    choices = [(whole, name), (whole + half, f"{name} and a half"), (half, "half a")]
    choices += [(whole + half, f"{name} and one-half"), (half, "one half"), (Fraction(1), "a")]
    choices += [(whole + half / 2, f"{name} and one fourth"), (Fraction(2, 3), "two-thirds")]
    number, words = dice.choice([*choices, (Fraction(3, 4), "three-quarters of a")])
    text = f"{dice.one(words, words.capitalize())} {spelt} of {food}"
    if words.endswith("and a half") and dice.random() < 0.5:
        text = f"{name} {spelt} and a half of {food}"
    return Case(text, Said(number, number, unit, food))


def filled(dice: Dice) -> Case:
    """`2 heaped tbsp flour`, `1 cup flour (scant)`."""
    number, unit, food = dice.number(), dice.one("cup", "tbsp", "tsp"), dice.one(*FOODS)
    fill = dice.one("heaping", "heaped", "scant", "level", "rounded")
    written, spelt = dice.written(number), dice.choice(UNITS[unit])
    text = dice.one(f"{written} {fill} {spelt} {food}", f"{written} {spelt} {food} ({fill})")
    return Case(text, Said(number, number, unit, food, fill=fill))


def ranged(dice: Dice) -> Case:
    """`1½–2 cups milk`, `3 or 4 lb. butter`, `between 2 and 3 cups milk`."""
    low, (unit, spelt), food = dice.number(), dice.measure(), dice.one(*FOODS)
    high = low // 1 + dice.whole(4)
    choices = [f"{{}}{joint}{{}}" for joint in (*DASHES, " to ", " or ")]
    start = dice.one(*choices, "between {} and {}").format(dice.written(low), dice.written(high))
    return Case(f"{start} {spelt} {food}", Said(low, high, unit, food))


def bounded(dice: Dice) -> Case:
    """`at least 2 cups milk`, `up to 1 lb flour`, `1 tsp butter or more`."""
    number, (unit, spelt), food = dice.number(), dice.measure(), dice.one(*FOODS)
    words = dice.one("at least", "more than", "rather more than", "or more", "about", "approx.")
    words = dice.one(words, words, "up to", "not more than", "just under")
    rest = f"{dice.written(number)} {spelt} {food}"
    low = None if words in ("up to", "not more than", "just under") else number
    high = None if words in ("at least", "more than", "rather more than", "or more") else number
    text = f"{rest} {words}" if words == "or more" else f"{words} {rest}"
    return Case(text, Said(low, high, unit, food))


def ratio_of(first: str, second: str, measures: str) -> Fraction | None:
    """Of two units, where it is one in all measures that are meant."""
    meant = [measures] if measures else list(SIZES[first])
    ratios = {SIZES[first][name] / SIZES[second][name] for name in meant if name in SIZES[first]}
    return ratios.pop() if len(ratios) == 1 else None


def summed(dice: Dice) -> Case:
    """`1 lb 4 oz flour`, `1 cup plus 2 tbsp milk`: exactly, in the larger unit."""
    pairs = [("lb", "oz"), ("kg", "g"), ("cup", "tbsp"), ("tbsp", "tsp"), ("gal", "qt")]
    first, second = dice.choice([*pairs, ("qt", "pt"), ("l", "ml")])
    one, two, food = dice.whole(4), dice.whole(3), dice.one(*FOODS)
    joint = dice.one(" ", " + ", " plus ", " and ")
    text = f"{one} {dice.choice(UNITS[first])}{joint}{two} {dice.choice(UNITS[second])} {food}"
    measures = dice.one("us", "us", "imperial", "metric", "au", "")
    ratio = ratio_of(first, second, measures)
    if ratio is None:
        return Case(text, None, measures)
    return Case(text, Said(one + two / ratio, one + two / ratio, first, food), measures)


def contained(dice: Dice) -> Case:
    """`2 x 400 g tins lentils`, `1 (14-oz) can lentils`, `3 jars (8 oz.) lentils`."""
    count, kind, food = dice.whole(6), dice.choice(list(CONTAINERS)), dice.one(*FOODS)
    size, unit = dice.one("400", "14", "8", "1.5", "14 1/2"), dice.one("g", "oz", "ounce", "oz.")
    word, joint = dice.choice(CONTAINERS[kind]), dice.one("", " ")
    forms = [
        f"{count} x {{}} {word}",
        f"{count}x{{}} {word}",
        f"{count} × {{}} {word} of",
        "{} can",
    ]
    forms += [
        f"{count} ({{}}) {word}",
        f"{count} {word} ({{}})",
        f"{WORDS[int(count) - 1]} {{}} {word}",
    ]
    form = dice.choice(forms)
    holds = f"{size}{'-' if form[0] in 'otfs' else joint}{unit}"
    if form == "{} can":
        count, kind = Fraction(1), "can"
    return Case(f"{form.format(holds)} {food}", Said(count, count, kind, food, holds=holds))


def bracketed(dice: Dice) -> Case:
    """`250 g (8 oz) flour`: two that lie more than a fifth apart are refused."""
    (first, second), food = dice.sample(["g", "oz", "lb", "kg"], 2), dice.one(*FOODS)
    number = dice.whole(9) * (100 if first == "g" else 1)
    factor = Fraction(dice.choice([50, 70, 90, 95, 100, 100, 105, 110, 140, 200]), 100)
    other = f"{hundredths(number * SIZES[first]['us'] / SIZES[second]['us'] * factor)} {second}"
    text = dice.one(f"{number} {first} ({other}) {food}", f"{number} {first}/{other} {food}")
    near = Fraction(89, 100) < factor < Fraction(111, 100)
    return Case(text, Said(number, number, first, food, second=(other,)) if near else None)


def counted(dice: Dice) -> Case:
    """`3 large eggs`, `½ dozen eggs`, `six medium-sized carrots`."""
    food, size = dice.choice(COUNTED), dice.one("", "", "large", "small", "medium-sized")
    number = dice.whole()
    written = dice.one(str(number), WORDS[int(number) - 1])
    times, dozen = dice.choice([(1, ""), (1, ""), (12, "dozen "), (12, "doz. ")])
    text = f"{written} {dozen}{size}{' ' if size else ''}{food}"
    return Case(text, Said(number * times, number * times, "piece", food, size=size))


def noun(dice: Dice) -> Case:
    """`3 sprigs thyme`, `2-3 slices of bread`."""
    one, low, of = dice.choice(list(NOUNS)), dice.whole(6), dice.one("", "of ")
    food = dice.choice(FOOD_OF_NOUN[one])
    high = low + dice.choice([0, 0, 1])
    number = f"{low}-{high}" if high > low else str(low)
    return Case(f"{number} {NOUNS[one][high > 1]} {of}{food}", Said(low, high, one, food))


def food_first(dice: Dice) -> Case:
    """Two columns: `Flour, sifted      2½ cups`, `Butter – 50 g`."""
    number, (unit, spelt), food = dice.number(), dice.measure(), dice.one(*FOODS)
    state, gap = dice.one("sifted", "melted", "chopped"), " " * dice.randint(2, 30)
    said, amount = Said(number, number, unit, food), f"{dice.written(number)} {spelt}"
    if dice.random() < 0.3:
        return Case(f"{food}, {state}{gap}{amount}", replace(said, states=(state,)))
    return Case(f"{food}{dice.one(gap, ' – ', ', ')}{amount}", said)


def prepared(dice: Dice) -> Case:
    """`1 cup sifted flour`, `1 cup flour, sifted`, `1 cup butter or suet`."""
    number, (unit, spelt), food = dice.number(), dice.measure(), dice.one(*FOODS)
    state = dice.one("sifted", "melted", "chopped", "grated")
    ends = (f"{state} {food}", f"{food}, {state}", f"{food} ({state})", f"{food}; {state}")
    amount, said = f"{dice.written(number)} {spelt}", Said(number, number, unit, food)
    if dice.random() < 0.3:
        return Case(f"{amount} {food} or suet", replace(said, choices=("suet",)))
    return Case(f"{amount} {dice.one(*ends)}", replace(said, states=(state,)))


def parted(dice: Dice) -> Case:
    """`juice of 2 lemons`, `grated rind of ½ lemon`, `the yolks of 3 eggs`."""
    number = dice.choice([dice.whole(6), Fraction(1, 2)])
    part, food = dice.choice([("juice", "lemons"), ("grated rind", "oranges"), ("yolks", "eggs")])
    text = f"{dice.one('', 'the ')}{part} {dice.one('of ', '')}{dice.written(number)} {food}"
    return Case(text, Said(number, number, "piece", food, part=part))


def shouted(dice: Dice) -> Case:
    """`4 CUPS FLOUR`, `½ LB BUTTER`, `ONE PINT MILK`."""
    number, (unit, spelt), food = dice.number(), dice.measure(2), dice.one(*FOODS).upper()
    written = WORDS[int(number) - 1].upper() if number in range(1, 4) else dice.written(number)
    return Case(f"{written} {spelt.upper()} {food}", Said(number, number, unit, food))


def without_amount(dice: Dice) -> Case:
    food = dice.one(*FOODS)
    text = dice.one(food, f"{food}, to taste", f"{food} to taste", f"a little {food}")
    return Case(text, Said(None, None, "", food))


def unreadable(dice: Dice) -> Case:
    """Numbers that are none, units without a number, and two numbers for one."""
    (_, unit), food = dice.measure(), dice.one(*FOODS)
    a, b, c = (dice.randint(2, 9) for _ in range(3))
    numbers = [f"{a}/0", f"{a}/{b}/{c}", f"{a},{b}00", "0", f"{a}.{b}.{c}", f"{a} {b}"]
    lines = [f"{number} {unit} {food}" for number in numbers]
    lines += [f"{a} {c}00 g tins {food}", f"{a} cups + {b} oz {food}", f"{a} glasses {food}"]
    lines += [f"{dice.one('cups', 'tbsp', 'oz', 'pint', 'grams')} {food}", f"{a} {unit}"]
    lines += [f"${a}.00 {food}", f"{food}, the size of a walnut", f"{a} hours"]
    return Case(dice.one(*lines), None)


FORMS: list[Callable[[Dice], Case]] = [measured, joined, decimal, in_words, filled, ranged, bounded]
FORMS += [summed, contained, bracketed, counted, noun, food_first, prepared, parted, shouted]
FORMS += [without_amount, unreadable]
# Percent of the lines of a form that say something which must be read.
LEAST_READ = 97


def cases_of(form: Callable[[Dice], Case]) -> list[Case]:
    dice = Dice(f"{SEED} {form.__name__}")
    return [form(dice) for _ in range(-(-LINES // len(FORMS)))]


def read(case: Case) -> WrittenLine | scalepan.Error:
    (line,) = scalepan.read_lines([case.text], measures=case.measures or None, decimal=case.decimal)
    return line


def said_by(line: WrittenLine) -> Said:
    times, unit = (12, "piece") if line.unit == "dozen" else (1, line.unit)
    low, high = (None if bound is None else bound * times for bound in (line.low, line.high))
    states, second, choices = map(tuple, (line.states, line.second_measures, line.alternatives))
    unit = {"mL": "ml", "L": "l"}.get(unit, unit)
    kept = (line.container_size, line.size, line.fill, line.part, states, second, choices)
    return Said(low, high, unit, line.food, *kept)


def fault(case: Case) -> str:
    line = read(case)
    if isinstance(line, scalepan.Error):
        inside = 1 <= (line.column or 0) <= len(case.text) + 1
        return "" if inside else f"{case.text!r}: refused outside the line: {line}"
    found = said_by(line)
    return "" if found == case.said else f"{case.text!r}: {found}, not {case.said}"


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.__name__)
def test_no_line_is_read_wrong(form: Callable[[Dice], Case]) -> None:
    faults = [found for case in cases_of(form) if (found := fault(case))]
    assert not faults, f"{len(faults)} read wrong:\n" + "\n".join(faults)


@pytest.mark.parametrize("form", FORMS, ids=lambda form: form.__name__)
def test_what_can_be_read_is_read(form: Callable[[Dice], Case]) -> None:
    readable = [case for case in cases_of(form) if case.said]
    refused = [error for case in readable if isinstance(error := read(case), scalepan.Error)]
    assert len(refused) * 100 <= len(readable) * (100 - LEAST_READ), "\n".join(map(str, refused))


def test_counts(capsys: pytest.CaptureFixture[str]) -> None:
    rows = [(form.__name__, [(case, read(case)) for case in cases_of(form)]) for form in FORMS]
    rows.append(("in all", [line for _, lines in rows for line in lines]))
    with capsys.disabled():
        print(f"\n{'form':15}{'lines':>6}{'read':>6}{'refused':>9}{'to be refused':>15}")
        for name, lines in rows:
            refused = sum(isinstance(line, scalepan.Error) for _, line in lines)
            meant = sum(case.said is None for case, _ in lines)
            print(f"{name:15}{len(lines):6}{len(lines) - refused:6}{refused:9}{meant:15}")
    assert len(rows[-1][1]) >= LINES
