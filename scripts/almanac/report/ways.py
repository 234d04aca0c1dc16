"""What lane groups swim of one thing, where some swim another than others: who they are, and how
far each goes.
"""

from __future__ import annotations

from collections.abc import Mapping

from almanac.arithmetic.swum import ByGroup, Swum
from almanac.model.club import LaneGroup
from almanac.units import show_distance

Way = tuple[str, tuple[str, ...], Swum]  # who, the same as ids, and what they swim


def ways_of(groups: Mapping[str, LaneGroup], of: ByGroup) -> list[Way]:
    """Each way of swimming it, the first lane group's first; one for nobody by name where all do
    the same.
    """
    if not of.differs:
        return [("", (), of.first)]
    ways = sorted(of.ways, key=lambda way: way[0] is not of.first)
    return [("; ".join(groups[id].title for id in ids), ids, swum) for swum, ids in ways]


def distances(groups: Mapping[str, LaneGroup], of: ByGroup) -> str:
    """How far it is: ``300 m``, or each way of swimming it with who does."""
    return "; ".join(
        f"{who}: {show_distance(swum.distance.value, swum.course.unit)}"
        if who
        else show_distance(swum.distance.value, swum.course.unit)
        for who, _, swum in ways_of(groups, of)
    )
