"""The stub of the core, read as text, and what it says held against the core that is there."""

from __future__ import annotations

import ast
import collections.abc
import types
import typing
from fractions import Fraction
from functools import cache
from pathlib import Path

import scalepan
from scalepan import _core, costing_files, errors, sheets, shopping, type_names

STUB = Path(__file__).parents[2] / "python" / "scalepan" / "_core.pyi"
_NAMES = {
    **vars(typing),
    **vars(collections.abc),
    **vars(type_names),
    **vars(_core),
    "Fraction": Fraction,
    "Error": errors.Error,
    "LiveSheet": sheets.Sheet,
    "Shopping": shopping.Shopping,
    "Refreshed": costing_files.Refreshed,
}


@cache
def tree() -> ast.Module:
    return ast.parse(STUB.read_text(encoding="utf-8"))


def functions(scope: ast.Module | ast.ClassDef) -> list[ast.FunctionDef]:
    return [one for one in scope.body if isinstance(one, ast.FunctionDef)]


@cache
def classes() -> dict[str, ast.ClassDef]:
    return {one.name: one for one in tree().body if isinstance(one, ast.ClassDef)}


@cache
def classes_there() -> dict[str, type]:
    """Those of the stub that the core has: the others only say what these share."""
    return {name: vars(_core)[name] for name in classes() if name in vars(_core)}


def kinds_of(thing: object) -> list[str]:
    """The classes of the core that it is of, its own first."""
    there = classes_there().values()
    return [kind.__name__ for kind in type(thing).__mro__ if kind in there]


def is_property(function: ast.FunctionDef) -> bool:
    return any(ast.unparse(one) == "property" for one in function.decorator_list)


def result_of(function: ast.FunctionDef) -> object:
    assert function.returns is not None
    return eval(ast.unparse(function.returns), _NAMES)


def is_of(value: object, kind: object) -> bool:
    """Whether a value is what an annotation says, all the way down."""
    origin, parts = typing.get_origin(kind), typing.get_args(kind)
    if kind is typing.Any or kind is object:
        return True
    if kind is None:
        return value is None
    if typing.is_typeddict(kind):
        hints = typing.get_type_hints(kind, _NAMES)
        return isinstance(value, dict) and all(
            key in hints and is_of(one, hints[key]) for key, one in value.items()
        )
    if origin in (typing.Union, types.UnionType):
        return any(is_of(value, part) for part in parts)
    if origin is typing.Literal:
        return value in parts
    if origin is tuple and parts[1:] != (...,):
        return type(value) is tuple and _are_of(value, parts)
    if origin is dict:
        return type(value) is dict and all(_are_of(one, parts) for one in value.items())
    if origin is not None:
        return isinstance(value, origin) and all(is_of(one, parts[0]) for one in value)
    return type(value) is kind if kind in (int, bool, str) else isinstance(value, kind)


def _are_of(values: tuple[object, ...], kinds: tuple[object, ...]) -> bool:
    return len(values) == len(kinds) and all(map(is_of, values, kinds))


def values_of(thing: object) -> list[tuple[str, object, object]]:
    """Its properties and what methods without arguments give: name, value, and what the stub says.

    What raises an error of the package gives nothing.
    """
    values = []
    for kind in kinds_of(thing):
        for function in filter(_is_asked, functions(classes()[kind])):
            try:
                value = getattr(thing, function.name)
                value = value if is_property(function) else value()
            except scalepan.Error:
                continue
            values.append((f"{kind}.{function.name}", value, result_of(function)))
    return values


def _is_asked(function: ast.FunctionDef) -> bool:
    arguments = function.args
    by_place = len(arguments.posonlyargs) + len(arguments.args) - len(arguments.defaults)
    asks = by_place > 1 or None in arguments.kw_defaults
    changes = function.name in ("undo", "redo")
    return not asks and not changes and not function.name.startswith("_")


Parameter = tuple[str, str, bool]


def parameters(function: ast.FunctionDef, *, bound: bool) -> list[Parameter]:
    """Name, kind, and whether there is a default; without ``self``."""
    given = function.args
    by_place = [(one, "by place") for one in given.posonlyargs] + [
        (one, "either way") for one in given.args
    ]
    first_default = len(by_place) - len(given.defaults)
    listed = [(one.arg, kind, i >= first_default) for i, (one, kind) in enumerate(by_place)]
    listed = listed[1:] if bound else listed
    defaults = given.kw_defaults
    named = [
        (one.arg, "by name", defaults[i] is not None) for i, one in enumerate(given.kwonlyargs)
    ]
    return listed + named
