"""Who leaves when in a lane: heads, the gap between them, and waves."""

from __future__ import annotations

import math
from dataclasses import dataclass

from almanac.arithmetic.events import Rep
from almanac.arithmetic.working import Known, Product, Sum, Working
from almanac.frozen import quick
from almanac.model.club import LaneGroup
from almanac.model.policy import Policy


def heads_in_lane(group: LaneGroup, most: int | None = None) -> int:
    """Swimmers in the fullest lane; no more than ``most`` where a set names it."""
    heads = math.ceil(group.heads / group.lanes)
    return heads if most is None else min(heads, most)


def is_on_back(rep: Rep) -> bool:
    """Whether some of the rep is on the back, where a swimmer cannot see ahead."""
    return any(piece.drill.is_on_back or piece.drill.is_backstroke for piece in rep.pieces)


def gap_for(rep: Rep, group: LaneGroup, policy: Policy) -> float:
    """Seconds between one swimmer leaving and the next: the group's own, wider on the back; none
    where a rep is held in place.
    """
    if not rep.distance:
        return 0.0
    return max(group.gap, policy.limit("gap_on_back")) if is_on_back(rep) else group.gap


@quick
@dataclass(frozen=True)
class LaneOrder:
    """The fullest lane of a group at one rep: its ``heads``, ``gap_s`` seconds apart, in ``waves``
    of ``at_once`` swimmers, of which one swims while the others rest.
    """

    heads: int = 1
    gap_s: float = 0.0
    waves: int = 1
    at_once: int = 1

    @property
    def tail(self) -> Working:
        """Seconds from the first of a wave leaving to its last."""
        behind = Known(self.at_once - 1, "behind the leader")
        return Product((behind, Known(self.gap_s, "gap", "s")))

    def least_interval(self, done: Working) -> Working:
        """The least send-off that the lane has room for, in seconds: heads × gap, so that the last
        has left before the leader leaves again; with waves, as long as all of them take, each until
        its last swimmer touches.
        """
        if self.waves == 1:
            return Product((Known(self.heads, "in a lane"), Known(self.gap_s, "gap", "s")))
        return Product((Known(self.waves, "waves"), Sum((done, self.tail))))


def lane_order(rep: Rep, group: LaneGroup, policy: Policy, most: int | None = None) -> LaneOrder:
    """How a lane group's fullest lane swims a rep.

    Waves of so many swimmers are as many as the lane needs; so many waves hold as many swimmers as
    that takes. Swimmers of a wave leave the gap apart. Of pairs and teams that take turns only
    one each swims at a time.
    """
    turns, waves = rep.item.manner.turns, rep.item.waves
    heads = math.ceil(heads_in_lane(group, most) / turns)
    gap = gap_for(rep, group, policy)
    if waves is None:
        return LaneOrder(heads, gap, 1, heads)
    number = waves.number or math.ceil(heads / (waves.swimmers or heads))
    number = min(number, heads)  # no wave without a swimmer
    return LaneOrder(heads, gap, number, math.ceil(heads / number))
