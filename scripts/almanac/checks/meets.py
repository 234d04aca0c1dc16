"""Rules on meets: times and rounds in order, lanes that are there, races that fit the pool."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from itertools import combinations, pairwise

from almanac.analysis.analysis import Analysis
from almanac.checks.pool_words import lane_words
from almanac.checks.rule import Problem, forbids, warns
from almanac.model.meet import FINAL, HEATS, STARTS, SWIM, Event, Meet, MeetSession, WarmUp
from almanac.source.reader import DataPath

_IN_ORDER = "write it where it comes, or correct the time"


@forbids("meet-times")
def meet_times(analysis: Analysis) -> Iterator[Problem]:
    """The days of a meet follow each other, and so do the sessions of a day and the races of a
    session; what begins ends later; the lanes to warm up in are given back when races begin; and
    entries are in before the first day.
    """
    for meet in analysis.catalogue.meets.values():
        if meet.entries_by and meet.entries_by > meet.first:
            said = f"entries are in by {meet.entries_by}, and the meet begins on {meet.first}"
            yield Problem(meet, ("entries_by",), said, "write a day before it, or correct the days")
        for number, (before, day) in enumerate(pairwise(meet.days), 1):
            if day.on <= before.on:
                said = f"{day.on} stands after {before.on}"
                yield Problem(meet, ("days", number, "on"), said, _IN_ORDER)
        for number, own in enumerate(meet.days):
            for place, (earlier, later) in enumerate(pairwise(own.sessions), 1):
                if later.begins < earlier.ends:
                    said = f"it begins at {later.begins}, and the session before ends at"
                    where = ("days", number, "sessions", place, "begins")
                    yield Problem(meet, where, f"{said} {earlier.ends}", _IN_ORDER)
        for path, _, session in meet.sessions:
            yield from _times(meet, path, session)


def _times(meet: Meet, path: DataPath, session: MeetSession) -> Iterator[Problem]:
    spans: list[tuple[DataPath, MeetSession | WarmUp]] = [
        (path, session),
        *((_warm_up(path, n), w) for n, w in enumerate(session.warm_up)),
    ]
    for where, own in spans:
        if own.ends <= own.begins:
            said = f"it ends at {own.ends}, and begins at {own.begins}"
            yield Problem(meet, (*where, "ends"), said, "write the later time last")
    for number, slot in enumerate(session.warm_up):
        if slot.use in (SWIM, STARTS) and slot.begins < session.begins < slot.ends:
            said = f"the races begin at {session.begins}, and this lasts until {slot.ends}"
            yield Problem(meet, (*_warm_up(path, number), "ends"), said, "end it before they do")
    last = session.begins
    for number, event in enumerate(session.events):
        if event.at and not last <= event.at <= session.ends:
            said = f"at {event.at}, and what is before it is at {last}"
            if event.at > session.ends:
                said = f"at {event.at}, and the session ends at {session.ends}"
            yield Problem(meet, (*path, "events", number, "at"), said, _IN_ORDER)
        last = event.at or last


def _warm_up(path: DataPath, number: int) -> DataPath:
    return (*path, "warm_up", number)


@forbids("meet-lanes")
def meet_lanes(analysis: Analysis) -> Iterator[Problem]:
    """The lanes for warming up are lanes of the meet's pool, and none of them is for two things at
    one moment: who dives in and who swims in a circle do not meet.
    """
    for meet in analysis.catalogue.meets.values():
        pool = analysis.catalogue.club.pools[meet.pool]
        for path, _, session in meet.sessions:
            for number, slot in enumerate(session.warm_up):
                for place, lane in enumerate(slot.lanes):
                    if lane > pool.lanes:
                        said = f"{pool.title} has {pool.lanes} lanes"
                        where = (*_warm_up(path, number), "lanes", place)
                        yield Problem(meet, where, said, f"write one of 1 to {pool.lanes}")
            for (_, one), (number, other) in combinations(enumerate(session.warm_up), 2):
                both = sorted({*one.lanes} & {*other.lanes})
                if both and one.begins < other.ends and other.begins < one.ends:
                    lanes = lane_words(tuple(both))
                    at = max(one.begins, other.begins)
                    said = f"at {at} {lanes} for two things: to {_use(one)} too"
                    mend = "give them other lanes or other times, or one slot with both squads"
                    yield Problem(meet, (*_warm_up(path, number), "lanes"), said, mend)


def _use(slot: WarmUp) -> str:
    return "start" if slot.use == STARTS else "swim"


@forbids("meet-rounds")
def meet_rounds(analysis: Analysis) -> Iterator[Problem]:
    """The heats of a race come before its final, and neither stands without the other; where times
    decide at once, it is a ``timed-final``. No race is written twice, and no two have one number.
    """
    for meet in analysis.catalogue.meets.values():
        seen: dict[tuple[object, str], DataPath] = {}
        numbered: dict[int, object] = {}
        for path, _, session in meet.sessions:
            for number, event in enumerate(session.events):
                where = (*path, "events", number)
                if numbered.setdefault(event.number, event.race) != event.race:
                    said = f"another race above has the number {event.number}"
                    yield Problem(meet, (*where, "number"), said, "give each race its own")
                said = ""
                if (event.race, event.round) in seen:
                    said, mend = "this race stands above already", "take one of the two out"
                elif event.round == FINAL and (event.race, HEATS) not in seen:
                    said, mend = (
                        "a final, and no heats before it",
                        "write its heats, or timed-final",
                    )
                seen.setdefault((event.race, event.round), where)
                if said:
                    yield Problem(meet, (*where, "round"), said, mend)
        for (race, kind), where in seen.items():
            if kind == HEATS and (race, FINAL) not in seen:
                mend = "write the final, or timed-final where times decide at once"
                yield Problem(meet, (*where, "round"), "heats, and no final after them", mend)


@forbids("meet-distance")
def meet_distance(analysis: Analysis) -> Iterator[Problem]:
    """A race is a whole number of lengths of the meet's pool, and a medley by one swimmer four of
    them or a multiple.
    """
    for meet in analysis.catalogue.meets.values():
        course = analysis.catalogue.club.pools[meet.pool].course
        for path, _, session in meet.sessions:
            for number, event in enumerate(session.events):
                strokes = 4 if event.medley and event.legs == 1 else 1
                if event.distance % (course.length * strokes):
                    said = f"{event.distance} is no whole number of lengths in {course}"
                    mend = f"write a multiple of {course.length * strokes}"
                    yield Problem(meet, (*path, "events", number, "distance"), said, mend)


@forbids("meet-other-squad")
def meet_other_squad(analysis: Analysis) -> Iterator[Problem]:
    """Lanes and races are for squads that go to the meet."""
    for meet in analysis.catalogue.meets.values():
        for path, _, session in meet.sessions:
            parts: dict[str, Sequence[WarmUp | Event]] = {
                "warm_up": session.warm_up,
                "events": session.events,
            }
            for key, each in parts.items():
                for number, own in enumerate(each):
                    for place, squad in enumerate(own.squads):
                        if squad not in meet.squads:
                            where = (*path, key, number, "squads", place)
                            mend = "add it to the squads of the meet, or take it out here"
                            yield Problem(meet, where, f"'{squad}' does not go", mend)


@warns("meet-warm-up")
def meet_warm_up(analysis: Analysis) -> Iterator[Problem]:
    """Every squad that races in a session has lanes to swim in before it begins."""
    for meet in analysis.catalogue.meets.values():
        for path, _, session in meet.sessions:
            before = [
                own for own in session.warm_up if own.use == SWIM and own.ends <= session.begins
            ]
            warm = {squad for own in before for squad in meet.squads_of(own)}
            racing = [squad for own in session.events for squad in meet.squads_of(own)]
            for squad in dict.fromkeys(racing):
                if squad not in warm:
                    title = analysis.catalogue.club.squads[squad].title
                    said = f"{title} races, and has no lane to swim in before {session.begins}"
                    mend = f"write when and where: {{use: {SWIM}, begins: …, ends: …, lanes: […]}}"
                    yield Problem(meet, (*path, "warm_up"), said, mend, of_key=True)
