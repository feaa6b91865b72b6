"""The catalogue of errors: one page a code, from the tables in docs/errors.

A table has the cause, what to do, and an example that fails beside one that is mended. What is
shown of them is what they print when the site is made, so no message stands twice.
"""

from __future__ import annotations

import ast
import contextlib
import importlib
import io
import json
import os
import re
import shlex
import sys
import tempfile
import tomllib
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from docs_site.api import ROOT

SOURCES = ROOT / "docs" / "errors"
TABLES = SOURCES / "tables_of_all.toml"
KEYS = {"cause", "repair", "fails", "mended", "before", "files", "file", "head", "call"}
KEYS |= {"wrong", "right", "guards"}
LONGEST = 12
COMMAND = "$ scalepan "


@dataclass(frozen=True)
class Example:
    """One code with its example. ``files`` are written before it; ``before`` runs first.

    ``guards`` says where the error is seen instead, if it never reaches a caller.
    """

    code: str
    cause: str
    repair: str
    fails: str
    mended: str
    before: str
    guards: str
    files: dict[str, str]
    mended_files: dict[str, str]

    @property
    def subject(self) -> str:
        return self.code.split(".", maxsplit=1)[0]


@dataclass(frozen=True)
class Shown:
    """What running something showed: a text, and the code and class of its error."""

    text: str
    code: str = ""
    kind: str = ""


def subjects() -> dict[str, str]:
    """Each subject and what its errors are about."""
    return {path.stem: str(_table(path)["about"]) for path in _sources()}


def examples() -> list[Example]:
    """All of them, by code."""
    found = [one for path in _sources() for one in _examples(path.stem, _table(path))]
    return sorted([*found, *_of_tables()], key=lambda one: one.code)


def _sources() -> list[Path]:
    return sorted(path for path in SOURCES.glob("*.toml") if path != TABLES)


def _table(path: Path) -> dict[str, Any]:
    return tomllib.loads(path.read_text(encoding="utf-8"))


def _examples(subject: str, table: dict[str, Any]) -> Iterator[Example]:
    shared = table.get("shared", {})
    for name, row in table.items():
        if name not in ("about", "shared"):
            yield _example(f"{subject}.{name}", {**shared, **row})


def _of_tables() -> Iterator[Example]:
    """The codes of the readers that tables of all subjects share."""
    table = _table(TABLES)
    for subject, words in table["subjects"].items():
        words.setdefault("more", "")
        for code, row in table["of_files"].items():
            filled = {key: _filled(text, words) for key, text in row.items()}
            said = {"file": words["file"], "call": words["read"], **filled}
            yield _example(f"{subject}.{code}", said)
        for code, row in table["of_rows"].items():
            if "rows" in words:
                filled = {key: _filled(text, words) for key, text in row.items()}
                yield _example(f"{subject}.{code}", filled)


def _filled(text: str, words: dict[str, str]) -> str:
    for word, put in words.items():
        text = text.replace(f"<{word}>", put)
    return text


def _example(code: str, said: dict[str, Any]) -> Example:
    """``call`` is what reads ``wrong`` and ``right``: the texts of a file, or texts in the call."""
    if extra := set(said) - KEYS:
        raise KeyError(f"{code}: {extra}")
    files, mended_files = said.get("files", {}), said.get("files", {})
    fails, mended = said.get("fails", ""), said.get("mended", "")
    if "wrong" in said and "file" in said:
        name, head = said["file"], said.get("head", "")
        files = {**files, name: head + said["wrong"]}
        mended_files = {**files, name: head + said["right"]}
        fails, mended = fails or said["call"], mended or said["call"]
    elif "wrong" in said:
        fails = said["call"].replace("{}", json.dumps(said["wrong"], ensure_ascii=False))
        mended = said["call"].replace("{}", json.dumps(said["right"], ensure_ascii=False))
    return Example(
        code=code,
        cause=said["cause"].strip(),
        repair=said["repair"].strip(),
        fails=fails.strip(),
        mended=mended.strip(),
        before=said.get("before", "").strip(),
        guards=said.get("guards", ""),
        files=files,
        mended_files=mended_files,
    )


def run(example: Example, mended: bool = False) -> Shown:
    """Runs it in a folder of its own, with its files."""
    code = example.mended if mended else example.fails
    with tempfile.TemporaryDirectory() as folder, _inside(folder):
        for name, text in (example.mended_files if mended else example.files).items():
            Path(name).write_text(text, encoding="utf-8")
        if code.startswith(COMMAND):
            exec(example.before, {})
            return _command(code.removeprefix(COMMAND))
        return _python(example.before, code)


@contextlib.contextmanager
def _inside(folder: str) -> Iterator[None]:
    """Works in the folder; modules that the example hides and its environment are brought back."""
    modules, environment = dict(sys.modules), dict(os.environ)
    os.environ["COLUMNS"] = "80"
    try:
        with contextlib.chdir(folder):
            yield
    finally:
        hidden = [name for name in modules if sys.modules.get(name) is None]
        sys.modules.update({name: modules[name] for name in hidden})
        os.environ.clear()
        os.environ.update(environment)


def _python(before: str, code: str) -> Shown:
    import scalepan

    names: dict[str, object] = {"scalepan": scalepan}
    exec(before, names)
    try:
        value = _value(code, names)
    except scalepan.Error as error:
        return Shown(str(error), error.code, type(error).__name__)
    return Shown("" if value is None else _cut(str(value)))


def _value(code: str, names: dict[str, object]) -> object:
    """Of the last line where it is an expression."""
    body = ast.parse(code).body
    last = body.pop() if isinstance(body[-1], ast.Expr) else None
    exec(compile(ast.Module(body, []), "<example>", "exec"), names)
    if not isinstance(last, ast.Expr):
        return None
    return eval(compile(ast.Expression(last.value), "<example>", "eval"), names)


def command_line() -> Callable[[list[str]], int]:
    """What the command `scalepan` runs, as pyproject.toml names it."""
    project = _table(ROOT / "pyproject.toml")["project"]
    module, _, name = project["scripts"]["scalepan"].partition(":")
    found: Callable[[list[str]], int] = getattr(importlib.import_module(module), name)
    return found


def _command(line: str) -> Shown:
    words = shlex.split(line)
    status, printed = _printed(words)
    if not status:
        return Shown(_cut(printed))
    found = re.search(r'"code": "([a-z_.]+)"', _printed([*words, "--json"])[1])
    from scalepan.errors import make_error

    code = found[1] if found else ""
    return Shown(printed.rstrip(), code, type(make_error(code, "")).__name__)


def _printed(words: list[str]) -> tuple[object, str]:
    """The exit status, and what was printed and told on standard error."""
    out, err = io.TextIOWrapper(io.BytesIO()), io.TextIOWrapper(io.BytesIO())
    with contextlib.redirect_stdout(out), contextlib.redirect_stderr(err):
        try:
            status: object = command_line()(words)
        except SystemExit as end:  # of a command line that is wrong
            status = end.code
    return status, _text(out) + _text(err)


def _text(stream: io.TextIOWrapper) -> str:
    stream.flush()
    buffer = stream.buffer
    assert isinstance(buffer, io.BytesIO)
    return buffer.getvalue().decode("utf-8")


def _cut(text: str) -> str:
    lines = text.rstrip().splitlines()
    return "\n".join(lines if len(lines) <= LONGEST else [*lines[: LONGEST - 1], "..."])
