"""Numbers as texts write them, in words or in figures."""

from __future__ import annotations

import re

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


_ONES = ("one", "two", "three", "four", "five", "six", "seven", "eight", "nine")
_TEENS = ("ten", "eleven", "twelve", "thirteen", "fourteen", "fifteen", "sixteen", "seventeen",
          "eighteen", "nineteen")  # fmt: skip
_TENS = ("twenty", "thirty", "forty", "fifty", "sixty", "seventy", "eighty", "ninety")
_VALUES = {
    "": 0, "a": 1,
    **{word: value for value, word in enumerate((*_ONES, *_TEENS), start=1)},
    **{word: 10 * value for value, word in enumerate(_TENS, start=2)},
}  # fmt: skip
_ONE = "|".join(_ONES)
_SPOKEN = re.compile(
    rf"(?:(a|{_ONE})[ -]thousand)?(?:(?:^| )(a|{_ONE})[ -]hundred)?"
    rf"(?:(?:^| )(?:and )?(?:({'|'.join(_TEENS)})|({'|'.join(_TENS)})(?:[ -]({_ONE}))?|({_ONE})))?"
)
_TIMES = {"once": 1, "twice": 2, "hundred": 100, "half a dozen": 6, "a dozen": 12, "two dozen": 24}
_BEHIND = re.compile(
    r" (?:m|met(?:re|er)s?|yards?|feet|percent|beats?|secs?|seconds?|mins?|minutes?|hours?|days?"
    r"|weeks?|times?|laps?|lengths?|widths?|reps?|rounds?|lanes?|swimmers?|strokes?|kicks?|breaths?|adults?|coach(?:es)?)"
    r"(?: (?:each|in all|(?:a|per|every) [a-z]+))?| (?:a|per|every) [a-z]+"
)
"""What may stand behind a number without changing it: its unit, or what is counted."""


def number_said(text: str) -> int:
    """The whole number that a text says in words, to its end but for a unit: ``two hundred and
    fifty metres``; 0 where it says none, or more than that.
    """
    said = re.sub(r"\s+", " ", text.strip().lower())
    if said in _TIMES:
        return _TIMES[said]
    if behind := re.search(rf"(?:{_BEHIND.pattern})$", said):
        said = said[: behind.start()]
    if said in _TIMES:
        return _TIMES[said]
    found = _SPOKEN.fullmatch(said)
    if not found:
        return 0
    thousands, hundreds, *rest = (_VALUES[word or ""] for word in found.groups())
    return 1000 * thousands + 100 * hundreds + sum(rest)
