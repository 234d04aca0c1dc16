"""A line of an entry behind a '#', which makes all of what is told around it: found by trying."""

from __future__ import annotations

import re

from almanac.source.syntax.slips import Recognised, excerpt
from almanac.source.syntax.tried import Trial

_HASHED = re.compile(r"( *)#+( ?)( *)((?:- +)?[a-z_]+:(?: .*)?)$")
_ABOVE, _BELOW = 40, 20  # lines around the one that was told


def hashed_line(number: int, trial: Trial) -> Recognised | None:
    """What is to tell of the line without which the lines around do not fit; None where there is
    none.
    """
    lines = trial.lines
    for at in range(min(number + _BELOW, len(lines) - 1), max(-1, number - _ABOVE), -1):
        found = _HASHED.match(lines[at])
        if not found:
            continue
        before, blank, more, text = found.groups()
        for indent in dict.fromkeys(
            (before + more, before + blank + more, f"{before}{more} {blank}")
        ):
            if trial.would_do([*lines[:at], indent + text, *lines[at + 1 :]], at=at):
                message = (
                    "'#' makes this line a comment, and the lines around do not fit without it"
                )
                hint = f"take the '#' away: {excerpt(text)}"
                return (at, len(before)), message, hint
    return None
