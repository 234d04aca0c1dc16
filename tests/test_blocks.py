"""Blocks added up, against sums worked by hand; calendars read back by another library; the rules
for blocks.
"""

from __future__ import annotations

import csv
import io
from datetime import date, datetime
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
import vobject
from plans_world import BLOCK, TESTED, analysis, club, codes

from almanac.analysis.figures import by_name
from almanac.analysis.figures.blocks import weeks_of
from almanac.arithmetic.appearances import (
    LateNeed,
    benchmark_plans,
    drill_appearances,
    goal_appearances,
    late_needs,
)
from almanac.arithmetic.block_days import day_of_all
from almanac.arithmetic.session_load import planned_load
from almanac.checks import blocks
from almanac.checks.blocks import blocks_of, is_hard, taught_before_need
from almanac.report.block.json import block_json
from almanac.report.block.words import missing_words
from almanac.report.shown import shown
from almanac.site.calendar import block_calendar, block_table


@pytest.fixture(scope="module")
def world(tmp_path_factory: pytest.TempPathFactory):
    return analysis(club(tmp_path_factory.mktemp("club")))


@pytest.fixture(scope="module")
def summary(world):
    return world.blocks["autumn"]["heron-1"]


def test_distance_by_week(summary) -> None:
    assert [week.balance.metres for week in summary.weeks] == [1000, 1500, 500]
    assert summary.balance.metres == 3000


def test_balance(summary) -> None:
    # 450 m of each 500 are kick, all of it flutter on the back; 50 of 500 are fast; nothing resists
    assert summary.balance.kick_share == pytest.approx(0.9)
    assert summary.balance.supine_share == pytest.approx(1.0)
    assert summary.balance.fast_share == pytest.approx(0.1)
    assert summary.balance.resisted_m == 0


def test_load_of_a_week(world, summary) -> None:
    planned = planned_load(world.practices["tuesday"], "heron-1").value
    week = summary.weeks[0]
    days = [planned, 0, planned, 0, 30 * 4, 0, 0]
    assert week.load.total == pytest.approx(sum(days))
    assert week.load.mean == pytest.approx(sum(days) / 7) and week.load.is_whole
    assert (week.load.monotony, week.load.strain) == (
        None,
        None,
    )  # three days of training count days


def test_missing_days_are_not_rest(tmp_path: Path) -> None:
    gaps = "sun: {rest: true},\n           tue: {rest: true}, thu: {rest: true}, sat: {rest: true}"
    assert gaps in BLOCK
    world = analysis(club(tmp_path, block=BLOCK.replace(gaps, "sun: {rest: true}")))
    summary = world.blocks["autumn"]["heron-1"]
    planned = planned_load(world.practices["tuesday"], "heron-1").value
    week = summary.weeks[1]
    assert [day.load for day in week.days] == [planned, None, planned, None, planned, None, 0.0]
    assert week.load.mean == pytest.approx(3 * planned / 4)
    assert week.days_off == 1
    figures = by_name("block", "week", weeks_of(summary)[1])
    assert shown(figures["distance"]) == "1,500 (4 of 7 days)"
    assert shown(figures["load"]).endswith(" (4 of 7 days)")
    assert list(missing_words(summary)) == [
        "Week 2: Tue, Thu, Sat not planned, so missing and not rest."
    ]
    # nothing is held against a week of which a part is missing, nor is it held against others
    assert [of["distance"] for of in changes(summary)] == [None, None, pytest.approx(-0.5)]
    assert summary.taper.cut is None
    assert block_json(world.blocks["autumn"])["groups"]["heron-1"][1]["known_days"] == 4
    rows = list(csv.DictReader(io.StringIO(block_table(world.blocks["autumn"]))))
    assert rows[8]["load_heron-1"] == ""  # a Tuesday that nobody planned


def changes(summary):
    """Of each week, its changes from the week before by what changes: distance, load, resisted,
    fast.
    """
    names = ("distance", "load", "resisted", "fast")
    weeks = [by_name("block", "week", week) for week in weeks_of(summary)]
    return [{name: week[f"{name} change"].value for name in names} for week in weeks]


def test_change_from_week_to_week(summary) -> None:
    first, second, third = changes(summary)
    assert first["distance"] is None
    assert second["distance"] == pytest.approx(0.5)
    assert third["distance"] == pytest.approx(500 / 1250 - 1)  # the median of 1,000 and 1,500 m
    assert third["resisted"] is None  # nothing was resisted before: no share of nothing


def test_taper_against_the_weeks_before(summary) -> None:
    # the mean of 1,000 and 1,500 m is 1,250; 500 m cut it by 60 %, the upper end of Bosquet et al.
    # 2007
    assert summary.taper.weeks == (3,)
    assert summary.taper.cut == pytest.approx(0.6)


def test_a_day_stands_on_the_tests_that_were_known_by_it(tmp_path: Path) -> None:
    """A 50 in 60 s on the fifth of September, in 50 s on the tenth: the first two practices of the
    block are before it, all later ones after. A day still to come has the tests of today.
    """
    root = club(tmp_path)
    file = root / "plans" / "club.yml"
    test = "      - {benchmark: back-kick-50, time: 1:00.0, course: 25m, on: 2026-09-05}\n"
    faster = test.replace("1:00.0", "0:50.0").replace("2026-09-05", "2026-09-10")
    assert test in file.read_text()
    file.write_text(file.read_text().replace(test, test + faster))

    def easy_s(today: date) -> list[float]:
        """The target of the warm-up's 50, easy, at each practice of the block."""
        world = analysis(root, today)
        days = world.blocks["autumn"]["heron-1"].days
        practices = [practice for day in days for practice in day.practices]
        return [own.runs[0].clocks["heron-1"].reps[0].target_s for own in practices]

    after, before = easy_s(date(2026, 10, 1)), easy_s(date(2026, 9, 9))
    assert before == [before[0]] * 6
    assert after == pytest.approx([before[0]] * 2 + [before[0] * 50 / 60] * 4)


def test_appearances(world, summary) -> None:
    drills = drill_appearances(summary)
    assert (drills["back-kick"].first, drills["back-kick"].last, drills["back-kick"].days) == (
        1,
        3,
        6,
    )
    assert "kick-technique" in goal_appearances(summary)
    levels = list(world.catalogue.words("levels"))
    late = list(late_needs(summary, world.catalogue.drills, levels, "foundation"))
    assert ("back-kick", "back-float", None) in [
        (item.drill, item.need, item.need_first) for item in late
    ]


def test_benchmarks_due(world) -> None:
    block = world.catalogue.blocks["autumn"]
    (plan,) = benchmark_plans(block.weeks, world.catalogue.benchmarks)
    assert plan.weeks == (1, 3)


def test_calendar_is_read_back_by_another_library(world, summary) -> None:
    text = block_calendar(world.catalogue, {"heron-1": summary}, "https://club.example/site/")
    events = list(vobject.readOne(text).vevent_list)
    practices = [event for event in events if "practice" in event.uid.value]
    assert len(practices) == 6 and len(events) == 7
    first = practices[0]
    assert first.dtstart.value == datetime(2026, 9, 7, 18, 0)
    assert (first.dtend.value - first.dtstart.value).total_seconds() == 30 * 60
    assert first.url.value == "https://club.example/site/practices/tuesday.html"
    assert len({event.uid.value for event in events}) == 7
    assert text == block_calendar(
        world.catalogue, {"heron-1": summary}, "https://club.example/site/"
    )


def test_table(world) -> None:
    rows = list(csv.DictReader(io.StringIO(block_table(world.blocks["autumn"]))))
    assert len(rows) == 21
    assert sum(float(row["metres"]) for row in rows) == 3000
    assert rows[1]["rest"] == "yes" and float(rows[1]["load_heron-1"]) == 0


@pytest.mark.parametrize(
    ("find", "put", "code"),
    [
        ("starts: 2026-09-07", "starts: 2026-09-08", "block-starts-monday"),
        ("goals: [kick-technique]", "goals: [kick-technique, kick-endurance]", "goal-unserved"),
        (
            (
                "sun: {rest: true},\n           tue: {rest: true}, thu: {rest: true}, sat: {rest: "
                "true}}\n"
            ),
            "sun: {practice: tuesday}}\n",
            "days-off",
        ),
        (
            "tue: {rest: true}, wed: {rest: true}, thu",
            "tue: {practice: tuesday}, wed: {rest: true}, thu",
            "taper-cut",
        ),
        ("purpose: The", "balance: {kick_share: {to: 0.5}}\npurpose: The", "balance-missed"),
    ],
)
def test_rules(tmp_path: Path, find: str, put: str, code: str) -> None:
    assert find in BLOCK
    before = codes(club(tmp_path / "before"))
    text = BLOCK.replace(find, put)
    after = codes(club(tmp_path / "after", block=text))
    assert code in after and code not in before


def test_what_all_lane_groups_are_not_taught_in_time_is_told_once(monkeypatch) -> None:
    both = LateNeed("dolphin", "glide", 2, "tuesday", None)
    one = LateNeed("wave", "glide", 2, "tuesday", 3)
    block = SimpleNamespace(id="autumn", squad="heron", starts=date(2027, 1, 4))
    squads = {"heron": SimpleNamespace(level="building")}
    world: Any = SimpleNamespace(
        catalogue=SimpleNamespace(
            words=lambda _: {},
            drills={},
            blocks={"autumn": block},
            club=SimpleNamespace(squads=squads),
        ),
        blocks={},
    )
    ways = [(block, SimpleNamespace(group=n), f" for {whose}")
            for n, whose in (("1", "one"), ("2", "two"))]  # fmt: skip
    monkeypatch.setattr(blocks, "blocks_of", lambda _: iter(ways))
    late = {"1": [both, one], "2": [both]}
    monkeypatch.setattr(blocks, "late_needs", lambda summary, *_: late[summary.group])
    monkeypatch.setattr(blocks, "drills_before", lambda *_: frozenset())
    used = "is used in 'tuesday', and 'glide', which it needs first,"
    assert [problem.message for problem in taught_before_need.check(world)] == [
        f"'dolphin' {used} never comes",
        f"'wave' {used} comes only in week 3 for one",
    ]


def test_a_rule_names_the_lane_group_where_groups_do_not_do_the_same(tmp_path: Path) -> None:
    """Two groups, one with a second session of the day: it alone swims two hard ones in a row."""
    twice = (
        "wed: {sessions: [{start: '06:00', groups: [heron-2], practice: tuesday}, "
        "{start: '18:00', groups: [heron-1], practice: tuesday}, "
        "{start: '19:00', groups: [heron-1], practice: tuesday}]}"
    )
    root = club(tmp_path, block=BLOCK.replace("wed: {practice: tuesday}", twice, 1))
    file = root / "plans" / "club.yml"
    test = f"      - {{benchmark: back-kick-50, time: 1:00.0, course: 25m, on: {TESTED}}}\n"
    second = "  heron-2: {title: Heron two, squad: heron, lanes: 1, heads: 4, gap: 0:10, tests: [\n"
    second += f"    {{benchmark: back-kick-50, time: 1:00.0, course: 25m, on: {TESTED}}}]}}\n"
    assert test in file.read_text()
    file.write_text(file.read_text().replace(test, test + second))
    policy = root / "plans" / "policy.yml"
    policy.write_text(
        policy.read_text().replace("hard_day_fast: {value: 500", "hard_day_fast: {value: 90")
    )
    world = analysis(root)
    one, two = world.blocks["autumn"].values()
    assert (one.balance.metres, two.balance.metres) == (3500, 3000)
    assert [own.start for own in day_of_all([one.days[2], two.days[2]]).sessions] == [
        "18:00", "19:00", "06:00",
    ]  # fmt: skip
    assert {whose for _, _, whose in blocks_of(world)} == {
        f" for {world.catalogue.lane_groups[group].title}" for group in ("heron-1", "heron-2")
    }
    assert is_hard(world, one.days[2]) and not is_hard(world, two.days[2])
    text = block_calendar(world.catalogue, world.blocks["autumn"], "")
    assert len(list(vobject.readOne(text).vevent_list)) == 9
