"""How a command can end: exit codes, the errors that lead to them, and the root folder. Imports
nothing that takes long, so that a command that has nothing to do is done at once.
"""

from __future__ import annotations

import os
import sys
import tempfile
import traceback
from datetime import UTC, date, datetime
from pathlib import Path

from almanac.journal import journal_of
from almanac.kinds import TOP_FOLDERS

FINE, ERRORS, WRONG_USAGE, FAULT, MACHINE = 0, 1, 2, 3, 4


_YEARS = 1900, 2199  # those of the schema of a day
EPOCH = "SOURCE_DATE_EPOCH"  # in the environment: seconds since 1970 that stand in for the clock


class UsageError(Exception):
    """The user asked for something that is not there; the message says what to do instead."""


class MachineError(Exception):
    """The machine will not let the command work: a disk, a permission, a port. The message is one
    sentence, with the path or the port.
    """


def root_of(given: Path) -> Path:
    """The folder that holds drills/ and plans/. Raises UsageError where it does not."""
    if not given.is_dir():
        raise UsageError(f"there is no folder {given}")
    if not any((given / name).is_dir() for name in TOP_FOLDERS):
        named = " nor ".join(f"{name}/" for name in TOP_FOLDERS)
        raise UsageError(
            f"{given.resolve()} holds neither {named}; go to the repository, or name it with --root"
        )
    if journal_of(given).is_file():
        _finish(given)
    return given


def in_terminal() -> bool:
    """Whether somebody sits there who can be asked."""
    return sys.stdin.isatty() and sys.stdout.isatty()


def _finish(root: Path) -> None:
    """Do what a killed command has left undone."""
    from almanac.publish.together import finish

    for file in finish(root):
        print(f"{file}: finished a change that was stopped", file=sys.stderr)


def keep_traceback() -> str:
    """Write the traceback of the exception that is being handled to a file. Returns its path, or
    the exception itself where no file can be had.
    """
    told = traceback.format_exc()
    try:
        with tempfile.NamedTemporaryFile(
            "w", prefix="almanac-", suffix=".log", delete=False, encoding="utf-8"
        ) as file:
            file.write(told)
    except OSError:  # no disk takes it: its last line must do
        return told.strip().rpartition("\n")[2]
    return file.name


def demand_explanations() -> None:
    """A site explains each check in the words that stand beside it in the program. Raises
    UsageError where Python was told to leave those out.
    """
    if sys.flags.optimize > 1:
        raise UsageError(
            "python -OO takes the explanations out of the program, and a site is nothing without "
            "them: run it without -OO"
        )


def today() -> date:
    """The day of the environment's ``SOURCE_DATE_EPOCH``, else the clock's."""
    epoch = os.environ.get(EPOCH)
    if not epoch:
        return date.today()
    try:
        day = datetime.fromtimestamp(int(epoch), UTC).date()
    except (ValueError, OverflowError, OSError):
        raise UsageError(f"{EPOCH} is no number of seconds: {epoch[:60]}") from None
    return in_reach(day)


def in_reach(day: date) -> date:
    """A day that everything can be seen from, as entries may name it: from 1900 to 2199, so that
    weeks before and after it are days too. Raises UsageError.
    """
    if not _YEARS[0] <= day.year <= _YEARS[1]:
        raise UsageError(f"{day} is out of reach: name a day from {_YEARS[0]} to {_YEARS[1]}")
    return day
