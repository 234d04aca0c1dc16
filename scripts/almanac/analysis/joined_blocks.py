"""Blocks of one lane group that meet or overlap, laid into one row of days."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property

from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_days import DAYS, DayPlan
from almanac.arithmetic.training_load import DAYS_A_WEEK

_ONE_DAY = timedelta(days=1)


@dataclass(frozen=True)
class JoinedBlocks:
    """Blocks of a lane group, the earliest first, of which each begins before seven days have gone
    by since those before it. A session that two of them name for one hour is one session.
    """

    group: str
    blocks: tuple[BlockSummary, ...]

    @cached_property
    def days(self) -> tuple[DayPlan, ...]:
        """Every day from the first to the last; one between two blocks holds nothing."""
        by_date = defaultdict[date, list[DayPlan]](list)
        for own in self.blocks:
            for day in own.days:
                by_date[day.on].append(day)
        found, on, last = list[DayPlan](), min(by_date), max(by_date)
        while on <= last:
            found.append(_together(by_date[on]) if on in by_date else _nothing(on))
            on += _ONE_DAY
        return tuple(found)

    def last_with(self, day: DayPlan) -> BlockSummary | None:
        """The latest block that holds sessions on a day."""
        return next((own for own in reversed(self.blocks) if self.of_block(own, [day])), None)

    def of_block(self, own: BlockSummary, days: Sequence[DayPlan]) -> tuple[DayPlan, ...]:
        """What one of the blocks holds on some days: its days that have sessions."""
        wanted = {day.on for day in days}
        return tuple(day for day in own.days if day.on in wanted and day.sessions)

    def holders(self, days: Sequence[DayPlan]) -> tuple[BlockSummary, ...]:
        """The blocks that hold sessions on some days."""
        return tuple(own for own in self.blocks if self.of_block(own, days))


def joined_blocks(
    blocks: Mapping[str, Mapping[str, BlockSummary]],
) -> Iterator[JoinedBlocks]:
    """Every row of two blocks or more, for each lane group; from the blocks by id and group."""
    by_group = defaultdict[str, list[BlockSummary]](list)
    for groups in blocks.values():
        for group, own in groups.items():
            by_group[group].append(own)
    for group, every in by_group.items():
        row, last = list[BlockSummary](), date.min
        for own in sorted(every, key=lambda one: one.block.starts):
            first = own.block.starts
            if row and (first - last).days >= DAYS_A_WEEK:
                yield from _row(group, row)
                row = []
            row.append(own)
            last = max(last, own.days[-1].on)
        yield from _row(group, row)


def _row(group: str, row: list[BlockSummary]) -> Iterator[JoinedBlocks]:
    if len(row) > 1:
        yield JoinedBlocks(group, tuple(row))


def _together(days: list[DayPlan]) -> DayPlan:
    if len(days) == 1:
        return days[0]
    sessions = {
        (own.session.practice or own.session.land or own.session.other, own.start): own
        for day in days
        for own in day.sessions
    }
    named = max(days, key=lambda day: (bool(day.sessions), day.day is not None))
    return replace(named, sessions=tuple(sessions.values()))


def _nothing(on: date) -> DayPlan:
    return DayPlan(DAYS[on.weekday()], on, None, ())
