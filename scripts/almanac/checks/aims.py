"""Rules on a time to hold that a coach asks for: it fits the send-off, and the group's tests."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.aims import quickest_and_easiest
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import NoNumber
from almanac.arithmetic.timed_reps import TimedRep
from almanac.checks.on_the_clock import OnTheClock, swum_by_groups
from almanac.checks.rule import Problem, warns
from almanac.model.walk import aim_path
from almanac.source.reader import DataPath
from almanac.units import show_time

Aimed = tuple[
    OnTheClock, str, DataPath, TimedRep, float
]  # with the lane group, and the time to hold


@warns("aim-over-sendoff")
def aim_over_sendoff(analysis: Analysis) -> Iterator[Problem]:
    """A time to hold is below the send-off, for each lane group and in each round: else nobody
    could hold it and leave on time.
    """
    told: set[tuple[str, DataPath]] = set()
    for swum, _, path, timed, aim in _aimed(analysis):
        if not _is_over(timed, aim) or (swum.entry.file, path) in told:
            continue
        told.add((swum.entry.file, path))
        message = (
            f"a time to hold of {show_time(aim, tenths=True)} is not below the send-off "
            f"of {show_time(timed.sendoff_s or 0)}"
        )
        yield Problem(swum.entry, path, message, "ask for less, or lengthen the send-off")


@warns("aim-far-off")
def aim_far_off(analysis: Analysis) -> Iterator[Problem]:
    """A time to hold is one that the lane group's tests can stand behind: no quicker than its best
    time for the rep and no slower than its time at the easiest effort, each with ``aim_margin`` of
    the policy beyond it. Not looked at where a test is missing, where several take turns in a rep,
    and where it goes by time.
    """
    club = analysis.catalogue
    margin = club.policy.limit("aim_margin")
    easiest = club.efforts[next(iter(club.efforts))].title.lower()
    told: set[tuple[str, str, DataPath]] = set()
    for swum, group, path, timed, aim in _aimed(analysis):
        by_time = any(piece.hold_s is not None for piece in timed.rep.pieces)
        shared = timed.rep.item.manner.turns > 1
        if shared or by_time or _is_over(timed, aim) or (swum.entry.file, group, path) in told:
            continue
        told.add((swum.entry.file, group, path))
        pacer = analysis.timing.clock(group, swum.course).pacer
        best, slowest = (_tested_s(own) for own in quickest_and_easiest(pacer, timed.rep))
        what = ""
        if best is not None and aim < best * (1 - margin):
            what = f"quicker than its best, {_shown(best)}"
        elif slowest is not None and aim > slowest * (1 + margin):
            what = f"slower than {easiest}, {_shown(slowest)}"
        if what and best is not None:
            message = f"{club.lane_groups[group].title}: {_shown(aim)} is {what}"
            slow = f"{_shown(slowest)} ({easiest})" if slowest else "what it can stay up at"
            hint = f"ask for a time from {_shown(best)} to {slow}, or test the lane group again"
            yield Problem(swum.entry, path, message, hint)


def _is_over(timed: TimedRep, aim: float) -> bool:
    sendoff = None if timed.suggested else timed.sendoff_s
    return sendoff is not None and aim >= sendoff


def _tested_s(target: Target | NoNumber) -> float | None:
    """The seconds of a target that stands on tests."""
    return target.seconds if isinstance(target, Target) and not target.assumed else None


def _shown(seconds: float) -> str:
    return show_time(seconds, tenths=True)


def _aimed(analysis: Analysis) -> Iterator[Aimed]:
    """Every rep with a time to hold, for each lane group that it is meant for, with the place of
    that time in the file.
    """
    for swum in swum_by_groups(analysis):
        for group, run in swum.clocks.items():
            for timed in run.reps:
                if timed.aim is not None:
                    aim = timed.aim.value
                    path = aim_path(swum.items, timed.rep.path, group, aim)
                    yield swum, group, (*swum.path, *path), timed, aim
