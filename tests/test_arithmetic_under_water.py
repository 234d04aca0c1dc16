"""Metres and rest under water, and metres with gear, worked by hand."""

from __future__ import annotations

from dataclasses import dataclass, replace
from types import SimpleNamespace
from typing import Any

import pytest
from arithmetic_world import LONG, PIECES, SHORT, YARDS, clock, events, group

from almanac.arithmetic.events import Event, Piece, Rep
from almanac.arithmetic.loads import (
    excluded,
    loads_hands,
    longest_worn,
    resists,
    worn_in,
    worn_metres,
)
from almanac.arithmetic.under_water import (
    UnderWater,
    is_under,
    metres_off_walls,
    metres_under,
    rest_after,
    under_water,
)
from almanac.units import Course


def piece(distance: float, under: float | None, mode: str = "underwater") -> Piece:
    (rep,) = (e for e in events({"reps": 1, "distance": 25, "do": "kick", "effort": "easy"}))
    assert isinstance(rep, Rep)
    own = rep.pieces[0]
    return replace(own, distance=distance, drill=replace(own.drill, mode=mode, under_water=under))


@pytest.mark.parametrize(
    ("distance", "under", "course", "metres"),
    [
        (10, None, SHORT, 10),
        (50, None, SHORT, 50),
        (50, 10, SHORT, 20),  # two walls
        (50, 10, LONG, 10),  # one
        (60, 12, SHORT, 34),  # 12 + 12 + the 10 that are left
        (60, 5, SHORT, 15),
        (8, 10, SHORT, 8),
        (25, 30, SHORT, 25),
        (25, None, YARDS, 22.86),
        (50, 10, YARDS, 20),
    ],
)
def test_metres_under_water(
    distance: int, under: float | None, course: Course, metres: float
) -> None:
    assert metres_under(piece(distance, under), course, 5) == pytest.approx(metres)
    assert metres_off_walls(piece(distance, under), course) == 0
    assert metres_under(piece(distance, under, "kick"), course, 30) == 0


def test_metres_after_the_walls_of_ordinary_work() -> None:
    assert metres_off_walls(piece(50, 7, "wall"), SHORT) == 7
    assert metres_off_walls(piece(5, 7, "wall"), SHORT) == 5
    assert metres_off_walls(piece(50, None, "swim"), SHORT) == 0


def test_long_walls_count_as_work_under_water_and_ordinary_push_offs_do_not() -> None:
    long, short = piece(100, 7, "kick"), piece(100, 5, "wall")
    assert metres_under(long, SHORT, 5) == 28  # seven metres off each of four walls
    assert metres_under(short, SHORT, 5) == 0
    assert metres_under(long, SHORT, 7) == 0


def under(*items: dict) -> tuple[Event, ...]:
    """Events whose kick is done under water."""

    def dipped(event: Event) -> Event:
        if not isinstance(event, Rep):
            return event
        pieces = [
            replace(own, drill=replace(own.drill, mode="underwater"))
            if own.drill.id == "kick"
            else own
            for own in event.pieces
        ]
        return replace(event, pieces=tuple(pieces))

    return tuple(map(dipped, events(*items)))


def test_rest_is_what_is_written_and_the_pauses_after_it() -> None:
    laid = under(
        {"reps": 2, "distance": 25, "do": "kick", "effort": "easy", "rest": "0:40"},
        {"pause": "1:00"},
        {"reps": 1, "distance": 25, "do": "kick", "effort": "easy"},
        {"reps": 1, "distance": 25, "do": "kick", "effort": "easy", "sendoff": "1:30"},
    )
    found = [*under_water(laid, SHORT, 1.25, None, 5)]
    assert [own.rest_s for own in found] == [40, 100, 0, None]
    assert [own.seconds for own in found] == [20, 20, 20, 20]  # 25 m at 1.25 m/s
    assert all(own.metres == 25 and own.is_whole and is_under(own.rep, 5) for own in found)


def test_rest_on_a_send_off_counts_from_the_touch() -> None:
    laid = under({"reps": 2, "distance": 50, "do": "kick", "effort": "easy", "sendoff": "2:00"})
    run = clock().run(laid)
    touch = run.reps[0].touch_s
    assert touch is not None
    first, last = under_water(laid, SHORT, 1.25, run, 5)
    assert first.rest_s == pytest.approx(120 - touch) == last.rest_s
    assert first.seconds == pytest.approx(max(touch, 40))  # its target, where that is the longer
    assert rest_after(laid, 0, run.reps[0]) == pytest.approx(120 - touch)
    at_once: Any = SimpleNamespace(touch_s=0.5, sendoff_s=120.0)  # nothing is believed away
    assert rest_after(laid, 0, at_once) == 119.5


def test_gear_that_is_held_counts_by_its_time() -> None:
    (rep,) = events({"reps": 1, "distance": 25, "do": "socks-kick", "effort": "easy"})
    assert isinstance(rep, Rep)
    gear = {"socks": _Resists()}
    held = replace(rep.pieces[0], distance=0, hold_s=15.0)
    assert worn_metres([*rep.pieces, held], SHORT, gear, resists, 60) == 25 + 12.5  # type: ignore[arg-type]
    assert worn_metres(rep.pieces, YARDS, gear, resists, 60) == pytest.approx(22.86)  # type: ignore[arg-type]


class _Resists:
    resists = True


class _Excludes:
    def __init__(self, *ids: str) -> None:
        self.excludes = ids


def test_what_one_excludes_the_other_does_too() -> None:
    gear = {"fins": _Excludes(), "board": _Excludes(), "socks": _Excludes("fins")}
    assert excluded(["fins", "socks"], gear) == ("fins", "socks")  # type: ignore[arg-type]
    assert excluded(["socks", "fins"], gear) == ("fins", "socks")  # type: ignore[arg-type]
    assert excluded(["board", "socks"], gear) is None  # type: ignore[arg-type]
    first = {"fins": _Excludes(), "board": _Excludes("fins"), "socks": _Excludes()}
    assert excluded(first, first) == ("board", "fins")  # type: ignore[arg-type]


def test_what_drill_says_of_the_walls_at_the_surface_is_no_more_than_the_piece() -> None:
    assert metres_off_walls(piece(0, 7, "wall"), SHORT) == 7  # held: nothing is known of its length
    assert metres_off_walls(piece(25, 30, "wall"), YARDS) == pytest.approx(22.86)
    assert metres_under(piece(0, None), SHORT, 5) == 0


def only(laid: tuple[Event, ...], clock_of: object = None) -> UnderWater:
    (own,) = under_water(laid, SHORT, 1.25, clock_of, 5)  # type: ignore[arg-type]
    return own


def test_seconds_are_those_of_the_target_only_where_all_of_the_rep_is_under() -> None:
    parts = [
        {"distance": 25, "do": "kick", "effort": "easy"},
        {"distance": 25, "do": "backstroke", "effort": "easy"},
    ]
    mixed = under({"reps": 1, "parts": parts, "sendoff": "3:00"})
    own = only(mixed, clock().run(mixed))
    assert (own.metres, own.seconds, own.is_whole, is_under(own.rep, 5)) == (25, 20, False, True)
    assert own.interval_s == 180
    # what says how far it is under after each wall is not under from end to end
    (rep,) = under({"reps": 1, "distance": 50, "do": "kick", "effort": "easy", "sendoff": "3:00"})
    assert isinstance(rep, Rep)
    dipped = [replace(p, drill=replace(p.drill, under_water=10.0)) for p in rep.pieces]
    walls = replace(rep, pieces=tuple(dipped))
    own = only((walls,), clock().run((walls,)))
    assert (own.metres, own.seconds, own.is_whole) == (20, 16, False)
    assert not own.is_at_walls
    partly = replace(walls, pieces=(*rep.pieces, *dipped))
    assert not only((partly,)).is_whole


def test_what_is_held_under_water_is_under_for_as_long_as_it_is_held() -> None:
    (rep,) = under({"reps": 1, "distance": 25, "do": "kick", "effort": "easy", "rest": 30})
    assert isinstance(rep, Rep)
    held = replace(rep.pieces[0], distance=0, hold_s=12.0)
    assert only((replace(rep, pieces=(held, held)),)).seconds == 24
    assert only((replace(rep, pieces=(held,)),)).seconds == 12
    assert only((replace(rep, pieces=(held, rep.pieces[0])),)).seconds == 20  # the longer
    above = replace(held, hold_s=90.0, drill=replace(held.drill, mode="kick"))
    own = only((replace(rep, pieces=(held, above)),))
    assert (own.seconds, own.interval_s, own.rest_s, own.is_whole) == (12, 30, 30, False)


def test_what_is_done_at_the_surface_is_not_told() -> None:
    swim = {"reps": 1, "distance": 25, "do": "backstroke", "effort": "easy", "rest": "0:15"}
    dip = {"reps": 1, "distance": 25, "do": "kick", "effort": "easy"}
    laid = under(swim, {"pause": 5}, {"pause": 10}, dip, {"pause": 20}, dip)
    first, second = under_water(laid, SHORT, 1.25, None, 5)
    assert (first.rest_s, first.interval_s) == (20, None)
    assert second.rest_s == 0
    assert not any(is_under(own, 5) for own in laid[:1] if isinstance(own, Rep))


@pytest.mark.parametrize(
    ("assume", "course", "rest_s"),
    [
        ("0:10", SHORT, 60 - 20),  # 25 m at 1.25 m/s: a touch that nobody has timed is no sooner
        ("0:10", YARDS, 60 - 22.86 / 1.25),
        ("0:30", SHORT, 60 - 30),
    ],
)
def test_an_assumed_touch_that_comes_too_soon_is_not_believed(
    assume: str, course: Course, rest_s: float
) -> None:
    dip = {"reps": 1, "distance": 25, "do": "kick", "effort": "easy", "sendoff": "1:00"}
    laid = under({**dip, "assume": assume})
    (own,) = under_water(laid, course, 1.25, clock(group([]), course).run(laid), 5)
    assert own.rest_s == pytest.approx(rest_s)


def test_a_send_off_that_is_too_tight_leaves_no_rest_and_pauses_count() -> None:
    laid = under(
        {"reps": 1, "distance": 50, "do": "kick", "effort": "easy", "sendoff": "0:10"},
        {"pause": 25},
    )
    timed = clock().run(laid).reps[0]
    assert rest_after(laid, 0, timed) == 25
    assert rest_after(laid, 0, None) is None
    assert rest_after(laid, 0, replace(timed, sendoff=None)) is None
    untested = clock(group([])).run(laid)
    assert rest_after(laid, 0, untested.reps[0]) is None
    assert only(laid, untested).seconds == 40  # 50 m at 1.25 m/s


def test_hands_are_loaded_by_what_acts_on_them_and_does_something_there() -> None:
    def told(acts_on: tuple[str, ...], effect: str) -> bool:
        return loads_hands(replace(PIECES["fins"], acts_on=acts_on, effect=effect))

    assert told(("hands",), "resists") and told(("arms", "hands"), "assists")
    assert not told(("feet",), "resists")
    plain = replace(PIECES["fins"], acts_on=("hands",), effect="informs", pace_factor=1.0)
    assert not loads_hands(plain)
    assert all(loads_hands(replace(plain, effect=effect)) for effect in ("resists", "assists"))
    assert loads_hands(replace(plain, pace_factor=0.97))  # whatever its effect is called


def test_metres_of_all_that_is_swum_and_of_one_rep() -> None:
    gear = {"socks": PIECES["socks"], "fins": PIECES["fins"]}
    parts = [
        {"distance": 25, "do": "kick", "effort": "easy", "gear": ["socks", "fins"]},
        {"distance": 50, "do": "kick", "effort": "easy", "gear": ["fins"]},
        {"distance": 75, "do": "kick", "effort": "easy"},
    ]
    (rep,) = events({"reps": 1, "parts": parts})
    assert isinstance(rep, Rep)
    assert longest_worn(rep, SHORT, gear, 60) == 25
    assert longest_worn(rep, YARDS, gear, 60) == pytest.approx(22.86)
    assert worn_in(_Swum(rep.pieces * 2, SHORT), gear, resists, 60) == 50  # type: ignore[arg-type]
    held = replace(rep.pieces[0], distance=0, hold_s=None)
    assert worn_metres([held], SHORT, gear, resists, 60) == 0


@dataclass
class _Swum:
    pieces: tuple[Piece, ...]
    course: Course
