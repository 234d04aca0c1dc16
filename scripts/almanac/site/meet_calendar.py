"""A meet to take away: a calendar file with each of its sessions."""

from __future__ import annotations

from collections.abc import Iterator
from datetime import datetime, time

from icalendar import Event

from almanac.model.catalogue import Catalogue
from almanac.model.meet import Meet
from almanac.site.ics import calendar_text, stamped, uid
from almanac.site.links import page_of
from almanac.site.meet_page import rows_of


def meet_calendar(catalogue: Catalogue, meet: Meet, address: str) -> str:
    """The sessions of a meet as iCalendar (RFC 5545) text, each from the first lane to warm up in
    to the last race, times floating with the pool's clock. The same meet always gives the same
    text; it links to its page below ``address``, with "" to none.
    """
    return calendar_text("meet", meet.title, meet_events(catalogue, meet, address))


def meet_events(catalogue: Catalogue, meet: Meet, address: str) -> Iterator[Event]:
    """Each session of a meet as an event."""
    for path, day, session in meet.sessions:
        begins = min([session.begins, *(own.begins for own in session.warm_up)])
        ends = max([session.ends, *(own.ends for own in session.warm_up)])
        event = Event()
        event.add("uid", uid(f"{meet.id}-{day.on}-{path[-1]}", address))
        event.add("dtstamp", stamped(meet.first, meet.review))
        event.add("summary", f"{meet.title}: {session.title}")
        event.add("location", catalogue.club.pools[meet.pool].title)
        event.add("dtstart", datetime.combine(day.on, time.fromisoformat(begins)))
        event.add("dtend", datetime.combine(day.on, time.fromisoformat(ends)))
        told = [
            " ".join(filter(None, [row.when, row.what, row.whose and f"({row.whose})"]))
            for row in rows_of(catalogue, meet, session)
        ]
        event.add("description", "\n".join(told))
        if address:
            event.add("url", address.rstrip("/") + "/" + page_of(meet))
        yield event
