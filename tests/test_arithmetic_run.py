"""What a run is made of: blocks laid end to end, where one is after leaving some out, who goes
together, and what warms up and ends easily. All of it laid out by hand.

osprey-1 has 14 heads in 3 lanes, so 5 in the fullest, 5 s apart and on the back 10. To change fins
takes 20 s.
"""

from __future__ import annotations

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest
from arithmetic_plans import club, part, practice_of, run, summarised, swim
from arithmetic_world import SCALE, SHORT, YARDS, clock, events, group
from test_arithmetic_run_sheet import of

from almanac.arithmetic.leaving_out import comes_home, step_home
from almanac.arithmetic.run_blocks import (
    RepsBlock,
    RoundsBlock,
    WaitBlock,
    WaitReason,
    home_s,
    run_blocks,
)
from almanac.arithmetic.run_crews import key_of, run_crews
from almanac.arithmetic.warm_and_easy import effort_words_of, ending, opening
from almanac.model.practice import PracticePart
from almanac.units import COURSES, LAND


def kick(reps: int, distance: int = 50, **more: Any) -> dict[str, Any]:
    return {"reps": reps, "distance": distance, "do": "kick", "effort": "strong", **more}


def told(blocks: Any) -> list[Any]:
    """Blocks in short: reps by (first, how many, what each takes), waits by (seconds, why), rounds
    by lists.
    """
    found: list[Any] = []
    for block in blocks:
        if isinstance(block, RepsBlock):
            found.append((block.first, len(block.reps), *sorted(set(block.every_s))))
        elif isinstance(block, WaitBlock):
            found.append((block.seconds, block.why))
        else:
            assert isinstance(block, RoundsBlock)
            found.append({block.path: [told(own) for own in block.rounds], "s": block.between_s})
    return found


def blocks(*items: dict[str, Any], of_group: Any = None) -> Any:
    laid = events(*items)
    return run_blocks(laid, clock(of_group).run(laid))


def test_reps_of_one_item_are_one_block_and_a_pause_is_a_wait() -> None:
    found = blocks(kick(2, sendoff=75), {"pause": 60, "note": "Water"}, kick(3, sendoff=80))
    assert told(found) == [(0, 2, 75), (60, WaitReason.PAUSE), (2, 3, 80)]
    assert (found[1].note, found[1].change) == ("Water", None)
    assert blocks({"pause": 5})[0].note == ""
    assert [own.rep.number for own in found[2].reps] == [1, 2, 3]


def test_rounds_hold_their_blocks_and_the_gear_that_no_pause_covers() -> None:
    """Fins go on in the pause of 30 between rounds, and off within each of them, which costs 20."""
    rounds = {
        "rounds": 2,
        "pause_between": 30,
        "items": [kick(2, 25, gear=["fins"], sendoff=50), kick(1, sendoff=80)],
    }
    found = blocks(kick(1, 25, gear=["fins"], sendoff=50), rounds, {"pause": 10})
    first = [(1, 2, 50), (20, WaitReason.GEAR), (3, 1, 80)]
    second = [(4, 2, 50), (20, WaitReason.GEAR), (6, 1, 80)]
    assert told(found) == [
        (0, 1, 50), {("items", 1): [first, second], "s": 30}, (10, WaitReason.PAUSE),
    ]  # fmt: skip
    change = found[1].rounds[0][1].change
    assert found[1].rounds[0][1].note == ""
    assert (change.off, change.on, change.at_far_end) == ({"fins"}, set(), True)


def test_a_pause_covers_as_much_as_it_lasts_of_what_gear_costs() -> None:
    found = blocks({**kick(3, sendoff=90), "gear": ["fins"]}, {"pause": 5}, kick(2, sendoff=90))
    assert told(found) == [(0, 3, 90), (5, WaitReason.PAUSE), (15, WaitReason.GEAR), (3, 2, 90)]


def test_gear_that_changes_between_two_reps_of_an_item_parts_its_block() -> None:
    """In turn a drill without gear and one that needs socks: to change costs 30 each time."""
    turns = {"reps": 3, "distance": 50, "do": {"rotate": ["kick", "socks-kick"]}, "effort": "easy"}
    found = blocks({**turns, "sendoff": 120})
    assert told(found) == [
        (0, 1, 120), (30, WaitReason.GEAR), (1, 1, 120), (30, WaitReason.GEAR), (2, 1, 120),
    ]  # fmt: skip


def test_rounds_in_rounds_are_put_together_again() -> None:
    inner = {"rounds": 2, "pause_between": 10, "items": [kick(1, sendoff=75)]}
    outer = {"rounds": 2, "items": [inner, {"pause": 15}, kick(2, sendoff=80)]}
    path = ("items", 0, "items", 0)
    each = [
        [{path: [[(0, 1, 75)], [(1, 1, 75)]], "s": 10}, (15, WaitReason.PAUSE), (2, 2, 80)],
        [{path: [[(4, 1, 75)], [(5, 1, 75)]], "s": 10}, (15, WaitReason.PAUSE), (6, 2, 80)],
    ]
    assert told(blocks(outer)) == [{("items", 0): each, "s": 0}]


def test_what_has_no_time_takes_nobody_knows_how_long() -> None:
    (block,) = blocks({**kick(2), "do": "crawl"})
    assert block.every_s == (None, None)
    assert home_s(block.reps[0]) is None


def test_the_last_of_the_lane_is_home_behind_all_gaps() -> None:
    """On the back 4 gaps of 10, on the front 4 of 5, and then the swim itself."""
    swims = {**kick(1, 100, sendoff=90), "do": "crawl"}
    tested = group({"kick-50": 45, "crawl-100": 60})
    back, front = blocks(kick(1, sendoff=90), swims, of_group=tested)
    for block, behind_s in ((back, 40), (front, 20)):
        (timed,) = block.reps
        assert home_s(timed) == pytest.approx(behind_s + timed.target_s)


@pytest.mark.parametrize(
    ("distance", "more", "course", "step"),
    [
        (50, {}, "25m", 1),
        (100, {}, "25m", 1),
        (25, {}, "25m", 2),
        (75, {}, "25m", 2),
        (50, {}, "50m", 2),
        (25, {}, "50m", 4),
        (15, {}, "50m", 0),
        (25, {}, "land", 1),
    ],
)
def test_so_many_reps_go_together_that_one_is_home(
    distance: int, more: dict[str, Any], course: str, step: int
) -> None:
    (rep,) = events(kick(1, distance, **more))
    assert step_home(rep, LAND if course == "land" else COURSES[course]) == step


def test_who_gets_back_to_the_start_or_shares_a_rep_is_home_sooner() -> None:
    (rep,) = events(kick(1, 25))
    back = replace(rep, item=replace(rep.item, manner=replace(rep.item.manner, ready_s=20.0)))
    pair = replace(rep, item=replace(rep.item, manner=replace(rep.item.manner, swimmers=2)))
    assert [step_home(own, SHORT) for own in (rep, back, pair)] == [2, 1, 1]
    assert [comes_home([own], SHORT) for own in (rep, back, pair)] == [False, True, True]
    assert comes_home([back, rep, rep], SHORT) and not comes_home([back, rep], SHORT)


def test_reps_come_home_after_an_even_number_of_lengths() -> None:
    far, back = events(kick(1, 25), kick(1, 50))
    assert comes_home([], SHORT) and comes_home([back], SHORT) and comes_home([far, far], SHORT)
    assert not comes_home([far, back], SHORT) and comes_home([far], LAND)
    assert not comes_home([back], COURSES["50m"]) and comes_home([back], YARDS)
    assert Fraction(far.distance) / SHORT.length == 1


def words(*efforts: str) -> list[frozenset[str]]:
    return [frozenset(own.split("+")) for own in efforts]


@pytest.mark.parametrize(
    ("efforts", "opens", "ends"),
    [
        (["easy", "fast"], (0, False), (1, False)),
        (["fast", "easy"], (0, True), (0, False)),
        (["strong", "fast", "easy"], (1, True), (0, False)),
        (["strong", "steady", "all-out"], (1, False), (0, True)),
        (["easy", "all-out", "steady"], (0, False), (1, True)),
        (["strong", "strong"], None, None),
        (["easy+all-out"], (0, True), (0, False)),
        ([], None, None),
    ],
)
def test_the_first_that_is_gentle_or_fast_and_the_last_that_is_easy_or_hardest(
    efforts: list[str], opens: Any, ends: Any
) -> None:
    assert opening(words(*efforts), SCALE) == opens
    assert ending(reversed(words(*efforts)), SCALE) == ends


def test_the_words_of_a_rep_are_those_of_all_its_parts() -> None:
    one, two = events(
        kick(1),
        {
            "reps": 1,
            "parts": [
                {"distance": 25, "do": "kick", "effort": "easy"},
                {"distance": 25, "do": "kick", "effort": "fast"},
            ],
        },
    )
    assert set(effort_words_of(one, SCALE)) == {"strong"}
    assert set(effort_words_of(two, SCALE)) == {"easy", "fast"}


def test_who_goes_together_is_a_lane_group_or_a_half_that_is_ever_apart() -> None:
    together = run_crews(run(part(swim(sendoff=90)), part(swim(sendoff=90))))
    assert [(own.key, [number for number, *_ in own.rows]) for own in together] == [
        ("quick", [0, 1]), ("slow", [0, 1]),
    ]  # fmt: skip
    apart = PracticePart(
        "main",
        apart=(of("", swim(sendoff=90), half="first"), of("", swim(sendoff=90), half="second")),
    )
    practice = practice_of(part(swim(sendoff=90)), apart)
    halves = run_crews(summarised(practice, club(practice)))
    assert [(own.key, [number for number, *_ in own.rows]) for own in halves] == [
        ("quick/first", [0, 1]), ("quick/second", [0, 2]),
        ("slow/first", [0, 1]), ("slow/second", [0, 2]),
    ]  # fmt: skip
    assert [(own.usual.heads, own.usual.lanes) for own in halves] == [
        (5, (1, 2)), (5, (3,)), (3, (4,)), (3, (5,)),
    ]  # fmt: skip
    assert [key_of(cell.crew) for _, _, cell in halves[0].rows] == ["quick", "quick/first"]
