"""A meet as its page and its calendar tell it."""

from __future__ import annotations

from datetime import datetime
from pathlib import Path

import pytest
import vobject
from shared import CATALOGUE, DAY, copied

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.lap_ends import in_order, legs_begin
from almanac.arithmetic.meet_lanes import heads_a_lane
from almanac.checks import check
from almanac.model.load import load
from almanac.site.meet_calendar import meet_calendar
from almanac.site.meet_page import days_words, rows_of
from almanac.units import COURSES


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


@pytest.mark.parametrize(
    ("legs", "distance", "course", "ends"),
    [
        (1, 25, "25m", ["start"]),
        (4, 50, "25m", ["start"]),
        (4, 25, "25m", ["start", "turn"]),
        (4, 75, "25m", ["start", "turn"]),
        (4, 100, "50m", ["start"]),
        (4, 50, "50m", ["start", "turn"]),
        (2, 25, "25yd", ["start", "turn"]),
    ],
)
def test_a_leg_leaves_where_the_one_before_touches(legs, distance, course, ends):
    assert in_order(legs_begin(legs, distance, COURSES[course])) == ends


def test_a_relay_whose_second_leg_dives_in_shallow_water_is_refused(tmp_path: Path) -> None:
    root = copied(CATALOGUE, tmp_path / "club")
    club = root / "plans" / "club.yml"
    deep = "depth_m: {from: 1.2, to: 2.1}"
    ends = (
        "ends: {start: {title: Deep end, depth_m: 2.1, platform_m: 0.6}, turn: {title: "
        "Shallow end, depth_m: 1.2, platform_m: 0.3}}"
    )
    club.write_text(club.read_text("utf-8").replace(deep, f"{deep}\n    {ends}"), "utf-8")
    meet = root / "plans" / "meets" / "spring-meet.yml"
    whole = meet.read_text("utf-8")
    relay = "distance: 50, medley: true, legs: 4, round: timed-final, from_water: true"
    assert relay in whole
    for distance, is_shallow in ((50, False), (25, True)):
        event = f"distance: {distance}, stroke: freestyle, legs: 4, round: timed-final"
        meet.write_text(whole.replace(relay, event), "utf-8")
        catalogue = load(root).catalogue
        assert catalogue is not None
        found = [
            one.message for one in check(Analysis(catalogue, DAY)) if one.code == "meet-starts"
        ]
        assert any("shallow end" in message for message in found) == is_shallow, found
