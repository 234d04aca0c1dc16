"""A season week by week, its tests, its page and its calendars. What it forbids stands in the
rejected examples.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, datetime

import vobject

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block import summarise_block
from almanac.arithmetic.season_days import (
    Overdue,
    TestRules,
    mondays,
    overdue,
    runs_of_tests,
    unplanned,
)
from almanac.arithmetic.season_weeks import squad_weeks
from almanac.model.season import Closure, Outline, Season, SquadSeason, Stretch
from almanac.site.calendar import block_calendar
from almanac.site.meet_calendar import meet_calendar
from almanac.site.season_calendar import season_calendar
from almanac.site.season_page import season_page

TERM = Stretch(title="Term", first=date(2026, 9, 7), last=date(2026, 12, 20))
CLOSED = Closure(title="Fair", first=date(2026, 10, 12), last=date(2026, 10, 25))


def season(squad: SquadSeason, *closures: Closure) -> Season:
    return Season(
        id="year",
        file="plans/seasons/year.yml",
        title="Year",
        first=TERM.first,
        last=TERM.last,
        terms=(TERM,),
        closures=closures,
        squads={"a": squad},
    )


def outline(first: date, last: date, *tests: str) -> Outline:
    return Outline(title="Weeks", first=first, last=last, meant="Lines.", tests=tests)


def test_days_of_a_term_that_nothing_holds() -> None:
    """From 5 October on nothing is meant until 2 November, but a fortnight of that nobody
    trains.
    """
    own = SquadSeason(
        aim="",
        outlines=(
            outline(date(2026, 9, 7), date(2026, 10, 4)),
            outline(date(2026, 11, 2), date(2026, 12, 20)),
        ),
    )
    assert list(unplanned(season(own, CLOSED), own, [])) == [
        (date(2026, 10, 5), date(2026, 10, 11)),
        (date(2026, 10, 26), date(2026, 11, 1)),
    ]


def test_when_a_benchmark_is_run_and_overdue() -> None:
    """Every four weeks: swum on 14 September, so due on 12 October and, with the fortnight that
    nobody trains, on the 26th. The outline runs it from 16 November on: three weeks late. Planned
    days before this week are not counted, for nobody swam them.
    """
    own = SquadSeason(
        aim="",
        outlines=(
            outline(date(2026, 9, 7), date(2026, 9, 20), "kick"),
            outline(date(2026, 11, 16), date(2026, 12, 20), "kick"),
        ),
        tests=("kick",),
    )
    year = season(own, CLOSED)
    rules = TestRules({"kick": 4}, {"kick": [date(2026, 9, 14)]}, date(2026, 10, 1))
    runs = runs_of_tests(year, own, [], rules)
    assert runs == {"kick": [date(2026, 9, 14), date(2026, 11, 16), date(2026, 12, 14)]}
    assert list(overdue(year, runs, rules, 7)) == [
        Overdue("kick", date(2026, 10, 26), date(2026, 11, 16))
    ]
    assert not list(overdue(year, runs, rules, 21))
    later = TestRules(rules.weeks, rules.known, date(2026, 11, 1))  # past mending
    assert not list(overdue(year, runs, later, 7))


def test_weeks_of_a_squad_are_told_from_its_heaviest(analysis: Analysis) -> None:
    year = analysis.catalogue.seasons["the-year"]
    planned = analysis.catalogue.blocks["heron-legs-in-three-weeks"]
    block = replace(planned, starts=date(2026, 11, 30))  # when the tests behind its paces are known
    summary = summarise_block(block, analysis.practice_on, "heron-1", circuit=analysis.summary)
    weeks = squad_weeks(year, year.squads["heron"], [block], {block.id: summary})
    assert len(weeks) == len(list(mondays(year))) == 29
    held = [week for week in weeks if week.block]
    assert [week.week.number for week in held if week.week] == [1, 2, 3]
    loads = [week.load or 0.0 for week in held]
    assert max(week.step for week in held) == 10
    assert [week.step for week in held] == [round(10 * load / max(loads)) for load in loads]
    assert weeks[0].outline is year.squads["heron"].outlines[0]


def test_the_page_says_what_begins_in_a_week(analysis: Analysis) -> None:
    page = season_page(analysis, analysis.catalogue.seasons["the-year"], [])
    weeks = page.context["weeks"]
    assert isinstance(weeks, list)
    notes = {str(week.monday): [note.words for note in week.notes] for week in weeks}
    assert notes["2026-11-02"] == ["Heron: legs in three weeks"]
    assert notes["2027-02-22"] == ["Spring meet, Osprey"]
    assert notes["2027-02-01"] == ["Long course (50 m), Osprey"]
    assert notes["2026-10-26"] == ["Baths cleaned: Quillwater Baths"]
    kinds = {str(week.monday): [list(cell.kinds) for cell in week.cells] for week in weeks}
    assert kinds["2027-01-25"] == [[], ["exams"]]  # heron, osprey
    assert kinds["2027-02-01"] == [[], ["50 m"]]
    assert kinds["2026-11-16"] == [["taper", "test"], []]
    shut = [week for week in weeks if {cell.sort for cell in week.cells} == {"shut"}]
    # two weeks of Christmas are one row
    assert [(str(week.monday), week.day, week.days) for week in shut] == [
        ("2026-12-21", "21 Dec to 3 Jan", 14)
    ]


def test_events_say_the_squad_once_and_none_was_revised_in_the_future(analysis: Analysis) -> None:
    """DTSTAMP is when an event was last revised, TRANSP whether it fills its time (RFC 5545,
    3.8.7.2 and 3.8.2.7).
    """
    year = analysis.catalogue.seasons["the-year"]
    events = vobject.readOne(season_calendar(analysis, year, "", "heron")).vevent_list
    sessions = [event for event in events if event.uid.value.startswith("heron-legs-in-")]
    assert len(sessions) > 10
    assert all(event.summary.value.count("Heron: ") == 1 for event in sessions)
    beside = [event for event in sessions if "-other" in event.uid.value]
    assert beside and all(event.transp.value == "TRANSPARENT" for event in beside
                          if not isinstance(event.dtstart.value, datetime))  # fmt: skip
    every = vobject.readOne(season_calendar(analysis, year, "")).vevent_list
    stamps = {event.dtstamp.value.date() for event in (*events, *every)}
    assert max(stamps) <= analysis.today
    reviewed = analysis.catalogue.meets["spring-meet"]
    assert reviewed.review is not None
    of_meet = next(event for event in every if event.uid.value.startswith("spring-meet"))
    assert of_meet.dtstamp.value.date() == reviewed.review.on
    unread = meet_calendar(analysis.catalogue, replace(reviewed, review=None), "")
    assert {e.dtstamp.value.date() for e in vobject.readOne(unread).vevent_list} == {
        date(2000, 1, 1)
    }


def test_a_squads_calendar_holds_its_blocks_with_the_same_identities(analysis: Analysis) -> None:
    """Read by vobject, an implementation of RFC 5545 by others."""
    year = analysis.catalogue.seasons["the-year"]
    heron = vobject.readOne(season_calendar(analysis, year, "", "heron")).vevent_list
    groups = analysis.blocks["heron-legs-in-three-weeks"]
    of_block = vobject.readOne(block_calendar(analysis.catalogue, groups, "")).vevent_list
    ids = {event.uid.value for event in heron}
    assert {event.uid.value for event in of_block} <= ids
    assert len(ids) == len(heron)
    assert {event.summary.value for event in heron} >= {"Christmas", "Autumn term", "More of it"}
    assert not any(event.summary.value.startswith("Spring meet") for event in heron)
    christmas = next(event for event in heron if event.summary.value == "Christmas")
    assert christmas.dtstart.value == date(2026, 12, 21)
    assert christmas.dtend.value == date(2027, 1, 4)
    every = vobject.readOne(season_calendar(analysis, year, "https://club.example/")).vevent_list
    assert "Spring meet: Heats" in {event.summary.value for event in every}
    assert {event.uid.value.partition("@")[2] for event in every} == {"club.example"}
