"""What of a season lies on which days: weeks of a squad that nothing is planned for, and when its
tests are due.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from itertools import groupby, pairwise

from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.model.block import Block
from almanac.model.season import Season, SquadSeason

ONE_DAY = timedelta(days=1)


def last_day(block: Block) -> date:
    """The last day of a block: the Sunday of its last week."""
    return block.starts + timedelta(days=DAYS_A_WEEK * len(block.weeks) - 1)


def monday_of(on: date) -> date:
    """The Monday of a day's week."""
    return on - timedelta(days=on.weekday())


def mondays(season: Season) -> Iterator[date]:
    """The Monday of each week of a season, the first and the last included."""
    on = monday_of(season.first)
    while on <= season.last:
        yield on
        on += timedelta(days=DAYS_A_WEEK)


def unplanned(
    season: Season, own: SquadSeason, blocks: Sequence[Block]
) -> Iterator[tuple[date, date]]:
    """The stretches of term days that no block and no outline of a squad holds: first and last."""
    held = [(block.starts, last_day(block)) for block in blocks]
    held += [(outline.first, outline.last) for outline in own.outlines]
    days = [season.first + timedelta(days=n) for n in range((season.last - season.first).days + 1)]
    bare = [
        on
        for on in days
        if season.is_term(on) and not any(first <= on <= last for first, last in held)
    ]
    # Days in a row are all as far from their numbers.
    for _, run in groupby(enumerate(bare), key=lambda own: own[1].toordinal() - own[0]):
        stretch = [on for _, on in run]
        yield stretch[0], stretch[-1]


@dataclass(frozen=True)
class TestRules:
    """When benchmarks are run: so many ``weeks`` after the last time, by benchmark; on which days
    lane groups swam them (``known``), and what is ``today``.
    """

    __test__ = False
    weeks: Mapping[str, int]
    known: Mapping[str, Sequence[date]]
    today: date


def runs_of_tests(
    season: Season, own: SquadSeason, blocks: Sequence[Block], rules: TestRules
) -> dict[str, list[date]]:
    """By benchmark of a squad the days on which it is run in a season, in order: those on which it
    was; and from this week on those that are planned, the Mondays of the weeks of blocks that name
    it, and in outlines that do the first day and so many weeks after it. Of two within a week, the
    first.
    """
    found = {}
    for id in own.tests:
        planned = [
            block.starts + timedelta(days=DAYS_A_WEEK * number)
            for block in blocks
            for number, week in enumerate(block.weeks)
            if id in week.benchmarks
        ]
        for outline in own.outlines:
            on = outline.first
            while id in outline.tests and on <= outline.last:
                planned.append(on)
                on += timedelta(days=DAYS_A_WEEK * rules.weeks[id])
        swum = [on for on in rules.known.get(id, ()) if season.first <= on <= season.last]
        to_come = [on for on in planned if on >= monday_of(rules.today)]
        found[id] = list(_apart(sorted([*swum, *to_come])))
    return found


def _apart(days: Sequence[date]) -> Iterator[date]:
    last = date.min
    for on in days:
        if (on - last).days >= DAYS_A_WEEK:
            yield on
            last = on


@dataclass(frozen=True)
class Overdue:
    """A benchmark that is due by a day and not run until another, None where never again."""

    benchmark: str
    due: date
    run: date | None


def overdue(
    season: Season, runs: Mapping[str, Sequence[date]], rules: TestRules, late: float
) -> Iterator[Overdue]:
    """The benchmarks that are run more than ``late`` days after they are due: so many weeks after
    they were run last, or after the season began; days on which nobody trains do not count. What
    was due before today is past mending, and not told.
    """
    for id, days in runs.items():
        ends = season.last + ONE_DAY
        for before, after in pairwise([season.first, *days, ends]):
            due = _after(season, before, DAYS_A_WEEK * rules.weeks[id])
            if due >= rules.today and _after(season, due, int(late)) < after:
                yield Overdue(id, due, None if after == ends else after)


def _after(season: Season, on: date, days: int) -> date:
    """The day so many days after another, those left out on which nobody trains."""
    while days > 0:
        on += ONE_DAY
        days -= season.is_shut(on) is None
    return on
