"""``python -m scalepan``."""

import sys

from scalepan_command.start import main

sys.exit(main())
