"""How long it is since anybody swam fast, at the moment when each rep goes under water."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, field

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.events import Event, Piece, Rep
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.moment import NOBODY_FASTER
from almanac.arithmetic.pace import Target
from almanac.arithmetic.timed_reps import TimedRep
from almanac.arithmetic.under_water import counts
from almanac.source.reader import DataPath
from almanac.units import Course

NEVER = math.inf
"""In place of seconds: nothing has been swum fast."""


_AS_AIMED = 0.95  # a time to hold is that of an effort, give or take a twentieth


@dataclass(frozen=True)
class GoesUnder:
    """A rep that goes under water, and how many seconds before that the last fast work was over: at
    least so many, where a time in between is not known. ``carried`` where that was in an earlier
    part; ``same_rep`` where it was a part of the rep itself.
    """

    rep: Rep
    since_s: float
    carried: bool
    same_rep: bool


@dataclass
class Breath:
    """What a lane group has behind it: ``since_s`` seconds since its last fast work was over, rest,
    easy swimming, pauses and talk alike. What is not known of a time counts as the least that it
    can be: no rest, and a rep as fast as nobody swims (``NOBODY_FASTER``).

    Fast work with long walls is fast work for what comes after it; among reps of its own item, at
    ``walls``, the rest that it asks for itself is another rule.
    """

    scale: EffortScale
    push_off_m: float
    since_s: float = NEVER
    carried: bool = field(init=False)
    walls: DataPath | None = None
    found: list[GoesUnder] = field(default_factory=list)

    def wait(self, seconds: float) -> None:
        """So many seconds go by."""
        self.since_s += seconds

    def swim(self, events: Sequence[Event], course: Course, clock: GroupClock | None) -> None:
        """What is swum, on the clock of those who do it; None where no lane group does."""
        self.carried = self.since_s < NEVER
        timed = {id(own.rep): own for own in clock.reps} if clock else {}
        changes = {id(own.before): own.uncovered_s for own in clock.changes} if clock else {}
        for event in events:
            if isinstance(event, Rep):
                self.wait(changes.get(id(event), 0.0))
                self._rep(event, course, timed.get(id(event)))
            else:
                self.wait(event.seconds)

    def _rep(self, rep: Rep, course: Course, timed: TimedRep | None) -> None:
        began, hard, told = self.since_s, False, False
        for number, piece in enumerate(rep.pieces):
            self.wait(piece.change_s)
            is_under = counts(piece.drill, self.push_off_m)
            if is_under and self.since_s < NEVER and not told and self.walls != rep.path:
                self.found.append(GoesUnder(rep, self.since_s, self.carried, hard))
                told = True
            if not piece.drill.is_under_water and self._is_fast(piece, timed):
                self.since_s, self.carried, hard = 0.0, False, True
                self.walls = rep.path if is_under else None
            else:
                target = timed.pieces[number] if timed else None
                metres = float(piece.distance) * course.unit.metres
                held = piece.hold_s or metres / NOBODY_FASTER
                self.wait(target.seconds if isinstance(target, Target) else held)
            self.wait(piece.rest_s)
        self._rest(rep, timed, began, hard)

    def _is_fast(self, piece: Piece, timed: TimedRep | None) -> bool:
        """Whether a piece is at an effort that counts as fast, or in a rep with a time to hold that
        is faster than its effort makes it, or may be.
        """
        if not self.scale.split(piece.effort).keys().isdisjoint(self.scale.fast):
            return True
        aim, target_s = (timed.aim, timed.target_s) if timed else (None, None)
        return aim is not None and (target_s is None or aim.value < _AS_AIMED * target_s)

    def _rest(self, rep: Rep, timed: TimedRep | None, began: float, hard: bool) -> None:
        if rep.item.sendoff is None:
            self.wait(rep.item.rest or 0.0)
        elif timed and timed.sendoff_s is not None:
            if timed.touch_s is not None:
                self.wait(max(0.0, timed.sendoff_s - timed.touch_s))
            elif not hard:
                self.since_s = max(self.since_s, began + timed.sendoff_s)
