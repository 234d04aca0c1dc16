"""A set on the clock for one lane group: targets, send-offs, rest, gear changes, load.

Convention, stated wherever the clock is shown: the last rep's full send-off counts, so 8 × 50 on
1:00 is 8:00.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction
from functools import cached_property

from almanac.arithmetic.effort import EffortSpan
from almanac.arithmetic.expand import Event, Rep
from almanac.arithmetic.gear_changes import GearChange, gear_changes
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.working import (
    Difference,
    Known,
    Labelled,
    Product,
    Quotient,
    Sum,
    UpTo,
    Working,
    gathered,
)
from almanac.model.knowledge import Gear
from almanac.model.policy import Policy, RestRule
from almanac.units import Course


@dataclass(frozen=True)
class TimedRep:
    """A rep on the clock; times in seconds. ``pieces`` are the targets of its pieces.

    ``sendoff`` is the interval it leaves on, None for plain rest or straight on; ``suggested``
    where the set names none for this group and one had to be found. ``clock`` is what it takes of
    the clock.
    """

    rep: Rep
    pieces: tuple[Target | NoNumber, ...]
    target: Target | NoNumber
    sendoff: Working | None
    suggested: bool
    clock: Working | None

    @cached_property
    def loads(self) -> tuple[Working | None, ...]:
        """The planned load of each piece: minutes of work times mean rating; None where its target
        is not known.
        """
        return tuple(
            Product((Known(target.seconds / 60, "min"), Known(float(piece.effort.mean), "rating")))
            if isinstance(target, Target)
            else None
            for piece, target in zip(self.rep.pieces, self.pieces, strict=True)
        )

    @property
    def target_s(self) -> float | None:
        """The target, where there is one."""
        return self.target.seconds if isinstance(self.target, Target) else None

    @property
    def sendoff_s(self) -> float | None:
        """The send-off, where it goes on one."""
        return self.sendoff.value if self.sendoff else None

    @cached_property
    def rest(self) -> Working | None:
        """What the clock leaves after the target; below zero where the send-off is too short."""
        if self.clock is None or not isinstance(self.target, Target):
            return None
        return Difference(self.clock, self.target.working)

    @property
    def rest_s(self) -> float | None:
        """The rest in seconds, where it is known."""
        return self.rest.value if self.rest else None


@dataclass(frozen=True)
class GroupClock:
    """A set on the clock for one lane group. Totals are None where a rep's time is not known."""

    group: str
    reps: tuple[TimedRep, ...]
    changes: tuple[GearChange, ...]
    clock: Working | None
    work: Working | None

    @cached_property
    def load(self) -> Working | None:
        """Planned load: minutes of work times mean rating, over the pieces of every rep."""
        loads = [load for timed in self.reps for load in timed.loads]
        known = [load for load in loads if load is not None]
        return gathered(known) if len(known) == len(loads) else None

    @cached_property
    def rest(self) -> Working | None:
        """Rest over the whole set: clock less work, in seconds."""
        if self.clock is None or self.work is None:
            return None
        return Difference(Labelled(self.clock, "clock", "s"), Labelled(self.work, "work", "s"))

    @cached_property
    def density(self) -> Working | None:
        """Work as a share of the clock, 0 to 1."""
        if self.clock is None or self.work is None or not self.clock.value:
            return None
        return Quotient(Labelled(self.work, "work", "s"), Labelled(self.clock, "clock", "s"))

    @property
    def missing(self) -> tuple[NoNumber, ...]:
        """Each reason why a target is not known, once."""
        return tuple(
            dict.fromkeys(timed.target for timed in self.reps if isinstance(timed.target, NoNumber))
        )


def rest_working(rule: RestRule, metres: float, target: Working) -> Working:
    """Rest in seconds that a rule asks after a rep of ``metres`` metres."""
    if rule.seconds_per_50 is not None:
        return Product((Known(rule.seconds_per_50, "rest for each 50 m", "s"), Known(metres / 50)))
    return Product((Known(rule.share_of_work or 0.0, "share of the work"), target))


@dataclass(frozen=True)
class Clock:
    """Puts sets on the clock for one lane group in one course."""

    group: str
    pacer: Pacer
    policy: Policy
    gear: Mapping[str, Gear]

    @property
    def course(self) -> Course:
        """The course that it reckons in."""
        return self.pacer.course

    def run(self, events: tuple[Event, ...]) -> GroupClock:
        """The whole set on the clock: its reps, its pauses, and the gear changes that no pause
        covers.

        The last rep's full send-off counts, so 8 × 50 on 1:00 is 8:00.
        """
        reps = tuple(self._timed(event for event in events if isinstance(event, Rep)))
        timed = {id(item.rep): item for item in reps}
        changes = tuple(gear_changes(events, self.gear, self.course))
        spent = [
            timed[id(event)].clock if isinstance(event, Rep) else Known(event.seconds, "pause", "s")
            for event in events
        ]
        waits = [Known(change.uncovered_s, "gear change", "s") for change in changes]
        known = [working for working in spent if working is not None]
        targets = [item.target.working for item in reps if isinstance(item.target, Target)]
        whole = len(known) == len(spent)
        return GroupClock(
            group=self.group,
            reps=reps,
            changes=changes,
            clock=gathered([*known, *waits]) if whole else None,
            work=gathered(targets) if len(targets) == len(reps) else None,
        )

    def _timed(self, reps: Iterable[Rep]) -> Iterator[TimedRep]:
        """Each rep on the clock. Reps of one item at the same efforts differ in nothing else, and
        are worked out once.
        """
        known: dict[tuple[int, tuple[EffortSpan, ...]], TimedRep] = {}
        for rep in reps:
            like = id(rep.item), tuple(piece.effort for piece in rep.pieces)
            if like not in known:
                known[like] = self.rep(rep)
            yield replace(known[like], rep=rep)

    def rep(self, rep: Rep) -> TimedRep:
        """One rep: its target, its send-off or rest, and what it takes of the clock.

        On a send-off it takes the send-off, and its rest is what the target leaves of it. With
        plain rest it leaves at target + rest, up to the next multiple of the policy's
        ``rest_step``. With neither it takes its target. Where a set names send-offs but none for
        this group, the suggested one stands in.
        """
        pieces = self.pacer.pieces(rep)
        target = self.pacer.whole(rep, pieces)
        item = rep.item
        working = target.working if isinstance(target, Target) else None
        if item.sendoff is None:
            return TimedRep(
                rep, pieces, target, None, False, self._without_sendoff(item.rest, working)
            )
        named = item.sendoff.of(self.group)
        if named is not None:
            sendoff: Working = Known(named, "send-off", "s")
            if item.sendoff.ratio != 1:
                sendoff = UpTo(
                    Product((Known(named, "send-off", "s"), Known(float(item.sendoff.ratio)))),
                    self._step,
                )
            return TimedRep(rep, pieces, target, sendoff, False, sendoff)
        suggestion = self.suggest(rep, target)
        return TimedRep(rep, pieces, target, suggestion, True, suggestion)

    def _without_sendoff(self, rest: float | None, target: Working | None) -> Working | None:
        if target is None or rest is None:
            return target
        leaves = UpTo(Sum((target, Known(rest, "rest", "s"))), self.policy.limit("rest_step"))
        return Labelled(leaves, "with rest", "s")

    @property
    def _step(self) -> float:
        return self.policy.limit("sendoff_step")

    def suggest(self, rep: Rep, target: Target | NoNumber) -> Working | None:
        """The least multiple of the send-off step that leaves the rest which the rep's effort
        wants.
        """
        if isinstance(target, NoNumber):
            return None
        return UpTo(Sum((target.working, self.rest_for(rep, target, "wanted"))), self._step)

    def rest_for(self, rep: Rep, target: Target, which: str) -> Working:
        """The ``least`` or the ``wanted`` rest after a rep, by the word that its mean rating falls
        in.
        """
        word = self.pacer.scale.word_at(_fraction(rep.mean_rating))
        rule: RestRule = getattr(self.policy.rest[word], which)
        metres = rep.distance * self.course.unit.metres
        return Labelled(rest_working(rule, metres, target.working), f"{which} rest at {word}", "s")


def _fraction(value: float) -> Fraction:
    return Fraction(value).limit_denominator(10_000)
