"""Long work says on a terminal what it is at, how far, and for how long."""

from __future__ import annotations

import time
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from typing import Protocol, TextIO

_STEP_S = 0.1
_CLEAR = "\r\x1b[K"


class Progress(Protocol):
    """Called with what is being done, how many are done, and how many there are (0: not known)."""

    def __call__(self, what: str, done: int = 0, of: int = 0, /) -> None: ...


def unseen(what: str, done: int = 0, of: int = 0, /) -> None:
    """Progress that nobody looks at."""


@contextmanager
def shown_on(stream: TextIO, clock: Callable[[], float] = time.monotonic) -> Iterator[Progress]:
    """Show progress in the last line of a terminal, and leave nothing of it there."""
    if not stream.isatty():
        yield unseen
        return
    started, shown_at, shown_what = clock(), 0.0, ""

    def told(what: str, done: int = 0, of: int = 0, /) -> None:
        nonlocal shown_at, shown_what
        now = clock()
        if what == shown_what and now - shown_at < _STEP_S:
            return
        shown_at, shown_what = now, what
        far = f" {done:,} of {of:,}" if of else ""
        stream.write(f"{_CLEAR}{what}{far}, {now - started:.0f} s")
        stream.flush()

    try:
        yield told
    finally:
        stream.write(_CLEAR)
        stream.flush()
