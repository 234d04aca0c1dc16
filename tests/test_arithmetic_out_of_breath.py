"""Seconds since the last fast touch when a rep goes under water, worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from arithmetic_world import (
    DRILLS,
    PIECES,
    SCALE,
    SHORT,
    YARDS,
    catalogue,
    clock,
    events,
    group,
    swim_set,
)

from almanac.arithmetic.events import Event, Rep
from almanac.arithmetic.expand import expand
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.moment import least_seconds
from almanac.arithmetic.out_of_breath import NEVER, Breath
from almanac.arithmetic.summary import summarise
from almanac.arithmetic.timing import Timing
from almanac.arithmetic.working import Known
from almanac.model.structure import structure_items
from almanac.units import Course

FAST = {"reps": 1, "distance": 50, "do": "backstroke", "effort": "all-out", "rest": "0:10"}
EASY = {"reps": 1, "distance": 25, "do": "backstroke", "effort": "easy", "rest": "0:05"}
DIP = {"reps": 1, "distance": 25, "do": "kick", "effort": "easy", "rest": "0:40"}


def laid(*items: dict) -> tuple[Event, ...]:
    """Events whose kick is done under water."""
    return dive(events(*items))


def dive(every: tuple[Event, ...]) -> tuple[Event, ...]:
    """The events with their kick under water."""

    def dipped(rep: Rep) -> Rep:
        return replace(
            rep,
            pieces=tuple(
                replace(p, drill=replace(p.drill, mode="underwater")) if p.drill.id == "kick" else p
                for p in rep.pieces
            ),
        )

    return tuple(dipped(own) if isinstance(own, Rep) else own for own in every)


def since(
    own: tuple[Event, ...], run: GroupClock | None = None, breath: Breath | None = None
) -> list[float]:
    breath = breath or Breath(SCALE, 5)
    breath.swim(own, SHORT, run)
    return [found.since_s for found in breath.found]


def test_rest_easy_metres_and_pauses_all_count() -> None:
    own = laid(FAST, EASY, {"pause": 12}, DIP)
    # nothing is known of times: 25 m as fast as nobody swims, at 3.5 m/s
    assert since(own) == [pytest.approx(10 + 25 / 3.5 + 5 + 12)]
    run = clock().run(own)
    target = run.reps[1].target_s
    assert target is not None
    assert since(own, run) == [pytest.approx(10 + target + 5 + 12)]


def test_work_under_water_itself_is_no_fast_work_and_takes_time_too() -> None:
    hard = {**DIP, "effort": "all-out"}
    assert since(laid(hard, DIP)) == []  # what rest it asks for itself is another rule
    first, second = since(laid(FAST, DIP, DIP))
    assert (first, second) == (10, pytest.approx(10 + 25 / 3.5 + 40))
    assert since(laid(DIP, FAST)) == []


def test_a_send_off_leaves_what_the_touch_leaves() -> None:
    fast = {"reps": 1, "distance": 50, "do": "backstroke", "effort": "all-out", "sendoff": "2:00"}
    own = laid(fast, DIP)
    run = clock().run(own)
    touch = run.reps[0].touch_s
    assert touch is not None
    assert since(own, run) == [pytest.approx(120 - touch)]
    assert since(own) == [0]  # of a touch that nobody knows
    untimed = clock(group({}))
    assert since(own, untimed.run(own)) == [0]  # nor of one whose lane group has no test
    # all out in 69 s / 2 at least: on 0:20 nobody rests, and no time runs backwards
    late = laid({**fast, "sendoff": "0:20"}, {"pause": 3}, DIP)
    assert since(late, clock().run(late)) == [3]


UNTIMED = {"reps": 1, "do": "backstroke", "effort": "easy"}


@pytest.mark.parametrize(
    ("easy", "seconds"),
    [
        # a send-off of 60 s is over after 60 s, whatever the rep took of it
        ({**UNTIMED, "distance": 50, "sendoff": "1:00"}, 10 + 60),
        # one that nobody can hold: 25 m, two minutes and 25 m take longer
        (
            {
                "reps": 1,
                "sendoff": "1:00",
                "parts": [
                    {"distance": 25, "do": "backstroke", "effort": "easy", "rest": "2:00"},
                    {"distance": 25, "do": "backstroke", "effort": "easy"},
                ],
            },
            10 + 120 + 50 / 3.5,
        ),
        # none is named for the group, and none can be suggested
        ({**UNTIMED, "distance": 70, "sendoff": {"osprey-2": "1:00"}}, 10 + 70 / 3.5),
        # nothing is said of rest
        ({**UNTIMED, "distance": 70}, 10 + 70 / 3.5),
        # what is held takes the time that it is held
        ({"reps": 1, "time": "0:30", "do": "upright", "effort": "easy", "rest": "0:05"}, 45),
    ],
)
def test_what_is_known_of_a_rep_without_a_time(easy: dict, seconds: float) -> None:
    own = laid(FAST, easy, DIP)
    run = clock(group({})).run(own)
    assert since(own, run) == [pytest.approx(seconds)]


def test_nobody_is_faster_over_yards_either() -> None:
    breath = Breath(SCALE, 5)
    breath.swim(laid(FAST, EASY, DIP), YARDS, None)
    assert breath.since_s == pytest.approx(10 + 25 * 0.9144 / 3.5 + 5 + 25 * 0.9144 / 3.5 + 40)


def test_parts_of_one_rep_count_in_their_order() -> None:
    parts = [
        {"distance": 25, "do": "backstroke", "effort": "fast", "rest": "0:05"},
        {"distance": 25, "do": "backstroke", "effort": "easy"},
        {"distance": 25, "do": "kick", "effort": "easy"},
    ]
    breath = Breath(SCALE, 5)
    own = laid({"reps": 2, "parts": parts, "rest": "1:00"})
    assert since(own, None, breath) == [pytest.approx(5 + 25 / 3.5)] * 2
    assert all(found.same_rep and not found.carried for found in breath.found)


def test_a_rep_that_goes_under_twice_is_told_once() -> None:
    dip, easy = ({"distance": 25, "do": do, "effort": "easy"} for do in ("kick", "backstroke"))
    breath = Breath(SCALE, 5)
    own = laid(FAST, {"reps": 1, "parts": [dip, easy, dip]})
    assert since(own, None, breath) == [10]
    assert not breath.found[0].same_rep  # the fast work was another rep


def test_gear_that_is_changed_takes_its_time() -> None:
    own = laid(FAST, {**DIP, "gear": ["fins"]})
    run = clock().run(own)
    assert since(own, run) == [10 + PIECES["fins"].change_s]
    parts = [
        {"distance": 25, "do": "backstroke", "effort": "fast", "rest": "0:05"},
        {"distance": 25, "do": "kick", "effort": "easy", "gear": ["fins"]},
    ]
    inside = structure_items([{"reps": 1, "parts": parts, "rest": "1:00"}])
    own = dive(expand(inside, DRILLS, SCALE, PIECES))
    assert since(own) == [20]  # they go on in 20 s, of which the rest of 5 s is a part


def test_what_was_swum_in_an_earlier_part_is_carried_on() -> None:
    breath = Breath(SCALE, 5)
    assert since(laid(DIP), None, breath) == [] and breath.since_s == NEVER
    assert since(laid(FAST), None, breath) == []
    breath.wait(15)
    assert since(laid(DIP, FAST, DIP), None, breath) == [25, 10]
    assert [found.carried for found in breath.found] == [True, False]


def test_fast_work_with_long_walls_counts_for_what_comes_after_its_own_item() -> None:
    def walls(rep: Event) -> Event:
        if not isinstance(rep, Rep) or rep.pieces[0].drill.id != "backstroke":
            return rep
        own = replace(rep.pieces[0], drill=replace(rep.pieces[0].drill, under_water=7.0))
        return replace(rep, pieces=(own,))

    first = {**FAST, "distance": 25}
    own = tuple(map(walls, laid(first, {**first, "reps": 3, "rest": "0:45"}, DIP)))
    assert since(own) == [10, 45]  # of its own three the rest that they ask for is another rule


def test_a_time_to_hold_that_is_faster_than_the_effort_is_fast_work() -> None:
    easy = {"reps": 1, "distance": 50, "do": "backstroke", "effort": "easy", "rest": "0:10"}
    run = clock().run(laid(easy))
    target = run.reps[0].target_s
    assert target is not None
    for aim, told in ((0.9 * target, [10]), (0.97 * target, [])):
        own = laid({**easy, "aim": f"0:{aim:04.1f}"}, DIP)
        assert since(own, clock().run(own)) == told
        assert since(own) == []  # with no clock nothing is known of it but its effort
    own = laid({**easy, "aim": "0:40"}, DIP)
    assert since(own, clock(group({})).run(own)) == [10]  # of whom no time is known, it may be fast
    plain = laid(easy, DIP)
    run = clock().run(plain)
    swum, dip = run.reps
    for share, told in ((0.95, []), (0.9499, [10])):
        aimed = replace(swum, aim=Known(share * target, "asked for", "s"))
        assert since(plain, replace(run, reps=(aimed, dip))) == told


@pytest.mark.parametrize(
    ("course", "seconds"),
    [(SHORT, 60 + 12 + 70 / 3.5 + 10), (YARDS, 60 + 12 + 70 * 0.9144 / 3.5 + 10)],
)
def test_the_least_that_a_part_takes_of_which_something_is_not_known(
    course: Course, seconds: float
) -> None:
    # a send-off of a minute, a pause, and 70 as fast as nobody swims with its rest
    own = [
        {"reps": 1, "distance": 50, "do": "backstroke", "effort": "easy", "sendoff": "1:00"},
        {"pause": 12},
        {"reps": 1, "distance": 70, "do": "float", "effort": "easy", "rest": "0:10"},
    ]
    summary = summarise(Timing(catalogue()), swim_set(*own, course=course))
    least = least_seconds(summary.of("osprey-1"), summary.clocks["osprey-1"])
    assert least == pytest.approx(seconds)
