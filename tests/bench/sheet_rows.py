"""Rows of the sheet: edits and bytes a cell, beside alien-signals in node and doubles in C++.

The program of ours and the one in node run in turns; what counts is the median of the turns, each
of which is a median itself. Where there is no node, or `npm ci` was not run, its rows are left out.
"""

from __future__ import annotations

import json
import resource
import shutil
import statistics
import subprocess
import sys
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path

from programs import run_benchmarks
from row import Row

_TURNS = 3
_HERE = Path(__file__).resolve().parent
_SIGNALS = "alien_signals"
_OURS = "scalepan"


@dataclass(frozen=True)
class _Goal:
    row: str
    peer: str
    ratio: float
    unit: str = "ns"


_GOALS = (
    _Goal("sheet/chain", _SIGNALS, 1 / 2),
    _Goal("sheet/chain", "double_loop", 4.0),
    _Goal("sheet/chain", "double_engine", 4.0),
    _Goal("sheet/fan-out", _SIGNALS, 1 / 6),
    _Goal("sheet/rows", _SIGNALS, 1 / 30),
    _Goal("sheet/chain bytes", _SIGNALS, 1 / 2, "B"),
    _Goal("sheet/one price", "all_prices", 0.01),
)


def _deep_stack() -> None:
    """A chain is read by a recursion as deep: node's own limit is not the only one."""
    _, most = resource.getrlimit(resource.RLIMIT_STACK)
    resource.setrlimit(resource.RLIMIT_STACK, (most, most))


def _signals() -> dict[str, float]:
    """What the peer measures, by row and program; nothing where it is not there."""
    node = shutil.which("node")
    if node is None or not (_HERE / "node_modules" / "alien-signals").is_dir():
        return {}
    command = [node, "--expose-gc", "--stack-size=900000", str(_HERE / "sheet_peer.mjs")]
    done = subprocess.run(
        command, check=True, stdout=subprocess.PIPE, text=True, preexec_fn=_deep_stack
    )
    figures: dict[str, float] = json.loads(done.stdout)
    return {f"{row}/{_SIGNALS}": figure for row, figure in figures.items()}


def _medians(turns: list[dict[str, float]]) -> dict[str, float]:
    return {name: statistics.median(turn[name] for turn in turns) for name in turns[0]}


def _spread(turns: list[dict[str, float]], goal: _Goal) -> str:
    """How far the ratios of the turns lie apart."""
    ratios = [turn[f"{goal.row}/{_OURS}"] / turn[f"{goal.row}/{goal.peer}"] for turn in turns]
    return f"{goal.row} / {goal.peer}: {min(ratios):.3g} to {max(ratios):.3g}"


def _dependents_note(figures: dict[str, float]) -> str:
    of_200, of_400, of_1000 = (
        figures[f"sheet/one price{lines}/{_OURS}"]
        for lines in ("", " of 400 lines", " of 1000 lines")
    )
    return (
        f"A price that 200, 400 or 1000 of 40,000 lines read: {of_200 / 1e3:.3g}, "
        f"{of_400 / 1e3:.3g} and {of_1000 / 1e3:.3g} us an edit, so {of_400 / of_200:.2f} and "
        f"{of_1000 / of_200:.2f} times."
    )


def rows_of(program: Path, repetitions: int) -> Iterator[Row]:
    turns = [run_benchmarks(program, repetitions) | _signals() for _ in range(_TURNS)]
    figures = _medians(turns)
    goals = [goal for goal in _GOALS if f"{goal.row}/{goal.peer}" in figures]
    for goal in _GOALS:
        if goal not in goals:
            print(f"left out: {goal.row} beside {goal.peer}, not measured", file=sys.stderr)
    notes = {
        "sheet/chain bytes": (
            "A formula cell of the chain with its name and its error slot takes "
            f"{figures['sheet/chain bytes/scalepan']:.0f} B of the heap, with the history that "
            "takes it back; what every cell has in arrays is "
            f"{figures['sheet/chain own_bytes/scalepan']:.0f} B of them."
        ),
        "sheet/one price": _dependents_note(figures),
    }
    for goal in goals:
        ours, peer = figures[f"{goal.row}/{_OURS}"], figures[f"{goal.row}/{goal.peer}"]
        note = notes.get(goal.row, "")
        if goal == goals[-1]:
            spreads = "; ".join(_spread(turns, one) for one in goals)
            note += f"\n\nRatios of the turns of the sheet: {spreads}."
        yield Row(goal.row, ours, goal.peer, peer, goal.ratio, note, goal.unit)
