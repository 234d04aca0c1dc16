"""A swimmer by one or two tests, as calculators are given them."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass

from almanac.analysis.calculators.calculator import (
    ClubNumbers,
    Field,
    Given,
    NoAnswer,
    Takes,
    word,
)
from almanac.arithmetic.effort_pace import EffortPace
from almanac.arithmetic.known_tests import TestPoint
from almanac.arithmetic.pace_lines import Because, PaceLine, line_through
from almanac.arithmetic.working import Working
from almanac.units import COURSES, Course

_TESTS = (
    Field("distance", "First test, distance", least=10, most=5_000),
    Field("time", "First test, time", Takes.TIME, least=5, most=7_200),
    Field("distance-2", "Second test, distance", least=10, most=5_000, optional=True),
    Field("time-2", "Second test, time", Takes.TIME, least=5, most=7_200, optional=True),
)
REFUSALS = {
    "half-a-test": "The second test needs both: its distance and its time.",
    "same-distance": "Both tests are over the same distance: two distances make a line.",
    "tests-disagree": "These two times cannot both be right: from the one to the other the time "
    "grows with the distance to the power {exponent}, and swimmers' times lie between {least} and "
    "{most}. Look at the stopwatch again.",
    "too-slow": "At this effort a swimmer of this level would be slower than {slowest} m/s, and "
    "would not stay up. Take a harder effort or a shorter distance.",
}
POOLS = tuple((name, f"{course.length} {course.unit.value}") for name, course in COURSES.items())


def tested_in(club: ClubNumbers) -> tuple[Field, ...]:
    """What is asked of the tests: distances, times, pool and level."""
    levels = tuple((name, own.title) for name, own in club.catalogue.words("levels").items())
    return (
        *_TESTS,
        Field("pool", "Pool of the tests", Takes.CHOICE, default="25m", choices=POOLS),
        Field("level", "Level", Takes.CHOICE, default=levels[-1][0], choices=levels),
    )


def effort_field(club: ClubNumbers, name: str, title: str, at: int) -> Field:
    """A choice of the club's efforts, the one at place ``at`` first."""
    words = tuple((name, own.title) for name, own in club.catalogue.efforts.items())
    default = words[min(at, len(words) - 1)][0]
    return Field(name, title, Takes.CHOICE, default=default, choices=words)


@dataclass(frozen=True)
class TestedSwimmer:
    """A swimmer by tests in one pool."""

    values: Mapping[str, Given]
    club: ClubNumbers
    line: PaceLine
    level: str

    def seconds(self, effort: str, distance: float, course: Course) -> Working:
        """The time over a distance, in a course's own unit, at an effort."""
        policy = self.club.catalogue.policy
        pace = EffortPace(self.line, self.club.scale, policy, course, self.level)
        found = pace.time(effort, distance, distance)
        if found is Because.TESTS_DISAGREE:
            segment = self.line.segment(distance * course.unit.metres)
            raise NoAnswer(
                "tests-disagree",
                exponent=segment.exponent,
                least=policy.limit("least_exponent"),
                most=policy.limit("greatest_exponent"),
            )
        if isinstance(found, Because):
            raise NoAnswer("too-slow", slowest=policy.slowest_afloat(self.level))
        return found


def tested_swimmer(values: Mapping[str, Given], club: ClubNumbers) -> TestedSwimmer:
    """The swimmer of the tests that are given. Raises NoAnswer where they make no line."""
    course = COURSES[word(values, "pool")]
    given = [(values.get(f"distance{end}"), values.get(f"time{end}")) for end in ("", "-2")]
    points = []
    for metres, seconds in given:
        if (metres is None) != (seconds is None):
            raise NoAnswer("half-a-test")
        if isinstance(metres, (int, float)) and isinstance(seconds, (int, float)):
            points.append(TestPoint(metres * course.unit.metres, seconds, "", course))
    if len({point.metres for point in points}) < len(points):
        raise NoAnswer("same-distance")
    ordered = tuple(sorted(points, key=lambda point: point.metres))
    line = line_through(ordered, club.catalogue.policy)
    return TestedSwimmer(values, club, line, word(values, "level"))
