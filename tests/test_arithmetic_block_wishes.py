"""What a practice is chiefly for, and what a block has of what was wished of it; by hand.

Squad osprey: `quick` swims 100 crawl in 80 s, kick 50 in 60 s.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from datetime import timedelta
from typing import Any

import pytest
from arithmetic_plans import MONDAY, block_of, club, practice_of, run, summarised, swim, whole
from arithmetic_world import BENCHMARKS, DRILLS, swim_set

from almanac.arithmetic.balance import Balance
from almanac.arithmetic.block import BlockRules, BlockSummary, summarise_block
from almanac.arithmetic.block_days import SessionPlan
from almanac.arithmetic.block_wishes import (
    GoalOfBlock,
    LoadOfBlock,
    StrokeOfBlock,
    full_load,
    goals_of,
    least_of_two_weeks,
    loads_of,
    part_of_full,
    practices_for,
    practices_wished,
    strokes_of,
    weeks_run,
)
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.practice_aims import benchmarks_run, chief_goals
from almanac.model.block import BlockWish, Day, Session, Week
from almanac.model.practice import PracticePart
from almanac.model.structure import structure_items
from almanac.report.working_text import formula


def part(word: str, *items: dict[str, Any]) -> PracticePart:
    return PracticePart(word, items=structure_items(list(items)))


def serving(*parts: PracticePart, of_set: tuple[str, ...] = ()) -> PracticeSummary:
    """A practice of which crawl serves walls, then pace and drive, backstroke serves line; and a
    set.
    """
    own = practice_of(*parts)
    drills = [
        replace(DRILLS["crawl"], goals=("walls", "pace", "drive")),
        replace(DRILLS["backstroke"], goals=("line",)),
        replace(DRILLS["kick"], goals=()),
    ]
    a_set = replace(swim_set(swim(100)), goals=of_set)
    return summarised(own, club(own, *drills, a_set))


def test_a_practice_is_for_what_a_fifth_of_the_work_serves_the_most_first() -> None:
    main = part("main", swim(100, "kick"), swim(200, "backstroke"), swim(100, reps=3))
    # 300 of crawl, 200 of backstroke, 100 of kick that serves nothing; of a drill two goals count.
    assert chief_goals(serving(main)) == ("walls", "pace", "line")
    ends = (part("warm-up", swim(400, "backstroke")), part("cool-down", swim(400, "backstroke")))
    only = part("main", swim(100))
    assert chief_goals(serving(ends[0], only, ends[1])) == ("walls", "pace")
    assert chief_goals(serving(*ends)) == ()


@pytest.mark.parametrize(("metres", "goals"), [(400, ("line", "race")), (425, ("line",))])
def test_the_goals_of_a_set_are_its_own_from_a_fifth_on(
    metres: int, goals: tuple[str, ...]
) -> None:
    """100 m of a set beside 400 are a fifth of all, beside 425 less."""
    own = serving(
        part("main", swim(metres, "backstroke")),
        PracticePart("main", set="a-set"),
        of_set=("race",),
    )
    assert chief_goals(own) == goals


def test_a_test_is_a_benchmark_by_what_is_done_and_how_far_in_its_pool() -> None:
    def found(*items: dict[str, Any], word: str = "test", pool: str = "home") -> list[str]:
        return [*benchmarks_run(BENCHMARKS, run(part(word, *items), pool=pool))]

    assert found(swim(100)) == ["crawl-100"] and found(swim(50, "kick")) == ["kick-50"]
    assert found(swim(100, "backstroke"), swim(100)) == ["back-100", "crawl-100"]
    assert found(swim(100), word="main") == found(swim(50)) == []
    assert found(swim(100, gear=["fins"])) == found(swim(100), pool="away") == []


@pytest.mark.parametrize(
    "other",
    [
        {"mode": "kick"}, {"stroke": "backstroke"}, {"kick": "dolphin"}, {"position": "supine"},
        {"gear": ("fins",)},
        {"distance": 50},
    ],
)  # fmt: skip
def test_a_benchmark_that_differs_in_one_thing_is_another(other: dict[str, Any]) -> None:
    own = BENCHMARKS["crawl-100"]
    tested = run(part("test", swim(100)))
    assert [*benchmarks_run({"one": own}, tested)] == ["one"]
    assert [*benchmarks_run({"one": replace(own, **other)}, tested)] == []
    assert [*benchmarks_run({"one": replace(own, arms="board")}, tested)] == ["one"]


WALLS = serving(part("main", swim(100)))
LINE = serving(part("main", swim(100, "backstroke")))
BOTH = serving(part("main", swim(100, "backstroke"), swim(100)))


def summed(*weeks: Mapping[str, Day] | Week, **more: Any) -> BlockSummary:
    """A block of practices by name, for `quick`."""
    rules = more.pop("rules", BlockRules())
    meet = more.pop("meet_days", ())
    practices = {"walls": WALLS, "line": LINE, "both": BOTH, "test": run(part("test", swim(100)))}
    own = block_of(*weeks, **more)
    return summarise_block(own, lambda id, on: practices[id], "quick", rules, meet_days=meet)


def days(*practices: str) -> dict[str, Day]:
    """A week of a practice a day, from Monday on, then rest."""
    names = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
    return whole({name: Day(practice=own) for name, own in zip(names, practices, strict=False)})


def test_a_goal_is_wished_of_its_share_of_the_practices_begun_ones_whole() -> None:
    """Of five practices two parts of three are 3⅓ and one part is 1⅔."""
    weeks = (days("walls", "line", "line"), days("walls", "both"))
    wish = BlockWish(goals={"walls": 2, "line": 1})
    own = goals_of(summed(*weeks, wishes=wish))
    assert [(one.goal, one.practices, one.wished) for one in own] == [
        ("walls", 5, 4),
        ("line", 5, 2),
    ]
    # Chiefly for walls are one practice of the first week and two of the second.
    assert [practices_for(one).value for one in own] == [3, 3]
    named = goals_of(summed(*weeks, goals=("drive",)))
    assert [(one.goal, one.practices, one.wished) for one in named] == [("drive", 5, 1)]
    # Without weights what serves it at all counts, a third goal of a drill too.
    assert practices_for(named[0]).value == 3
    assert practices_for(replace(named[0], whole=1)).value == 0
    assert practices_for(replace(named[0], goal="none")).value == 0
    halves = GoalOfBlock(named[0].summary, "walls", 6, 1, 2)
    assert (halves.wished, formula(practices_wished(halves))) == (3, "6 practices × 1 ÷ 2")
    thirds = replace(halves, practices=1, weight=2, whole=3)
    assert (thirds.wished, formula(practices_wished(thirds))) == (
        1, "1 practice × 2 ÷ 3, up to the next whole one",
    )  # fmt: skip


def test_each_stroke_has_its_least_share_in_some_two_weeks() -> None:
    weeks = (
        days("walls"),
        days("walls", "line", "line"),
        days("both"),
        days("walls"),
        days("line"),
    )
    rules = BlockRules(four=("freestyle", "backstroke", "butterfly"))
    wish = BlockWish(strokes=0.1)
    own = {one.stroke: one for one in strokes_of(summed(*weeks, rules=rules, wishes=wish))}
    assert list(own) == list(rules.four)
    # Weeks 1 and 2: 200 of 400 are crawl. Weeks 3 and 4: 200 of 300. The fifth has no other.
    assert [at for at, _ in own["freestyle"].pairs] == [1, 3]
    least = {stroke: least_of_two_weeks(one) for stroke, one in own.items()}
    assert least["freestyle"].value == 0.5 and own["freestyle"].least[0] == 1
    assert least["backstroke"].value == pytest.approx(1 / 3) and own["backstroke"].least[0] == 3
    assert least["butterfly"].value == 0
    assert "'in weeks 3 and 4'" in str(least["backstroke"])
    assert strokes_of(summed(*weeks, rules=rules)) == []
    assert strokes_of(summed(*weeks, rules=rules, wishes=BlockWish())) == []
    resting = summed(days(), days(), rules=rules, wishes=wish)
    assert strokes_of(resting) == []


def test_shares_are_of_what_is_swum() -> None:
    own = Balance(
        40.0, {"stroke": {"freestyle": 30.0}, "kick": {"dolphin": 10.0}}, 0, 0, 0, 0, 0, 0
    )
    assert StrokeOfBlock("freestyle", ()).share_of(own) == 0.75
    assert StrokeOfBlock("backstroke", ()).share_of(own) == 0
    assert own.dolphin_share == 0.25 and replace(own, metres=0.0).dolphin_share is None


def gym(*loads: int) -> dict[str, Day]:
    """A week of days of so many minutes at a rating of 5, and rest."""
    names = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
    each = {
        n: Day(other="gym", minutes=own, rating=5) for n, own in zip(names, loads, strict=False)
    }
    return whole(each)


def test_a_week_is_held_against_a_full_one() -> None:
    """200, 400 and 300: of the heaviest, or of a full week of 500 that the block says."""
    weeks = (gym(20, 20), gym(80), gym(60))
    own = [*loads_of(summed(*weeks, wishes=BlockWish(loads=(50, 100))))]
    assert [(one.week.number, one.wished, one.full, one.part) for one in own] == [
        (1, 50, 400, 50), (2, 100, 400, 100),
    ]  # fmt: skip
    said = summed(*weeks, wishes=BlockWish(loads=(50, 100, 60), full_load=500))
    assert [one.part for one in loads_of(said)] == pytest.approx([40, 80, 60])
    assert full_load(said) == 500 and full_load(summed(*weeks)) == 400
    assert [*loads_of(summed(*weeks))] == []
    assert [*loads_of(summed(days(), wishes=BlockWish(loads=(50,))))] == []
    assert full_load(summed(days())) == 0


def test_a_holiday_is_held_against_nothing_and_a_week_that_is_not_known_has_no_part() -> None:
    missing = {name: day for name, day in gym(60).items() if name != "sun"}
    weeks = (gym(80), whole({}), missing)
    own = [*loads_of(summed(*weeks, wishes=BlockWish(loads=(100, 50, 75))))]
    assert [(one.week.number, one.part) for one in own] == [(1, 100), (3, None)]
    assert part_of_full(own[1]) is None


def test_the_days_of_a_race_weigh_on_top() -> None:
    """Saturday is the race; on Sunday the meet goes on, of which Friday's practice is no part."""
    week = whole(
        {
            "mon": Day(other="gym", minutes=40, rating=5), "fri": Day(practice="walls"),
            "sat": Day(other="race", minutes=30, rating=9),
            "sun": Day(other="race", minutes=10, rating=9),
        }
    )  # fmt: skip
    meet = [MONDAY + timedelta(days=n) for n in (3, 4, 6)]
    wish = BlockWish(loads=(50,), full_load=1000)
    (own,) = loads_of(summed(week, wishes=wish, race_day=MONDAY + timedelta(5), meet_days=meet))
    assert [day.name for day in own.races] == ["sat", "sun"] and own.of_races == 270 + 90
    assert own.week.load and own.part == pytest.approx((own.week.load.total - 360) / 10)
    (other,) = loads_of(summed(week, wishes=wish))
    assert other.races == () and other.of_races == 0
    assert other.part == pytest.approx(other.week.load.total / 10)  # type: ignore[union-attr]
    assert LoadOfBlock(own.week, 50, 1000).races == ()


def test_a_benchmark_that_weeks_name_is_run_in_those_with_a_practice_that_tests_it() -> None:
    def week(*practices: str, tests: tuple[str, ...] = ()) -> Week:
        return Week("", days(*practices), benchmarks=tests)

    own = summed(
        week("test", "test", tests=("crawl-100",)), week("walls", tests=("kick-50", "crawl-100")),
        week("test")
    )  # fmt: skip
    assert weeks_run(own, BENCHMARKS) == {"crawl-100": [1, 3], "kick-50": []}


def test_a_session_is_booked_from_its_start_for_the_slot_of_its_practice_or_its_minutes() -> None:
    def booked(session: Session, practice: PracticeSummary | None) -> tuple[int, int] | None:
        return SessionPlan(session, practice, None, None, None).booked_s

    # 18:00 is 64 800 s; half an hour is 1800.
    assert booked(Session(practice="walls"), WALLS) == (64800, 66600)
    assert booked(Session(practice="walls", start="06:30"), WALLS) == (23400, 25200)
    assert booked(Session(other="gym", minutes=45, start="06:30"), None) == (23400, 26100)
    assert booked(Session(other="gym", minutes=45), None) is None
