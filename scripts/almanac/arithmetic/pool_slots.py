"""A timetable day by day: who has which lanes then, and what is asked for at one moment."""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby, pairwise

from almanac.arithmetic.block_days import DAYS
from almanac.model.timetable import Opening, PoolSlot, Timetable

Numbered = tuple[int, PoolSlot]  # a slot with its place in the timetable


def slots_on(timetable: Timetable, on: date) -> list[Numbered]:
    """The slots of a day, in the timetable's order: those of the weekday, but for a squad that has
    others ``on`` that very day. None on a day on which the timetable does not hold.
    """
    if not timetable.holds(on):
        return []
    numbered = list(enumerate(timetable.slots))
    own = [(number, slot) for number, slot in numbered if on in slot.on]
    otherwise = {slot.squad for _, slot in own}
    weekly = _weekly(numbered, DAYS[on.weekday()])
    return sorted(
        [*own, *((n, slot) for n, slot in weekly if slot.squad not in otherwise)], key=_number
    )


def usual_days(timetable: Timetable) -> Iterator[tuple[str, list[Numbered]]]:
    """Each day of the week with its slots, as it is where no single day is otherwise."""
    for day in DAYS:
        yield day, list(_weekly(enumerate(timetable.slots), day))


@dataclass(frozen=True)
class SlotDay:
    """A day of the week with its slots, or a single day that is otherwise, with its date."""

    day: str
    on: date | None
    slots: tuple[Numbered, ...]


def every_day(timetable: Timetable) -> Iterator[SlotDay]:
    """The days of the week and the single days that are otherwise, each with its slots."""
    for day, slots in usual_days(timetable):
        yield SlotDay(day, None, tuple(slots))
    for on in sorted({on for slot in timetable.slots for on in slot.on}):
        yield SlotDay(DAYS[on.weekday()], on, tuple(slots_on(timetable, on)))


def _number(own: Numbered) -> int:
    return own[0]


def _weekly(slots: Iterable[Numbered], day: str) -> Iterator[Numbered]:
    return ((number, slot) for number, slot in slots if day in slot.days)


def is_open(openings: Sequence[Opening], slot: PoolSlot, day: SlotDay, lane: int) -> bool:
    """Whether the club has a lane for all of a slot of a day; openings that meet count together."""
    spans = sorted(
        (own.begins, own.ends)
        for own in openings
        if own.pool == slot.pool
        and (not own.lanes or lane in own.lanes)
        and (day.day in own.days or day.on in own.on)
    )
    at = slot.begins
    for begins, ends in spans:
        if begins <= at < ends:
            at = ends
    return at >= slot.ends


def most_at_once(slots: Sequence[Numbered]) -> Iterator[tuple[str, list[Numbered]]]:
    """Each moment at which a slot of a day begins, with all slots that are going on then."""
    for at in sorted({slot.begins for _, slot in slots}):
        yield at, [(n, slot) for n, slot in slots if slot.begins <= at < slot.ends]


def gear_laid_out(slots: Iterable[PoolSlot]) -> Mapping[str, int]:
    """How many pieces of each gear are laid out for some slots together."""
    found = Counter[str]()
    for slot in slots:
        found.update(slot.gear)
    return found


@dataclass(frozen=True)
class GridRow:
    """A stretch of a day in which nobody comes or goes: runs of lanes side by side with the squad
    that has them, "" for nobody.
    """

    begins: str
    ends: str
    cells: tuple[tuple[int, str], ...]


def grid(slots: Sequence[PoolSlot], lanes: int) -> list[GridRow]:
    """The slots of one pool on one day as rows of its lanes, from the first to the last; a stretch
    in which nobody has a lane is left out.
    """
    times = sorted({time for slot in slots for time in (slot.begins, slot.ends)})
    rows = []
    for begins, ends in pairwise(times):
        here = [slot for slot in slots if slot.begins <= begins < slot.ends]
        whose = [
            next((slot.squad for slot in here if lane in slot.lanes), "")
            for lane in range(1, lanes + 1)
        ]
        cells = tuple((len(list(run)), squad) for squad, run in groupby(whose))
        if any(whose):
            rows.append(GridRow(begins, ends, cells))
    return rows
