#!/usr/bin/env python3
"""Build the bundled food data from the USDA SR28 extracts and the hand-made selection.

Reads   data-sources/sr28/weights.csv, data-sources/sr28/refuse.csv,
        data-sources/foods_selection.csv, data-sources/second_figures.csv,
        data-sources/can_sizes.csv
Writes  python/scalepan/data/foods.csv, names.csv, facts.csv

    build_food_data.py            write the three files
    build_food_data.py --check    write nothing, fail if a file differs from what would be written
    build_food_data.py --refuse-from FOOD_DES.txt
                                  remake data-sources/sr28/refuse.csv from the SR28 release file

Every figure is kept as exact text or as a ratio of integers; no float occurs.
"""

from __future__ import annotations

import argparse
import sys
from collections.abc import Sequence
from pathlib import Path

from food_data.can_sizes import can_facts
from food_data.facts import build_facts
from food_data.second_figures import read_second_figures
from food_data.selection import build_foods, build_names, read_selection
from food_data.sr28 import REFUSE, Release, refuse_text
from food_data.tables import DataError, csv_text
from scalepan.foods import FACT_COLUMNS, FOOD_COLUMNS, NAME_COLUMNS

ROOT = Path(__file__).resolve().parents[1]
OUT = Path("python/scalepan/data")


def build(root: Path) -> dict[Path, str]:
    """The three files by path below the root, as they should read."""
    release = Release(root)
    rows = read_selection(root)
    facts = build_facts(release, rows)
    facts += can_facts(root, rows)
    facts += read_second_figures(root, facts)
    return {
        OUT / "foods.csv": csv_text(FOOD_COLUMNS, build_foods(rows)),
        OUT / "names.csv": csv_text(NAME_COLUMNS, build_names(rows)),
        OUT / "facts.csv": csv_text(FACT_COLUMNS, facts),
    }


def write_files(root: Path, files: dict[Path, str]) -> None:
    for path, text in files.items():
        target = root / path
        target.parent.mkdir(parents=True, exist_ok=True)
        target.write_text(text, encoding="utf-8", newline="\n")
        print(f"{path}: {text.count(chr(10)) - 1} rows")


def differing(root: Path, files: dict[Path, str]) -> list[Path]:
    stale = []
    for path, text in files.items():
        target = root / path
        if not target.is_file() or target.read_bytes() != text.encode("utf-8"):
            stale.append(path)
    return stale


def parse_arguments(arguments: Sequence[str] | None) -> argparse.Namespace:
    parser = argparse.ArgumentParser(description="Build the bundled food data.")
    parser.add_argument("--root", type=Path, default=ROOT, help="the repository")
    parser.add_argument("--check", action="store_true", help="fail where a file is out of date")
    parser.add_argument("--refuse-from", type=Path, metavar="FOOD_DES.txt", dest="food_des")
    return parser.parse_args(arguments)


def main(arguments: Sequence[str] | None = None) -> int:
    options = parse_arguments(arguments)
    root: Path = options.root
    try:
        if options.food_des is not None:
            write_files(root, {REFUSE: refuse_text(options.food_des)})
            return 0
        files = build(root)
    except (DataError, OSError) as error:
        print(f"error: {error}", file=sys.stderr)
        return 1
    if not options.check:
        write_files(root, files)
        return 0
    stale = differing(root, files)
    for path in stale:
        print(f"{path}: out of date, run tools/build_food_data.py", file=sys.stderr)
    return 1 if stale else 0


if __name__ == "__main__":
    sys.exit(main())
