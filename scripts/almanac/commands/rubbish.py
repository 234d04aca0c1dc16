"""Python's look for rubbish, put off while a catalogue is worked out."""

from __future__ import annotations

import gc
from collections.abc import Iterator
from contextlib import contextmanager


@contextmanager
def rubbish_left() -> Iterator[None]:
    """Nothing looks for rubbish: nearly all that a check or a build makes stays until its end, and
    each look goes through all of it, in both processes, which then share no memory any more. What
    was made counts as old afterwards, so that no look follows at once.
    """
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.freeze()
            gc.unfreeze()  # comes back as old: see above
            gc.enable()
