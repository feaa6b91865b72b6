"""Recipes, bases, batches and loads in plain fractions, written from the documentation alone.

It is the other side of the property tests: nothing here calls the engine.
"""

from __future__ import annotations

from dataclasses import dataclass, field
from fractions import Fraction
from math import ceil

# SR28 01123: a large egg is 50 g without its shell.
EGG_GRAMS = 50
EGGS = "eggs"
BASE_NAMES = ["sky_paste", "sun_paste", "moon_paste"]


def mixed(x: Fraction) -> str:
    """`1 7/8`: a cook's `15/8` is doubted."""
    whole, part = divmod(x, 1)
    return f"{whole} {part}" if whole and part else str(x)


@dataclass(frozen=True)
class Size:
    portions: Fraction
    factor: Fraction
    loads: int = 1


@dataclass(frozen=True)
class Rule:
    kind: str = "in proportion"
    each: Fraction = Fraction(1)
    per: int = 1
    points: tuple[tuple[Fraction, Fraction], ...] = ()
    further: Fraction | None = None

    def text(self, unit: str) -> str:
        if self.kind == "per portions":
            return f"{mixed(self.each)}{unit} per {self.per} portions"
        if self.kind == "per load":
            return f"{mixed(self.each)}{unit} per load"
        if self.kind == "tapered":
            points = ", ".join(f"({mixed(x)}, {mixed(y)})" for x, y in self.points)
            return f"tapered {points}" + (f", then {self.further}" if self.further else "")
        return self.kind

    def amount(self, written: Fraction, size: Size) -> Fraction:
        match self.kind:
            case "fixed":
                return written
            case "whole":
                return Fraction(ceil(written * size.factor))
            case "per portions":
                return self.each * ceil(size.portions / self.per)
            case "per load":
                return self.each * size.loads
            case "tapered":
                return written * self.multiple(size.factor)
        return written * size.factor

    def multiple(self, factor: Fraction) -> Fraction:
        left = (Fraction(0), Fraction(0))
        for right in ((Fraction(1), Fraction(1)), *self.points):
            if factor <= right[0]:
                rise = (right[1] - left[1]) / (right[0] - left[0])
                return left[1] + rise * (factor - left[0])
            left = right
        return left[1] + (self.further or 0) * (factor - left[0])


@dataclass(frozen=True)
class FoodLine:
    food: str
    written: Fraction
    rule: Rule = Rule()

    @property
    def unit(self) -> str:
        return "" if self.food == EGGS else " g"

    @property
    def grams(self) -> int:
        return EGG_GRAMS if self.food == EGGS else 1

    def text(self) -> str:
        size = "large " if self.food == EGGS else ""
        return f"{mixed(self.written)}{self.unit} {size}{self.food} | {self.rule.text(self.unit)}"


@dataclass(frozen=True)
class BaseLine:
    """``what`` is share, rest, grams or portions; ``amount`` is of that."""

    base: int
    what: str
    amount: Fraction = Fraction(0)
    rule: Rule = Rule()


@dataclass
class Dish:
    serves: int
    lines: list[FoodLine | BaseLine]
    load: int | None = None  # portions
    bases: list[Dish] = field(default_factory=list)  # all there are, by number

    def written_size(self) -> Size:
        return self.size(Fraction(self.serves), Fraction(1))

    def size(self, portions: Fraction, factor: Fraction) -> Size:
        loads = ceil(portions / self.load) if self.load else 1
        return Size(portions, factor, loads)

    def written(self, line: FoodLine | BaseLine) -> Fraction:
        """In g, pieces or portions."""
        if isinstance(line, FoodLine) or line.what in ("grams", "portions"):
            return line.written if isinstance(line, FoodLine) else line.amount
        whole = self.bases[line.base].weight()
        if line.what == "share":
            return whole * line.amount
        others = sum(
            (
                other.amount if other.what == "share" else Fraction(0)
                for other in self.lines
                if isinstance(other, BaseLine) and other.base == line.base
            ),
            Fraction(0),
        )
        return whole * (1 - others)

    def amount(self, line: FoodLine | BaseLine, size: Size) -> Fraction:
        return line.rule.amount(self.written(line), size)

    def grams(self, line: FoodLine | BaseLine) -> Fraction:
        """Of one piece, gram or portion."""
        if isinstance(line, FoodLine):
            return Fraction(line.grams)
        base = self.bases[line.base]
        return base.weight() / base.serves if line.what == "portions" else Fraction(1)

    def weight(self, size: Size | None = None) -> Fraction:
        at = size or self.written_size()
        return sum((self.amount(line, at) * self.grams(line) for line in self.lines), Fraction(0))

    def batches(self, line: BaseLine, size: Size) -> Fraction:
        base = self.bases[line.base]
        whole = Fraction(base.serves) if line.what == "portions" else base.weight()
        return self.amount(line, size) / whole

    def toml(self, number: int | None = None) -> str:
        """The table of this dish; the bases' own tables stand beside it as files do."""
        named = sorted({line.base for line in self.lines if isinstance(line, BaseLine)})
        lines = ",\n  ".join(self._line(i, line) for i, line in enumerate(self.lines))
        bases = ", ".join(f'{BASE_NAMES[i]} = "base{i}.toml"' for i in named)
        load = f'load = "{self.load} portions"\n' if self.load else ""
        name = "Dish" if number is None else f"Recipe of base {number}"
        return (
            f'name = "{name}"\nserves = {self.serves}\n{load}bases = {{ {bases} }}\n'
            f"lines = [\n  {lines},\n]\n"
        )

    @staticmethod
    def _line(number: int, line: FoodLine | BaseLine) -> str:
        if isinstance(line, FoodLine):
            text = line.text()
        else:
            name = BASE_NAMES[line.base].replace("_", " ")
            text = {
                "share": f"{line.amount} of the {name}",
                "rest": f"rest of the {name}",
                "grams": f"{mixed(line.amount)} g {name} | {line.rule.text(' g')}",
                "portions": f"{mixed(line.amount)} portions of {name} | {line.rule.text('')}",
            }[line.what]
        return f'{{ id = "l{number}", line = "{text}" }}'
