"""A sheet as the text of its file.

The text is the same for all sheets that hold the same: cells stand by name, rows in their order.
"""

from __future__ import annotations

import re
from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.errors import SheetError
from scalepan.sheet_content import Content
from scalepan.sheet_forms import (
    BareNumber,
    Entries,
    change_entries,
    given_form,
    value_entries,
)

if TYPE_CHECKING:
    from collections.abc import Iterable, Mapping

    from scalepan._core import Changes
    from scalepan.sheet_content import Block
    from scalepan.sheet_forms import Given

VERSION = 1
CONTROL = re.compile("[\\x00-\\x1f\\x7f-\\x9f\\u2028\\u2029]")

_BARE_KEY = re.compile(r"[A-Za-z0-9_-]+")


def sheet_text(sheet: _core.Sheet, variants: Mapping[str, Changes]) -> str:
    """The text of the file.

    Raises:
        SheetError: ``sheet.control_character`` in a text.
        NumberError: ``number.too_many_digits``: more than could be read back.
    """
    content = Content(sheet.changes())
    lines = [f"scalepan_sheet = {VERSION}", *_section("cells", _forms(content.cells))]
    for name, block in sorted(content.blocks.items()):
        lines += _block_lines(f"rows.{_key(name)}", block)
    overrides = {name: _override(told) for name, told in sorted(content.overrides.items())}
    lines += _section("overrides", overrides)
    if variants:
        lines += ["", "[variants]"]
        for name in sorted(variants):
            lines += [f"{_key(name)} = [", *_change_lines(variants[name]), "]"]
    return "\n".join(lines) + "\n"


def _block_lines(name: str, block: Block) -> list[str]:
    rows = {row: _forms(given) for row, given in block.rows.items()}
    lines = ["", f"[{name}.given]", *_pairs(block.given)]
    return lines + _section(f"{name}.formulas", block.formulas) + _section(f"{name}.cells", rows)


def _forms(given: Mapping[str, Given]) -> Entries:
    return {name: given_form(one) for name, one in given.items()}


def _override(given: dict[str, Any]) -> Entries:
    told = {key: given[key] for key in ("why", "who", "when") if given[key]}
    return {**value_entries(given["value"]), **told}


def _section(name: str, entries: Mapping[str, Any]) -> list[str]:
    return ["", f"[{name}]", *_pairs(entries)] if entries else []


def _pairs(entries: Mapping[str, Any]) -> Iterable[str]:
    return (f"{_key(key)} = {_written(value)}" for key, value in entries.items())


def _change_lines(changes: Changes) -> list[str]:
    return [f"  {_written(change_entries(*change))}," for change in changes.listed()]


def _key(name: str) -> str:
    return name if _BARE_KEY.fullmatch(name) else _quoted(name)


def _written(value: Any) -> str:
    if isinstance(value, dict):
        pairs = ", ".join(_pairs(value))
        return f"{{ {pairs} }}" if pairs else "{}"
    if isinstance(value, bool):
        return "true" if value else "false"
    return value if isinstance(value, BareNumber) else _quoted(value)


def _quoted(text: str) -> str:
    if CONTROL.search(text):
        message = f"a text holds a control character: {text[:40]!r}"
        raise SheetError("sheet.control_character", message)
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
