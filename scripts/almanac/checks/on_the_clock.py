"""Sets, and parts in place of a practice, on the clock of the lane groups that they are for."""

from __future__ import annotations

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.group_clock import GroupClock
from almanac.model.entry import Entry
from almanac.model.swim_set import Item
from almanac.source.reader import DataPath
from almanac.units import Course


@dataclass(frozen=True)
class OnTheClock:
    """Items as the lane groups that they are meant for swim them; ``path`` leads to the piece that
    holds them. Those ``elsewhere`` are in other lanes than usual, or half of them.
    """

    entry: Entry
    path: DataPath
    items: tuple[Item, ...]
    course: Course
    most_in_lane: int | None
    clocks: Mapping[str, GroupClock]
    elsewhere: frozenset[str] = frozenset()


def swum_by_groups(analysis: Analysis) -> Iterator[OnTheClock]:
    """Every set, and every part in place of a practice, on the clock of the groups it is for."""
    for id, swim_set in analysis.computable.items():
        clocks = analysis.summary(id).clocks
        meant = {group: clocks[group] for group in analysis.meant(swim_set)}
        yield OnTheClock(
            swim_set, (), swim_set.items, swim_set.course, swim_set.most_in_lane, meant
        )
    for id, summary in analysis.practices.items():
        for run in summary.runs:  # a station once a turn, each time with other lane groups
            if run.swim_set is None:
                practice = analysis.catalogue.practices[id]
                yield OnTheClock(
                    practice,
                    run.path,
                    run.doing.items,
                    summary.pool.course,
                    None,
                    run.clocks,
                    frozenset(crew.group for crew in run.crews if not crew.is_usual),
                )
