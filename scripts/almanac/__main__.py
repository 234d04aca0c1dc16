"""``python -m almanac``."""

import sys

from almanac.commands.main import main

sys.exit(main())
