"""One build at a time below a root, by a lock of the operating system: in whatever way a build
ends, the lock ends with it.
"""

from __future__ import annotations

import contextlib
import errno
import os
import secrets
import sys
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path
from typing import TextIO

LOCK = "lock"
_UNLOCKABLE = {errno.ENOLCK, errno.ENOTSUP, errno.ENOSYS}  # a file system that knows no locks

if sys.platform == "win32":
    import msvcrt

    _BEYOND = 1 << 20  # a byte that is locked cannot be read: one behind all that is written

    def take(file: TextIO, waits: bool) -> None:
        """Lock an open file. Raises BlockingIOError where another has it, unless it waits."""
        file.seek(_BEYOND)
        while True:
            try:
                msvcrt.locking(file.fileno(), msvcrt.LK_LOCK if waits else msvcrt.LK_NBLCK, 1)
            except OSError:  # it waits ten seconds
                if not waits:
                    raise BlockingIOError from None
            else:
                return
else:
    import fcntl

    def take(file: TextIO, waits: bool) -> None:
        """Lock an open file. Raises BlockingIOError where another has it, unless it waits."""
        # Not flock: that one would go on in a process that was forked off, when this one is killed.
        try:
            fcntl.lockf(file, fcntl.LOCK_EX | (0 if waits else fcntl.LOCK_NB))
        except OSError as problem:
            if problem.errno not in _UNLOCKABLE:
                raise


@dataclass(frozen=True)
class Turn:
    """A turn to build: a name of its own, and that of the turn before it ("" before the first)."""

    own: str
    before: str


@contextlib.contextmanager
def turn(work: Path, wait_for: Callable[[str], None] = lambda _: None) -> Iterator[Turn]:
    """Be the one that builds in ``work`` until the end of the block. Where another process is at
    it, ``wait_for`` is told which, and then this one waits. Not to be nested.

    Raises OSError where ``work`` cannot be written to.
    """
    path = work / LOCK
    with _held(path, wait_for) as file:
        taken = Turn(secrets.token_hex(8), _name(file))
        try:
            # Past the file's buffer, which would be written once more where it is closed.
            os.ftruncate(file.fileno(), 0)
            os.lseek(file.fileno(), 0, os.SEEK_SET)
            os.write(file.fileno(), f"{os.getpid()} {taken.own}\n".encode())
        except OSError as problem:
            problem.filename = str(path)
            raise
        yield taken


def _held(path: Path, wait_for: Callable[[str], None]) -> TextIO:
    """The file of a lock, open and locked: the one that is there now, since what is idle is swept
    away (``idle_turns.py``).
    """
    while True:
        path.parent.mkdir(parents=True, exist_ok=True)
        try:
            # Not by mode w, which would empty what the one who builds has written there.
            number = os.open(path, os.O_RDWR | os.O_CREAT, 0o644)
        except FileNotFoundError:
            if path.is_symlink():
                raise
            continue  # its folder went just now
        file = os.fdopen(number, "r+", encoding="utf-8")
        try:
            try:
                take(file, waits=False)
            except (BlockingIOError, PermissionError):
                wait_for(_who(file))
                take(file, waits=True)
            if is_there(path, file):
                return file
        except BaseException:
            file.close()
            raise
        file.close()


def is_there(path: Path, file: TextIO) -> bool:
    """Whether a file that is open still is what stands at its path."""
    try:
        return os.path.samestat(os.fstat(file.fileno()), path.stat())
    except FileNotFoundError:
        return False


def _name(file: TextIO) -> str:
    return _written(file)[1]


def _who(file: TextIO) -> str:
    process, _ = _written(file)
    return f"process {process}" if process.isdecimal() else "another process"


def _written(file: TextIO) -> tuple[str, str]:
    """The process and the name of the turn that is or was the last; "" where nothing is written."""
    file.seek(0)
    try:
        process, name = file.read(100).split()
    except (OSError, ValueError):
        return "", ""
    return process, name
