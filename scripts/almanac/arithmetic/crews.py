"""Who goes together in a part of a practice, in which lanes."""

from __future__ import annotations

import math
from collections.abc import Mapping
from dataclasses import dataclass, replace

from almanac.arithmetic.lane_order import heads_in_lane
from almanac.model.club import LaneGroup
from almanac.model.practice import Lanes, LanesInUse

FIRST, SECOND = HALVES = ("first", "second")


@dataclass(frozen=True)
class Crew:
    """A lane group, or the ``half`` of it that has the first or the second half of its lanes, with
    the numbers of the lanes that it has and how many heads it is. ``lane_group`` has the heads and
    the number of lanes of the crew, which are those of the group where it ``is_usual``.
    """

    group: str
    half: str
    lanes: Lanes
    lane_group: LaneGroup
    is_usual: bool = True

    @property
    def name(self) -> str:
        """The lane group's id, and which half of it."""
        return f"{self.group}, {self.half} half" if self.half else self.group

    @property
    def title(self) -> str:
        """The lane group's title, and which half of it."""
        return f"{self.lane_group.title}, {self.half} half" if self.half else self.lane_group.title

    @property
    def heads(self) -> int:
        """How many swim in it."""
        return self.lane_group.heads

    @property
    def halves(self) -> tuple[tuple[str, str], ...]:
        """The halves of lane groups that it holds."""
        return tuple((self.group, half) for half in ((self.half,) if self.half else HALVES))

    def heads_at_once(self, most_in_lane: int | None) -> int:
        """Heads that can be under way at once, where a set lets no more than so many into a
        lane.
        """
        own = self.lane_group
        return min(own.heads, heads_in_lane(own, most_in_lane) * own.lanes)


def usual_lanes(groups: Mapping[str, LaneGroup]) -> dict[str, Lanes]:
    """The lanes that the groups of a squad fill, from lane 1 on, in the club's order."""
    found: dict[str, Lanes] = {}
    taken = 0
    for id, group in groups.items():
        found[id] = tuple(range(taken + 1, taken + group.lanes + 1))
        taken += group.lanes
    return found


def crew_of(
    id: str,
    half: str,
    groups: Mapping[str, LaneGroup],
    in_use: LanesInUse,
    of_part: Mapping[str, Lanes],
) -> Crew:
    """A lane group, or a half of it, in the lanes that it has for a part: those of the part, else
    those of the practice, else its usual ones less those that are out of use.

    A first half is the larger one where lanes or heads do not divide. Where a group has one lane,
    both halves are in it. A group without a lane is reckoned as in one; a check tells it.
    """
    group = groups[id]
    named = of_part.get(id) or in_use.groups.get(id) or usual_lanes(groups)[id]
    lanes = tuple(lane for lane in named if lane not in in_use.out_of_use)
    heads = group.heads
    if half:
        middle = math.ceil(len(lanes) / 2)
        lanes = lanes[:middle] if half == FIRST else lanes[middle:] or lanes
        heads = math.ceil(heads / 2) if half == FIRST else heads // 2
    own = replace(group, lanes=max(1, len(lanes)), heads=heads)
    return Crew(id, half, lanes, own, own == group)


def crews_named(
    names: tuple[str, ...],
    half: str,
    groups: Mapping[str, LaneGroup],
    in_use: LanesInUse,
    of_part: Mapping[str, Lanes],
) -> tuple[Crew, ...]:
    """The crews of the lane groups that are named, or of the half of all of them."""
    chosen = tuple(groups) if half else tuple(name for name in groups if name in names)
    return tuple(crew_of(id, half, groups, in_use, of_part) for id in chosen)
