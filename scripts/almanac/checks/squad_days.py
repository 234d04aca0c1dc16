"""The days of lane groups that rules go over: of each block, and of blocks that meet or overlap."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.analysis.joined_blocks import JoinedBlocks
from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_days import DayPlan
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.checks.ways import group_level
from almanac.model.block import Block

IsBreach = Callable[[tuple[DayPlan, ...]], bool]
Found = tuple[Block, DayPlan, tuple[DayPlan, ...]]  # where to tell it, and the days in a row


def breaches(
    every: tuple[DayPlan, ...], is_breach: IsBreach, length: int = DAYS_A_WEEK
) -> Iterator[tuple[DayPlan, ...]]:
    """The runs of so many days in a row that break a limit, wherever they begin; after one, the
    next begins past it, so that one excess is told once.
    """
    first = 0
    while first + length <= len(every):
        days = every[first : first + length]
        if is_breach(days):
            yield days
            first += length
        else:
            first += 1


@dataclass(frozen=True)
class SquadDays:
    """The days of a lane group in one block, or in the ``row`` of several; its squad's level."""

    group: str
    level: str
    days: tuple[DayPlan, ...]
    block: Block
    row: JoinedBlocks | None = None

    def breaches(self, is_breach: IsBreach, length: int = DAYS_A_WEEK) -> Iterator[Found]:
        """The runs of so many days in a row that break a limit; of several blocks those that no
        block breaks by itself.
        """

        def is_of_several(days: tuple[DayPlan, ...]) -> bool:
            if not is_breach(days):
                return False
            row = self.row
            holders = row.holders(days) if row else ()
            alone = (row.of_block(own, days) for own in holders) if row else ()
            return len(holders) > 1 and not any(map(is_breach, alone))

        for days in breaches(self.days, is_of_several if self.row else is_breach, length):
            last = days[-1]
            if self.row:
                last = next(day for day in reversed(days) if day.sessions)
            yield self.block_of(last), last, days

    def block_of(self, day: DayPlan) -> Block:
        """The block that a day is told at: of several, the latest that holds something then."""
        own = self.row.last_with(day) if self.row else None
        return own.block if own else self.block


def days_by_group(analysis: Analysis) -> Iterator[SquadDays]:
    """Every block as each lane group of its squad has it, and after them what is several."""
    catalogue = analysis.catalogue
    for block, groups in groups_of(analysis):
        level = catalogue.club.squads[block.squad].level
        yield from (SquadDays(own.group, level, own.days, block) for own in groups)
    for row in analysis.joined_blocks:
        first = row.blocks[0].block
        yield SquadDays(row.group, group_level(catalogue, row.group), row.days, first, row)


def groups_of(analysis: Analysis) -> Iterator[tuple[Block, tuple[BlockSummary, ...]]]:
    """Every computable block as each lane group of its squad has it."""
    for id, groups in analysis.blocks.items():
        if groups:
            yield analysis.catalogue.blocks[id], tuple(groups.values())


def path_of_day(block: Block, day: DayPlan) -> tuple[str | int, ...]:
    """Where a day stands in its block; where its week does, if it is not named."""
    week = (day.on - block.starts).days // DAYS_A_WEEK
    known = day.name in block.weeks[week].days
    return ("weeks", week, "days", day.name) if known else ("weeks", week, "days")
