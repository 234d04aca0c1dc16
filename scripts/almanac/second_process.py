"""Half of a work done by a second process, where the machine has a second processor."""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import threading
import time
from collections.abc import Callable, Hashable, Iterator, Sequence
from multiprocessing.connection import Connection
from typing import TypeVar

T = TypeVar("T")
K = TypeVar("K", bound=Hashable)

_WORTH_IT = 48  # things; for fewer a second process takes longer than it saves
_LOOK_S = 0.05
_MOST_TURNS = 2_000  # of two bytes each: a pipe takes them all at once


def begun(work: Callable[[], T]) -> Callable[[], T]:
    """Have ``work`` done beside what comes next. Returns what waits for its result, which is that
    of calling it here; it is called here where no second process can be had, or that one fails.

    The result must be able to be pickled, and ``work`` change nothing that is asked for later.
    """
    if not is_possible():
        return work
    here, there = multiprocessing.Pipe(duplex=False)
    # A fork has all that was worked out so far; nothing is sent there.
    process = multiprocessing.get_context("fork").Process(
        target=_work, args=(work, here, there, os.getpid()), daemon=True
    )
    try:
        process.start()
    except OSError:  # no room for one
        return work
    there.close()

    def result() -> T:
        try:
            found: T = here.recv()
        except (EOFError, OSError):
            return work()
        finally:
            process.join()
        return found

    return result


def shared(items: Sequence[K], work: Callable[[K], T]) -> dict[K, T]:
    """What ``work`` makes of each item, half of it by a second process where that is worth it and
    can be had. Results must be able to be pickled.
    """
    if not is_worth(len(items)):
        return {item: work(item) for item in items}
    turns = in_turns(items)

    def share() -> dict[K, T]:
        return {item: work(item) for item in turns}

    beside = begun(share)
    found = share()
    found |= beside()
    # What a failed process had come for is lost with it.
    return {item: found[item] if item in found else work(item) for item in items}


def is_worth(things: int) -> bool:
    """Whether so many things are enough to begin a second process for."""
    return things >= _WORTH_IT


def in_turns(items: Sequence[T]) -> Iterator[T]:
    """Things of which each is given once, to whichever process comes for the next: one that was
    begun meanwhile comes for the same ones.

    What a process has come for is gone with it, should it fail. The turns stand in a pipe, which
    nobody can leave locked.
    """
    groups = _groups(items)
    return (item for turn in _turns(len(groups)) for item in groups[turn])


def from_both_ends(
    items: Sequence[T],
) -> tuple[Iterator[tuple[int, T]], Iterator[tuple[int, T]]]:
    """As ``in_turns``, for one process from the first on and for the other from the last back, so
    that each has things that are like one another; each with how many were given before it, of
    thousands about how many.
    """
    groups = _groups(items)
    turns = _turns(len(groups))
    ahead, back = groups, [group[::-1] for group in reversed(groups)]
    return _numbered(turns, ahead), _numbered(turns, back)


def _groups(items: Sequence[T]) -> list[Sequence[T]]:
    size = -(-len(items) // _MOST_TURNS) or 1
    return [items[start : start + size] for start in range(0, len(items), size)]


def _numbered(turns: Iterator[int], groups: Sequence[Sequence[T]]) -> Iterator[tuple[int, T]]:
    """Group after group as there are turns left, by whichever process."""
    for own, turn in enumerate(turns):
        for at, item in enumerate(groups[own]):
            yield turn * len(groups[0]) + at, item


def _turns(number: int) -> Iterator[int]:
    """The numbers below this, each given to whichever process comes for the next."""
    reading, writing = os.pipe()
    with os.fdopen(writing, "wb", buffering=0) as pipe:
        pipe.write(b"".join(turn.to_bytes(2) for turn in range(number)))
    return _taken(reading)


def _taken(reading: int) -> Iterator[int]:
    with os.fdopen(reading, "rb", buffering=0) as pipe:
        while turn := pipe.read(2):
            yield int.from_bytes(turn)


def _work(work: Callable[[], T], here: Connection, there: Connection, first: int) -> None:
    # Its own copy of the reading end would keep it waiting for a reader that has gone; and who is
    # its parent now may be another already.
    here.close()
    threading.Thread(target=_end_with, args=(first,), daemon=True).start()
    # Whoever waits does it again, and meets what was raised; of a key press both are told.
    with contextlib.suppress(Exception, KeyboardInterrupt):
        there.send(work())
    there.close()


def _end_with(first: int) -> None:
    """End this process when the first has ended, as one that is killed does without a word: a build
    that comes after it would find somebody else writing.
    """
    while os.getppid() == first:
        time.sleep(_LOOK_S)
    os._exit(1)


def is_possible() -> bool:
    """Whether a second process gains anything, and a fork is safe: no other thread is under way."""
    return (
        "fork" in multiprocessing.get_all_start_methods()
        and (os.cpu_count() or 1) > 1
        and threading.active_count() == 1
    )
