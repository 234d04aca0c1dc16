"""Swimming by time: against a plain reckoning of the pace line, length by length, and by hand."""

from __future__ import annotations

import itertools
import math
from dataclasses import replace
from typing import Any

import pytest
from arithmetic_plans import club
from arithmetic_world import (
    BENCHMARKS,
    DRILLS,
    EFFORTS,
    OSPREY,
    SHORT,
    catalogue,
    clock,
    group,
    swim_set,
)
from hypothesis import given
from hypothesis import strategies as st

from almanac.analysis.figures.facets import partly, word_partly
from almanac.arithmetic.by_time import lengths_in
from almanac.arithmetic.events import Piece
from almanac.arithmetic.pace_lines import Because, NoNumber, Paces
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.arithmetic.timing import Timing
from almanac.model.drill import PaceRule
from almanac.model.effort_plans import Hold
from almanac.report.working_text import formula
from almanac.units import COURSES, Course, parse_time


def summed(*items: dict[str, Any], course: Course = SHORT, tests: Any = OSPREY) -> SetSummary:
    return summarise(Timing(catalogue(group(tests))), swim_set(*items, course=course))


def by_time(time: str | float, do: str = "kick", effort: str = "steady", reps: int = 1) -> dict:
    return {"reps": reps, "time": time, "do": do, "effort": effort}


def plain_time(metres: float, activity: str) -> float:
    """Seconds at best over a distance: straight between the tests in the logarithms, and beyond
    them on as the nearest two.
    """
    known = sorted(
        (int(id.split("-")[1]), float(parse_time(time)))
        for id, time in OSPREY.items()
        if id.startswith(activity)
    )
    pairs = list(itertools.pairwise(known))
    for (d1, t1), (d2, t2) in pairs:
        if metres <= d2 or (d2, t2) == known[-1]:
            slope = math.log(t2 / t1) / math.log(d2 / d1)
            return t1 * (metres / d1) ** slope
    raise AssertionError


def plain_lengths(seconds: float, share: float, course: Course, activity: str) -> int:
    """Lengths counted up one by one until the next no longer fits."""
    count = 0
    while plain_time((count + 1) * course.metres, activity) / share <= seconds + 1e-9:
        count += 1
    return count


@given(st.integers(20, 3000), st.sampled_from(list(EFFORTS)), st.sampled_from(["kick", "back"]))
def test_lengths_against_counting_them_one_by_one(seconds: int, effort: str, activity: str) -> None:
    drill = DRILLS["kick" if activity == "kick" else "backstroke"]
    pacer = clock().pacer
    piece = Piece(0, drill, pacer.scale.span(Hold(effort), 1, 1), (), float(seconds))
    assert lengths_in(pacer, piece) == plain_lengths(seconds, EFFORTS[effort][2], SHORT, activity)


@pytest.mark.parametrize(("pool", "lengths"), [("25m", 1), ("50m", 0)])
def test_no_longer_distance_is_asked_for_than_it_takes(pool: str, lengths: int) -> None:
    # 25 m in 22 s and 50 m in 47 s are known; the tests of 50 and 200 m do not go together
    tests = {"kick-25": 22, "kick-50": 47, "kick-200": 100}
    pacer = clock(group(tests), COURSES[pool]).pacer
    piece = Piece(0, DRILLS["kick"], pacer.scale.span(Hold("all-out"), 1, 1), (), 30.0)
    assert lengths_in(pacer, piece) == lengths
    untold = lengths_in(pacer, Piece(0, piece.drill, piece.effort, (), 120.0))
    assert isinstance(untold, NoNumber) and untold.because is Because.TESTS_DISAGREE


KICKS = {
    f"kick-{metres}": replace(BENCHMARKS["kick-50"], id=f"kick-{metres}", distance=metres)
    for metres in (25, 50, 75, 100)
}


@pytest.mark.parametrize(
    ("third", "seconds", "lengths"),
    [
        (66.0, 66.0, 3),
        (66.0, 65.9, 2),
        (43.0, 50.0, None),
    ],  # 75 m in 43 s cannot be, after 50 in 42
)
def test_between_what_is_too_short_and_what_is_too_long(
    third: float, seconds: float, lengths: int | None
) -> None:
    tests = {"kick-25": 20.0, "kick-50": 42.0, "kick-75": third, "kick-100": third * 4 / 3 + 2}
    own = clock(group(tests)).pacer
    pacer = replace(own, paces=Paces(own.paces.group, KICKS, own.paces.policy))
    kick = replace(DRILLS["kick"], pace=PaceRule("kick-50", 1.0))
    piece = Piece(0, kick, pacer.scale.span(Hold("all-out"), 1, 1), (), seconds)
    found = lengths_in(pacer, piece)
    assert found == lengths if isinstance(found, int) else found.because is Because.TESTS_DISAGREE


def test_the_tested_distance_at_its_own_time_is_that_distance() -> None:
    # osprey-1 kicks 200 m all out in 3:30.0: eight lengths in 3:30, seven in 3:29.
    assert summed(by_time("3:30", effort="all-out")).distance.value == 200
    assert summed(by_time("3:29", effort="all-out")).distance.value == 175


def test_it_is_counted_and_says_that_it_is_estimated() -> None:
    summary = summed(
        by_time("3:30", effort="all-out", reps=2),
        {"reps": 4, "distance": 50, "do": "backstroke", "effort": "easy"},
    )
    assert (summary.distance.value, summary.lengths) == (600, 24)
    assert summary.first.estimated == 400
    assert partly(summary.first) == "400 m of it estimated"
    assert word_partly(summary.first, "mode", "kick") == "estimated"
    assert word_partly(summary.first, "stroke", "backstroke") == "part estimated"
    assert word_partly(summary.first, "mode", "swim") == ""
    assert summary.by["mode"] == {"kick": 400, "swim": 200}
    run = summary.clocks["osprey-1"]
    assert run.reps[0].target_s == 210
    assert run.work is not None


def test_less_than_a_length_is_none() -> None:
    summary = summed(by_time(15, effort="all-out"))  # 25 kick takes 22.0
    assert (summary.distance.value, summary.first.by_time[0].unknown) == (0, None)


def test_what_is_held_still_has_no_distance() -> None:
    summary = summed(by_time("0:30", do="upright"))
    assert (summary.distance.value, summary.first.by_time) == (0, ())


def test_without_a_test_the_total_says_what_it_leaves_out() -> None:
    summary = summed(
        by_time("6:00", do="crawl"), {"reps": 2, "distance": 50, "do": "kick", "effort": "easy"}
    )
    assert summary.distance.value == 100
    assert partly(summary.first) == "without 1 swum by time, whose distance is not known"
    run = summary.clocks["osprey-1"]
    assert run.clock is not None and run.clock.value > 360
    assert run.missing == (NoNumber(Because.NOT_TESTED, "crawl", "crawl-100"),)


@pytest.mark.parametrize(("length", "unit"), [("25m", 25), ("50m", 50)])
def test_another_pool_rounds_down_to_its_own_lengths(length: str, unit: int) -> None:
    summary = summarise(
        Timing(catalogue()), swim_set(by_time("5:00", effort="steady")), COURSES[length]
    )
    assert summary.distance.value % unit == 0
    assert summary.distance.value > 0


def test_each_lane_group_goes_as_far_as_it_comes() -> None:
    # all out, from one test: quick 200 m in 80 × 2 ^ 1.08 = 169.1 s, slow 150 m in 100 × 1.5 ^ 1.08
    # = 154.9 s and 175 m in 183.0 s
    written = swim_set(by_time("2:50", do="crawl", effort="all-out"))
    plain = swim_set({"reps": 4, "distance": 50, "do": "crawl", "effort": "easy"})
    timing = Timing(club(written))
    found = summarise(timing, written)
    assert [found.of(name).distance.value for name in ("quick", "slow")] == [200, 150]
    assert formula(found.of("quick").distance) == "200 m estimated, by time"
    assert formula(summarise(timing, plain).distance) == "4 × 50"  # nothing of it is estimated
