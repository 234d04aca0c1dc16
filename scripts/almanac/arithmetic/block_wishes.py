"""What was wished of a block, and the workings of what it has of that."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from functools import cached_property

from almanac.arithmetic.appearances import practice_goals
from almanac.arithmetic.balance import Balance, balance_of
from almanac.arithmetic.block import BlockSummary, WeekPlan
from almanac.arithmetic.block_days import DayPlan
from almanac.arithmetic.block_workings import week_load_total
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.practice_aims import benchmarks_run, chief_goals
from almanac.arithmetic.week_change import WeekOfBlock
from almanac.arithmetic.working import Known, Product, Quotient, UpTo, Working, gathered
from almanac.model.benchmark import Benchmark

EACH_WEEKS = 2
"""So many weeks together have each stroke."""


@dataclass(frozen=True)
class GoalOfBlock:
    """A goal in a block: of so many ``practices`` so many parts, ``weight``, of ``whole`` are to be
    for it. Where nobody gave it a weight, 0, one practice that serves it is enough.
    """

    summary: BlockSummary
    goal: str
    practices: int
    weight: int = 0
    whole: int = 0

    @property
    def wished(self) -> int:
        """How many practices that comes to."""
        return round(practices_wished(self).value) if self.whole else 1


@dataclass(frozen=True)
class StrokeOfBlock:
    """A stroke in the pairs of weeks of a block, each with the first of its weeks."""

    stroke: str
    pairs: tuple[tuple[int, Balance], ...]

    def share_of(self, balance: Balance) -> float:
        """Its share of what is swum."""
        return balance.by.get("stroke", {}).get(self.stroke, 0.0) / balance.metres

    @property
    def least(self) -> tuple[int, Balance]:
        """The pair that has least of it."""
        return min(self.pairs, key=lambda pair: self.share_of(pair[1]))


@dataclass(frozen=True)
class LoadOfBlock:
    """A week beside the load that was wished of it, in hundredths of ``full``; what the days of a
    race weigh, ``races``, comes on top of both.
    """

    week: WeekPlan
    wished: int
    full: float
    races: tuple[DayPlan, ...] = ()

    @cached_property
    def part(self) -> float | None:
        """Its load in hundredths of a full one; None where a day of it is not known."""
        working = part_of_full(self)
        return None if working is None else 100 * working.value

    @property
    def of_races(self) -> float:
        """What its races weigh."""
        return sum(day.load or 0.0 for day in self.races)


def goals_of(summary: BlockSummary) -> list[GoalOfBlock]:
    """Its goals with how many practices are wished for each: its share of the weights, of all
    practices, rounded up; one, where no weights were said.
    """
    block = summary.block
    weights = dict(block.wishes.goals) if block.wishes else {}
    sessions, whole = sum(1 for _ in _practices(summary)), sum(weights.values())
    if not weights:
        return [GoalOfBlock(summary, goal, sessions) for goal in block.goals]
    return [GoalOfBlock(summary, goal, sessions, own, whole) for goal, own in weights.items()]


def practices_wished(of: GoalOfBlock) -> Working:
    """All practices × the weight of a goal ÷ the weights of all goals, rounded up."""
    practices = Known(of.practices, "practice" if of.practices == 1 else "practices")
    if of.weight == of.whole:  # the one goal has all: a share of 1 would say nothing
        return practices
    exact = Quotient(Product((practices, Known(of.weight))), Known(of.whole))
    return exact if exact.value == round(exact.value) else UpTo(exact, 1, "")


def practices_for(of: GoalOfBlock) -> Working:
    """The practices that are chiefly for a goal, counted: at least a fifth of the metres of their
    sets and drills serves it, warm-up and cool-down left out. Where no weights were said, those
    that serve it at all: by a set that names it, or by a drill that stands by itself.
    """
    goals = chief_goals if of.whole else practice_goals
    weeks = [
        Known(count, f"week {week.number}")
        for week in of.summary.weeks
        if (count := sum(of.goal in goals(own) for own in _of_week(week)))
    ]
    return gathered(weeks) if weeks else Known(0)


def strokes_of(summary: BlockSummary) -> list[StrokeOfBlock]:
    """The four strokes, where a least share of each was wished of any two weeks."""
    if not (summary.block.wishes and summary.block.wishes.strokes):
        return []
    pairs = []
    for at in range(0, len(summary.weeks) - 1, EACH_WEEKS):  # an odd last week has no other
        days = [day for week in summary.weeks[at : at + EACH_WEEKS] for day in week.days]
        own = balance_of(swum for day in days for swum in day.swum)
        if own.metres:
            pairs.append((at + 1, own))
    return [StrokeOfBlock(stroke, tuple(pairs)) for stroke in summary.rules.four if pairs]


def least_of_two_weeks(of: StrokeOfBlock) -> Working:
    """The metres of a stroke over all metres, in the two weeks that have least of it."""
    first, balance = of.least
    weeks = f"weeks {first} and {first + 1}"
    part = Known(of.share_of(balance) * balance.metres, "of the stroke", "m")
    return Quotient(part, Known(balance.metres, f"in {weeks}", "m"))


def loads_of(summary: BlockSummary) -> Iterator[LoadOfBlock]:
    """Each week whose load was wished, and in which there is anything."""
    wishes, full = summary.block.wishes, full_load(summary)
    if not (wishes and full):
        return
    for wished, week in zip(wishes.loads, summary.weeks, strict=False):
        if not week.is_holiday:
            yield LoadOfBlock(week, wished, full, tuple(races_in(summary, week)))


def races_in(summary: BlockSummary, week: WeekPlan) -> Iterator[DayPlan]:
    """The days of the race in a week: its own, and the days of its meet that hold no practice."""
    for day in week.days:
        is_bare = bool(day.sessions) and not day.practices
        if day.on == summary.block.race_day or (is_bare and day.on in summary.meet_days):
            yield day


def full_load(summary: BlockSummary) -> float:
    """The load of a full week: as the block says, else the heaviest week's that is known."""
    wishes = summary.block.wishes
    if wishes and wishes.full_load:
        return float(wishes.full_load)
    known = (week.load.total for week in summary.weeks if week.load and week.load.is_whole)
    return max(known, default=0.0)


def part_of_full(of: LoadOfBlock) -> Working | None:
    """The load of the week, but for its races, over that of a full one."""
    if not (of.week.load and of.week.load.is_whole):
        return None
    week = replace(of.week, days=tuple(day for day in of.week.days if day not in of.races))
    load = week_load_total(WeekOfBlock(week))
    return load and Quotient(load, Known(of.full, "a full week"))


def weeks_run(summary: BlockSummary, benchmarks: Mapping[str, Benchmark]) -> dict[str, list[int]]:
    """By benchmark that its weeks name, those in which a practice runs it."""
    named = dict.fromkeys(own for week in summary.block.weeks for own in week.benchmarks)
    tested = {id: benchmarks[id] for id in named}
    found: dict[str, list[int]] = {id: [] for id in named}
    for week in summary.weeks:
        for practice in _of_week(week):
            for id in benchmarks_run(tested, practice):
                if week.number not in found[id]:
                    found[id].append(week.number)
    return found


def _practices(summary: BlockSummary) -> Iterator[PracticeSummary]:
    for week in summary.weeks:
        yield from _of_week(week)


def _of_week(week: WeekPlan) -> Iterator[PracticeSummary]:
    for day in week.days:
        yield from day.practices
