"""Circuits on land: sets whose course is land, in practices and in blocks. The sums are worked by
hand.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_plans import block_of, club, part, practice_of, summarised, swim
from arithmetic_world import DRILLS, swim_set

from almanac.arithmetic.block import summarise_block
from almanac.arithmetic.course import lay_in_course
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timing import Timing
from almanac.model.block import Day, Session
from almanac.model.practice import PracticePart
from almanac.model.structure import structure_items
from almanac.units import COURSES, LAND, Course

MAT = replace(DRILLS["crawl"], id="mat", mode="land", position="on-land", pace=None)


def held(reps: int, time: int, effort: str, rest: int) -> dict[str, Any]:
    return {"reps": reps, "time": time, "do": "mat", "effort": effort, "rest": rest}


# two rounds of 2 × 40 s easy with 20 s rest and 2 × 30 s all out with 30 s, a minute between them
ROUNDS = {
    "rounds": 2,
    "pause_between": 60,
    "items": [held(2, 40, "easy", 20), held(2, 30, "all-out", 30)],
}
CIRCUIT = replace(swim_set(), course=LAND, items=structure_items([ROUNDS]))
CLOCK_S = 2 * (2 * 60 + 2 * 60) + 60
RATING = (1.5 + 9.5) / 2  # both halves take the same time on the clock


def test_land_is_written_and_read_as_a_course_but_is_no_pool():
    assert Course.parse("land") == LAND and str(LAND) == "land"
    assert "land" not in COURSES


def test_a_circuit_has_work_rest_rounds_and_no_distance():
    catalogue = club(CIRCUIT, MAT)
    summary = summarise(Timing(catalogue), CIRCUIT)
    assert summary.distance.value == 0 and len(summary.reps) == 8
    for timed in summary.clocks.values():
        assert timed.clock.value == CLOCK_S
        assert timed.work.value == 2 * (2 * 40 + 2 * 30)
    assert all(lay_in_course(CIRCUIT, course) == CIRCUIT for course in COURSES.values())


def test_a_circuit_in_a_practice_takes_its_time_and_carries_its_dangers():
    practice = practice_of(part(swim(sendoff=120)), PracticePart("skill", set="a-set"))
    summary = summarised(practice, club(practice, CIRCUIT, MAT))
    assert [row.ends_s for row in summary.sheet] == [120, 120 + CLOCK_S]
    assert not summary.runs[1].is_in_water and summary.runs[0].is_in_water
    assert summary.distance.value == 100
    assert any("mat" in line.ids for line in summary.brief)


@pytest.mark.parametrize("day", [Day(land="a-set"), Day(sessions=(Session(land="a-set"),))])
def test_a_circuit_is_a_session_of_a_block(day):
    catalogue = club(CIRCUIT, MAT)
    circuit = summarise(Timing(catalogue), CIRCUIT)
    block = block_of({"mon": day})
    whole = summarise_block(block, {}.__getitem__, "quick", circuit=lambda id: circuit)
    (session,) = whole.weeks[0].days[0].sessions
    assert session.minutes == CLOCK_S / 60
    assert session.load == pytest.approx(CLOCK_S / 60 * RATING)
    assert whole.weeks[0].balance.metres == 0
    assert [(found.kind, found.id) for found in block.references()][1:] == [("set", "a-set")]


def test_a_stated_rating_stands_in_place_of_the_circuits_own():
    circuit = summarise(Timing(club(CIRCUIT, MAT)), CIRCUIT)
    block = block_of({"mon": Day(sessions=(Session(land="a-set", rating=2),))})
    whole = summarise_block(block, {}.__getitem__, "slow", circuit=lambda id: circuit)
    assert whole.weeks[0].days[0].load == pytest.approx(CLOCK_S / 60 * 2)


NOBODY_TIMED = replace(
    CIRCUIT, items=structure_items([{**swim(effort="easy", rest=10), "do": "float"}])
)
NOTHING_FOR_SLOW = replace(
    CIRCUIT,
    items=structure_items([{**held(2, 40, "easy", 20), "by_group": {"slow": {"reps": 0}}}]),
)


@pytest.mark.parametrize(
    ("circuit", "rating", "minutes"),
    [
        (NOBODY_TIMED, None, None),  # 100 m that nobody has a time for
        (NOBODY_TIMED, 5, None),
        (NOTHING_FOR_SLOW, None, 0),  # the mean rating of nothing
    ],
)
def test_a_circuit_of_which_something_is_not_known_has_no_load(circuit, rating, minutes):
    summary = summarise(Timing(club(circuit, MAT)), circuit)
    block = block_of({"mon": Day(sessions=(Session(land="a-set", rating=rating),))})
    whole = summarise_block(block, {}.__getitem__, "slow", circuit=lambda id: summary)
    (session,) = whole.days[0].sessions
    assert (session.minutes, session.load) == (minutes, None)
