"""A block to take away: a calendar file with each practice, and a table of its days."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping, Sequence
from datetime import datetime, time, timedelta

from icalendar import Event

from almanac.arithmetic.block import BlockSummary
from almanac.arithmetic.block_days import DayPlan, SessionPlan, day_of_all
from almanac.arithmetic.kept import kept_load, kept_of_day
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.training_load import DAYS_A_WEEK
from almanac.model.catalogue import Catalogue
from almanac.report.sheet_text import slack_words
from almanac.report.ways import distance_words
from almanac.rounding import decimals
from almanac.site.ics import calendar_text, stamped, uid
from almanac.site.links import page_of
from almanac.site.spreadsheets import harmless
from almanac.units import show_number

COLUMNS = (
    "week",
    "day",
    "date",
    "practice",
    "other",
    "rest",
    "metres",
    "kick_m",
    "supine_flutter_m",
    "resisted_m",
    "fast_m",
)


def block_calendar(catalogue: Catalogue, groups: Mapping[str, BlockSummary], address: str) -> str:
    """The block's practices and other work as iCalendar (RFC 5545) text, times floating with the
    pool's clock.

    Each practice links to its page below ``address``, the site's root; with "" there is no link.
    The same block always gives the same text.
    """
    summary = next(iter(groups.values()))
    events = block_events(catalogue, groups, address)
    return calendar_text("block", summary.block.title, events)


def block_events(
    catalogue: Catalogue, groups: Mapping[str, BlockSummary], address: str
) -> Iterator[Event]:
    """Each session of a block as an event."""
    summary = next(iter(groups.values()))
    for days in zip(*(own.days for own in groups.values()), strict=True):
        yield from _events(catalogue, summary, day_of_all(days), address)


def _events(
    catalogue: Catalogue, summary: BlockSummary, day: DayPlan, address: str
) -> Iterator[Event]:
    for own in day.sessions:
        event = _event(summary, day, own, address)
        if own.practice is not None:
            _tell_practice(event, catalogue, own, own.practice, address)
        else:
            what = own.circuit.swim_set.title if own.circuit else own.session.other
            words = f"{what}, {show_number(own.minutes or 0, 0)} minutes"
            event.add("summary", _of_squad(catalogue, summary.block.squad, words))
        if own.start:
            minutes = own.practice.practice.slot.minutes if own.practice else own.minutes or 0
            start = datetime.combine(day.on, time.fromisoformat(own.start))
            event.add("dtstart", start)
            event.add("dtend", start + timedelta(minutes=minutes))
        else:
            event.add("dtstart", day.on)
            event.add("transp", "TRANSPARENT")  # on a day without a time, which it does not fill
        yield event


def _tell_practice(
    event: Event,
    catalogue: Catalogue,
    own: SessionPlan,
    summary: PracticeSummary,
    address: str,
) -> None:
    practice = summary.practice
    event.add("summary", _of_squad(catalogue, practice.squad, practice.title))
    event.add("location", summary.pool.title)
    distance = distance_words(summary.first)
    event.add("description", f"{practice.focus}\n{distance}. {slack_words(summary, own.start)}")
    if address:
        event.add("url", address.rstrip("/") + "/" + page_of(practice))


def _of_squad(catalogue: Catalogue, squad: str, words: str) -> str:
    """Words under the squad's title, once."""
    title = f"{catalogue.club.squads[squad].title}: "
    return words if words.startswith(title) else f"{title}{words}"


def _event(summary: BlockSummary, day: DayPlan, own: SessionPlan, address: str) -> Event:
    """An event with an identity that stays when the block is written anew: a day's second session
    of a sort is told apart by its number.
    """
    alike = [other for other in day.sessions if bool(other.practice) == bool(own.practice)]
    number = next(place for place, other in enumerate(alike, 1) if other is own)
    what = ("practice" if own.practice else "other") + (f"-{number}" if number > 1 else "")
    event = Event()
    event.add("uid", uid(f"{summary.block.id}-{day.on}-{what}", address))
    event.add("dtstamp", stamped(summary.block.starts, summary.block.review))
    return event


def block_table(groups: Mapping[str, BlockSummary]) -> str:
    """The block's days as CSV: a row a day, distances in metres (of the first lane group where none
    is named), and columns of distance and load for each lane group. A load that is not known is
    empty.
    """
    first = next(iter(groups.values()))
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    each = [
        f"{what}_{group}"
        for group in groups
        for what in ("metres", "load", "metres_done", "load_done")
    ]
    writer.writerow([*COLUMNS, *each])
    for number, days in enumerate(zip(*(own.days for own in groups.values()), strict=True)):
        week = first.weeks[number // DAYS_A_WEEK]
        own = [
            cell for group, day in zip(groups, days, strict=True) for cell in _of_group(group, day)
        ]
        cells = (*_cells(week.number, days[0], day_of_all(days)), *own)
        writer.writerow([harmless(cell) for cell in cells])
    return text.getvalue()


def _of_group(group: str, day: DayPlan) -> Iterator[float | str]:
    """Distance and load of a day as planned and, where sessions of it were kept, as done."""
    planned = [own.planned for own in day.sessions]
    kept = list(kept_of_day(group, day))
    yield decimals(day.metres, 1)
    yield _number(None if day.day is None else _total(planned))
    yield sum(own.log.metres for own in kept) if kept else ""
    loads = [load.value if load else None for load in map(kept_load, kept)]
    yield _number(_total(loads) if kept else None)


def _total(numbers: Sequence[float | None]) -> float | None:
    """A sum that is not known where a part of it is not."""
    known = [number for number in numbers if number is not None]
    return sum(known) if len(known) == len(numbers) else None


def _number(value: float | None) -> float | str:
    return "" if value is None else decimals(value, 1)


def _cells(week: int, day: DayPlan, of_all: DayPlan) -> list[object]:
    balance = day.balance
    distances = (
        balance.metres,
        balance.kick_m,
        balance.supine_flutter_m,
        balance.resisted_m,
        balance.fast_m,
    )
    return [
        week,
        day.name,
        day.on,
        "; ".join(practice.practice.id for practice in of_all.practices),
        "; ".join(filter(None, map(_beside, of_all.sessions))),
        "yes" if day.is_off else "",
        *(decimals(metres, 1) for metres in distances),
    ]


def _beside(own: SessionPlan) -> str:
    """What a session is that is no practice."""
    return own.circuit.swim_set.id if own.circuit else own.session.other
