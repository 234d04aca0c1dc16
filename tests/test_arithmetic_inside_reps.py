"""What a rep may hold: rests inside it, changes at marks. Worked by hand, and by walking the pool
in steps of a millimetre.
"""

from __future__ import annotations

import re
from dataclasses import replace
from fractions import Fraction

import pytest
from arithmetic_world import (
    DRILLS,
    LONG,
    SCALE,
    SHORT,
    YARDS,
    catalogue,
    clock,
    policy,
    swim_set,
    target,
)
from hypothesis import given
from hypothesis import strategies as st

from almanac.arithmetic.course import Misfit, Unfit, misfits
from almanac.arithmetic.lanes import too_tight
from almanac.arithmetic.marks import beyond_the_end, mark_from_wall, place_items, placed
from almanac.arithmetic.summary import SetSummary, summarise
from almanac.arithmetic.timeline import timeline
from almanac.arithmetic.timing import Timing
from almanac.model.reps import Reps
from almanac.model.structure import structure_items
from almanac.report.reps_line import what_words
from almanac.units import Course, Unit


def parts_of(item: dict, course: Course = SHORT) -> list[Fraction]:
    """The distances of the parts of one item in a course."""
    (reps,) = structure_items([{"reps": 1, **item}])
    assert isinstance(reps, Reps)
    return [Fraction(part.distance) for part in placed(reps, course).parts]


def part(effort: str = "steady", do: str = "kick", **more: object) -> dict[str, object]:
    return {"do": do, "effort": effort, **more}


def summed(*items: dict, course: Course = SHORT, of: Course | None = None) -> SetSummary:
    return summarise(Timing(catalogue()), swim_set(*items, course=of or course), course)


BROKEN = {
    "reps": 2,
    "parts": [
        part(distance=50, rest="0:10"), part(distance=100, rest="0:10"), part(distance=50),
    ],
}  # fmt: skip


def test_a_broken_200_is_paced_as_a_200_and_its_rests_are_on_the_clock() -> None:
    # 200 kick of osprey-1 is tested: 3:30.0; steady is swum at 0.80 of the best speed: 262.5 s.
    whole = target(distance=200, effort="steady")
    run = summed({**BROKEN, "sendoff": "6:00"}).clocks["osprey-1"]
    (first, _) = run.reps
    assert first.target_s == pytest.approx(whole.seconds)
    assert first.rest_s == pytest.approx(360 - whole.seconds - 20)
    assert run.work is not None and run.clock is not None and run.rest is not None
    assert run.clock.value == 720
    assert run.work.value == pytest.approx(2 * whole.seconds)
    assert run.rest.value == pytest.approx(720 - 2 * whole.seconds)
    assert run.rated_work is not None
    assert run.rated_work.value == pytest.approx(2 * whole.seconds / 60 * 4)


def test_a_broken_200_with_plain_rest_or_none_takes_the_rests_inside_it() -> None:
    whole = target(distance=200, effort="steady").seconds
    straight = summed(BROKEN).clocks["osprey-1"].reps[0]
    assert straight.clock is not None
    assert straight.clock.value == pytest.approx(whole + 20)
    rested = summed({**BROKEN, "rest": 30}).clocks["osprey-1"].reps[0]
    assert rested.clock is not None
    assert rested.clock.value == 5 * -(-(whole + 20 + 30) // 5)


def test_a_suggested_sendoff_holds_the_rests_inside() -> None:
    broken = summed({**BROKEN, "sendoff": {"heron-1": 600}}).clocks["osprey-1"].reps[0]
    plain = (
        summed({"reps": 2, "distance": 200, **part(), "sendoff": {"heron-1": 600}})
        .clocks["osprey-1"]
        .reps[0]
    )
    assert broken.sendoff_s is not None and plain.sendoff_s is not None
    assert broken.suggested and broken.sendoff_s == plain.sendoff_s + 20


def test_the_strip_leaves_room_for_the_rests_inside() -> None:
    summary = summed({**BROKEN, "reps": 1})
    moments = timeline(summary.events, summary.clocks["osprey-1"], SCALE)
    assert moments is not None
    quarter = target(distance=200, effort="steady").seconds / 4
    starts = [moment.start for moment in moments]
    assert starts == pytest.approx([0, quarter + 10, 3 * quarter + 20])


@pytest.mark.parametrize(
    ("mark", "short", "long", "yards"),
    [
        ("wall", 25, 50, 25),
        ("flags", 20, 45, 20),
        ("near-flags", 5, 5, 5),
        ("middle", Fraction(25, 2), 25, Fraction(25, 2)),
        ("15m", 15, 15, Fraction(150000, 9144)),
    ],
)
def test_marks_by_hand(mark: str, short: Fraction, long: Fraction, yards: Fraction) -> None:
    found = [mark_from_wall(mark, course) for course in (SHORT, LONG, YARDS)]
    assert found == [short, long, yards]


def test_15_m_fast_then_easy_to_the_end() -> None:
    item = {"distance": 50, "parts": [part("fast", to="15m"), part("easy", to="end")]}
    assert parts_of(item) == [15, 35]
    assert parts_of(item, LONG) == [15, 35]
    fifteen = Fraction(15) / Fraction("0.9144")
    assert parts_of(item, YARDS) == [fifteen, 50 - fifteen]
    by = summed({"reps": 4, **item}, of=SHORT, course=YARDS).by["effort"]
    assert by == {"fast": 4 * fifteen, "easy": 200 - 4 * fifteen}


def test_twelve_and_a_half_fast_and_easy() -> None:
    item = {"parts": [part("fast", distance=12.5), part("easy", distance=12.5)]}
    summary = summed({"reps": 3, **item})
    assert summary.by["effort"] == {"fast": Fraction(75, 2), "easy": Fraction(75, 2)}
    assert (summary.distance.value, summary.lengths, summary.misfits) == (75, 3, ())


def test_a_mark_is_the_next_one_ahead() -> None:
    walls = {"distance": 100, "parts": [part(to="flags"), part(to="wall"), part(to="middle"),
                                        part(to="middle"), part(to="end")]}  # fmt: skip
    assert parts_of(walls) == [20, 5, Fraction(25, 2), 25, Fraction(75, 2)]
    assert parts_of({"distance": 50, "parts": [part(to="wall"), part(to="wall")]}) == [25, 25]


def laid(item: dict, course: Course = SHORT) -> Reps:
    (reps,) = structure_items([{"reps": 1, **item}])
    assert isinstance(reps, Reps)
    return placed(reps, course)


def test_a_part_that_leads_nowhere_has_no_distance() -> None:
    # the first goes beyond the end already: refused elsewhere, and nothing runs backwards
    beyond = {"distance": 50, "parts": [part(distance=60), part(to="end")]}
    assert parts_of(beyond) == [60, 0]
    whole = laid({"distance": 50, "parts": [part(to="wall"), part(to="end")]}).parts
    assert [type(own.distance) for own in whole] == [int, int]  # told as 25, not as 25/1
    half = laid({"distance": 25, "parts": [part(to="middle"), part(to="end")]}).parts
    assert [own.distance for own in half] == [Fraction(25, 2)] * 2


@pytest.mark.parametrize(
    ("distance", "parts", "number"),
    [
        (50, [part(to="wall"), part(to="end")], None),
        (50, [part(to="wall"), part(to="wall")], None),  # just there
        (50, [part(to="wall"), part(to="wall"), part(to="flags")], 2),
        (10, [part(to="15m"), part(to="end")], 0),
        (50, [part(distance=40), part(to="flags"), part(to="end")], None),  # at 45
        (50, [part(distance=46), part(to="flags"), part(to="end")], 1),  # the next are at 70
        (25, [part(distance=30)], None),  # no mark
    ],
)
def test_a_mark_beyond_the_end_is_told(distance: int, parts: list, number: int | None) -> None:
    assert beyond_the_end(laid({"distance": distance, "parts": parts}), SHORT) == number


def test_parts_of_one_round_have_their_marks_too() -> None:
    parts = [part(to="15m"), part(to="end")]
    changes = {"2": {"parts": parts, "distance": 25}, "last": {"effort": "fast"}}
    item = {"distance": 25, "do": "kick", "effort": "easy", "by_round": changes}
    second, last = (laid(item).by_round[name].parts for name in ("2", "last"))
    assert second is not None and [own.distance for own in second] == [15, 10]
    assert last is None


MARKS = ["wall", "flags", "near-flags", "middle", "15m"]


def walked(marks: list[str], distance: int, course: Course) -> list[int]:
    """Where each part ends, in millimetres or thousandths of a yard, found by going there step by
    step and looking at the wall behind, and never past the end.
    """
    step = 1000
    length = course.length * step
    fifteen = round(15 * step if course.unit is Unit.METRE else 15 * step / 0.9144)
    stands = {
        "wall": 0, "flags": length - 5 * step, "near-flags": 5 * step, "middle": length // 2,
        "15m": fifteen,
    }  # fmt: skip
    at, ends = 0, []
    for mark in marks:
        if at < distance * step:
            at += 1
            while at % length != stands[mark] and at < distance * step:
                at += 1
        ends.append(at)
    return ends


@given(
    st.lists(st.sampled_from(MARKS), min_size=1, max_size=4),
    st.sampled_from([25, 50, 75, 100]),
    st.sampled_from([SHORT, LONG, YARDS]),
)
def test_marks_against_walking_the_pool(marks: list[str], distance: int, course: Course) -> None:
    item = {"distance": distance, "parts": [*[part(to=mark) for mark in marks], part(to="end")]}
    parts = parts_of(item, course)
    assert sum(parts) == distance
    ends = [sum(parts[: number + 1]) for number in range(len(marks))]
    assert [float(end) for end in ends] == pytest.approx(
        [at / 1000 for at in walked(marks, distance, course)], abs=0.002
    )


def test_what_does_not_fit_another_pool_is_told() -> None:
    def unfit(item: dict, course: Course) -> list[Unfit]:
        laid = place_items(structure_items([{"reps": 1, **item}]), course)
        return [misfit.why for misfit in misfits(laid, course)]

    halves = {"parts": [part(distance=12.5), part(distance=12.5)]}
    assert (unfit(halves, SHORT), unfit(halves, YARDS)) == ([], [])
    assert unfit(halves, LONG) == [Unfit.ENDS]
    broken = {"parts": [part(distance=25, rest=10), part(distance=25)]}
    assert (unfit(broken, SHORT), unfit(broken, LONG)) == ([], [Unfit.RESTS])
    walls = {"distance": 50, "parts": [part(to="wall"), part(to="wall")]}
    assert (unfit(walls, SHORT), unfit(walls, LONG)) == ([], [Unfit.PARTS])
    fifteen = {"distance": 25, "parts": [part(to="15m"), part(distance=10)]}
    assert (unfit(fifteen, SHORT), unfit(fifteen, YARDS)) == ([], [Unfit.PARTS])
    assert unfit({"parts": [part(distance=25), part(distance=25)]}, LONG) == [Unfit.CHANGES]


def test_of_what_does_not_fit_the_place_the_part_and_the_nearest_are_told() -> None:
    path = ("items", 1, "items", 0)

    def told(item: dict, course: Course) -> Misfit:
        round_ = {"rounds": 2, "items": [{"reps": 1, **item}]}
        laid = place_items(structure_items([{"pause": 60}, round_]), course)
        (own,) = misfits(laid, course)
        return own

    halves = {"parts": [part(distance=12.5), part(distance=12.5)]}
    ends = Misfit(path, 25, Unfit.ENDS, None, 50, swimmers=1, whole=0, empty=None)
    assert told(halves, LONG) == ends and ends.ends
    broken = {"parts": [part(distance=25, rest=10), part(distance=25)]}
    assert told(broken, LONG) == Misfit(path, 25, Unfit.RESTS, 0, 50)
    late = {"parts": [part(distance=25), part(distance=30), part(distance=20)]}
    changes = told(late, SHORT)  # at 55 m
    assert changes == Misfit(path, 30, Unfit.CHANGES, 1, 25) and not changes.ends
    assert (changes.swimmers, changes.whole) == (1, 0)
    walls = {"distance": 50, "parts": [part(to="wall"), part(to="wall")]}
    assert told(walls, LONG) == Misfit(path, 50, Unfit.PARTS, None, 50, whole=50, empty=1)
    fifteen = {"distance": 25, "parts": [part(to="15m"), part(distance=10)]}
    added = Fraction(15) / Fraction("0.9144") + 10
    assert told(fifteen, YARDS) == Misfit(path, added, Unfit.PARTS, None, 25, whole=25)
    assert [own.value for own in Unfit] == [
        "ends between the walls",
        "changes between the walls",
        "rests between the walls",
        "has parts that do not come to its distance",
    ]


def test_there_and_back_is_the_set_itself() -> None:
    items = structure_items(
        [{"reps": 1, "distance": 50, "parts": [part(to="15m"), part(to="end")]}]
    )
    own = place_items(items, SHORT)
    assert place_items(place_items(own, YARDS), SHORT) == own


def test_kick_before_a_rest_is_not_kick_straight_into_stroke() -> None:
    straight = [part(distance=25), part(distance=25, do="backstroke")]
    rested = [part(distance=25, rest=10), part(distance=25, do="backstroke")]
    assert summed({"reps": 1, "parts": straight}).shares.kick_into_stroke == 25
    assert summed({"reps": 1, "parts": rested}).shares.kick_into_stroke == 0


def test_a_sendoff_that_the_rests_inside_eat_is_too_tight() -> None:
    whole = target(distance=200, effort="steady").seconds
    run = summed({**BROKEN, "sendoff": whole + 25}).clocks["osprey-1"]
    (tight,) = too_tight(run, clock())
    assert tight.timed.rest_s == pytest.approx(5)
    assert policy().rest["steady"].least.seconds_per_50 == 4  # 16 s after 200 m: 5 s are too few


def test_drills_shorter_than_a_length_end_where_they_end() -> None:
    glide = replace(DRILLS["kick"], dose=replace(DRILLS["kick"].dose, distance=10))
    drills = {"kick": glide, "backstroke": DRILLS["backstroke"]}

    def told(*written: dict) -> list[Unfit]:
        items = structure_items(list(written))
        return [misfit.why for misfit in misfits(items, SHORT, drills=drills)]

    one = {"reps": 6, "distance": 5, "do": "kick", "effort": "easy", "rest": "0:30"}
    home = {"distance": 15, "do": "backstroke", "effort": "easy"}
    push = {"distance": 10, "do": "kick", "effort": "easy"}
    assert told(one) == []
    assert told({**one, "distance": 30}) == [Unfit.ENDS]  # past the wall, and between two
    assert told({**one, "do": "backstroke"}) == [Unfit.ENDS]  # its own dose is a length or more
    straight_on = {key: own for key, own in one.items() if key != "rest"}
    long = {"kick": replace(glide, dose=replace(glide.dose, distance=25))}
    items = structure_items([one])
    assert [own.why for own in misfits(items, SHORT, drills=long)] == [Unfit.ENDS]
    in_turn = {"do": {"split": ["kick", "backstroke"]}, "distance": 10}
    assert told({**one, **in_turn}) == [Unfit.ENDS]  # one of the two goes on to the wall
    a_length = {"distance": 25, "do": "kick", "effort": "easy"}  # from 10 m on, past the wall
    assert told({"reps": 4, "parts": [push, a_length, home], "rest": "1:00"}) == [Unfit.CHANGES]
    assert told(straight_on) == [Unfit.ENDS]  # nobody gets back to the wall
    assert told({**straight_on, "reps": 1}) == []
    assert told({"reps": 4, "parts": [push, home], "rest": "1:00"}) == []
    assert told({"reps": 4, "parts": [push, push], "rest": "1:00"}) == []
    assert told({"reps": 4, "parts": [home, push], "rest": "1:00"}) == [Unfit.CHANGES]
    assert told({"reps": 4, "parts": [{**push, "rest": "0:10"}, home], "rest": "1:00"}) == [
        Unfit.RESTS
    ]


def test_parts_alike_in_a_row_are_told_once() -> None:
    fifty, last = part(distance=50, rest="0:10"), part("fast", distance=50)
    (reps,) = structure_items([{"reps": 1, "parts": [fifty, fifty, fifty, last]}])
    (other,) = structure_items([{"reps": 1, "parts": [fifty, last, fifty, part(distance=50)]}])
    assert isinstance(reps, Reps)
    assert isinstance(other, Reps)
    words = what_words(catalogue(), reps)
    assert words.count("0:10 rest") == 1
    assert re.fullmatch(r"1 × 200 .+: 3 times 50 \(.+\), 0:10 rest each, then 50 \(.+\)", words)
    assert " times " not in what_words(catalogue(), other)
