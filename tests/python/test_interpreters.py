"""Several interpreters in one process: each loads the core anew, with a lock of its own."""

from __future__ import annotations

import subprocess
import sys
from fractions import Fraction

# By whichever module this Python has for it; only the first is for everyone's use.
PROGRAM = """
text = '''
import scalepan
sheet = scalepan.Sheet()
sheet.set("milk", scalepan.quantity("1 1/2 cup", measures="us"))
sheet.define("more", "milk * 2")
print(sheet.value("more").to("mL").value)
'''
try:
    from concurrent import interpreters
    run = lambda: interpreters.create().exec(text)
except ImportError:
    try:
        import _interpreters as low
    except ImportError:
        import _xxsubinterpreters as low
    def run():
        failed = low.run_string(low.create(), text)
        if failed is not None:
            raise SystemExit(str(failed))
import scalepan
for _ in range(3):
    run()
"""


def test_the_core_is_loaded_in_further_interpreters_or_says_that_it_cannot() -> None:
    done = subprocess.run(
        [sys.executable, "-I", "-c", PROGRAM], capture_output=True, text=True, timeout=120
    )
    if sys.version_info < (3, 12):
        needed = "scalepan needs Python 3.12 or newer to be loaded in a sub-interpreter"
        assert needed in done.stderr
        assert done.returncode == 1
    else:
        # A US cup is 1/16 of the gallon of 231 cubic inches (NIST Handbook 44, appendix C).
        cups = 3 * Fraction(231, 16) * Fraction("2.54") ** 3
        assert (done.stdout, done.stderr) == (f"{cups}\n" * 3, "")
