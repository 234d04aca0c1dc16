"""A block added up: distance and load by day and week, for one lane group."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from almanac.arithmetic.balance import Balance, balance_of
from almanac.arithmetic.block_days import Circuit, DayPlan, PracticeOn, day_plans
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.taper import Taper, taper
from almanac.arithmetic.training_load import Deviation, WeekLoad, week_load
from almanac.model.block import Block, Week
from almanac.model.log import Log
from almanac.model.policy import DayCount


@dataclass(frozen=True)
class BlockRules:
    """What the policy says of blocks: changes of load are told of weeks of at least ``least_load``
    AU; a taper is so many ``light_days`` where the squad's level has them, else a percentage.
    ``four`` are the strokes of a medley.
    """

    least_load: float = 0.0
    light_days: DayCount | None = None
    four: tuple[str, ...] = ()


@dataclass(frozen=True)
class WeekPlan:
    """One week of a block for one lane group. ``load`` is None where no day of it is known."""

    number: int
    week: Week
    days: tuple[DayPlan, ...]
    balance: Balance
    load: WeekLoad | None

    @property
    def days_off(self) -> int:
        """Days named as rest."""
        return sum(day.is_off for day in self.days)

    @property
    def planned_days(self) -> int:
        """Days of which it is known what they hold: work or rest."""
        return sum(day.day is not None for day in self.days)

    @property
    def is_planned(self) -> bool:
        """Whether no day of it is missing."""
        return self.planned_days == len(self.days)

    @property
    def is_holiday(self) -> bool:
        """Whether every day of it is known, and none holds a session."""
        return self.is_planned and not any(day.sessions for day in self.days)


@dataclass(frozen=True)
class BlockSummary:
    """A block added up for one lane group; ``meet_days`` are those of the meet that it leads to."""

    block: Block
    group: str
    weeks: tuple[WeekPlan, ...]
    balance: Balance
    taper: Taper | None
    rules: BlockRules = BlockRules()
    meet_days: tuple[date, ...] = ()

    @property
    def days(self) -> tuple[DayPlan, ...]:
        """Its days, in order."""
        return tuple(day for week in self.weeks for day in week.days)


def summarise_block(
    block: Block,
    practice_on: PracticeOn,
    group: str,
    rules: BlockRules = BlockRules(),
    convention: Deviation = Deviation.SAMPLE,
    circuit: Circuit | None = None,
    logs: Sequence[Log] = (),
    meet_days: Sequence[date] = (),
) -> BlockSummary:
    """Add a block up from the summaries of its practices, each as the tests known by its day make
    it. Raises KeyError for a practice without one.
    """
    weeks: list[WeekPlan] = []
    logs = [log for log in logs if log.squad in (None, block.squad)]
    for number, week in enumerate(block.weeks):
        monday = block.starts + timedelta(weeks=number)
        of_circuit = circuit or _no_circuit
        days = tuple(day_plans(week, monday, practice_on, group, of_circuit, logs))
        balance = balance_of(swum for day in days for swum in day.swum)
        loads = [day.load for day in days]
        load = week_load(loads, convention) if any(load is not None for load in loads) else None
        weeks.append(WeekPlan(number + 1, week, days, balance, load))
    everything = [swum for week in weeks for day in week.days for swum in day.swum]
    whole = balance_of(everything)
    return BlockSummary(
        block, group, tuple(weeks), whole, taper(block, weeks), rules, tuple(meet_days)
    )


def _no_circuit(id: str) -> SetSummary:
    raise KeyError(id)
