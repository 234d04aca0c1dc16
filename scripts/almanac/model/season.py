"""Seasons: a year of the club, its terms and closures, its meets, the blocks of its squads."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from datetime import date
from typing import ClassVar

from almanac.model.entry import Entry, Ids, Reference, references
from almanac.units import Course


@dataclass(frozen=True, kw_only=True)
class Stretch:
    """From its ``first`` day to its ``last``, both included: a term, say."""

    title: str
    first: date
    last: date

    def holds(self, on: date) -> bool:
        """Whether a day lies in it."""
        return self.first <= on <= self.last

    def meets(self, first: date, last: date) -> bool:
        """Whether some day from one to another lies in it."""
        return self.first <= last and first <= self.last


@dataclass(frozen=True, kw_only=True)
class Closure(Stretch):
    """When some ``pools`` are shut; where none is named, nobody trains at all."""

    pools: Ids = ()


@dataclass(frozen=True, kw_only=True)
class Exams(Stretch):
    """When swimmers of some squads sit exams."""

    squads: Ids


@dataclass(frozen=True, kw_only=True)
class CourseChange(Stretch):
    """When some squads train in another course than at home."""

    course: Course
    squads: Ids


@dataclass(frozen=True, kw_only=True)
class Outline(Stretch):
    """Weeks that no block holds yet: what they are ``meant`` for, and the benchmarks that are run
    in them, from the first day on as often as each asks.
    """

    meant: str
    tests: Ids = ()


@dataclass(frozen=True, kw_only=True)
class SquadSeason:
    """What a squad does: its aim, its blocks in order, what is meant where it has none yet, and the
    benchmarks that it runs all season.
    """

    aim: str
    blocks: Ids = ()
    outlines: tuple[Outline, ...] = ()
    tests: Ids = ()


@dataclass(frozen=True, kw_only=True)
class Season(Entry):
    """A year of the club."""

    kind: ClassVar[str] = "season"
    first: date
    last: date
    terms: tuple[Stretch, ...]
    closures: tuple[Closure, ...] = ()
    exams: tuple[Exams, ...] = ()
    courses: tuple[CourseChange, ...] = ()
    meets: Ids = ()
    timetables: Ids = ()
    squads: Mapping[str, SquadSeason] = field(default_factory=dict)

    def is_shut(self, on: date, pool: str = "") -> Closure | None:
        """The closure that a day lies in: of one pool, or of all where none is asked for."""
        here = (own for own in self.closures if own.holds(on))
        return next((own for own in here if not own.pools or pool in own.pools), None)

    def is_term(self, on: date) -> bool:
        """Whether a day lies in a term, and is no day on which nobody trains."""
        return any(term.holds(on) for term in self.terms) and self.is_shut(on) is None

    def references(self) -> Iterator[Reference]:
        yield from references("squad", self.squads, "for")
        yield from references("meet", self.meets, "holds")
        yield from references("timetable", self.timetables, "holds")
        for closure in self.closures:
            yield from references("pool", closure.pools, "shuts")
        named: tuple[Exams | CourseChange, ...] = (*self.exams, *self.courses)
        for one in named:
            yield from references("squad", one.squads, "for")
        for own in self.squads.values():
            yield from references("block", own.blocks, "holds")
            yield from references("benchmark", own.tests, "runs")
            for outline in own.outlines:
                yield from references("benchmark", outline.tests, "runs")
