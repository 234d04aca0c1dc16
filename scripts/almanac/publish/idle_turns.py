"""What turns leave behind: a lock for each folder that was ever changed, those of folders that are
long gone too. None of them says anything once its turn is over.
"""

from __future__ import annotations

import time
from pathlib import Path

from almanac.publish.turn import LOCK, is_there, take

_IDLE_S = 24 * 60 * 60.0


def sweep(among: Path) -> None:
    """Remove each folder of ``among`` that holds a lock and nothing else, which nobody has taken
    for a day and nobody holds. One that notes a change that was cut short stays.
    """
    for lock in among.glob(f"*/{LOCK}"):
        try:
            if time.time() - lock.stat().st_mtime > _IDLE_S and [*lock.parent.iterdir()] == [lock]:
                _remove(lock)
        except OSError:
            continue  # somebody has it, or it went meanwhile


def _remove(lock: Path) -> None:
    with lock.open("r+", encoding="utf-8") as file:
        take(file, waits=False)
        if is_there(lock, file):
            lock.unlink()
            lock.parent.rmdir()
