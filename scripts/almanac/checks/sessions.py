"""Rules on how many sessions follow each other, how long they are, and the night between."""

from __future__ import annotations

from collections.abc import Iterator
from itertools import pairwise

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DayPlan
from almanac.checks.rule import Problem, refuses, warns
from almanac.checks.squad_days import SquadDays, days_by_group, path_of_day
from almanac.findings import counted
from almanac.units import DAY_S, show_number


@warns("sessions-crowded")
def sessions_crowded(analysis: Analysis) -> Iterator[Problem]:
    """A lane group has no more sessions on a day than ``sessions_a_day_most`` in the policy, and in
    any seven days at most one practice more than its squad has a week (``sessions_a_week``). A
    session is no longer than ``session_minutes_most``.
    """
    longest = analysis.catalogue.policy.limit("session_minutes_most")
    for practice in analysis.catalogue.practices.values():
        if practice.slot.minutes > longest:
            text = f"a slot of {practice.slot.minutes} minutes"
            yield Problem(practice, ("slot", "minutes"), text, f"at most {show_number(longest)}")
    told = set[tuple[object, ...]]()
    for own in days_by_group(analysis):
        for day, text, hint in (*_on_days(analysis, own), *_in_weeks(analysis, own)):
            block = own.block_of(day)
            key = block.id, day.on, text
            if key not in told:
                told.add(key)
                yield Problem(block, path_of_day(block, day), text, hint, of_key=True)


Said = tuple[DayPlan, str, str]  # a day, what is wrong with it, and what would be right


def _on_days(analysis: Analysis, own: SquadDays) -> Iterator[Said]:
    policy = analysis.catalogue.policy
    most, longest = policy.limit("sessions_a_day_most"), policy.limit("session_minutes_most")
    for day in own.days:
        if len(day.sessions) > most:
            text = f"{counted(len(day.sessions), 'session')} on this day"
            yield day, text, f"at most {show_number(most)}: move one"
        for session in day.sessions:
            if session.practice is None and session.session.minutes > longest:
                text = f"a session of {session.session.minutes} minutes"
                yield day, text, f"at most {show_number(longest)}"


@refuses("night-short")
def night_short(analysis: Analysis) -> Iterator[Problem]:
    """Between the last session of a day and the first of the next lie ``night_rest_least`` minutes
    of the policy: the way home, a meal and the sleep.
    """
    least_s = 60 * analysis.catalogue.policy.limit("night_rest_least")
    told = set[tuple[object, ...]]()
    for own in days_by_group(analysis):
        for before, after in pairwise(own.days):
            ends = [one.booked_s[1] for one in before.sessions if one.booked_s]
            starts = [one.booked_s[0] + DAY_S for one in after.sessions if one.booked_s]
            block = own.block_of(after)
            key = block.id, after.on
            if ends and starts and min(starts) - max(ends) < least_s and key not in told:
                told.add(key)
                hours = show_number((min(starts) - max(ends)) / 3600)
                text = f"{hours} hours after the last session of the day before"
                hint = f"at least {show_number(least_s / 3600)} hours: begin later"
                path = path_of_day(block, after)
                yield Problem(block, path, text, hint, of_key=True, level=own.level)


def _in_weeks(analysis: Analysis, own: SquadDays) -> Iterator[Said]:
    most = analysis.catalogue.club.squads[own.block.squad].sessions_a_week

    def practices(days: tuple[DayPlan, ...]) -> int:
        return sum(len(day.practices) for day in days)

    # one more may be a practice that was moved from one week to the next
    for _, day, days in own.breaches(lambda days: practices(days) > most + 1):
        text = f"{counted(practices(days), 'practice')} in the seven days from {days[0].on}"
        yield day, text, f"the squad has {most} a week (plans/club.yml): leave some out"
