"""Rules on when people train and for how long: what a level bears in a session and a week."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DayPlan, SessionPlan
from almanac.checks.once import Coded, once
from almanac.checks.rule import Problem, refuses
from almanac.checks.squad_days import SquadDays, days_by_group, path_of_day
from almanac.findings import counted
from almanac.model.policy import LevelLimits
from almanac.rounding import seconds_of_day, time_of_day
from almanac.units import show_number

_HOUR_S = 3600
_NO_BREAK_S = _HOUR_S  # less than an hour between two sessions is no time to eat and get warm

Said = tuple[str, str, str]  # code, message, hint


def _judged(analysis: Analysis) -> Iterator[Coded]:
    catalogue = analysis.catalogue
    for practice in catalogue.practices.values():
        level = catalogue.club.squads[practice.squad].level
        starts_s = seconds_of_day(practice.slot.start)
        booked_s = starts_s, starts_s + 60 * practice.slot.minutes
        for code, message, hint in _of_session(booked_s, level, catalogue.policy.of_level(level)):
            yield code, Problem(practice, ("slot",), message, hint, of_key=True, level=level)
    for own in days_by_group(analysis):
        limits = catalogue.policy.of_level(own.level)
        for day in () if own.row else own.days:
            for code, message, hint in _of_day(day, own.level, limits):
                yield code, _at(own, day, message, hint)
        most = limits.limit("sessions_seven_days_most")

        def is_over(days: tuple[DayPlan, ...], most: float = most) -> bool:
            return _sessions(days) > most

        for _, day, days in own.breaches(is_over):
            message = f"{counted(_sessions(days), 'session')} in the seven days from {days[0].on}"
            hint = f"{own.level} has {show_number(most)} at most: leave some out"
            yield "sessions-many", _at(own, day, message, hint)


def _at(own: SquadDays, day: DayPlan, message: str, hint: str) -> Problem:
    block = own.block_of(day)
    return Problem(block, path_of_day(block, day), message, hint, of_key=True, level=own.level)


def _sessions(days: tuple[DayPlan, ...]) -> int:
    return sum(len(day.sessions) for day in days)


def _of_session(booked_s: tuple[int, int], level: str, limits: LevelLimits) -> Iterator[Said]:
    starts_s, ends_s = booked_s
    least, most = limits.limit("begins_least"), limits.limit("ends_most")
    if starts_s < least * _HOUR_S:
        allowed = time_of_day(least * _HOUR_S)
        message = f"it begins at {time_of_day(starts_s)}, and {level} begins at {allowed} or later"
        yield "hour-unfit", message, "begin later: sleep comes first"
    elif ends_s > most * _HOUR_S:
        allowed = time_of_day(most * _HOUR_S)
        message = f"it ends at {time_of_day(ends_s)}, and {level} is out of the water by {allowed}"
        yield "hour-unfit", message, "begin earlier, or make it shorter"
    longest = limits.limit("practice_minutes_most")
    minutes = (ends_s - starts_s) / 60
    if minutes > longest:
        yield _too_long(minutes, level, longest)


def _too_long(minutes: float, level: str, longest: float) -> Said:
    message = f"{show_number(minutes)} minutes, and {level} has {show_number(longest)} at most"
    return "session-long", message, "make it shorter, or two of it on two days"


def _of_day(day: DayPlan, level: str, limits: LevelLimits) -> Iterator[Said]:
    """What is amiss with the sessions of a day at the hours that the block gives them; those with
    hardly a break between count as one.
    """
    longest = limits.limit("practice_minutes_most")
    for own in day.sessions:
        if not own.booked_s and own.practice is None and own.session.minutes > longest:
            yield _too_long(own.session.minutes, level, longest)
    booked = sorted(own.booked_s for own in day.sessions if own.booked_s)
    if len(booked) == 1 and _is_as_its_practice(day.sessions[0]):
        return
    joined: list[tuple[int, int]] = []
    for starts_s, ends_s in booked:
        if joined and starts_s - joined[-1][1] < _NO_BREAK_S:
            joined[-1] = joined[-1][0], max(ends_s, joined[-1][1])
        else:
            joined.append((starts_s, ends_s))
    for one in joined:
        yield from _of_session(one, level, limits)


def _is_as_its_practice(own: SessionPlan) -> bool:
    return own.practice is not None and own.session.start in ("", own.practice.practice.slot.start)


_found = once(_judged)


@refuses("hour-unfit")
def hour_unfit(analysis: Analysis) -> Iterator[Problem]:
    """Practices and sessions begin no earlier, and end no later, than the policy has it for the
    level of the squad (``begins_least``, ``ends_most``, in hours of the day).
    """
    yield from _found(analysis, "hour-unfit")


@refuses("session-long")
def session_long(analysis: Analysis) -> Iterator[Problem]:
    """A practice, and sessions of a day with less than an hour between, are no longer than the
    level of the squad bears (``practice_minutes_most``).
    """
    yield from _found(analysis, "session-long")


@refuses("sessions-many")
def sessions_many(analysis: Analysis) -> Iterator[Problem]:
    """In any seven days of a lane group there are no more sessions than its level bears
    (``sessions_seven_days_most``), on land and in the water.
    """
    yield from _found(analysis, "sessions-many")
