"""A season week by week: what each squad has, and how heavy it is beside its heaviest week."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from almanac.arithmetic.block import BlockSummary, WeekPlan
from almanac.arithmetic.season_days import last_day, mondays
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.arithmetic.week_change import WeekOfBlock, load_change
from almanac.arithmetic.working import Working
from almanac.model.block import Block
from almanac.model.season import Outline, Season, SquadSeason
from almanac.rounding import half_up

STEPS = 10  # how finely a week is told from the heaviest


@dataclass(frozen=True)
class SquadWeek:
    """A week of a squad: that of a block, ``week`` being None where the block cannot be worked out,
    or of an outline, or of neither. ``step`` says how heavy it is in tenths of the squad's heaviest
    week, 0 where its load is not known.
    """

    block: Block | None = None
    week: WeekPlan | None = None
    outline: Outline | None = None
    step: int = 0

    @property
    def load(self) -> float | None:
        """Its load, None where a day of it is not known."""
        own = self.week.load if self.week else None
        return own.total if own and own.is_whole else None


def squad_weeks(
    season: Season,
    own: SquadSeason,
    blocks: Sequence[Block],
    summaries: Mapping[str, BlockSummary],
) -> list[SquadWeek]:
    """Each week of a season for a squad; ``summaries`` by block id, those that are known."""
    weeks = [_week(own, blocks, summaries, monday) for monday in mondays(season)]
    heaviest = max((week.load or 0.0 for week in weeks), default=0.0)
    return [
        SquadWeek(week.block, week.week, week.outline, _step(week.load or 0.0, heaviest))
        for week in weeks
    ]


def _week(
    own: SquadSeason,
    blocks: Sequence[Block],
    summaries: Mapping[str, BlockSummary],
    monday: date,
) -> SquadWeek:
    sunday = monday + timedelta(days=6)
    for block in blocks:
        if block.starts <= sunday and monday <= last_day(block):
            summary = summaries.get(block.id)
            weeks = summary.weeks if summary else ()
            week = next((one for one in weeks if monday <= one.days[0].on <= sunday), None)
            return SquadWeek(block, week)
    return SquadWeek(outline=next((one for one in own.outlines if one.meets(monday, sunday)), None))


def _step(load: float, heaviest: float) -> int:
    return int(half_up(STEPS * load / heaviest)) if heaviest else 0


@dataclass(frozen=True)
class AfterBlock:
    """A block and the one before it: how many days lie between, and how the load of its first week
    lies to the last four of the other, None where that tells nothing.
    """

    before: Block
    days: int
    change: Working | None

    @property
    def weeks(self) -> int:
        """The whole weeks that lie between."""
        return self.days // DAYS_A_WEEK


def after_blocks(
    blocks: Sequence[Block], summaries: Mapping[str, BlockSummary]
) -> Iterator[tuple[Block, AfterBlock | None]]:
    """Each block of a squad, the earliest first, with the one before it."""
    before: Block | None = None
    for block in blocks:
        yield block, _after(before, block, summaries) if before else None
        before = block


def _after(before: Block, block: Block, summaries: Mapping[str, BlockSummary]) -> AfterBlock:
    days = (block.starts - last_day(before)).days - 1
    own, other = summaries.get(block.id), summaries.get(before.id)
    change = None
    if own and other and 0 <= days < len(other.weeks[-1].days):
        of = WeekOfBlock(own.weeks[0], other.weeks, own.rules.least_load, own.group)
        change = load_change(of)
    return AfterBlock(before, days, change)
