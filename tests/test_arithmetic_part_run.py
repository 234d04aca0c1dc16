"""One part of a practice as each lane group swims it, and the working of when a practice is over;
by hand.

Squad osprey: `quick` swims 100 crawl in 80 s, its last leaves 15 s after the leader; `slow` in 100
s, and 10 s.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_plans import HERON, QUICK, SLOW, club, part, practice_of, run, summarised, swim
from arithmetic_world import DRILLS, SHORT, YARDS, swim_set
from test_arithmetic_land import CIRCUIT, CLOCK_S, MAT

from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.practice_workings import practice_time, slack
from almanac.arithmetic.working import Difference, Known, Labelled, Sum
from almanac.model.practice import ListOfSome, PartOfSome, PracticePart, Station
from almanac.model.structure import structure_items

SET = swim_set(swim(sendoff=120, reps=2))


def of_set(*entries: Any, pool: str = "home", own: Any = SET, **more: Any) -> PracticeSummary:
    """A practice of one set."""
    practice = practice_of(PracticePart("main", set="a-set", **more), pool=pool)
    return summarised(practice, club(practice, own, *entries))


def only(summary: PracticeSummary) -> PartRun:
    (own,) = summary.runs
    return own


def test_a_part_takes_its_clock_or_until_the_last_is_home() -> None:
    own = only(run(part(swim(reps=2, sendoff=110), talk=30)))
    # leaders 2 × 110; the last is home after 110 + 15 + 80 s, and 110 + 10 + 100
    assert [own.takes(group).value for group in ("quick", "slow")] == [220, 220]
    tight = only(run(part(swim(reps=2, sendoff=100))))
    assert [tight.takes(group).value for group in ("quick", "slow")] == [200, 210]
    assert tight.takes("slow") is tight.clocks["slow"].last_touch
    assert tight.takes("quick") is tight.clocks["quick"].clock
    assert (own.path, own.word, own.number) == (("parts", 0), "main", 0)
    assert own.doing.talk == 30 and own.swim_set is own.most_in_lane is None


def test_on_land_and_in_a_pause_the_clock_is_all() -> None:
    land, pause = only(of_set(MAT, own=CIRCUIT)), only(run(part({"pause": 60})))
    assert (land.is_in_water, pause.is_in_water) == (False, True)
    assert land.takes("quick") is land.clocks["quick"].clock
    assert (land.takes("quick").value, pause.takes("quick").value) == (CLOCK_S, 60)
    # nobody waits at a wall on land for who came last
    walked, practice = replace(DRILLS["crawl"], position="on-land"), practice_of(part(swim()))
    own = only(summarised(practice, club(practice, walked)))
    assert own.clocks["quick"].last_touch.value > own.takes("quick").value == 80
    mixed = replace(SET, items=(*SET.items, *CIRCUIT.items))
    assert only(of_set(MAT, own=mixed)).is_in_water


def test_what_cannot_be_timed_takes_nobody_knows_how_long() -> None:
    practice = practice_of(part(swim()), part(swim(sendoff=120)))
    known = club(practice, groups={"quick": replace(QUICK, tests=()), "slow": SLOW})
    rest, sendoff = summarised(practice, known).runs
    assert rest.takes("quick") is None and rest.takes("slow").value == 110
    # on a send-off the leader's clock is known
    assert sendoff.takes("quick") is sendoff.clocks["quick"].clock
    assert (rest.number, sendoff.number) == (0, 1)


def test_a_set_is_laid_into_the_pool_of_the_practice() -> None:
    home, away = only(of_set()), only(of_set(pool="away"))
    assert (home.course, away.course) == (SHORT, YARDS)
    assert (home.swim_set, home.word) == (SET, "main")
    assert only(run(part(swim()), pool="away")).course == YARDS
    assert set(home.swum) == {"quick", "slow"}


def test_a_set_says_how_many_a_lane_holds() -> None:
    few = replace(SET, most_in_lane=2)
    assert (only(of_set()).most_in_lane, only(of_set(own=few)).most_in_lane) == (None, 2)


def test_rounds_and_reps_that_are_asked_for() -> None:
    rounds = {"rounds": 2, "items": [swim(sendoff=120, reps=2)]}
    scaled = replace(SET, items=structure_items([{**rounds, "rounds_between": [1, 4]}]))
    for more, count in (({}, 4), ({"rounds": 3}, 6), ({"rounds": 9}, 4), ({"reps": 5}, 10)):
        found = only(of_set(own=scaled, **more))
        assert len(found.reps) == count, more
        assert found.takes("quick").value == 120 * count == found.takes("slow").value


def test_groups_in_other_lanes_are_timed_there_and_the_others_as_usual() -> None:
    lanes = {"quick": (1,)}  # ten in one lane: the last leaves 45 s after the leader
    for found in (
        only(of_set(lanes=lanes)),
        only(run(part(swim(sendoff=120, reps=2), lanes=lanes))),
    ):
        touches = [found.clocks[group].last_touch.value for group in ("quick", "slow")]
        assert touches == [120 + 45 + 80, 120 + 10 + 100]
        assert [crew.is_usual for crew in found.crews] == [False, True]


def test_a_variant_that_a_practice_gives_is_swum_at_the_size_that_is_written() -> None:
    own = swim_set(swim(sendoff=120, reps=2, by_variant={"B": {"reps": 3}}))
    own = replace(own, variants={"B": ()})
    found = only(of_set(own=own, variants={"slow": "B"}))
    assert [found.takes(group).value for group in ("quick", "slow")] == [240, 360]
    assert found.swim_set.items[0].by_group["slow"].reps == 3


def test_a_set_that_nobody_does_is_told_as_it_is_written() -> None:
    practice = practice_of(PracticePart("main", set="a-set"))
    own = only(summarised(practice, club(practice, SET, groups={"heron-1": HERON})))
    assert (own.crews, dict(own.swum), own.distance.value) == ((), {}, 200)


# When a practice is over.


def test_the_time_of_a_practice_is_that_of_its_slowest() -> None:
    summary = run(
        part(swim(), talk=20), part(swim(gear=["fins"], sendoff=120), talk=5), part({"pause": 60})
    )
    slow = summary.runs[0].takes("slow")
    fins, pause = (own.takes("quick") for own in summary.runs[1:])
    assert practice_time(summary) == Sum(
        (
            Known(20, "talk", "s"),
            Labelled(slow, "part 1", "s"),
            Known(5, "talk", "s"),
            Known(15, "gear", "s"),
            Labelled(fins, "part 2", "s"),
            Labelled(pause, "part 3", "s"),
        )
    )
    assert practice_time(summary).value == summary.ends_s == 20 + 110 + 20 + 120 + 60
    left = slack(summary)
    assert left == Difference(
        Known(1800, "slot", "s"), Labelled(practice_time(summary), "practice", "s")
    )
    assert left.value == summary.slack_s == 1800 - 330


def test_of_lists_apart_those_count_that_are_done_last() -> None:
    def some(sendoff: int, **more: Any) -> PartOfSome:
        return PartOfSome("main", items=structure_items([swim(sendoff=sendoff)]), **more)

    lists = (
        ListOfSome((some(120), some(120, talk=30)), ("quick",)),
        ListOfSome((some(150),), ("slow",)),
    )
    summary = run(PracticePart("main", apart=lists), part({"pause": 10}))
    told = practice_time(summary)
    assert [getattr(term, "what", "") for term in told.terms] == [
        "part 1",
        "talk",
        "part 1",
        "part 2",
    ]
    assert told.value == summary.ends_s == 120 + 30 + 120 + 10
    assert practice_time(run(PracticePart("main", apart=lists[::-1]))).value == 270


def test_changing_over_is_told_where_it_takes_time() -> None:
    items = structure_items([swim(sendoff=120)])
    stations = PracticePart("main", stations=(Station(items=items),) * 2, change=25)
    summary = run(stations)
    told = [term for term in practice_time(summary).terms if isinstance(term, Known)]
    assert told == [Known(25, "change over", "s")]
    assert practice_time(summary).value == summary.ends_s == 265


def test_a_practice_whose_end_is_not_known_has_no_time() -> None:
    practice = practice_of(part(swim()))
    known = club(practice, groups={"quick": replace(QUICK, tests=()), "slow": SLOW})
    summary = summarised(practice, known)
    assert practice_time(summary) is slack(summary) is None


@pytest.mark.parametrize(("minutes", "left"), [(2, 10), (1, -50)])
def test_what_the_slot_leaves(minutes: int, left: int) -> None:
    summary = run(part(swim(sendoff=110)), minutes=minutes)
    assert slack(summary).value == summary.slack_s == left
