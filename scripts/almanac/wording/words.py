"""The words by which coaches speak of air, depth, effort and harm, by what they mean.

``hold|s|ing`` stands for hold, holds and holding; ``come_up`` for two words that are read as one. A
word may have several meanings: a pattern takes the one that it looks for.
"""

from __future__ import annotations

from almanac.wording import (
    words_of_air,
    words_of_bounds,
    words_of_doing,
    words_of_holding,
    words_of_joints,
    words_of_water,
)

LOOSE = {**words_of_holding.WORDS, **words_of_bounds.WORDS}
"""Meanings whose phrases stay several words: the last of them has the meaning besides its own."""

MEANINGS = {
    **words_of_air.WORDS,
    **words_of_water.WORDS,
    **words_of_doing.WORDS,
    **words_of_joints.WORDS,
    **LOOSE,
}
