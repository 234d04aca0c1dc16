"""What a swimmer of a level holds at an effort, by a line through tests."""

from __future__ import annotations

from dataclasses import dataclass

from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.pace_lines import Because, PaceLine, Segment
from almanac.arithmetic.working import (
    Known,
    Labelled,
    PowerLaw,
    Product,
    Quotient,
    Working,
)
from almanac.model.policy import Policy
from almanac.model.reps import Distance
from almanac.units import Course, show_number


@dataclass(frozen=True)
class EffortPace:
    """What a swimmer of a level holds at an effort, by a line through tests, in one course."""

    line: PaceLine
    scale: EffortScale
    policy: Policy
    course: Course
    level: str = ""

    def time(
        self, word: str, rep_distance: float | Distance, distance: float | Distance
    ) -> Working | Because:
        """The time of ``distance`` within a rep of ``rep_distance``, both in the course's unit.

        An effort's speed is its share of the best speed over D, where D is the whole rep, or the
        effort's reference distance where that is longer. Where that speed is below the policy's
        ``slowest_afloat`` there is no number: nobody stays up at it.
        """
        unit = self.course.unit.metres
        rep_m, piece_m = float(rep_distance) * unit, float(distance) * unit
        metres = max(rep_m, self.scale.reference_m(word))
        segment = self.line.segment(metres)
        if not segment.sound:
            return Because.TESTS_DISAGREE
        over = "" if metres == rep_m else f" over {show_number(metres)} m"
        at_effort: Working = Labelled(_best(segment, metres), f"best time{over}", "s")
        if over:
            at_effort = Product(
                (at_effort, Quotient(Known(round(piece_m, 4), "m"), Known(metres, "m")))
            )
        elif distance != rep_distance:
            share = Quotient(Known(float(distance)), Known(float(rep_distance)))
            at_effort = Product((at_effort, share))
        share_of_best = self.scale.share(word, self.level)
        if share_of_best != 1:
            at_effort = Quotient(at_effort, Known(share_of_best, self.scale.titles[word]))
        if piece_m < self.policy.slowest_afloat(self.level) * at_effort.value:
            return Because.TOO_SLOW
        return at_effort


def _best(segment: Segment, metres: float) -> Working:
    """The best time over a distance: the test's own where it was tested."""
    test = segment.nearest(metres)
    reference = Known(test.seconds, "tested", "s")
    if metres == test.metres:
        return reference
    ends = tuple((point.metres, point.seconds) for point in segment.ends)
    return PowerLaw(reference, test.metres, metres, segment.exponent, ends)
