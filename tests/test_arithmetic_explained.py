"""Targets and send-offs as `explain` prints them, step by step. The group kicks 50 in 60 s and
swims 100 crawl in 80 s.
"""

from __future__ import annotations

import pytest
from arithmetic_world import DRILLS, SCALE, SHORT, YARDS, clock, events, group, rep, swim_set

from almanac.arithmetic.course import lay_in_course
from almanac.arithmetic.events import Break
from almanac.arithmetic.expand import expand
from almanac.arithmetic.pace_lines import Because, NoNumber
from almanac.report.working_text import steps

OF = group({"kick-50": 60, "crawl-100": 80})
LINE = ("line through the tests", "50 m in 1:00.0", "1:00 for 50 m, exponent 1.08")
KICK = {"reps": 1, "distance": 50, "do": "kick", "effort": "all-out"}
BEST = ("best time", "1:00 tested", "1:00")


def told(working, what="target"):
    return [(step.what, step.how, step.value) for step in steps(working, what, "s")]


def first(course=SHORT, **item):
    return clock(OF, course).rep(rep(**item)[0])


TARGETS = [
    ({"effort": "all-out"}, [BEST, ("target", "1:00 best time", "1:00")]),
    ({"effort": "strong"}, [BEST, ("target", "1:00 best time ÷ 0.87 strong", "1:09.0")]),
    ({"drill": "slow-kick", "effort": "all-out"},
     [BEST, ("target", "1:00 best time × 1.2 slow-kick", "1:12")]),
    # a board changes no time, and no factor of 1 is told
    ({"drill": "socks-kick", "effort": "strong", "gear": ["fins", "board"]},
     [BEST, ("target", "1:00 best time ÷ 0.87 strong × 0.8 fins × 1.08 socks", "59.6 s")]),
    ({"effort": {"build": ["easy", "all-out"]}},
     [BEST, ("time at the first effort", "1:00 best time ÷ 0.72 easy", "1:23.3"),
      ("time at the last effort", "1:00 best time", "1:00"),
      ("target", "building from 1:23.3 to 1:00 pace", "1:10.4")]),
    ({"effort": {"build": ["strong", "strong"]}},
     [BEST, ("time at the first effort", "1:00 best time ÷ 0.87 strong", "1:09.0"),
      ("time at the last effort", "1:00 best time ÷ 0.87 strong", "1:09.0"),
      ("target", "building from 1:09.0 to 1:09.0 pace", "1:09.0")]),
    ({"effort": {"descend": ["strong", "strong"]}, "reps": 3},
     [BEST, ("target", "1:00 best time ÷ 0.87 strong", "1:09.0")]),
]  # fmt: skip


@pytest.mark.parametrize(("item", "expected"), TARGETS)
def test_targets(item, expected):
    assert told(first(**item).target.working) == expected


def test_a_descend_says_how_far_along_each_rep_is():
    reps = clock(OF).run(rep(effort={"descend": ["easy", "all-out"]}, reps=5)).reps
    lines = [told(timed.target.working)[-1][1] for timed in reps]
    assert lines[0] == "1:00 best time ÷ 0.72 easy"
    assert lines[1:] == [f"{share} % of the way from 1:23.3 to 1:00" for share in (25, 50, 75, 100)]


def test_a_descend_between_two_alike_is_even():
    reps = clock(OF).run(rep(effort={"descend": ["strong", "strong"]}, reps=3)).reps
    assert {told(timed.target.working)[-1][1] for timed in reps} == {"1:00 best time ÷ 0.87 strong"}


def test_the_parts_of_a_rep_are_named_by_their_drills():
    (parted,) = events({"reps": 1, "parts": [
        {"distance": 25, "do": "kick", "effort": "strong"},
        {"distance": 50, "do": "crawl", "effort": "all-out"},
    ]})  # fmt: skip
    assert told(clock(OF).rep(parted).target.working) == [
        LINE,
        ("best time", "1:00 × (75 m ÷ 50 m) ^ 1.08", "1:33.0"),
        ("kick", "1:33.0 best time × 25 ÷ 75 ÷ 0.87 strong", "35.6 s"),
        ("line through the tests", "100 m in 1:20.0", "1:20 for 100 m, exponent 1.08"),
        ("best time", "1:20 × (75 m ÷ 100 m) ^ 1.08", "58.6 s"),
        ("crawl", "58.6 s best time × 50 ÷ 75", "39.1 s"),
        ("target", "35.6 s kick + 39.1 s crawl", "1:14.7"),
    ]


def test_what_is_held():
    (held,) = events({"reps": 1, "time": 20, "do": "upright", "effort": "easy"})
    target = clock(OF).rep(held).target
    assert told(target.working) == [("target", "20 s held", "20 s")]
    assert not target.estimated and not target.other_course


@pytest.mark.parametrize(
    ("effort", "distance", "rest", "sendoff"),
    [
        ("strong", 50, ("wanted rest at strong", "15 s rest for each 50 m × 1", "15 s"),
         ("1:00 best time ÷ 0.87 strong + 15 s wanted rest at strong, up to the next 5 s", "1:25")),
        ("fast", 50, ("wanted rest at fast", "0.5 share of the work × 1:00 best time ÷ 0.94 fast",
                      "31.9 s"),
         ("1:00 best time ÷ 0.94 fast + 31.9 s wanted rest at fast, up to the next 5 s", "1:40")),
        ("easy", 100, ("wanted rest at easy", "10 s rest for each 50 m × 2", "20 s"),
         ("2:06.8 best time ÷ 0.72 easy + 20 s wanted rest at easy, up to the next 5 s", "3:20")),
    ],
)  # fmt: skip
def test_a_suggested_sendoff(effort, distance, rest, sendoff):
    timed = first(effort=effort, distance=distance, sendoff={"heron-1": 60})
    assert timed.suggested
    assert told(timed.sendoff, "send-off")[-2:] == [rest, ("send-off", *sendoff)]


def test_plain_rest_and_a_sendoff_from_another_course():
    resting = first(effort="all-out", rest=10)
    assert told(resting.clock, "clock")[-2:] == [
        ("with rest", "1:00 best time + 10 s rest, up to the next 5 s", "1:10"),
        ("clock", "1:10 with rest", "1:10"),
    ]
    assert told(resting.rest, "rest")[-1] == ("rest", "1:10 with rest − 1:00 best time", "10 s")
    written = first(effort="all-out", sendoff=90)
    assert told(written.sendoff, "send-off") == [("send-off", "1:30 send-off", "1:30")]
    in_yards = lay_in_course(swim_set({**KICK, "sendoff": 90}), YARDS)
    (laid,) = clock(OF, YARDS).run(expand(in_yards.items, DRILLS, SCALE)).reps
    assert told(laid.sendoff, "send-off")[-1] == (
        "send-off",
        "1:30 send-off × 0.914, up to the next 5 s",  # 82.3 s
        "1:25",
    )


def test_the_least_rest_of_an_effort():
    on = clock(OF)
    timed = first(effort="all-out")
    assert told(on.rest_for(timed.rep, timed.target, "least"), "least")[-2] == (
        "least rest at all-out",
        "1 share of the work × 1:00 best time",
        "1:00",
    )


def test_rated_work_is_minutes_of_work_times_rating():
    run = clock(OF).run(rep(effort="all-out", reps=3))
    assert told(run.rated_work, "rated work")[-1][1] == "3 × 1 min × 9.5 rating"


def test_gear_that_is_changed_and_pauses_are_told():
    laid = events(
        {"reps": 2, "distance": 50, "do": "kick", "effort": "all-out", "sendoff": 90},
        {"pause": 5},
        {
            "reps": 1,
            "distance": 50,
            "do": "kick",
            "effort": "all-out",
            "gear": ["fins"],
            "sendoff": 80,
        },
    )
    assert told(clock(OF).run(laid).clock, "clock")[-1] == (
        "clock",
        "2 × 1:30 send-off + 5 s pause + 1:20 send-off + 15 s gear change",
        "4:40",
    )


@pytest.mark.parametrize(
    ("because", "words"),
    [
        (Because.NO_PACE_RULE, "the drill names no benchmark that it is timed by"),
        (Because.NOT_TESTED, "the group has no test of it"),
        (Because.TESTS_DISAGREE, "the group's tests of it cannot all be right"),
    ],
)
def test_why_there_is_no_number_in_words(because, words):
    assert because.value == words


def test_a_drill_without_a_pace_rule_names_no_benchmark():
    assert first(drill="float").target == NoNumber(Because.NO_PACE_RULE, "float", "")


def test_in_yards_the_line_is_read_at_metres():
    # 50 yd are 45.72 m, shown to one digit
    assert (
        told(first(YARDS, effort="all-out").target.working)[1][1] == "1:00 × (45.7 m ÷ 50 m) ^ 1.08"
    )


def test_the_effort_of_a_rep_of_parts_is_their_mean_by_distance():
    parts = [
        {"distance": 25, "do": "kick", "effort": "strong"},
        {"distance": 75, "do": "crawl", "effort": "easy"},
    ]
    for order in (parts, parts[::-1]):
        (laid,) = events({"reps": 1, "parts": order})
        assert laid.mean_rating == 2.625  # (25 × 6 + 75 × 1.5) / 100


def test_a_pause_has_its_own_note_and_between_rounds_none():
    inner = {"reps": 1, "distance": 50, "do": "kick", "effort": "easy"}
    laid = events(
        {"pause": 30, "note": "Drink."}, {"rounds": 2, "pause_between": 20, "items": [inner]}
    )
    notes = [(event.seconds, event.note) for event in laid if isinstance(event, Break)]
    assert notes == [(30, "Drink."), (20, "")]


def test_gear_of_a_piece_is_in_order_of_name_whoever_asks_for_it():
    (laid,) = events(
        {"reps": 1, "gear": ["fins", "beeper"], "parts": [
            {"distance": 25, "do": "socks-kick", "effort": "easy", "gear": ["board", "fins"]},
            {"distance": 25, "do": "chute-kick", "effort": "easy"},
        ]},
    )  # fmt: skip
    worn = [piece.gear for piece in laid.pieces]
    assert worn == [("beeper", "board", "fins", "socks"), ("beeper", "chute", "fins")]
