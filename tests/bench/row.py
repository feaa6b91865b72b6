"""One measured comparison, as every benchmark reports it."""

from __future__ import annotations

from dataclasses import dataclass


@dataclass(frozen=True)
class Row:
    """Two figures of one run; `goal` is the largest ratio wanted."""

    name: str
    ours: float
    peer_name: str
    peer: float
    goal: float
    note: str = ""  # to stand below the table
    unit: str = "ns"  # or "B"

    @property
    def ratio(self) -> float:
        return self.ours / self.peer

    @property
    def met(self) -> bool:
        return self.ratio <= self.goal
