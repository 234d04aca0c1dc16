"""What is swum without a stop, and turns within what gear is worn for, worked by hand."""

from __future__ import annotations

from typing import Any

import pytest
from arithmetic_world import DRILLS, LONG, PIECES, SCALE, SHORT

from almanac.arithmetic.events import Event
from almanac.arithmetic.expand import expand
from almanac.arithmetic.goes import goes, turns_with
from almanac.model.structure import structure_items

KICK = {"reps": 1, "distance": 25, "do": "kick", "effort": "easy"}


def laid(*items: dict) -> tuple[Event, ...]:
    """Items laid out with what changing gear costs."""
    return expand(structure_items(list(items)), DRILLS, SCALE, PIECES)


def lengths(*items: dict) -> list[list[float]]:
    return [[float(p.distance) for _, p in go.swum] for go in goes(laid(*items), SHORT)]


def test_rests_send_offs_pauses_and_changes_of_gear_are_stops() -> None:
    assert lengths({**KICK, "reps": 2}, KICK) == [[25, 25, 25]]
    assert lengths({**KICK, "reps": 2, "rest": "0:10"}, KICK) == [[25], [25], [25]]
    assert lengths({**KICK, "reps": 2, "sendoff": "1:00"}) == [[25], [25]]
    assert lengths(KICK, {"pause": 10}, {"pause": 10}, KICK) == [[25], [25]]
    parts: list[dict[str, Any]] = [
        {"distance": 25, "do": "kick", "effort": "easy"},
        {"distance": 50, "do": "kick", "effort": "easy", "rest": "0:05"},
        {"distance": 25, "do": "kick", "effort": "easy"},
    ]
    assert lengths({"reps": 1, "parts": parts}) == [[25, 50], [25]]
    parts[1] = {**parts[1], "gear": ["fins"]}
    assert lengths({"reps": 1, "parts": parts}) == [[25], [50], [25]]
    assert lengths() == []


@pytest.mark.parametrize(
    ("worn", "turns"),
    [
        ([(25, True)], False),  # it ends at the wall
        ([(50, True)], True),
        ([(25, True), (25, True)], True),
        ([(25, False), (25, True)], False),
        ([(25, True), (25, False)], False),
        ([(12.5, False), (12.5, True)], False),
        ([(12.5, False), (25, True)], True),
        ([(12.5, True), (12.5, False), (12.5, True)], False),
        ([(37.5, False), (12.5, True), (25, True)], True),
        ([(37.5, False), (12.5, True)], False),
    ],
)
def test_a_turn_is_a_wall_within_what_is_swum_with_gear(
    worn: list[tuple[float, bool]], turns: bool
) -> None:
    parts = [
        {"distance": distance, "do": "kick", "effort": "easy", "in_passing": True}
        | ({"gear": ["fins"]} if on else {})
        for distance, on in worn
    ]
    (go,) = goes(laid({"reps": 1, "parts": parts, "rest": "1:00"}), SHORT)
    assert bool(turns_with(go, "fins", SHORT)) == turns


def test_where_a_go_begins_is_counted_from_what_was_swum_before() -> None:
    half = {"reps": 1, "distance": 12.5, "do": "kick", "effort": "easy", "rest": "0:10"}
    with_fins = {**KICK, "gear": ["fins"], "rest": "1:00"}
    _, go = goes(laid(half, with_fins), SHORT)
    assert float(go.begins) == 12.5 and turns_with(go, "fins", SHORT)
    _, go = goes(laid(half, with_fins), LONG)
    assert not turns_with(go, "fins", LONG)
