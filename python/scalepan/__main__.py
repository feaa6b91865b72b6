"""``python -m scalepan``."""

import sys

from scalepan.command_line.start import main

sys.exit(main())
