"""Writes docs/scalepan.schema.json: the form of ``to_json`` and of the commands' ``--json``.

The types of attributes are those that the stubs of the core and the classes in Python declare, so
that the schema says what the package says.

    python tools/build_json_schema.py
"""

from __future__ import annotations

import ast
import inspect
import json
import sys
from pathlib import Path
from typing import Any

import scalepan
from scalepan import _core
from scalepan.command_line.documents import SCHEMA
from scalepan.json_writer import FORMS, SKIPPED, attributes
from scalepan.sheet_comparison import Comparison
from scalepan.sheet_studies import Sweep
from scalepan.shopping import Shopping

ROOT = Path(__file__).resolve().parents[1]
TARGET = ROOT / "docs" / "scalepan.schema.json"
ADDRESS = "https://json-schema.org/draft/2020-12/schema"

Schema = dict[str, Any]

# What is no data, or has no attribute.
NOT_WRITTEN = {"Changes", "Formula", "Text", "PrintedPages", "Thing"}
MORE = (
    *(_core.Stock, _core.StockItem, _core.Leftover, _core.DishNeed, _core.SweptCell),
    *(Shopping, Comparison, Sweep),
)
BY_NAME = {
    "str": {"type": "string"},
    "bool": {"type": "boolean"},
    "int": {"type": "integer"},
    "Fraction": {"$ref": "#/$defs/number"},
    "Quantity": {"$ref": "#/$defs/quantity"},
    "None": {"type": "null"},
}
VALUE: Schema = {"$ref": "#/$defs/value"}
PACKS: Schema = {"$ref": "#/$defs/packs"}


def of(**properties: Schema) -> Schema:
    """An object with all of these, and nothing else."""
    names = [name.rstrip("_") for name in properties]
    shapes = dict(zip(names, properties.values(), strict=True))
    return {
        "type": "object",
        "properties": shapes,
        "required": names,
        "additionalProperties": False,
    }


def listed(items: Schema) -> Schema:
    return {"type": "array", "items": items}


TEXT, FLAG, COUNT = BY_NAME["str"], BY_NAME["bool"], BY_NAME["int"]
NUMBER, AMOUNT = BY_NAME["Fraction"], BY_NAME["Quantity"]
MAYBE_AMOUNT: Schema = {"anyOf": [AMOUNT, {"type": "null"}]}
MAYBE_TEXT: Schema = {"type": ["string", "null"]}
TEXTS = listed(TEXT)
MONEY_BY_COST: Schema = of(till=AMOUNT, used=AMOUNT, thrown=AMOUNT, borne=AMOUNT)

SHARED: dict[str, Schema] = {
    "number": {
        "description": "An exact number in lowest terms, n or n/d.",
        "type": "string",
        "pattern": r"^-?[0-9]+(/[1-9][0-9]*)?$",
    },
    "quantity": {
        "description": "A number and its unit; told is for people, and may be rounded.",
        **of(value={"$ref": "#/$defs/number"}, unit=TEXT),
        "properties": {"value": {"$ref": "#/$defs/number"}, "unit": TEXT, "told": TEXT},
    },
    "value": {
        "description": "Anything else: no number is written with a point.",
        "anyOf": [
            {"type": ["string", "integer", "boolean", "null"]},
            {"type": "array", "items": VALUE},
            {
                "type": "object",
                "if": {"required": ["value", "unit"]},
                "then": {"$ref": "#/$defs/quantity"},
                "else": {"additionalProperties": VALUE},
            },
        ],
    },
    "packs": listed(of(count=COUNT, pack=TEXT)),
    "cautions": listed(of(text=TEXT, source=TEXT, lines=TEXTS)),
    "why tree": of(
        name=TEXT, figure=TEXT, how=TEXT, source=TEXT, parts=listed({"$ref": "#/$defs/why tree"})
    ),
    "recipe line": of(
        **dict.fromkeys(("id", "text", "told", "food", "heading", "stage", "rule"), TEXT),
        food_id=MAYBE_TEXT,
        takes_from=MAYBE_TEXT,
        amount=MAYBE_AMOUNT,
        exact=MAYBE_AMOUNT,
        optional=FLAG,
    ),
    "shopping item": {
        **of(
            item=TEXT,
            lines=TEXTS,
            need=AMOUNT,
            from_stock=AMOUNT,
            packs=PACKS,
            terms=TEXTS,
            price=AMOUNT,
            deposit=AMOUNT,
            leftover=AMOUNT,
            keeps=FLAG,
            keeps_days={"type": ["integer", "null"]},
            shops=TEXTS,
        ),
        "additionalProperties": {"type": "array"},
    },
    "sized recipe": {
        "type": "object",
        "properties": {
            "name": TEXT,
            **dict.fromkeys(("portions", "made", "factor", "serves"), NUMBER),
            "tested_at": listed(NUMBER),
            **dict.fromkeys(("batch", "batch_weight", "raw_batch"), MAYBE_AMOUNT),
            "lines": listed({"$ref": "#/$defs/recipe line"}),
            "method": listed(VALUE),
            "bases": listed(VALUE),
        },
        "required": ["name", "portions", "made", "factor", "serves", "lines", "method", "bases"],
        "additionalProperties": VALUE,
    },
}

ROW: Schema = {"type": "object", "additionalProperties": TEXT}
FIGURES: Schema = {"type": "object", "additionalProperties": VALUE}

# What inputs are made again from; it stands beside their figures.
INPUTS: dict[str, dict[str, Schema]] = {
    "offer": {"row": ROW},
    "stock item": {"row": ROW},
    "price book": {"offers": listed({"$ref": "#/$defs/offer"})},
    "stock": {"items": listed({"$ref": "#/$defs/stock item"})},
    "recipe": {"file": TEXT, "texts": ROW, "portions": NUMBER, "made": NUMBER, "factor": NUMBER},
    "dish": {"name": TEXT, "file": TEXT, "line": COUNT, "column": COUNT, "recipe": VALUE},
    "catalog": {
        "over": {"enum": ["bundled", "nothing"]},
        **dict.fromkeys(("foods", "names", "facts"), listed(ROW)),
        "preferred": TEXTS,
        "region": TEXT,
        "choices": ROW,
    },
    "measure set": {"name": TEXT, "dimension": TEXT, "measures": listed(VALUE)},
    "yield test": {"source": TEXT, "rows": listed(ROW)},
    "yield trial": {"rows": listed(ROW)},
    "sheet": {"text": TEXT, "figures": FIGURES},
    "costing": {"text": TEXT, "figures": FIGURES},
}

# What a key means wherever a document has it at its top.
KEYS: dict[str, Schema] = {
    "schema": {"const": SCHEMA},
    "recipe": {"anyOf": [{"$ref": "#/$defs/sized recipe"}, TEXT]},
    "shopping": listed({"$ref": "#/$defs/shopping item"}),
    "costs": {"anyOf": [MONEY_BY_COST, {"type": "array"}]},
    "per_portion": MONEY_BY_COST,
    "cautions": {"$ref": "#/$defs/cautions"},
    "to_check": TEXTS,
}


def main() -> None:
    TARGET.write_text(text(), encoding="utf-8")
    sys.stdout.write(f"{TARGET.relative_to(ROOT)}\n")


def text() -> str:
    """Of the file."""
    return json.dumps(schema(), ensure_ascii=False, indent=1) + "\n"


def schema() -> Schema:
    objects = {_spaced(kind.__name__): shape(kind) for kind in classes()}
    objects["list"] = _open(items=listed({"$ref": "#/$defs/object"}))
    objects["error"] = _open(**dict.fromkeys(("code", "message", "place", "hint"), TEXT))
    typed = [
        {
            "if": {"required": ["type"], "properties": {"type": {"const": name}}},
            "then": {"$ref": f"#/$defs/{name}"},
        }
        for name in sorted(objects)
    ]
    shared = {name: one for name, one in SHARED.items() if name not in objects}
    return {
        "$schema": ADDRESS,
        "$id": "scalepan.schema.json",
        "title": SCHEMA,
        "description": "What scalepan.to_json writes (with a type), and what commands print with "
        "--json (without one). docs/json.md explains it.",
        "type": "object",
        "required": ["schema"],
        "properties": {"schema": {"const": SCHEMA}},
        "if": {"required": ["type"]},
        "then": {"$ref": "#/$defs/object"},
        "else": {"$ref": "#/$defs/command"},
        "$defs": {
            "object": {
                "type": "object",
                "required": ["type"],
                "properties": {"type": {"enum": sorted(objects)}},
                "allOf": typed,
            },
            "command": {"type": "object", "properties": KEYS, "additionalProperties": VALUE},
            **shared,
            **objects,
        },
    }


def classes() -> list[type]:
    """Those of the package that are written."""
    public = [getattr(scalepan, name) for name in scalepan.__all__ if name not in NOT_WRITTEN]
    kinds = [one for one in public if isinstance(one, type) and not issubclass(one, Exception)]
    return [*kinds, *MORE]


def _spaced(name: str) -> str:
    parts = "".join(f" {c}" if c.isupper() else c for c in name).split()
    return " ".join(parts).lower()


def shape(kind: type) -> Schema:
    """Of an object: what its class declares, where it is written as the class says."""
    name = _spaced(kind.__name__)
    if kind is _core.Quantity:
        return {**_open(value=NUMBER, unit=TEXT), "description": _first_line(kind)}
    inputs = INPUTS.get(name, {})
    declared: dict[str, Schema] = {}
    if FORMS.get(kind, attributes) is attributes or "row" in inputs:
        declared = {
            key: _shape_of(key, one)
            for key, one in declarations(kind).items()
            if key not in SKIPPED
        }
    made = _open(**{**declared, **inputs})
    if not declared:
        known = {
            key: one for key, one in KEYS.items() if key not in (*made["properties"], "recipe")
        }
        made["properties"] |= known
    return {"description": _first_line(kind), **made}


def _open(**properties: Schema) -> Schema:
    """An object with all of these, and perhaps more."""
    return {
        "type": "object",
        "properties": {"schema": {"const": SCHEMA}, "type": TEXT, **properties},
        "required": list(properties),
        "additionalProperties": VALUE,
    }


def _first_line(kind: type) -> str:
    declared = _declared(kind)
    doc = ast.get_docstring(declared) if declared else None
    return (doc or "").split("\n")[0]


def declarations(kind: type) -> dict[str, ast.expr]:
    """Of fields and properties, those of bases first."""
    found: dict[str, ast.expr] = {}
    for base in reversed(kind.__mro__[:-1]):
        declared = _declared(base)
        for node in declared.body if declared else ():
            if isinstance(node, ast.AnnAssign) and isinstance(node.target, ast.Name):
                found[node.target.id] = node.annotation
            is_property = isinstance(node, ast.FunctionDef) and any(
                isinstance(one, ast.Name) and one.id == "property" for one in node.decorator_list
            )
            if is_property and isinstance(node, ast.FunctionDef) and node.returns:
                found[node.name] = node.returns
    return {name: one for name, one in found.items() if not name.startswith("_")}


STUBS = {
    node.name: node
    for node in ast.parse((ROOT / "python/scalepan/_core.pyi").read_text(encoding="utf-8")).body
    if isinstance(node, ast.ClassDef)
}


def _declared(kind: type) -> ast.ClassDef | None:
    if kind.__module__ == "scalepan._core":
        return STUBS.get(kind.__name__)
    if not kind.__module__.startswith("scalepan"):
        return None
    (node,) = ast.parse(inspect.getsource(kind)).body
    return node if isinstance(node, ast.ClassDef) else None


def _shape_of(name: str, declared: ast.expr) -> Schema:
    if name.startswith("packs"):
        return PACKS
    written = ast.unparse(declared)
    if written in BY_NAME:
        return BY_NAME[written]
    if isinstance(declared, ast.BinOp):
        sides = [_shape_of(name, one) for one in (declared.left, declared.right)]
        return {"anyOf": sides}
    if written.startswith(("list[", "tuple[", "Sequence[")) and isinstance(declared, ast.Subscript):
        inside = declared.slice
        if isinstance(inside, ast.Tuple):
            each = [one for one in inside.elts if not isinstance(one, ast.Constant)]
            if len(each) != 1:
                return listed(VALUE)
            inside = each[0]
        return listed(_shape_of(name, inside))
    return VALUE


if __name__ == "__main__":
    main()
