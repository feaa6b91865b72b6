"""Changes that lead from one sheet to another."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan._core import Changes, Formula, Quantity
from scalepan.sheet_differences import alike, staying

if TYPE_CHECKING:
    from scalepan.sheet_content import Block, Content
    from scalepan.sheet_forms import Given, Value


def edits(old: Content, new: Content) -> Changes:
    """What differs, and no more. The verbs may refuse some of it."""
    changes = Changes()
    gone_or_other = [
        name for name, told in old.overrides.items() if not _same_override(told, new, name)
    ]
    for name in gone_or_other:
        changes.release(name)
    changes.extend(_built(old, new).ordered())
    _remove_gone(changes, old, new)
    for name, told in new.overrides.items():
        if name in gone_or_other or name not in old.overrides:
            changes.override(name, told["value"], **_told(told))
    return changes


def remade(old: Content, new: Changes) -> Changes:
    """All is taken away and made anew. Formulas are made to read nothing first, since they may
    read each other's totals."""
    changes = Changes()
    for name in old.overrides:
        changes.release(name)
    for name, given in old.cells.items():
        if isinstance(given, Formula):
            changes.define(name, "1")
    for name, block in old.blocks.items():
        _detach(changes, name, block)
    for name in old.order:
        changes.remove(name)
    changes.extend(new)
    return changes


def _detach(changes: Changes, name: str, block: Block) -> None:
    for column in block.formulas:
        changes.define(f"{name}.{column}", "1")
    for row, cells in block.rows.items():
        for column, given in cells.items():
            if isinstance(given, Formula):
                changes.define(f"{row}.{column}", _some(block.given[column]))


def _some(held: str) -> str:
    """A formula of what a column holds."""
    some = {"text": '""', "yes or no": "yes", "plain number": "1"}
    return some.get(held, f"1 {held}")


def _told(told: dict[str, Any]) -> dict[str, str]:
    return {key: told[key] for key in ("why", "who", "when")}


def _same_override(told: dict[str, Any], new: Content, name: str) -> bool:
    other = new.overrides.get(name)
    return (
        other is not None
        and alike((told["value"], ""), (other["value"], ""))
        and _told(told) == _told(other)
    )


def _built(old: Content, new: Content) -> Changes:
    """What is new or otherwise, in any order."""
    changes = Changes()
    for name, block in new.blocks.items():
        _change_block(changes, name, old.blocks.get(name), block)
    for name, given in new.cells.items():
        _put(changes, name, old.cells.get(name), given)
    return changes


def _put(changes: Changes, name: str, before: Given | None, given: Given) -> None:
    if before is not None and alike(before, given):
        return
    if isinstance(given, Formula):
        changes.define(name, str(given))
        return
    value, source = given
    was = before[0] if isinstance(before, tuple) else value
    if _dimension(was) == _dimension(value):
        changes.set(name, value, source=source)
    else:
        changes.redeclare(name, value, source=source)


def _dimension(value: Value) -> str:
    return value.dimension if isinstance(value, Quantity) else ""


def _change_block(changes: Changes, name: str, old: Block | None, new: Block) -> None:
    if old is None:
        changes.add_rows(name, given=new.given)
    for column, formula in new.formulas.items():
        if old is None or old.formulas.get(column) != formula:
            changes.define(f"{name}.{column}", formula)
    rows = {} if old is None else old.rows
    stay = staying(list(rows), list(new.rows))
    before = ""
    for row, cells in reversed(new.rows.items()):
        if row not in rows:
            changes.add_row(name, row, cells, before=before)
        elif row not in stay:
            changes.move_row(name, row, before=before)
        before = row
        for column, given in cells.items() if row in rows else ():
            _put(changes, f"{row}.{column}", rows[row].get(column), given)


def _remove_gone(changes: Changes, old: Content, new: Content) -> None:
    for name, block in old.blocks.items():
        for row in block.rows if name in new.blocks else ():
            if row not in new.blocks[name].rows:
                changes.remove_row(name, row)
    for name in reversed(old.order):
        if name not in new.cells and name not in new.blocks:
            changes.remove(name)
