"""What is wrong with the arguments of a call, in the words of a kitchen."""

from __future__ import annotations

import os
import re
from inspect import Parameter, signature
from numbers import Number
from types import FunctionType
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.errors import ArgumentError, MeasureError

if TYPE_CHECKING:
    from collections.abc import Callable, Mapping, Sequence

_WORDS = {
    "Basket": "a basket",
    "Catalog": "a catalogue of foods",
    "Costing": "a costing",
    "Curve": "a curve",
    "Line": "a line",
    "MeasureSet": "a set of measures",
    "PriceBook": "a price book",
    "Quantity": "an amount",
    "Recipe": "a recipe",
    "Stock": "a list of stock",
    "str": "a text",
    "PathLike": "the name of a file",
    "Iterable": "a list",
    "Sequence": "a list",
}
_READERS = {
    "Catalog": "read_facts",
    "Costing": "read_costing",
    "PriceBook": "read_prices",
    "Recipe": "read_recipe",
    "Stock": "read_stock",
}
_SAY = {
    "why": 'say why="own trim, 3 cases"',
    "path": 'name a file, as "dish_at_40.toml"',
}
_MONEY = ("spend", "price", "cost", "bill")
_LONGEST = 40
_REST = (Parameter.VAR_POSITIONAL, Parameter.VAR_KEYWORD)
_OF_PYBIND = re.compile("incompatible (function|constructor) arguments")
_CLASS = re.compile(r"^    \d+\. scalepan\._core\.(\w+)\(", flags=re.MULTILINE)
_FORM = re.compile(r"^    \d+\. [\w.]*\((.*)\)(?: -> .*)?$", flags=re.MULTILINE)


def rounding_error(amount: _core.Quantity, by: str) -> MeasureError:
    """For what would round an amount and not say so."""
    told = "told_money" if amount.dimension.startswith("money") else "told"
    message = f"{by} would round {amount} without a word"
    hint = f"for people write amount.{told}; amount.value is the exact Fraction"
    return MeasureError("quantity.format", message, hint)


class _Wanted:
    """A parameter of a function: what it may be."""

    def __init__(self, name: str, kinds: Sequence[str], how: Any, needed: bool) -> None:
        self.name = name
        self.kinds = list(kinds)
        self.how = how
        self.needed = needed

    @property
    def words(self) -> str:
        words = dict.fromkeys(_WORDS.get(kind, kind) for kind in self.kinds if kind != "None")
        return " or ".join(words)

    def fits(self, given: object) -> bool:
        return not self.kinds or any(_fits(kind, given) for kind in self.kinds)


def argument_error(
    name: str,
    function: Callable[..., Any],
    given: tuple[Any, ...],
    named: Mapping[str, Any],
    problem: Exception,
) -> ArgumentError | None:
    """The error that tells which argument is wrong; None where none is."""
    text = "" if isinstance(problem, ArgumentError) else str(problem)
    of_pybind = _OF_PYBIND.search(text)
    if isinstance(function, FunctionType):
        wanted = _of_python(function)
        takes_itself = next(iter(signature(function).parameters), "") == "self"
    elif of_pybind:
        wanted = _of_pybind(text)
        takes_itself = of_pybind[1] == "constructor" or "(self: " in text
    else:
        return None
    if of_pybind and of_pybind[1] == "constructor":
        name = _CLASS.findall(text)[0]
    given = given[takes_itself:]
    error = _not_taken(name, wanted, given, named) or _of_a_kind(name, wanted, given, named)
    if error is None and of_pybind:
        message = f"{name}() cannot take what it is given"
        return ArgumentError("argument.kind", message, _call(name, wanted))
    return error


def _of_pybind(text: str) -> list[_Wanted]:
    """The parameters of all forms of the function that an error of pybind11 lists."""
    merged: dict[str, _Wanted] = {}
    for form in _FORM.findall(text):
        how: Any = Parameter.POSITIONAL_OR_KEYWORD
        for part in _parts(form, ","):
            if part == "*":
                how = Parameter.KEYWORD_ONLY
            if part in ("*", "/"):
                continue
            name, _, rest = part.partition(":")
            kinds, default, _ = rest.partition(" = ")
            if name != "self":
                kept = merged.setdefault(name, _Wanted(name, [], how, not default))
                kept.kinds += [_plain(kind) for kind in _parts(kinds, "|")]
    return list(merged.values())


def _of_python(function: Callable[..., Any]) -> list[_Wanted]:
    return [
        _Wanted(
            each.name,
            [_plain(kind) for kind in _parts(str(each.annotation), "|")],
            each.kind,
            each.default is Parameter.empty,
        )
        for each in signature(function).parameters.values()
        if each.name != "self"
    ]


def _parts(text: str, separator: str) -> list[str]:
    """Cut where no bracket or quote is open."""
    parts, depth, quote = [""], 0, ""
    for sign in text:
        if sign == quote:
            quote = ""
        elif not quote and sign in "'\"":
            quote = sign
        elif not quote:
            depth += (sign in "([{") - (sign in ")]}")
        if sign == separator and not depth and not quote:
            parts.append("")
        else:
            parts[-1] += sign
    return [part.strip() for part in parts if part.strip()]


def _plain(kind: str) -> str:
    """``collections.abc.Iterable[str]`` as ``Iterable``."""
    return kind.split("[")[0].split(".")[-1].strip("'\" ")


def _fits(kind: str, given: object) -> bool:
    """Whether it may be of the kind; of kinds not known here, anything may."""
    if kind == "None":
        return given is None
    if kind == "Number":
        return isinstance(given, str | Number)
    if kind in ("str", "PathLike"):
        return isinstance(given, str | os.PathLike)
    if kind in ("Iterable", "Sequence"):
        return hasattr(given, "__iter__") and not isinstance(given, str)
    known = getattr(_core, kind, None)
    return not isinstance(known, type) or isinstance(given, known)


def _not_taken(
    name: str, wanted: list[_Wanted], given: Sequence[Any], named: Mapping[str, Any]
) -> ArgumentError | None:
    """Arguments that the function has not, or needs."""
    if any(each.how in _REST for each in wanted):
        return None
    in_order = [each for each in wanted if each.how is not Parameter.KEYWORD_ONLY]
    met = {each.name for each in in_order[: len(given)]} | named.keys()
    known = [each.name for each in wanted]
    open_ones = [each for each in wanted if each.name not in met]
    missing = [each for each in open_ones if each.needed]
    if len(given) > len(in_order):
        message = f"{name}() takes {_some(len(in_order))}, but is given {len(given)}"
        hint = _call(name, wanted)
        if open_ones:
            meant = (missing or open_ones)[0].name
            hint = f"write {meant}={_shown(given[len(in_order)])}"
        return ArgumentError("argument.by_name", message, hint)
    for one in named:
        if one not in known:
            near = _core.nearest_names(one, known)
            hint = f"write {near[0]}={_shown(named[one])}" if near else _call(name, wanted)
            return ArgumentError("argument.unknown", f"{name}() has no argument {one}", hint)
    if missing:
        names = " and ".join(each.name for each in missing)
        hint = _SAY.get(missing[0].name, _call(name, wanted))
        return ArgumentError("argument.missing", f"{name}() needs {names}", hint)
    return None


def _of_a_kind(
    name: str, wanted: list[_Wanted], given: Sequence[Any], named: Mapping[str, Any]
) -> ArgumentError | None:
    """An argument of another kind than the function takes."""
    in_order = [each for each in wanted if each.how is not Parameter.KEYWORD_ONLY]
    pairs = [*zip(in_order, given, strict=False)]
    pairs += [(each, named[each.name]) for each in wanted if each.name in named]
    for each, value in pairs:
        if not each.fits(value):
            role = "" if each.words == f"a {each.name}" else f" as its {each.name}"
            message = f"{name}() takes {each.words}{role}, not {_told(value)}"
            swapped = any(each.fits(other) and not one.fits(other) for one, other in pairs)
            hint = "" if swapped else _way_to(each, value)
            if not hint and each.needed:
                hint = _call(name, wanted)
            return ArgumentError("argument.kind", message, hint)
    return None


def _way_to(wanted: _Wanted, given: object) -> str:
    """How to make of what is given what is wanted."""
    kinds = set(wanted.kinds)
    if isinstance(given, str | os.PathLike):
        for kind in kinds & _READERS.keys():
            return f'write scalepan.{_READERS[kind]}("{os.fspath(given)}")'
    if isinstance(given, _core.Costing) and "Recipe" in kinds:
        return "costing.recipe is its recipe"
    if isinstance(given, _core.Recipe) and "Costing" in kinds:
        return "cost it first: scalepan.cost(recipe, prices)"
    if isinstance(given, Number) and "Quantity" in kinds:
        unit = "EUR" if wanted.name in _MONEY else "g"
        return f'write it with its unit: "{given} {unit}"'
    if isinstance(given, int) and kinds & {"Iterable", "Sequence"}:
        return f"from one to so many: range(1, {given + 1})"
    return ""


def _call(name: str, wanted: list[_Wanted]) -> str:
    """How the function is called, with the arguments it needs."""
    named = [each for each in wanted if each.how not in _REST]
    written = [
        f"{each.name}=..." if each.how is Parameter.KEYWORD_ONLY else each.name
        for each in named
        if each.needed
    ]
    others = [each.name for each in named if not each.needed]
    also = f"; it also takes {', '.join(others)}" if others else ""
    return f"write {name}({', '.join(written)}){also}"


def _told(given: object) -> str:
    if given is None:
        return "nothing (None)"
    if isinstance(given, str):
        return f"the text {_shown(given)}"
    if isinstance(given, Number):
        return f"the number {given}"
    kind = type(given).__name__
    return _WORDS.get(kind, f"a {kind}")


def _shown(given: object) -> str:
    if isinstance(given, str):
        text = given if len(given) <= _LONGEST else f"{given[:_LONGEST]}..."
        return f'"{text}"'
    return str(given) if isinstance(given, Number) else "..."


def _some(count: int) -> str:
    if not count:
        return "its arguments by name"
    return f"{count} argument{'' if count == 1 else 's'}, and others by name"
