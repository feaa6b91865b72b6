"""Random edit scripts against a sheet that is worked out anew, in fractions, after every edit.

SCALEPAN_SHEET_SCRIPTS=100000 runs as many scripts.
"""

from __future__ import annotations

import os

import pytest
from sheet_script import Script

SCRIPTS = int(os.environ.get("SCALEPAN_SHEET_SCRIPTS", "2000"))
PARTS = 20


@pytest.mark.parametrize("part", range(PARTS))
def test_every_edit_runs_what_it_must_and_no_more(part: int) -> None:
    for seed in range(part * SCRIPTS // PARTS, (part + 1) * SCRIPTS // PARTS):
        try:
            Script(seed).run()
        except Exception as problem:
            problem.add_note(f"script {seed}")
            raise
