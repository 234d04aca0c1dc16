"""What other blocks of the squad mean for one that is planned: taught before it, done around it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator
from dataclasses import replace
from datetime import timedelta

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.appearances import drills_before
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.planning.choices import Choice, DaySlot
from almanac.report.planning.limits import first_load
from almanac.report.planning.practices import choices_of
from almanac.report.planning.request import BlockRequest, last_of

_WEEK = timedelta(days=7)


def needing(analysis: Analysis, asked: BlockRequest, choices: Iterable[Choice]) -> Iterator[Choice]:
    """The choices, which need no drill that every lane group was taught in a block before."""
    lane_groups = analysis.catalogue.lane_groups
    groups = [id for id, own in lane_groups.items() if own.squad == asked.squad]
    every = analysis.blocks.values()
    each = [drills_before(every, asked.squad, group, asked.first) for group in groups]
    taught = frozenset[str].intersection(*each) if each else frozenset[str]()
    yield from (replace(own, needs=own.needs - taught) for own in choices)


def neighbours(
    analysis: Analysis, asked: BlockRequest, but: str
) -> tuple[list[Choice], list[DaySlot], int | None]:
    """What blocks of the squad hold in the week before and after: as choices that stand nowhere
    else, in slots of no week of this one; and what the first week may weigh after the one before.
    """
    choices, slots, load = dict[str, Choice](), list[DaySlot](), None
    every = {own.id: own for own in choices_of(analysis, asked.squad)}
    first, last = asked.first, last_of(asked)
    for id, groups in analysis.blocks.items():
        block = analysis.catalogue.blocks[id]
        if block.squad != asked.squad or not groups or id == but:
            continue
        summary: BlockSummary = next(iter(groups.values()))
        for day in summary.days:
            if not (first - _WEEK < day.on < first or last < day.on < last + _WEEK):
                continue
            for session in day.sessions:
                own = every.get(session.practice.practice.id) if session.practice else None
                if own:
                    name = f"{own.id} of {id}"
                    choices[name] = replace(
                        own, id=name, elsewhere=True, teaches=frozenset(), needs=frozenset()
                    )
                    week = (day.on - first).days // 7
                    begins = session.start or own.begins
                    slots.append(DaySlot(day.on, week, own.pool, begins, own.minutes, only=(name,)))
        if summary.days[-1].on < first <= summary.days[-1].on + _WEEK:
            load = first_load(analysis, summary)
    return [*choices.values()], slots, load
