"""Practices that run apart or change over, and what is in use at the same moment.

The sheet is reckoned a second time here, second by second: each lane group is a small machine that
talks, changes, swims and waits, and what is in use is counted at every second. The catalogue is
that of `arithmetic_plans`: squad osprey has `quick` (10 heads, 3 lanes) and `slow` (6 heads, 2
lanes).
"""

from __future__ import annotations

from collections import Counter
from dataclasses import replace
from random import Random
from typing import Any

import pytest
from arithmetic_plans import GROUPS, QUICK, SLOW, club, part, practice_of, run, summarised, swim
from arithmetic_world import DRILLS, PIECES
from shared import share

from almanac.arithmetic.practice_workings import practice_time, slack
from almanac.arithmetic.session_load import session_minutes
from almanac.model.entry import Helper
from almanac.model.practice import LanesInUse, ListOfSome, PartOfSome, PracticePart, Station
from almanac.model.structure import structure_items
from almanac.model.tonight import Tonight, tonight
from almanac.report.lane_words import lanes_tonight
from almanac.report.sheet_moments import cell_words, moment_words
from almanac.report.sheet_text import slack_words

CHANGE_S = {"fins": 20, "socks": 30, "chute": 45, "board": 5}
HEADS = {"quick": 10, "slow": 6}
# Who fits a send-off swims 100 m in so long, and the last of the fullest lane leaves so long after
# the leader: 4 in a lane of quick and 3 in one of slow, 5 s apart.
TARGETS = {"quick": {"": 80, "fins": 64}, "slow": {"": 100, "fins": 80}}
BEHIND = {"quick": 15, "slow": 10}


def items(quick: int, slow: int, gear: str = "", reps: int = 1) -> Any:
    """Reps on send-offs of their own for each lane group, perhaps in gear."""
    worn = {"gear": [gear]} if gear else {}
    return structure_items([swim(reps=reps, sendoff={"quick": quick, "slow": slow}, **worn)])


def some(*written: Any, talk: float | None = None, **more: Any) -> PartOfSome:
    return PartOfSome("main", items=written[0], talk=talk, **more)


def apart(quick: list[PartOfSome], slow: list[PartOfSome], **more: Any) -> PracticePart:
    return PracticePart(
        "main",
        apart=(ListOfSome(tuple(quick), ("quick",)), ListOfSome(tuple(slow), ("slow",))),
        **more,
    )


def by_group(summary: Any) -> dict[str, list[tuple[float, float, float]]]:
    """When each lane group starts each part, ends it, and how long it then waits."""
    found: dict[str, list[tuple[float, float, float]]] = {}
    for row in summary.sheet:
        for cell in row.cells:
            found.setdefault(cell.crew.name, []).append((row.starts_s, cell.ends_s, cell.waits_s))
    return found


def test_lists_that_run_apart_by_hand():
    # both: 100 s, and the last of slow is home 10 s later; then quick talks 60 s, swims until the
    # last is home 90 + 15 + 80 s later, talks 30 s and takes a send-off of 60 s that it cannot
    # hold; slow takes 120 s alone; all meet at the end
    summary = run(
        part(swim(sendoff=100)),
        apart(
            [some(items(90, 90, reps=2), talk=60), some(items(60, 60), talk=30)],
            [some(items(1, 120))],
        ),
        part(swim(sendoff=50)),
    )
    assert by_group(summary) == {
        "quick": [(0, 100, 10), (170, 355, 0), (385, 445, 0), (445, 495, 0)],
        "slow": [(0, 110, 0), (110, 230, 215), (445, 495, 0)],
    }
    waiting = [cell.waits_for.group for row in summary.sheet for cell in row.cells if cell.waits_s]
    assert waiting == ["slow", "quick"]
    assert [row.starts_s for row in summary.sheet] == [0, 110, 170, 385, 445]  # by the clock
    assert {id: own.distance.value for id, own in summary.swum.items()} == {
        "quick": 500,
        "slow": 300,
    }
    assert [found.doing.talk for found in summary.runs_of("quick")] == [None, 60, 30, None]


def test_stations_that_change_over_by_hand():
    # turn 1: quick at the first (80 s), slow at the second (200 s); change of 30 s; then crosswise
    # 30 s covers the fins that come off and go on; in the first turn the last of quick is home
    # 15 s after the leader, who is there with the send-off
    stations = (
        Station(items=items(64, 100, "fins"), place="Lanes 1 to 3."),
        Station(items=items(150, 200), led_by="head-coach"),
    )
    changing = PracticePart("main", stations=stations, change=30, talk=60)
    last = run(part(swim(sendoff=100)), changing)
    assert [(row.stage.number, row.stage.turn) for row in last.sheet] == [
        (1, None), (2, 1), (2, 1), (2, 2), (2, 2),
    ]  # fmt: skip
    summary = run(changing)
    assert by_group(summary) == {
        "quick": [(60, 139, 121), (290, 440, 0)],
        "slow": [(60, 260, 0), (290, 390, 50)],
    }
    assert [row.stage.turn for row in summary.sheet] == [1, 1, 2, 2]
    assert {need.gear: need.needed for need in summary.gear} == {"fins": 10}  # never 16
    assert summary.distance.value == 200


def test_who_begins_where_is_named():
    stations = (
        Station(items=items(80, 100), begins=("slow",)),
        Station(items=items(150, 200), begins=("quick",)),
    )
    sheet = run(PracticePart("main", stations=stations)).sheet
    assert [(row.run.path[-1], row.cells[0].group) for row in sheet] == [
        (0, "slow"), (1, "quick"), (1, "slow"), (0, "quick"),
    ]  # fmt: skip


def test_halves_of_the_lanes_have_half_of_the_heads():
    # quick: 10 heads on lanes 1 to 3: 5 on 1 and 2, 5 on 3; slow: 3 on lane 4, 3 on lane 5
    lists = (
        ListOfSome((some(items(60, 60, "fins")),), half="first"),
        ListOfSome((some(items(60, 60)),), half="second"),
    )
    summary = run(PracticePart("main", apart=lists))
    crews = {cell.crew.name: cell.crew for row in summary.sheet for cell in row.cells}
    assert {name: (crew.heads, crew.lanes) for name, crew in crews.items()} == {
        "quick, first half": (5, (1, 2)),
        "slow, first half": (3, (4,)),
        "quick, second half": (5, (3,)),
        "slow, second half": (3, (5,)),
    }
    assert [(need.gear, need.needed) for need in summary.gear] == [("fins", 8)]


# The second reckoning: lists of (gear, seconds by lane group, talk), second by second.


def machine(steps: list[tuple[str, int, int]], worn: str, begins: int) -> list[tuple[str, str]]:
    """What one lane group does in each second of a list: ("talk" or "change" or "swim", gear)."""
    seconds = []
    for gear, swims, talk in steps:
        off_and_on = {worn, gear} - {""} if worn != gear else set()
        cost = max([CHANGE_S[id] for id in off_and_on], default=0)
        wait = 0 if begins == 0 and not seconds and not steps.index((gear, swims, talk)) else cost
        before = max(talk, wait)
        seconds += [("before", "")] * before + [("swim", gear)] * swims
        worn = gear
    return seconds


def takes(group: str, gear: str, sendoff: int) -> int:
    """A part of one rep: its send-off, or until the last of the lane is home."""
    target = TARGETS[group].get(gear, 999)
    return max(sendoff, BEHIND[group] + target) if target <= sendoff else sendoff


def random_list(random: Random) -> list[tuple[str, dict[str, int], int]]:
    return [
        (
            random.choice(["", "fins", "socks"]),
            {"quick": random.randint(20, 86), "slow": random.randint(20, 86)},
            random.choice([0, 0, 15, 40]),
        )
        for _ in range(random.randint(1, 3))
    ]


@pytest.mark.parametrize("seed", share(range(400), 30))
def test_against_a_reckoning_second_by_second(seed):
    random = Random(seed)
    stages, parts = [], []
    for _ in range(random.randint(1, 3)):
        lists = {group: random_list(random) for group in HEADS}
        if random.random() < 0.5:
            turns = [{group: [lists[group][0]] for group in HEADS}]
            first, second = lists["quick"][0], lists["slow"][0]
            turns.append({"quick": [second], "slow": [first]})
            change = random.choice([0, 10, 60])
            stations = tuple(
                Station(items=items(s["quick"], s["slow"], gear), talk=talk or None)
                for gear, s, talk in (first, second)
            )
            parts.append(PracticePart("main", stations=stations, change=change or None))
            stages += [(turns[0], 0), (turns[1], change)]
        else:
            parts.append(
                apart(*([some(items(s["quick"], s["slow"], gear), talk=talk or None)
                         for gear, s, talk in lists[group]] for group in HEADS))
            )  # fmt: skip
            stages.append((lists, 0))
    busy: dict[str, list[tuple[str, str]]] = {group: [] for group in HEADS}
    worn = dict.fromkeys(HEADS, "")
    for lists, change in stages:
        now = len(busy["quick"])
        for group in HEADS:
            steps = [(gear, takes(group, gear, s[group]), talk) for gear, s, talk in lists[group]]
            if change:  # the change-over covers as the talk does
                gear, swims, talk = steps[0]
                steps[0] = (gear, swims, talk + change)
            busy[group] += machine(steps, worn[group], now)
            worn[group] = steps[-1][0]
        length = max(map(len, busy.values()))
        for seconds in busy.values():
            seconds += [("wait", "")] * (length - len(seconds))
    summary = run(*parts)
    assert max(row.ends_s for row in summary.sheet) == len(busy["quick"])
    for group, seconds in busy.items():
        swims = [number for number, (what, _) in enumerate(seconds) if what == "swim"]
        cells = [
            (row.starts_s, cell.ends_s, cell.waits_s)
            for row in summary.sheet for cell in row.cells if cell.group == group
        ]  # fmt: skip
        assert swims == [
            second for start, end, _ in cells for second in range(int(start), int(end))
        ]
        waited = sum(waits for _, _, waits in cells)
        assert waited == sum(what == "wait" for what, _ in seconds)
    most: Counter[str] = Counter()
    for moment in zip(*busy.values(), strict=True):
        at_once: Counter[str] = Counter()
        for group, (_, gear) in zip(busy, moment, strict=True):
            if gear:
                at_once[gear] += HEADS[group]
        most = most | at_once
    assert {need.gear: need.needed for need in summary.gear} == dict(most)


# Lanes and the night.


def test_lanes_of_a_part_and_lanes_out_of_use():
    lanes = LanesInUse(out_of_use=(3,), groups={"slow": (5, 6)})
    first = part(swim(sendoff=60))
    second = replace(part(swim(sendoff=60)), lanes={"quick": (1, 2, 3, 4)})
    summary = run(first, second, lanes=lanes)
    assert [[cell.crew.lanes for cell in row.cells] for row in summary.sheet] == [
        [(1, 2), (5, 6)],
        [(1, 2, 4), (5, 6)],
    ]


def test_everything_follows_what_is_otherwise_tonight():
    practice = practice_of(
        replace(part(swim(sendoff=60, gear=["fins"])), lanes={"slow": (6,)}),
        part(swim(sendoff=120)),
    )
    change = Tonight(
        heads={"quick": 4}, lanes={"slow": (1, 2)}, out_of_use=(3,), adults=2, minutes=20
    )
    summary = summarised(tonight_practice := practice, club(practice))
    assert tonight_practice is summary.practice
    other = tonight(club(practice), "evening", change)
    night = summarised(other.practices["evening"], other)
    assert (summary.gear[0].needed, night.gear[0].needed) == (16, 10)  # 4 of quick, 6 of slow
    assert [cell.crew.lanes for cell in night.sheet[0].cells] == [(1, 2), (1, 2)]
    assert night.slack_s == 20 * 60 - 60 - 20 - 120 and night.practice.adults == 2
    later = tonight(club(practice), "evening", Tonight(begins_with=2))
    assert [row.stage.number for row in summarised(later.practices["evening"], later).sheet] == [1]


# Adults and helpers, counted from drills, gear and parts.


def test_adults_are_counted_at_the_moment_that_needs_most():
    watched = replace(DRILLS["crawl"], helpers=(Helper("watcher", "lane", adult=True),))
    stations = (
        Station(items=items(60, 60), led_by="head-coach"),
        Station(items=items(60, 60), helpers=(Helper("timekeeper", "part"),)),
    )
    practice = practice_of(PracticePart("main", stations=stations))
    plain = summarised(practice, club(practice)).hands
    assert (plain.adults, plain.jobs) == (2, {"lead": 1, "coach": 1, "timekeeper": 1})
    known = club(practice, watched)
    need = summarised(practice, known).hands
    # a watcher for each lane: 3 of quick and 2 of slow, the head coach, and one at the other
    # station
    assert (need.adults, need.jobs) == (
        7,
        {"lead": 1, "coach": 1, "timekeeper": 1, "watcher": 5},
    )


def test_a_holder_for_each_cord_that_the_club_owns():
    corded = replace(PIECES["fins"], helpers=(Helper("cord-holder", "piece"),))
    practice = practice_of(part(swim(sendoff=60, gear=["fins"])))
    need = summarised(practice, club(practice, corded, owned={"fins": 3})).hands
    assert (need.adults, need.jobs) == (1, {"coach": 1, "cord-holder": 3})


def test_one_adult_at_least_is_on_deck():
    assert run(part(swim(sendoff=60))).hands.adults == 1


# Latecomers.


@pytest.mark.parametrize(
    ("written", "joins"),
    [
        (swim(effort="easy", sendoff=200), True),
        (swim(effort="all-out", sendoff=200), False),
        (swim(effort="easy", sendoff=200, gear=["socks"]), False),
        ({"pause": 60}, False),
    ],
)
def test_latecomers_join_where_a_part_begins_gently(written, joins):
    assert run(part(written)).sheet[0].joins is joins


def test_the_groups_of_other_squads_take_no_part():
    assert set(run(part(swim(sendoff=60))).groups) == set(GROUPS) - {"heron-1"}
    assert (QUICK.heads, SLOW.heads) == (10, 6)


def test_groups_that_do_the_same_in_another_order_share_one_figure():
    written = structure_items([swim(sendoff=60)]), structure_items([swim(50, sendoff=60)])
    stations = tuple(Station(items=items) for items in written)
    summary = run(PracticePart("main", stations=stations))
    assert not summary.differs and summary.distance.value == 150


# Last touch: 2 × 100 on 2:00; quick (4, 3 and 3 in a lane, 5 s apart) is home after
# 120 + 3 × 5 + 80 s, slow (3 in a lane) after 120 + 2 × 5 + 100 s; the leader's end is 240 s.


def test_the_last_touch_is_told_where_it_is_far_from_the_leaders_end():
    summary = run(part(swim(reps=2, sendoff=120)))
    cells = summary.sheet[0].cells
    gap = QUICK.gap
    assert [cell.last_touch_s for cell in cells] == [120 + 3 * gap + 80, 120 + 2 * gap + 100]
    told = [cell_words("18:00", cell) for cell in cells]
    for cell, words in zip(cells, told, strict=True):
        assert ("; last touch" in words) is (abs(cell.last_touch_s - 240) >= 10)


def test_what_comes_next_begins_when_the_last_swimmer_is_home():
    # quick is over at 80 + 15, slow at 100 + 10; then half a minute of talk
    summary = run(part(swim()), part(swim(sendoff=200), talk=30))
    assert [row.starts_s for row in summary.sheet] == [0, 140]
    assert by_group(summary)["quick"][0] == (0, 95, 15)
    assert cell_words("18:00", summary.sheet[0].cells[0]) == (
        "until 18:01:35 (last touch; the leader's clock ends 18:01:20), waits 0:15 for Osprey"
    )
    # minutes of the session run to the end of the last part, the send-off of 200 s
    assert session_minutes(summary, "quick").value == 340 / 60
    assert practice_time(summary).value == summary.ends_s == 340


def test_a_practice_is_over_when_the_last_swimmer_is_home():
    # one 100 each, on nothing: slow's leader takes 100 s, and the third of the lane leaves 10 s
    # later
    summary = run(part(swim()), minutes=2)
    assert [row.ends_s for row in summary.sheet] == [110]
    assert [(cell.clock_over_s, cell.last_touch_s) for cell in summary.sheet[0].cells] == [
        (80, 95), (100, 110),
    ]  # fmt: skip
    assert (summary.ends_s, summary.slack_s) == (110, 10)
    assert (practice_time(summary).value, slack(summary).value) == (110, 10)
    assert slack_words(summary) == "Ends at 18:01:50: 0:10 to spare in a slot of 2 minutes."


def test_gear_that_a_rep_ends_without_is_not_taken_off_again_after_it():
    # socks for the first 50 of the 100 alone, taken off at the wall: 30 s inside the rep
    parts = [{"distance": 50, "do": "crawl", "effort": "all-out", "gear": ["socks"]},
             {"distance": 50, "do": "crawl", "effort": "all-out"}]  # fmt: skip
    off = {"reps": 1, "parts": parts, "sendoff": 200}
    on = {"reps": 1, "parts": parts[::-1], "sendoff": 200}
    summary = run(part(off), part(swim(sendoff=120)), part(on), part(swim(sendoff=120)))
    # only the last: socks put on inside the rep come off after it
    assert [row.gear_s for row in summary.sheet] == [0, 0, 0, 30]


def test_each_lane_group_pays_for_its_own_change_of_gear():
    # quick goes from fins to socks (30 s), slow from nothing to nothing; all begin together again
    lists = [[some(items(60, 60, "fins"))], [some(items(60, 60))]]
    back = [[some(items(60, 60, "socks"))], [some(items(60, 60))]]
    found = by_group(run(apart(*lists), apart(*back)))
    assert [start for start, *_ in found["quick"]] == [0, 60 + 30]
    assert [start for start, *_ in found["slow"]] == [0, 60]


def test_a_crew_in_other_lanes_is_timed_in_them():
    # ten in one lane: the last leaves 45 s after the leader; slow has its own two
    other = replace(part(swim(sendoff=120)), lanes={"quick": (1,)})
    assert [cell.last_touch_s for cell in run(other).sheet[0].cells] == [45 + 80, 10 + 100]
    # two a wave: ten in a lane are five waves of 80 + 5 s, in three lanes two of 2 heads
    waves = swim(waves={"swimmers": 2})
    usual, crowded = (run(part(waves)), run(replace(part(waves), lanes={"quick": (1,)})))
    takes = [summary.sheet[0].run.clocks["quick"].clock.value for summary in (usual, crowded)]
    assert takes == [2 * 85, 5 * 85]


def test_times_after_what_is_not_known_are_told_as_the_earliest():
    catalogue = club(groups={"quick": QUICK, "slow": replace(SLOW, tests=())})
    practice = practice_of(part(swim()), part(swim(sendoff=90)), part(swim(sendoff=90)))
    summary = summarised(practice, catalogue)
    starts = [moment_words("18:00", row.starts) for row in summary.sheet]
    # quick is home after 80 + 15 s; then 1:30, and the last leaves 15 s after the leader, for 80 s
    assert starts == ["18:00:00", "from 18:01:35 on", "from 18:03:10 on"]
    assert len(set(starts)) == 3
    assert slack_words(summary) == "Ends from 18:04:45 on; when is not known."


def test_lanes_that_are_not_as_usual_are_told():
    def told(**more: Any) -> list[str]:
        return list(lanes_tonight(run(part(swim(sendoff=60)), lanes=LanesInUse(**more))))

    # quick has lanes 1 to 3, slow lanes 4 and 5
    assert told() == []
    assert told(out_of_use=(2,)) == ["lane 2 is out of use", "lanes 1 and 3 for Osprey"]
    assert told(shared=(4, 5)) == ["lanes 4 and 5 are shared with the public"]
    assert told(groups={"quick": (1, 2, 3, 6)}) == ["lanes 1, 2, 3 and 6 for Osprey"]
    assert told(groups={"slow": (4, 5, 6)}) == ["lanes 4 to 6 for Osprey"]
