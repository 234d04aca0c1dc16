"""Metres and rest under water, and metres with gear, worked by hand."""

from __future__ import annotations

from dataclasses import replace

import pytest
from arithmetic_world import LONG, SHORT, YARDS, clock, events

from almanac.arithmetic.expand import Event, Piece, Rep
from almanac.arithmetic.loads import excluded, resists, worn_metres
from almanac.arithmetic.under_water import (
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
        (8, 10, SHORT, 8),
        (25, 30, SHORT, 25),
        (25, None, YARDS, 22.86),
        (50, 10, YARDS, 20),
    ],
)
def test_metres_under_water(
    distance: int, under: float | None, course: Course, metres: float
) -> None:
    assert metres_under(piece(distance, under), course) == pytest.approx(metres)
    assert metres_off_walls(piece(distance, under), course) == 0
    assert metres_under(piece(distance, under, "kick"), course) == 0


def test_metres_after_the_walls_of_ordinary_work() -> None:
    assert metres_off_walls(piece(50, 7, "wall"), SHORT) == 7
    assert metres_off_walls(piece(5, 7, "wall"), SHORT) == 5
    assert metres_off_walls(piece(50, None, "swim"), SHORT) == 0


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
    found = [*under_water(laid, SHORT, 1.25, None)]
    assert [own.rest_s for own in found] == [40, 100, 0, None]
    assert [own.seconds for own in found] == [20, 20, 20, 20]  # 25 m at 1.25 m/s
    assert [own.before_rest_s for own in found] == [None, 40, 100, 0]
    assert all(own.metres == 25 and own.is_whole and is_under(own.rep) for own in found)


def test_rest_on_a_send_off_counts_from_the_touch() -> None:
    laid = under({"reps": 2, "distance": 50, "do": "kick", "effort": "easy", "sendoff": "2:00"})
    run = clock().run(laid)
    touch = run.reps[0].touch_s
    assert touch is not None
    first, last = under_water(laid, SHORT, 1.25, run)
    assert first.rest_s == pytest.approx(120 - touch) == last.rest_s
    assert first.seconds == pytest.approx(max(touch, 40))  # its target, where that is the longer
    assert rest_after(laid, 0, run.reps[0]) == pytest.approx(120 - touch)


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
