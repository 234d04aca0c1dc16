"""What lane groups swim of one thing, where some swim another than others: who they are, and how
far each goes.
"""

from __future__ import annotations

from collections.abc import Mapping

from almanac.analysis.figures.facets import partly
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.swum_by_group import ByGroup
from almanac.model.club import LaneGroup
from almanac.units import LAND, show_distance

Way = tuple[str, tuple[str, ...], Swum]  # who, the same as ids, and what they swim


def ways_of(groups: Mapping[str, LaneGroup], of: ByGroup) -> list[Way]:
    """Each way of swimming it, the first lane group's first and who does none of it last; one for
    nobody by name where all do the same.
    """
    if not of.differs:
        return [("", (), of.first)]
    ways = sorted(of.ways, key=lambda way: (way[0] is not of.first, not way[0].reps))
    return [("; ".join(groups[id].title for id in ids), ids, swum) for swum, ids in ways]


def distances(groups: Mapping[str, LaneGroup], of: ByGroup) -> str:
    """How far it is: ``300 m``, or each way of swimming it with who does."""
    return "; ".join(
        f"{who}: {distance_words(swum)}" if who else distance_words(swum)
        for who, _, swum in ways_of(groups, of)
    )


def distance_words(swum: Swum) -> str:
    """How far it is, and what of that is estimated or not known."""
    if swum.course == LAND:
        return "on land"
    text, marked = show_distance(swum.distance.value, swum.course.unit), partly(swum)
    return f"{text} ({marked})" if marked else text
