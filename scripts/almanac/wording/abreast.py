"""How many swim side by side in a lane, by the words of a text."""

from __future__ import annotations

import re

from almanac.wording.numbers_said import NUMBER, number_of

STARTS = frozenset({"abre", "side", "shou", "row", "row,", "row."})
"""Starts of words, as acts have them, of which one stands where swimmers are side by side."""
_ABREAST = re.compile(
    rf"\b({NUMBER})(?:,? [\w-]+){{0,4}}? (?:abreast|side by side|shoulder to shoulder|in one row)\b"
    rf"|\ball ({NUMBER})\b[^.]{{0,60}}\b(?:abreast|side by side|shoulder to shoulder)\b"
    rf"|\b(?:rows|lines|waves|walls) of ({NUMBER}) (?:abreast|side by side)\b"
    rf"|\ball ({NUMBER})\b.{{0,40}}\b(?:at once|together|side by side)\b.{{0,20}}"
    r"\b(?:one|a|the same|each) lane\b",
    re.IGNORECASE,
)
_BY_LANES = re.compile(
    r"\blanes\b|\b(?:one|from) (?:from )?(?:each|every) lane\b",
    re.IGNORECASE,
)


def abreast_in(text: str) -> int:
    """The most swimmers whom a text has side by side in one lane, as far as it says; else 0."""
    if not any(words in text for words in ("abreast", "side by side", "to shoulder", "one row")):
        return 0
    found = [next(filter(None, match.groups())) for match in _ABREAST.finditer(text)]
    is_in_lanes = found and _BY_LANES.search(text) and not re.search(r"\ball\b", text)
    return 0 if is_in_lanes else max(map(number_of, found), default=0)
