"""Where effort words make no scale: gaps in their ratings, shares that do not rise."""

from __future__ import annotations

import itertools
from collections.abc import Mapping

from almanac.model.policy import Word


def scale_gaps(words: Mapping[str, Word]) -> list[str]:
    """The words at which a scale fails to run from 0 to 10 without gap or overlap; empty where it
    is sound.

    A word without a rating or a share fails too.
    """
    failing: list[str] = []
    reached: float | None = 0.0  # None after a word whose end is not known
    for name, word in words.items():
        rating = word.rating
        is_next = (
            rating is not None and reached in (None, rating.least) and rating.most > rating.least
        )
        if not is_next or word.share_of_best is None:
            failing.append(name)
        reached = rating.most if rating else None
    if not failing and reached != 10:
        failing.append(list(words)[-1])
    return failing


def misplaced_shares(words: Mapping[str, Word]) -> list[str]:
    """The words that would not be faster than the word before them at some distance, for some
    level: a share that is not above its, or a reference distance that is longer.
    """
    levels = {"", *(level for word in words.values() for level in word.by_level)}
    failing = []
    for (_, easier), (name, word) in itertools.pairwise(words.items()):
        pairs = [
            (
                easier.by_level.get(level, easier.share_of_best),
                word.by_level.get(level, word.share_of_best),
            )
            for level in levels
        ]
        rises = all(a is None or b is None or a < b for a, b in pairs)
        if not rises or (word.reference_m or 0) > (easier.reference_m or 0):
            failing.append(name)
    return failing
