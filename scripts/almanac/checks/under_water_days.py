"""Work under water in whole practices, on the days of blocks, and in any seven of them."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass, field

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DayPlan
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.under_water import is_under, metres_under
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.checks.squad_days import SquadDays, days_by_group, path_of_day
from almanac.findings import counted
from almanac.model.block import Block
from almanac.units import show_number

_CODE = "under-water-practice"


def on_days(analysis: Analysis) -> Iterator[Coded]:
    """Every breach of the limits of practices, of days and of weeks."""
    catalogue = analysis.catalogue
    push_off = catalogue.policy.limit("push_off_most")
    for summary in analysis.practices.values():
        level = catalogue.club.squads[summary.practice.squad].level
        most = catalogue.policy.of_level(level).limit("under_water_practice_most")
        metres = max((metres_of(swum, push_off) for swum in summary.every_way), default=0.0)
        if metres > most:
            message = f"{show_number(metres)} m under water in this practice"
            hint = f"{level} holds {show_number(most)} m at most: leave one of its sets out"
            found = Problem(summary.practice, ("parts",), message, hint, of_key=True, level=level)
            yield _CODE, found
    under = _Under(push_off)
    for own in days_by_group(analysis):
        limits = catalogue.policy.of_level(own.level)
        most, sets = (
            limits.limit("under_water_practice_most"),
            limits.limit("under_water_sets_most"),
        )
        for block, day, said in [*_on_day(own, most, push_off), *_in_week(own, sets, under)]:
            message, hint = said[0], f"{own.level} holds {said[1]}"
            found = Problem(block, path_of_day(block, day), message, hint, of_key=True)
            yield _CODE, found._replace(level=own.level)


Said = tuple[Block, DayPlan, tuple[str, str]]  # a day, what is wrong with it, what would be right


def _on_day(own: SquadDays, most: float, push_off: float) -> Iterator[Said]:
    def metres(day: DayPlan) -> float:
        return sum(metres_of(swum, push_off) for swum in day.swum)

    # one alone: the practice's own rule
    for block, day, _ in own.breaches(
        lambda days: len(days[0].swum) > 1 and metres(days[0]) > most, length=1
    ):
        message = f"{show_number(metres(day))} m under water on this day"
        yield block, day, (message, f"{show_number(most)} m at most: move one practice")


def _in_week(own: SquadDays, most: float, under: _Under) -> Iterator[Said]:
    def sets_of(days: tuple[DayPlan, ...]) -> int:
        return sum(_sets_of(day, own.group, under) for day in days)

    for block, day, days in own.breaches(lambda days: sets_of(days) > most):
        sets = counted(sets_of(days), "set")
        message = f"{sets} with work under water in the seven days from {days[0].on}"
        yield block, day, (message, f"{show_number(most)} at most: change a practice, or move it")


def metres_of(swum: Swum, push_off: float) -> float:
    """Metres under water of all that is swum."""
    return sum(metres_under(piece, swum.course, push_off) for piece in swum.pieces)


def _sets_of(day: DayPlan, group: str, under: _Under) -> int:
    return sum(
        under.is_in(run.of(group)) for practice in day.practices for run in practice.runs_of(group)
    )


@dataclass
class _Under:
    """Whether something of what is swum counts as work under water: the same thing is swum on many
    days.
    """

    push_off: float
    known: dict[int, bool] = field(default_factory=dict)

    def is_in(self, swum: Swum) -> bool:
        key = id(swum)  # practices keep it for as long as their analysis
        if key not in self.known:
            self.known[key] = any(is_under(rep, self.push_off) for rep in swum.reps)
        return self.known[key]
