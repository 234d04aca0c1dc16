"""Moments of a practice: a time on its clock, or, where something before is not known, the earliest
that it can be.
"""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from almanac.arithmetic.events import Rep
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.swum import Swum
from almanac.source.reader import DataPath

# Metres a second that nobody goes beyond by their own power, fins and all: the fastest 50 m at the
# surface with a monofin took some 15 s, 3.3 m/s (from memory).
NOBODY_FASTER = 3.5


@dataclass(frozen=True)
class Missing:
    """A part whose length is not known for a lane group: where it stands, and why."""

    path: DataPath
    group: str
    reasons: tuple[NoNumber, ...]


@dataclass(frozen=True)
class Moment:
    """Seconds from the start of the slot: exact, or the earliest it can be where some part before
    it is ``missing`` its length.
    """

    s: float
    missing: tuple[Missing, ...] = ()

    @property
    def known_s(self) -> float | None:
        """The seconds where they are exact, None where they are only the earliest."""
        return None if self.missing else self.s

    def after(self, seconds: float, *missing: Missing) -> Moment:
        """So many seconds later, or at least so many where something more is missing."""
        return Moment(self.s + seconds, tuple(dict.fromkeys((*self.missing, *missing))))


def latest(moments: Iterable[Moment]) -> Moment:
    """The last of some moments; the earliest it can be where one of them is not exact."""
    each = tuple(moments)
    missing = dict.fromkeys(missing for moment in each for missing in moment.missing)
    return Moment(max(moment.s for moment in each), tuple(missing))


def least_seconds(swum: Swum, clock: GroupClock) -> float:
    """The least that something takes whose clock is not known, in seconds: what is known of it, and
    for each rep without a time the time that nobody beats over it, at 3.5 m/s, and its rest.

    It is above zero where anything is done, so that no two parts begin at one moment.
    """
    metre = swum.course.unit.metres
    breaks = sum(event.seconds for event in swum.events if not isinstance(event, Rep))
    spent = (
        timed.clock.value
        if timed.clock is not None
        else timed.rep.distance * metre / NOBODY_FASTER + (timed.rep.item.rest or 0.0)
        for timed in clock.reps
    )
    return breaks + sum(spent)
