"""Rules on lane groups in the water: time to rest, and room in the lane. For sets, and for items of
a practice in place.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.lanes import crowded, gap_for, heads_in_lane, too_tight
from almanac.arithmetic.timed_reps import GroupClock
from almanac.checks.rule import Problem, warns
from almanac.model.entry import Entry
from almanac.model.swim_set import Item
from almanac.model.walk import sendoff_path
from almanac.source.reader import DataPath
from almanac.units import Course, show_number, show_time


@dataclass(frozen=True)
class _Swum:
    """Items as the lane groups that they are meant for swim them; ``path`` leads to the piece that
    holds them.
    """

    entry: Entry
    path: DataPath
    items: tuple[Item, ...]
    course: Course
    most_in_lane: int | None
    clocks: Mapping[str, GroupClock]


def _swum(analysis: Analysis) -> Iterator[_Swum]:
    for id, swim_set in analysis.computable.items():
        clocks = analysis.summary(id).clocks
        meant = {group: clocks[group] for group in analysis.meant(swim_set)}
        yield _Swum(swim_set, (), swim_set.items, swim_set.course, swim_set.most_in_lane, meant)
    for id, summary in analysis.practices.items():
        for number, run in enumerate(summary.runs):
            if run.swim_set is None:
                practice = analysis.catalogue.practices[id]
                yield _Swum(
                    practice,
                    ("parts", number),
                    run.part.items,
                    summary.pool.course,
                    None,
                    run.clocks,
                )


@warns("sendoff-too-tight")
def sendoff_too_tight(analysis: Analysis) -> Iterator[Problem]:
    """A send-off leaves at least the rest that the effort needs (``rest`` in the policy), for each
    lane group.

    A send-off below the target itself can never be made: the message says so.
    """
    for swum in _swum(analysis):
        for group, run in swum.clocks.items():
            title = analysis.catalogue.lane_groups[group].title
            for tight in too_tight(run, analysis.timing.clock(group, swum.course)):
                timed = tight.timed
                target, sendoff = (
                    show_time(timed.target_s or 0, tenths=True),
                    show_time(timed.sendoff_s or 0),
                )
                short = (
                    "is below the target"
                    if tight.too_short
                    else f"leaves {show_number(timed.rest_s or 0)} s"
                )
                least = show_number(tight.least_rest_s)
                message = (
                    f"{title}: a send-off of {sendoff} {short}: target {target} and least "
                    f"rest {least} s"
                )
                path = _sendoff_path(swum, timed.rep.path, group)
                fits, wanted = show_time(tight.fits_s), show_time(tight.suggested_s)
                hint = f"write {fits}, the nearest that fits"
                if wanted != fits:
                    hint += f"; {wanted} leaves the rest that the effort wants"
                yield Problem(swum.entry, path, message, hint)


@warns("lane-crowded")
def lane_crowded(analysis: Analysis) -> Iterator[Problem]:
    """The last swimmer in a lane has left before the leader is back at the wall.

    The gap between swimmers is the lane group's own, and on the back at least the policy's
    ``gap_on_back``, because a swimmer on the back cannot see ahead.
    """
    policy = analysis.catalogue.policy
    for swum in _swum(analysis):
        for group, run in swum.clocks.items():
            title = analysis.catalogue.lane_groups[group].title
            for full in crowded(
                run, analysis.catalogue.lane_groups[group], policy, swum.course, swum.most_in_lane
            ):
                message = (
                    f"{title}: with {full.heads} in a lane {show_number(full.gap_s)} s "
                    "apart the last leaves at"
                    f" {show_time(full.last_leaves_s)}, and the leader comes back at "
                    f"{show_time(full.back_s, tenths=True)}"
                )
                hint = f"at most {full.most_heads} in a lane, longer reps, or leave from both ends"
                yield Problem(swum.entry, (*swum.path, *full.timed.rep.path), message, hint)


@warns("gap-over-sendoff")
def gap_over_sendoff(analysis: Analysis) -> Iterator[Problem]:
    """The gap between swimmers is shorter than the send-off, or the leader leaves again before the
    second.
    """
    for swum in _swum(analysis):
        for group, run in swum.clocks.items():
            title = analysis.catalogue.lane_groups[group].title
            lane_group, seen = analysis.catalogue.lane_groups[group], set[DataPath]()
            for timed in run.reps:
                gap = gap_for(timed.rep, lane_group, analysis.catalogue.policy)
                shared = heads_in_lane(lane_group, swum.most_in_lane) > 1
                if (
                    shared
                    and timed.sendoff_s
                    and gap >= timed.sendoff_s
                    and timed.rep.path not in seen
                ):
                    seen.add(timed.rep.path)
                    message = (
                        f"{title}: a gap of {show_number(gap)} s is not below the send-off "
                        f"of {show_time(timed.sendoff_s)}"
                    )
                    path = _sendoff_path(swum, timed.rep.path, group)
                    yield Problem(
                        swum.entry, path, message, "lengthen the send-off, or put fewer in a lane"
                    )


def _sendoff_path(swum: _Swum, path: DataPath, group: str) -> DataPath:
    return (*swum.path, *sendoff_path(swum.items, path, group))
