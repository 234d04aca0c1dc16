"""Numbers as texts write them, in words or in figures."""

from __future__ import annotations

WORDS = {
    "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10, "twelve": 12, "fifteen": 15, "twenty": 20, "thirty": 30, "forty": 40,
    "forty-five": 45, "fifty": 50, "sixty": 60, "ninety": 90,
}  # fmt: skip
"""Whole numbers from two on."""
NUMBER = rf"(?:\d{{1,3}}|{'|'.join(sorted(WORDS, key=len, reverse=True))})"
"""What one of them looks like, for patterns that do not heed capitals."""


def number_of(text: str) -> int:
    """The number that a text which looks like one says."""
    return WORDS.get(text.lower()) or int(text)
