"""What ``scalepan read`` prints: a line of a recipe, taken apart."""

from __future__ import annotations

from typing import TYPE_CHECKING, Any

from scalepan import _core
from scalepan.command_line.tables import wrapped

if TYPE_CHECKING:
    from collections.abc import Iterable

    from scalepan._core import WrittenLine


def line_section(line: WrittenLine, width: int) -> list[str]:
    """One thing a row, and no row for what the line does not say."""
    if line.kind != "ingredient":
        return [kind_text(line)]
    return [text for name, told in line_rows(line) for text in wrapped(f"{name:9}{told}", width)]


def kind_text(line: WrittenLine) -> str:
    """Of a line that is no ingredient."""
    return f"{line.kind}: {line.heading}" if line.heading else line.kind


def line_rows(line: WrittenLine) -> list[tuple[str, str]]:
    """What the line says, each under its name."""
    rows = [
        ("under", line.heading),
        ("amount", _amount(line)),
        ("of", line.food),
        ("part", line.part),
        ("state", _listed(line.states)),
        ("stage", line.stage or ""),
        ("or", _listed(line.alternatives)),
        ("with", _listed(line.beside)),
        ("notes", _listed(line.notes)),
        ("rule", line.rule),
        ("optional", "yes" if line.optional else ""),
    ]
    return [(name, text) for name, text in rows if text]


def line_document(line: WrittenLine) -> dict[str, Any]:
    """Everything, for ``--json``."""
    return {
        "kind": line.kind,
        "heading": line.heading,
        "low": None if line.low is None else str(line.low),
        "high": None if line.high is None else str(line.high),
        "unit": line.unit,
        "about": line.about,
        "vague": line.vague,
        "fill": line.fill,
        "size": line.size,
        "container_size": line.container_size,
        "second_measures": line.second_measures,
        "foods": line.foods,
        "part": line.part,
        "states": line.states,
        "stage": line.stage,
        "alternatives": line.alternatives,
        "beside": line.beside,
        "notes": line.notes,
        "to_taste": line.to_taste,
        "optional": line.optional,
        "rule": line.rule,
    }


def _amount(line: WrittenLine) -> str:
    words = [_bounds(line), line.fill, line.size, line.unit]
    text = line.vague or " ".join(word for word in words if word) or "none stated"
    if line.container_size:
        text += f" of {line.container_size}"
    if line.second_measures:
        text += f" ({_listed(line.second_measures)})"
    return text


def _bounds(line: WrittenLine) -> str:
    low = "" if line.low is None else _core.exact_text(line.low)
    high = "" if line.high is None else _core.exact_text(line.high)
    if low == high:
        return f"about {low}" if line.about else low
    if low and high:
        return f"{low} to {high}"
    return f"{low} or more" if low else f"at most {high}"


def _listed(texts: Iterable[str]) -> str:
    return "; ".join(texts)
