"""Whether a text names a weight, or loads a swimmer with what is no gear of the club."""

from __future__ import annotations

import re

from almanac.wording.clauses import clauses, denies

_WEIGHT = re.compile(
    r"\b(?:kilo(?:gram)?s?|\d\s?kg|pounds?|ballast|made of lead|lead (?:belt|weights?|shot|disc)"
    r"|(?:of|with) lead|weight(?:ed)? (?:belt|vest|jacket|cuff|ring)|weighted|weigh\w* down"
    r"|(?:ankle|wrist|hand|belt) weights?|sand ?bags?)\b",
    re.IGNORECASE,
)
_LOAD = re.compile(
    r"\b(?:(?:hold|carry|lift|raise|with|under) (?:a|an|the|your|two|\d)\b[^.;:!?]{0,20}"
    r"\b(?:bricks?|dumb-?bells?|medicine balls?|weight(?:s| plate)?)"
    r"|(?:tow|drag|pull)(?:s|ing)? (?:a|an|the|your)\b[^.;:!?]{0,20}"
    r"\b(?:bucket|tyre|sponge|mate|partner)"
    r"|(?:tie|hang|clip|strap)(?:s|ed)? (?:a|an|the)\b[^.;:!?]{0,20}\b(?:bucket|tyre|sponge|bottle)"
    r"|(?:buckets?|tyres?|sponges?)\b[^.;:!?]{0,12}\b(?:towed|dragged|tied|hung|clipped|strapped)\b"
    r"|\d(?:\.\d)? ?(?:kg|kilos?)\b|(?:one|two|three|four|five|ten) ?-?kilos?)",
    re.IGNORECASE,
)
_DENIES = denies("less")
# Whatever is found by one of the patterns holds one of these: of most texts that is all.
_QUICK = re.compile(
    "kilo|kg|pound|ballast|lead|weigh|sand|brick|dumb|medicine|mate|partner|bucket|tyre|sponge"
    "|bottle"
)


def names_a_weight(text: str) -> bool:
    """Whether a text names a weight."""
    return bool(_WEIGHT.search(text))


def loads_somebody(text: str) -> bool:
    """Whether a text loads a swimmer: a weight that is held or worn, a thing that is towed. A
    denial excuses its own clause.
    """
    return _QUICK.search(text.casefold()) is not None and any(
        (_LOAD.search(one) or _WEIGHT.search(one)) and not _DENIES.search(one)
        for one in clauses(text)
    )
