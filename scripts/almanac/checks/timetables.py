"""Rules on timetables: lanes, gear and adults that are asked for twice at one moment."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import replace
from itertools import combinations

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAY_NAMES, DAYS
from almanac.arithmetic.pool_slots import (
    SlotDay,
    every_day,
    gear_laid_out,
    is_open,
    most_at_once,
)
from almanac.checks.once import Coded, once
from almanac.checks.pool_words import lane_words
from almanac.checks.rule import Problem, forbids
from almanac.model.timetable import Opening, PoolSlot, Timetable

_LATER_LAST = "write the later time last; what goes on after midnight is a slot of the next day"


def on_words(day: SlotDay) -> str:
    """A day as findings tell it: ``on Mondays``, ``on 2027-02-06``."""
    return f"on {day.on}" if day.on else f"on {DAY_NAMES[DAYS.index(day.day)]}s"


@forbids("timetable-dates")
def timetable_dates(analysis: Analysis) -> Iterator[Problem]:
    """A timetable ends after it begins, and so do its slots and what is open; single days lie
    within it; and no two timetables hold on one day.
    """
    for own in analysis.catalogue.timetables.values():
        if own.last <= own.first:
            said = f"it holds from {own.first} to {own.last}"
            yield Problem(own, ("to",), said, "write the later day last")
        each: dict[str, tuple[PoolSlot | Opening, ...]] = {"open": own.open, "slots": own.slots}
        for key, parts in each.items():
            for number, part in enumerate(parts):
                if part.ends <= part.begins:
                    said = f"it ends at {part.ends}, and begins at {part.begins}"
                    yield Problem(own, (key, number, "ends"), said, _LATER_LAST)
                for place, on in enumerate(part.on):
                    if not own.holds(on):
                        said = f"{on} is not between {own.first} and {own.last}"
                        mend = "write a day on which the timetable holds"
                        yield Problem(own, (key, number, "on", place), said, mend)
    ordered = sorted(analysis.catalogue.timetables.values(), key=lambda one: (one.first, one.id))
    for one, other in combinations(ordered, 2):
        if other.first <= one.last:
            said = f"'{one.id}' holds until {one.last}, and this one from {other.first} on"
            mend = "let one end before the other begins, or write the slots of both into one"
            yield Problem(other, ("from",), said, mend)


@forbids("slot-not-open")
def slot_not_open(analysis: Analysis) -> Iterator[Problem]:
    """The lanes of a slot are lanes that the club has for all of it: what is ``open`` says which,
    and when.
    """
    yield from _found(analysis, "slot-not-open")


@forbids("slots-clash")
def slots_clash(analysis: Analysis) -> Iterator[Problem]:
    """No lane is two squads' at one moment, and no squad is in two places."""
    yield from _found(analysis, "slots-clash")


@forbids("slot-gear-short")
def slot_gear_short(analysis: Analysis) -> Iterator[Problem]:
    """At no moment is more gear laid out for the squads together than the club owns."""
    yield from _found(analysis, "slot-gear-short")


@forbids("slot-adults-short")
def slot_adults_short(analysis: Analysis) -> Iterator[Problem]:
    """At no moment are more adults with the squads together than a timetable says there are
    (``adults``).
    """
    yield from _found(analysis, "slot-adults-short")


def _judged(analysis: Analysis) -> Iterator[Coded]:
    for own in analysis.catalogue.timetables.values():
        for each in every_day(own):
            # One that ends before it begins goes on at no moment; its dates tell of it.
            slots = tuple(one for one in each.slots if one[1].begins < one[1].ends)
            day = replace(each, slots=slots)
            yield from _not_open(analysis, own, day)
            yield from _clashes(analysis, own, day)
            yield from _short(analysis, own, day)


def _not_open(analysis: Analysis, own: Timetable, day: SlotDay) -> Iterator[Coded]:
    for number, slot in day.slots:
        pool = analysis.catalogue.club.pools[slot.pool]
        for place, lane in enumerate(slot.lanes):
            path = ("slots", number, "lanes", place)
            if lane > pool.lanes:
                said, mend = f"{pool.title} has {pool.lanes} lanes", f"write 1 to {pool.lanes}"
                yield "slot-not-open", Problem(own, path, said, mend)
        shut = tuple(
            lane
            for lane in sorted(slot.lanes)
            if lane <= pool.lanes and not is_open(own.open, slot, day, lane)
        )
        if shut:
            when = f"from {slot.begins} to {slot.ends} {on_words(day)}"
            said = f"the club does not have {lane_words(shut)} of {pool.title} {when}"
            mend = "give it a time within `open`, or write there what the club has"
            yield "slot-not-open", Problem(own, ("slots", number), said, mend)


def _clashes(analysis: Analysis, own: Timetable, day: SlotDay) -> Iterator[Coded]:
    squads = analysis.catalogue.club.squads
    for (_, one), (number, other) in combinations(day.slots, 2):
        if not one.is_beside(other):
            continue
        at = f"at {max(one.begins, other.begins)} {on_words(day)}"
        both = tuple(sorted({*one.lanes} & {*other.lanes})) if one.pool == other.pool else ()
        if one.squad == other.squad:
            said = f"{squads[one.squad].title} is {at} in two places"
            mend = "give one of them another time"
            yield "slots-clash", Problem(own, ("slots", number), said, mend)
        elif both:
            who = f"{squads[one.squad].title} and {squads[other.squad].title}"
            said = f"{who} both have {lane_words(both)} {at}"
            mend = "give one of them other lanes, or another time"
            yield "slots-clash", Problem(own, ("slots", number, "lanes"), said, mend)


def _short(analysis: Analysis, own: Timetable, day: SlotDay) -> Iterator[Coded]:
    owned = analysis.catalogue.club.gear_owned
    for at, slots in most_at_once(day.slots):
        number, last = slots[-1]
        when = f"at {at} {on_words(day)}"
        for gear, pieces in gear_laid_out(slot for _, slot in slots).items():
            here = number if gear in last.gear else next(n for n, s in slots if gear in s.gear)
            if pieces > owned.get(gear, 0):
                said = f"{pieces} {gear} are laid out {when}, and the club owns"
                mend = "lay out fewer, or give a squad another evening for it"
                path = ("slots", here, "gear", gear)
                yield "slot-gear-short", Problem(own, path, f"{said} {owned.get(gear, 0)}", mend)
        adults = sum(slot.adults or 0 for _, slot in slots)
        if own.adults is not None and adults > own.adults:
            said = f"{adults} adults are asked for {when}, and there are {own.adults}"
            mend = "ask for fewer, or give a squad another time"
            here = number if last.adults else next(n for n, s in slots if s.adults)
            yield "slot-adults-short", Problem(own, ("slots", here, "adults"), said, mend)


_found = once(_judged)
