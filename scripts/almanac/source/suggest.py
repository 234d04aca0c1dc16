"""Did you mean: the nearest of the words that would have been right."""

from __future__ import annotations

from collections.abc import Iterable
from difflib import get_close_matches


def nearest(word: str, choices: Iterable[str]) -> str | None:
    """The choice spelt most like ``word``, or None where none is near. Case and underscores do not count."""
    folded: dict[str, str] = {}
    for choice in choices:
        folded.setdefault(_fold(choice), choice)
    match = get_close_matches(_fold(word)[:80], folded, n=1, cutoff=0.6)
    return folded[match[0]] if match else None


def _fold(word: str) -> str:
    return word.casefold().replace("_", "-").replace(" ", "-")


def listed(words: Iterable[str], most: int = 12) -> str:
    """Words for a sentence: ``a, b or c``, cut after ``most``."""
    shown = list(words)
    if len(shown) > most:
        return ", ".join(shown[:most]) + f" and {len(shown) - most} more"
    return " or ".join(filter(None, [", ".join(shown[:-1]), shown[-1] if shown else ""]))
