"""Blocks added up, worked by hand and against numpy; when drills and goals come in them.

Squad osprey: `quick` swims 100 crawl in 80 s, `slow` in 100 s; all out is rated 9.5, fast 8, strong
6.
"""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta

import numpy
import pytest
from arithmetic_plans import (
    MONDAY,
    QUICK,
    SLOW,
    block,
    block_of,
    club,
    part,
    practice_of,
    run,
    summarised,
    swim,
    whole,
)
from arithmetic_world import BENCHMARKS, DRILLS, made, swim_set
from hypothesis import given
from hypothesis import strategies as st

from almanac.analysis.figures import by_name
from almanac.analysis.figures.blocks import weeks_of
from almanac.arithmetic.appearances import (
    Appearance,
    LateNeed,
    benchmark_plans,
    drill_appearances,
    drills_before,
    goal_appearances,
    late_needs,
    practice_goals,
    repeat_weeks,
)
from almanac.arithmetic.balance import Balance
from almanac.arithmetic.block import BlockRules, summarise_block
from almanac.arithmetic.block_days import DAYS, SessionPlan, day_of_all
from almanac.arithmetic.block_workings import taper_cut, taper_light_days
from almanac.arithmetic.taper import Taper
from almanac.arithmetic.training_load import Deviation
from almanac.arithmetic.week_change import WeekOfBlock, load_change
from almanac.model.block import Day, Session, TaperDates, Week
from almanac.model.log import Log
from almanac.model.policy import DayCount
from almanac.model.practice import PracticePart

REST = Day(rest=True)
HUNDRED = run(part(swim(sendoff=120)))  # 100 m on 2:00, at 9.5
LOAD = {"quick": 2 * 9.5, "slow": 2 * 9.5}  # two minutes on the clock, all at 9.5


def hundreds(reps, **more):
    """A practice of so many hundreds of crawl."""
    return run(part(swim(reps=reps, sendoff=120)), **more)


# Balance.


def test_balance_of_a_practice_in_yards_is_in_metres():
    # 700 yd: 100 kick on the back strong, 100 with a board fast, 200 crawl in socks fast, 2 × (50
    # kick + 50 backstroke) all out, 100 dolphin kick on the back. One yard is 0.9144 m exactly
    # (international yard and pound agreement, 1959).
    dolphin = replace(DRILLS["kick"], id="dolphin", kick="dolphin")
    into_stroke = {"reps": 2, "parts": [
        {"distance": 50, "do": "kick", "effort": "all-out"},
        {"distance": 50, "do": "backstroke", "effort": "all-out"},
    ]}  # fmt: skip
    practice = practice_of(
        part(swim(100, "kick", "strong"), swim(100, "board-kick", "fast")),
        part(swim(200, "crawl", "fast", gear=["socks"]), into_stroke, swim(100, "dolphin", "easy")),
        pool="away",
    )
    found = block({"wed": Day("p")}, p=summarised(practice, club(practice, dolphin))).balance
    assert found.metres == pytest.approx(700 * 0.9144)
    assert found.kick_m == pytest.approx(400 * 0.9144)
    assert found.flutter_kick_m == pytest.approx(300 * 0.9144)
    assert found.supine_flutter_m == pytest.approx(200 * 0.9144)
    assert found.resisted_m == pytest.approx(200 * 0.9144)
    assert found.fast_m == pytest.approx(500 * 0.9144)
    assert found.kick_into_stroke_m == pytest.approx(100 * 0.9144)
    assert found.kick_share == pytest.approx(4 / 7)
    assert found.supine_share == pytest.approx(2 / 3)
    assert found.resisted_share == pytest.approx(2 / 7)
    assert found.fast_share == pytest.approx(5 / 7)
    assert found.by["kick"] == pytest.approx({"flutter": 600 * 0.9144, "dolphin": 100 * 0.9144})
    assert found.by["effort"]["all-out"] == pytest.approx(200 * 0.9144)


def test_balance_adds_practices_of_two_pools():
    metric = run(part(swim(100, "kick"), swim(300)))
    yards = run(part(swim(200, "kick", gear=["chute"]), swim(200, effort="easy")), pool="away")
    days = {"mon": Day("metric"), "tue": Day("yards"), "sat": Day("metric")}
    found = block(days, metric=metric, yards=yards)
    assert [day.metres for day in found.weeks[0].days] == pytest.approx(
        [400, 365.76, 0, 0, 0, 400, 0]
    )
    whole = found.balance
    assert whole.metres == pytest.approx(1165.76)
    assert whole.kick_m == whole.flutter_kick_m == whole.supine_flutter_m
    assert whole.kick_m == pytest.approx(200 + 182.88)
    assert whole.resisted_m == pytest.approx(182.88)
    assert whole.fast_m == pytest.approx(800 + 182.88)
    assert whole.by["mode"] == pytest.approx({"kick": 382.88, "swim": 782.88})
    assert sum(whole.by["gear"].values()) == pytest.approx(whole.metres)
    monday, tuesday = found.weeks[0].days[:2]
    assert (monday.balance.metres, monday.balance.kick_m) == (400, 100)
    assert tuesday.balance.kick_share == pytest.approx(0.5)


def test_nothing_swum_has_no_shares():
    found = block({"mon": REST}).balance
    assert found == Balance(0, {}, 0, 0, 0, 0, 0, 0)
    assert [found.kick_share, found.supine_share, found.resisted_share, found.fast_share] == [
        None
    ] * 4


# Days, weeks and load.


def test_days_and_loads_of_a_week():
    week = {
        "mon": Day("p"),
        "tue": REST,
        "wed": Day("p", other="Land work", minutes=20, rating=3),
        "thu": Day(other="Meet", minutes=90, rating=6.5),
        "sun": REST,
    }
    found = block(week, p=HUNDRED).weeks[0]
    expected = [LOAD["quick"], 0, LOAD["quick"] + 60, 585, None, None, 0]
    assert [day.load for day in found.days] == pytest.approx(expected)
    assert [day.name for day in found.days] == ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
    assert [day.on for day in found.days] == [date(2026, 9, 7 + number) for number in range(7)]
    assert [day.metres for day in found.days] == [100, 0, 100, 0, 0, 0, 0]
    assert [day.is_off for day in found.days] == [False, True, False, False, False, False, True]
    assert found.days_off == 2 and found.number == 1
    known = [load for load in expected if load is not None]
    assert found.load.total == pytest.approx(sum(known))
    assert found.load.mean == pytest.approx(numpy.mean(known))
    assert (found.load.known, found.load.days, found.planned_days) == (5, 7, 5)
    assert (found.load.monotony, found.load.strain) == (None, None)


def test_monotony_and_strain_of_a_week_without_a_gap():
    meet = {"thu": Day(other="Meet", minutes=90, rating=6.5), "sat": Day("p")}
    found = block(whole({"mon": Day("p"), "wed": Day("p"), **meet}), p=HUNDRED).weeks[0].load
    loads = [LOAD["quick"], 0, LOAD["quick"], 585, 0, LOAD["quick"], 0]
    assert found.monotony == pytest.approx(numpy.mean(loads) / numpy.std(loads, ddof=1))
    assert found.strain == pytest.approx(sum(loads) * numpy.mean(loads) / numpy.std(loads, ddof=1))


def test_the_convention_of_the_deviation_is_passed_on():
    week = whole(dict.fromkeys(("mon", "tue", "wed", "thu"), Day("p")))
    found = summarise_block(
        block_of(week), lambda id, on: HUNDRED, "quick", convention=Deviation.POPULATION
    )
    (only,) = found.weeks
    assert only.load.convention is Deviation.POPULATION
    assert only.load.monotony == pytest.approx(
        (4 / 3) ** 0.5
    )  # √(k / (n - k)): 4 days of 7, see check-values.md section 5
    assert block(week, p=HUNDRED).weeks[0].load.convention is Deviation.SAMPLE


@pytest.mark.parametrize("group", ["quick", "slow"])
def test_load_is_that_of_the_lane_group(group):
    found = block({"mon": Day("p")}, group=group, p=HUNDRED)
    assert found.group == group and found.weeks[0].load.total == pytest.approx(LOAD[group])


def test_a_practice_without_a_load_leaves_the_day_out_whatever_else_it_holds():
    catalogue = club(groups={"quick": replace(QUICK, tests=()), "slow": SLOW})
    untimed = summarised(practice_of(part(swim())), catalogue)
    week = {"mon": Day("p", other="Land work", minutes=20, rating=3), "tue": REST}
    found = block(week, p=untimed).weeks[0]
    assert [day.load for day in found.days[:3]] == [None, 0, None]
    assert found.load.mean == 0
    assert found.balance.metres == 100


def changes(summary):
    """Of each week, its changes from the week before by what changes: distance, load, resisted,
    fast.
    """
    names = ("distance", "load", "resisted", "fast")
    weeks = [by_name("block", "week", week) for week in weeks_of(summary)]
    return [{name: week[f"{name} change"].value for name in names} for week in weeks]


def test_a_week_of_which_nothing_is_known_has_no_load():
    found = block({}, {"mon": Day("p")}, {}, p=HUNDRED)
    assert [week.load is None for week in found.weeks] == [True, False, True]
    assert [week["load"] for week in changes(found)] == [None, None, None]


def test_days_that_are_known_make_a_planned_week_and_a_holiday_has_no_session():
    rest, busy = whole({}), whole({"mon": Day("p")})
    told = [
        (week.planned_days, week.days_off, week.is_planned, week.is_holiday)
        for week in block(rest, busy, {"mon": REST}, p=HUNDRED).weeks
    ]
    assert told == [(7, 7, True, True), (7, 6, True, False), (1, 1, False, False)]
    assert [day.name for day in block(rest, busy, p=HUNDRED).days] == [*DAYS, *DAYS]


def test_each_week_starts_a_monday_later():
    found = block({}, {}, {})
    assert [week.days[0].on for week in found.weeks] == [
        MONDAY + timedelta(days=7 * n) for n in range(3)
    ]
    assert [week.number for week in found.weeks] == [1, 2, 3]


def test_a_practice_that_is_not_summed_up_is_an_error():
    with pytest.raises(KeyError):
        block({"mon": Day("unknown")})
    with pytest.raises(KeyError, match="a-circuit"):
        block({"mon": Day(land="a-circuit")})


# Change from week to week.


def test_change_is_held_against_the_median_of_the_weeks_before():
    resisted = run(part(swim(200, gear=["socks"], effort="all-out"), swim(200, effort="easy")))
    easy = run(part(swim(400, effort="easy")))
    summary = block(
        whole({"mon": Day("resisted")}), whole({"mon": Day("resisted"), "tue": Day("easy")}),
        whole({"mon": Day("easy")}), whole({"mon": Day("resisted")}),
        resisted=resisted, easy=easy,
    )  # fmt: skip
    loads = [week.load.total for week in summary.weeks]
    first, second, third, fourth = changes(summary)
    assert set(first.values()) == {None}
    assert second["distance"] == pytest.approx(1.0)  # 400 to 800 m
    assert second["resisted"] == second["fast"] == pytest.approx(0)
    assert second["load"] == pytest.approx(loads[1] / loads[0] - 1) and second["load"] > 0
    # the median of 400 and 800 m is 600, of 200 and 200 m resisted 200
    assert [third[name] for name in ("distance", "resisted", "fast")] == pytest.approx(
        [400 / 600 - 1, -1, -1]
    )
    # 400, 800, 400 m; 200, 200, 0 m resisted
    assert fourth["distance"] == fourth["resisted"] == pytest.approx(0)
    assert fourth["load"] == pytest.approx(loads[3] / sorted(loads[:3])[1] - 1)


# Taper.

# Hundreds of metres and whether the week is marked; weeks of the taper, metres before, cut.
TAPERS = [
    (
        [(4, 0), (13, 0), (9, 0), (8, 0), (4, 1)],
        ((5,), 850, 1 - 4 / 8.5),
    ),  # the last two weeks before: 9 and 8
    ([(10, 0), (6, 1), (3, 1)], ((2, 3), 1000, 0.55)),  # the mean of both weeks
    ([(8, 0), (12, 0), (5, 1)], ((3,), 1000, 0.5)),
    (
        [(10, 0), (5, 1), (9, 0), (5, 1)],
        ((2, 4), 1000, 0.5),
    ),  # what stands before the first marked week, against the mean of both
    ([(4, 0), (5, 1)], ((2,), 400, -0.25)),
    ([(10, 0), (6, 0)], None),
    ([(10, 1), (6, 0)], None),  # nothing stands before
    ([(0, 0), (6, 1)], None),  # nothing was swum before
    ([(10, 0), (0, 1)], ((2,), 1000, 1.0)),
]


@pytest.mark.parametrize(("written", "expected"), TAPERS)
def test_taper_against_the_last_two_loading_weeks(written, expected):
    weeks = [
        Week("", whole({"mon": Day(f"of-{count}")} if count else {}), taper=bool(marked))
        for count, marked in written
    ]
    practices = {f"of-{count}": hundreds(count) for count, _ in written if count}
    found = block(*weeks, **practices).taper
    if expected is None:
        assert found is None or (found.before_m, found.cut, found.light_days) == (None, None, None)
    else:
        assert (found.weeks, found.before_m) == expected[:2]
        assert found.cut == pytest.approx(expected[2])


def test_recovery_and_test_weeks_are_not_what_a_taper_is_held_against():
    kinds = ["loading", "loading", "recovery", "test", "taper"]
    metres = [10, 8, 3, 4, 6]
    weeks = [
        Week("", whole({"mon": Day(f"of-{count}")}), kind=kind)
        for kind, count in zip(kinds, metres, strict=True)
    ]
    found = block(*weeks, **{f"of-{count}": hundreds(count) for count in metres}).taper
    assert (found.against, found.before_m) == ((1, 2), 900)
    assert found.cut == pytest.approx(1 - 600 / 900)


def test_a_taper_between_dates_is_taken_for_seven_days():
    # Thursday of the second week to Wednesday of the third: 300 + 100 m in seven days; and half of
    # it: Thursday to Sunday
    full = whole(dict.fromkeys(("mon", "wed", "fri"), Day("of-4")))
    eased = whole({"mon": Day("of-4"), "fri": Day("of-3")})
    last = whole({"tue": Day("of-1"), "sat": Day("of-4")})
    practices = {f"of-{count}": hundreds(count) for count in (1, 3, 4)}
    for until, metres, light in ((16, 400, 7), (13, 300 * 7 / 4, 4)):
        dates = TaperDates(MONDAY + timedelta(days=10), MONDAY + timedelta(days=until))
        written = block_of(full, eased, last, taper=dates)
        found = summarise_block(written, lambda id, on: practices[id], "quick").taper
        assert (found.against, found.before_m, found.during_m) == ((1,), 1200, metres)
        assert found.weeks == ((2, 3) if until == 16 else (2,))
        assert found.cut == pytest.approx(1 - metres / 1200)
        assert found.light_days == light  # every day below the mean day in the water, 400 m


def test_a_taper_with_a_day_missing_has_no_cut():
    full = whole({"mon": Day("p")})
    for weeks in (
        [{"mon": Day("p")}, Week("", full, kind="taper")],
        [full, Week("", {"mon": Day("p")}, kind="taper")],
    ):
        found = block(*weeks, p=HUNDRED).taper
        assert (found.cut, found.light_days) == (None, None)


TOLD = Taper(MONDAY, MONDAY, (2,), (1,), 1000.0, 400.0, 4)


@pytest.mark.parametrize(
    ("told", "rules", "cut", "days"),
    [
        (TOLD, BlockRules(), 0.6, 4),  # 1 − 400 / 1000
        (None, BlockRules(), None, None),
        # where the level counts lighter days, no percentage is told
        (TOLD, BlockRules(light_days=DayCount(3, 5, "", "")), None, 4),
        (replace(TOLD, before_m=0.0), BlockRules(), None, 4),
        (replace(TOLD, before_m=None), BlockRules(), None, 4),
        (replace(TOLD, during_m=None, light_days=None), BlockRules(), None, None),
    ],
)
def test_the_workings_of_a_taper_stand_where_all_of_it_is_known(told, rules, cut, days):
    summary = replace(block({}), taper=told, rules=rules)
    workings = taper_cut(summary), taper_light_days(summary)
    assert [None if own is None else own.value for own in workings] == [cut, days]


# Any number of sessions a day.


def test_a_day_of_two_sessions_for_their_own_lane_groups():
    day = Day(
        sessions=(
            Session(practice="p", start="06:00"),
            Session(practice="p", start="17:00", groups=("quick",), rating=3),
            Session(other="Land work", minutes=20, rating=4, groups=("slow",)),
        )
    )
    for group, load, metres, starts in (
        ("quick", 2 * 9.5 + 2 * 3, 200, ["06:00", "17:00"]),
        ("slow", 2 * 9.5 + 80, 100, ["06:00", ""]),
    ):
        found = block(whole({"mon": day}), group=group, p=HUNDRED)
        monday = found.days[0]
        assert monday.load == pytest.approx(load)
        assert (monday.metres, found.balance.metres) == (metres, metres)
        assert [own.start for own in monday.sessions] == starts


def test_other_work_that_is_no_effort_has_no_load():
    found = block({"mon": Day(sessions=(Session(other="Team talk", minutes=20, rating=0),))})
    assert found.days[0].load == 0


@pytest.mark.parametrize(
    ("minutes", "planned", "load"),
    [
        (60, 300, 450),  # 5 a minute, and 90 minutes were kept
        (None, None, None),
        (60, None, None),
        (0, 0, None),  # nothing was to be done, so nothing tells how hard what was done is
    ],
)
def test_a_session_kept_without_a_rating_is_as_hard_as_it_was_planned(minutes, planned, load):
    kept = made(Log, id="monday", on=MONDAY, minutes=90, metres=0, heads=6)
    assert SessionPlan(Session(other="Gym"), None, None, minutes, planned, kept).load == load


def test_the_old_form_of_a_day_is_two_sessions():
    day = Day("p", other="Land work", minutes=20, rating=3)
    swum, land = day.every_session
    assert (swum.practice, swum.rating) == ("p", None)
    assert (land.other, land.minutes, land.rating) == ("Land work", 20, 3)
    assert Day(rest=True).every_session == ()


# Against a brute-force reckoning.


@given(
    st.lists(st.lists(st.sampled_from([None, 0, 1, 2, 3]), min_size=7, max_size=7), max_size=7),
)
def test_changes_against_a_plain_reckoning_of_medians(weeks):
    plans = {None: None, 0: Day(rest=True), **{n: Day(minutes=n, rating=1) for n in (1, 2, 3)}}
    written = [
        {name: plans[load] for name, load in zip(DAYS, week, strict=True) if load is not None}
        for week in weeks
    ]
    found = block(*written)
    for number, of in enumerate(weeks_of(found)):
        whole_before = [sum(week) for week in weeks[:number] if None not in week]
        last = sorted(whole_before[-4:])
        middle = (last[(len(last) - 1) // 2] + last[len(last) // 2]) / 2 if last else 0
        after_holiday = number > 0 and set(weeks[number - 1]) == {0}
        told = by_name("block", "week", of)["load change"].value
        if None in weeks[number] or not middle or after_holiday:
            assert told is None
        else:
            assert told == pytest.approx(sum(weeks[number]) / middle - 1)


def test_nothing_is_said_of_light_weeks_nor_after_a_holiday_or_a_taper():
    light, heavy = (whole({"mon": Day(minutes=minutes, rating=5)}) for minutes in (60, 120))
    rules = BlockRules(least_load=500)
    weeks = [light, light, heavy, {}, heavy, whole({}), heavy, Week("", light, kind="taper"), heavy]
    found = summarise_block(block_of(*weeks), lambda id, on: HUNDRED, "quick", rules)
    told = [by_name("block", "week", of)["load change"].value for of in weeks_of(found)]
    assert told == [None, None, 1, None, 1, None, None, None, None]


def test_without_a_least_load_the_lightest_week_counts():
    light = whole({"mon": Day(minutes=1, rating=0.5)})
    found = block(light, light)
    first, second = found.weeks
    assert load_change(WeekOfBlock(second, (first,))).value == 0
    assert [week["load"] for week in changes(found)] == [None, 0]


# When drills and goals come.


def test_first_and_last_week_and_days_of_each_drill_and_goal():
    kick = replace(DRILLS["kick"], goals=("legs", "line"))
    crawl = replace(DRILLS["crawl"], goals=("speed",))
    own = replace(swim_set(swim(do="kick")), goals=("endurance",))
    known = club(kick, crawl, own)
    both = practice_of(part(swim(do="kick"), swim(), swim(do="kick")), id="both")
    placed = practice_of(PracticePart("main", set="a-set"), id="placed")
    plain = practice_of(part(swim()), id="plain")
    found = {p.id: summarised(p, known) for p in (both, placed, plain)}
    weeks = (
        {"mon": Day("plain")},
        {"mon": Day("both"), "fri": Day("placed")},
        {},
        {"sun": Day("plain")},
    )
    summary = block(*weeks, **found)
    assert drill_appearances(summary) == {"crawl": Appearance(1, 4, 3), "kick": Appearance(2, 2, 2)}
    assert list(drill_appearances(summary)) == ["crawl", "kick"]
    assert goal_appearances(summary) == {
        "speed": Appearance(1, 4, 3), "legs": Appearance(2, 2, 1), "line": Appearance(2, 2, 1),
        "endurance": Appearance(2, 2, 1),
    }  # fmt: skip
    # a set has goals of its own, whatever its drills serve; items in place serve those of their
    # drills
    assert practice_goals(found["placed"]) == ["endurance"]
    assert practice_goals(found["both"]) == ["legs", "line", "speed"]


LEVELS = ("foundation", "building", "performing")


def late(*practices_by_week, needs, squad="building", **levels):
    """What is used before its need; practices as drills in order, by week."""
    drills = {
        id: replace(
            drill, needs_first=needs.get(id, ()), level=levels.get(id.replace("-", "_"), "building")
        )
        for id, drill in DRILLS.items()
    }
    known = club(*drills.values())
    practices, weeks = {}, []
    for number, week in enumerate(practices_by_week):
        days = {}
        for day, used in zip(("mon", "tue"), week, strict=False):
            id = f"p{number + 1}-{day}"
            practices[id] = summarised(
                practice_of(part(*(swim(do=drill) for drill in used)), id=id), known
            )
            days[day] = Day(id)
        weeks.append(days)
    return list(late_needs(block(*weeks, **practices), drills, LEVELS, squad))


KICK_FIRST = {"crawl": ("kick",)}


@pytest.mark.parametrize(
    ("weeks", "expected"),
    [
        ([[["crawl"]]], [("crawl", "kick", 1, "p1-mon", None)]),  # never taught
        ([[["crawl"]], [["kick"]]], [("crawl", "kick", 1, "p1-mon", 2)]),  # taught a week late
        (
            [[["crawl"], ["crawl"]], [["crawl"]]],
            [("crawl", "kick", 1, "p1-mon", None)],
        ),  # told once
        (
            [[["crawl", "kick"]]],
            [("crawl", "kick", 1, "p1-mon", 1)],
        ),  # the same practice, but after it
        ([[["kick", "crawl"]]], []),
        ([[["kick"], ["crawl"]]], []),
        ([[["kick"]], [], [["crawl"]]], []),
        ([[["float"]]], []),
    ],
)
def test_drills_used_before_what_they_need(weeks, expected):
    assert late(*weeks, needs=KICK_FIRST) == [LateNeed(*found) for found in expected]


def test_what_an_earlier_block_of_the_lane_group_taught_within_a_year_is_known():
    """A block of one day, the drill 'kick' on it; ``starts`` is its Monday."""
    known = club(*DRILLS.values())
    own = summarised(practice_of(part(swim(do="kick")), id="p1"), known)
    summary = block({"mon": Day("p1")}, p1=own)
    squad, group, last = summary.block.squad, summary.group, summary.days[-1].on

    def before(days: int, squad: str = squad, group: str = group) -> frozenset[str]:
        return drills_before([{summary.group: summary}], squad, group, last + timedelta(days))

    assert before(1) == before(364) == {"kick"}
    assert not before(0) and not before(365)  # it still goes on; it is too long ago
    assert not before(1, squad="another") and not before(1, group="another")
    drills = {
        id: replace(drill, needs_first=KICK_FIRST.get(id, ())) for id, drill in DRILLS.items()
    }
    needing = club(*drills.values())
    crawl = summarised(practice_of(part(swim(do="crawl")), id="p2"), needing)
    later = block({"mon": Day("p2")}, p2=crawl)
    assert [*late_needs(later, drills, LEVELS, "building")]
    assert not [*late_needs(later, drills, LEVELS, "building", before(1))]


@pytest.mark.parametrize(
    ("level", "squad", "is_late"),
    [
        ("foundation", "building", False),  # below the squad: taken as known
        ("building", "building", True),
        ("performing", "building", True),
        ("foundation", "foundation", True),
        ("building", "performing", False),
    ],
)
def test_what_is_below_the_squad_is_taken_as_known(level, squad, is_late):
    assert bool(late([["crawl"]], needs=KICK_FIRST, squad=squad, kick=level)) is is_late


def test_every_need_of_every_drill_is_looked_at():
    needs = {"crawl": ("kick", "float"), "backstroke": ("kick",)}
    found = late([["crawl", "backstroke"]], needs=needs)
    assert [(item.drill, item.need) for item in found] == [
        ("crawl", "kick"),
        ("crawl", "float"),
        ("backstroke", "kick"),
    ]


# Benchmarks in a block.


@pytest.mark.parametrize(("every", "weeks"), [("4 weeks", 4), ("1 week", 1), ("12 weeks", 12)])
def test_how_often_a_benchmark_is_repeated(every, weeks):
    assert repeat_weeks(replace(BENCHMARKS["kick-50"], repeat_every=every)) == weeks


@pytest.mark.parametrize(
    ("length", "run_in", "every", "due"),
    [
        (8, [1, 5], 3, (4, 8)),  # due three weeks after each
        (7, [2, 5], 3, ()),  # in time, and not due again before the end
        (8, [2, 5], 3, (8,)),
        (8, [2, 5], 4, ()),
        (3, [1], 1, (2,)),  # told once, and not for every week that passes
        (1, [1], 1, ()),
    ],
)
def test_weeks_by_which_a_benchmark_was_due(length, run_in, every, due):
    weeks = [
        Week("", {}, benchmarks=("kick-50",) if number in run_in else ())
        for number in range(1, length + 1)
    ]
    known = {"kick-50": replace(BENCHMARKS["kick-50"], repeat_every=f"{every} weeks")}
    (plan,) = benchmark_plans(weeks, known)
    assert (plan.benchmark, plan.weeks, plan.due) == ("kick-50", tuple(run_in), due)


def test_each_benchmark_has_its_own_plan():
    known = {id: replace(BENCHMARKS[id], repeat_every="2 weeks") for id in ("kick-50", "kick-200")}
    weeks = [
        Week("", {}, benchmarks=("kick-50", "kick-200")),
        Week("", {}),
        Week("", {}, benchmarks=("kick-50",)),
    ]
    assert [(plan.benchmark, plan.weeks, plan.due) for plan in benchmark_plans(weeks, known)] == [
        ("kick-50", (1, 3), ()),
        ("kick-200", (1,), (3,)),
    ]


def test_a_day_of_all_lane_groups_has_each_session_once():
    ours = Session(other="Land work", minutes=20, rating=4, groups=("slow",))
    day = Day(sessions=(Session(practice="p"), ours))
    quick, slow = (
        block({"mon": day}, group=name, p=HUNDRED).weeks[0].days[0] for name in ("quick", "slow")
    )
    assert day_of_all([quick]) == quick  # of one group, its own
    both = day_of_all([quick, slow])
    assert [own.session for own in both.sessions] == [Session(practice="p"), ours]
    assert both.sessions[0] is quick.sessions[0]
    assert (both.name, both.on, both.day) == ("mon", MONDAY, day)
    assert both.practices == (HUNDRED,)  # land work is none
