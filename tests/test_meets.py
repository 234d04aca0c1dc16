"""A meet as its page and its calendar tell it."""

from __future__ import annotations

from datetime import datetime

import vobject

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.meet_lanes import heads_a_lane
from almanac.site.meet_calendar import meet_calendar
from almanac.site.meet_page import days_words, rows_of


def test_rows_stand_in_the_order_of_the_clock(analysis: Analysis) -> None:
    """A race of no known time comes after the one before it."""
    meet = analysis.catalogue.meets["spring-meet"]
    _, _, finals = list(meet.sessions)[1]
    rows = list(rows_of(analysis.catalogue, meet, finals))
    assert [(row.when, row.what) for row in rows] == [
        ("14:40–15:05", "Warm-up"),
        ("15:50", "200 yd backstroke"),
        ("", "4 × 50 yd medley"),
        ("17:40–18:00", "Swim down"),
    ]
    assert rows[0].more == "lanes 2 and 3; 9 in a lane if all come"  # two groups of 9 in 2 lanes
    assert rows[1].more == "event 2, final, from the water"
    assert days_words(meet) == "27 February 2027"


def test_heads_a_lane_are_those_of_the_squads_over_the_lanes(analysis: Analysis) -> None:
    meet = analysis.catalogue.meets["spring-meet"]
    slot = meet.days[0].sessions[0].warm_up[0]
    full = heads_a_lane(analysis.catalogue.club, meet, slot)
    assert full is not None
    assert full.value == 18 / 3


def test_the_calendar_reads_back_with_each_session(analysis: Analysis) -> None:
    """Read by vobject, an implementation of RFC 5545 by others."""
    meet = analysis.catalogue.meets["spring-meet"]
    text = meet_calendar(analysis.catalogue, meet, "https://club.example/")
    events = vobject.readOne(text).vevent_list
    assert [event.dtstart.value for event in events] == [
        datetime(2027, 2, 27, 8, 15),
        datetime(2027, 2, 27, 14, 40),
    ]
    assert events[1].dtend.value == datetime(2027, 2, 27, 18, 0)
    assert "15:50 200 yd backstroke" in events[1].description.value
    assert events[0].url.value == "https://club.example/meets/spring-meet.html"
