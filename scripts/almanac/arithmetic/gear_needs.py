"""What gear a practice carries to the pool, beside what the club owns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from almanac.arithmetic.lane_order import heads_in_lane
from almanac.arithmetic.swum import Swum
from almanac.model.club import LaneGroup


@dataclass(frozen=True)
class GearNeed:
    """A piece of gear to carry: the most that are in use at once, and what the club owns (None
    where it does not say).
    """

    gear: str
    needed: int
    owned: int | None

    @property
    def short(self) -> int:
        """How many are missing."""
        return max(0, self.needed - (self.owned or 0))


def gear_needs(
    parts: Sequence[tuple[Mapping[str, Swum], int | None]],
    groups: Mapping[str, LaneGroup],
    owned: Mapping[str, int],
) -> Iterator[GearNeed]:
    """What to carry: for each piece of gear the most heads that use it at once, and what the club
    owns.

    All lane groups of the squad swim a part at once, those that have no use for the gear in it left
    out; a set's ``most_in_lane`` lowers the heads in each lane. ``parts`` holds what each lane
    group swims and the ``most_in_lane`` of each part.
    """
    needed: dict[str, int] = {}
    for swum, most_in_lane in parts:
        heads: dict[str, int] = {}
        for id, own in swum.items():
            for gear in own.gear:
                heads[gear] = heads.get(gear, 0) + _heads_at_once(groups[id], most_in_lane)
        for gear, count in heads.items():
            needed[gear] = max(needed.get(gear, 0), count)
    for gear, count in needed.items():
        yield GearNeed(gear, count, owned.get(gear))


def _heads_at_once(group: LaneGroup, most_in_lane: int | None) -> int:
    return min(group.heads, heads_in_lane(group, most_in_lane) * group.lanes)
