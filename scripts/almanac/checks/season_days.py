"""Rules on the days of blocks beside their season: closures, exams, tests, the block before."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from datetime import date
from itertools import pairwise
from statistics import median

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.known_tests import repeat_weeks
from almanac.arithmetic.season_days import TestRules, overdue, runs_of_tests
from almanac.arithmetic.week_change import WeekOfBlock, distance_change, load_change, whole_load
from almanac.checks.rule import Problem, forbids, warns
from almanac.checks.seasons import blocks_in
from almanac.checks.squad_days import path_of_day
from almanac.model.season import Season
from almanac.units import show_change, show_share


def _summaries(analysis: Analysis, season: Season) -> Iterator[BlockSummary]:
    """The blocks of a season that can be worked out, each for its squad's first lane group."""
    for squad in season.squads:
        for block in blocks_in(analysis, season, squad):
            groups = analysis.blocks.get(block.id)
            if groups and block.squad == squad:
                yield next(iter(groups.values()))


@forbids("closed-day")
def closed_day(analysis: Analysis) -> Iterator[Problem]:
    """No block of a season has a session on a day on which nobody trains, a practice in a pool that
    is shut then, or a session outside all terms; none of its meets lies on such a day or in such a
    pool, and no slot that a timetable of it has on a single day.
    """
    for season in analysis.catalogue.seasons.values():
        yield from _closed_meets(analysis, season)
        yield from _closed_slots(analysis, season)
        is_sound = all(own.first <= own.last for own in season.terms)  # else season-dates tells it
        for summary in _summaries(analysis, season):
            for day in summary.days:
                shut = [
                    season.is_shut(day.on, own.practice.practice.pool if own.practice else "")
                    for own in day.sessions
                ]
                closure = next((own for own in shut if own), None)
                if closure:
                    said = f"{day.on} lies in '{closure.title}'"
                elif (
                    day.sessions and is_sound and not any(own.holds(day.on) for own in season.terms)
                ):
                    said = f"{day.on} lies in no term"
                else:
                    continue
                mend = f"rest on that day, or correct '{season.id}'"
                path = path_of_day(summary.block, day)
                yield Problem(summary.block, path, said, mend, of_key=True)


def _closed_meets(analysis: Analysis, season: Season) -> Iterator[Problem]:
    for meet in (analysis.catalogue.meets[id] for id in season.meets):
        for number, day in enumerate(meet.days):
            if closure := season.is_shut(day.on, meet.pool):
                said = f"{day.on} lies in '{closure.title}'"
                mend = f"name another day or pool, or correct '{season.id}'"
                yield Problem(meet, ("days", number, "on"), said, mend)


def _closed_slots(analysis: Analysis, season: Season) -> Iterator[Problem]:
    for table in (analysis.catalogue.timetables[id] for id in season.timetables):
        for number, slot in enumerate(table.slots):
            for place, on in enumerate(slot.on):
                if closure := season.is_shut(on, slot.pool):
                    said = f"{on} lies in '{closure.title}'"
                    mend = f"take the day out, or correct '{season.id}'"
                    yield Problem(table, ("slots", number, "on", place), said, mend)


@warns("exams-not-lighter")
def exams_not_lighter(analysis: Analysis) -> Iterator[Problem]:
    """A week of a block in which swimmers of the squad sit exams weighs no more than the policy's
    ``exam_week_most`` of the median of the block's loading weeks without any.
    """
    most = analysis.catalogue.policy.limit("exam_week_most")
    for season in analysis.catalogue.seasons.values():
        for summary in _summaries(analysis, season):
            own = [one for one in season.exams if summary.block.squad in one.squads]
            hard = {
                week.number: exam
                for week in summary.weeks
                for exam in own
                if exam.meets(week.days[0].on, week.days[4].on)
            }
            loading = [w for w in summary.weeks if w.week.is_loading and w.number not in hard]
            usual = [load for load in map(whole_load, loading) if load is not None]
            for week in summary.weeks:
                load = whole_load(week)
                if week.number in hard and usual and load is not None:
                    share = load / median(usual)
                    if share > most:
                        said = f"'{hard[week.number].title}', and the week weighs"
                        said = f"{said} {show_share(share)} of a usual one"
                        mend = f"{show_share(most)} at most: shorter evenings, or one fewer"
                        path = ("weeks", week.number - 1)
                        yield Problem(summary.block, path, said, mend)


@warns("test-overdue")
def test_overdue(analysis: Analysis) -> Iterator[Problem]:
    """From today on the benchmarks that a squad runs all season are run as often as each of them
    asks (``repeat_every``), ``test_late_most`` days more and holidays not counted: as lane groups
    swam them, as blocks plan them, as outlines name them.
    """
    catalogue = analysis.catalogue
    late = catalogue.policy.limit("test_late_most")
    for season in catalogue.seasons.values():
        for squad, plan in season.squads.items():
            rules = test_rules(analysis, season, squad)
            runs = runs_of_tests(season, plan, blocks_in(analysis, season, squad), rules)
            for own in overdue(season, runs, rules, late):
                said = f"'{own.benchmark}' is due by {own.due}"
                said += f", and run on {own.run}" if own.run else ", and not run any more"
                mend = "name it in a week of a block, or under tests of an outline"
                path = ("squads", squad, "tests", plan.tests.index(own.benchmark))
                yield Problem(season, path, said, mend)


def test_rules(analysis: Analysis, season: Season, squad: str) -> TestRules:
    """When the benchmarks of a squad's season are run, by its lane groups and by each benchmark."""
    catalogue, found = analysis.catalogue, defaultdict[str, list[date]](list)
    for group in catalogue.lane_groups.values():
        for test in group.tests if group.squad == squad else ():
            found[test.benchmark].append(test.on)
    weeks = {id: repeat_weeks(catalogue.benchmarks[id]) for id in season.squads[squad].tests}
    return TestRules(weeks, found, analysis.today)


@warns("first-week-jumps")
def first_week_jumps(analysis: Analysis) -> Iterator[Problem]:
    """A block that follows another of its squad within a week begins where that one ended: its
    first week lies no more than the policy's ``week_rise_look`` above the median of the last four,
    in load and in metres. Not told after a taper, a holiday, or of a light week.
    """
    look = analysis.catalogue.policy.limit("week_rise_look")
    told = set[str]()
    for row in analysis.joined_blocks:
        for before, own in pairwise(row.blocks):
            if own.days[0].on <= before.days[-1].on or own.block.id in told:
                continue
            of = WeekOfBlock(own.weeks[0], before.weeks, own.rules.least_load, row.group)
            rises = {"load": load_change(of), "distance": distance_change(of)}
            high = {name: own.value for name, own in rises.items() if own and own.value > look}
            if high and rises["load"]:
                told.add(own.block.id)
                what = " and ".join(f"{name} {show_change(rise)}" for name, rise in high.items())
                said = f"after '{before.block.id}' the first week rises: {what}"
                mend = f"the club looks twice above {show_share(look)}: begin lower"
                yield Problem(own.block, ("weeks", 0), said, mend)
