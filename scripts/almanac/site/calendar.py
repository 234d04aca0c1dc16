"""A block to take away: a calendar file with each practice, and a table of its days."""

from __future__ import annotations

import csv
import io
from collections.abc import Iterator, Mapping
from datetime import UTC, datetime, time, timedelta

from icalendar import Calendar, Event

from almanac.arithmetic.block import BlockSummary, DayPlan
from almanac.model.catalogue import Catalogue
from almanac.report.plan_text import slack_words
from almanac.site.links import page_of
from almanac.units import show_distance

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


def block_calendar(catalogue: Catalogue, summary: BlockSummary, address: str) -> str:
    """The block's practices and other work as iCalendar (RFC 5545) text, times floating with the
    pool's clock.

    Each practice links to its page below ``address``, the site's root; with "" there is no link.
    The same block always gives the same text.
    """
    calendar = Calendar()
    calendar.add("prodid", "-//Deck Almanac//block//EN")
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", summary.block.title)
    for week in summary.weeks:
        for day in week.days:
            for event in _events(catalogue, summary, day, address):
                calendar.add_component(event)
    text: bytes = calendar.to_ical()
    return text.decode("utf-8")


def _events(
    catalogue: Catalogue, summary: BlockSummary, day: DayPlan, address: str
) -> Iterator[Event]:
    if day.practice is not None:
        practice = day.practice.practice
        start = datetime.combine(day.on, time.fromisoformat(practice.slot.start))
        event = _event(summary, day, "practice")
        event.add("dtstart", start)
        event.add("dtend", start + timedelta(minutes=practice.slot.minutes))
        event.add("summary", f"{catalogue.club.squads[practice.squad].title}: {practice.title}")
        event.add("location", day.practice.pool.title)
        distance = show_distance(day.practice.distance.value, day.practice.pool.course.unit)
        event.add("description", f"{practice.focus}\n{distance}. {slack_words(day.practice)}")
        if address:
            event.add("url", address.rstrip("/") + "/" + page_of(practice))
        yield event
    if day.day is not None and day.day.other:
        event = _event(summary, day, "other")
        event.add("dtstart", day.on)
        event.add("summary", f"{day.day.other}, {day.day.minutes} minutes")
        yield event


def _event(summary: BlockSummary, day: DayPlan, what: str) -> Event:
    event = Event()
    event.add("uid", f"{summary.block.id}-{day.on}-{what}@deck-almanac")
    event.add("dtstamp", datetime.combine(summary.block.starts, time(), UTC))
    return event


def block_table(groups: Mapping[str, BlockSummary]) -> str:
    """The block's days as CSV: a row a day, distances in metres, and a column of planned load for
    each lane group.
    """
    first = next(iter(groups.values()))
    text = io.StringIO()
    writer = csv.writer(text, lineterminator="\n")
    writer.writerow([*COLUMNS, *(f"load_{group}" for group in groups)])
    for number, week in enumerate(first.weeks):
        for index, day in enumerate(week.days):
            loads = [summary.weeks[number].days[index].load for summary in groups.values()]
            writer.writerow(
                [
                    *_cells(week.number, day),
                    *("" if load is None else round(load, 1) for load in loads),
                ]
            )
    return text.getvalue()


def _cells(week: int, day: DayPlan) -> list[object]:
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
        day.practice.practice.id if day.practice else "",
        day.day.other if day.day else "",
        "yes" if day.is_off else "",
        *(round(metres, 1) for metres in distances),
    ]
