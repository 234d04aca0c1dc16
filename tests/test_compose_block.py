"""``almanac compose block`` on the small catalogue, without a solver: what it plans, writes,
judges, refuses.
"""

from __future__ import annotations

import json
import re
import shutil
import tempfile
from dataclasses import dataclass, replace
from datetime import date, timedelta
from fractions import Fraction
from functools import cache
from pathlib import Path
from types import SimpleNamespace
from typing import Any

import pytest
from planning_world import choice
from shared import CATALOGUE, DAY

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.balance import balance_of
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.block_wishes import loads_of
from almanac.arithmetic.effort import EffortSpan
from almanac.arithmetic.planning.choices import (
    FAST,
    HARD,
    LOAD,
    METRES,
    NOTHING,
    RESISTED,
    WORN,
    Choice,
    DaySlot,
)
from almanac.arithmetic.planning.model import PlanProblem, PlanRule
from almanac.arithmetic.planning.wishes import BlockWishes, WeekWish
from almanac.checks import check
from almanac.commands import compose_block
from almanac.commands.compose_block_tried import UNSAVED, how
from almanac.commands.drafts import Unwritten, tried
from almanac.commands.main import main
from almanac.commands.shared import CheckedCatalogue, load_and_check
from almanac.model.load import load
from almanac.report.block.again import again_words
from almanac.report.block.answer import _without_tests
from almanac.report.block.judged import Again, again_in
from almanac.report.block.short import few_words, short_words
from almanac.report.planning import composed as planning_composed
from almanac.report.planning import practices as planning_practices
from almanac.report.planning import unlike as planning_unlike
from almanac.report.planning.composed import Draft, _light_lacking
from almanac.report.planning.limits import limits_of
from almanac.report.planning.practices import choices_of
from almanac.report.planning.problem import Planning
from almanac.report.planning.request import BlockRequest
from almanac.report.planning.slots import follows_a_break
from almanac.report.planning.unlike import unlike
from almanac.report.planning.usual import wishes_of_begun
from almanac.resources import SITE_SOURCE
from almanac.site.block_page import block_page
from almanac.site.templates import Templates
from almanac.source.paths import MOST_ID, is_id
from almanac.units import show_number

WISHES = (
    "--squad", "heron", "--starts", "2027-01-04", "--weeks", "3", "--goals",
    "kick-into-stroke=2,kick-endurance",
    "--like", "heron-legs-in-three-weeks", "--days", "mon,wed,fri", "--no-solver", "--steps", "400",
)  # fmt: skip

BETTERED = (*WISHES, "--steps", "0", "--loads", "40,60,100")
"""Of which the first plan can be bettered."""


def run(root: Path, *argv: str) -> int:
    return main(["compose", "block", "--root", str(root), "--today", str(DAY), *argv])


@pytest.fixture(autouse=True)
def read_once(monkeypatch) -> None:
    """The small catalogue is read and checked once for all of these tests."""
    monkeypatch.setattr(compose_block, "load_as_checked", lambda root, day: _read(root, day))


@cache
def _read_small() -> CheckedCatalogue:
    return load_and_check(CATALOGUE, DAY)


def _read(root: Path, day: date) -> CheckedCatalogue:
    return _read_small() if root == CATALOGUE else load_and_check(root, day)


@pytest.fixture(scope="module")
def saved(tmp_path_factory: pytest.TempPathFactory) -> Path:
    root = tmp_path_factory.mktemp("composed") / "club"
    shutil.copytree(CATALOGUE, root)
    assert run(root, *WISHES, "--save", "heron-winter") == 0
    return root


def test_each_day_that_has_a_slot_has_a_practice_and_every_other_rests(saved) -> None:
    block = load(saved).catalogue.blocks["heron-winter"]
    assert block.squad == "heron" and block.starts == date(2027, 1, 4) and len(block.weeks) == 3
    assert block.goals == ("kick-into-stroke", "kick-endurance")
    for week in block.weeks:
        assert list(week.days) == ["mon", "tue", "wed", "thu", "fri", "sat", "sun"]
        assert [name for name, day in week.days.items() if day.rest] == ["tue", "thu", "sat", "sun"]
        assert all(len(list(week.days[name].practices)) == 1 for name in ("mon", "wed", "fri"))


def test_check_has_no_more_to_say_of_it_than_of_any_block_on_those_days(saved) -> None:
    loaded = load(saved)
    said = [*loaded.findings, *check(Analysis(loaded.catalogue, DAY))]
    # days that the timetable does not have were asked for; the season is the coach's to write
    assert {finding.code for finding in said} == {"outside-timetable", "block-unlisted"}
    assert not any(finding.is_error for finding in said)


def test_the_focus_of_a_week_names_its_practices_as_their_files_do(saved) -> None:
    """A composed one by its set: not by goals once more, nor by a number that no title has."""
    catalogue = load(saved).catalogue
    named = 0
    for week in catalogue.blocks["heron-winter"].weeks:
        ids = {id for day in week.days.values() for id in day.practices}
        titles = [catalogue.practices[id].title for id in ids]
        names = {title.rpartition(": ")[2].rpartition(" – ")[2].lower() for title in titles}
        told = week.focus.partition(": ")[2].partition(";")[0].rstrip(".").lower()
        assert told and all(any(one in name or name in one for name in names)
                            for one in told.split(" and ")), (told, names)  # fmt: skip
        assert " – " not in week.focus
        named += any(" – " in title for title in titles)
    assert named  # or nothing composed is in it


def test_the_same_wishes_give_the_same_files(saved, tmp_path) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    assert run(root, *WISHES, "--save", "heron-winter") == 0
    for file in saved.rglob("*.yml"):
        assert (root / file.relative_to(saved)).read_bytes() == file.read_bytes()


def test_planned_figures_stand_beside_wishes_as_the_block_itself_has_them(saved, capsys) -> None:
    assert run(saved, "--judge", "heron-winter", "--kick", "90-95", "--json") == 0
    told: dict[str, Any] = json.loads(capsys.readouterr().out)
    assert list(told) == [
        "version", "block", "title", "starts", "group", "how", "weeks", "shares", "goals",
        "not_met", "empty",
        "left_out", "composed", "findings",
    ]  # fmt: skip
    analysis = Analysis(load(saved).catalogue, DAY)
    summary = next(iter(analysis.blocks["heron-winter"].values()))
    assert [week["metres"] for week in told["weeks"]] == [
        round(w.balance.metres) for w in summary.weeks
    ]
    assert [week["load"] for week in told["weeks"]] == [
        round(w.load.total) for w in summary.weeks if w.load
    ]
    share = summary.balance.kick_share
    assert told["shares"][0] == {
        "name": "kick_share", "share": round(share, 3), "from": 0.9, "to": 0.95, "met": False,
    }  # fmt: skip
    told_of = f"not met: {show_number(100 * share)} % kick; drop --kick, or let it reach that"
    assert told_of in told["not_met"]


def test_a_hand_made_block_is_judged_and_not_touched(capsys) -> None:
    file = CATALOGUE / "plans/blocks/heron-legs-in-three-weeks.yml"
    before = file.read_bytes()
    assert run(CATALOGUE, "--judge", "heron-legs-in-three-weeks", "--loads", "100,100,50") == 0
    said = capsys.readouterr().out
    assert "flutter on the back, of all flutter: 100 %, wished 75 % or more" in said
    # of 10, by weights of 3 and 1
    wished = "3 of 4 parts: 8 (10 practices × 3 ÷ 4, up to the next whole one)"
    assert f"kick into stroke: 10 practices, wished {wished}\n" in said
    assert re.search(r"  most often: heron-[a-z-]+, \d+ of 10 practices, in \d of 3 weeks\n", said)
    for benchmark in ("back-kick-50", "back-kick-200"):
        none = f"not met: no practice of the squad runs {benchmark}: write one that does"
        assert said.count(none) == 1
    assert "again within a week" not in said  # a skill does come again
    assert file.read_bytes() == before


def test_page_sum_and_judge_set_a_block_beside_its_wishes_in_the_same_words(saved, capsys) -> None:
    assert run(saved, "--judge", "heron-winter") == 0
    judged = [own for own in capsys.readouterr().out.splitlines() if ", wished " in own]
    assert main(["sum", "heron-winter", "--root", str(saved), "--today", str(DAY)]) == 0
    summed = [own for own in capsys.readouterr().out.splitlines() if ", wished " in own]
    loaded = load(saved)
    analysis = Analysis(loaded.catalogue, DAY)
    page = block_page(analysis, analysis.blocks["heron-winter"], ())
    rows = page.context["ways"][0]["wishes"]
    shown = [
        f"  {row['what']}: {row['planned'].value}, wished {row['wished']}"
        + ("; not met" if row["met"] == "not met" else "")
        for row in rows
    ]
    assert shown and shown == summed == judged
    text = Templates(SITE_SOURCE / "templates").page("block", {**page.context, "base": page.base})
    html = re.sub(r"\s+", " ", re.sub(r"<[^>]+>", " ", text))
    for row in rows:  # with the working of each number that has one
        what = row["what"][:1].upper() + row["what"][1:]
        assert f"{what} {row['wished']} {row['planned'].value}" in html
        assert not row["planned"].working or row["planned"].working in html
    assert {row["what"] for row in rows} >= {"kick into stroke", "kick endurance"}


def test_a_saved_block_keeps_what_was_asked_and_not_met(tmp_path, capsys) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    asked = ("--kick", "90-95", "--dolphin", "0-50", "--loads", "80,100,60", "--strokes", "5")
    assert run(root, *WISHES, *asked, "--save", "heron-winter") == 0
    told = capsys.readouterr().out
    block = load(root).catalogue.blocks["heron-winter"]
    assert block.wishes is not None and block.wishes.loads == (80, 100, 60)
    assert dict(block.wishes.goals) == {"kick-into-stroke": 2, "kick-endurance": 1}
    assert list(block.wishes.shares) == ["kick_share"] and list(block.balance) == ["dolphin_share"]
    assert block.wishes.strokes == 0.05 and block.wishes.full_load > 0
    assert run(root, "--judge", "heron-winter") == 0
    again = capsys.readouterr().out
    wanted = [own for own in told.splitlines() if ", wished " in own or own.startswith("not met")]
    assert wanted == [
        own for own in again.splitlines() if ", wished " in own or own.startswith("not met")
    ]
    assert any(own.startswith("  kick: ") and own.endswith("; not met") for own in wanted)


def test_usual_loads_are_kept_judged_and_named_where_they_are_missed(saved, capsys) -> None:
    wishes = load(saved).catalogue.blocks["heron-winter"].wishes
    assert wishes is not None and wishes.loads == (85, 95, 100)
    assert run(saved, "--judge", "heron-winter") == 0
    said = capsys.readouterr().out
    missed = re.findall(r"week (\d) of a full one: .*; not met", said)
    named = re.findall(r"not met: week (\d) weighs", said)
    assert len(re.findall(r"week \d of a full one: ", said)) == 3
    assert missed == named


def test_a_taper_is_told_by_its_load_without_the_race(tmp_path, capsys) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    assert run(root, *WISHES, "--race-day", "2027-01-24", "--save", "heron-race") == 0
    said = capsys.readouterr().out
    # 45 minutes at 6, as planning guesses
    assert "week 3: what is of a full one is without its races, which weigh 270" in said
    analysis = Analysis(load(root).catalogue, DAY)
    week = list(loads_of(next(iter(analysis.blocks["heron-race"].values()))))[2]
    assert week.week.load is not None and week.part is not None
    assert [day.name for day in week.races] == ["sun"] and week.of_races == 270
    assert week.part == pytest.approx(100 * (week.week.load.total - 270) / week.full)
    path = root / "plans/blocks/heron-race.yml"
    text, third = path.read_text("utf-8"), "      sat: {rest: true}\n      sun: {other:"
    walk = "      sat: {other: A walk by the river., minutes: 30, rating: 2}\n      sun: {other:"
    assert text.count(third) == 1
    path.write_text(text.replace(third, walk), "utf-8")
    beside = next(iter(Analysis(load(root).catalogue, DAY).blocks["heron-race"].values()))
    assert [day.name for day in [*loads_of(beside)][2].races] == ["sun"]
    of_meet = replace(beside, meet_days=(date(2027, 1, 23), date(2027, 1, 24)))
    assert [day.name for day in [*loads_of(of_meet)][2].races] == ["sat", "sun"]
    part = show_number(week.part, 0)
    assert f"  week 3 of a full one, without its races: {part} %, wished " in said


def test_a_main_set_within_seven_days_is_told_with_both_days() -> None:
    day = date(2027, 1, 4)
    ladder, other = choice("a", mains=("ladder",)), choice("b", mains=("ladder", "chute"))
    days = [(day + timedelta(n), 1, own) for n, own in ((0, ladder), (6, other), (13, ladder))]
    (told,) = again_in(days)
    assert told == Again("ladder", day, day + timedelta(6))


def test_what_comes_again_on_the_same_days_is_told_in_one_line_by_its_titles() -> None:
    days = [date(2027, 1, day) for day in (4, 6, 11)]
    drills = {id: SimpleNamespace(title=f"Kick {id}") for id in "abcd"}
    catalogue: Any = SimpleNamespace(
        sets={"ladder": SimpleNamespace(title="Up and down")}, drills=drills
    )
    again = [
        Again("ladder", days[0], days[1]), Again("a b c d", days[0], days[1]),
        Again("ladder", days[1], days[2]), Again("a b c d", days[1], days[2]),
        Again("b", days[1], days[2]), Again("b", date(2027, 2, 1), date(2027, 2, 2)),
    ]  # fmt: skip
    ladder = "'Up and down', 'Kick a', 'Kick b', 'Kick c' and 1 more"
    assert [*again_words(catalogue, again)] == [
        f"again within a week: {ladder}: Mon 2027-01-04, Wed 2027-01-06 and Mon 2027-01-11",
        "again within a week: 'Kick b': Wed 2027-01-06 and Mon 2027-01-11",
        "again within a week: 'Kick b': Mon 2027-02-01 and Tue 2027-02-02",
    ]


def test_a_race_without_a_taper_is_judged_and_one_that_was_wished_away_is_not(
    tmp_path, capsys
) -> None:
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    file = root / "plans/blocks/heron-legs-in-three-weeks.yml"
    text, tapered = file.read_text("utf-8"), "    taper: true\n"
    assert text.count(tapered) == 1
    text = text.replace(tapered, "").replace("\nstarts:", "\nrace_day: 2026-11-22\nstarts:")
    file.write_text(text, "utf-8")
    told = "not met: a taper before the race on 2026-11-22: none; make its last weeks lighter"
    assert run(root, "--judge", "heron-legs-in-three-weeks") == 0
    assert told in capsys.readouterr().out
    race = (*WISHES, "--race-day", "2027-01-24")
    assert run(root, *race, "--taper", "0") == 0 and run(root, *race) == 0
    assert "a taper before" not in capsys.readouterr().out


def test_a_practice_counts_in_a_plan_as_its_own_figures_say() -> None:
    analysis = Analysis(load(CATALOGUE).catalogue, DAY)
    (ladder,) = choices_of(analysis, "osprey")
    summary = analysis.practices["osprey-ladder"]
    first, *others = summary.groups
    own = summary.of(first)
    assert ladder.sums[METRES] == round(own.metres)
    assert ladder.sums[FAST] == round(own.metres * float(own.shares.fast or 0))
    assert ladder.sums[RESISTED] == round(own.metres * float(own.shares.resisted or 0))
    most = max(
        summary.of(group).metres * float(summary.of(group).shares.fast or 0)
        for group in (first, *others)
    )
    assert ladder.most[HARD] == (most >= analysis.catalogue.policy.limit("hard_day_fast"))
    assert bool(ladder.most[WORN]) == any(
        analysis.catalogue.gear[id].resists for swum in summary.every_way for id in swum.gear
    )
    assert ladder.sums[LOAD] > 0 and set(ladder.goals) <= set(analysis.catalogue.words("goals"))


@pytest.mark.parametrize(
    ("wishes", "told"),
    [
        (["--weeks", "0"], "0 weeks: from 1 to 26 can be planned"),
        (["--days", "sun"], "heron has no slot on sun from 2027-01-04 to 2027-01-24"),
        (["--days", "monday,funday"], "there is no day 'funday'"),
        (["--goals", "kick"], "no goal 'kick'; did you mean 'kick-technique', 'kick-speed'"),
        (["--days", "day"], "there is no day 'day'; there are mon, tue,"),
        (["--goals", "juggling"], "there is no goal 'juggling'"),
        (["--goals", "underwater"], "nothing that heron may do in these slots serves under water"),
        (["--goals", "walls=0"], "name one goal or more, each with a weight of 1 or more"),
        (["--goals", "walls=x"], "--goals walls: 'x' is no whole number"),
        (["--squad", "hawk"], "there is no squad 'hawk'; there are reed, heron, osprey"),
        (["--starts", "2026-11-09"],
         "'heron-legs-in-three-weeks' is a block of heron from 2026-11-02 to 2026-11-22"),
        (["--starts", "2027-01-05"],
         "2027-01-05 is a Tuesday; a block begins on a Monday, say 2027-01-04"),
        (["--meet", "spring-meet"], "heron does not go to 'spring-meet'"),
        (["--meet", "gala"], "there is no meet 'gala'"),
        (["--race-day", "2027-03-01"],
         "the race is on 2027-03-01, the block from 2027-01-04 to 2027-01-24"),
        (["--loads", "80,90"], "2 loads are named for 3 weeks"),
        (["--loads", "80,90,101"],
         "--loads 80,90,101: hundredths of a full week, a number from 1 to 100 for each week"),
        (["--test", "back-kick-50=9"], "back-kick-50 in week 9: tests are run in weeks 1 to 3"),
        (["--loads", f"80,90,{'9' * 5000}"],
         "hundredths of a full week, a number from 1 to 100 for each week"),
        (["--test", f"back-kick-50={'1' * 5000}"],
         "write the weeks by their numbers, say back-kick-50=1,8"),
        (["--test", "back-kick-50=\u0661"],
         "write the weeks by their numbers, say back-kick-50=1,8"),
        (["--goals", "walls=2,walls=3"], "--goals: 'walls' stands there twice"),
        (["--test", "back-kick-50=1", "--test", "back-kick-50=2"],
         "--test: 'back-kick-50' stands there twice"),
        (["--judge", "heron-legs-in-three-weeks"],
         ("with its own weeks, days and race: leave out --squad, --starts, --weeks, --days, "
         "--like, --steps, --no-solver")),
        (["--fill", "heron-legs-in-three-weeks", "--taper", "0"],
         ("the weeks and the taper that the block has: leave out --squad, --starts, --weeks, "
         "--taper")),
        (["--test", "swim-5"], "there is no benchmark 'swim-5'"),
        (["--starts", "9999-12-27"], "9999-12-27 is out of reach: name a day from 1900 to 2199"),
        (["--test", "back-kick-50=2,2"], "a test is run once in a week: name each week once"),
        (["--strokes", "26"], "26 hundredths of each of four strokes: 0 to 25 can be"),
        (["--strokes", "-1"], "-1 hundredths of each of four strokes: 0 to 25 can be"),
        (["--taper", "-1", "--race-day", "2027-01-20"],
         "-1 weeks of taper: from 0 to 2 can be before a race"),
        (["--taper", "99", "--race-day", "2027-01-20"],
         "99 weeks of taper: from 0 to 2 can be before a race"),
        (["--taper", "2"], "--taper is before a race: name --meet or --race-day"),
        (["--goals", "wals"], "there is no goal 'wals'; did you mean 'walls'?"),
        (["--slot", "mon=17:30+75"], "--slot and --like both say when: leave out one"),
        (["--dry-run"], "--dry-run is of --fill"),
        (["--steps", "1000000000000"], "--steps 1000000000000: from 0 to 1000000"),
        (["--kick", "35"], "--kick 35: write a range in hundredths"),
        (["--kick", "0.35"], "--kick 0.35: write a range in hundredths"),
        (["--kick", "-5"], "--kick -5: write a range in hundredths"),
        (["--judge", "heron-legs-in-three-weeks", "--save", "x"], "leave out --save"),
        (["--judge", "heron-legs-in-three-weeks", "--fill", "x"], "leave out one"),
        (["--test", "back-kick-50=x"],
         "--test back-kick-50=x: write the weeks by their numbers, say back-kick-50=1,8"),
        (["--loads", "80"], "1 load is named for 3 weeks"),
        (["--kick", "30-20"],
         ("--kick 30-20: write a range in hundredths, from 0 to 100: say 20-35, 35- for that and "
         "more")),
        (["--slot", "mon=7"],
         "--slot mon=7: write DAY=HH:MM+MINUTES@POOL, of 1 to 240 minutes, say mon=17:30+75@home"),
        *((["--slot", slot], f"--slot {slot}: write DAY=HH:MM+MINUTES@POOL")
          for slot in ("mon= 7:30+75", "mon=1\u0667:30+75", "mon=24:00+75", "mon=17:30+7_5",
                       "mon=17:30+241", "mon=17:30+0", "17:30+75")),
        (["--slot", "mon=17:30+75@sea"], "there is no pool 'sea'"),
        (["--slot", "mon=23:30+75"], "--slot mon=23:30+75: it ends after midnight"),
        (["--slot", "mon=17:30+75", "--slot", "Monday=18:00+60"],
         "--slot: two overlap on mon, from 17:30 and from 18:00"),
        (["--slot", "mon=17:30+5"], "nothing fits any slot, the longest of 5 minutes, and "),
        (["--like", "spring"], "there is no block 'spring'"),
        (["--steps", "-1"], "--steps -1: from 0 to 1000000"),
        (["--judge", "spring"], "there is no block 'spring'; there is heron-legs-in-three-weeks"),
        (["--save", "heron-legs-in-three-weeks"],
         "the block 'heron-legs-in-three-weeks' exists already"),
        ([f"--slot={day}=17:30+90" for day in ("mon", "tue", "wed", "thu", "fri", "sat", "sun")],
         "7 slots in the seven days from 2027-01-04, and heron has 4 practices a week"),
    ],
)  # fmt: skip
def test_a_wish_that_cannot_be_gets_a_sentence(wishes: list[str], told: str, capsys) -> None:
    slots = any(own.startswith("--slot") for own in wishes) and wishes != ["--slot", "mon=17:30+75"]
    without = ("--like", "heron-legs-in-three-weeks", "--days", "mon,wed,fri") if slots else ()
    first = [own for own in WISHES if own not in without]
    assert run(CATALOGUE, *first, *wishes) == 2
    said = capsys.readouterr()
    assert told in said.err and said.out == "" and "Traceback" not in said.err


@pytest.fixture
def half_made(tmp_path: Path) -> Path:
    """The small catalogue with a block of two weeks, of which some days are empty."""
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    path = root / "plans/blocks/heron-half.yml"
    path.write_text(HALF, "utf-8")
    return root


HALF = """title: "Heron: half a block"
summary: Two weeks of which the coach has written the first days.
squad: heron
goals: [kick-into-stroke]
starts: 2027-01-04
purpose: >-
  To show that what stands is left as it stands, and that it has worked when no byte of it moved.
weeks:
  # What the coach has written.
  - focus: What is written.
    days:
      mon: {practice: heron-kick-and-go}
      # Wednesday is for the other hall.
      wed: {rest: true}
      sun: {rest: true}
  - focus: What is not.
    days: {mon: {rest: true}, tue: {rest: true}}
"""
SLOTS = (
    "--slot=mon=17:30+90@home",
    "--slot=wed=17:30+90@home",
    "--slot=fri=17:30+90@home",
    "--no-solver",
    "--steps=300",
)


def test_only_the_empty_days_of_a_block_are_filled(half_made, capsys) -> None:
    path = half_made / "plans/blocks/heron-half.yml"
    assert run(half_made, "--fill", "heron-half", *SLOTS, "--dry-run") == 0
    assert path.read_text("utf-8") == HALF
    assert run(half_made, "--fill", "heron-half", *SLOTS) == 0
    lines, before = path.read_text("utf-8").split("\n"), HALF.split("\n")
    assert [line for line in lines if line in before] == [
        *before[:-2],
        "",
    ]  # the last week stands on one line
    block = load(half_made).catalogue.blocks["heron-half"]
    assert all(
        list(week.days) == ["mon", "tue", "wed", "thu", "fri", "sat", "sun"] for week in block.weeks
    )
    first, second = block.weeks
    assert [name for name, day in first.days.items() if [*day.practices]] == ["mon", "fri"]
    assert [name for name, day in second.days.items() if [*day.practices]] == ["wed", "fri"]
    capsys.readouterr()
    assert run(half_made, "--fill", "heron-half", *SLOTS) == 2
    assert "'heron-half' has no empty day" in capsys.readouterr().err


def test_an_empty_week_is_filled_and_what_else_is_done_in_one_counts(half_made, capsys) -> None:
    """A week with an hour of other work is not given a whole week of practices beside it."""
    path = half_made / "plans/blocks/heron-half.yml"
    text = HALF.replace("{mon: {rest: true}, tue: {rest: true}}", "{}  # to be written")
    path.write_text(text, "utf-8")
    assert run(half_made, "--fill", "heron-half", *SLOTS, "--loads", "95,95") == 0
    filled = path.read_text("utf-8")
    assert "    days:  # to be written\n      mon: {" in filled
    block = load(half_made).catalogue.blocks["heron-half"]
    assert len(block.weeks[1].days) == 7
    assert [name for name, day in block.weeks[1].days.items() if [*day.practices]] == [
        "mon", "wed", "fri",
    ]  # fmt: skip
    capsys.readouterr()
    work = text.replace("{}  # to", "{tue: {other: A walk., minutes: 60, rating: 4}}  # to")
    path.write_text(work, "utf-8")
    read = load_and_check(half_made, DAY)
    assert read.analysis is not None
    asked = BlockRequest("heron", date(2027, 1, 4), 2, {"kick-into-stroke": 1})
    wishes = wishes_of_begun(read.analysis, asked, read.analysis.catalogue.blocks["heron-half"])
    assert [week.beside for week in wishes.weeks] == [0, 240]


def test_a_day_without_a_slot_and_a_practice_much_shorter_than_its_slot_are_told(capsys) -> None:
    wishes = [own for own in WISHES if own not in ("--like", "heron-legs-in-three-weeks")]
    days = ("--days", "mon,sunday", "--slot", "mon=17:30+120@home", "--loads", "80,95,100")
    assert run(CATALOGUE, *wishes, *days) == 0
    said = capsys.readouterr().out
    none = "no slot on a Sunday from 2027-01-04 to 2027-01-24: name one with --slot sun=17:30+60"
    assert said.count(none) == 1
    short = r"shorter than the slot in week (\d): mon \d+ of 120 minutes, as (.*)"
    told = dict(re.findall(short, said))
    assert {*told.values()} == {"no practice that may stand there is longer"}


@pytest.mark.parametrize(
    ("about", "which", "why"),
    [
        ("goal short", "legs", "longer ones serve strong legs less"),
        ("goal long gone", "legs 3", "longer ones serve strong legs less"),
        ("load over", "1", "the week, a test week, is to weigh 80 % of a full one"),
        ("load under", "1", "longer ones would leave the week too light"),
        ("cut too little", "2027-01-04", "longer ones ease too little before the race"),
        ("same again", "long 2027-01-04", "longer ones would come again too soon or too often"),
        ("kick_share over", "kick_share", "with longer ones the share is missed of what is kick"),
        ("limit", "", "a limit or the order of teaching keeps longer ones out"),
    ],
)
def test_of_a_practice_much_shorter_than_its_slot_the_wish_is_told_that_a_longer_one_misses(
    about: str, which: str, why: str
) -> None:
    short, long = (replace(choice(id), minutes=own) for id, own in (("short", 40), ("long", 75)))
    slots = (DaySlot(DAY, 0, "home", "18:00", 75),)
    points = 0 if about == "limit" else 30
    rules = (
        PlanRule("other", "", {0: {2: 1}}, 0, 10),
        PlanRule(about, which, {0: {2: 1}}, 0, points),
    )
    problem = PlanProblem(slots, (NOTHING, short, long), ((0, 1, 2),), ({0: 500},), rules)
    words = {"legs": SimpleNamespace(title="Strong legs")}
    catalogue = SimpleNamespace(words=lambda _: words)
    planning: Any = SimpleNamespace(problem=problem, slots=slots,
                                    grid=SimpleNamespace(choices=problem.choices),
                                    analysis=SimpleNamespace(catalogue=catalogue))  # fmt: skip
    week = SimpleNamespace(number=1, wished=80, kind="test")
    judged: Any = SimpleNamespace(weeks=[week])
    day = DAYS[DAY.weekday()]
    expected = f"shorter than the slot in week 1: {day} 40 of 75 minutes, as {why}"
    assert [*short_words(judged, planning, (1,))] == [expected]
    assert not [*short_words(judged, planning, (2,))]


def test_who_has_the_lanes_is_told_where_they_are_not_free() -> None:
    """On that Monday Heron has them from half past five on."""
    analysis = _read_small().analysis
    assert analysis is not None
    on = date(2026, 11, 2)
    slots = tuple(DaySlot(on, 0, "home", begins, 60) for begins in ("17:30", "20:00"))
    wishes = BlockWishes(on, {}, (WeekWish("loading", 100),))
    own = Planning(analysis, "reed", slots, (choice("own"),), wishes, limits_of(analysis, "reed"))
    assert own.why_empty(0) == "1 with gear, lanes or adults that are not free beside Heron"
    assert own.why_empty(1) == "1 that a limit or the order of teaching keeps out"


def test_fewer_practices_than_a_week_has_slots_are_told_with_how_to_have_more() -> None:
    slots = tuple(DaySlot(DAY + timedelta(days=day), 0, "home", "18:00", 60) for day in range(3))
    planning: Any = SimpleNamespace(slots=slots)
    (told,) = few_words(planning, (1, 0, 1))
    assert told.startswith("1 practice for 3 slots a week: ") and "almanac bring" in told
    assert not [*few_words(planning, (1, 2, 3))] and not [*few_words(planning, (0, 0, 0))]


def test_goals_without_a_wish_are_goals_of_the_block_and_count_what_serves_them(
    half_made, capsys
) -> None:
    asked = ("--root", str(half_made), "--today", str(DAY))
    assert main(["sum", "heron-half", *asked]) == 0
    said = capsys.readouterr().out
    told = "Beside its goals and wishes:\n  kick into stroke: 1 practice, a goal of the block\n"
    assert told in said
    path = half_made / "plans/blocks/heron-half.yml"
    path.write_text(HALF.replace("[kick-into-stroke]", "[underwater]"), "utf-8")
    assert run(half_made, "--judge", "heron-half") == 0
    said = capsys.readouterr().out
    assert "  under water: 0 practices, a goal of the block; not met\n" in said
    assert "not met: under water in 0 practices; drop it\n" in said


def test_the_head_of_wishes_tells_every_lane_group_and_what_is_not_known(half_made) -> None:
    path = half_made / "plans/blocks/heron-half.yml"
    analysis = Analysis(load(half_made).catalogue, DAY)
    groups = dict(analysis.blocks["heron-half"])
    first, second = [*groups][:2]
    own = groups[first]
    assert block_page(analysis, {first: own}, ()).context["missed"] == "all met"
    # the second lane group is not there: it serves no goal
    none = [replace(day, sessions=()) for day in own.days[:7]]
    week = replace(own.weeks[0], days=tuple(none), balance=balance_of([]))
    away = replace(own, weeks=(week, own.weeks[1]))
    page = block_page(analysis, {first: own, second: away}, ())
    assert page.context["missed"] == "not met: kick into stroke"
    path.write_text(HALF + "wishes: {loads: [80, 90], full_load: 300}\n", "utf-8")
    wished = Analysis(load(half_made).catalogue, DAY)
    page = block_page(wished, wished.blocks["heron-half"], ())
    assert page.context["missed"] == "2 not known"


def test_wishes_that_filling_leaves_out_of_the_entry_are_told(half_made, capsys) -> None:
    asked = (*SLOTS, "--dry-run", "--goals", "kick-into-stroke=1")
    assert run(half_made, "--fill", "heron-half", *asked) == 0
    assert "keeps its own" not in capsys.readouterr().out  # the same goal
    asked = (*asked[:-1], "kick-endurance", "--loads", "80,90", "--kick", "10-")
    assert run(half_made, "--fill", "heron-half", *asked) == 0
    said = capsys.readouterr().out
    assert (
        "of other wishes the entry keeps its own: --goals, --loads, --kick; where these are" in said
    )
    asked = (*SLOTS, "--dry-run", "--race-day", "2027-01-16")
    assert run(half_made, "--fill", "heron-half", *asked) == 0
    assert "of other wishes the entry keeps its own: --race-day; where" in capsys.readouterr().out


def test_a_saved_block_is_judged_by_the_loads_that_were_wished(saved, capsys) -> None:
    assert run(saved, "--judge", "heron-winter", "--json") == 0
    told: dict[str, Any] = json.loads(capsys.readouterr().out)
    assert [week["wished"] for week in told["weeks"]] == [85, 95, 100]


def test_json_stands_alone_where_a_block_is_written(half_made, capsys) -> None:
    assert run(half_made, "--fill", "heron-half", *SLOTS, "--json") == 0
    said = capsys.readouterr()
    assert json.loads(said.out)["block"] == "heron-half"
    assert "wrote " in said.err and "plans/blocks/heron-half.yml" in said.err


def test_a_block_that_is_not_there_cannot_be_filled(capsys) -> None:
    assert run(CATALOGUE, "--fill", "spring") == 2
    assert (
        "there is no block 'spring'; there is heron-legs-in-three-weeks" in capsys.readouterr().err
    )


@pytest.mark.parametrize("name", ["--starts", "--weeks"])
def test_what_has_to_be_said_is_asked_for(name: str, capsys) -> None:
    at = WISHES.index(name)
    assert run(CATALOGUE, *WISHES[:at], *WISHES[at + 2 :]) == 2
    assert f"say {name}" in capsys.readouterr().err


@pytest.mark.parametrize("way", ["--judge", "--fill"])
@pytest.mark.parametrize(
    ("old", "new", "words"),
    [
        (
            "squad: heron", "squad: osprey",
            "on mon of week 1: 'heron-kick-and-go' is a practice of heron; put one of osprey there",
        ),
        ("taper: true", "taper: yes-please", "cannot be read yet:"),
    ],
)  # fmt: skip
def test_what_a_half_made_block_may_not_hold_is_told(
    way: str, old: str, new: str, words: str, tmp_path: Path, capsys
) -> None:
    """Another squad's practice, and a word that is none, with its place."""
    root = tmp_path / "club"
    shutil.copytree(CATALOGUE, root)
    file = root / "plans/blocks/heron-legs-in-three-weeks.yml"
    text = file.read_text("utf-8")
    assert old in text
    file.write_text(text.replace(old, new, 1), "utf-8")
    assert run(root, way, "heron-legs-in-three-weeks") == 2
    said = capsys.readouterr().err
    assert words in said
    if old.startswith("taper"):
        line = text[: text.index(old)].count("\n") + 1
        assert f"heron-legs-in-three-weeks.yml:{line}:" in said


def test_a_block_that_starts_in_the_past_is_told(capsys) -> None:
    assert run(CATALOGUE, *WISHES) == 0
    assert "before today" not in capsys.readouterr().out
    assert run(CATALOGUE, *WISHES, "--today", "2027-01-05") == 0
    assert "it starts on 2027-01-04, before today (2027-01-05)" in capsys.readouterr().out


@pytest.mark.parametrize(
    ("efforts", "reps", "work"),
    [
        (("easy", "strong"), (50, 25), "back kick|strong|0"),
        (("easy", "steady"), (400, 400), "back kick|steady|3"),
        (("steady", "steady"), (100, 50), "back kick|steady|1"),
    ],
)
def test_main_sets_of_no_file_are_alike_by_drills_effort_and_reach(
    efforts: tuple[str, str], reps: tuple[int, int], work: str
) -> None:
    """So 50s at pace and easy 400s of one stroke are two sets."""
    scale = Analysis(load(CATALOGUE).catalogue, DAY).scale

    def rep(id: str, effort: str, distance: int) -> SimpleNamespace:
        at = scale.rating(effort)
        span = EffortSpan(at, at, (effort, effort), Fraction(0))
        piece = SimpleNamespace(effort=span, drill=SimpleNamespace(id=id))
        return SimpleNamespace(distance=distance, pieces=[piece])

    every = [*map(rep, ("back", "kick"), efforts, reps)]
    run: Any = SimpleNamespace(swim_set=None, every_rep=every)
    assert planning_practices._work(scale, run) == work
    drills = {"back": SimpleNamespace(title="Backstroke"), "kick": SimpleNamespace(title="Kick")}
    catalogue: Any = SimpleNamespace(sets={}, drills=drills)
    told = [*again_words(catalogue, [Again(work, DAY, DAY + timedelta(days=2))])]
    assert told[0].startswith("again within a week: 'Backstroke', 'Kick': ")


def test_closures_are_left_out_and_told(capsys) -> None:
    # the pool is shut in the last week of October, and the year begins in September
    argv = [*WISHES, "--starts", "2026-10-19", "--weeks", "2"]
    assert run(CATALOGUE, *argv) == 0
    said = capsys.readouterr().out
    assert "left out: Mon 2026-10-26 to Fri 2026-10-30, 3 slots, Baths cleaned" in said
    assert "2 weeks from 2026-10-19" in said


def test_a_week_without_a_slot_is_told_with_why(capsys) -> None:
    # by the timetable: it has slots from 4 January to 28 March, and the year is shut before it
    argv = ("--squad", "osprey", "--goals", "kick-endurance", "--no-solver", "--steps", "0")
    assert run(CATALOGUE, *argv, "--starts", "2026-12-21", "--weeks", "3") == 0
    said = capsys.readouterr().out
    assert "left out: week 1, Christmas" in said and "left out: week 2, Christmas" in said
    assert "left out: week 3" not in said
    assert run(CATALOGUE, *argv, "--starts", "2027-03-22", "--weeks", "2") == 0
    assert "left out: week 2, no timetable has a slot for the squad" in capsys.readouterr().out


def test_without_the_solver_it_is_said_how_to_have_it(capsys, monkeypatch) -> None:
    monkeypatch.setattr("almanac.commands.compose_block_tried.can_solve", lambda: False)
    assert run(CATALOGUE, *BETTERED) == 0
    said = capsys.readouterr().out
    assert "could be gained; a solver comes nearer: pip install ortools" in said


def test_where_no_bound_is_found_that_is_said() -> None:
    plan = SimpleNamespace(cost=9, bound=0, greedy=12, is_solved=False)
    assert "; how far from the best is not known: no bound was found" in how(plan)
    told = "9 points, of which fewer are better (greedy alone 12)"
    solved = SimpleNamespace(**{**vars(plan), "is_solved": True, "bound": 6})
    assert how(solved) == (
        f"By the solver: {told}; none has fewer than 6, at most 34 in a hundred could be gained"
    )
    best = SimpleNamespace(**{**vars(solved), "bound": 9})
    assert how(best) == f"By the solver: {told}, and no plan has fewer"


def test_without_the_solver_too_it_is_told_that_no_plan_is_better(capsys) -> None:
    assert run(CATALOGUE, *WISHES, "--weeks", "1") == 0
    assert re.search(r"exchanges: \d+ points, .*, and no plan has fewer$", capsys.readouterr().out,
                     re.MULTILINE)  # fmt: skip


def test_without_the_solver_too_it_is_told_how_far_from_the_best_it_can_be(capsys) -> None:
    assert run(CATALOGUE, *BETTERED) == 0
    (told,) = re.findall(
        r"exchanges: (\d+) points, .*; none has fewer than (\d+), at most (\d+) in a hundred",
        capsys.readouterr().out,
    )
    cost, bound, most = map(int, told)
    assert 0 < bound < cost and most - 1 < 100 * (cost - bound) / cost <= most


def test_a_change_of_metres_stands_beside_the_metres(capsys) -> None:
    block = "heron-legs-in-three-weeks"
    assert main(["sum", block, "--root", str(CATALOGUE), "--today", str(DAY)]) == 0
    lines = capsys.readouterr().out.splitlines()
    head = next(line for line in lines if line.startswith("week "))
    assert head.split()[:4] == ["week", "metres", "change", "kick"] and head.endswith("strain")
    analysis = Analysis(load(CATALOGUE).catalogue, DAY)
    first, second, _ = next(iter(analysis.blocks[block].values())).weeks
    change = round(100 * (second.balance.metres / first.balance.metres - 1))
    row = next(line for line in lines if line.startswith("2  "))
    shown = row[: head.index("change") + len("change")].split()[2:]
    assert " ".join(shown) == (f"{'+' if change > 0 else '−'}{abs(change)} %" if change else "0 %")


def test_what_is_not_saved_is_told_of_under_no_name_and_fewer_points_are_better(capsys) -> None:
    assert run(CATALOGUE, *WISHES) == 0
    said = capsys.readouterr().out
    assert re.search(r"\d+ points, of which fewer are better \(greedy alone \d+\)", said)
    assert f"'{UNSAVED}'" not in said and "block-unlisted" not in said


def test_findings_name_files_where_they_are_to_stand() -> None:
    text = (CATALOGUE / "plans/practices/heron-kick-and-go.yml").read_text("utf-8")
    other = Unwritten("practice", "heron-once-more", text)
    _, findings = tried(_read_small(), [other], DAY)
    said = [own for own in findings if other.file in own.message + own.hint]
    assert said
    assert tempfile.gettempdir() not in " ".join(own.message + own.hint for own in findings)


def test_no_two_plans_of_a_squad_share_a_day() -> None:
    block = load(CATALOGUE).catalogue.blocks["heron-legs-in-three-weeks"]
    after = block.starts + timedelta(weeks=len(block.weeks))
    assert run(CATALOGUE, *WISHES, "--starts", str(after - timedelta(weeks=1))) == 2


@pytest.mark.parametrize(
    ("on", "days", "after"),
    [(date(2027, 1, 5), 10, True), (date(2027, 1, 5), 20, False), (date(2027, 1, 12), 10, False),
     (date(2027, 4, 6), 5, False)],
)  # fmt: skip
def test_the_first_day_after_a_holiday_follows_a_break(on: date, days: int, after: bool) -> None:
    # the small season is shut from 21 December to 3 January; only its winter, from 4 January, has a
    # timetable
    catalogue = load(CATALOGUE).catalogue
    assert follows_a_break(catalogue, "heron", on, days) is after


@pytest.mark.parametrize(
    ("number", "words"),
    [
        # Too heavy with a test that runs in two weeks more; as light as wished; heavy without a
        # test; heavy with the only one; heavy without one that was wished for.
        (1, "run its test in the other weeks alone (--test kick-50=3,4), "),
        (3, ""), (2, ""), (5, ""), (6, ""),
        (4, "run its test in the other weeks alone (--test kick-50=1,3), "),
    ],
)  # fmt: skip
def test_of_a_week_that_is_too_heavy_with_its_test_the_other_weeks_are_named(
    number: int, words: str
) -> None:
    runs = (("kick-50",), (), ("kick-50",), ("kick-50",), ("back-100",), ("fly-50",), ("fly-50",))
    loads = (107.0, 96.0, 79.0, 101.0, 99.0, 99.0, 79.0)
    answer: Any = SimpleNamespace(
        judged=SimpleNamespace(
            weeks=[SimpleNamespace(of_full=load, wished=80) for load in loads],
            untested=(("fly-50", 6),),
            summary=SimpleNamespace(
                block=SimpleNamespace(weeks=[SimpleNamespace(benchmarks=own) for own in runs])
            ),
        )
    )
    assert _without_tests(answer, number) == words


def test_the_same_parts_in_another_pool_or_a_shorter_slot_are_another_practice(monkeypatch) -> None:
    """At another time of day they are the same one: a block says when it goes."""
    monday = date(2027, 1, 4)
    booked = [("home", "18:00", 60), ("away", "18:00", 60), ("home", "18:00", 45),
              ("home", "19:00", 60)]  # fmt: skip
    slots = [DaySlot(monday, 0, pool, begins, minutes) for pool, begins, minutes in booked]
    there = SimpleNamespace(catalogue=SimpleNamespace(practices={}))

    def requests(planning, kind, slots):
        return [SimpleNamespace(minutes=kind.minutes)]

    def composed(made, kind, request, names, opened):
        yield Draft(f"{kind.pool} {kind.begins} {request.minutes}", "", "title: x\nparts:\n  - y\n")

    monkeypatch.setattr(planning_composed, "_requests", requests)
    monkeypatch.setattr(planning_composed, "_composed", composed)
    monkeypatch.setattr(planning_composed, "compose_table", lambda *_: None)
    planning = SimpleNamespace(slots=slots, analysis=there, squad="heron")
    found = [own.id for own in planning_composed.drafts(planning, frozenset())]
    assert found == ["home 18:00 60", "away 18:00 60", "home 18:00 45"]


def test_a_composed_practice_goes_by_its_squads_id_and_by_its_title(monkeypatch) -> None:
    called = [
        ("Heron", "Heron: walls – kick and go"), ("Heron", "Heron: walls – kick and go"),
        ("Цапля №1", "Цапля №1: walls – kick"), ("Цапля №1", "Цапля №1: Ноги"),
        ("Heron", f"Heron: {'walls ' * 9}"),
    ]  # fmt: skip
    names, found = planning_composed._Names({"heron"}, set()), []
    monkeypatch.setattr(planning_composed, "wishes_of", lambda *_: None)
    monkeypatch.setattr(planning_composed, "Asked", lambda *_: None)
    for squad, text in called:
        made: Any = SimpleNamespace(
            table=SimpleNamespace(squad=SimpleNamespace(id="heron", title=squad))
        )
        monkeypatch.setattr(planning_composed, "title", lambda *_, own=text: own)
        nothing: Any = None
        found.append(names.found(made, nothing, nothing)[0])
    assert found == [
        "heron-walls-kick-and-go", "heron-walls-kick-and-go-2", "heron-walls-kick", "heron-2",
        f"heron-{'walls-' * 8}wa",
    ]  # fmt: skip
    assert all(map(is_id, found)) and max(map(len, found)) <= MOST_ID - 4


@pytest.mark.parametrize(
    ("tests", "light", "there", "expected"),
    [
        # A week that is neither light nor has a test; a light one; three light practices are few.
        ((), False, 0, []), ((), True, 3, [{}]), ((), True, 4, []),
        # Before the first test nothing is taught; the block has taught before a later one.
        ((0,), False, 4, [{"ladder": 0}]), ((0,), False, 0, [{}, {"ladder": 0}]),
        ((1,), False, 0, [{}]),
    ],
)  # fmt: skip
def test_light_practices_are_composed_for_tests_too_and_such_as_need_nothing_for_the_first(
    tests: tuple[int, ...], light: bool, there: int, expected: list[dict[str, int]]
) -> None:
    test = choice("test", {LOAD: 100}, {"test": 1}, needs=frozenset({"float"}))
    heavy = [choice(f"h{n}", {LOAD: 200}) for n in range(4)]
    easy = [choice(f"e{n}", {LOAD: 50}, needs=frozenset({"else"})) for n in range(there)]
    weeks = [SimpleNamespace(benchmarks=("kick",) if n in tests else ()) for n in range(2)]
    catalogue = SimpleNamespace(progressions={"ladder": None})
    planning: Any = SimpleNamespace(
        wishes=SimpleNamespace(weeks=weeks, is_light=lambda _: light),
        slots=[SimpleNamespace(week=0, on=DAY), SimpleNamespace(week=1, on=DAY)],
        choices=[test, *heavy, *easy],
        analysis=SimpleNamespace(catalogue=catalogue),
    )
    assert [*_light_lacking(planning, (0, 1), [*heavy, *easy])] == expected
    teaches = choice("t", {LOAD: 50}, teaches=frozenset({"float"}))
    planning.choices = [*planning.choices, teaches]
    found = [*_light_lacking(planning, (0, 1), [*heavy, *easy, teaches])]
    assert {"ladder": 0} not in found


@pytest.mark.parametrize(
    ("needs", "serve", "taught", "lacking"),
    [
        # Where everything needs something, nothing could stand in the first slot.
        (("float",), 4, [{"ladder": 0}], []),
        ((), 4, [], []),
        # Three practices for a goal are few, however many there are for others.
        ((), 3, [], [["legs"], ["legs", "walls"]]),
    ],
)
def test_what_few_practices_serve_is_composed_for_and_such_as_needs_nothing(
    needs: tuple[str, ...], serve: int, taught: list[Any], lacking: list[Any]
) -> None:
    own = [choice(f"w{n}", {LOAD: 9}, needs=frozenset(needs), goals=("walls",)) for n in range(4)]
    own += [
        choice(f"l{n}", {LOAD: 9}, needs=frozenset(needs), goals=("legs",)) for n in range(serve)
    ]
    places = tuple(range(len(own) + 1))
    catalogue = SimpleNamespace(progressions={"ladder": None}, lane_groups={}, efforts={})
    planning: Any = SimpleNamespace(
        wishes=SimpleNamespace(
            goals={"legs": 2, "walls": 1},
            weeks=[SimpleNamespace(benchmarks=())],
            is_light=lambda _: False,
        ),
        slots=[SimpleNamespace(week=0, on=DAY)],
        choices=own,
        grid=SimpleNamespace(choices=(NOTHING, *own), may=[places]),
        analysis=SimpleNamespace(catalogue=catalogue),
        squad="heron",
    )
    kind: Any = SimpleNamespace(pool="home", minutes=60, lanes=frozenset())
    found = [*planning_composed._requests(planning, kind, [0])]
    untaught = [request for request in found if request.taught]
    assert [request.taught for request in untaught] == 2 * taught
    assert [request.goals for request in untaught] == [["legs"], ["walls"]][: 2 * len(taught)]
    assert [request.goals for request in found if not request.taught] == lacking
    # Of two that are alike the first stays: a light one, without which a week stays heavy.
    planning.wishes.is_light = lambda _: True
    catalogue.efforts = {"easy": None}
    minutes = [own.minutes for own in planning_composed._requests(planning, kind, [0])]
    # Easier work in the whole slot comes first, one goal and two, and then less of the slot.
    assert minutes[len(untaught) :] == [60, 60, 60, 60, 40, 40] + [60] * len(lacking)


def test_of_practices_that_say_the_same_the_earliest_stand(monkeypatch) -> None:
    """One that is like another that has gone itself may stay."""
    texts = {"there": "a b c d", "far": "x y z w", "near": "a b c d", "one": "k l m n o",
             "like one": "k l m n o p q r s t u", "like that": "p q r s t u"}  # fmt: skip
    monkeypatch.setattr(planning_unlike, "texts_of", lambda *_: texts)
    policy = SimpleNamespace(limit=lambda _: 0.2)
    analysis: Any = SimpleNamespace(catalogue=SimpleNamespace(policy=policy, practices=texts))
    drafts = ["far", "near", "one", "like one", "like that"]
    assert unlike(analysis, drafts) == ["far", "one", "like that"]
    assert unlike(analysis, [*reversed(drafts)]) == ["like that", "one", "far"]
    assert unlike(analysis, ["like one", "like that"], ["one"]) == ["like one"]
    # However many are tried, those that are alike are: only of those that stay it is counted how
    # many say something.
    many = {f"d{n:02}": "a b c d e f g h i" for n in range(60)}
    monkeypatch.setattr(planning_unlike, "texts_of", lambda *_: many)
    assert unlike(analysis, [*many]) == ["d00"]


def test_of_composed_practices_that_are_alike_that_stands_with_which_a_plan_is_cheapest(
    monkeypatch,
) -> None:
    """'heavy' comes first and is too much, 'wide' keeps 'narrow' out, with which alone the second
    slot is not empty: a plan costs the least with 'light' and 'narrow'.
    """
    texts = {"heavy": "a b c d", "light": "a b c d", "wide": "k l m n", "narrow": "k l m n"}
    costs = {"heavy": (300, 9999), "light": (10, 9999), "wide": (0, 9999), "narrow": (99, 0)}
    monkeypatch.setattr(planning_unlike, "texts_of", lambda *_: texts)
    policy = SimpleNamespace(limit=lambda _: 0.2)
    analysis: Any = SimpleNamespace(catalogue=SimpleNamespace(policy=policy, practices=texts))

    @dataclass(frozen=True)
    class Planned:
        choices: tuple[Choice, ...]

        @property
        def problem(self) -> PlanProblem:
            every = (NOTHING, *self.choices)
            slots = (DaySlot(DAY, 0, "home", "18:00", 60), DaySlot(DAY, 0, "away", "19:00", 60))
            may = tuple(range(len(every)))
            own = tuple(
                {0: 500, **{n: costs[one.id][slot] for n, one in enumerate(every) if n}}
                for slot in range(2)
            )
            return PlanProblem(slots, every, (may, may), own, ())

    each = tuple(replace(choice(id, {LOAD: 100 - n}), composed=True) for n, id in enumerate(texts))
    planning: Any = Planned(each)
    kept = planning_unlike.best_apart(planning, analysis, (), 200).choices
    assert {own.id for own in kept} == {"light", "narrow"}


def test_what_a_test_of_a_later_week_needs_asks_for_nothing_before_the_first() -> None:
    easy = choice("easy", {LOAD: 50}, teaches=frozenset({"float"}))
    heavy = choice("heavy", {LOAD: 200})
    weeks = [SimpleNamespace(benchmarks=("kick",)), SimpleNamespace(benchmarks=("pull",))]
    catalogue = SimpleNamespace(progressions={"ladder": None})

    def asked(first: str, later: str) -> bool:
        planning: Any = SimpleNamespace(
            wishes=SimpleNamespace(weeks=weeks, is_light=lambda _: False),
            slots=[SimpleNamespace(week=week, on=DAY) for week in (0, 1)],
            choices=[
                choice("one", {}, {"test": 1}, tests=("kick",), needs=frozenset({first} - {""})),
                choice("other", {}, {"test": 1}, tests=("pull",), needs=frozenset({later})),
            ],
            analysis=SimpleNamespace(catalogue=catalogue),
        )
        return {"ladder": 0} in _light_lacking(planning, (0, 1), [easy, heavy])

    assert asked("glide", "float")  # what the easy one teaches is for the later test alone
    assert not asked("float", "glide")
    assert not asked("", "glide")
