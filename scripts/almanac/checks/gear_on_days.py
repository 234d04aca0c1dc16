"""Gear over days: plates on one day, and what is resisted before a race day."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DayPlan
from almanac.arithmetic.loads import (
    loads_hands,
    resists,
    worn_in,
)
from almanac.checks.once import Coded
from almanac.checks.rule import Problem
from almanac.checks.squad_days import days_by_group, groups_of, path_of_day
from almanac.findings import counted
from almanac.units import show_number


def on_days(analysis: Analysis) -> Iterator[Coded]:
    """What a squad has on over days that a level does not bear."""
    catalogue = analysis.catalogue
    gear, held = catalogue.gear, catalogue.policy.limit("held_as_50")

    def plates_on(day: DayPlan) -> float:
        return sum(worn_in(swum, gear, loads_hands, held) for swum in day.swum)

    for own in days_by_group(analysis):
        most = catalogue.policy.of_level(own.level).limit("plates_most")

        def is_over(days: tuple[DayPlan, ...], most: float = most) -> bool:
            return len(days[0].swum) > 1 and plates_on(days[0]) > most

        for block, day, _ in own.breaches(is_over, length=1):
            message = f"{show_number(plates_on(day))} m with plates on the hands on this day"
            hint = f"{own.level} holds {show_number(most)} m at most: move one practice"
            found = Problem(block, path_of_day(block, day), message, hint, of_key=True)
            yield "plates-dose", found._replace(level=own.level)
    yield from _before_meets(analysis)


def _before_meets(analysis: Analysis) -> Iterator[Coded]:
    """What is resisted in the last days before a race day, in whichever block of the squad."""
    catalogue = analysis.catalogue
    gear, held = catalogue.gear, catalogue.policy.limit("held_as_50")
    before = catalogue.policy.limit("resisted_before_meet")
    races = {
        (race, block.squad)
        for block, groups in groups_of(analysis)
        if (race := block.race_day or (groups[0].taper.last if groups[0].taper else None))
    }
    for block, groups in groups_of(analysis):
        level = catalogue.club.squads[block.squad].level
        days = [day for own in groups for day in own.days]
        for race in sorted(race for race, squad in races if squad == block.squad):
            for day in days:
                left = (race - day.on).days
                if 0 <= left <= before and any(
                    worn_in(swum, gear, resists, held) for swum in day.swum
                ):
                    message = f"resisted {counted(left, 'day')} before the race day"
                    hint = f"none in the last {show_number(before)} days: swim it plain"
                    found = Problem(block, path_of_day(block, day), message, hint, of_key=True)
                    yield "resisted-before-meet", found._replace(level=level)
