"""Whether a text has somebody start from above the water: a dive, a fall or a jump off the edge, a
start off a block.
"""

from __future__ import annotations

import re
from functools import lru_cache

from almanac.wording.clauses import clauses, denies, sentences

_QUICK = re.compile(
    r"div(?:e|ing)|block|plunge|first|(?:grab|track|race|racing) start"
    r"|toppl|tip|roll|fall|lean|point"
)
_DIVE = re.compile(
    r"\b(?:"
    r"(?:a|the|your|one|each|with|shallow|racing|sitting|kneeling|crouch|standing|pike|plunge)"
    r" (?:racing |shallow )?dives?(?! (?:of|under|down|after|is|are|with)\b)"
    r"|div(?:e|es|ing) (?:in|into|off|from|start|over the edge|at the|and|then|to)"
    r"|(?:from|off) (?:the |a |your )?(?:starting )?blocks?"
    r"|(?:block|grab|track|racing|race|dive) starts?"
    r"|head[- ]?first (?:in|into|off|from|entry|entries)"
    r"|plunge (?:in|off|from)"
    r")\b",
    re.IGNORECASE,
)
_HIGH = r"edge|side|deck|bank|platform|ledge|springboard|diving board"
_JUMP = re.compile(
    r"\b(?:jump|leap|step)(?:s|ing)? (?:in|off|from|into the water from) (?:off |from )?"
    rf"(?:the |a )?(?:poolside|{_HIGH})\b",
    re.IGNORECASE,
)
_MOVES = re.compile(r"jump|leap|step")
_ABOVE = re.compile(rf"\b(?:(?:the|a|pool) (?:{_HIGH})|poolside)\b", re.IGNORECASE)
_GOES_IN = re.compile(
    r"\b(?:topples?|tips? (?:over|in|forward)|rolls? in|falls? (?:in|forward|into)"
    r"|lean(?:s|ing)? [a-z ]{0,20}(?:until|till)|(?:hands|fingers|fingertips|head|arms)[- ]first"
    r"|(?:hands?|fingers|arms) point(?:s|ing|ed)? (?:at|to|down at|into) the water)\b",
    re.IGNORECASE,
)
_DENIES = denies("unless", "except", "before any")


def names_a_start(text: str) -> bool:
    """Whether a text asks for a start from above the water, head first or feet first."""
    return names_a_dive(text) or (
        _MOVES.search(text.casefold()) is not None  # of most texts that is all
        and any(_JUMP.search(one) and not _DENIES.search(one) for one in sentences(text))
    )


@lru_cache(maxsize=4096)
def names_a_dive(text: str) -> bool:
    """Whether a text asks for a dive, a start off a block or a fall head first off the edge. A
    denial excuses its own clause.
    """
    if not _QUICK.search(text.casefold()):
        return False
    return any(
        _DIVE.search(clause) and not _DENIES.search(clause) for clause in clauses(text)
    ) or any(
        _ABOVE.search(one) and _GOES_IN.search(one) and not _DENIES.search(one)
        for one in sentences(text)
    )
