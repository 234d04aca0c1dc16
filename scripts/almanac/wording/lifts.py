"""Whether a text has somebody lift or carry a person, or a weight, on land."""

from __future__ import annotations

import re

_WHO = r"(?:mate|team-?mate|partner|friend|swimmer|person|somebody|someone)"
_LIFTS = re.compile(
    rf"\b(?:{_WHO}\b[^.,;:!?]{{0,40}}\b(?:on|over|across) (?:the|your|both|one) shoulders?"
    rf"|(?:take|put|with|set|hoist)\b[^.,;:!?]{{0,20}}\b{_WHO}\b[^.,;:!?]{{0,20}} on your back"
    r"|piggy-?back"
    rf"|(?:lift|lifts|lifting|carry|carries|carrying|hoist) (?:a|an|the|your|another) {_WHO}"
    r"|barbells?|kettlebells?|\d\d+ ?(?:kg|kilograms?)|of your own weight on)\b",
    re.IGNORECASE,
)
_DENIES = re.compile(r"\b(?:no|not|never|nobody|without|instead of)\b", re.IGNORECASE)
_CLAUSE = re.compile(r"[.;:!?]|, (?:and|but|then|or)? ?")


def names_a_lift(text: str) -> bool:
    """Whether a text asks for a lift. A denial excuses its own clause."""
    return _LIFTS.search(text) is not None and any(
        _LIFTS.search(one) and not _DENIES.search(one) for one in _CLAUSE.split(text)
    )
