"""How many times somebody turns over in a row, by the words of a text."""

from __future__ import annotations

import re

from almanac.wording.numbers_said import NUMBER, number_of

STARTS = frozenset({"some", "tumb", "flip", "roll"})
"""Starts of words, as acts have them, of which one stands where somebody turns over."""
_TURNS = r"(?:somersaults|tumbles|flips|(?:forward|backward|head) rolls)"
_COUNTED = re.compile(rf"\b({NUMBER}) (?:\w+ ){{0,2}}{_TURNS}\b", re.IGNORECASE)
_ENDLESS = re.compile(
    rf"\b(?:{_TURNS}|(?:somersault|tumble|flip)s?\b)(?: \w+){{0,4}}? (?:non-?stop"
    r"|one after (?:the other|another)|without (?:a |any )?(?:stop|pause|break)|until|as many)"
    rf"|\bas many {_TURNS}",
    re.IGNORECASE,
)
_A_ROW = 1000  # without a number there is no end to it


def somersaults_in(text: str) -> int:
    """The most somersaults that a text has somebody do in a row, as far as it says; else 0."""
    counts = [number_of(found[1]) for found in _COUNTED.finditer(text)]
    return max([*counts, _A_ROW if _ENDLESS.search(text) else 0])
