"""A season to take away: calendar files of its dates, and of all that a squad has in it."""

from __future__ import annotations

from collections.abc import Iterator

from icalendar import Event

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.season_days import ONE_DAY, last_day
from almanac.checks.seasons import blocks_in
from almanac.model.season import Season, Stretch
from almanac.site.calendar import block_events
from almanac.site.ics import calendar_text, stamped, uid
from almanac.site.links import page_of
from almanac.site.meet_calendar import meet_events


def season_calendar(analysis: Analysis, season: Season, address: str, squad: str = "") -> str:
    """A season as iCalendar (RFC 5545) text: its terms, closures, exams and other courses as whole
    days, and the sessions of its meets; for one squad those that are its, and each session of its
    blocks, with the identity that it has in the file of the block. The same season always gives the
    same text.
    """
    title = f", {analysis.catalogue.club.squads[squad].title}" if squad else ""
    events = _events(analysis, season, address, squad)
    return calendar_text("season", f"{season.title}{title}", events)


def _events(analysis: Analysis, season: Season, address: str, squad: str) -> Iterator[Event]:
    catalogue = analysis.catalogue
    for key, own in _stretches(season, squad):
        yield _whole_days(season, uid(f"{season.id}-{key}", address), own)
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
            weeks = Stretch(title=block.title, first=block.starts, last=last_day(block))
            event = _whole_days(season, uid(f"{block.id}-weeks", address), weeks)
            if address:
                event.add("url", address.rstrip("/") + "/" + page_of(block))
            yield event
    for number, outline in enumerate(season.squads[squad].outlines):
        key = f"{season.id}-{squad}-outline-{number}"
        yield _whole_days(season, uid(key, address), outline)


def _stretches(season: Season, squad: str) -> Iterator[tuple[str, Stretch]]:
    yield from ((f"term-{number}", own) for number, own in enumerate(season.terms))
    yield from ((f"closure-{number}", own) for number, own in enumerate(season.closures))
    for number, exams in enumerate(season.exams):
        if not squad or squad in exams.squads:
            yield f"exams-{number}", exams
    for number, course in enumerate(season.courses):
        if not squad or squad in course.squads:
            yield f"course-{number}", course


def _whole_days(season: Season, identity: str, own: Stretch) -> Event:
    event = Event()
    event.add("uid", identity)
    event.add("dtstamp", stamped(season.first, season.review))
    event.add("summary", own.title)
    event.add("dtstart", own.first)
    event.add("dtend", own.last + ONE_DAY)  # the day after, by RFC 5545
    return event
