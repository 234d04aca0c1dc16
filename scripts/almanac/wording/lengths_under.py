"""Whether a step of work under water goes on to a wall or over a whole length."""

from __future__ import annotations

import re

from almanac.wording.clauses import sentences

_FAR = re.compile(
    r"\b(?:all the way|(?:far|other|next|opposite) (?:wall|end|side)|wall ahead|wall to wall"
    r"|end to end|(?:whole|full|entire) (?:length|width|pool)|across the pool"
    r"|to the (?:wall|end))\b",
    re.IGNORECASE,
)
_UP = re.compile(
    r"\b(?:surface|swim|swum|strokes?|flutter|rises?|heads? out|break(?:s|ing)? ?-?out|easy|walk"
    r"|come home|back to|watcher|watches|wait)\b",
    re.IGNORECASE,
)


def goes_on_under(step: str) -> bool:
    """Whether a sentence of a step names the far wall or a whole length, and nothing in it brings
    anybody to the surface.
    """
    return any(_FAR.search(one) and not _UP.search(one) for one in sentences(step))
