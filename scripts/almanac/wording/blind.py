"""Whether somebody who cannot see is asked to move at speed or to a wall."""

from __future__ import annotations

import re

from almanac.wording.clauses import denies, sentences

_DENIES = denies("stops?", "unless", "less", "avoid", "before", "if", "may")
_BLIND = re.compile(
    r"\b(?:eyes (?:shut|closed)|(?:shut|close)s? (?:the|your|their|both) eyes|blindfold\w*"
    r"|painted black|black(?:ed|ened)?[- ](?:out )?(?:goggles|lenses|tape))\b",
    re.IGNORECASE,
)
BLIND = frozenset({"eyes", "blin", "pain", "blac"})
"""Starts of words, as acts have them, of which one stands where somebody's eyes are shut."""
_AT_REST = re.compile(r"\b(?:hold|holding|gutter|stand|standing|still|float|open)\b", re.IGNORECASE)
_AT_SPEED = re.compile(
    r"\b(?:wall|sprint\w*|fast(?:er|est)?|full speed|all-out|flags|race|dive)\b", re.IGNORECASE
)


def covers_the_eyes(text: str) -> bool:
    """Whether a thing, by its words, keeps who wears it from seeing."""
    return bool(re.search(_COVERS, text, re.IGNORECASE))


_COVERS = (
    r"\bblindfold\w*|\bblack(?:ed|ened)?[- ]?(?:out)?[- ](?:goggles|lenses|glasses)|\bpainted black"
    r"|\b(?:cover|hide|shut|darken|blind|tape)\w* (?:both |the |your |their )*(?:eyes|lenses|sight"
    r"|goggles|view)\b|\b(?:see|sees|seen) nothing\b|\bover (?:both |the |your )*eyes\b"
)


def moves_blind(text: str) -> str:
    """The words of a text by which somebody moves at speed, or to a wall, with eyes shut; "" where
    none do.
    """
    if not _BLIND.search(text):
        return ""
    for sentence in sentences(text):
        found = _BLIND.search(sentence)
        is_moving = _AT_SPEED.search(sentence) and not _AT_REST.search(sentence)
        if found and is_moving and not _DENIES.search(sentence.replace(found[0], " ")):
            return found[0]
    return ""
