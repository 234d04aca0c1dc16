"""Rules on lane groups in the water: time to rest, and room in the lane. For sets, and for items of
a practice in place.
"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import replace
from math import inf

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.lane_order import is_on_back
from almanac.arithmetic.lanes import Crowded, Room, crowded, rests_too_short, too_tight
from almanac.arithmetic.warm_and_easy import effort_words_of
from almanac.checks.on_the_clock import OnTheClock, swum_by_groups
from almanac.checks.rule import Problem, warns
from almanac.checks.ways import group_level
from almanac.model.walk import sendoff_path
from almanac.source.reader import DataPath
from almanac.units import show_number, show_time


@warns("sendoff-too-tight")
def sendoff_too_tight(analysis: Analysis) -> Iterator[Problem]:
    """A send-off leaves at least the rest that the effort needs (``rest`` in the policy), for each
    lane group.

    A send-off below the target itself can never be made: the message says so.
    """
    for swum in swum_by_groups(analysis):
        for group, run in swum.clocks.items():
            title = analysis.catalogue.lane_groups[group].title
            timer = analysis.timing.clock(group, swum.course)
            for tight in too_tight(run, replace(timer, most_in_lane=swum.most_in_lane)):
                timed = tight.timed
                sendoff = show_time(timed.sendoff_s or 0)
                target = show_time(timed.target_s or 0, tenths=True)
                if timed.rep.inner_rest_s:
                    target += f", {show_number(timed.rep.inner_rest_s)} s inside"
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
                if 2 * (timed.sendoff_s or 0) < (timed.target_s or 0):
                    hint += f"; or rest: {sendoff}, if that is the rest and no send-off"
                yield Problem(swum.entry, path, message, hint)


@warns("rest-too-short")
def rest_too_short(analysis: Analysis) -> Iterator[Problem]:
    """Plain rest between the reps of an item is at least what the effort needs (``rest`` in the
    policy), for each lane group. Reps without any rest are one go.
    """
    for swum in swum_by_groups(analysis):
        told = set[DataPath]()
        for group, run in swum.clocks.items():
            title = analysis.catalogue.lane_groups[group].title
            timer = analysis.timing.clock(group, swum.course)
            timer = replace(timer, most_in_lane=swum.most_in_lane)
            for timed, least in rests_too_short(run, timer):
                if timed.rep.path not in told:
                    told.add(timed.rep.path)
                    rest = show_time(timed.rep.item.rest or 0)
                    message = (
                        f"{title}: {rest} of rest, and the effort needs {show_number(least)} s"
                    )
                    path = (*swum.path, *timed.rep.path)
                    yield Problem(swum.entry, path, message, f"write {_up_to_five(least)} or more")


def _up_to_five(seconds: float) -> str:
    return show_time(5 * math.ceil(seconds / 5))


@warns("lane-crowded")
def lane_crowded(analysis: Analysis) -> Iterator[Problem]:
    """A lane has room for its swimmers, who go round in a circle: the leader, back after two
    lengths, meets nobody who has not left, and leaves again when the last has had the gap.

    The gap between swimmers is the lane group's own, and on the back at least the policy's
    ``gap_on_back``, because a swimmer on the back cannot see ahead. The leader is as quick as the
    group's ``quickest``. With waves, each is home before the next leaves.
    """
    for problem, is_blind in full_lanes(analysis):
        if not is_blind:  # back-crowded tells it
            yield problem


Full = tuple[Problem, bool]  # what has no room, and whether it is fast on the back


def full_lanes(analysis: Analysis) -> list[Full]:
    """Every lane without room, in the lanes that its group has. Worked out once."""
    return analysis.once(full_lanes, lambda: [*_full_lanes(analysis)])


def _full_lanes(analysis: Analysis) -> Iterator[Full]:
    for swum in swum_by_groups(analysis):
        for group, run in swum.clocks.items():
            if group in swum.elsewhere:
                continue  # part-crowded tells it, in the lanes that it has
            lane_group = analysis.catalogue.lane_groups[group]
            for full in crowded(run, lane_group, swum.course):
                message = f"{lane_group.title}: {crowded_words(full)}"
                path = (*swum.path, *full.timed.rep.path)
                problem = Problem(swum.entry, path, message, room_hint(full))
                level = group_level(analysis.catalogue, group)
                is_unseen = is_blind(analysis, full)
                if is_unseen or (full.timed.sendoff_s or inf) >= (full.timed.target_s or 0):
                    yield problem._replace(level=level), is_unseen
                # a send-off below the target is told by itself: nobody can leave on it


def is_blind(analysis: Analysis, full: Crowded) -> bool:
    """Whether those who have no room swim fast and see nothing ahead."""
    rep = full.timed.rep
    words = effort_words_of(rep, analysis.scale)
    return is_on_back(rep) and not words.isdisjoint(analysis.scale.fast)


def crowded_words(full: Crowded) -> str:
    """What of a lane has no room, in words."""
    order = full.order
    who = (
        f"{order.heads} in a lane"
        if order.waves == 1
        else f"waves of {order.at_once} ({order.heads} in a lane)"
    )
    is_wave = full.room is Room.WAVE  # its time is a target's, to the tenth
    takes = show_time(full.takes_s, tenths=is_wave)
    limit = show_time(full.limit_s, tenths=True)
    said = {
        Room.BACK: f"the last leaves at {takes}, and the leader is back at {limit}",
        Room.TAIL: f"the lane takes {takes}, and the leader is round two lengths, and in the tail "
        f"of the lane, at {limit}",
        Room.AGAIN: f"the lane takes {takes}, and the leader leaves again at {limit}",
        Room.WAVE: f"a wave is home at {takes}, and the next leaves at {limit}",
    }
    return f"with {who} {show_number(order.gap_s)} s apart {said[full.room]}"


def room_hint(full: Crowded) -> str:
    """What mends it: the heads that fit, waves, starts from both ends."""
    most, heads = full.most_heads, full.order.heads
    if full.order.waves > 1:
        return f"at most {most} swimmer{'s' * (most != 1)} a wave, more waves, or a longer send-off"
    hint = f"at most {most} in a lane (most_in_lane), or waves: {{number: {full.waves}}}"
    return hint + (", or starts from both ends" if math.ceil(heads / 2) <= most else "")


@warns("gap-over-sendoff")
def gap_over_sendoff(analysis: Analysis) -> Iterator[Problem]:
    """The gap between swimmers is shorter than the send-off, or the leader leaves again before the
    second.
    """
    for swum in swum_by_groups(analysis):
        for group, run in swum.clocks.items():
            title = analysis.catalogue.lane_groups[group].title
            seen = set[DataPath]()
            for timed in run.reps:
                gap, shared = timed.order.gap_s, timed.order.heads > 1
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


def _sendoff_path(swum: OnTheClock, path: DataPath, group: str) -> DataPath:
    return (*swum.path, *sendoff_path(swum.items, path, group))
