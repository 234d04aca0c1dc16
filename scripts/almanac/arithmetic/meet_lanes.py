"""How full the lanes are that a club has to warm up in at a meet."""

from __future__ import annotations

from almanac.arithmetic.working import Known, Quotient, Working
from almanac.model.club import Club
from almanac.model.meet import Meet, WarmUp


def heads_a_lane(club: Club, meet: Meet, slot: WarmUp) -> Working | None:
    """Swimmers in a lane where all of the squads that it is for come: their heads over its lanes.
    None where the squads have no lane groups.
    """
    squads = meet.squads_of(slot)
    heads = sum(group.heads for group in club.lane_groups.values() if group.squad in squads)
    if not heads:
        return None
    return Quotient(Known(heads, "heads"), Known(len(slot.lanes), "lanes"))
