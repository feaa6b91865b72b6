"""Prints what the benchmarks measure, beside their peers and goals, as one markdown table.

    python tests/bench/report.py build/bench/tests/bench/*_bench

Rows measured from Python come from `ROWS` of `python_rows.py`, `reading_rows.py` and
`curve_rows.py` beside this file: functions without arguments, each of which measures and returns
one `Row`.
"""

from __future__ import annotations

import argparse
import json
import os
import re
import subprocess
import sys
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from pathlib import Path

import curve_rows
import python_rows
import reading_rows
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
)

LIMITS = (Limit("cover/lookup", 20), Limit("cover/adversarial worst", 1e6))

# What Google Benchmark adds to a name.
SUFFIX = re.compile(r"/iterations:\d+|/manual_time")


def pin_to_one_core() -> None:
    """A run that moves between cores is measured with the caches of none of them."""
    if hasattr(os, "sched_setaffinity"):
        os.sched_setaffinity(0, {max(os.sched_getaffinity(0))})


def run_benchmarks(program: Path, repetitions: int) -> dict[str, float]:
    """Median nanoseconds of one operation, by benchmark name."""
    command = [
        str(program),
        "--benchmark_format=json",
        f"--benchmark_repetitions={repetitions}",
        "--benchmark_min_time=0.1",
        "--benchmark_enable_random_interleaving=true",
        "--benchmark_report_aggregates_only=true",
    ]
    done = subprocess.run(command, check=True, stdout=subprocess.PIPE, text=True)
    return medians(json.loads(done.stdout)["benchmarks"])


def medians(results: Iterable[dict[str, object]]) -> dict[str, float]:
    """By row and program; where a row has many instances also of its slowest one."""
    times: dict[str, float] = {}
    for result in results:
        if result.get("aggregate_name") != "median":
            continue
        row, program = SUFFIX.sub("", str(result["run_name"])).rsplit("/", 1)
        times[f"{row}/{program}"] = 1e9 / float(str(result["items_per_second"]))
        if "worst_us" in result:
            times[f"{row} worst/{program}"] = 1e3 * float(str(result["worst_us"]))
    return times


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
    for measure in [*python_rows.ROWS, *reading_rows.ROWS, *curve_rows.ROWS]:
        yield measure()


def time_text(nanoseconds: float) -> str:
    for size, unit in ((1e9, "s"), (1e6, "ms"), (1e3, "us")):
        if nanoseconds >= size:
            return f"{nanoseconds / size:.3g} {unit}"
    return f"{nanoseconds:.3g} ns"


def line_of(row: Row) -> str:
    cells = (
        row.name,
        time_text(row.ours),
        f"{row.peer_name} {time_text(row.peer)}",
        f"{row.ratio:.2f}",
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
    for program in arguments.programs:
        times |= run_benchmarks(program, arguments.repetitions)
    rows = [*rows_of(times), *rows_of_python()]
    print(table_of(rows))
    for row in rows:
        if row.note:
            print(f"\n{row.note}")


if __name__ == "__main__":
    main()
