"""``python -m scalepan``."""

import sys

from scalepan.command_line.main import main

sys.exit(main())
