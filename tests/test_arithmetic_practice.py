"""Practices on the clock: who starts and ends when, what changing gear costs, who waits, what is
carried.

Worked by hand. Squad osprey: `quick` swims 100 crawl in 80 s, `slow` in 100 s. Fins take 20 s to
change and 0.8 of the time, socks 30 s and 1.08, a chute 45 s, a board 5 s. All out is rated 9.5,
easy 1.5 and 0.72 of best speed.
"""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import pytest
from arithmetic_plans import (
    EASY_SOCKS,
    GROUPS,
    HERON,
    QUICK,
    SLOW,
    club,
    evening,
    part,
    practice_of,
    run,
    summarised,
    swim,
)
from arithmetic_world import HAZARD, SHORT, YARDS, group, swim_set

from almanac.arithmetic.gear_needs import gear_needs
from almanac.arithmetic.session_load import (
    mean_rating,
    planned_load,
    session_minutes,
    session_rating,
)
from almanac.arithmetic.stages import beginners
from almanac.arithmetic.working import Known
from almanac.model.entry import Hazard
from almanac.model.practice import ListOfSome, PartOfSome, PracticePart, Station
from almanac.model.structure import structure_items
from almanac.report.sheet_text import halves_words
from almanac.report.working_text import formula


def test_the_run_sheet_of_an_evening_by_hand():
    # part   talk  gear                            starts  quick takes             slow takes 2 ×
    # 100 60   none                                60  2 × 120                 2 × 120 fins      0
    # on: 20                        300 + 20  80 × 0.8 + 15 = 79      100 × 0.8 + 10 = 90 socks
    # 15   off 20, on 30: 30 - 15      410 + 30  150                     150 pause     0   none
    # 590  60                      60 a-set     0   socks stay on                     650  80 × 1.08
    # / 0.72 + 15  100 × 1.08 / 0.72 + 10 The 15 and the 10 are until the last of the lane is home
    # (4 and 3 in it, 5 s apart); they count where they are more than what the clock leaves: the
    # a-set's rest of 10 s is slow's, not quick's.
    sheet = evening().sheet
    assert [row.talk_s for row in sheet] == [60, 0, 15, 0, 0]
    assert [row.gear_s for row in sheet] == [0, 20, 15, 0, 0]
    assert [row.starts_s for row in sheet] == pytest.approx([60, 320, 440, 590, 650])
    assert [row.ends_s for row in sheet] == pytest.approx([300, 410, 590, 650, 810])
    ends = {
        group: [row.cells[place].ends_s for row in sheet]
        for place, group in enumerate(("quick", "slow"))
    }
    waits = [[cell.waits_s for cell in row.cells] for row in sheet]
    assert [cell.group for cell in sheet[0].cells] == list(ends)
    assert ends["quick"] == pytest.approx([300, 399, 590, 650, 785])
    assert ends["slow"] == pytest.approx([300, 410, 590, 650, 810])
    assert [slow for _, slow in waits] == pytest.approx([0] * 5)
    assert [quick for quick, _ in waits] == pytest.approx([0, 11, 0, 0, 25])
    assert [row.run.doing for row in sheet] == list(evening().practice.parts)


@pytest.mark.parametrize(
    ("minutes", "slack"), [(30, 990), (14, 30), (13, -30)]
)  # 60 s to the minute, less 810 s
def test_slack_is_what_the_slot_leaves(minutes, slack):
    summary = evening(minutes=minutes)
    assert summary.ends_s == pytest.approx(810)
    assert summary.slack_s == pytest.approx(slack)


# Reps weighted by their clock: all out (9.5) 2 × 120, the 100 in fins as it is swum, 150 s; then
# easy (1.5).
QUICK_RATING = ((240 + 64 + 150) * 9.5 + 130 * 1.5) / (240 + 64 + 150 + 130)
SLOW_RATING = ((240 + 80 + 150) * 9.5 + 160 * 1.5) / (240 + 80 + 150 + 160)


def test_distance_and_load_of_an_evening():
    summary = evening()
    assert summary.distance.value == summary.metres == 500
    # the first start is after a minute of talk; the fifth part begins at 650 s. Quick swims it in
    # 120 s at easy, and the last of the lane is home 15 s later; slow in 150 + 10
    assert planned_load(summary, "quick").value == pytest.approx((785 - 60) / 60 * QUICK_RATING)
    assert planned_load(summary, "slow").value == pytest.approx((810 - 60) / 60 * SLOW_RATING)
    # a rating that the coach states stands in place of the reps'
    assert planned_load(summary, "quick", 4).value == pytest.approx((785 - 60) / 60 * 4)
    assert session_minutes(summary, "slow").value == pytest.approx(750 / 60)  # never the slot of 30
    assert len(summary.reps) == len(summary.pieces) == 5
    assert tuple(summary.groups) == ("quick", "slow")  # heron is another squad


WAYS_TO_CHANGE = [  # gear of each part; seconds that changing costs before each; talk before each
    ([["fins"], ["fins"]], [0, 0], [0, 0]),  # what the first part wears is put on before the slot
    ([[], ["fins"]], [0, 20], [0, 0]),
    ([["fins"], []], [0, 20], [0, 0]),  # taking off costs the same
    ([["fins"], ["socks"]], [0, 30], [0, 0]),  # at once: the longest of what goes on and off
    ([["fins", "board"], ["fins"]], [0, 5], [0, 0]),  # what stays on costs nothing
    ([["fins"], ["chute"], []], [0, 45, 45], [0, 0, 0]),
    ([[], ["socks"]], [0, 20], [0, 10]),  # the talk covers its own length
    ([[], ["socks"]], [0, 0], [0, 30]),
    ([[], ["socks"]], [0, 0], [0, 31]),
    ([["board"], ["beeper"]], [0, 5], [0, 0]),
]


@pytest.mark.parametrize(("worn", "costs", "talks"), WAYS_TO_CHANGE)
def test_changing_gear_between_parts_costs_what_the_talk_does_not_cover(worn, costs, talks):
    parts = [
        part(swim(gear=gear, sendoff=120) if gear else swim(sendoff=120), talk=talk or None)
        for gear, talk in zip(worn, talks, strict=True)
    ]
    summary = run(*parts)
    assert [row.gear_s for row in summary.sheet] == costs
    assert summary.ends_s == 120 * len(worn) + sum(costs) + sum(talks)


def test_gear_of_the_last_rep_and_of_the_first_are_compared():
    bare, finned = swim(sendoff=120), swim(sendoff=120, gear=["fins"])
    summary = run(part(finned, bare), part(bare, finned), part({"pause": 30}), part(finned))
    assert [row.gear_s for row in summary.sheet] == [0, 0, 0, 0]
    # inside parts 1 and 2 the change of 20 s belongs to the part's own clock
    assert [row.starts_s for row in summary.sheet] == [0, 260, 520, 550]


def test_a_group_without_a_time_is_left_out_and_the_end_is_not_known():
    untested = replace(SLOW, tests=())
    catalogue = club(groups={"quick": QUICK, "slow": untested})
    practice = practice_of(part(swim(sendoff=120)), part(swim()), part(swim(sendoff=120)))
    summary = summarised(practice, catalogue)
    assert [row.ends_s for row in summary.sheet] == [120, None, None]
    assert [row.starts_s for row in summary.sheet] == [0, 120, None]
    # 215 is when the last of quick is home, and slow, whoever it is, has not swum 100 m in under
    # 100 / 3.5 s
    assert [row.starts.s for row in summary.sheet] == [0, 120, 215]
    cells = [[(cell.ends_s, cell.waits_s) for cell in row.cells] for row in summary.sheet]
    assert cells == [[(120, 0), (120, 0)], [(215, None), (None, None)], [(None, None)] * 2]
    assert summary.ends.s == 335
    (missing,) = summary.ends.missing
    assert (missing.path, missing.group) == (("parts", 1), "slow")
    assert [reason.benchmark for reason in missing.reasons] == ["crawl-100"]
    assert summary.ends_s is None and summary.slack_s is None
    assert planned_load(summary, "slow") is None
    assert session_rating(summary, "quick").value == 9.5
    # quick's own minutes stand on when slow is done, and that is not known
    assert session_minutes(summary, "quick") is None
    assert planned_load(summary, "quick", 7) is None  # whatever is stated, its length is not known


def test_where_no_group_has_a_time_the_next_part_never_starts_at_the_same_second():
    untested = replace(QUICK, tests=())
    summary = summarised(
        practice_of(part(swim(), talk=30), part(swim(sendoff=90))), club(groups={"quick": untested})
    )
    assert [(row.starts_s, row.ends_s) for row in summary.sheet] == [(30, None), (None, None)]
    starts = [row.starts.s for row in summary.sheet]
    assert starts == pytest.approx([30, 30 + 100 / 3.5])
    assert summary.ends.s == pytest.approx(30 + 100 / 3.5 + 90)


def test_a_practice_of_pauses_has_no_load_to_miss():
    summary = run(part({"pause": 30}))
    assert planned_load(summary, "quick").value == 0
    assert session_minutes(summary, "quick") == Known(0, "min")
    assert session_rating(summary, "quick") == Known(0, "rating")
    assert summary.distance.value == 0


# Gear to carry: quick has 10 heads on 3 lanes, slow 6 on 2; heron does not swim with them. With at
# most 3 in a lane, 3 × 3 = 9 of quick and all 6 of slow use it at once; with at most 2, 6 and 4;
# with at most 5, no more than there are: 10 and 6.


@pytest.mark.parametrize(
    ("most_in_lane", "needed"), [(None, 16), (5, 16), (4, 16), (3, 15), (2, 10), (1, 5)]
)
def test_heads_that_use_gear_at_once(most_in_lane, needed):
    own = replace(swim_set(swim(gear=["fins"])), most_in_lane=most_in_lane)
    practice = practice_of(PracticePart("main", set="a-set"))
    (need,) = summarised(practice, club(practice, own)).gear
    assert (need.gear, need.needed, need.owned) == ("fins", needed, 12)
    assert need.short == max(0, needed - 12)


def test_the_most_of_all_parts_is_carried_once():
    few = replace(swim_set(swim(gear=["fins", "chute"])), most_in_lane=1)
    practice = practice_of(
        PracticePart("main", set="a-set"), part(swim(gear=["fins"]), swim(gear=["socks"]))
    )
    needs = {need.gear: need for need in summarised(practice, club(practice, few)).gear}
    assert {gear: (need.needed, need.owned, need.short) for gear, need in needs.items()} == {
        "chute": (5, None, 5),  # nobody says how many the club has
        "fins": (16, 12, 4),
        "socks": (16, 16, 0),
    }


def test_the_most_of_all_parts_is_carried_whichever_comes_first():
    few = replace(swim_set(swim(gear=["fins"])), most_in_lane=1)
    practice = practice_of(part(swim(gear=["fins"])), PracticePart("main", set="a-set"))
    (need,) = summarised(practice, club(practice, few)).gear
    assert need.needed == 16


def test_gear_of_nobody():
    assert list(gear_needs((), {})) == []


def test_a_set_of_metres_laid_into_a_pool_of_yards():
    # 4 × 50 on 1:00 are swum on 60 × 0.9144 = 54.864, up to 55 s
    own = swim_set(swim(50, reps=4, sendoff=60))
    practice = practice_of(
        PracticePart("main", set="a-set"), part(swim(50, sendoff=60)), pool="away"
    )
    summary = summarised(practice, club(practice, own))
    assert [row.ends_s for row in summary.sheet] == [
        220,
        280,
    ]  # items in place are written for the pool
    assert summary.distance.value == 250 and summary.metres == pytest.approx(228.6)
    assert [found.swim_set and found.swim_set.course for found in summary.runs] == [SHORT, None]
    assert summary.pool.course == YARDS


def test_reps_that_do_not_fit_the_pool_are_told_by_part():
    own = swim_set(swim(75))
    practice = practice_of(PracticePart("main", set="a-set"), part(swim(60), swim(50)))
    first, second = summarised(practice, club(practice, own)).runs
    assert first.misfits == ()
    assert [(found.path, found.distance, found.nearest) for found in second.misfits] == [
        (("items", 0), 60, 50)
    ]


def test_most_in_lane_comes_from_the_set():
    own = replace(swim_set(swim()), most_in_lane=4)
    practice = practice_of(PracticePart("main", set="a-set"), part(swim()))
    assert [found.most_in_lane for found in summarised(practice, club(practice, own)).runs] == [
        4,
        None,
    ]


def test_the_brief_of_a_practice_holds_its_own_hazards_those_of_its_sets_gear_and_drills():
    ropes, cold = Hazard("rope", control="Gloves."), Hazard("cold", control="Keep moving.")
    own = replace(EASY_SOCKS, hazards=(cold, ropes))
    practice = practice_of(PracticePart("main", set="a-set"), part(swim()), hazards=(ropes,))
    lines = summarised(practice, club(practice, own)).brief
    assert [(line.hazard, line.control, line.ids) for line in lines] == [
        (HAZARD.hazard, "Mind the wall.", ("socks", "crawl")),  # the gravest; gear before drills
        ("rope", "Mind the rope.", ("evening", "a-set")),  # of those alike the practice's own
        ("cold", "Mind the cold.", ("a-set",)),
    ]


def test_shares_and_facets_of_a_practice():
    summary = run(
        part(swim(100, "kick", "strong"), swim(100, "board-kick", "fast")),
        part(swim(200, "socks-kick", "all-out"), swim(400, "backstroke", "easy")),
    )
    assert {word: float(metres) for word, metres in summary.by["gear"].items()} == {
        "none": 500, "board": 100, "socks": 200,
    }  # fmt: skip
    shares = summary.shares
    assert [shares.kick, shares.supine_flutter, shares.resisted, shares.fast] == [
        0.5,
        0.75,
        0.25,
        0.375,
    ]
    assert all(sum(split.values()) == 800 for split in summary.by.values())


def test_another_squad_is_timed_alone():
    practice = practice_of(part(swim()), squad="heron")
    summary = summarised(practice, club(practice, groups={**GROUPS, "heron-1": HERON}))
    assert tuple(summary.groups) == ("heron-1",)
    assert [cell.group for cell in summary.sheet[0].cells] == ["heron-1"]


def test_heads_share_the_fullest_lane():
    few = replace(swim_set(swim(gear=["fins"])), most_in_lane=3)
    practice = practice_of(PracticePart("main", set="a-set"))
    alone = {"one": group(heads=7, lanes=3)}
    (need,) = summarised(practice, club(few, groups=alone, owned={})).gear
    assert (need.needed, need.short) == (
        7,
        7,
    )  # the fullest lane has 3, three lanes hold 9, but there are 7


# A part that asks for fewer or more rounds or reps of its set than are written.


def rounds_of(rounds: int, reps: int) -> dict[str, Any]:
    inner = swim(50, effort="easy", reps=reps, sendoff=70, gear=["fins"])
    return {"rounds": rounds, "pause_between": 30, "items": [inner], "rounds_between": [1, 6]}


@pytest.mark.parametrize(
    ("rounds", "reps"), [(None, None), (2, None), (5, None), (None, 6), (4, 1)]
)
def test_a_set_in_a_part_has_the_rounds_that_the_part_asks_for(rounds, reps):
    written, asked = (rounds_of(3, 4), rounds_of(rounds or 3, reps or 4))
    practice = practice_of(PracticePart("main", set="a-set", rounds=rounds, reps=reps))
    own = summarised(practice, club(practice, swim_set(written)))
    same = practice_of(PracticePart("main", set="a-set"))
    other = summarised(same, club(same, swim_set(asked)))
    # rounds × reps × 50 m; each rep 70 s, and 30 s between rounds
    count = (rounds or 3) * (reps or 4)
    assert own.distance.value == other.distance.value == 50 * count
    assert own.ends_s == other.ends_s >= 70 * count + 30 * ((rounds or 3) - 1)
    assert planned_load(own, "quick").value == planned_load(other, "quick").value
    assert own.gear == other.gear or [need.needed for need in own.gear] == [16]
    assert len(own.reps) == count


def test_what_a_set_cannot_be_asked_for_stays_as_it_is_written():
    for asked in ({"rounds": 7}, {"rounds": 1, "reps": 200}):
        practice = practice_of(PracticePart("main", set="a-set", **asked))
        summary = summarised(practice, club(practice, swim_set(rounds_of(3, 4))))
        assert summary.distance.value == 600


def test_rounds_are_asked_for_with_variants_and_in_another_course():
    own = replace(
        swim_set({"rounds": 3, "items": [swim(50, by_variant={"A": {"distance": 100}})]}),
        variants={"A": ()},
    )
    asked = PracticePart("main", set="a-set", rounds=2, variants={"quick": "A"})
    practice = practice_of(asked)
    summary = summarised(practice, club(practice, own))
    assert [summary.of(group).distance.value for group in ("quick", "slow")] == [200, 100]
    away = practice_of(PracticePart("main", set="a-set", rounds=2), pool="away")
    assert summarised(away, club(away, own)).distance.value == 100


def test_halves_that_do_different_things_are_told():
    def half(which: str, distance: int) -> ListOfSome:
        items = structure_items([swim(distance, sendoff=200)])
        return ListOfSome((PartOfSome(part="main", items=items),), half=which)

    apart = run(
        part(swim(sendoff=200)),
        PracticePart("main", apart=(half("first", 100), half("second", 50))),
    )
    assert apart.halved == ("quick", "slow")
    assert apart.distance.value == 200  # of the first half
    # what limits are held against knows the second halves too, each 100 and then 50
    assert sorted(way.distance.value for way in apart.every_way) == [150, 150, 200]
    alike = run(part(swim(sendoff=200)))
    assert alike.every_way == alike.each
    # halves that change over do the same in another order
    stations = tuple(
        Station(items=structure_items([swim(metres, sendoff=200)]), half=half_of)
        for metres, half_of in ((100, "first"), (50, "second"))
    )
    both = run(PracticePart("main", stations=stations))
    assert both.halved == () and both.distance.value == 150
    assert run(part(swim(sendoff=200))).halved == ()
    lone = summarised(apart.practice, club(apart.practice, groups={"quick": QUICK}))
    assert lone.halved == ("quick",)
    assert [words.split(":")[0] for words in halves_words(apart)] == ["Osprey", "Osprey"]


def test_what_one_lane_group_swims_beside_what_all_do_is_its_own():
    both, more = part(swim(sendoff=120)), structure_items([swim(sendoff=120)])
    alone = PracticePart("main", apart=(ListOfSome((PartOfSome("main", items=more),), ("quick",)),))
    changed = part(swim(sendoff=120, by_group={"slow": {"reps": 0}}))
    for extra in (alone, changed):
        summary = run(both, extra)
        assert [summary.of(id).distance.value for id in ("quick", "slow")] == [200, 100]
        assert summary.distance.value == 200
    alike = run(both, both)
    assert alike.of("quick") is alike.of("slow")


def test_a_session_as_it_is_printed():
    # a minute before the first start and half a minute after the last finish are none of it
    own = run(
        part({"pause": 60}),
        part(swim(sendoff=120), swim(effort="easy", sendoff=180)),
        part({"pause": 30}),
    )
    printed = {
        "(6:00 last finish − 1:00 first start) ÷ 60 s a minute": session_minutes(own, "quick"),
        "(2:00 on the clock × 9.5 rating + 3:00 on the clock × 1.5 rating) ÷ 5:00 on the clock": (
            session_rating(own, "quick")
        ),
        "5 min × 4.7 rating": planned_load(own, "quick"),
        "5 min × 7 rating": planned_load(own, "quick", 7),
    }
    assert list(printed) == [formula(working) for working in printed.values()]
    assert planned_load(own, "quick", 7).factors[1].inner == Known(7, "rating stated")


@pytest.mark.parametrize(
    ("items", "rating"),
    [
        ([], None),
        ([swim(sendoff=120)], 9.5),
        ([swim(sendoff=120), swim(effort="easy", sendoff=180)], 4.7),  # (2 × 9.5 + 3 × 1.5) / 5
        ([swim(sendoff=120), swim(do="float", rest=10)], None),  # nobody has a time for it
    ],
)
def test_the_mean_rating_of_reps_goes_by_the_clock(items, rating):
    assert mean_rating(run(part(*items)).runs[0].clocks["quick"].reps) == rating


def test_a_practice_of_nothing_is_over_as_it_begins():
    own = run()
    assert (own.ends_s, own.slack_s, own.hands) == (0, 1800, None)
    assert own.distance.value == 0


def test_a_practice_without_lane_groups_is_swum_as_it_is_written():
    practice = practice_of(part(swim(sendoff=120)))
    own = summarised(practice, club(practice, groups={"heron-1": HERON}))
    assert own.groups == {} and own.distance.value == 100


@pytest.mark.parametrize("change", [None, 30])
def test_the_change_from_one_station_to_the_next_is_time_of_the_practice(change):
    stations = tuple(
        Station(items=structure_items([swim(50, sendoff=200)]), half=half)
        for half in ("first", "second")
    )
    own = run(PracticePart("main", stations=stations, change=change))
    assert [stage.change_s for stage in own.stages] == [0, change or 0]


def test_groups_begin_at_the_stations_in_the_clubs_order():
    stations = tuple(Station(items=structure_items([swim(sendoff=200)])) for _ in range(2))
    part_ = PracticePart("main", stations=stations)
    assert beginners(part_, ("a", "b", "c")) == ((("a", "c"), ""), (("b",), ""))
