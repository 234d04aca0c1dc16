"""When a block first and last uses each drill and goal, whether what a drill needs came first, and
its tests.
"""

from __future__ import annotations

import itertools
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.known_tests import repeat_weeks
from almanac.arithmetic.practice import PracticeSummary
from almanac.frozen import quick
from almanac.model.benchmark import Benchmark
from almanac.model.block import Week
from almanac.model.drill import Drill

_A_YEAR = timedelta(weeks=52)


@quick
@dataclass(frozen=True)
class Appearance:
    """The first and the last week, from 1, in which something is used, and on how many days."""

    first: int
    last: int
    days: int


@dataclass(frozen=True)
class LateNeed:
    """A drill used before what it needs first. Weeks from 1; ``need_first`` is None where the block
    never uses it.
    """

    drill: str
    need: str
    week: int
    practice: str
    need_first: int | None


@dataclass(frozen=True)
class BenchmarkPlan:
    """A benchmark's weeks in a block, from 1, and the weeks by which it was due and not run."""

    benchmark: str
    weeks: tuple[int, ...]
    due: tuple[int, ...]


def _practices(summary: BlockSummary) -> Iterator[tuple[int, PracticeSummary]]:
    for week in summary.weeks:
        for day in week.days:
            for practice in day.practices:
                yield week.number, practice


def drill_appearances(summary: BlockSummary) -> dict[str, Appearance]:
    """By drill, when it is used, in order of first use."""
    return _appearances(
        (week, list(dict.fromkeys(p.drill.id for p in practice.of(summary.group).pieces)))
        for week, practice in _practices(summary)
    )


def goal_appearances(summary: BlockSummary) -> dict[str, Appearance]:
    """By goal, when a practice serves it: by a set that names it, or by a drill of items in
    place.
    """
    return _appearances((week, practice_goals(practice)) for week, practice in _practices(summary))


def practice_goals(practice: PracticeSummary) -> list[str]:
    """The goals that a practice serves, in order of appearance."""
    goals: dict[str, None] = {}
    for run in practice.runs:
        own = (
            run.swim_set.goals
            if run.swim_set
            else (goal for rep in run.every_rep for p in rep.pieces for goal in p.drill.goals)
        )
        goals.update(dict.fromkeys(own))
    return list(goals)


def _appearances(days: Iterator[tuple[int, Sequence[str]]]) -> dict[str, Appearance]:
    found: dict[str, Appearance] = {}
    for week, ids in days:
        for id in ids:
            before = found.get(id)
            found[id] = Appearance(
                before.first if before else week, week, before.days + 1 if before else 1
            )
    return found


def drills_before(
    blocks: Iterable[Mapping[str, BlockSummary]], squad: str, group: str, day: date
) -> frozenset[str]:
    """The drills that a lane group's blocks have had which ended in the year before a day. Who has
    not done one for longer is taught it again: house preference.
    """
    found = set[str]()
    for groups in blocks:
        own = groups.get(group)
        if own and own.block.squad == squad and day - _A_YEAR <= own.days[-1].on < day:
            found |= drill_appearances(own).keys()
    return frozenset(found)


def late_needs(
    summary: BlockSummary,
    drills: Mapping[str, Drill],
    levels: Sequence[str],
    level: str,
    before: frozenset[str] = frozenset(),
) -> Iterator[LateNeed]:
    """Drills used before what they need first, once a pair.

    What is below the squad's own level is taken as known, and so is what was taught ``before``.
    Other drills must have been used on an earlier day, or earlier in the same practice.
    """
    first = {id: found.first for id, found in drill_appearances(summary).items()}
    taught = set(before)
    told: set[tuple[str, str]] = set()
    for week, practice in _practices(summary):
        for piece in practice.of(summary.group).pieces:
            for need in piece.drill.needs_first:
                known = levels.index(drills[need].level) < levels.index(level) or need in taught
                if not known and (piece.drill.id, need) not in told:
                    told.add((piece.drill.id, need))
                    yield LateNeed(
                        piece.drill.id, need, week, practice.practice.id, first.get(need)
                    )
            taught.add(piece.drill.id)


def benchmark_plans(
    weeks: Sequence[Week], benchmarks: Mapping[str, Benchmark]
) -> Iterator[BenchmarkPlan]:
    """By benchmark that the block runs: its weeks, and each week by which it was due again before
    the block's end.
    """
    placed: dict[str, list[int]] = {}
    for number, week in enumerate(weeks, 1):
        for id in week.benchmarks:
            placed.setdefault(id, []).append(number)
    for id, run in placed.items():
        every = repeat_weeks(benchmarks[id])
        stops = [*run, len(weeks) + 1]
        due = [
            before + every for before, after in itertools.pairwise(stops) if after - before > every
        ]
        yield BenchmarkPlan(id, tuple(run), tuple(due))
