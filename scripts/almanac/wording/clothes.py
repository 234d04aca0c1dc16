"""Swimming in clothes, by the words of a text."""

from __future__ import annotations

import re

from almanac.wording.clauses import denies, sentences

STARTS = frozenset(
    {"clot", "jean", "jump", "pyja", "coat", "boot", "trac", "hood", "swea", "trou", "dres"}
)
"""Starts of words, as acts have them, of which one stands where somebody is in clothes."""
_CLOTHES = (
    r"(?:clothes|jeans|jumpers?|pyjamas|(?:over)?coats?|boots|tracksuits?|hood(?:y|ie)s?"
    r"|sweat(?:shirt|er|pant)s?|trousers)"
)
_CLOTHED = re.compile(
    rf"\b(?:in|wear(?:s|ing)?|puts? on|pulls? on|with)(?: \w+,?){{0,4}}? {_CLOTHES}\b"
    r"|\b(?:fully|half) (?:dressed|clothed)\b",
    re.IGNORECASE,
)
_DRY = denies(
    "dry", "warm", "afterwards", "after", "between", "waits?", "waiting", "until", "deck", "land",
    "floor", "home", "change", "changing",
)  # fmt: skip


def swims_clothed(text: str) -> str:
    """The words by which a text has somebody swim in clothes; "" where none do."""
    for sentence in sentences(text):
        found = _CLOTHED.search(sentence)
        if found and not _DRY.search(sentence.replace(found[0], " ")):
            return found[0]
    return ""
