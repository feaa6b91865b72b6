"""Functions and methods whose wrong arguments are told in one short error.

What tells them is loaded when the first one is wrong; until then a call takes some 0.1 µs more.
Arithmetic and what is only called from inside are left as they are.
"""

from __future__ import annotations

from functools import wraps
from types import BuiltinFunctionType, FunctionType
from typing import TYPE_CHECKING, Any, TypeVar

from scalepan import _core

if TYPE_CHECKING:
    from collections.abc import Callable, Iterable

    _Function = TypeVar("_Function", bound=Callable[..., Any])

_LEFT_AS_THEY_ARE = (_core.NumberColumn,)
_FROM_INSIDE = ("add_food", "add_name", "add_fact", "add_release", "prefer", "choose", "part")


def explained(function: _Function, name: str = "") -> _Function:
    """The function, raising ArgumentError where it cannot take what it is given.

    The codes are ``argument.kind``, ``argument.missing``, ``argument.unknown`` and
    ``argument.by_name``; ``name`` is the one it is called by, if that is not its own.
    """

    @wraps(function)
    def called(*given: Any, **named: Any) -> Any:
        try:
            return function(*given, **named)
        except (TypeError, AttributeError) as problem:
            from scalepan.argument_errors import argument_error  # only where one is wrong

            error = argument_error(name or function.__name__, function, given, named, problem)
            if error is None:
                raise
        raise error

    return called  # type: ignore[return-value]


def _formatted(amount: _core.Quantity, form: str) -> str:
    """``f"{amount:>12}"``; formats of floats would round without a word and are refused."""
    if "." in form or form[-1:] in tuple("bcdeEfFgGnoxX%"):
        from scalepan.argument_errors import rounding_error  # only where one is wrong

        raise rounding_error(amount, f'the format "{form}"')
    return format(str(amount), form)


def _rounded(amount: _core.Quantity, places: int | None = None) -> _core.Quantity:
    from scalepan.argument_errors import rounding_error  # only where one is wrong

    raise rounding_error(amount, "round()")


def explain_core_methods() -> None:
    """Makes so the methods of the classes of the core, and what makes those that can be made."""
    _core.Quantity.__format__ = _formatted  # type: ignore[assignment]
    _core.Quantity.__round__ = _rounded  # type: ignore[method-assign, assignment]
    for kind in vars(_core).values():
        if isinstance(kind, type) and kind not in _LEFT_AS_THEY_ARE:
            explain_methods(kind, "instancemethod")
    for kind in (_core.Interval, _core.Formula, _core.Text):
        kind.__init__ = explained(kind.__init__)  # type: ignore[method-assign]


def explain_methods(kind: type, of: str = "function") -> None:
    """Makes so the methods of a class, those from inside aside."""
    for name, method in list(vars(kind).items()):
        is_open = not name.startswith("_") and name not in _FROM_INSIDE
        if is_open and type(method).__name__ == of:
            setattr(kind, name, explained(getattr(kind, name)))


def explain_functions(module: str, space: dict[str, Any], names: Iterable[str]) -> None:
    """Makes so the functions among the names of a module, under which they are then known."""
    for name in names:
        if isinstance(function := space[name], FunctionType | BuiltinFunctionType):
            made: Any = explained(function)
            space[name] = made
            made.__module__, made.__qualname__ = module, name  # so that a pickle finds it
