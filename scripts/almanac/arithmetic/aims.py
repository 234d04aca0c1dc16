"""Between which times a lane group can be asked to hold a rep."""

from __future__ import annotations

from dataclasses import replace

from almanac.arithmetic.events import Rep
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import NoNumber


def quickest_and_easiest(pacer: Pacer, rep: Rep) -> tuple[Target | NoNumber, Target | NoNumber]:
    """The target of a rep, were all of it at the hardest effort, and were it at the easiest: the
    lane group's own tests say the times between which a coach can ask for one to hold. Each has no
    number where the rep has none at that effort.
    """
    words = tuple(pacer.scale.words)
    easiest, hardest = words[0], words[-1]
    return _all_at(pacer, rep, hardest), _all_at(pacer, rep, easiest)


def _all_at(pacer: Pacer, rep: Rep, word: str) -> Target | NoNumber:
    span = pacer.scale.even(word)
    even = replace(rep, pieces=tuple(replace(piece, effort=span) for piece in rep.pieces))
    return pacer.whole(even, pacer.pieces(even))
