"""A text weighed by its words as they stand, and by two that stand side by side.

A second opinion beside that of meanings (``weighing.py``): it knows nothing of what words mean, and
so errs elsewhere. What both think together errs less than either. The weights are those of a
logistic model: of the phrases that have one, the sum over the square root of how many they are.
"""

from __future__ import annotations

import re
from functools import lru_cache
from itertools import pairwise
from math import sqrt

from almanac.wording.folding import fold
from almanac.wording.weights import weights

FEW = 4
"""A text with fewer phrases than this is weighed as if it had as many: a word alone says little."""

_WORD = re.compile(r"[a-z]+|\d+")


@lru_cache(maxsize=8)  # a text is looked at, and then weighed
def pieces(text: str) -> tuple[str, ...]:
    """The words of a text as they stand, and its numbers."""
    return tuple(_WORD.findall(fold(text)))


def phrases(text: str) -> set[str]:
    """Every word of a text, and every two that stand side by side."""
    words = pieces(text)
    return {*words, *map(" ".join, pairwise(words))}


@lru_cache(maxsize=8)  # it decides whether the text is read at all, and counts when it is
def weight_of_phrases(text: str) -> float:
    """What the phrases of a text weigh together."""
    known = weights().phrases
    found = [known[phrase] for phrase in phrases(text) if phrase in known]
    return sum(found) / sqrt(max(len(found), FEW)) + weights().bounds["phrases"]
