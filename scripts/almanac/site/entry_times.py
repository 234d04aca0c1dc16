"""How long entries take, as the finder reads it: whole seconds of the clock by pool and lane group,
and the smaller sizes in which a set may be taken.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.glance import drill_seconds
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.lanes import room_in_lane
from almanac.arithmetic.pace import Target
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.swum_by_group import ByGroup
from almanac.model.catalogue import Key
from almanac.model.drill import Drill
from almanac.model.swim_set import SwimSet
from almanac.report.ways import distance_words
from almanac.rounding import SECOND, half_up
from almanac.site.set_sizes import scale_of, size_words, summary_of_size
from almanac.units import COURSES

# Seconds until the last full send-off is over, below zero where they hang on an assumed time, 0
# where they are not known; until the last swimmer is home; the most swimmers that a lane has room
# for, 0 where nothing says so. A drill has the first alone.
Takes = list[int]


@dataclass(frozen=True)
class SetSize:
    """A set with fewer rounds or reps: how many, in words, what it takes each lane group in the
    set's own pool, and how far it then is, as ``far`` tells it.
    """

    number: int
    words: str
    takes: list[Takes]
    distance: tuple[str, ...] = ()


@dataclass(frozen=True)
class Times:
    """What an entry takes, by pool and then lane group; its smaller sizes, the largest first.
    ``gear_s`` is what putting on its first gear costs, in seconds.
    """

    takes: list[list[Takes]] = field(default_factory=list)
    cuts: tuple[SetSize, ...] = ()
    gear_s: int = 0


def times_of(analysis: Analysis, key: Key) -> Times:
    """The times of a drill or a set that can be worked out; of anything else none."""
    kind, id = key
    if kind == SwimSet.kind and id in analysis.computable:
        return _of_set(analysis, analysis.computable[id])
    if kind == Drill.kind:
        return _of_drill(analysis, analysis.catalogue.drills[id])
    return Times()


def _of_set(analysis: Analysis, swim_set: SwimSet) -> Times:
    pools = [analysis.summary_in(swim_set.id, course) for course in COURSES.values()]
    first = next(iter(pools[0].reps), None)
    worn = first.pieces[0].gear if first else ()
    return Times(
        [_by_group(analysis, summary) for summary in pools],
        tuple(_cuts(analysis, swim_set)),
        _gear_s(analysis, worn),
    )


def _cuts(analysis: Analysis, swim_set: SwimSet) -> Iterator[SetSize]:
    scale = scale_of(analysis, swim_set)
    for number in reversed(scale.offered()) if scale else ():
        if scale and number < scale.written:
            summary = summary_of_size(analysis, swim_set.id, number)
            distance = () if swim_set.is_on_land else far(summary, analysis.meant(swim_set))
            words = size_words(scale, number)
            yield SetSize(number, words, _by_group(analysis, summary), distance)


def far(swum: ByGroup, meant: tuple[str, ...]) -> tuple[str, ...]:
    """How far it is for each lane group that it is meant for; once, where all go as far."""
    words = tuple(distance_words(swum.of(group)) for group in meant or (None,))
    return words[:1] if len(set(words)) == 1 else words


def _of_drill(analysis: Analysis, drill: Drill) -> Times:
    groups, timing = analysis.catalogue.lane_groups, analysis.timing
    seconds = [
        [whole_seconds(drill_seconds(drill, timing.clock(group, course))) for group in groups]
        for course in COURSES.values()
    ]
    takes = [[[own] if own else [] for own in pool] for pool in seconds]
    return Times(takes, gear_s=_gear_s(analysis, drill.gear.needs))


def _gear_s(analysis: Analysis, worn: tuple[str, ...]) -> int:
    return max((analysis.catalogue.gear[id].change_s for id in worn), default=0)


def _by_group(analysis: Analysis, summary: SetSummary) -> list[Takes]:
    groups = analysis.catalogue.lane_groups
    return [
        _takes(run, room_in_lane(run, groups[id], summary.course))
        for id, run in summary.clocks.items()
    ]


def _takes(run: GroupClock, most: int | None) -> Takes:
    clock_s = whole_seconds(run.clock.value if run.clock else None)
    if not clock_s or run.unfit:
        return []
    hangs = any(
        isinstance(timed.target, Target)
        and timed.target.assumed
        and (timed.sendoff is None or timed.suggested)
        for timed in run.reps
    )
    home_s = whole_seconds(run.last_touch.value if run.last_touch else None)
    return [-clock_s if hangs else clock_s, home_s, most or 0]


def whole_seconds(seconds: float | None) -> int:
    """Whole seconds of a time, as pages show it; 0 where it is not known."""
    return int(half_up(seconds, SECOND)) if seconds else 0
