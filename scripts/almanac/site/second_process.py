"""Half of a work done by a second process, where the machine has a second processor."""

from __future__ import annotations

import contextlib
import multiprocessing
import os
import threading
from collections.abc import Callable
from multiprocessing.connection import Connection
from typing import TypeVar

T = TypeVar("T")


def begun(work: Callable[[], T]) -> Callable[[], T]:
    """Have ``work`` done beside what comes next. Returns what waits for its result, which is that
    of calling it here; it is called here where no second process can be had, or that one fails.

    The result must be able to be pickled, and ``work`` change nothing that is asked for later.
    """
    if not _is_possible():
        return work
    here, there = multiprocessing.Pipe(duplex=False)
    # A fork has all that was worked out so far; nothing is sent there.
    process = multiprocessing.get_context("fork").Process(target=_work, args=(work, there))
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


def _work(work: Callable[[], T], there: Connection) -> None:
    with contextlib.suppress(Exception):  # whoever waits does it again, and meets what was raised
        there.send(work())
    there.close()


def _is_possible() -> bool:
    """Whether a second process gains anything, and a fork is safe: no other thread is under way."""
    return (
        "fork" in multiprocessing.get_all_start_methods()
        and (os.cpu_count() or 1) > 1
        and threading.active_count() == 1
    )
