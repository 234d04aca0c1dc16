"""Rules on the days of blocks: none forgotten, days off, sessions that clash, sums over seven days,
the taper.
"""

from __future__ import annotations

from collections.abc import Iterator
from datetime import date, timedelta
from itertools import pairwise

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAYS, DayPlan
from almanac.arithmetic.loads import resists, worn_in
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.checks.blocks import blocks_of
from almanac.checks.rule import Problem, forbids, refuses, warns
from almanac.checks.squad_days import breaches, days_by_group, groups_of, path_of_day
from almanac.model.policy import DayCount
from almanac.units import show_number, show_share


@warns("day-missing")
def day_missing(analysis: Analysis) -> Iterator[Problem]:
    """Every day of a block is named: as rest, or with what it holds. A day that is not named is
    missing, not rest, and the week's load, monotony and strain are then not known.
    """
    for block in analysis.catalogue.blocks.values():
        for number, week in enumerate(block.weeks):
            absent = [name for name in DAYS if name not in week.days]
            if absent:
                message = f"{', '.join(absent)} not planned: missing, not rest"
                hint = f"write {absent[0]}: {{rest: true}}, or what the day holds"
                yield Problem(block, ("weeks", number, "days"), message, hint, of_key=True)


@warns("days-off")
def days_off(analysis: Analysis) -> Iterator[Problem]:
    """Any seven days in a row name at least the policy's ``days_off`` days of rest, whichever day
    they begin on. A day that is not named is missing, not rest.
    """
    least = analysis.catalogue.policy.limit("days_off")
    for block, groups in groups_of(analysis):
        for days in breaches(groups[0].days, lambda days: sum(day.is_off for day in days) < least):
            off = sum(day.is_off for day in days)
            message = f"{off or 'no'} day off in the seven days from {days[0].name} {days[0].on}"
            hint = f"name at least {show_number(least)}: {{rest: true}}"
            yield Problem(block, path_of_day(block, days[-1]), message, hint, of_key=True)


@refuses("resisted-in-days")
def resisted_in_days(analysis: Analysis) -> Iterator[Problem]:
    """The sessions of one day hold no more resisted distance together than the policy lets a
    practice of the squad's level hold (``resisted_most``), and any seven days in a row no more than
    ``resisted_seven_days_most``: in all blocks of a squad together that meet or overlap.
    """
    gear, held = analysis.catalogue.gear, analysis.catalogue.policy.limit("held_as_50")

    def metres(days: tuple[DayPlan, ...]) -> float:
        return sum(worn_in(swum, gear, resists, held) for day in days for swum in day.swum)

    told = set[tuple[str, int, date]]()
    for squad_days in days_by_group(analysis):
        limits = analysis.catalogue.policy.of_level(squad_days.level)
        for name, length in (("resisted_most", 1), ("resisted_seven_days_most", 7)):
            most = limits.limit(name)

            def is_over(
                days: tuple[DayPlan, ...], most: float = most, length: int = length
            ) -> bool:
                # one practice: the practice's own rule
                alone = length == 1 and len(days[0].practices) < 2
                return not alone and metres(days) > most

            for block, day, days in squad_days.breaches(is_over, length):
                if (block.id, length, day.on) in told:
                    continue
                told.add((block.id, length, day.on))
                when = "on this day" if length == 1 else f"in the seven days from {days[0].on}"
                whose = analysis.catalogue.lane_groups[squad_days.group].title
                message = f"{show_number(metres(days), 0)} m resisted {when} for {whose}"
                hint = f"at most {show_number(most)} m: change a practice, or move it"
                place = path_of_day(block, day)
                yield Problem(block, place, message, hint, of_key=True, level=squad_days.level)


@forbids("sessions-clash")
def sessions_clash(analysis: Analysis) -> Iterator[Problem]:
    """No lane group is in two sessions of a day at once, be they of two blocks. A session ends when
    its practice's slot does, or after its minutes; one without a start is not looked at.
    """
    told: set[tuple[object, ...]] = set()
    for own in days_by_group(analysis):
        for day in own.days:
            timed = sorted(
                ((one.booked_s, one) for one in day.sessions if one.booked_s),
                key=lambda timed: timed[0][0],
            )
            for ((start, end), session), ((after, _), later) in pairwise(timed):
                key = (own.block.squad, day.on, start, after)
                if after < end and key not in told:
                    told.add(key)
                    title = analysis.catalogue.lane_groups[own.group].title
                    message = (
                        f"{title}: still in the session of {session.start} when that of "
                        f"{later.start} begins"
                    )
                    hint = "give them other starts, or each its lane groups"
                    block = own.block_of(day)
                    yield Problem(block, path_of_day(block, day), message, hint, of_key=True)


@forbids("taper-dates")
def taper_dates(analysis: Analysis) -> Iterator[Problem]:
    """The dates of a taper lie within the block, the first not after the last."""
    for block in analysis.catalogue.blocks.values():
        if block.taper is None:
            continue
        last = block.starts + timedelta(days=DAYS_A_WEEK * len(block.weeks) - 1)
        if not block.starts <= block.taper.first <= block.taper.last <= last:
            message = f"the taper runs from {block.taper.first} to {block.taper.last}"
            hint = f"the block runs from {block.starts} to {last}: write days within it, in order"
            yield Problem(block, ("taper",), message, hint)


@warns("taper-cut")
def taper_cut(analysis: Analysis) -> Iterator[Problem]:
    """A taper cuts distance by the policy's range, ``taper_cut_least`` to ``taper_cut_most``,
    against the last two loading weeks. At a level for which the policy names ``light_days`` it is
    so many lighter days, and no percentage.

    The direction is well founded, the size of the best cut is contested: a coach with a reason
    accepts the warning.
    """
    limits = analysis.catalogue.policy.limits
    least, most = limits["taper_cut_least"], limits["taper_cut_most"]
    for block, summary, whose in blocks_of(analysis):
        taper, days = summary.taper, summary.rules.light_days
        if taper is None:
            continue
        path = ("taper",) if block.taper else ("weeks", taper.weeks[0] - 1)
        if days is not None:
            count = taper.light_days
            if count is not None and not days.least <= count <= days.most:
                yield Problem(block, path, *_lighter(count, days, whose))
        elif taper.cut is not None and not least.value <= taper.cut <= most.value:
            message = f"the taper cuts distance by {show_share(taper.cut)}{whose}"
            hint = (
                f"the policy asks for {show_share(least.value)} to {show_share(most.value)} "
                f"({least.source})"
            )
            yield Problem(block, path, message, hint)


def _lighter(count: int, asked: DayCount, whose: str) -> tuple[str, str]:
    message = f"the taper has {count} lighter days{whose}"
    hint = (
        f"at this level it is {asked.least} to {asked.most} ({asked.source}): give its first and "
        "last day under taper"
    )
    return message, hint
