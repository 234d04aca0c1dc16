"""Targets of reps and of their pieces at an effort, from a lane group's paces."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.expand import Piece, Rep
from almanac.arithmetic.pace_lines import Because, NoNumber, Paces, Segment
from almanac.arithmetic.working import (
    Between,
    BuildTime,
    Known,
    Labelled,
    PowerLaw,
    Product,
    Quotient,
    Sum,
    Working,
)
from almanac.model.knowledge import Benchmark, Gear
from almanac.model.swim_set import Distance
from almanac.units import Course


@dataclass(frozen=True)
class Target:
    """A target time with its working; ``estimated`` from one test, ``other_course`` from tests in
    another pool, ``stale`` from a test that is past its time.
    """

    working: Working
    estimated: bool
    other_course: bool
    stale: bool = False

    @property
    def seconds(self) -> float:
        """The target in seconds."""
        return self.working.value


@dataclass(frozen=True)
class Pacer:
    """Targets of one lane group in one course."""

    paces: Paces
    gear: Mapping[str, Gear]
    scale: EffortScale
    course: Course

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
                Labelled(target.working, piece.drill.id, "s")
                for target, piece in zip(targets, rep.pieces, strict=True)
            )
            working = Sum(tuple(named))
        return Target(
            working,
            any(t.estimated for t in targets),
            any(t.other_course for t in targets),
            any(t.stale for t in targets),
        )

    def piece(self, piece: Piece, rep_distance: Distance) -> Target | NoNumber:
        """The target of one piece of a rep of ``rep_distance``, in the course's unit.

        T(D) / share of best speed at the effort, times the drill's factor, that of the group's
        slowest swimmer and each gear's, where D is the whole rep: a swimmer who goes on without a
        stop holds the pace of the whole. What is held takes the time that it is held.
        """
        if piece.hold_s is not None:
            return Target(Known(piece.hold_s, "held", "s"), estimated=False, other_course=False)
        rule = piece.drill.pace
        if rule is None:
            return NoNumber(Because.NO_PACE_RULE, piece.drill.id)
        line = self.paces.line(rule.like, self.course)
        if isinstance(line, Because):
            return NoNumber(line, piece.drill.id, rule.like)
        segment = line.segment(float(rep_distance) * self.course.unit.metres)
        if not segment.sound:
            return NoNumber(Because.TESTS_DISAGREE, piece.drill.id, rule.like)
        best = self._best(segment, piece, rep_distance)
        factors = self._factors(piece, self.paces.benchmarks[rule.like])
        first, last = (self._at(best, word, factors) for word in piece.effort.words)
        along = piece.effort.along
        working: Working
        if along is None:
            working = BuildTime(first, last)
        elif first == last or along == 0:
            working = first
        else:
            working = Between(first, last, float(along))
        other = any(point.course != self.course for point in line.points)
        return Target(working, line.estimated, other, line.stale)

    def _best(self, segment: Segment, piece: Piece, rep_distance: Distance) -> Working:
        metres = max(0.0, float(rep_distance)) * self.course.unit.metres
        test = segment.nearest(metres)
        reference = Known(test.seconds, "tested", "s")
        best: Working = reference
        if metres != test.metres:
            ends = tuple((point.metres, point.seconds) for point in segment.ends)
            best = PowerLaw(reference, test.metres, metres, segment.exponent, ends)
        best = Labelled(best, "best time", "s")
        if piece.distance == rep_distance:
            return best
        return Product((best, Quotient(Known(float(piece.distance)), Known(float(rep_distance)))))

    def _factors(self, piece: Piece, benchmark: Benchmark) -> tuple[Known, ...]:
        assert piece.drill.pace is not None
        own = [
            Known(piece.drill.pace.factor, piece.drill.id),
            Known(self.paces.group.slowest, "the slowest of the group"),
        ]
        worn = [
            Known(self.gear[id].pace_factor, id) for id in piece.gear if id not in benchmark.gear
        ]
        return tuple(factor for factor in own + worn if factor.value != 1)

    def _at(self, best: Working, word: str, factors: tuple[Known, ...]) -> Working:
        at_effort: Working = best
        if self.scale.share(word) != 1:
            at_effort = Quotient(best, Known(self.scale.share(word), word))
        return Product((at_effort, *factors)) if factors else at_effort
