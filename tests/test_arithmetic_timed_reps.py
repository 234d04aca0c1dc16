"""Reps on the clock at the edges: what is not known, what fits to the second, how full a lane may
be.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_world import catalogue, clock, events, swim_set

from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timed_reps import TimedRep, until_done
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Known
from almanac.report.working_text import formula


def timed(**more: Any) -> TimedRep:
    """One 50 of kick of osprey-1, 47.2 s / 0.87 of it."""
    item = {"reps": 1, "distance": 50, "do": "kick", "effort": "strong", **more}
    (only,) = clock().run(events(item)).reps
    return only


def test_what_has_no_clock_or_no_work_has_no_rest_and_no_density():
    for of in ((None, Known(60.0)), (Known(60.0), None)):
        run = GroupClock("lane-1", (), (), *of)
        assert run.rest is None and run.density is None
    assert GroupClock("lane-1", (), (), Known(0.0), Known(0.0)).density is None
    known = GroupClock("lane-1", (), (), Known(80.0), Known(60.0))
    assert known.rest is not None and known.rest.value == 20
    assert known.density is not None and known.density.value == 0.75


def test_a_rep_without_a_clock_has_no_rest():
    assert replace(timed(sendoff="1:15"), clock=None).rest is None
    found = timed(sendoff="1:15").rest_s
    assert found == pytest.approx(75 - 47.2 / 0.87, abs=0.01)


@pytest.mark.parametrize(("over", "fits"), [(0.004, True), (0.005, True), (0.006, False)])
def test_a_send_off_is_forgiven_what_is_lost_in_rounding(over, fits):
    one = timed(sendoff="1:15")
    held = replace(one.target, working=Known(75 + over))
    assert replace(one, target=held).fits is fits


def test_what_goes_by_inside_a_rep_is_named():
    parts = [
        {"distance": 25, "do": "kick", "effort": "strong", "rest": "0:10"},
        {"distance": 25, "do": "kick", "effort": "strong"},
    ]
    item = {"reps": 1, "parts": parts, "sendoff": "1:30"}
    (only,) = clock().run(events(item)).reps
    text = formula(until_done(only.rep, Known(50.0, "target", "s")))
    assert text == "50 s target + 10 s rest and changes of gear inside the rep"


def test_no_more_are_in_a_lane_than_the_set_lets():
    # the small club's lane holds 5: with two at most the last leaves one gap behind, not four
    item = {"reps": 2, "distance": 50, "do": "kick", "effort": "strong", "sendoff": "1:15"}
    full = summarise(Timing(catalogue()), swim_set(item)).clocks["osprey-1"]
    few = replace(swim_set(item), most_in_lane=2)
    two = summarise(Timing(catalogue()), few).clocks["osprey-1"]
    assert [run.reps[0].order.heads for run in (full, two)] == [5, 2]
    assert full.last_touch is not None and two.last_touch is not None
    assert full.last_touch.value - two.last_touch.value == 3 * 10  # on the back, 10 s apart


def test_rest_between_two_words_names_both():
    item = {"reps": 3, "distance": 50, "do": "kick", "effort": {"descend": ["easy", "strong"]}}
    own = clock()
    first, middle, _ = own.run(events(item)).reps
    told = [own.rest_for(one.rep, one.target, "wanted") for one in (first, middle)]
    assert [getattr(rest, "what", "") for rest in told] == [
        "wanted rest at easy",
        "wanted rest from easy to steady",
    ]
