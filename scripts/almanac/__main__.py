"""``python -m almanac``."""

from almanac.commands.main import entry

entry()
