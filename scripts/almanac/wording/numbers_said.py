"""Whole numbers as texts write them, in words or in figures."""

from __future__ import annotations

_WORDS = {
    "two": 2, "three": 3, "four": 4, "five": 5, "six": 6, "seven": 7, "eight": 8, "nine": 9,
    "ten": 10, "twelve": 12, "fifteen": 15, "twenty": 20, "thirty": 30, "forty": 40, "fifty": 50,
}  # fmt: skip
NUMBER = rf"(?:\d{{1,3}}|{'|'.join(_WORDS)})"
"""What a number looks like, for patterns that do not heed capitals."""


def number_of(text: str) -> int:
    """The number that a text which looks like one says."""
    return _WORDS.get(text.lower()) or int(text)
