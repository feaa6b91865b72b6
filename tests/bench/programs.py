"""Runs benchmark programs, and reads what they print."""

from __future__ import annotations

import json
import re
import subprocess
from collections.abc import Iterable
from pathlib import Path

# What Google Benchmark adds to a name.
_SUFFIX = re.compile(r"/iterations:\d+|/manual_time|/real_time")


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
    return _medians(json.loads(done.stdout)["benchmarks"])


def _medians(results: Iterable[dict[str, object]]) -> dict[str, float]:
    """By row and program; where a row has many instances also of its slowest one."""
    figures: dict[str, float] = {}
    for result in results:
        if result.get("aggregate_name") != "median":
            continue
        row, program = _SUFFIX.sub("", str(result["run_name"])).rsplit("/", 1)
        figures[f"{row}/{program}"] = 1e9 / float(str(result["items_per_second"]))
        if "worst_us" in result:
            figures[f"{row} worst/{program}"] = 1e3 * float(str(result["worst_us"]))
        for counter in ("bytes", "own_bytes"):
            if counter in result:
                figures[f"{row} {counter}/{program}"] = float(str(result[counter]))
    return figures
