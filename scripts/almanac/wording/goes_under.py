"""Whether a text has a whole body go, or stay, under water, and how far it says that goes."""

from __future__ import annotations

import re
from functools import lru_cache
from typing import NamedTuple

from almanac.wording.clauses import clauses, denies
from almanac.wording.numbers_said import NUMBER, number_of

_QUICK = re.compile(r"under|below|beneath|submerg|bottom|floor|deep|surface|up\b|before you")
_BELOW = re.compile(
    r"\b(?:under-?water(?!-)|under water|(?:fully |wholly )?submerged|sub-?surface"
    r"|(?<!just )(?<!forearm )(?<!hand )(?:below|beneath|under) (?:the )?(?:surface|waves?|water)"
    r"|(?:along|over|on|close to|near|across|at) the (?:bottom|floor|tiles)"
    r"|(?:collect|fetch|pick|bring|dives?|duck)\b.{0,40}\b(?:bottom|floor)"
    r"|(?:half )?(?:an?|one|two|1|1\.5|2) (?:and a half )?(?:metres?|m) (?:down|deep|under|below)"
    r"|before (?:you|they|anyone|anybody|she|he) (?:come|comes|may come) up"
    r"|to (?:the )?(?:1[0-9]|2[05]|[6-9])[ -]?(?:m|metres?)(?: mark)? before you"
    r" (?:lift|raise|surface)"
    r"|stay(?:s|ing)? (?:down|under)|(?:head|face) (?:stays )?under (?:all|the whole|until|for))\b",
    re.IGNORECASE,
)
_GOES = re.compile(
    r"\b(?:swim(?:s|ming)?|swum|kick(?:s|ed|ing)?|dolphin(?:s|ing)?|glid(?:e|es|ing)|travel(?:s|ling)?"
    r"|stay(?:s|ing)?|remain(?:s|ing)?|go(?:es|ing)?|cover(?:s|ed|ing)?|cross(?:es|ing)?"
    r"|crawl(?:s|ing)?|race[sd]?|sprint(?:s|ed|ing)?|sit(?:s|ting)?|lie(?:s|ing)?|hover(?:s|ing)?"
    r"|flutter(?:s|ing)?|undulat(?:e|es|ing)|mov(?:e|es|ing)|do|done|push(?:es|ing)? off"
    r"|lengths?|widths?|metres?|\d+ ?m|drop(?:s|ped)?|sink(?:s|ing)?|dive(?:s)?|duck(?:s|ing)?"
    r"|collect|fetch|pick|bring|gather|pull|hold|whole|all the way|work)\b",
    re.IGNORECASE,
)
# What of a body may be under water while the head is not.
_PART = re.compile(
    r"\b(?:hands?|arms?|elbows?|knees?|feet|foot|heels?|toes?|ears?|mouth|chin|nose|legs?|shins?"
    r"|blades?|boards?|fingers?|thumbs?|thighs?|wrists?|shoulders?|socks?|recover\w*"
    r"|bubbles?|hums?|humming|breathe? out|exhal\w+|eyes|look\w*|line on|cups?|fins?|partner"
    r"|watch\w*|camera|stands?|seat|flags)\b",
    re.IGNORECASE,
)
_DENIES = denies("unless", "avoid", "less")
_PULLS = re.compile(r"\bpull(?:s|ed|ing)?\b", re.IGNORECASE)
_FETCHES = ("collect", "fetch", "pick", "bring", "dive", "duck")
_METRES = re.compile(
    rf"\b(\d{{1,3}}\.\d|{NUMBER}) ?-?(?:m|metres?|meters?|yards?|yd)\b", re.IGNORECASE
)
_WHOLE = re.compile(
    r"\b(?:whole|full|entire|every|each|all (?:of )?the)"
    r" (?:25s?|50s?|length|width|pool|rep|way|lap)\b"
    r"|\b(?:all the way|wall to wall|end to end|far (?:wall|end|side)|across the pool"
    r"|there and back|lengths?|widths?|to the (?:middle|end)|half ?way)\b",
    re.IGNORECASE,
)


class Under(NamedTuple):
    """That a text goes under water: the metres that it names there, None where it names none, and
    whether a whole length or width is.
    """

    metres: float | None
    is_whole: bool


@lru_cache(maxsize=8192)
def goes_under(text: str) -> Under | None:
    """How far a text has a body go under water; None where it has none go there. A denial excuses
    its own clause, and so does a part of the body that is under without the head.
    """
    if not _QUICK.search(text.casefold()):
        return None
    every = clauses(text)
    for number, clause in enumerate(every):
        below = _BELOW.search(clause)
        if below is None or _DENIES.search(clause) or _PART.search(clause):
            continue
        if _PULLS.search(clause) and "under" in below.group().lower():
            continue  # an arm is under water in every stroke
        beside = " ".join(every[max(0, number - 1) : number + 2])
        fetches = below.group().lower().startswith(_FETCHES)
        if fetches or _GOES.search(clause.replace(below.group(), " ")) or _METRES.search(clause):
            metres = [
                float(own) if "." in own else number_of(own) for own in _METRES.findall(clause)
            ]
            return Under(max(metres, default=None), bool(_WHOLE.search(beside)))
    return None
