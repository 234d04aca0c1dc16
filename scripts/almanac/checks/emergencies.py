"""Rules on what is known for an emergency at a pool."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.rule import Problem, warns

_WORDS = {
    "call": "the number to call",
    "address": "the address as it is to be said",
    "telephone": "where the telephone is",
    "defibrillator": "where the defibrillator is",
    "first_aid": "where the first-aid box is",
    "way_in": "the way in for help",
}


@warns("emergency-unsaid")
def emergency_unsaid(analysis: Analysis) -> Iterator[Problem]:
    """Of a pool in which practices are held the club has written down what is said and fetched in
    an emergency: the number to call, the address as it is to be said, where telephone,
    defibrillator and first-aid box are, and the way in for help. A run shows it at Stop.
    """
    club = analysis.catalogue.club
    for id in dict.fromkeys(own.pool for own in analysis.catalogue.practices.values()):
        pool = club.pools[id]
        if unsaid := pool.emergency.unsaid:
            told = ", ".join(_WORDS[name] for name in unsaid)
            is_all = len(unsaid) == len(_WORDS)
            path = ("pools", id) if is_all else ("pools", id, "emergency")
            message = f"for an emergency at '{pool.title}' nobody has written down {told}"
            hint = f"write emergency: {{{', '.join(f'{name}: …' for name in unsaid)}}}"
            yield Problem(club, path, message, hint, of_key=True)
