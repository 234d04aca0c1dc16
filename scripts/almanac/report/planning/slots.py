"""The slots of a block: as timetables have them, as another block had them, or as they are given;
without the days on which nobody trains, and those of meets.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Collection, Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.planning.choices import DaySlot
from almanac.arithmetic.pool_slots import slots_on
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.model.meet import Meet
from almanac.rounding import seconds_of_day

_MINUTE_S = 60


@dataclass(frozen=True)
class Weekly:
    """Pool time on a day of each week (mon .. sun)."""

    day: str
    pool: str
    begins: str
    minutes: int


@dataclass(frozen=True)
class Left:
    """A slot that is left out, and why."""

    slot: DaySlot
    why: str


def days_of(first: date, weeks: int) -> Iterator[date]:
    """Each day of so many weeks."""
    return (first + timedelta(days=number) for number in range(7 * weeks))


def of_timetables(catalogue: Catalogue, squad: str, first: date, weeks: int) -> list[DaySlot]:
    """The slots of a squad by the timetables that hold."""
    found = []
    for on in days_of(first, weeks):
        own = next((table for table in catalogue.timetables.values() if table.holds(on)), None)
        for _, slot in slots_on(own, on) if own else ():
            if slot.squad == squad:
                span = seconds_of_day(slot.ends) - seconds_of_day(slot.begins)
                found.append(
                    DaySlot(
                        on,
                        (on - first).days // 7,
                        slot.pool,
                        slot.begins,
                        span // _MINUTE_S,
                        frozenset(slot.lanes),
                        slot.adults,
                    )
                )
    return sorted(found, key=_when)


def of_block(catalogue: Catalogue, block: Block) -> list[Weekly]:
    """The slots of each day of the week as a block mostly has them, by its practices."""
    found: dict[str, Counter[tuple[str, str, int]]] = {}
    for week in block.weeks:
        for name, day in week.days.items():
            for session in day.every_session:
                practice = catalogue.practices.get(session.practice or "")
                if practice is not None:
                    begins = session.start or practice.slot.start
                    key = practice.pool, begins, practice.slot.minutes
                    found.setdefault(name, Counter())[key] += 1
    return [Weekly(name, *found[name].most_common(1)[0][0]) for name in DAYS if name in found]


def of_weeks(
    catalogue: Catalogue, weekly: Iterable[Weekly], first: date, weeks: int
) -> list[DaySlot]:
    """The same slots each week, in all lanes of their pools."""
    named = list(weekly)
    found = [
        DaySlot(
            on,
            (on - first).days // 7,
            own.pool,
            own.begins,
            own.minutes,
            frozenset(range(1, catalogue.club.pools[own.pool].lanes + 1)),
        )
        for on in days_of(first, weeks)
        for own in named
        if own.day == DAYS[on.weekday()]
    ]
    return sorted(found, key=_when)


def _when(slot: DaySlot) -> tuple[date, str]:
    return slot.on, slot.begins


def open_slots(
    catalogue: Catalogue, squad: str, slots: Sequence[DaySlot]
) -> tuple[list[DaySlot], list[Left]]:
    """The slots in which there is training, and the others: in closures, out of term, on days of
    meets that the squad goes to.
    """
    kept, left = [], []
    for slot in slots:
        why = why_shut(catalogue, squad, slot.on, slot.pool)
        if why:
            left.append(Left(slot, why))
        else:
            kept.append(slot)
    return kept, left


def weeks_without(
    catalogue: Catalogue,
    squad: str,
    first: date,
    weeks: int,
    slots: Iterable[DaySlot],
    named: Collection[date] = (),
) -> Iterator[tuple[int, str]]:
    """The weeks, from 0, of which no day has a slot, open or left out, with why; none whose days
    are ``named`` already.
    """
    has = {slot.on for slot in slots}
    for number in range(weeks):
        days = [*days_of(first + timedelta(weeks=number), 1)]
        if has.isdisjoint(days) and not all(on in named for on in days):
            shut = dict.fromkeys(why_shut(catalogue, squad, on, "") for on in days)
            yield number, "; ".join(filter(None, shut)) or "no timetable has a slot for the squad"


def why_shut(catalogue: Catalogue, squad: str, on: date, pool: str) -> str:
    """Why there is no training on a day; "" where there is."""
    for season in catalogue.seasons.values():
        if squad in season.squads and season.first <= on <= season.last:
            closure = season.is_shut(on, pool)
            if closure:
                return closure.title
            if not any(term.holds(on) for term in season.terms):
                return f"in no term of {season.title}"
    meet = meet_on(catalogue, squad, on)
    return meet.title if meet else ""


def follows_a_break(catalogue: Catalogue, squad: str, on: date, days: int) -> bool:
    """Whether the squad had no training in so many days before a day, because a season shuts some
    of them; a day of which neither season nor timetable says anything may have had some.
    """
    first = on - timedelta(days=days)
    before = [own for own in days_of(first, days // 7 + 1) if own < on]
    slots = [own for own in of_timetables(catalogue, squad, first, days // 7 + 1) if own.on < on]
    kept, _ = open_slots(catalogue, squad, slots)
    shut = [own for own in before if why_shut(catalogue, squad, own, "")]
    tables = catalogue.timetables.values()
    said = all(own in shut or any(table.holds(own) for table in tables) for own in before)
    return said and bool(shut) and not kept


def meet_on(catalogue: Catalogue, squad: str, on: date) -> Meet | None:
    """The meet that a squad is at on a day."""
    every = (meet for _, meet in sorted(catalogue.meets.items()) if squad in meet.squads)
    return next((meet for meet in every if any(day.on == on for day in meet.days)), None)


def named_days(slots: Sequence[DaySlot], days: Sequence[str]) -> list[DaySlot]:
    """The slots that lie on some days of the week."""
    return [slot for slot in slots if DAYS[slot.on.weekday()] in days]
