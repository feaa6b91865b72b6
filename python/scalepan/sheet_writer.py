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
        SheetError: ``sheet.control_character`` in a text; ``sheet.thing`` for the sheet of a
            costing.
        NumberError: ``number.too_many_digits``: more than could be read back.
    """
    content = Content(sheet.changes())
    _expect_no_things(content)
    lines = [f"scalepan_sheet = {VERSION}", *section("cells", _forms(content.cells))]
    for name, block in sorted(content.blocks.items()):
        lines += _block_lines(f"rows.{key_text(name)}", block)
    overrides = {name: _override(told) for name, told in sorted(content.overrides.items())}
    lines += section("overrides", overrides)
    return "\n".join([*lines, *variant_lines(variants)]) + "\n"


def variant_lines(variants: Mapping[str, Changes]) -> list[str]:
    """Their section, by name."""
    lines = ["", "[variants]"] if variants else []
    for name in sorted(variants):
        lines += [f"{key_text(name)} = [", *change_lines(variants[name]), "]"]
    return lines


def _expect_no_things(content: Content) -> None:
    for name, given in content.cells.items():
        if isinstance(given, tuple) and isinstance(given[0], _core.Thing):
            message = f"{name} holds {given[0].kind}, which the file of a sheet cannot hold"
            raise SheetError("sheet.thing", message, "save the costing: costing.save(path)")


def _block_lines(name: str, block: Block) -> list[str]:
    rows = {row: _forms(given) for row, given in block.rows.items()}
    lines = ["", f"[{name}.given]", *pairs(block.given)]
    return lines + section(f"{name}.formulas", block.formulas) + section(f"{name}.cells", rows)


def _forms(given: Mapping[str, Given]) -> Entries:
    return {name: given_form(one) for name, one in given.items()}


def _override(given: dict[str, Any]) -> Entries:
    told = {key: given[key] for key in ("why", "who", "when") if given[key]}
    return {**value_entries(given["value"]), **told}


def section(name: str, entries: Mapping[str, Any]) -> list[str]:
    """Nothing where there are no entries."""
    return ["", f"[{name}]", *pairs(entries)] if entries else []


def pairs(entries: Mapping[str, Any]) -> Iterable[str]:
    """``key = value`` of each. Raises SheetError (``sheet.control_character``)."""
    return (f"{key_text(key)} = {_written(value)}" for key, value in entries.items())


def change_lines(changes: Changes) -> list[str]:
    """The entries of a list of changes."""
    return [f"  {_written(change_entries(*change))}," for change in changes.listed()]


def key_text(name: str) -> str:
    """A key, in quotes where it needs them."""
    return name if _BARE_KEY.fullmatch(name) else _quoted(name)


def _written(value: Any) -> str:
    if isinstance(value, dict):
        inside = ", ".join(pairs(value))
        return f"{{ {inside} }}" if inside else "{}"
    if isinstance(value, bool):
        return "true" if value else "false"
    return value if isinstance(value, BareNumber) else _quoted(value)


def _quoted(text: str) -> str:
    if CONTROL.search(text):
        message = f"a text holds a control character: {text[:40]!r}"
        raise SheetError("sheet.control_character", message)
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'
