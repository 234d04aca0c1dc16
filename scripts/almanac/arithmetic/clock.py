"""A set on the clock for one lane group: targets, send-offs, rest, gear changes, load.

Convention, stated wherever the clock is shown: the last rep's full send-off counts, so 8 × 50 on
1:00 is 8:00.
"""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from almanac.arithmetic.effort import EffortSpan
from almanac.arithmetic.expand import Event, Rep
from almanac.arithmetic.gear_changes import gear_changes
from almanac.arithmetic.pace import Pacer, Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.rest_rules import rest_working
from almanac.arithmetic.timed_reps import GroupClock, TimedRep
from almanac.arithmetic.working import Known, Labelled, Product, Sum, UpTo, Working, gathered
from almanac.model.knowledge import Gear
from almanac.model.policy import Policy, RestRule
from almanac.units import Course


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
