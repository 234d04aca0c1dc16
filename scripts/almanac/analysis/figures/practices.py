"""The figures of a practice."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from operator import attrgetter

from almanac.analysis.figures.facets import FACET_WORD, SHARES, facet_words, partly
from almanac.analysis.figures.figure import Figure, Section, Shown
from almanac.arithmetic.by_time import lengths_in
from almanac.arithmetic.facets import distance_working
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.practice_workings import practice_time, slack
from almanac.arithmetic.session_load import planned_load, session_minutes, session_rating
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.working import Working


@dataclass(frozen=True)
class PracticeForGroup:
    """A practice and one of the lane groups that it is for."""

    summary: PracticeSummary
    group: str

    @property
    def swum(self) -> Swum:
        """What the lane group swims."""
        return self.summary.of(self.group)

    @property
    def load(self) -> Working | None:
        """The lane group's planned load."""
        return planned_load(self.summary, self.group)

    @property
    def minutes(self) -> Working | None:
        """Minutes of the session for the lane group."""
        return session_minutes(self.summary, self.group)

    @property
    def rating(self) -> Working | None:
        """The rating that the session is planned at for the lane group."""
        return session_rating(self.summary, self.group)


@dataclass(frozen=True)
class PartForGroup:
    """A part of a practice, on the clock of one lane group; ``unit`` is the pool's."""

    run: PartRun
    group: str
    unit: str

    @property
    def distance(self) -> Working:
        """What the lane group swims in it."""
        return self.run.of(self.group).distance

    @property
    def clock(self) -> Working | None:
        """What the part takes the lane group."""
        return self.run.takes(self.group)


def _unit(swum: Swum) -> str:
    return swum.course.unit.value


def _swum(whole: PracticeForGroup) -> Iterator[tuple[str, Swum]]:
    yield "{}", whole.swum


def _itself(whole: PracticeForGroup) -> Iterator[tuple[str, PracticeSummary]]:
    yield "{}", whole.summary


def _parts(whole: PracticeForGroup) -> Iterator[tuple[str, PartForGroup]]:
    for number, run in enumerate(whole.summary.runs_of(whole.group), 1):
        yield f"part {number} {{}}", PartForGroup(run, whole.group, _unit(run.first))


TOTALS: tuple[Figure[Swum], ...] = (
    Figure("distance", "Distance", attrgetter("distance"), Shown.DISTANCE, _unit,
           (distance_working, lengths_in), partly=partly),
)  # fmt: skip

OF_GROUPS: tuple[Figure[PracticeForGroup], ...] = (
    Figure("minutes", "Minutes", attrgetter("minutes"), Shown.WHOLE, "min",
           (session_minutes,)),
    Figure("rating", "Planned rating", attrgetter("rating"), Shown.NUMBER,
           explained=(session_rating,)),
    Figure("load", "Planned load", attrgetter("load"), Shown.WHOLE, explained=(planned_load,)),
)  # fmt: skip

OF_PARTS: tuple[Figure[PartForGroup], ...] = (
    Figure("distance", "Distance", attrgetter("distance"), Shown.DISTANCE,
           lambda part: part.unit, (distance_working,),
           partly=lambda part: partly(part.run.of(part.group))),
    Figure("clock", "Clock", attrgetter("clock"), Shown.TIME, explained=(PartRun.takes,)),
)  # fmt: skip

TIME: tuple[Figure[PracticeSummary], ...] = (
    Figure("time", "Time", practice_time, Shown.TIME),
    Figure("slack", "To spare", slack, Shown.TIME),
)

PRACTICE = (
    Section("practice", _swum, {"totals": TOTALS}, "Distance"),
    Section("facet", lambda whole: facet_words(whole.swum, _unit(whole.swum)),
            {"words": FACET_WORD}, "Distance"),
    Section("group", lambda whole: iter([("{}", whole)]), {"load": OF_GROUPS}, "Clock"),
    Section("part", _parts, {"sheet": OF_PARTS}, "Clock"),
    Section("time", _itself, {"time": TIME}, "Clock"),
    Section("shares", _swum, {"shares": SHARES}, "Distance"),
)  # fmt: skip
