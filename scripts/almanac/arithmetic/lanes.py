"""Swimmers in a lane: send-offs that are too tight for their effort, and lanes without room."""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from enum import Enum, auto

from almanac.arithmetic.clock import Clock
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.lane_order import LaneOrder
from almanac.arithmetic.pace import Target
from almanac.arithmetic.timed_reps import TimedRep, unlike, until_done
from almanac.model.club import LaneGroup
from almanac.source.reader import DataPath
from almanac.units import Course

_ROUNDING = 1e-9  # of the machine
_LITTLE_S = 0.5  # nobody reads less from a pace clock


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


class Room(Enum):
    """What a lane runs out of room by."""

    BACK = auto()  # the leader is back at the start before the last has left
    TAIL = auto()  # the leader meets the tail of the lane after two lengths
    AGAIN = auto()  # the leader leaves again before the last has had a gap
    WAVE = auto()  # a wave is not home when the next one leaves


@dataclass(frozen=True)
class Crowded:
    """A lane without room for its swimmers at one rep: why, ``limit_s`` in which ``most_heads``
    swimmers of a wave fit, and ``takes_s`` that the lane's swimmers take. Seconds.
    """

    timed: TimedRep
    room: Room
    takes_s: float
    limit_s: float
    most_heads: int

    @property
    def order(self) -> LaneOrder:
        """How the lane swims the rep."""
        return self.timed.order

    @property
    def waves(self) -> int:
        """The waves in which as many fit as are in the lane."""
        return math.ceil(self.order.heads / self.most_heads)


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
    worst: tuple[TimedRep, float] | None = None
    most = _ROUNDING
    first: dict[int, TimedRep] = {}
    for timed in reps:  # those that are timed alike have one and the same send-off
        first.setdefault(id(timed.sendoff), timed)
    for timed in first.values():
        if timed.sendoff is None or timed.suggested or not isinstance(timed.target, Target):
            continue
        least = clock.rest_for(timed.rep, timed.target, "least").value
        touch = until_done(timed.rep, timed.target.working).value  # the others' turns are rest
        if touch + least - timed.sendoff.value > most:
            most, worst = touch + least - timed.sendoff.value, (timed, least)
    if worst is None:
        return None
    return TooTight(*worst, clock.needed_s(reps, "least"), clock.needed_s(reps, "wanted"))


def rests_too_short(run: GroupClock, clock: Clock) -> list[tuple[TimedRep, float]]:
    """For each item with plain rest between its reps, the rep that it falls short for by most, with
    the least rest that this rep's effort needs, in seconds.
    """
    found: dict[DataPath, tuple[float, TimedRep, float]] = {}
    for timed in run.reps:
        item = timed.rep.item
        if timed.sendoff or item.rest is None or item.reps < 2 or item.manner.turns > 1:
            continue
        if isinstance(timed.target, Target):
            least = clock.rest_for(timed.rep, timed.target, "least").value
            lack = least - item.rest
            if lack > found.get(timed.rep.path, (_LITTLE_S, None, 0.0))[0]:
                found[timed.rep.path] = lack, timed, least
    return [(timed, least) for _, timed, least in found.values()]


def crowded(run: GroupClock, group: LaneGroup, course: Course) -> list[Crowded]:
    """For each item, its most crowded rep, where the fullest lane has no room.

    Swimmers go round in a circle, so the leader, taken as quick as the group's quickest, is back at
    the start after two lengths. Reps of two lengths have room where (swimmers at once − 1) × gap is
    no more than their time; longer ones where swimmers at once × gap is no more than the time of
    two lengths, else the leader meets the tail. Always also: swimmers at once × gap is no more than
    the send-off, or the part of it that each wave has; and a wave is home, its last and slowest
    swimmer too, before the next leaves. One swimmer alone is never crowded.
    """
    found: dict[DataPath, Crowded] = {}
    for timed in run.reps:
        if timed.order.heads < 2 or not timed.rep.distance:
            continue
        for room, takes_s, limit_s, most in _limits(timed, group, course):
            worst = found.get(timed.rep.path)
            if takes_s > limit_s + _ROUNDING and (worst is None or most < worst.most_heads):
                found[timed.rep.path] = Crowded(timed, room, takes_s, limit_s, most)
    return list(found.values())


def room_in_lane(run: GroupClock, group: LaneGroup, course: Course) -> int | None:
    """The most swimmers that a lane has room for at every rep, by the rules of ``crowded``, of
    pairs and teams all who take turns; None where no rep says anything.
    """
    found = [
        fit * timed.order.waves * timed.rep.item.manner.turns
        for timed in unlike(run.reps)
        if timed.order.gap_s
        for _, _, _, fit in _limits(timed, group, course)
    ]
    return min(found, default=None)


def _limits(
    timed: TimedRep, group: LaneGroup, course: Course
) -> Iterator[tuple[Room, float, float, int]]:
    """For each rule that a rep is under: what the lane takes, in what time, and how many fit."""
    order, gap = timed.order, timed.order.gap_s
    lengths, done = float(timed.rep.distance / course.length), timed.done_s
    quick = None
    if timed.target_s is not None:
        quick = timed.target_s * group.quickest / group.slowest
    again = _leaves_again_s(timed)
    each = None if again is None else again / order.waves
    yield from room_of(lengths, order.at_once, gap, quick, each)
    if each is not None and order.waves > 1 and done is not None:
        behind = (order.at_once - 1) * gap
        yield Room.WAVE, behind + done, each, _fit_behind(each - done, gap)


def room_of(
    lengths: float, heads: int, gap: float, quick_s: float | None, again_s: float | None
) -> Iterator[tuple[Room, float, float, int]]:
    """For each rule of ``crowded`` that reps of so many lengths are under, where ``heads`` swimmers
    go ``gap`` seconds apart: what the lane takes, in what time, and how many fit.

    ``quick_s`` is the time of the quickest over a rep, ``again_s`` when the leader leaves again.
    """
    if quick_s is not None and lengths > 1:
        if lengths <= 2:
            yield Room.BACK, (heads - 1) * gap, quick_s, _fit_behind(quick_s, gap)
        else:
            two = quick_s * 2 / lengths
            yield Room.TAIL, heads * gap, two, _fit(two, gap)
    if again_s is not None:
        yield Room.AGAIN, heads * gap, again_s, _fit(again_s, gap)


def _leaves_again_s(timed: TimedRep) -> float | None:
    """Seconds until the leader leaves again: the send-off; of one rep alone nothing is known."""
    if timed.sendoff_s is not None:
        return timed.sendoff_s
    return timed.clock.value if timed.clock is not None and timed.rep.item.reps > 1 else None


def _fit(seconds: float, gap: float) -> int:
    """How many gaps go into so many seconds; at least one, for a swimmer alone."""
    return max(1, math.floor(seconds / gap + _ROUNDING))


def _fit_behind(seconds: float, gap: float) -> int:
    """How many swimmers leave within so many seconds, the first at once."""
    return max(0, math.floor(seconds / gap + _ROUNDING)) + 1
