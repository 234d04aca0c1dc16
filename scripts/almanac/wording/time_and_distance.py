"""How long and how far a text has somebody go: the seconds and metres that it names, added up."""

from __future__ import annotations

import re

from almanac.wording.numbers_said import WORDS

_NUMBERS = {"half a": 0.5, "a": 1, "an": 1, "one": 1, **WORDS}
_NUMBER = rf"\d+(?:\.\d+)?|{'|'.join(sorted(_NUMBERS, key=len, reverse=True))}"
_TIME = re.compile(rf"\b({_NUMBER})[ -](s|seconds?|min|minutes?|hours?)\b")
_METRES = re.compile(rf"\b(?:({_NUMBER}) (?:x|×|times) )?({_NUMBER}) ?(?:m|metres?)\b")
_SWUM = re.compile(
    rf"\b(?:({_NUMBER}) (?:x |× )?)?(10|15|25|50|75|100|200|400|800|1500)(s?)\b(?! ?m)"
)
_UNIT_S = {"s": 1, "m": 60, "h": 3600}
_LATER = re.compile(
    r"\b(?:on |until )?(?:another|next|the following) (?:day|week|session|practice|time)\b"
    r"|\btomorrow\b|\ba (?:day|week) later\b"
)


def seconds_asked(text: str) -> float:
    """The sum in s of all times that a text names; infinite where part of it is for another day."""
    written = text.lower()
    if _LATER.search(written):
        return float("inf")
    return sum(_value(number) * _UNIT_S[unit[0]] for number, unit in _TIME.findall(written))


def metres_asked(text: str) -> float:
    """The sum in m of all distances that a text names, a bare 25, 50 or 100 among them; of several
    of one distance (two 25s) each counts.
    """
    written = _TIME.sub(" ", text.lower())
    metres = sum(_value(reps or "1") * _value(far) for reps, far in _METRES.findall(written))
    bare = _METRES.sub(" ", written)
    return metres + sum(
        (_value(reps or "1") if many else 1) * float(far) for reps, far, many in _SWUM.findall(bare)
    )


def _value(number: str) -> float:
    return float(_NUMBERS.get(number, 0)) or float(number)
