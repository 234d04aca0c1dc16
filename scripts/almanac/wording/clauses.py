"""Texts cut into sentences and clauses, and the words that deny what stands beside them."""

from __future__ import annotations

import re

_SENTENCE = re.compile(r"[;:!?]|\.(?!\d)")
_CLAUSE = re.compile(r"[;:!?]|\.(?!\d)|, (?:and |but |then |or )?")
_DENIES = "no|not|never|nobody|none|without|instead of|rather than"


def sentences(text: str) -> list[str]:
    """A text cut where a sentence, or a half of one, ends."""
    return _SENTENCE.split(text)


def clauses(text: str) -> list[str]:
    """A text cut at commas too."""
    return _CLAUSE.split(text)


def denies(*more: str) -> re.Pattern[str]:
    """What a sentence or clause that denies holds, and ``more`` words, as patterns, that excuse."""
    return re.compile(rf"\b(?:{'|'.join((_DENIES, *more))})\b|n't\b", re.IGNORECASE)
