"""Targets of reps and of their pieces at an effort, from a lane group's paces."""

from __future__ import annotations

from collections.abc import Hashable, Mapping
from dataclasses import dataclass
from functools import cached_property

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.effort_pace import EffortPace
from almanac.arithmetic.events import Piece, Rep
from almanac.arithmetic.known_tests import TestPoint
from almanac.arithmetic.pace_lines import Because, NoNumber, Paces
from almanac.arithmetic.working import (
    Between,
    BuildTime,
    Known,
    Labelled,
    Product,
    Quotient,
    Sum,
    Working,
)
from almanac.frozen import quick
from almanac.model.gear import Gear
from almanac.model.reps import Distance
from almanac.units import Course


@quick
@dataclass(frozen=True)
class Target:
    """A target time with its working; ``estimated`` from one test, ``other_course`` from tests in
    another pool, ``stale`` from a test that is past its time, ``assumed`` where nobody has swum it.
    """

    working: Working
    estimated: bool
    other_course: bool
    stale: bool = False
    assumed: bool = False

    @property
    def seconds(self) -> float:
        """The target in seconds."""
        return self.working.value


@dataclass(frozen=True)
class Pacer:
    """Targets of one lane group, of one level, in one course."""

    paces: Paces
    gear: Mapping[str, Gear]
    scale: EffortScale
    course: Course
    level: str = ""

    def pieces(self, rep: Rep) -> tuple[Target | NoNumber, ...]:
        """The target of each piece of a rep, paced by the length of the whole rep."""
        return tuple(self.piece(piece, rep.distance) for piece in rep.pieces)

    def whole(self, rep: Rep, pieces: tuple[Target | NoNumber, ...]) -> Target | NoNumber:
        """The target of a whole rep: its pieces added up, each paced by the length of the whole
        rep.

        Where a piece has no number, the rep has none, for the same reason.
        """
        targets: list[Target] = []
        for target in pieces:
            if isinstance(target, NoNumber):
                return target
            targets.append(target)
        working = targets[0].working
        if len(targets) > 1:
            named = (
                Labelled(target.working, piece.drill.title, "s")
                for target, piece in zip(targets, rep.pieces, strict=True)
            )
            working = Sum(tuple(named))
        return Target(
            working,
            any(t.estimated for t in targets),
            any(t.other_course for t in targets),
            any(t.stale for t in targets),
            any(t.assumed for t in targets),
        )

    @cached_property
    def _known(self) -> dict[Hashable, Target | NoNumber]:
        """The targets that have been asked for: sets ask for the same ones again and again."""
        return {}

    @cached_property
    def _timed_at(self) -> dict[tuple[str, str, Distance, Distance], Working | Because]:
        """What has been asked of the lines: many drills are timed by one, at the same effort."""
        return {}

    def piece(self, piece: Piece, rep_distance: Distance) -> Target | NoNumber:
        """The target of one piece of a rep of ``rep_distance``, in the course's unit.

        An effort's speed is its share of the best speed over D, where D is the whole rep, or the
        effort's reference distance where that is longer: an easy 25 is as fast as an easy 400, and
        a swimmer who goes on without a stop holds the pace of the whole. The target is distance
        over speed, times the drill's factor, that of the group's slowest swimmer and each gear's.
        What is held takes the time that it is held. Where the speed, before the factors, is below
        the policy's ``slowest_afloat`` there is no number: nobody stays up at it.
        """
        drill = piece.drill.id, piece.drill.title, piece.drill.pace
        key = drill, piece.distance, piece.effort, piece.gear, piece.hold_s, rep_distance
        if key not in self._known:
            self._known[key] = self._piece(piece, rep_distance)
        return self._known[key]

    def _piece(self, piece: Piece, rep_distance: Distance) -> Target | NoNumber:
        if piece.hold_s is not None:
            return Target(Known(piece.hold_s, "held", "s"), estimated=False, other_course=False)
        rule = piece.drill.pace
        if rule is None:
            return NoNumber(Because.NO_PACE_RULE, piece.drill.id)
        line = self.paces.line(rule.like, self.course)
        if isinstance(line, Because):
            return NoNumber(line, piece.drill.id, rule.like)
        at = EffortPace(line, self.scale, self.paces.policy, self.course, self.level)
        ends: list[Working] = []
        for word in piece.effort.words:
            asked = rule.like, word, rep_distance, piece.distance
            if (paced := self._timed_at.get(asked)) is None:
                paced = self._timed_at[asked] = at.time(word, rep_distance, piece.distance)
            if isinstance(paced, Because):
                return NoNumber(paced, piece.drill.id, rule.like)
            ends.append(paced)
        factors = self._factors(piece, rule.like)
        first, last = (Product((end, *factors)) if factors else end for end in ends)
        along = piece.effort.along
        working: Working
        if along is None:
            working = BuildTime(first, last)
        elif first == last or along == 0:
            working = first
        else:
            working = Between(first, last, float(along))
        other = any(point.course != self.course for point in line.points)
        return Target(working, line.estimated, other, line.stale, line.assumed)

    def _factors(self, piece: Piece, like: str) -> tuple[Working, ...]:
        assert piece.drill.pace is not None
        own = (
            Known(piece.drill.pace.factor, piece.drill.title),
            Known(self.paces.group.slowest, "the slowest of the group"),
        )
        tested_with = self.paces.benchmarks[like].gear
        worn = (self._of_gear(id, piece, like) for id in piece.gear if id not in tested_with)
        return tuple(factor for factor in (*own, *worn) if factor.value != 1)

    def _of_gear(self, id: str, piece: Piece, like: str) -> Working:
        """What a piece of gear does to the time: the ratio of the group's own two times with it and
        without, over the distance nearest to the piece's; else its factor.

        Of gear that resists a comparison that was no slower tells nothing, nor one of gear that
        assists that was no faster.
        """
        gear = self.gear[id]
        found = [
            (plain, worn)
            for plain, worn in self.paces.timed_with(like, id, self.course)
            if not (gear.resists and worn.seconds <= plain.seconds)
            and not (gear.assists and worn.seconds >= plain.seconds)
        ]
        if not found:
            return Known(gear.pace_factor, gear.title)
        metres = float(piece.distance) * self.course.unit.metres
        plain, worn = min(found, key=lambda pair: abs(pair[0].metres - metres))
        return Quotient(self._timed(worn), self._timed(plain))

    def _timed(self, test: TestPoint) -> Known:
        return Known(test.seconds, self.paces.benchmarks[test.benchmark].title, "s")
