"""Lanes by the clock of a week: slots, openings, the grid of a day, and lanes at a meet; by
hand.
"""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest
from arithmetic_plans import club
from arithmetic_world import made

from almanac.arithmetic.meet_lanes import heads_a_lane
from almanac.arithmetic.pool_slots import (
    GridRow,
    SlotDay,
    every_day,
    gear_laid_out,
    grid,
    is_open,
    most_at_once,
    slots_on,
    usual_days,
)
from almanac.model.meet import Meet, WarmUp
from almanac.model.timetable import Opening, PoolSlot, Timetable

MONDAY, TUESDAY = date(2026, 9, 7), date(2026, 9, 8)


def slot(squad: str = "a", begins: str = "17:00", ends: str = "18:00", **more: Any) -> PoolSlot:
    return PoolSlot(
        squad, **{"pool": "home", "begins": begins, "ends": ends, "lanes": (1, 2), **more}
    )


def timetable(*slots: PoolSlot) -> Timetable:
    own: Timetable = made(
        Timetable, id="autumn", first=MONDAY, last=date(2026, 12, 20), open=(), slots=slots
    )
    return own


SLOTS = (slot("a", days=("mon", "wed")), slot("b", days=("mon",)), slot("a", on=(MONDAY,)))


def numbers(slots: Any) -> list[int]:
    return [number for number, _ in slots]


def test_what_a_squad_has_on_a_single_day_stands_in_place_of_its_week() -> None:
    own = timetable(*SLOTS)
    assert numbers(slots_on(own, MONDAY)) == [1, 2]
    assert numbers(slots_on(own, date(2026, 9, 14))) == [0, 1]
    assert numbers(slots_on(own, date(2026, 9, 9))) == [0]
    assert slots_on(own, TUESDAY) == []
    assert slots_on(own, date(2026, 9, 2)) == slots_on(own, date(2026, 12, 21)) == []
    assert numbers(slots_on(timetable(slot("a", on=(MONDAY,)), *SLOTS[:2]), MONDAY)) == [0, 2]


def test_the_days_of_a_week_and_those_that_are_otherwise_have_their_slots() -> None:
    own = timetable(*SLOTS, slot("b", on=(TUESDAY, MONDAY)))
    week = {day: numbers(slots) for day, slots in usual_days(own)}
    assert week == {
        "mon": [0, 1],
        "tue": [],
        "wed": [0],
        "thu": [],
        "fri": [],
        "sat": [],
        "sun": [],
    }
    days = [(one.day, one.on, numbers(one.slots)) for one in every_day(own)]
    assert days[:3] == [("mon", None, [0, 1]), ("tue", None, []), ("wed", None, [0])]
    assert days[7:] == [("mon", MONDAY, [2, 3]), ("tue", TUESDAY, [3])]


@pytest.mark.parametrize(
    ("openings", "is_one"),
    [
        ([("17:00", "18:00", {})], True), ([("16:00", "19:00", {})], True),
        ([("17:01", "18:00", {})], False),
        ([("17:00", "17:59", {})], False), ([("17:00", "17:30", {}), ("17:30", "18:00", {})], True),
        ([("17:30", "18:00", {}), ("17:00", "17:30", {})], True),
        ([("17:00", "17:29", {}), ("17:30", "18:00", {})], False),
        ([("17:00", "17:40", {}), ("17:20", "18:00", {})], True),
        ([("17:00", "17:40", {}), ("17:10", "17:20", {})], False),
        ([("17:00", "18:00", {"pool": "away"})], False),
        ([("17:00", "18:00", {"lanes": (2, 3)})], True),
        ([("17:00", "18:00", {"lanes": (1, 3)})], False),
        ([("17:00", "18:00", {"days": ("tue",)})], False),
        ([("17:00", "18:00", {"days": (), "on": (MONDAY,)})], True),
        ([("17:00", "18:00", {"days": (), "on": (TUESDAY,)})], False),
        ([], False), ([("15:00", "16:00", {}), ("17:00", "18:00", {})], True),
        ([("15:00", "17:00", {})], False),
    ],
)  # fmt: skip
def test_a_lane_is_open_for_all_of_a_slot_where_openings_meet(
    openings: list[Any], is_one: bool
) -> None:
    known = [
        Opening(**{"pool": "home", "begins": begins, "ends": ends, "days": ("mon",), **more})
        for begins, ends, more in openings
    ]
    assert is_open(known, slot(), SlotDay("mon", MONDAY, ()), 2) is is_one


def test_at_each_moment_at_which_a_slot_begins_those_that_go_on_are_there() -> None:
    own = [slot("a", "17:00", "18:00"), slot("b", "17:30", "18:30"), slot("c", "18:00", "19:00")]
    found = [(at, numbers(slots)) for at, slots in most_at_once(list(enumerate(own)))]
    assert found == [("17:00", [0]), ("17:30", [0, 1]), ("18:00", [1, 2])]


def test_gear_of_slots_together_is_added_up() -> None:
    own = [slot(gear={"fins": 4, "socks": 1}), slot(gear={"fins": 3}), slot()]
    assert gear_laid_out(own) == {"fins": 7, "socks": 1}
    assert gear_laid_out([]) == {}


def test_a_day_of_a_pool_is_rows_of_lanes_without_stretches_of_nobody() -> None:
    own = [
        slot("a", "17:00", "18:00", lanes=(1, 2)), slot("b", "17:30", "18:00", lanes=(4,)),
        slot("c", "19:00", "20:00", lanes=(2, 3)),
    ]  # fmt: skip
    assert grid(own, 4) == [
        GridRow("17:00", "17:30", ((2, "a"), (2, ""))),
        GridRow("17:30", "18:00", ((2, "a"), (1, ""), (1, "b"))),
        GridRow("19:00", "20:00", ((1, ""), (2, "c"), (1, ""))),
    ]
    assert grid([], 4) == []


def test_heads_of_the_squads_that_come_are_over_the_lanes_that_they_have() -> None:
    """Osprey has 10 and 6 heads, Heron 9."""

    def heads(squads: tuple[str, ...], lanes: tuple[int, ...] = (1, 2)) -> float | None:
        meet: Meet = made(Meet, id="cup", squads=("osprey", "heron"), days=())
        found = heads_a_lane(club().club, meet, WarmUp("swim", "08:00", "09:00", lanes, squads))
        return found and found.value

    assert heads(()) == 12.5  # 25 in 2
    assert heads(("osprey",)) == 8 and heads(("heron",), (1, 2, 3)) == 3
    assert heads(("reed",)) is None
