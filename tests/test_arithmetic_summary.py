"""The summary of a set: distance in each course, lengths, gear, brief, and the lane groups it is
meant for.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction

import pytest
from arithmetic_strategies import items
from arithmetic_world import HAZARD, LONG, PIECES, SHORT, YARDS, catalogue, group, swim_set
from hypothesis import given

from almanac.arithmetic.brief import BriefHazard, BriefSource
from almanac.arithmetic.facets import gear_key
from almanac.arithmetic.set_workings import metres, yards
from almanac.arithmetic.summary import groups_meant, summarise
from almanac.arithmetic.table import item_rows
from almanac.arithmetic.timing import Timing
from almanac.model.entry import Hazard

EIGHT = {"reps": 8, "distance": 50, "do": "kick", "effort": "strong", "sendoff": "1:00"}


@pytest.mark.parametrize(
    ("course", "metres", "lengths"), [(SHORT, 400, 16), (LONG, 400, 8), (YARDS, 365.76, 16)]
)
def test_eight_fifties_in_each_course(course, metres, lengths):  # check-values.md, section 16
    found = summarise(Timing(catalogue()), swim_set(EIGHT), course)
    assert found.distance.value == 400 and found.metres == pytest.approx(metres, abs=1e-9)
    assert found.lengths == lengths and found.course == course and found.misfits == ()


def test_a_rep_between_the_walls_makes_broken_lengths():
    found = summarise(Timing(catalogue()), swim_set({**EIGHT, "reps": 1, "distance": 75}), LONG)
    assert found.lengths == Fraction(3, 2) and [misfit.nearest for misfit in found.misfits] == [100]


def test_gear_is_gathered_once_in_order_of_use():
    in_socks = {**EIGHT, "do": "socks-kick", "gear": ["board", "fins"]}
    found = summarise(Timing(catalogue()), swim_set({**EIGHT, "gear": ["fins"]}, in_socks))
    assert found.gear == ("fins", "board", "socks")
    assert found.by["gear"] == {"fins": 400, "board+fins+socks": 400}


def test_brief_holds_each_danger_once_with_all_that_it_comes_from():
    own = Hazard("cold", "Slowest wait.", "Slowest last.")
    entry = replace(
        swim_set({**EIGHT, "gear": ["fins"]}, {**EIGHT, "do": "backstroke"}), hazards=(own,)
    )
    found = summarise(Timing(catalogue()), entry).brief
    assert found[0].hazard == HAZARD.hazard and found[0].ids == ("fins", "kick", "backstroke")
    source = BriefSource(("set", "a-set"), own.own, own.control)
    assert found[1] == BriefHazard("cold", "Cold", "ache", "Mind the cold.", (source,))
    assert len(found) == 2 and PIECES["fins"].hazards == (HAZARD,)


def test_meant_for_the_groups_with_sendoffs_else_for_those_of_its_level():
    whole = catalogue()
    assert groups_meant(whole, swim_set({**EIGHT, "sendoff": {"osprey-1": 60}})) == ("osprey-1",)
    assert groups_meant(whole, swim_set({**EIGHT, "sendoff": {"heron-1": 60}})) == ()
    assert groups_meant(whole, swim_set(EIGHT)) == ("osprey-1",)
    assert groups_meant(whole, replace(swim_set(EIGHT), level="foundation")) == ()


def test_an_item_without_a_sendoff_names_no_group():
    plain = {key: value for key, value in EIGHT.items() if key != "sendoff"}
    for written in ([{**EIGHT, "sendoff": {"osprey-1": 60}}, plain], [plain]):
        assert groups_meant(catalogue(), swim_set(*written)) == ("osprey-1",)


@pytest.mark.parametrize(
    ("course", "in_metres", "in_yards"),  # 0.9144 m to the yard, exactly (agreement of 1959)
    [(SHORT, 400, 437.4453193), (LONG, 400, 437.4453193), (YARDS, 365.76, None)],
)
def test_the_distance_in_metres_and_in_yards(course, in_metres, in_yards):
    found = summarise(Timing(catalogue()), swim_set(EIGHT, course=course))
    assert metres(found).value == pytest.approx(in_metres)
    across = yards(found)
    assert (across and across.value) == (in_yards and pytest.approx(in_yards))


def test_clocks_of_the_groups_that_are_asked_for_each_worked_out_once():
    every = summarise(Timing(catalogue()), swim_set(EIGHT)).clocks
    assert list(every) == ["osprey-1"] and len(every) == 1
    assert every["osprey-1"] is every["osprey-1"]
    none = summarise(Timing(catalogue()), swim_set(EIGHT), groups=()).clocks
    assert list(none) == [] and len(none) == 0
    with pytest.raises(KeyError):
        none["osprey-1"]


def test_a_group_s_clock_is_made_once_for_each_course():
    timing = Timing(catalogue())
    assert timing.clock("osprey-1", SHORT) is timing.clock("osprey-1", SHORT)
    assert timing.clock("osprey-1", LONG).course == LONG
    with pytest.raises(KeyError):
        timing.clock("nobody", SHORT)
    like = Timing(catalogue(), known=timing.clocks)  # what stands on the same takes them over
    assert like.clock("osprey-1", SHORT) is timing.clock("osprey-1", SHORT)
    assert Timing(catalogue()).clock("osprey-1", SHORT) is not timing.clock("osprey-1", SHORT)


@pytest.mark.parametrize(
    ("drills", "into_stroke"),  # 25 m each
    [
        (["kick", "backstroke"], 25),
        (["kick", "kick"], 0),
        (["crawl", "backstroke"], 0),
        (["backstroke", "kick"], 0),
        (["kick", "float"], 0),
        (["float", "crawl"], 0),
        (["kick", "crawl", "backstroke"], 25),  # the stroke straight after kick alone
        (["kick", "float", "crawl"], 0),
        (["kick", "crawl", "board-kick", "crawl"], 50),
    ],
)
def test_full_stroke_straight_after_kick(drills, into_stroke):
    parts = [{"distance": 25, "do": drill, "effort": "easy"} for drill in drills]
    found = summarise(Timing(catalogue()), swim_set({"reps": 1, "parts": parts})).shares
    assert found.kick_into_stroke == into_stroke


@pytest.mark.parametrize(
    ("gear", "key"),
    [
        ((), "none"),
        (("fins",), "fins"),
        (("fins", "board"), "board+fins"),
        (("board", "fins"), "board+fins"),
    ],
)
def test_gear_worn_together_has_one_key_in_any_order(gear, key):
    assert gear_key(gear) == key


@given(items())
def test_rows_of_the_lane_table_hold_every_rep_once(written):
    run = summarise(Timing(catalogue()), swim_set(*written)).clocks["osprey-1"]
    rows = item_rows(run)
    assert sorted(map(id, run.reps)) == sorted(id(timed) for row in rows for timed in row.timed)
    assert len({row.path for row in rows}) == len(rows)
    for row in rows:
        targets = [timed.target_s for timed in row.timed if timed.target_s is not None]
        assert (row.slowest.target_s, row.fastest.target_s) == (
            (max(targets), min(targets)) if targets else (None, None)
        )


def test_a_group_without_tests_has_the_distances_and_no_clock():
    found = summarise(Timing(catalogue(group({}))), swim_set({**EIGHT, "sendoff": {"heron-1": 60}}))
    assert found.distance.value == 400 and found.clocks["osprey-1"].clock is None
    assert [missing.benchmark for missing in found.clocks["osprey-1"].missing] == ["kick-200"]


def one(distance, do, effort="steady", **more):
    return {"reps": 1, "distance": distance, "do": do, "effort": effort, **more}


THEN_STROKE = [
    {"distance": 25, "do": "kick", "effort": "strong"},
    {"distance": 50, "do": "backstroke", "effort": "fast"},
]


@pytest.mark.parametrize(
    ("written", "kick", "supine", "prone", "board", "resisted", "fast", "into_stroke"),
    [
        ([one(100, "kick"), one(100, "crawl")], (1, 2), (1, 1), (0, 1), (0, 1), (0, 1), (0, 1), 0),
        ([one(300, "kick"), one(100, "board-kick")], (1, 1), (3, 4), (1, 4), (1, 4), (0, 1), (0, 1),
         0),
        ([one(100, "crawl"), one(100, "backstroke")], (0, 1), None, None, None, (0, 1), (0, 1), 0),
        ([one(100, "socks-kick", "fast"), one(100, "kick", gear=["fins"]),
          one(200, "float", "all-out")],
         (1, 2), (1, 1), (0, 1), (0, 1), (1, 4), (3, 4), 0),
        ([one(100, "kick", {"build": ["strong", "fast"]}, gear=["chute", "fins"])],
         (1, 1), (1, 1), (0, 1), (0, 1), (1, 1), (1, 2), 0),
        ([{"reps": 4, "parts": THEN_STROKE}], (1, 3), (1, 1), (0, 1), (0, 1), (0, 1), (2, 3), 200),
        ([{"reps": 4, "parts": THEN_STROKE[::-1]}], (1, 3), (1, 1), (0, 1), (0, 1), (0, 1), (2, 3),
         0),
    ],
)  # fmt: skip
def test_shares(written, kick, supine, prone, board, resisted, fast, into_stroke):
    found = summarise(Timing(catalogue()), swim_set(*written)).shares
    expected = [
        share and Fraction(*share) for share in (kick, supine, prone, board, resisted, fast)
    ]
    assert [
        found.kick,
        found.supine_flutter,
        found.prone_flutter,
        found.board_flutter,
        found.resisted,
        found.fast,
    ] == expected
    assert found.kick_into_stroke == into_stroke
