"""Practices on the clock, against sums worked by hand in the comments; and the rules that practices
are held to.
"""

from __future__ import annotations

from datetime import timedelta
from pathlib import Path

import pytest
from example_cases import cases
from plans_world import PRACTICE, SECOND_GROUP, analysis, club, codes

from almanac.arithmetic.pace_lines import PaceLine
from almanac.arithmetic.session_load import planned_load
from almanac.report.sheet_text import assumed_words
from almanac.units import COURSES

# In tests/examples/base: heron-1 tests 50 back kick in 60 s, easy is 0.75 of best speed, fins take
# 30 s to put on.
EASY, FINS_CHANGE_S = 0.75, 30


@pytest.fixture(scope="module")
def summary(tmp_path_factory: pytest.TempPathFactory):
    root = club(tmp_path_factory.mktemp("club"))
    return analysis(root).practices["tuesday"]


def test_distance_is_the_sum_of_the_parts(summary) -> None:
    assert summary.distance.value == 2 * 50 + 6 * 50 + 2 * 25 + 50
    for facet, split in summary.by.items():
        assert sum(split.values()) == 500, facet


def test_the_run_sheet_starts_each_part_when_the_one_before_and_the_talk_are_over(summary) -> None:
    easy = EASY
    target = 60 / easy
    leaves = -(-(target + 10) // 5) * 5  # each rep leaves at target + 10 s, up to the next five
    # four in the lane, 10 s apart: the last is home 30 s after the leader, who rests 10 s
    warm_up = leaves + target + 3 * 10
    starts = [row.starts_s for row in summary.sheet]
    assert starts[0] == 120  # two minutes of talk
    assert starts[1] == pytest.approx(120 + warm_up + 90)
    assert starts[2] == pytest.approx(
        starts[1] + max(6 * 105, 5 * 105 + 3 * 10 + target) + FINS_CHANGE_S
    )  # no talk covers putting the fins on
    assert starts[3] == pytest.approx(starts[2] + 2 * 60 + FINS_CHANGE_S)
    # one rep alone: over when the last of the lane is home
    assert summary.sheet[3].ends_s == pytest.approx(starts[3] + 60 * 0.8 / easy + 3 * 10)
    assert summary.ends_s == summary.sheet[3].ends_s
    assert summary.slack_s == pytest.approx(30 * 60 - summary.ends_s)


def test_gear_is_counted_by_heads_at_once(summary) -> None:
    (need,) = summary.gear
    assert (need.gear, need.needed, need.owned, need.short) == ("fins", 4, 4, 0)


def test_a_group_that_is_done_waits_for_the_slower_one(tmp_path: Path) -> None:
    root = club(tmp_path)
    file = root / "plans" / "club.yml"
    file.write_text(file.read_text().replace("gear_owned:\n", SECOND_GROUP))
    sheet = analysis(root).practices["tuesday"].sheet
    first, second = sheet[0].cells
    easy = EASY
    # until the last of four and of three is home, 10 s apart, in the second of two
    quick, slow = (
        -(-(time / easy + 10) // 5) * 5 + time / easy + behind
        for time, behind in ((60, 30), (70, 20))
    )
    assert first.waits_s == pytest.approx(slow - quick)
    assert second.waits_s == 0
    assert sheet[1].starts_s == pytest.approx(120 + slow + 90)


def test_a_part_without_a_target_has_no_end_and_says_so(tmp_path: Path) -> None:
    root = club(tmp_path)
    file = root / "plans" / "club.yml"
    file.write_text(file.read_text().split("    tests:")[0] + "gear_owned: {fins: 4}\n")
    summary = analysis(root).practices["tuesday"]
    assert summary.ends_s is None and summary.slack_s is None
    assert planned_load(summary, "heron-1") is None


@pytest.mark.parametrize(
    ("find", "put", "code"),
    [
        ("minutes: 30", "minutes: 15", "practice-overruns"),
        ("effort: easy, rest: 0:10", "effort: fast, rest: 0:20", "no-warm-up"),
        (
            "distance: 25, do: back-kick, effort: fast",
            "distance: 15, do: back-kick, effort: fast",
            "part-mid-pool",
        ),
    ],
)
def test_rules(tmp_path: Path, find: str, put: str, code: str) -> None:
    before = codes(club(tmp_path / "before"))
    after = codes(club(tmp_path / "after", PRACTICE.replace(find, put)))
    assert after - before == {code}


def test_no_easy_after_all_out(tmp_path: Path) -> None:
    text = PRACTICE.rsplit("  - {part: main, items: [{reps: 1", 1)[
        0
    ]  # fast is the hardest word of the base catalogue
    assert "no-easy-after-all-out" in codes(club(tmp_path, text))


def test_gear_short(tmp_path: Path) -> None:
    root = club(tmp_path)
    file = root / "plans" / "club.yml"
    file.write_text(file.read_text().replace("fins: 4", "fins: 3"))
    assert "gear-short" in codes(root)


def test_an_assumed_time_is_told_on_the_run_sheet(tmp_path: Path) -> None:
    """The practice of the example with every field has a drill that nobody timed."""
    every_field = next(case for case in cases("accepted") if case.name == "every-field")
    every_field.build(tmp_path)
    found = analysis(tmp_path)
    told = list(assumed_words(found.catalogue, found.practices["thursday"]))
    (line,) = (line for line in told if "assumed" in line)
    assert line == (
        "Part 1 (warm-up), Heron, lane 1; Heron, lane 2: assumed, as no test tells it: the time of "
        "Back scull, and what hangs on it"
    )


def test_clocks_are_taken_over_on_the_same_day_alone(tmp_path: Path) -> None:
    """Another day knows other tests, and finds others old."""
    before = analysis(club(tmp_path))
    clocks = before.timing.clocks
    assert before.continued(before.catalogue, before.today).timing.clocks is clocks
    later = before.continued(before.catalogue, before.today + timedelta(weeks=5))
    assert later.timing.clocks is not clocks and later.timing.clocks.day == later.today
    target = later.timing.clock("heron-1", COURSES["25m"]).pacer.paces.line(
        "back-kick-50", COURSES["25m"]
    )
    assert isinstance(target, PaceLine) and target.stale  # swum on 15 September, for four weeks
