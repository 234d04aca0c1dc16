"""Did you mean: the nearest of the words that would have been right."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, choices: Iterable[str], cutoff: float = 0.7) -> str | None:
    """The choice spelt most like ``word``, or the one that it begins; None where none is near.

    Case and underscores do not count.
    ``cutoff`` is how near it must be, 0 to 1 (difflib's ratio).
    """
    folded: dict[str, str] = {}
    for choice in choices:
        folded.setdefault(_fold(choice), choice)
    written = _fold(word)[:80]
    match = get_close_matches(written, folded, n=1, cutoff=cutoff)
    begun = [choice for choice in folded if len(written) > 2 and choice.startswith(written)]
    near = match or (begun if len(begun) == 1 else [])
    return folded[near[0]] if near else None


def _fold(word: str) -> str:
    return word.casefold().replace("_", "-").replace(" ", "-")


def listed(words: Iterable[str], most: int = 12) -> str:
    """Words for a sentence: ``a, b or c``, cut after ``most``."""
    shown = list(words)
    if len(shown) > most:
        return ", ".join(shown[:most]) + f" and {len(shown) - most} more"
    return " or ".join(filter(None, [", ".join(shown[:-1]), shown[-1] if shown else ""]))
