"""Rules on the days of blocks beside the timetable, and on what squads ask for at one moment."""

from __future__ import annotations

from collections import defaultdict
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DayPlan, SessionPlan
from almanac.arithmetic.pool_slots import slots_on
from almanac.arithmetic.practice import PracticeSummary
from almanac.checks.lane_bookings import lanes_of
from almanac.checks.once import Coded, once
from almanac.checks.pool_words import lane_words
from almanac.checks.rule import Problem, forbids, warns
from almanac.checks.squad_days import groups_of, path_of_day
from almanac.model.block import Block
from almanac.model.timetable import PoolSlot, Timetable
from almanac.rounding import time_of_day


@dataclass(frozen=True)
class _Going:
    """A practice on a day of a block, from one second of the day to another."""

    block: Block
    day: DayPlan
    session: SessionPlan
    summary: PracticeSummary
    begins_s: int
    ends_s: int


@warns("outside-timetable")
def outside_timetable(analysis: Analysis) -> Iterator[Problem]:
    """On a day on which a timetable holds, a practice of a block lies in a slot of its squad: in
    its pool, between its times, in its lanes.
    """
    tables = analysis.catalogue.timetables.values()
    for on, each in _by_day(analysis).items():
        own = next((table for table in tables if table.holds(on)), None)
        if own is None:
            continue
        for going in each:
            if going.block.starts.weekday():
                continue  # told at its start: each of its days is another one than was meant
            slots = [slot for _, slot in slots_on(own, on) if slot.squad == going.block.squad]
            if any(slot.ends <= slot.begins for slot in slots):
                continue  # told at the slot
            said = _outside(analysis, going, slots)
            if said:
                hint = f"write the slot into '{own.id}', or choose another practice or start"
                path = path_of_day(going.block, going.day)
                yield Problem(going.block, path, said, hint, of_key=True)


def _outside(analysis: Analysis, going: _Going, slots: list[PoolSlot]) -> str:
    """What of a practice lies outside every slot of its squad on that day; "" for nothing."""
    practice = going.summary.practice
    title = analysis.catalogue.club.squads[going.block.squad].title
    here = [slot for slot in slots if slot.pool == practice.pool]
    begins, ends = time_of_day(going.begins_s), time_of_day(going.ends_s)
    name = f"'{practice.id}'"
    if not here:
        pool = analysis.catalogue.club.pools[practice.pool].title
        return f"{name} is in {pool}, and {title} has no slot there on {going.day.on}"
    fit = [slot for slot in here if slot.begins <= begins and ends <= slot.ends]
    if not fit:
        has = ", ".join(f"{slot.begins} to {slot.ends}" for slot in here)
        return f"{name} lasts from {begins} to {ends}, and {title} has the pool from {has}"
    lanes = lanes_of(going.summary, going.session.session).keys()
    left = min((tuple(sorted(lanes - {*slot.lanes})) for slot in fit), key=len)
    return f"{name} has {lane_words(left)}, which {title} does not have then" if left else ""


def _by_day(analysis: Analysis) -> dict[date, list[_Going]]:
    """The practices of all blocks, by day; one that several lane groups or blocks name, once."""
    found = defaultdict[date, dict[tuple[object, ...], _Going]](dict)
    for block, groups in groups_of(analysis):
        for own in groups:
            for day in own.days:
                for session in day.sessions:
                    if session.practice is not None and session.booked_s is not None:
                        key = session.practice.practice.id, *session.booked_s
                        going = _Going(block, day, session, session.practice, *session.booked_s)
                        found[day.on].setdefault(key, going)
    return {on: [*own.values()] for on, own in found.items()}


@forbids("gear-double-booked")
def gear_double_booked(analysis: Analysis) -> Iterator[Problem]:
    """Practices of several squads that go on at one moment do not use more gear together than the
    club owns: each with the most that it has in use at once.
    """
    yield from _found(analysis, "gear-double-booked")


@forbids("adults-double-booked")
def adults_double_booked(analysis: Analysis) -> Iterator[Problem]:
    """Practices that go on at one moment do not count on more adults together than the timetable of
    that day has, in whichever pools they are.
    """
    yield from _found(analysis, "adults-double-booked")


def _judged(analysis: Analysis) -> Iterator[Coded]:
    tables = analysis.catalogue.timetables.values()
    for on, each in _by_day(analysis).items():
        own = next((table for table in tables if table.holds(on)), None)
        for going in each:
            beside = [one for one in each if one.begins_s <= going.begins_s < one.ends_s]
            if len(beside) > 1:
                yield from _gear_short(analysis, going, beside)
                if own is not None:
                    yield from _adults_short(own, going, beside)


def _gear_short(analysis: Analysis, going: _Going, beside: list[_Going]) -> Iterator[Coded]:
    owned = analysis.catalogue.club.gear_owned
    for need in going.summary.gear:
        others = [
            (one, other.needed)
            for one in beside
            for other in one.summary.gear
            if one is not going and other.gear == need.gear
        ]
        both, has = need.needed + sum(pieces for _, pieces in others), owned.get(need.gear, 0)
        if others and both > has and need.needed <= has:
            names = " and ".join(f"'{one.summary.practice.id}'" for one, _ in [*others, (going, 0)])
            said = f"{names} use {both} {need.gear} at one moment, and the club owns {has}"
            hint = "give one of them another day, or a practice without it"
            yield "gear-double-booked", _problem(going, said, hint)


def _adults_short(own: Timetable, going: _Going, beside: list[_Going]) -> Iterator[Coded]:
    adults = sum(one.summary.practice.adults or 0 for one in beside)
    if own.adults is not None and adults > own.adults:
        names = " and ".join(f"'{one.summary.practice.id}'" for one in beside)
        said = f"{names} count on {adults} adults at one moment, and '{own.id}' has {own.adults}"
        hint = "give one of them another start, or plan it with fewer adults"
        yield "adults-double-booked", _problem(going, said, hint)


def _problem(going: _Going, said: str, hint: str) -> Problem:
    return Problem(going.block, path_of_day(going.block, going.day), said, hint, of_key=True)


_found = once(_judged)
