"""Rules on what lane groups can swim at all: a known target, at a speed that keeps them up."""

from __future__ import annotations

from collections.abc import Collection, Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.pace_lines import Because, NoNumber, PaceLine
from almanac.checks.on_the_clock import OnTheClock, swum_by_groups
from almanac.checks.rule import Problem, warns
from almanac.model.assumed import Assumed
from almanac.model.walk import reps_with_paths
from almanac.source.reader import DataPath
from almanac.units import show_number


@warns("too-slow-to-stay-up")
def too_slow_to_stay_up(analysis: Analysis) -> Iterator[Problem]:
    """At its effort a lane group is not slower than the speed at which its level stays up
    (``slowest_afloat`` in the policy): below it there is no such rep, and so no target.
    """
    club = analysis.catalogue.club
    for swum, group, path, missing in _without_target(analysis, {Because.TOO_SLOW}):
        level = club.squads[club.lane_groups[group].squad].level
        slowest = show_number(analysis.catalogue.policy.slowest_afloat(level), 2)
        drill = analysis.catalogue.drills[missing.drill].title
        message = (
            f"{club.lane_groups[group].title}: {drill} would be slower than {slowest} m/s, "
            f"at which nobody of this level stays up"
        )
        hint = "ask for a harder effort, or for shorter reps with gear that carries"
        yield Problem(swum.entry, path, message, hint)


@warns("target-unknown")
def target_unknown(analysis: Analysis) -> Iterator[Problem]:
    """Every rep has a target for the lane groups that it is meant for: from a test, or assumed.

    Without one its part has no length, and nothing after it a time: the finding names the benchmark
    to swim, or the time to assume.
    """
    catalogue = analysis.catalogue
    reasons = {Because.NOT_TESTED, Because.NO_PACE_RULE}
    for swum, group, path, missing in _without_target(analysis, reasons):
        drill = catalogue.drills[missing.drill].title
        message = (
            f"{catalogue.lane_groups[group].title}: the time of {drill} is not known: "
            f"{missing.because.value}"
        )
        mend = (
            f"swim '{catalogue.benchmarks[missing.benchmark].title}'"
            if missing.benchmark
            else "give the drill a pace"
        )
        yield Problem(swum.entry, path, message, f"{mend}, or write assume: the time of one rep")


@warns("assumed-though-known")
def assumed_though_known(analysis: Analysis) -> Iterator[Problem]:
    """A time is assumed only where no test tells it: once one does, the assumption goes."""
    club = analysis.catalogue.club
    hint = "remove the assumed time: it is no longer used"
    for id, group in club.lane_groups.items():
        for number, own in enumerate(group.assume):
            course = analysis.catalogue.benchmarks[own.benchmark].protocol.course
            line = analysis.timing.clock(id, course).pacer.paces.line(own.benchmark, course)
            if isinstance(line, PaceLine) and not line.assumed:
                message = f"{group.title}: a test of it is known"
                yield Problem(club, ("lane_groups", id, "assume", number), message, hint)
    for swum in swum_by_groups(analysis):
        for item, path in reps_with_paths(swum.items):
            if item.assume:
                yield from _needless(analysis, swum, item.assume, path, hint)


def _needless(
    analysis: Analysis, swum: OnTheClock, assume: Assumed, path: DataPath, hint: str
) -> Iterator[Problem]:
    """The lane groups whose time is known all the same: each that is named, or all of them."""
    known = {
        group
        for group, run in swum.clocks.items()
        if not any(
            timed.rep.path == path and (isinstance(timed.target, NoNumber) or timed.target.assumed)
            for timed in run.reps
        )
    }
    where = (*swum.path, *path, "assume")
    for group in assume.by_group:
        if group in known:
            title = analysis.catalogue.lane_groups[group].title
            yield Problem(swum.entry, (*where, group), f"{title}: its tests tell the time", hint)
    if assume.every is not None and known and known == set(swum.clocks):
        yield Problem(swum.entry, where, "every group's tests tell the time", hint)


def _without_target(
    analysis: Analysis, because: Collection[Because]
) -> Iterator[tuple[OnTheClock, str, DataPath, NoNumber]]:
    """For each lane group, the items of which a rep has no target for one of these reasons, each
    item and drill once.
    """
    for swum in swum_by_groups(analysis):
        for group, run in swum.clocks.items():
            told: set[tuple[DataPath, str]] = set()
            for timed in run.reps:
                for missing in timed.pieces:
                    if not isinstance(missing, NoNumber) or missing.because not in because:
                        continue
                    if (timed.rep.path, missing.drill) not in told:
                        told.add((timed.rep.path, missing.drill))
                        yield swum, group, (*swum.path, *timed.rep.path), missing
