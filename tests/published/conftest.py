"""Property checks take the time they take; counts that tests record are printed at the end."""

from __future__ import annotations

from collections import Counter

import pytest
from hypothesis import settings

settings.register_profile("no_deadline", deadline=None)
settings.load_profile("no_deadline")

Counts = dict[str, Counter[str]]
COUNTS = pytest.StashKey[Counts]()


@pytest.fixture
def record_counts(pytestconfig: pytest.Config) -> Counts:
    """Counts by title, for the summary of the run."""
    return pytestconfig.stash.setdefault(COUNTS, {})


def pytest_terminal_summary(
    terminalreporter: pytest.TerminalReporter, config: pytest.Config
) -> None:
    for title, counts in config.stash.get(COUNTS, {}).items():
        terminalreporter.section(title)
        for group, count in counts.most_common():
            terminalreporter.write_line(f"{count:5} {group}")
