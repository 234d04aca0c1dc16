"""The page of a meet: when to be where, what is swum when, what to bring, what can hurt."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.meet_lanes import heads_a_lane
from almanac.checks.pool_words import lane_words
from almanac.findings import Finding
from almanac.model.block import Block
from almanac.model.catalogue import Catalogue
from almanac.model.meet import FINAL, HEATS, STARTS, SWIM, Event, Meet, MeetSession, WarmUp
from almanac.report.pool_text import end_rows
from almanac.report.shown import date_words, day_words
from almanac.rounding import show_number
from almanac.site.entry_page import dangers, entry_page, findings_on
from almanac.site.links import Page, links

_USES = {SWIM: "Warm-up", STARTS: "Starts, all one way"}
_ROUNDS = {HEATS: "heats", FINAL: "final"}


@dataclass(frozen=True)
class Row:
    """A line of a session: when, what, for whom ("" for all that go), and what else to know."""

    when: str
    what: str
    whose: str
    more: str
    is_race: bool


def meet_page(analysis: Analysis, meet: Meet, findings: Sequence[Finding]) -> Page:
    """The page of a meet."""
    catalogue = analysis.catalogue
    pool = catalogue.club.pools[meet.pool]
    return entry_page(
        catalogue,
        meet,
        course=pool.course.shown,
        when=days_words(meet),
        first=str(meet.first),
        pool=pool.title,
        lanes=pool.lanes,
        emergency=pool.emergency,
        squads=", ".join(catalogue.club.squads[id].title for id in meet.squads),
        entries_by=date_words(meet.entries_by) if meet.entries_by else "",
        sessions=[
            (day_words(day.on), f"{day.on:%A}", session, list(rows_of(catalogue, meet, session)))
            for _, day, session in meet.sessions
        ],
        dangers=dangers(catalogue, meet),
        ends=[row for row in end_rows(catalogue) if row.pool == pool.title],
        blocks=links(catalogue.users(meet, Block)),
        findings=findings_on(meet, findings),
    )


def days_words(meet: Meet) -> str:
    """Its days as they are said: ``27 February 2027``, ``26 to 28 February 2027``."""
    if meet.first == meet.last:
        return date_words(meet.last)
    same = meet.first.month == meet.last.month
    return f"{meet.first.day if same else day_words(meet.first)} to {date_words(meet.last)}"


def race_words(catalogue: Catalogue, meet: Meet, event: Event) -> str:
    """A race as it is called: ``200 m backstroke``, ``4 × 50 m medley``."""
    unit = catalogue.club.pools[meet.pool].course.unit.value
    stroke = "medley" if event.medley else catalogue.words("strokes")[event.stroke].title.lower()
    legs = f"{event.legs} × " if event.legs > 1 else ""
    return f"{legs}{event.distance} {unit} {stroke}"


def rows_of(catalogue: Catalogue, meet: Meet, session: MeetSession) -> Iterator[Row]:
    """What there is in a session, by the clock; a race of no known time comes after the one before
    it.
    """
    timed = [(slot.begins, _slot(catalogue, meet, slot)) for slot in session.warm_up]
    last = session.begins
    for event in session.events:
        last = event.at or last
        timed.append((last, _race(catalogue, meet, event)))
    yield from (row for _, row in sorted(timed, key=lambda own: own[0]))


def _slot(catalogue: Catalogue, meet: Meet, slot: WarmUp) -> Row:
    each = None if slot.use == STARTS else heads_a_lane(catalogue.club, meet, slot)
    full = f"; {show_number(each.value)} in a lane if all come" if each else ""
    return Row(
        f"{slot.begins}–{slot.ends}",
        _USES.get(slot.use, "Swim down"),
        _whose(catalogue, slot),
        f"{lane_words(slot.lanes)}{full}",
        is_race=False,
    )


def _race(catalogue: Catalogue, meet: Meet, event: Event) -> Row:
    kinds = [_ROUNDS.get(event.round, ""), event.who, "from the water" if event.from_water else ""]
    more = ", ".join([f"event {event.number}", *filter(None, kinds)])
    return Row(
        event.at,
        race_words(catalogue, meet, event),
        _whose(catalogue, event),
        more,
        is_race=True,
    )


def _whose(catalogue: Catalogue, own: WarmUp | Event) -> str:
    return ", ".join(catalogue.club.squads[id].title for id in own.squads)
