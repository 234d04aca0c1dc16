"""Swimmers in a lane: who leaves when, and whether the leader is back before the last has gone."""

from __future__ import annotations

import math
from dataclasses import dataclass

from almanac.arithmetic.clock import Clock
from almanac.arithmetic.expand import Rep
from almanac.arithmetic.pace import Target
from almanac.arithmetic.timed_reps import GroupClock, TimedRep
from almanac.model.club import LaneGroup
from almanac.model.policy import Policy
from almanac.source.reader import DataPath
from almanac.units import Course


def heads_in_lane(group: LaneGroup, most: int | None = None) -> int:
    """Swimmers in the fullest lane; no more than ``most`` where a set names it."""
    heads = math.ceil(group.heads / group.lanes)
    return heads if most is None else min(heads, most)


def is_on_back(rep: Rep) -> bool:
    """Whether some of the rep is on the back, where a swimmer cannot see ahead."""
    return any(piece.drill.is_on_back or piece.drill.is_backstroke for piece in rep.pieces)


def gap_for(rep: Rep, group: LaneGroup, policy: Policy) -> float:
    """Seconds between one swimmer leaving and the next: the group's own, wider on the back."""
    return max(group.gap, policy.limit("gap_on_back")) if is_on_back(rep) else group.gap


@dataclass(frozen=True)
class TooTight:
    """A send-off that leaves less than the least rest its effort needs. Seconds.

    ``fits_s`` is the least send-off that leaves every rep of the item that rest, ``suggested_s``
    the one that leaves what the effort wants.
    """

    timed: TimedRep
    least_rest_s: float
    fits_s: float
    suggested_s: float

    @property
    def too_short(self) -> bool:
        """Whether the send-off is below the target itself."""
        return not self.timed.fits


@dataclass(frozen=True)
class Crowded:
    """A lane whose last swimmer has not left when the leader is back. Seconds."""

    timed: TimedRep
    heads: int
    gap_s: float
    last_leaves_s: float
    back_s: float
    most_heads: int


def too_tight(run: GroupClock, clock: Clock) -> list[TooTight]:
    """For each item of the set, its tightest rep, where that is too tight. Suggested send-offs
    never are.
    """
    items: dict[DataPath, list[TimedRep]] = {}
    for timed in run.reps:
        items.setdefault(timed.rep.path, []).append(timed)
    found = (_tightest(reps, clock) for reps in items.values())
    return [tight for tight in found if tight is not None]


def _tightest(reps: list[TimedRep], clock: Clock) -> TooTight | None:
    """Of the reps of one item the tightest, where it is too tight."""
    worst: TimedRep | None = None
    most, worst_rest = 1e-9, 0.0
    for timed in reps:
        if timed.sendoff is None or timed.suggested or not isinstance(timed.target, Target):
            continue
        least = clock.rest_for(timed.rep, timed.target, "least").value
        lack = (timed.done_s or 0.0) + least - timed.sendoff.value
        if lack > most:
            most, worst, worst_rest = lack, timed, least
    if worst is None:
        return None
    return TooTight(
        worst, worst_rest, clock.needed_s(reps, "least"), clock.needed_s(reps, "wanted")
    )


def crowded(
    run: GroupClock,
    group: LaneGroup,
    policy: Policy,
    course: Course,
    most_in_lane: int | None = None,
) -> list[Crowded]:
    """For each item, its fastest rep, where the leader is back before the last swimmer has left.

    With n swimmers in a lane the last leaves (n - 1) gaps after the first; the leader is back after
    the target time. A rep of one length ends at the other wall, so there the leader sets out back
    only when the rep's clock is over. One swimmer alone is never crowded.
    """
    found: dict[tuple[str | int, ...], Crowded] = {}
    heads = heads_in_lane(group, most_in_lane)
    for timed in run.reps:
        back = _back_s(timed, course)
        if back is None or heads < 2:
            continue
        gap = gap_for(timed.rep, group, policy)
        last = (heads - 1) * gap
        if last >= back and (timed.rep.path not in found or back < found[timed.rep.path].back_s):
            most = max(1, math.ceil(back / gap))
            found[timed.rep.path] = Crowded(timed, heads, gap, last, back, most)
    return list(found.values())


def _back_s(timed: TimedRep, course: Course) -> float | None:
    if not timed.rep.distance:
        return None
    if timed.rep.distance <= course.length and timed.clock is not None:
        return max(timed.clock.value, timed.target_s or 0.0)
    return timed.target_s
