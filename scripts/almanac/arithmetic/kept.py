"""Sessions that were kept: what was done beside what was planned."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from almanac.arithmetic.block import BlockSummary, WeekPlan
from almanac.arithmetic.block_days import DayPlan, SessionPlan
from almanac.arithmetic.session_load import (
    mean_rating,
    planned_load,
    session_minutes,
    session_rating,
)
from almanac.arithmetic.working import Known, Labelled, Product, Working, gathered
from almanac.model.log import Log


@dataclass(frozen=True)
class KeptSession:
    """A session of a block that was kept, for one lane group."""

    group: str
    day: DayPlan
    plan: SessionPlan
    log: Log


def kept_sessions(summary: BlockSummary) -> Iterator[KeptSession]:
    """The sessions of a block that were kept, by day."""
    for week in summary.weeks:
        yield from kept_of_week(summary.group, week)


def kept_of_week(group: str, week: WeekPlan) -> Iterator[KeptSession]:
    """The sessions of a week that were kept, by day."""
    for day in week.days:
        yield from kept_of_day(group, day)


def kept_of_day(group: str, day: DayPlan) -> Iterator[KeptSession]:
    """The sessions of a day that were kept."""
    for plan in day.sessions:
        if plan.kept is not None:
            yield KeptSession(group, day, plan, plan.kept)


def planned_minutes(of: KeptSession) -> Working | None:
    """Minutes that the session was planned to take."""
    if of.plan.practice:
        return session_minutes(of.plan.practice, of.group)
    return None if of.plan.minutes is None else Known(of.plan.minutes, "planned", "min")


def kept_minutes(of: KeptSession) -> Working:
    """Minutes that it took, from first start to last finish."""
    return Known(of.log.minutes, "", "min")


def planned_metres(of: KeptSession) -> Working | None:
    """Metres that the lane group was planned to swim."""
    return Known(of.plan.swum.metres, "", "m") if of.plan.swum else None


def kept_metres(of: KeptSession) -> Working:
    """Metres that one swimmer swam."""
    return Known(of.log.metres, "", "m")


def planned_rating(of: KeptSession) -> Working | None:
    """The rating that it was planned at: the one that the coach states, else that of its reps."""
    if of.plan.session.rating is not None:
        return Known(of.plan.session.rating, "stated")
    if of.plan.practice:
        return session_rating(of.plan.practice, of.group)
    circuit = of.plan.circuit
    rating = mean_rating(circuit.clocks[of.group].reps) if circuit else None
    return None if rating is None else Known(rating, "rating")


def kept_rating(of: KeptSession) -> Working | None:
    """The mean rating that the swimmers gave, where it was asked for."""
    return None if of.log.rating is None else Known(of.log.rating)


def planned_session_load(of: KeptSession) -> Working | None:
    """The load that it was planned at: minutes times rating."""
    if of.plan.practice:
        return planned_load(of.plan.practice, of.group, of.plan.session.rating)
    minutes, rating = planned_minutes(of), planned_rating(of)
    if minutes is None or rating is None:
        return None
    return Product((Labelled(minutes, "min"), Labelled(rating, "rating")))


def kept_load(of: KeptSession) -> Working | None:
    """The load of the session as it was done: its minutes times the rating that the swimmers gave,
    or the planned one where none was asked for (Foster 2001).
    """
    rating = kept_rating(of) or planned_rating(of)
    if rating is None:
        return None
    told = "rating" if of.log.rating is not None else "planned rating"
    return Product((Known(of.log.minutes, "min"), Known(rating.value, told)))


def week_kept_metres(group: str, week: WeekPlan) -> Working | None:
    """Metres of the week's sessions that were kept, added up; none where none was."""
    kept = list(kept_of_week(group, week))
    return gathered(map(kept_metres, kept)) if kept else None


def week_kept_load(group: str, week: WeekPlan) -> Working | None:
    """Load of the week's sessions that were kept, added up; none where none was, or where the load
    of one is not known.
    """
    loads = [kept_load(kept) for kept in kept_of_week(group, week)]
    known = [load for load in loads if load is not None]
    return gathered(known) if known and len(known) == len(loads) else None
