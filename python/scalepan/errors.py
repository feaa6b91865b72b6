"""The errors of Scalepan: one base class, a stable code, both sides, a place, a hint."""

from __future__ import annotations

from typing import TYPE_CHECKING

from scalepan.displays import repr_mimebundle

if TYPE_CHECKING:
    from collections.abc import Callable


class Error(Exception):
    """Base of every error.

    Attributes:
        code: stable and dotted (``unit.unknown``); its first word names the subject.
        message: what is wrong, naming both sides.
        hint: the nearest fix, or empty.
        file, line, column: where, counted from 1; 0 and empty where unknown.
        cell: the figure it is about (``leeks.buy``), or empty.

    A notebook shows an error that is raised in a few lines, with the line of the cell that led to
    it; with ``scalepan.Error.whole_traceback = True`` it shows every call on the way.
    """

    whole_traceback = False

    def __init__(
        self,
        code: str,
        message: str,
        hint: str = "",
        file: str = "",
        line: int = 0,
        column: int = 0,
        cell: str = "",
    ) -> None:
        super().__init__(code, message, hint, file, line, column, cell)
        self.code = code
        self.message = message
        self.hint = hint
        self.file = file
        self.line = line
        self.column = column
        self.cell = cell

    _repr_mimebundle_ = repr_mimebundle

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Error) and (type(self), self.args) == (type(other), other.args)

    def __hash__(self) -> int:
        return hash((type(self), self.args))

    @property
    def _render_traceback_(self) -> Callable[[], list[str]]:
        """What IPython asks an error for; where there is none it shows the whole traceback."""
        if self.whole_traceback:
            raise AttributeError("the whole traceback is wanted")
        from scalepan.display.errors import short_traceback  # so that `import` stays quick

        return lambda: short_traceback(self)

    @property
    def place(self) -> str:
        """``pot.toml:4:10``, ``leeks.buy``, ``leeks.buy:15`` in its formula, or empty."""
        if self.cell:
            in_formula = self.column and not self.line
            return f"{self.cell}:{self.column}" if in_formula else self.cell
        place = self.file
        if self.line:
            place += f":{self.line}" if place else f"line {self.line}"
            if self.column:
                place += f":{self.column}"
        return place

    def __str__(self) -> str:
        text = f"{self.place}: {self.message}" if self.place else self.message
        return f"{text} ({self.hint})" if self.hint else text


class ArgumentError(Error, TypeError):
    """Arguments of a function: one too many, one missing, or one of another kind."""


class NumberError(Error):
    """A number that cannot be read, or a sum that has no result."""


class MeasureError(Error):
    """Units, dimensions, stages, written amounts and measures of a kitchen."""


class FoodError(Error):
    """Foods, their names, facts, conversions and yield tests."""


class RecipeError(Error):
    """Recipes, their lines, rules and sizes."""


class PriceError(Error):
    """Price books, packs and covers."""


class CostError(Error):
    """Costings and the figures in them."""


class SheetError(Error):
    """Sheets, their cells and formulas."""


class FileError(Error):
    """Files and pickles that cannot be read."""


class PlotError(Error):
    """Plots that cannot be drawn."""


class CommandError(Error):
    """Command lines that are wrong, and what stops a command beside its input."""


_CLASSES: dict[str, type[Error]] = {
    "argument": ArgumentError,
    "number": NumberError,
    "unit": MeasureError,
    "quantity": MeasureError,
    "amount": MeasureError,
    "measure": MeasureError,
    "pan": MeasureError,
    "load": MeasureError,
    "temperature": MeasureError,
    "food": FoodError,
    "fact": FoodError,
    "name": FoodError,
    "convert": FoodError,
    "yield": FoodError,
    "recipe": RecipeError,
    "line": RecipeError,
    "rule": RecipeError,
    "ramp": RecipeError,
    "batch": RecipeError,
    "base": RecipeError,
    "share": RecipeError,
    "method": RecipeError,
    "size": RecipeError,
    "price": PriceError,
    "cover": PriceError,
    "cost": CostError,
    "basket": CostError,
    "swap": CostError,
    "why": CostError,
    "sell": CostError,
    "money": CostError,
    "sheet": SheetError,
    "formula": SheetError,
    "panel": SheetError,
    "file": FileError,
    "frame": FileError,
    "json": FileError,
    "pickle": FileError,
    "plot": PlotError,
    "command": CommandError,
}


def make_error(
    code: str,
    message: str,
    hint: str = "",
    file: str = "",
    line: int = 0,
    column: int = 0,
    cell: str = "",
) -> Error:
    """The error of the class that belongs to the code's first word."""
    kind = _CLASSES.get(code.split(".", 1)[0], Error)
    return kind(code, message, hint, file, line, column, cell)
