"""Runs a build and says how far it is; all that it prints is shown only where it fails.

python tools/build_progress.py pip wheel --verbose ...
"""

from __future__ import annotations

import re
import subprocess
import sys
from typing import TYPE_CHECKING

if TYPE_CHECKING:
    from collections.abc import Sequence

# As ninja numbers its steps.
_STEP = re.compile(r"\[(\d+)/(\d+)\]")
_EVERY = 20


def main(command: Sequence[str]) -> int:
    """The status of the command."""
    printed = []
    with subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.STDOUT, text=True
    ) as run:
        for line in run.stdout or ():
            printed.append(line)
            step = _STEP.search(line)
            if step and (int(step[1]) % _EVERY == 0 or step[1] == step[2]):
                print(f"  {step[1]} of {step[2]} steps", flush=True)
    if run.returncode:
        print("".join(printed), end="", file=sys.stderr)
    return run.returncode


if __name__ == "__main__":
    sys.exit(main(sys.argv[1:]))
