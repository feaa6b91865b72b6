"""What a command gives."""

from __future__ import annotations

from collections.abc import Iterable
from typing import Any

# A document for --json, the lines of text that stand for it otherwise, and if need be the status.
Output = tuple[dict[str, Any], Iterable[str]] | tuple[dict[str, Any], Iterable[str], int]
