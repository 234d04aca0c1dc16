"""The days of a block for one lane group: their sessions, and what each is planned to weigh."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import cached_property

from almanac.arithmetic.balance import Balance, balance_of
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.session_load import mean_rating, planned_load, session_minutes
from almanac.arithmetic.summary import SetSummary
from almanac.arithmetic.swum import Swum
from almanac.arithmetic.training_load import session_load
from almanac.model.block import Day, Session, Week
from almanac.model.log import Log
from almanac.rounding import seconds_of_day

DAYS = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
DAY_NAMES = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")

PracticeOn = Callable[[str, date], PracticeSummary]  # a practice by id, as its day knows the tests
Circuit = Callable[[str], SetSummary]  # the figures of a circuit on land, by id


@dataclass(frozen=True)
class SessionPlan:
    """One session of a day for a lane group: ``minutes`` and ``planned``, its planned load, are
    None where they are not known; ``kept`` is what was done, where that was kept.
    """

    session: Session
    practice: PracticeSummary | None
    swum: Swum | None
    minutes: float | None
    planned: float | None
    kept: Log | None = None
    circuit: SetSummary | None = None

    @property
    def load(self) -> float | None:
        """Its load: as it was done where that was kept, the reported rating in place of the planned
        one; else as it is planned. None where that is not known.
        """
        if self.kept is None:
            return self.planned
        if self.kept.rating is not None:
            return session_load(self.kept.rating, self.kept.minutes)
        if self.planned is None or not self.minutes:
            return None
        return self.planned / self.minutes * self.kept.minutes

    @property
    def start(self) -> str:
        """When it starts, as HH:MM; "" where it is not said."""
        own = self.practice.practice.slot.start if self.practice else ""
        return self.session.start or own

    @property
    def booked_s(self) -> tuple[int, int] | None:
        """The seconds from midnight from which and up to which it is booked: as long as its
        practice's slot, or its minutes. None where no start is said.
        """
        if not self.start:
            return None
        minutes = self.practice.practice.slot.minutes if self.practice else self.session.minutes
        starts_s = seconds_of_day(self.start)
        return starts_s, starts_s + 60 * minutes


@dataclass(frozen=True)
class DayPlan:
    """One day of a block: its sessions for the lane group. ``day`` is None for one that is missing:
    neither rest nor work.
    """

    name: str
    on: date
    day: Day | None
    sessions: tuple[SessionPlan, ...]

    @property
    def is_off(self) -> bool:
        """Whether the day is named as rest."""
        return self.day is not None and self.day.rest

    @property
    def practices(self) -> tuple[PracticeSummary, ...]:
        """The practices of the day."""
        return tuple(own.practice for own in self.sessions if own.practice)

    @cached_property
    def load(self) -> float | None:
        """The session loads of the day, added up: rest is zero. None for a day that is missing,
        and for one with a session whose load is not known.
        """
        if self.day is None:
            return None
        loads = [own.load for own in self.sessions]
        known = [load for load in loads if load is not None]
        return sum(known) if len(known) == len(loads) else None

    @property
    def swum(self) -> tuple[Swum, ...]:
        """What the lane group swims of its practices."""
        return tuple(own.swum for own in self.sessions if own.swum)

    @cached_property
    def balance(self) -> Balance:
        """The distance of the day, by facet."""
        return balance_of(self.swum)

    @property
    def metres(self) -> float:
        """How far the lane group swims."""
        return sum(own.metres for own in self.swum)


def day_plans(
    week: Week,
    monday: date,
    practice_on: PracticeOn,
    group: str,
    circuit: Circuit,
    logs: Sequence[Log] = (),
) -> Iterator[DayPlan]:
    """The seven days of a week for a lane group, with the sessions that are for it, and beside them
    what was kept.
    """
    for number, name in enumerate(DAYS):
        day, on = week.days.get(name), monday + timedelta(days=number)
        sessions = day.every_session if day else ()
        plans = (
            _on_land(own, circuit(own.land), group, _kept(own, own.start, on, group, logs))
            if own.land is not None
            else _session(own, on, practice_on, group, logs)
            for own in sessions
            if own.is_for(group)
        )
        yield DayPlan(name, on, day, tuple(plans))


def day_of_all(days: Sequence[DayPlan]) -> DayPlan:
    """One day of all lane groups: each session once, in the order in which the groups hold them."""
    sessions: list[SessionPlan] = []
    for day in days:
        sessions += [
            own for own in day.sessions if all(own.session != told.session for told in sessions)
        ]
    return replace(days[0], sessions=tuple(sessions))


def _session(
    session: Session, on: date, practice_on: PracticeOn, group: str, logs: Sequence[Log]
) -> SessionPlan:
    if session.practice is None:
        load = session_load(session.rating or 0.0, session.minutes)
        kept = _kept(session, session.start, on, group, logs)
        return SessionPlan(session, None, None, session.minutes, load, kept)
    practice = practice_on(session.practice, on)
    start = session.start or practice.practice.slot.start
    minutes = session_minutes(practice, group)
    planned = planned_load(practice, group, session.rating)
    return SessionPlan(
        session,
        practice,
        practice.of(group),
        minutes.value if minutes else None,
        planned.value if planned else None,
        _kept(session, start, on, group, logs),
    )


def _kept(session: Session, start: str, on: date, group: str, logs: Sequence[Log]) -> Log | None:
    """What was kept of a session, if anything was."""
    of_day = (log for log in logs if log.on == on and log.start in ("", start))
    own = (log for log in of_day if log.is_of(group) and log.keeps(session))
    return next(own, None)


def _on_land(session: Session, circuit: SetSummary, group: str, kept: Log | None) -> SessionPlan:
    """A circuit on land as a session: its clock in minutes times its rating, the stated one or the
    mean rating of its reps by the clock, as for a practice.
    """
    timed = circuit.clocks[group]
    minutes = timed.clock.value / 60 if timed.clock else None
    rating = session.rating if session.rating is not None else mean_rating(timed.reps)
    load = None if minutes is None or rating is None else session_load(rating, minutes)
    return SessionPlan(session, None, None, minutes, load, kept, circuit)
