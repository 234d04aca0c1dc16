"""A disk that fails, or a kill, at one of the writes of a change of many files."""

from __future__ import annotations

from typing import Any

import pytest

from almanac.publish import together


def failing_writes(patched: pytest.MonkeyPatch, after: int, error: BaseException) -> None:
    """Raise an error, once, after so many writes: first the journal's, then what is written beside
    each file, then each rename.
    """
    done = [0]

    def failing(really: Any) -> Any:
        def write(*given: Any) -> Any:
            done[0] += 1
            if done[0] == after + 1:
                raise error
            return really(*given)

        return write

    for name in ("replace_file", "written_beside", "put_in_place"):
        patched.setattr(together, name, failing(getattr(together, name)))
