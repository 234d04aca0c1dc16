"""The rule on how much fast work a level bears."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.swum import Swum
from almanac.checks.rule import Problem, refuses
from almanac.checks.ways import set_ways
from almanac.units import show_number


@refuses("fast-dose")
def fast_dose(analysis: Analysis) -> Iterator[Problem]:
    """A set, and a practice, hold no more distance at efforts that count as fast than the level of
    those who do it bears (``fast_most``), with as many rounds or reps as the set may be asked for.
    """
    catalogue = analysis.catalogue
    for id in analysis.computable:
        ways = ((_fast_m(way.swum), way.level, way.asked) for way in set_ways(analysis, id))
        metres, level, asked = max(ways, default=(0.0, "", ""))
        if message := _too_much(analysis, metres, level):
            entry = catalogue.sets[id]
            yield Problem(entry, ("items",), message + asked, _MEND, of_key=True, level=level)
    for summary in analysis.practices.values():
        level = catalogue.club.squads[summary.practice.squad].level
        metres = max(map(_fast_m, summary.every_way), default=0.0)
        if message := _too_much(analysis, metres, level):
            yield Problem(summary.practice, ("parts",), message, _MEND, of_key=True, level=level)


_MEND = "fewer of them, or slower ones: what is fast while tired is another stroke"


def _fast_m(swum: Swum) -> float:
    return swum.metres * float(swum.shares.fast or 0)


def _too_much(analysis: Analysis, metres: float, level: str) -> str:
    if not metres:
        return ""
    most = analysis.catalogue.policy.of_level(level).limit("fast_most")
    if metres <= most:
        return ""
    return f"{show_number(metres)} m are fast, and {level} holds {show_number(most)} m at most"
