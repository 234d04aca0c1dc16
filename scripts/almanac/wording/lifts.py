"""Whether a text has somebody lift or carry a person, or a weight, on land."""

from __future__ import annotations

import re

from almanac.wording.clauses import clauses, denies

_WHO = r"(?:mate|team-?mate|partner|friend|swimmer|person|somebody|someone)"
_LIFTS = re.compile(
    rf"\b(?:{_WHO}\b[^.,;:!?]{{0,40}}\b(?:on|over|across) (?:the|your|both|one) shoulders?"
    rf"|(?:take|put|with|set|hoist)\b[^.,;:!?]{{0,20}}\b{_WHO}\b[^.,;:!?]{{0,20}} on your back"
    r"|piggy-?back"
    rf"|(?:lift|lifts|lifting|carry|carries|carrying|hoist) (?:a|an|the|your|another) {_WHO}"
    r"|(?:weight|loaded|iron) bars?|bar with (?:\w+ )?(?:plates|weights"
    r"|discs)|add (?:a|another) plate"
    r"|barbells?|kettlebells?|\d\d+ ?(?:kg|kilograms?)|of your own weight on)\b",
    re.IGNORECASE,
)
_DENIES = denies()


def names_a_lift(text: str) -> bool:
    """Whether a text asks for a lift. A denial excuses its own clause."""
    return _LIFTS.search(text) is not None and any(
        _LIFTS.search(one) and not _DENIES.search(one) for one in clauses(text)
    )


_HIGH = re.compile(
    r"\b(?:(?:step|jump|hop|drop|leap)s?(?: \w+){0,4}? (?:off|from|onto|on to|on) (?:a|the) "
    r"(?:\w+ )?(?:bench|box|step|wall|chair|platform)"
    r"|(?:box|depth|drop) jumps?|boxes? as high)\b",
    re.IGNORECASE,
)


def names_a_high_jump(text: str) -> bool:
    """Whether a text has somebody jump from or on to a height. A denial excuses its own clause."""
    return _HIGH.search(text) is not None and any(
        _HIGH.search(one) and not _DENIES.search(one) for one in clauses(text)
    )
