"""Rules on days that are to be light: the eve of a race, and the first after a break."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DayPlan
from almanac.checks.once import Coded, once
from almanac.checks.rule import Problem, refuses
from almanac.checks.squad_days import SquadDays, days_by_group, path_of_day
from almanac.units import show_number


def _judged(analysis: Analysis) -> Iterator[Coded]:
    policy = analysis.catalogue.policy
    most, fast = policy.limit("light_rating_most"), policy.limit("light_fast_most")
    races = {(b.race_day, b.squad) for b in analysis.catalogue.blocks.values() if b.race_day}
    away = int(policy.limit("return_days"))
    for own in days_by_group(analysis):
        eves = {race for race, squad in races if race and squad == own.block.squad}
        rested = 0
        for day in own.days:
            if not day.sessions:
                rested += 1
                continue
            eve = not own.row and any((race - day.on).days == 1 for race in eves)
            codes = ["eve-hard"] * eve + ["return-hard"] * (rested >= away)
            what = _too_hard(day, most, fast) if codes else ""
            for code in codes if what else ():
                yield code, _problem(own, day, code, what, most, fast)
            rested = 0


def _too_hard(day: DayPlan, most: float, fast: float) -> str:
    """What makes a day more than a light one: its mean rating, or what of it is fast; else ""."""
    if day.balance.fast_m > fast:
        return f"{show_number(day.balance.fast_m)} m of it are fast"
    rated = [
        own.planned / own.minutes for own in day.sessions if own.minutes and own.planned is not None
    ]
    if rated and max(rated) > most:
        return f"its planned rating is {max(rated):.1f}"
    return ""


_WHEN = {
    "eve-hard": "the race is tomorrow",
    "return-hard": "it is the first day after a break",
}


def _problem(
    own: SquadDays, day: DayPlan, code: str, what: str, most: float, fast: float
) -> Problem:
    block = own.block_of(day)
    message = f"{_WHEN[code]}, and {what}"
    mend = f"{show_number(fast)} m fast and a rating of {show_number(most)} at most"
    return Problem(block, path_of_day(block, day), message, mend, of_key=True, level=own.level)


_found = once(_judged)


@refuses("eve-hard")
def eve_hard(analysis: Analysis) -> Iterator[Problem]:
    """The day before the ``race_day`` of a block is light: no planned rating above
    ``light_rating_most``, and no more fast distance than ``light_fast_most``.
    """
    yield from _found(analysis, "eve-hard")


@refuses("return-hard")
def return_hard(analysis: Analysis) -> Iterator[Problem]:
    """The first day with a session after ``return_days`` days without one is light, by the limits
    of the eve of a race: who comes back, from a holiday or from illness, begins gently.
    """
    yield from _found(analysis, "return-hard")
