"""Prints what the benchmarks measure, beside their peers and goals, as one markdown table.

    python tests/bench/report.py build/bench/tests/bench/*_bench

Rows measured from Python come from `ROWS` of `python_rows.py`, `reading_rows.py`, `curve_rows.py`
and `building_rows.py` beside this file: functions without arguments, each of which measures and
returns one `Row`. The program `sheet_bench` runs in turns with its peer, by `sheet_rows.py`.
"""

from __future__ import annotations

import argparse
import os
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

import building_rows
import curve_rows
import python_rows
import reading_rows
import sheet_rows
from programs import run_benchmarks
from row import Row

REPETITIONS = 9
OURS = "scalepan"


@dataclass(frozen=True)
class Goal:
    row: str
    peer: str
    ratio: float


@dataclass(frozen=True)
class Limit:
    """A time, where no peer does the same."""

    row: str
    nanoseconds: float


GOALS = (
    Goal("add/typ", "boost_int64", 1.1),
    Goal("mul/typ", "boost_int64", 1.4),
    Goal("add/typ", "flint", 0.55),
    Goal("mul/typ", "flint", 0.55),
    Goal("add/typ", "gmp", 0.55),
    Goal("mul/typ", "gmp", 0.55),
    Goal("cover/all needs", "glpk", 0.4),
    Goal("cover/adversarial", "glpk", 0.25),
    Goal("column/sum of products", "double_16_sums", 2.0),
    Goal("column/sum of products", "flint", 0.01),
)

LIMITS = (Limit("cover/lookup", 20), Limit("cover/adversarial worst", 1e6))


def pin_to_one_core() -> None:
    """A run that moves between cores is measured with the caches of none of them."""
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {max(os.sched_getaffinity(0))})


def rows_of(times: dict[str, float]) -> Iterator[Row]:
    for goal in GOALS:
        ours = times.get(f"{goal.row}/{OURS}")
        peer = times.get(f"{goal.row}/{goal.peer}")
        if ours is None or peer is None:
            print(f"left out: {goal.row} beside {goal.peer}, not measured", file=sys.stderr)
        else:
            yield Row(goal.row, ours, goal.peer, peer, goal.ratio)
    for limit in LIMITS:
        if f"{limit.row}/{OURS}" in times:
            yield Row(limit.row, times[f"{limit.row}/{OURS}"], "limit", limit.nanoseconds, 1.0)


def rows_of_python() -> Iterator[Row]:
    for measure in [*python_rows.ROWS, *reading_rows.ROWS, *curve_rows.ROWS, *building_rows.ROWS]:
        yield measure()


def figure_text(figure: float, unit: str) -> str:
    return time_text(figure) if unit == "ns" else f"{figure:.3g} {unit}"


def time_text(nanoseconds: float) -> str:
    for size, unit in ((1e9, "s"), (1e6, "ms"), (1e3, "us")):
        if nanoseconds >= size:
            return f"{nanoseconds / size:.3g} {unit}"
    return f"{nanoseconds:.3g} ns"


def line_of(row: Row) -> str:
    cells = (
        row.name,
        figure_text(row.ours, row.unit),
        f"{row.peer_name} {figure_text(row.peer, row.unit)}",
        f"{row.ratio:.2g}" if row.ratio < 0.1 else f"{row.ratio:.2f}",
        f"<= {row.goal:.3g}",
        "yes" if row.met else "MISSED",
    )
    return "| " + " | ".join(cells) + " |"


def table_of(rows: Iterable[Row]) -> str:
    head = ("| row | ours | peer | ratio | goal | met |", "|---|---|---|---|---|---|")
    return "\n".join((*head, *map(line_of, rows)))


def main() -> None:
    parser = argparse.ArgumentParser(description=(__doc__ or "").splitlines()[0])
    parser.add_argument("programs", nargs="*", type=Path, help="benchmark programs to run")
    parser.add_argument("--repetitions", type=int, default=REPETITIONS)
    arguments = parser.parse_args()
    pin_to_one_core()
    times: dict[str, float] = {}
    sheets: list[Row] = []
    for program in arguments.programs:
        if program.stem == "sheet_bench":
            sheets += sheet_rows.rows_of(program, arguments.repetitions)
        else:
            times |= run_benchmarks(program, arguments.repetitions)
    rows = [*rows_of(times), *sheets, *rows_of_python()]
    print(table_of(rows))
    for row in rows:
        if row.note:
            print(f"\n{row.note}")


if __name__ == "__main__":
    main()
