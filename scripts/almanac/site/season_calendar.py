"""A season to take away: calendar files of its dates, and of all that a squad has in it."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import UTC, date, datetime, time, timedelta

from icalendar import Calendar, Event

from almanac.analysis.analysis import Analysis
from almanac.checks.seasons import blocks_in
from almanac.model.season import Season, Stretch
from almanac.site.calendar import block_events
from almanac.site.links import page_of
from almanac.site.meet_calendar import meet_events

_ONE_DAY = timedelta(days=1)


def season_calendar(analysis: Analysis, season: Season, address: str, squad: str = "") -> str:
    """A season as iCalendar (RFC 5545) text: its terms, closures, exams and other courses as whole
    days, and the sessions of its meets; for one squad those that are its, and each session of its
    blocks, with the identity that it has in the file of the block. The same season always gives the
    same text.
    """
    calendar = Calendar()
    calendar.add("prodid", "-//Deck Almanac//season//EN")
    calendar.add("version", "2.0")
    title = analysis.catalogue.club.squads[squad].title if squad else ""
    calendar.add("x-wr-calname", f"{season.title}, {title}" if title else season.title)
    for event in _events(analysis, season, address, squad):
        calendar.add_component(event)
    text: bytes = calendar.to_ical()
    return text.decode("utf-8")


def _events(analysis: Analysis, season: Season, address: str, squad: str) -> Iterator[Event]:
    catalogue = analysis.catalogue
    for key, own in _stretches(season, squad):
        yield _whole_days(season, f"{season.id}-{key}", own.title, own.first, own.last)
    for meet in (catalogue.meets[id] for id in season.meets):
        if not squad or squad in meet.squads:
            yield from meet_events(catalogue, meet, address)
    if not squad:
        return
    for block in blocks_in(analysis, season, squad):
        groups = analysis.blocks.get(block.id)
        if groups:
            yield from block_events(catalogue, groups, address)
        else:
            first = block.starts
            last = first + timedelta(weeks=len(block.weeks)) - _ONE_DAY
            event = _whole_days(season, f"{block.id}-weeks", block.title, first, last)
            if address:
                event.add("url", address.rstrip("/") + "/" + page_of(block))
            yield event
    for number, outline in enumerate(season.squads[squad].outlines):
        key = f"{season.id}-{squad}-outline-{number}"
        yield _whole_days(season, key, outline.title, outline.first, outline.last)


def _stretches(season: Season, squad: str) -> Iterator[tuple[str, Stretch]]:
    yield from ((f"term-{number}", own) for number, own in enumerate(season.terms))
    yield from ((f"closure-{number}", own) for number, own in enumerate(season.closures))
    for number, exams in enumerate(season.exams):
        if not squad or squad in exams.squads:
            yield f"exams-{number}", exams
    for number, course in enumerate(season.courses):
        if not squad or squad in course.squads:
            yield f"course-{number}", course


def _whole_days(season: Season, key: str, title: str, first: date, last: date) -> Event:
    event = Event()
    event.add("uid", f"{key}@deck-almanac")
    event.add("dtstamp", datetime.combine(season.first, time(), UTC))
    event.add("summary", title)
    event.add("dtstart", first)
    event.add("dtend", last + _ONE_DAY)  # the day after, by RFC 5545
    return event
