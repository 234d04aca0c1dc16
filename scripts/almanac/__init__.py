"""Deck Almanac: a swimming club's drill catalogue as code.

Data flows one way through these layers, and each imports only the layers before it::

    units, findings -> source -> model -> arithmetic -> checks -> figures -> pages -> commands
"""

import os
import signal
import sys
from types import FrameType

STOPPED = 130  # the exit code of a command that somebody ends by Ctrl-C


def stop(_signal: int, _frame: FrameType | None) -> None:
    """End the process with one line, while what a command needs is still being imported."""
    os.write(2, b"almanac: stopped\n")
    os._exit(STOPPED)


if os.path.basename(sys.argv[0]) in ("almanac", "-m"):  # noqa: PTH119 (nothing more is imported yet)
    signal.signal(signal.SIGINT, stop)

__version__ = "0.1.0"
