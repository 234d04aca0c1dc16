"""Whether something gentle goes before fast work, and something easy follows the hardest."""

from __future__ import annotations

from collections.abc import Iterable
from collections.abc import Set as AbstractSet

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.events import Rep

Words = AbstractSet[str]  # the effort words that a rep holds something of
Told = tuple[int, bool] | None  # a rep that settles a rule, by its place, and whether it breaks it


def effort_words_of(rep: Rep, scale: EffortScale) -> Words:
    """The effort words that a rep holds something of."""
    return frozenset(word for piece in rep.pieces for word in scale.split(piece.effort))


def opening(reps: Iterable[Words], scale: EffortScale) -> Told:
    """The first rep that is fast or gentle: where it is fast, nothing gentle goes before fast work.
    None where there is none of either.
    """
    for place, words in enumerate(reps):
        if not words.isdisjoint(scale.fast):
            return place, True
        if not words.isdisjoint(scale.gentle):
            return place, False
    return None


def ending(from_last: Iterable[Words], scale: EffortScale) -> Told:
    """The first rep, from the last one backwards, that is at the easiest effort or at the hardest:
    where it is at the hardest alone, nothing easy follows. None where there is none of either.
    """
    for place, words in enumerate(from_last):
        if scale.easiest in words:
            return place, False
        if scale.hardest in words:
            return place, True
    return None
