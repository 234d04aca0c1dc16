"""Times that are assumed: where they stand in, where they give way, and that they are marked."""

from __future__ import annotations

from dataclasses import replace

import pytest
from arithmetic_world import (
    BENCHMARKS,
    DRILLS,
    LONG,
    OSPREY,
    SCALE,
    SHORT,
    YARDS,
    catalogue,
    clock,
    events,
    group,
    paces,
    swim_set,
)  # fmt: skip

from almanac.arithmetic.course import lay_in_course
from almanac.arithmetic.expand import expand
from almanac.arithmetic.pace import Target
from almanac.arithmetic.pace_lines import Because
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timing import Timing
from almanac.model.club import AssumedTest
from almanac.model.entry import Seconds
from almanac.report.known_words import basis_words
from almanac.report.set_json import set_json
from almanac.report.working_text import steps

FLOAT = {"reps": 2, "distance": 50, "do": "float", "effort": "easy", "sendoff": "2:00"}


def first(of=None, course=SHORT, **item):
    return clock(of, course).run(events({**FLOAT, **item})).reps[0]


def test_an_assumed_time_stands_in_where_nothing_tells():
    timed = first(assume="1:20")
    assert isinstance(timed.target, Target)
    assert (timed.target.seconds, timed.target.assumed, timed.rest_s) == (80, True, 40)
    assert not timed.target.estimated and not timed.target.stale
    (step,) = steps(timed.target.working, "target", "s")
    assert (step.how, step.value) == ("1:20 assumed", "1:20")


@pytest.mark.parametrize(
    ("assume", "seconds"),
    [("1:20", 80), ({"osprey-1": "1:10"}, 70), ({"osprey-1": 70, "heron-1": 90}, 70),
     ({"heron-1": 90}, None)],
)  # fmt: skip
def test_it_is_for_all_or_for_each_lane_group(assume, seconds):
    assert first(assume=assume).target_s == seconds


def test_it_never_takes_the_place_of_a_known_time_nor_of_one_at_which_nobody_stays_up():
    known = first(do="kick", assume="1:20").target
    assert known == first(do="kick").target and not known.assumed
    slow = clock(group({"kick-50": 300}), slowest_afloat=0.33)
    (timed, _) = slow.run(events({**FLOAT, "do": "kick", "assume": "1:20"})).reps
    assert timed.target.because is Because.TOO_SLOW


def test_untested_and_at_odds_take_it_too():
    assert first(group({}), do="kick", assume="1:20").target_s == 80
    odd = group({**OSPREY, "kick-50": 60, "kick-200": 50})
    assert first(odd, do="kick", distance=100, assume="2:20").target_s == 140


def test_its_pieces_share_it_by_distance():
    parts = [
        {"distance": 25, "do": "float", "effort": "easy"},
        {"distance": 75, "do": "kick", "effort": "strong"},
    ]
    (laid,) = events({"reps": 1, "parts": parts, "rest": 10, "assume": "2:00"})
    timed = clock().rep(laid)
    assert [piece.seconds for piece in timed.pieces] == [30, 90] and timed.target_s == 120
    assert timed.clock.value == 130
    # 0.5 min at 1.5 and 1.5 min at 6
    assert [work.value for work in timed.rated_work] == pytest.approx([0.75, 9.0])


def test_what_has_no_length_shares_nothing():
    nowhere = {
        "distance": 0,
        "do": "float",
        "effort": "easy",
    }  # refused elsewhere, and no fault here
    (laid,) = events({"reps": 1, "parts": [nowhere], "rest": 10, "assume": "2:00"})
    assert clock().rep(laid).target.because is Because.NO_PACE_RULE


def test_in_another_course_it_moves_with_the_length():
    laid = lay_in_course(swim_set({**FLOAT, "assume": "1:20"}), YARDS)
    (timed, _) = clock(course=YARDS).run(expand(laid.items, DRILLS, SCALE)).reps
    assert timed.target_s == pytest.approx(80 * 0.9144)
    assert lay_in_course(laid, SHORT).items == swim_set({**FLOAT, "assume": "1:20"}).items
    change = {"by_group": {"osprey-1": {"distance": 100, "assume": 100}}}
    laid = lay_in_course(swim_set({**FLOAT, **change}), YARDS)
    assert laid.items[0].by_group["osprey-1"].assume == pytest.approx(91.44)


@pytest.mark.parametrize(
    ("change", "seconds"),
    [
        ({"reps": 1}, 80),
        ({"sendoff": "2:10"}, 80),
        ({"distance": 100}, None),  # what is assumed of 50 m is nothing of 100
        ({"effort": "fast"}, None),
        ({"distance": 100, "assume": "2:45"}, 165),
        ({"assume": "1:30"}, 90),
    ],
)
def test_a_group_that_swims_another_rep_needs_its_own(change, seconds):
    own = swim_set({**FLOAT, "assume": "1:20", "by_group": {"osprey-1": change}})
    run = summarise(Timing(catalogue()), own).clocks["osprey-1"]
    assert run.reps[0].target_s == seconds


def test_the_club_s_assumed_test_paces_like_a_test_and_is_marked():
    assume = (AssumedTest("board-100", Seconds(100)),)
    of = replace(group({}), assume=assume)
    board = {"do": "board-kick", "distance": 100, "effort": "all-out"}
    timed = first(of, **board)
    assert (timed.target_s, timed.target.assumed, timed.target.estimated) == (100, True, True)
    assert first(of, **board, assume=95).target_s == 95  # what is said of the rep itself is nearer
    tested = replace(group({"board-100": 92}), assume=assume)
    assert first(tested, **board).target_s == 92 and not first(tested, **board).target.assumed
    assert first(of, LONG, **board).target.other_course


def test_assumed_is_said_wherever_the_figures_stand():
    own = swim_set({**FLOAT, "assume": "1:20"}, {**FLOAT, "do": "kick"})
    timing = Timing(catalogue())
    summary = summarise(timing, own)
    run = summary.clocks["osprey-1"]
    assert run.assumed == ("float",) and run.work is not None
    told = set_json(summary)["groups"]["osprey-1"]
    assert told["assumed"] == ["float"]
    assert [rep["assumed"] for rep in told["reps"]] == [True, True, False, False]
    (line,) = basis_words(timing.catalogue, run)
    assert line.startswith("assumed, as no test tells it: the time of ")


def test_assumed_tests_of_one_activity_make_its_line_shortest_first():
    assume = tuple(
        AssumedTest(id, Seconds(time))
        for id, time in (("kick-200", 210), ("board-100", 100), ("kick-50", 47))
    )
    line = paces(replace(group({}), assume=assume)).line("kick-25", SHORT)
    assert line.assumed and [point.seconds for point in line.points] == [47, 210]
    assert not line.stale  # what was never swum is never old


def test_a_line_of_assumed_tests_of_two_pools_is_of_another_course_in_each():
    assume = (AssumedTest("kick-50", Seconds(47)), AssumedTest("kick-200", Seconds(210)))
    protocol = replace(BENCHMARKS["kick-200"].protocol, course=LONG)
    benchmarks = {**BENCHMARKS, "kick-200": replace(BENCHMARKS["kick-200"], protocol=protocol)}
    own = clock(replace(group({}), assume=assume)).pacer
    pacer = replace(own, paces=replace(own.paces, benchmarks=benchmarks))
    (laid,) = events({"reps": 1, "distance": 50, "do": "kick", "effort": "easy"})
    (piece,) = pacer.pieces(laid)
    assert isinstance(piece, Target) and (piece.other_course, piece.assumed) == (True, True)
