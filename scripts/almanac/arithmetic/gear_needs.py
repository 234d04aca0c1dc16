"""What gear a practice carries to the pool, beside what the club owns."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from almanac.arithmetic.expand import Rep
from almanac.arithmetic.lanes import heads_in_lane
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
    parts: Sequence[tuple[tuple[Rep, ...], int | None]],
    groups: Mapping[str, LaneGroup],
    owned: Mapping[str, int],
) -> Iterator[GearNeed]:
    """What to carry: for each piece of gear the most heads that use it at once, and what the club
    owns.

    All lane groups of the squad swim a part at once; a set's ``most_in_lane`` lowers the heads in
    each lane. ``parts`` holds the reps and the ``most_in_lane`` of each part.
    """
    needed: dict[str, int] = {}
    for reps, most_in_lane in parts:
        for gear in dict.fromkeys(id for rep in reps for piece in rep.pieces for id in piece.gear):
            heads = sum(_heads_at_once(group, most_in_lane) for group in groups.values())
            needed[gear] = max(needed.get(gear, 0), heads)
    for gear, count in needed.items():
        yield GearNeed(gear, count, owned.get(gear))


def _heads_at_once(group: LaneGroup, most_in_lane: int | None) -> int:
    return min(group.heads, heads_in_lane(group, most_in_lane) * group.lanes)
