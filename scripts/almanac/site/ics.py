"""What every calendar file has: its head, and identities that no other club's events have."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import UTC, date, datetime, time
from urllib.parse import urlsplit

from icalendar import Calendar, Event

from almanac.model.entry import Review

_LONG_PAST = date(2000, 1, 1)  # the same each time, and in no calendar's future


def calendar_text(of: str, title: str, events: Iterable[Event]) -> str:
    """Events as iCalendar (RFC 5545) text; ``of`` is the kind of entry that they are of."""
    calendar = Calendar()
    calendar.add("prodid", f"-//Deck Almanac//{of}//EN")
    calendar.add("version", "2.0")
    calendar.add("x-wr-calname", title)
    for event in events:
        calendar.add_component(event)
    text: bytes = calendar.to_ical()
    return text.decode("utf-8")


def stamped(first: date, review: Review | None) -> datetime:
    """When an event was last revised (RFC 5545, 3.8.7.2), of an entry that begins on a day: when
    it was reviewed, for that alone is known, and never after it begins; else a day long past.
    """
    return datetime.combine(min(first, review.on) if review else _LONG_PAST, time(), UTC)


def uid(key: str, address: str) -> str:
    """The identity of an event: two clubs may have entries of one name, so that it names the site
    at ``address``, where that is known.
    """
    return f"{key}@{urlsplit(address).netloc or 'deck-almanac'}"
