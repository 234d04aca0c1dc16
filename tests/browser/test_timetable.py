"""A timetable on a phone: the lanes of today stand first."""

from __future__ import annotations

import pytest
from playwright.sync_api import Page, expect

from .web import Server


@pytest.mark.parametrize(
    ("today", "stands_first"),
    [
        ("2027-02-04", "Thursday "),
        ("2027-02-06", "Saturday 6 February 2027 "),  # by the week there is nothing
        ("2027-04-08", ""),  # a Thursday on which it does not hold
    ],
)
def test_the_lanes_of_today_stand_first(
    phone: Page, server: Server, today: str, stands_first: str
) -> None:
    phone.clock.install(time=f"{today}T16:00:00")
    phone.goto(f"{server.address}timetables/winter.html")
    grids = phone.locator(".lane-grid")
    expect(grids).to_have_count(3)
    expect(phone.locator(".lane-grid.is-now")).to_have_count(1 if stands_first else 0)
    if stands_first:
        expect(grids.first).to_have_class("lane-grid is-now")
        expect(grids.first.locator("h3")).to_contain_text(stands_first)
