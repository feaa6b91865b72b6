"""What a command gives."""

from __future__ import annotations

from typing import Any

# A document for --json, and the lines of text that stand for it otherwise.
Output = tuple[dict[str, Any], list[str]]
