"""A season: days that nothing is planned for, when tests are due, how heavy its weeks are; by
hand.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest
from arithmetic_plans import MONDAY, block_of, part, run, swim, whole
from arithmetic_world import made

from almanac.arithmetic.block import BlockRules, BlockSummary, summarise_block
from almanac.arithmetic.season_days import (
    Overdue,
    TestRules,
    last_day,
    monday_of,
    mondays,
    overdue,
    runs_of_tests,
    unplanned,
)
from almanac.arithmetic.season_weeks import after_blocks, squad_weeks
from almanac.model.block import Block, Day, Week
from almanac.model.season import Closure, Outline, Season, SquadSeason, Stretch


def on(days: int) -> date:
    """So many days after Monday, 7 September 2026."""
    return MONDAY + timedelta(days=days)


def season(first: int, last: int, *closures: tuple[int, int], terms: Any = None) -> Season:
    shut = tuple(Closure(title="", first=on(one), last=on(other)) for one, other in closures)
    term = [Stretch(title="", first=on(a), last=on(b)) for a, b in terms or [(first, last)]]
    own: Season = made(
        Season, id="year", first=on(first), last=on(last), terms=tuple(term), closures=shut
    )
    return own


def outline(first: int, last: int, *tests: str) -> Outline:
    return Outline(title="", first=on(first), last=on(last), meant="", tests=tests)


def weeks(number: int, starts: int = 0, *tests: str, **more: Any) -> Block:
    """A block of so many weeks of rest, each of which names these tests."""
    own = [Week("", whole({}), benchmarks=tests) for _ in range(number)]
    return block_of(*own, starts=on(starts), **more)


def test_a_block_ends_on_the_sunday_of_its_last_week() -> None:
    assert last_day(weeks(1)) == on(6) and last_day(weeks(3, 7)) == on(27)
    assert monday_of(on(0)) == monday_of(on(6)) == on(0) and monday_of(on(7)) == on(7)


def test_every_monday_from_the_week_in_which_a_season_begins() -> None:
    assert list(mondays(season(2, 13))) == [on(0), on(7)]
    assert list(mondays(season(0, 14))) == [on(0), on(7), on(14)]


@pytest.mark.parametrize(
    ("of", "blocks", "outlines", "bare"),
    [
        (season(0, 27), [weeks(1)], [], [(7, 27)]),
        (season(0, 27), [], [outline(7, 13)], [(0, 6), (14, 27)]),
        (season(0, 27), [weeks(2)], [outline(14, 27)], []),
        (season(0, 27, (20, 21)), [weeks(2)], [], [(14, 19), (22, 27)]),
        (season(0, 27, terms=[(0, 3), (10, 12)]), [], [], [(0, 3), (10, 12)]),
        (season(0, 0), [], [], [(0, 0)]), (season(0, 13, terms=[(-7, 20)]), [], [], [(0, 13)]),
        (season(0, 15), [weeks(1), weeks(1, 8)], [], [(7, 7), (15, 15)]),
    ],
)  # fmt: skip
def test_term_days_that_no_block_and_no_outline_holds(
    of: Season, blocks: list[Block], outlines: list[Outline], bare: list[tuple[int, int]]
) -> None:
    own = SquadSeason(aim="", outlines=tuple(outlines))
    assert list(unplanned(of, own, blocks)) == [(on(one), on(other)) for one, other in bare]


def rules(today: int, *known: int, every: int = 4) -> TestRules:
    return TestRules({"kick": every}, {"kick": [on(day) for day in known]}, on(today))


@pytest.mark.parametrize(
    ("blocks", "outlines", "known", "today", "days"),
    [
        ([weeks(3, 0, "kick")], [], [], 0, [0, 7, 14]),
        ([weeks(3, 0, "kick")], [], [], 6, [0, 7, 14]),
        ([weeks(3, 0, "kick")], [], [], 7, [7, 14]), ([weeks(3, 0, "pull")], [], [], 0, []),
        # In an outline on its first day and every four weeks after it.
        ([], [outline(7, 63, "kick")], [], 0, [7, 35, 63]),
        ([], [outline(7, 62, "kick")], [], 0, [7, 35]),
        ([], [outline(7, 63)], [], 0, []),
        ([weeks(1, 0, "kick")], [outline(6, 20, "kick")], [], 0, [0]),
        ([weeks(1, 0, "kick")], [outline(7, 20, "kick")], [], 0, [0, 7]),
        ([weeks(2, 14, "kick")], [], [3, 9], 14, [3, 14, 21]),
        ([weeks(2, 14, "kick")], [], [-1, 0, 70, 71], 14, [0, 14, 21, 70]),
        ([weeks(1, 35, "kick")], [outline(7, 20, "kick")], [], 0, [7, 35]),
    ],
)  # fmt: skip
def test_a_benchmark_is_run_where_it_was_and_from_this_week_on_where_it_is_planned(
    blocks: list[Block], outlines: list[Outline], known: list[int], today: int, days: list[int]
) -> None:
    own = SquadSeason(aim="", outlines=tuple(outlines), tests=("kick",))
    found = runs_of_tests(season(0, 70), own, blocks, rules(today, *known))
    assert found == {"kick": [on(day) for day in days]}
    assert runs_of_tests(season(0, 70), replace(own, tests=()), blocks, rules(today)) == {}
    unknown = replace(rules(today), known={})
    assert runs_of_tests(season(0, 70), SquadSeason(aim="", tests=("kick",)), [], unknown) == {
        "kick": []
    }


@pytest.mark.parametrize(
    ("runs", "today", "shut", "late", "due"),
    [
        # Due 28 days after the season began, and after each time; 7 days late is not late yet.
        ([28, 56], 0, [], 7, []), ([35], 0, [], 7, [(63, None)]), ([36, 60], 0, [], 7, [(28, 36)]),
        ([], 0, [], 7, [(28, None)]),
        ([36, 60], 28, [], 7, [(28, 36)]), ([36, 60], 29, [], 7, []), ([36, 60], 0, [], 8, []),
        ([36, 60], 0, [], 7.9, [(28, 36)]),
        # Nobody trains on two days before it is due, or on two after.
        ([37, 60], 0, [(10, 11)], 7, []), ([38, 60], 0, [(10, 11)], 7, [(30, 38)]),
        ([37, 60], 0, [(30, 31)], 7, []),
        ([38, 60], 0, [(30, 31)], 7, [(28, 38)]),
    ],
)  # fmt: skip
def test_a_benchmark_is_overdue_where_it_is_run_too_late_or_never_again(
    runs: list[int], today: int, shut: list[tuple[int, int]], late: float, due: list[Any]
) -> None:
    of = season(0, 83, *shut)
    days = {"kick": [on(day) for day in runs]}
    found = list(overdue(of, days, rules(today), late))
    told = [Overdue("kick", on(one), None if other is None else on(other)) for one, other in due]
    assert found == told


def summed(own: Block, load: float = 0) -> BlockSummary:
    """A block whose practices are as long as they are."""
    own_run = run(part(swim(reps=1)))
    return summarise_block(own, lambda id, day: own_run, "quick", BlockRules(load))


def loaded(*minutes: int | None, starts: int = 0, **more: Any) -> Block:
    """Weeks of one day of so many minutes at a rating of 5; None for a day that is missing."""
    each = []
    for own in minutes:
        day = Day(other="gym", minutes=own or 10, rating=5)
        days = whole({"tue": day}) if own is not None else {"tue": day}
        each.append(Week("", days))
    return block_of(*each, starts=on(starts), **more)


def test_a_week_is_as_heavy_as_it_is_beside_the_heaviest() -> None:
    """Loads of 500, 300 and 260: ten, six and five tenths; of a week with a day that is missing
    none is known.
    """
    first, second = loaded(100, 60, id="one"), loaded(52, None, starts=14, id="two")
    third = loaded(10, starts=28, id="three")
    own = SquadSeason(aim="", outlines=(outline(37, 40), outline(49, 55)))
    found = squad_weeks(
        season(0, 55), own, [first, second, third], {"one": summed(first), "two": summed(second)}
    )
    assert [week.step for week in found] == [10, 6, 5, 0, 0, 0, 0, 0]
    assert [week.load for week in found[:4]] == [500, 300, 260, None]
    assert [week.block and week.block.id for week in found[:5]] == [
        "one",
        "one",
        "two",
        "two",
        "three",
    ]
    assert [week.week and week.week.number for week in found[:5]] == [1, 2, 1, 2, None]
    assert [week.outline for week in found[5:]] == [own.outlines[0], None, own.outlines[1]]
    assert found[5].block is None and found[0].outline is None
    assert squad_weeks(season(0, 6), own, [], {})[0].step == 0


def test_a_block_lies_after_the_one_before_it() -> None:
    first, second = loaded(100, 60, id="one"), loaded(40, starts=14, id="two")
    third = loaded(40, starts=35, id="three")
    blocks = [first, second, third]
    summaries = {own.id: summed(own) for own in blocks}
    (_, none), (own, near), (_, far) = after_blocks(blocks, summaries)
    assert none is None and own is second
    assert near and near.before is first and (near.days, near.weeks) == (0, 0)
    # 200 beside the mean of 500 and 300: half of it.
    assert near.change and near.change.value == pytest.approx(-0.5)
    assert far and far.before is second and (far.days, far.weeks) == (14, 2) and far.change is None
    without = [after for _, after in after_blocks(blocks, {"two": summaries["two"]})]
    assert without[1] and without[1].change is None


@pytest.mark.parametrize(("gap", "has"), [(-1, False), (0, True), (6, True), (7, False)])
def test_a_change_is_told_where_less_than_a_week_lies_between(gap: int, has: bool) -> None:
    first, second = loaded(100, 60, id="one"), loaded(40, starts=14 + gap, id="two")
    summaries = {own.id: summed(own) for own in (first, second)}
    _, (_, after) = after_blocks([first, second], summaries)
    assert after and after.days == gap and (after.change is not None) == has
