"""Whether a step of a drill has a body in the water, or on deck and on land."""

from __future__ import annotations

import re

from almanac.wording.clauses import clauses, denies

_WET = re.compile(
    r"\b(?:push(?:es|ing)? off (?:on|the wall|from the wall|in streamline)|swim(?:s|ming)?"
    r"|float(?:s|ing)?|tread(?:s|ing)? water|glid(?:e|es|ing)|div(?:e|es|ing)"
    r"|in the (?:water|pool|lane|deep|shallow end)|into the (?:water|pool)|under water|underwater"
    r"|(?:to|under|from) the flags|lane rope|kick(?:s|ing)? (?:a length|\d+ ?m\b|to the))\b",
    re.IGNORECASE,
)
_OUT = re.compile(
    r"\b(?:deck|edge|mats?|bench|benches|towel|gym|on land|poolside|tiles|chair|steps|grass|carpet"
    r"|sit(?:s|ting)?|kneel(?:s|ing)?|stand(?:s|ing)? (?:tall|on)|floor)\b",
    re.IGNORECASE,
)
_OTHERWISE = denies(
    "as if", "as (?:you|they|one) (?:do|does|would)", "like", "later", "then in", "before", "after",
    "out of", "next to", "beside", "as in", "when", "whoever", "others?", "would", "will",
    "as well", "also",
)  # fmt: skip


def is_wet(step: str) -> bool:
    """Whether a step has a body swim, float or move in the water; a likeness or a denial excuses
    its own clause.
    """
    return any(_WET.search(one) and not _OTHERWISE.search(one) for one in clauses(step))


def is_out(step: str) -> bool:
    """Whether a step names what is out of the water: the deck, an edge, a mat."""
    return bool(_OUT.search(step))
