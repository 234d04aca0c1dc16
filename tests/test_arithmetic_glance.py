"""What lists show at a glance, what the catalogue covers, the brief, the lane table and the strip;
worked by hand.
"""

from __future__ import annotations

import math
from dataclasses import replace

import pytest
from arithmetic_plans import QUICK, swim
from arithmetic_world import (
    BRIEF_WORDS,
    DRILLS,
    HAZARD,
    PIECES,
    SCALE,
    SHORT,
    YARDS,
    clock,
    events,
    group,
    made,
    swim_set,
)

from almanac.arithmetic.brief import BriefSource, brief, brief_of_all, gathered
from almanac.arithmetic.coverage import Cell, coverage
from almanac.arithmetic.events import reps
from almanac.arithmetic.glance import chief_drill, drill_seconds
from almanac.arithmetic.table import item_rows
from almanac.arithmetic.timeline import WorkStretch, timeline
from almanac.model.drill import Dose, EffortRange, GearUse
from almanac.model.entry import Hazard, Span

# At a glance.


def dosed(drill, dose, easiest="easy"):
    return replace(DRILLS[drill], dose=dose, effort=EffortRange(easiest, "all-out"))


@pytest.mark.parametrize(
    ("drill", "dose", "easiest", "seconds"),  # quick swims 100 crawl in 80 s and kicks 50 in 60 s
    [
        ("crawl", Dose(Span(4, 8), 10, 16, distance=100), "all-out", 4 * 90),
        (
            "crawl",
            Dose(Span(1, 8), 11, 16, distance=100),
            "all-out",
            95,
        ),  # 91 s, up to the next five
        ("crawl", Dose(Span(2, 2), 10, 2, distance=100), "easy", 2 * 125),  # 80 / 0.72 + 10 = 121.1
        (
            "socks-kick",
            Dose(Span(2, 4), 20, 8, distance=50),
            "all-out",
            2 * 85,
        ),  # 60 × 1.08 + 20 = 84.8
        ("upright", Dose(Span(6, 8), 15, 12, time=20), "fast", 6 * 35),  # held, not travelled
        ("board-kick", Dose(Span(4, 8), 10, 16, distance=50), "easy", None),  # not tested
    ],
)
def test_seconds_of_the_smallest_dose(drill, dose, easiest, seconds):
    assert drill_seconds(dosed(drill, dose, easiest), clock(QUICK)) == seconds


def test_a_dose_is_in_the_unit_of_the_pool():
    dose = Dose(Span(1, 1), 5, 1, distance=100)
    found = drill_seconds(dosed("crawl", dose, "all-out"), clock(QUICK, YARDS))
    assert found == 80  # 80 s × 0.9144 ^ 1.08 = 72.6, + 5 = 77.6, up to 80


@pytest.mark.parametrize(
    ("written", "chief"),
    [
        ([swim(100, "kick"), swim(200, "crawl")], "crawl"),
        ([swim(100, "kick"), swim(200, "crawl"), swim(50, "kick", reps=3)], "kick"),  # 250 in all
        ([swim(100, "kick"), swim(100, "crawl")], "kick"),  # the first of two alike
        ([swim(100, "crawl"), swim(100, "kick")], "crawl"),
    ],
)
def test_the_drill_with_the_greatest_distance(written, chief):
    pieces = [piece for rep in reps(events(*written)) for piece in rep.pieces]
    assert chief_drill(pieces).id == chief


def test_nothing_is_chiefly_nothing():
    assert chief_drill([]) is None


# Coverage.


def test_drills_and_sets_by_goal_and_level():
    levels = ("foundation", "building", "performing")
    drills = [
        made(type(DRILLS["kick"]), id=id, goals=goals, level=level)
        for id, goals, level in (
            ("a", ("line",), "foundation"), ("b", ("line", "legs"), "building"),
            ("c", ("line",), "building"),
            ("d", ("legs",), "performing"),
        )
    ]  # fmt: skip
    sets = [
        replace(swim_set(swim()), goals=goals, level=level)
        for goals, level in (
            (("line",), "building"),
            (("line", "legs"), "building"),
            (("line",), "performing"),
        )
    ]
    assert coverage(["line", "legs", "none"], levels, iter(drills), iter(sets)) == [
        [
            Cell("line", "foundation", 1, 1, 0),
            Cell("line", "building", 2, 3, 2),
            Cell("line", "performing", 0, 3, 1),
        ],
        [
            Cell("legs", "foundation", 0, 0, 0),
            Cell("legs", "building", 1, 1, 1),
            Cell("legs", "performing", 1, 2, 0),
        ],
        [Cell("none", level, 0, 0, 0) for level in levels],
    ]


@pytest.mark.parametrize(
    ("drills", "up_to", "sets", "is_hole"),
    [(1, 1, 1, False), (0, 3, 1, False), (0, 0, 1, True), (1, 1, 0, True), (0, 0, 0, True)],
)
def test_a_hole_has_no_drill_up_to_its_level_or_no_set_of_it(drills, up_to, sets, is_hole):
    assert Cell("line", "building", drills, up_to, sets).is_hole is is_hole


# The brief.


def test_a_brief_names_each_hazard_once_with_all_it_comes_from():
    cold, rope = Hazard("cold", control="Move."), Hazard("rope", control="Gloves.")
    gear = {**PIECES, "fins": replace(PIECES["fins"], hazards=(rope, HAZARD))}
    laid = reps(events(swim(do="kick", gear=["fins"]), swim(do="socks-kick"), swim(do="kick")))
    a_set, evening = ("set", "a-set"), ("practice", "evening")
    own = [(cold, a_set), (rope, evening), (cold, evening)]
    found = brief(evening, own, laid, gear, BRIEF_WORDS)
    assert [(line.hazard, line.gravity, line.ids) for line in found] == [
        ("wall", "injury", ("fins", "socks", "kick", "socks-kick")),
        ("cold", "ache", ("a-set", "evening")),
        ("rope", "ache", ("evening", "fins")),
    ]
    assert found[2].sources == (
        BriefSource(evening, "", "Gloves."),
        BriefSource(("gear", "fins"), "", "Gloves."),
    )


def test_a_brief_goes_by_gravity_then_by_its_own_then_by_how_many_name_it():
    named = [
        ("rope", "a"),
        ("cold", "b"),
        ("cold", "c"),
        ("wall", "a"),
        ("blackout", "b"),
        ("cold", "a"),
    ]
    pairs = [(Hazard(word), ("drill", of)) for word, of in named]
    order = [line.hazard for line in gathered(None, pairs, BRIEF_WORDS)]
    assert order == ["blackout", "wall", "cold", "rope"]
    own = [
        line.hazard
        for line in gathered(
            ("drill", "d"), [*pairs, (Hazard("rope"), ("drill", "d"))], BRIEF_WORDS
        )
    ]
    assert own == ["blackout", "wall", "rope", "cold"]


def test_the_brief_of_a_block_counts_sessions():
    days = {"monday": ["cold"], "friday": ["rope", "cold", "wall"]}
    lines = {key: gathered(key, [(Hazard(word, control="Own."), key) for word in words],
                           BRIEF_WORDS)
             for key, words in ((("practice", day), words) for day,
                                words in days.items())}  # fmt: skip
    found = brief_of_all(lines.items(), BRIEF_WORDS)
    assert [(line.hazard, line.ids) for line in found] == [
        ("wall", ("friday",)),
        ("cold", ("monday", "friday")),
        ("rope", ("friday",)),
    ]
    assert all(source.control == "" for line in found for source in line.sources)


def test_a_hazard_that_no_vocabulary_tells_of_stands_last():
    a = "drill", "a"
    pairs = [(Hazard("sharks"), a), (Hazard("cold"), a)]
    assert [line.title for line in gathered(a, pairs, BRIEF_WORDS)] == ["Cold", "sharks"]
    assert [line.title for line in gathered("a", pairs, {})] == ["sharks", "cold"]
    (line,) = gathered(a, pairs[:1], {})
    assert (line.hazard, line.gravity, line.control) == ("sharks", "", "")


# The lane table.


def test_rows_of_the_lane_table():
    laid = events(
        {"rounds": 2, "items": [
            swim(50, "kick", {"descend": ["easy", "all-out"]}, reps=3, sendoff=100),
            swim(100, "board-kick", reps=2, sendoff=120),
        ]},
    )  # fmt: skip
    first, second = item_rows(clock(QUICK).run(laid))
    assert (first.path, second.path) == (("items", 0, "items", 0), ("items", 0, "items", 1))
    assert (len(first.timed), len(second.timed)) == (6, 4)  # both rounds
    assert first.slowest.target_s == pytest.approx(
        60 / 0.72
    ) and first.fastest.target_s == pytest.approx(60)
    assert (
        first.slowest is first.timed[0] and first.fastest is first.timed[2]
    )  # the first of those alike
    assert first.slowest.rest_s == pytest.approx(100 - 60 / 0.72)
    assert first.fastest.rest_s == pytest.approx(40)
    assert {timed.rest_s for timed in second.timed} == {None}  # nobody has tested it
    assert second.slowest is second.fastest is second.timed[0]


# The strip.


def test_stretches_of_work_by_hand():
    # 50 kick in 60 s all out; the second leaves on 1:30. Fins take 20 s, of which the pause covers
    # 15: the third starts at 180 + 15 + 5. It builds from strong (6) to fast (8) over the border at
    # 7: half of it each.
    laid = events(
        swim(50, "kick", reps=2, sendoff=90),
        {"pause": 15},
        swim(50, "kick", {"build": ["strong", "fast"]}, gear=["fins"], rest=10),
        swim(50, "kick", gear=["fins"]),
    )
    found = timeline(laid, clock(QUICK).run(laid), SCALE)
    slow, fast = 60 * 0.8 / 0.87, 60 * 0.8 / 0.94
    build = slow * fast * math.log(slow / fast) / (slow - fast)
    leaves = -(-(build + 10) // 5) * 5
    assert [moment.effort for moment in found] == [
        "all-out",
        "all-out",
        "strong",
        "fast",
        "all-out",
    ]
    assert [moment.start for moment in found] == pytest.approx(
        [0, 90, 200, 200 + build / 2, 200 + leaves]
    )
    assert [moment.length for moment in found] == pytest.approx([60, 60, build / 2, build / 2, 48])


def test_parts_of_a_rep_follow_each_other():
    parted = {"reps": 1, "sendoff": 200, "parts": [
        {"distance": 50, "do": "kick", "effort": "all-out"},
        {"distance": 50, "do": "crawl", "effort": "easy"},
    ]}  # fmt: skip
    laid = events(parted)
    run = clock(QUICK).run(laid)
    kick, crawl = (target.seconds for target in run.reps[0].pieces)
    assert timeline(laid, run, SCALE) == (
        WorkStretch(0, kick, "all-out"),
        WorkStretch(kick, crawl, "easy"),
    )


@pytest.mark.parametrize(
    "written",
    [
        [swim(50, "board-kick", rest=10)],
        [swim(50, "board-kick", sendoff=60)],
        [swim(), swim(50, "float", rest=5)],
    ],
)
def test_no_strip_where_a_time_is_not_known(written):
    laid = events(*written)
    assert timeline(laid, clock(QUICK).run(laid), SCALE) is None


def test_gear_that_a_drill_needs_is_worn_in_its_dose():
    drill = replace(
        dosed("crawl", Dose(Span(1, 1), 10, 4, distance=100), "all-out"), gear=GearUse(("fins",))
    )
    assert drill_seconds(drill, clock(group({"crawl-100": 80}), SHORT)) == 75  # 80 × 0.8 + 10 = 74


def test_a_drill_and_its_gear_may_have_one_id():
    gear, drill = ("gear", "snorkel"), ("drill", "snorkel")
    (line,) = gathered(
        drill, [(Hazard("cold", own="A"), gear), (Hazard("cold", own="B"), drill)], {}
    )
    assert (line.keys, line.ids) == ((gear, drill), ("snorkel",))
