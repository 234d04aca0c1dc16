"""Locks that turns leave are swept away once they are idle, and never from under a turn."""

from __future__ import annotations

import os
import subprocess
import sys
import time
from pathlib import Path

from almanac.journal import journal_of, notes_of
from almanac.publish.idle_turns import sweep
from almanac.publish.together import change
from almanac.publish.turn import LOCK, turn

HOLD = """
import sys
from pathlib import Path
from almanac.publish.turn import turn
with turn(Path(sys.argv[1])):
    print("held", flush=True)
    sys.stdin.read()
"""


def idle(folder: Path) -> Path:
    with turn(folder):
        pass
    long_ago = time.time() - 2 * 24 * 60 * 60
    os.utime(folder / LOCK, (long_ago, long_ago))
    return folder


def test_what_nobody_has_taken_for_a_day_goes_and_nothing_else(tmp_path: Path) -> None:
    gone, noted, held, fresh = (tmp_path / name for name in ("gone", "noted", "held", "fresh"))
    idle(gone)
    idle(noted)
    (noted / "change.json").write_text("{}", "utf-8")
    with turn(fresh):
        pass
    holder = subprocess.Popen(
        [sys.executable, "-c", HOLD, held],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert holder.stdout is not None and holder.stdout.readline() == "held\n"
    os.utime(held / LOCK, (0, 0))
    sweep(tmp_path)
    assert sorted(path.name for path in tmp_path.iterdir()) == ["fresh", "held", "noted"]
    holder.communicate("")
    sweep(tmp_path)
    assert not held.exists()
    with turn(gone):  # what was swept away is taken again like any other
        assert (gone / LOCK).is_file()


def test_a_lock_that_went_while_somebody_waited_for_it_is_taken_anew(tmp_path: Path) -> None:
    work = tmp_path / "work"
    holder = subprocess.Popen(
        [sys.executable, "-c", HOLD, work],
        stdin=subprocess.PIPE,
        stdout=subprocess.PIPE,
        text=True,
    )
    assert holder.stdout is not None and holder.stdout.readline() == "held\n"

    def wait_for(_: str) -> None:
        (work / LOCK).unlink()  # as a sweep does it in the moment between
        work.rmdir()
        holder.communicate("")

    with turn(work, wait_for):
        assert (work / LOCK).read_text("utf-8").startswith(f"{os.getpid()} ")


def test_a_change_of_one_folder_sweeps_away_the_locks_of_others(tmp_path: Path) -> None:
    other = idle(notes_of(tmp_path / "long gone"))
    root = tmp_path / "club"
    (root / "drills").mkdir(parents=True)
    change(root, {"drills/a.yml": "title: A\n"}, {})
    assert (root / "drills/a.yml").read_text("utf-8") == "title: A\n"
    assert not other.exists() and not journal_of(root).exists()
