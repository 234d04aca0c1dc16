"""The run sheet, moment by moment: who waits for whom, gear that each half changes, who may join
late.

Squad osprey: `quick` swims 100 crawl in 80 s, its last leaves 15 s after the leader; `slow` in 100
s, and 10 s. To change: fins 20 s, socks 30 s.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_plans import QUICK, SLOW, club, part, practice_of, run, summarised, swim
from arithmetic_world import DRILLS
from test_arithmetic_land import CIRCUIT, CLOCK_S, MAT

from almanac.model.practice import ListOfSome, PartOfSome, PracticePart, Station
from almanac.model.structure import structure_items


def cells(summary: Any) -> list[Any]:
    return [cell for row in summary.sheet for cell in row.cells]


def of(group: str, *written: dict[str, Any], half: str = "") -> ListOfSome:
    """One part for a lane group, or for half of the lanes."""
    own = PartOfSome("main", items=structure_items(list(written)))
    return ListOfSome((own,), (group,) if group else (), half)


def test_who_ends_with_the_last_waits_for_nobody() -> None:
    both = cells(run(part(swim(sendoff=120))))  # home after 95 and 110 s
    assert [(own.ends_s, own.waits_s, own.waits_for) for own in both] == [(120, 0, None)] * 2
    quick, slow = cells(run(part(swim())))
    assert (quick.waits_s, quick.waits_for) == (15, slow.crew)
    assert (slow.waits_s, slow.waits_for) == (0, None)
    assert (quick.group, slow.group) == ("quick", "slow")


def test_who_is_done_with_a_stage_waits_for_the_last_of_all_lists() -> None:
    apart = PracticePart(
        "main", apart=(of("quick", swim(sendoff=300)), of("slow", swim(sendoff=200)))
    )
    summary = run(apart, part(swim(sendoff=120)))
    first, second, *_ = cells(summary)
    assert [(own.group, own.waits_s) for own in (first, second)] == [("quick", 0), ("slow", 100)]
    assert second.waits_for == first.crew and first.waits_for is None
    assert [row.is_for_all for row in summary.sheet] == [False, False, True]
    assert [(row.starts_s, row.ends_s) for row in summary.sheet] == [(0, 300), (0, 200), (300, 420)]


def test_after_what_is_not_known_nobody_knows_when_anything_is_over() -> None:
    practice = practice_of(part(swim()), part(swim(sendoff=90)))
    known = club(groups={"quick": QUICK, "slow": replace(SLOW, tests=())})
    quick, slow, later, _ = cells(summarised(practice, known))
    assert (quick.clock_over_s, quick.last_touch_s, quick.ends_s) == (80, 95, 95)
    assert (slow.clock_over_s, slow.last_touch_s, slow.ends_s) == (None, None, None)
    assert (later.clock_over_s, later.last_touch_s, later.ends_s) == (None, None, None)
    assert [own.waits_s for own in (quick, slow, later)] == [None] * 3
    assert [own.waits_for for own in (quick, slow, later)] == [None] * 3
    assert later.ends.missing == slow.ends.missing  # told once


def test_on_land_nobody_touches_a_wall() -> None:
    practice = practice_of(PracticePart("skill", set="a-set"))
    own = cells(summarised(practice, club(practice, CIRCUIT, MAT)))
    assert [(cell.clock_over_s, cell.last_touch_s) for cell in own] == [(CLOCK_S, None)] * 2


def test_each_half_takes_off_what_it_wore() -> None:
    """The first half wears socks, the other one fins; then all go without: 30 s."""
    apart = PracticePart(
        "main",
        apart=(
            of("", swim(sendoff=120, gear=["socks"]), half="first"),
            of("", swim(sendoff=120, gear=["fins"]), half="second"),
        ),
    )
    assert [row.gear_s for row in run(apart, part(swim(sendoff=120))).sheet] == [0, 0, 30]
    # and what a half has on already it keeps: all of them go on in socks, so the others change
    again = part(swim(sendoff=120, gear=["fins"]))
    assert run(apart, again).sheet[-1].gear_s == 30
    alike = PracticePart("main", apart=(of("", swim(sendoff=120), half="first"),))
    assert run(alike, part(swim(sendoff=120))).sheet[-1].gear_s == 0


@pytest.mark.parametrize(("talk", "gear_s"), [(None, 20), (5, 15), (20, 0), (30, 0)])
def test_the_talk_covers_the_change_of_gear(talk: float | None, gear_s: float) -> None:
    first, second = run(
        part(swim(sendoff=120)), part(swim(sendoff=120, gear=["fins"]), talk=talk)
    ).sheet
    assert (second.talk_s, second.change_s, second.gear_s) == (talk or 0, 0, gear_s)
    assert second.starts_s == 120 + (talk or 0) + gear_s
    assert (first.talk_s, first.gear_s, first.starts_s) == (0, 0, 0)


def test_what_is_worn_stays_on_through_a_pause() -> None:
    fins = part(swim(sendoff=120, gear=["fins"]))
    rows = run(fins, part({"pause": 60}), fins, part(swim(sendoff=120))).sheet
    assert [row.gear_s for row in rows] == [0, 0, 0, 20]


# Who comes late may join where a part begins gently: easy is, and so is what counts as it.


def joins(*written: dict[str, Any], **drill: Any) -> bool:
    practice = practice_of(part(*written))
    (row,) = summarised(practice, club(practice, replace(DRILLS["crawl"], **drill))).sheet
    assert row.run.word == "main"
    return bool(row.joins)


def test_late_joining() -> None:
    easy, hard = swim(effort="easy", sendoff=200), swim(effort="all-out", sendoff=200)
    assert joins(easy) and joins(easy, hard)  # what comes later may be hard
    assert not joins(hard, easy) and not joins({"pause": 60})
    assert not joins(easy, mode="underwater")
    assert not joins(easy, swim(gear=["socks"], effort="easy", sendoff=200))
    assert joins(swim(gear=["fins"], effort="easy", sendoff=200))
    # easy and steady are the two easiest: both are gentle
    assert joins(swim(effort={"build": ["easy", "steady"]}, sendoff=200))
    built = {"build": ["easy", "all-out"]}
    assert not joins(swim(effort=built, sendoff=200))
    for parts in ([easy, hard], [hard, easy]):
        pieces = [{k: own[k] for k in ("distance", "do", "effort")} for own in parts]
        assert not joins({"reps": 1, "parts": pieces, "sendoff": 400})
    # each lane group begins gently, whoever does nothing
    assert joins(swim(effort="easy", sendoff=200, by_group={"slow": {"reps": 0}}))
    assert not joins(swim(effort="easy", sendoff=200, by_group={"slow": {"reps": 0}}), hard)


def test_the_talk_of_lists_apart_goes_before_the_first_part_of_each() -> None:
    items = structure_items([swim(sendoff=120)])
    two = (PartOfSome("main", items=items), PartOfSome("main", items=items, talk=15))
    lists = tuple(ListOfSome(two, (group,)) for group in ("quick", "slow"))
    rows = run(PracticePart("main", apart=lists, talk=60)).sheet
    assert [(row.talk_s, row.starts_s) for row in rows] == [(60, 60)] * 2 + [(15, 195)] * 2


def test_stations_are_not_for_all_though_one_group_does_them_alone() -> None:
    items = structure_items([swim(sendoff=120)])
    stations = (Station(items=items, begins=("quick",)), Station(items=items))
    rows = run(PracticePart("main", stations=stations, change=20)).sheet
    assert [(row.stage.turn, row.is_for_all, row.change_s) for row in rows] == [
        (1, False, 0),
        (2, False, 20),
    ]
    assert rows[1].starts_s == 140
