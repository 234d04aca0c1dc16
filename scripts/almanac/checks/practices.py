"""Rules on practices: do they fit the slot, the lanes and the gear, and are they laid in a sound
order.
"""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.effort import EffortScale
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.warm_and_easy import Told, Words, effort_words_of, ending, opening
from almanac.checks.each_practice import practices_of
from almanac.checks.rule import Problem, forbids, refuses, warns
from almanac.checks.sets import rep_words
from almanac.source.reader import DataPath
from almanac.units import show_distance, show_time

_LEAST_TALK_S = 10


@warns("practice-overruns")
def practice_overruns(analysis: Analysis) -> Iterator[Problem]:
    """A practice fits its slot: the slowest lane group is out of the water before the lanes are
    someone else's.
    """
    for practice, summary in practices_of(analysis):
        if summary.slack_s is not None and summary.slack_s < 0:
            message = (
                f"it takes {show_time(summary.ends_s or 0)} of a slot of "
                f"{practice.slot.minutes} minutes"
            )
            hint = f"take {show_time(-summary.slack_s)} out of it, or find a longer slot"
            yield Problem(practice, ("slot", "minutes"), message, hint)


@warns("talk-of-seconds")
def talk_of_seconds(analysis: Analysis) -> Iterator[Problem]:
    """Talk before a part takes ten seconds or more: a bare 3 is three seconds, not minutes."""
    for practice, _ in practices_of(analysis):
        for number, part in enumerate(practice.parts):
            if part.talk is not None and 0 < part.talk < _LEAST_TALK_S:
                message = f"the talk lasts {show_time(part.talk)}: a number alone is of seconds"
                hint = f"write {part.talk:g}:00 for minutes, or leave it out"
                yield Problem(practice, ("parts", number, "talk"), message, hint)


@forbids("lanes-short")
def lanes_short(analysis: Analysis) -> Iterator[Problem]:
    """The lane groups of a squad together fit the lanes that the club has in the pool."""
    for practice, summary in practices_of(analysis):
        lanes = sum(group.lanes for group in summary.groups.values())
        if lanes > summary.pool.lanes and not summary.pool.is_land:
            message = (
                f"the lane groups of {practice.squad} fill {lanes} lanes, and the club has "
                f"{summary.pool.lanes} here"
            )
            yield Problem(
                practice,
                ("pool",),
                message,
                "choose another pool, or put the groups together in plans/club.yml",
            )


@forbids("squad-empty")
def squad_empty(analysis: Analysis) -> Iterator[Problem]:
    """A squad that has practices has lane groups."""
    for practice, summary in practices_of(analysis):
        if not summary.groups:
            message = f"the squad '{practice.squad}' has no lane group"
            yield Problem(practice, ("squad",), message, "add its lane groups to plans/club.yml")


@forbids("part-mid-pool")
def part_mid_pool(analysis: Analysis) -> Iterator[Problem]:
    """Every rep of a practice ends at a wall of the pool that the practice is in, whatever its sets
    were written for; but for drills whose own dose is less than a length, as in sets.
    """
    for practice, summary in practices_of(analysis):
        told: set[DataPath] = set()  # a station comes once a turn
        for run in summary.runs:
            if run.swim_set and run.swim_set.course == summary.pool.course:
                continue  # rep-ends-mid-pool tells it at the set itself
            for misfit in run.misfits:
                if misfit.ends and run.path not in told:
                    told.add(run.path)
                    unit = summary.pool.course.unit
                    nearest = show_distance(misfit.nearest, unit)
                    message = (
                        f"{rep_words(misfit, unit)} ends between the walls of the "
                        f"{summary.pool.course} pool"
                    )
                    path = (*run.path, "set") if run.swim_set else (*run.path, *misfit.path)
                    yield Problem(
                        practice, path, message, f"the nearest that ends at a wall: {nearest}"
                    )
                    break


@warns("gear-short")
def gear_short(analysis: Analysis) -> Iterator[Problem]:
    """The club owns as much of each piece of gear as is in use at once."""
    for practice, summary in practices_of(analysis):
        for need in summary.gear:
            if need.short:
                message = (
                    f"{need.needed} use {need.gear} at once, and the club owns {need.owned or 0}"
                )
                hint = "let lanes take turns (most_in_lane in the set), or borrow"
                yield Problem(practice, need.run.path, message, hint)


@refuses("no-warm-up")
def no_warm_up(analysis: Analysis) -> Iterator[Problem]:
    """Something gentle is swum before the first fast rep. The vocabulary of efforts says which
    efforts count as fast and which as gentle (``counts_as``).
    """
    for practice, summary in practices_of(analysis):
        for path in _broken_at(analysis, summary, opening, 1):
            hint = "put easy swimming before it"
            level = analysis.catalogue.club.squads[practice.squad].level
            yield Problem(practice, path, "fast before any warm-up", hint, level=level)


@warns("no-easy-after-all-out")
def no_easy_after_all_out(analysis: Analysis) -> Iterator[Problem]:
    """Swimming at the easiest effort follows the last rep of a practice at the hardest."""
    efforts = analysis.catalogue.efforts
    scale = analysis.scale
    softly, hard = (efforts[word].title.lower() for word in (scale.easiest, scale.hardest))
    for practice, summary in practices_of(analysis):
        for path in _broken_at(analysis, summary, ending, -1):
            message = f"nothing {softly} after the last {hard} rep"
            yield Problem(practice, path, message, f"end with {softly} swimming")


Rule = Callable[[Iterable[Words], EffortScale], Told]


def _broken_at(
    analysis: Analysis, summary: PracticeSummary, rule: Rule, way: int
) -> dict[DataPath, None]:
    """The parts with a rep that breaks a rule on the order of efforts, read forwards (1) or
    backwards (-1), for whichever lane group, each once.
    """
    found: dict[DataPath, None] = {}
    for group in summary.groups:
        done = [(run.path, rep) for run in summary.runs_of(group) for rep in run.of(group).reps]
        done = done[::way]
        told = rule((effort_words_of(rep, analysis.scale) for _, rep in done), analysis.scale)
        if told and told[1]:
            found[done[told[0]][0]] = None
    return found
