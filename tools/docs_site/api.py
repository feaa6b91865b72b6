"""The public names, read from the sources without importing them.

Classes of the compiled core are documented in its stub, which stands for a module here.
"""

from __future__ import annotations

import ast
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

ROOT = Path(__file__).resolve().parents[2]
PACKAGE = ROOT / "python" / "scalepan"

Definition = ast.FunctionDef | ast.ClassDef


@dataclass(frozen=True)
class Member:
    """A method, a property, or a field of a class."""

    name: str
    kind: str
    signature: str
    doc: str


@dataclass(frozen=True)
class Entry:
    """A public name."""

    name: str
    kind: str
    signature: str
    doc: str
    file: str
    members: list[Member] = field(default_factory=list)


def module_path(module: str) -> Path:
    """``scalepan.panels`` as a file, the compiled core as its stub."""
    inside = PACKAGE.joinpath(*module.split(".")[1:])
    choices = (inside.with_suffix(".pyi"), inside.with_suffix(".py"), inside / "__init__.py")
    return next(path for path in choices if path.is_file())


@cache
def _tree(path: Path) -> ast.Module:
    return ast.parse(path.read_text(encoding="utf-8"))


def public_names() -> list[str]:
    """``scalepan.__all__``."""
    for node in _tree(PACKAGE / "__init__.py").body:
        if isinstance(node, ast.Assign) and ast.unparse(node.targets[0]) == "__all__":
            names: list[str] = ast.literal_eval(node.value)
            return names
    raise LookupError("__all__")


def _imports(path: Path) -> dict[str, tuple[str, str]]:
    """Name to module and name there."""
    nodes = [node for node in ast.walk(_tree(path)) if isinstance(node, ast.ImportFrom)]
    return {
        alias.asname or alias.name: (node.module or "", alias.name)
        for node in nodes
        for alias in node.names
    }


def _definition(path: Path, name: str) -> tuple[Path, Definition]:
    for node in _tree(path).body:
        if isinstance(node, (ast.FunctionDef, ast.ClassDef)) and node.name == name:
            return path, node
    module, name = _imports(path)[name]
    return _definition(module_path(f"scalepan.{name}" if module == "scalepan" else module), name)


def entry(name: str, module: str = "") -> Entry:
    """A name of ``scalepan``, or of one of its modules."""
    path, node = _definition(module_path(f"scalepan.{module}" if module else "scalepan"), name)
    doc = ast.get_docstring(node) or ""
    file = path.relative_to(ROOT).as_posix()
    if isinstance(node, ast.FunctionDef):
        return Entry(name, "function", _signature(node), doc, file)
    members = _members(path, node)
    kind = "exception" if _is_error(path, node) else "class"
    made = next((one.signature for one in members if one.name == "__init__"), "")
    shown = [one for one in members if not one.name.startswith("_")]
    return Entry(name, kind, made.removesuffix(" -> None"), doc, file, shown)


def _bases(path: Path, node: ast.ClassDef) -> list[tuple[Path, ast.ClassDef]]:
    found = []
    for base in node.bases:
        name = ast.unparse(base).split("[")[0]
        module = path
        if "." in name:
            holder, name = name.rsplit(".", 1)
            module = module_path(f"scalepan.{holder}")
        try:
            where, one = _definition(module, name)
        except (KeyError, StopIteration):
            continue  # not ours: NamedTuple, Exception, list
        if isinstance(one, ast.ClassDef):
            found.append((where, one))
    return found


def _is_error(path: Path, node: ast.ClassDef) -> bool:
    return any(
        ast.unparse(base) == "Exception" for _, one in _family(path, node) for base in one.bases
    )


def _family(path: Path, node: ast.ClassDef) -> list[tuple[Path, ast.ClassDef]]:
    """The class and all it is made from, itself first."""
    above = [one for base in _bases(path, node) for one in _family(*base)]
    return [(path, node), *above]


def _members(path: Path, node: ast.ClassDef) -> list[Member]:
    """Its own first; of the same name the nearest."""
    found: dict[str, Member] = {}
    for _, one in _family(path, node):
        described = attributes(ast.get_docstring(one) or "")
        for part in one.body:
            member = _member(part, described)
            if member is not None:
                found.setdefault(member.name, member)
    return list(found.values())


def _member(node: ast.stmt, described: dict[str, str]) -> Member | None:
    if isinstance(node, ast.AnnAssign):
        name = ast.unparse(node.target)
        return Member(name, "attribute", ast.unparse(node.annotation), described.get(name, ""))
    if not isinstance(node, ast.FunctionDef):
        return None
    marks = {ast.unparse(one).split(".")[-1] for one in node.decorator_list}
    doc = ast.get_docstring(node) or ""
    if marks & {"property", "cached_property"}:
        returns = ast.unparse(node.returns) if node.returns else ""
        return Member(node.name, "property", returns, doc)
    return Member(node.name, "method", _signature(node, bound="staticmethod" not in marks), doc)


def _signature(node: ast.FunctionDef, *, bound: bool = False) -> str:
    arguments = node.args
    if bound:
        spared = ast.arguments(
            posonlyargs=arguments.posonlyargs[1:],
            args=arguments.args if arguments.posonlyargs else arguments.args[1:],
            vararg=arguments.vararg,
            kwonlyargs=arguments.kwonlyargs,
            kw_defaults=arguments.kw_defaults,
            kwarg=arguments.kwarg,
            defaults=arguments.defaults,
        )
        arguments = spared
    returns = f" -> {ast.unparse(node.returns)}" if node.returns else ""
    return f"({ast.unparse(arguments)}){returns}"


def sections(doc: str) -> tuple[str, dict[str, str]]:
    """A docstring's text, and its sections (``Args``, ``Raises``, ``Attributes``) by name."""
    text: list[str] = []
    named: dict[str, list[str]] = {}
    within = text
    for line in doc.splitlines():
        if line in ("Args:", "Raises:", "Attributes:"):
            within = named.setdefault(line[:-1], [])
        else:
            if within is not text and line and not line.startswith(" "):
                within = text
            within.append(line)
    return "\n".join(text).strip(), {name: "\n".join(part) for name, part in named.items()}


def items(section: str) -> dict[str, str]:
    """``name: what it is``, each with the lines that go on below it, further in."""
    found: dict[str, str] = {}
    last = ""
    for line in section.splitlines():
        inside = line.removeprefix("    ")
        head, parted, rest = inside.partition(": ")
        if inside and not inside.startswith(" ") and parted:
            last = head
            found[last] = rest
        elif inside.strip():
            # A head may be so long that what it is of stands on lines below it.
            last = last or inside.strip()
            found[last] = f"{found.get(last, '')} {inside.strip()}".strip()
    return found


def attributes(doc: str) -> dict[str, str]:
    """The described fields of a class, one by one."""
    described = items(sections(doc)[1].get("Attributes", ""))
    return {name: text for names, text in described.items() for name in names.split(", ")}
