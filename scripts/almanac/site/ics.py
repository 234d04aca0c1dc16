"""What every calendar file has: its head, and identities that no other club's events have."""

from __future__ import annotations

from collections.abc import Iterable
from urllib.parse import urlsplit

from icalendar import Calendar, Event


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


def uid(key: str, address: str) -> str:
    """The identity of an event: two clubs may have entries of one name, so that it names the site
    at ``address``, where that is known.
    """
    return f"{key}@{urlsplit(address).netloc or 'deck-almanac'}"
