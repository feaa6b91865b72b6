"""The types of all that is public, as mypy has them: aliases and what is inferred are resolved."""

from __future__ import annotations

from collections.abc import Callable, Iterator

from mypy.build import BuildResult, build
from mypy.main import process_options
from mypy.modulefinder import BuildSource
from mypy.nodes import Decorator, FuncBase, Node, TypeAlias, TypeInfo, Var
from mypy.type_visitor import TypeQuery
from mypy.types import AnyType, Instance, NoneType, TupleType, Type, TypeVarType


class _ClassesIn(TypeQuery[set[TypeInfo]]):
    def strategy(self, items: list[set[TypeInfo]]) -> set[TypeInfo]:
        return set[TypeInfo]().union(*items)

    def visit_instance(self, t: Instance) -> set[TypeInfo]:
        return {t.type} | super().visit_instance(t)


class _HoldsAny(TypeQuery[bool]):
    def strategy(self, items: list[bool]) -> bool:
        return any(items)

    def visit_any(self, t: AnyType) -> bool:
        return True

    def visit_type_var(self, t: TypeVarType) -> bool:
        return False

    def visit_tuple_type(self, t: TupleType) -> bool:
        return self.query_types(t.items)  # what it falls back to is a tuple of anything


def built(probe: str) -> BuildResult:
    """What `mypy` makes of a text, by the settings of the folder it is run in."""
    _, options = process_options([])
    return build([BuildSource(None, "probe", probe)], options)


def public_types(
    result: BuildResult, module: str, names: list[str], package: str = "scalepan."
) -> Iterator[tuple[str, Type]]:
    """Of names of a module, and of every class of the package that these give or take.

    What a constructor takes is not followed: some are called by the package alone.
    """

    def is_ours(info: TypeInfo) -> bool:
        return info.fullname.startswith(package)

    waiting = [result.files[module].names[name].node for name in names]
    seen: set[Node] = set()
    while waiting:
        node = waiting.pop()
        if node is None or node in seen:
            continue
        seen.add(node)
        for name, found in _members(node, is_ours):
            yield name, found
            if not name.endswith(".__init__"):
                waiting += filter(is_ours, found.accept(_ClassesIn()))


def names_with_any(
    result: BuildResult, module: str, names: list[str], package: str = "scalepan."
) -> list[str]:
    """Those whose type leaves something unsaid."""
    found = public_types(result, module, names, package)
    return sorted({name for name, one in found if one.accept(_HoldsAny())})


def _members(node: Node, is_ours: Callable[[TypeInfo], bool]) -> Iterator[tuple[str, Type]]:
    if not isinstance(node, TypeInfo):
        yield getattr(node, "fullname", ""), _type_of(node)
        return
    for info in filter(is_ours, node.mro):
        for name, symbol in info.names.items():
            is_private = name.startswith("_") and not name.endswith("__")
            is_private |= name == "__annotations__"
            if symbol.node is not None and not is_private and not symbol.plugin_generated:
                yield f"{info.fullname}.{name}", _type_of(symbol.node)


def _type_of(node: Node) -> Type:
    if isinstance(node, Decorator):
        node = node.var
    if isinstance(node, TypeAlias):
        return node.target
    if isinstance(node, Var | FuncBase) and node.type is not None:
        return node.type
    return NoneType()
