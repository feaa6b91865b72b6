"""A progress bar for what takes over a second, where ``tqdm`` is installed and someone looks."""

from __future__ import annotations

import sys
from contextlib import contextmanager
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Callable, Iterator

_SECONDS_WITHOUT = 1


@contextmanager
def progress_bar(total: int, what: str) -> Iterator[Callable[[int], None] | None]:
    """Gives what is told how many of ``total`` are done; None where no bar would be seen.

    It is drawn on standard error, of a terminal or a notebook, and taken away at the end.
    """
    seen = sys.stderr.isatty() or "ipykernel" in sys.modules
    bar_of = _tqdm() if seen else None
    if bar_of is None:
        yield None
        return
    bar = bar_of(total=total, desc=what, delay=_SECONDS_WITHOUT, leave=False, file=sys.stderr)
    with bar:
        yield lambda done: bar.update(done - bar.n) and None


def _tqdm() -> type | None:
    try:
        from tqdm.std import tqdm  # a library that is not needed otherwise
    except ImportError:
        return None
    return tqdm
