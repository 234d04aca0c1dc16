"""The page "How it is computed": what it tells is asked for by what somebody is shown, and each
number that stands in the data of a page is told of.
"""

from __future__ import annotations

import json
import re
import sys
from collections.abc import Iterator
from pathlib import Path
from types import CodeType, FrameType
from typing import Any

import pytest
from shared import CATALOGUE, DAY, copied
from shown_checks import pages_of, texts_of

from almanac.analysis.analysis import Analysis
from almanac.analysis.figures.figure import Documented
from almanac.checks import check
from almanac.kinds import SUMMED
from almanac.model.load import Loaded, load
from almanac.site.computed import chapters, code_of, place_of
from almanac.site.data_files import data_files
from almanac.site.formulas import FORMER
from almanac.site.vectors import vectors_file

TOLD = {
    code_of(member).removeprefix("arithmetic."): member
    for members in chapters().values()
    for _, member in members
}

# Every anchor that the page has given, so that links from elsewhere are held to.
GIVEN = (Path(__file__).parent / "anchors-of-computed.txt").read_text().split()


def code(member: Documented) -> CodeType:
    """What runs where a formula is asked: of a class, its making."""
    function: Any = getattr(member, "fget", None) or getattr(member, "func", None) or member
    function = function.__init__ if isinstance(function, type) else function
    return function.__code__


NOBODY_KNOWS = """\
title: Nobody knows how long
summary: A part without a length, and one with marks.
squad: reed
pool: home
slot: {start: "18:00", minutes: 45}
focus: A part without a length.
parts:
  - part: main
    items:
      - {reps: 4, distance: 25, do: board-flutter-kick, effort: easy, rest: 0:20,
          by_group: {reed-2: {reps: 3}}}
      - {reps: 1, time: 5:00, do: freestyle-swim, effort: easy}
      - reps: 1
        distance: 25
        parts:
          - {to: 15m, do: freestyle-swim, effort: fast}
          - {to: end, do: freestyle-swim, effort: easy}
        rest: 0:20
"""


@pytest.fixture(scope="module")
def hardest(tmp_path_factory: pytest.TempPathFactory) -> Loaded:
    """The small catalogue, with a practice beside its own of which a clock is not known."""
    root = copied(CATALOGUE, tmp_path_factory.mktemp("hardest") / "club")
    (root / "plans" / "practices" / "nobody-knows-how-long.yml").write_text(NOBODY_KNOWS)
    loaded = load(root)
    assert loaded.findings == []
    return loaded


@pytest.fixture(scope="module")
def asked(hardest: Loaded) -> set[CodeType]:
    """All code that runs while pages, cards, data, reports and findings are made."""
    seen: set[CodeType] = set()

    def notice(frame: FrameType, event: str, _: object) -> None:
        seen.add(frame.f_code)  # and nothing of what it does: the rest runs as fast as ever

    assert hardest.catalogue is not None
    analysis = Analysis(hardest.catalogue, DAY)
    before = sys.gettrace()
    sys.settrace(notice)
    try:
        check(analysis)
        for _ in texts_of(pages_of(analysis, hardest.names)):
            pass
        for _ in data_files(analysis, hardest.names, ""):
            pass
        vectors_file(hardest.catalogue)
    finally:
        sys.settrace(before)
    return seen


@pytest.mark.parametrize("name", TOLD)
def test_what_is_told_is_asked_for_by_what_is_shown(name: str, asked: set[CodeType]) -> None:
    member = TOLD[name]
    assert code(member) in asked, name


# By kind, which formula each number in the data of its entries comes from, by the last key that
# names it; None for what is read off the entry and not worked out.
WRITTEN = None
EXPAND, SHARES = "expand.expand", "facets.Shares"
OF_SWIMS = {
    "by": "facets.by_facet",
    "distance": "facets.distance_working",
    "metres": "set_workings.metres",
    "shares": SHARES,
    "version": WRITTEN,
}
FORMULA_OF: dict[str, dict[str, str | None]] = {
    "set": {
        **OF_SWIMS,
        "clock_s": "clock.Clock.run",
        "cost_s": "gear_changes.gear_changes",
        "density": "group_clock.GroupClock.density",
        "distance_unknown": "by_time.lengths_in",
        "estimated_distance": "by_time.lengths_in",
        "gap_s": "lane_order.gap_for",
        "in_lane": "lane_order.lane_order",
        "last_touch_s": "clock.Clock.last_touch",
        "lengths": "set_workings.lengths",
        "rated_work": "group_clock.GroupClock.rated_work",
        "rep": EXPAND,
        "reps": EXPAND,
        "rest_inside_s": "timed_reps.until_done",
        "rest_s": "group_clock.GroupClock.rest",
        "round": EXPAND,
        "rounds": EXPAND,
        "sendoff_s": "clock.Clock.rep",
        "target_s": "pace.Pacer.whole",
        "uncovered_s": "gear_changes.gear_changes",
        "waves": "lane_order.lane_order",
        "work_s": "pace.Pacer.whole",
    },
    "practice": {
        **OF_SWIMS,
        "change_s": WRITTEN,
        "clock_over_s": "clock.Clock.run",
        "coach": "at_once.hands",
        "count": "helping.help_of",
        "ends_from_s": "moment.least_seconds",
        "ends_s": "run_sheet.run_sheet",
        "gear_s": "run_sheet.run_sheet",
        "groups": "crews.crew_of",
        "lanes": "crews.crew_of",
        "last_touch_s": "clock.Clock.last_touch",
        "lead": "at_once.hands",
        "load": "session_load.planned_load",
        "minutes": "session_load.session_minutes",
        "needed": "gear_needs.gear_needs",  # and of adults, at_once.hands
        "number": WRITTEN,
        "owned": WRITTEN,
        "rating": "session_load.session_rating",
        "slack_s": "practice_workings.slack",
        "slot_s": WRITTEN,
        "starts_s": "run_sheet.run_sheet",
        "talk_s": WRITTEN,
        "there": WRITTEN,
        "turn": "stages.SharedStart",
        "waits_s": "run_sheet.SheetCell",
    },
    "block": {
        **OF_SWIMS,
        "against": "taper.taper",
        "change": "week_change.week_change",
        "cut": "taper.taper",
        "days": "training_load.session_load",
        "fast_m": "block_workings.fast_metres",
        "fast_share": "block_workings.fast_part",
        "heads": WRITTEN,
        "kept_load": "kept.kept_load",
        "kept_metres": "kept.kept_metres",
        "kept_minutes": "kept.kept_minutes",
        "kept_rating": "kept.kept_rating",
        "kick_into_stroke_m": "block_workings.metres_into_stroke",
        "kick_share": "block_workings.kick_part",
        "known_days": "training_load.week_load",
        "light_days": "taper.taper",
        "load": "training_load.session_load",
        "metres": "block_workings.block_distance",
        "minutes": "session_load.session_minutes",
        "monotony": "training_load.week_load",
        "planned_days": "block_workings.week_distance",
        "planned_load": "kept.planned_session_load",
        "least share": "block_wishes.least_of_two_weeks",
        "of full": "block_wishes.part_of_full",
        "practices": "block_wishes.practices_for",
        "wished": "block_wishes.goals_of",
        "planned_metres": "kept.planned_metres",
        "planned_minutes": "kept.planned_minutes",
        "planned_rating": "kept.planned_rating",
        "resisted_m": "block_workings.resisted_metres",
        "resisted_share": "block_workings.resisted_part",
        "strain": "training_load.week_load",
        "supine_share": "block_workings.supine_part",
        "taper": "taper.taper",
        "week": WRITTEN,
        "weeks": "taper.taper",
    },
}


def numbers(value: Any, name: str, groups: set[str]) -> Iterator[str]:
    """The names of all numbers in JSON; a lane group or a day of the week names none, and what is
    below ``by`` and ``shares`` goes by those.
    """
    if isinstance(value, dict):
        for key, inner in value.items():
            keeps = name in ("by", "shares") or key in groups or re.fullmatch("[a-z]{3}", key)
            yield from numbers(inner, name if keeps else key, groups)
    elif isinstance(value, list):
        for inner in value:
            yield from numbers(inner, name, groups)
    elif isinstance(value, int | float) and not isinstance(value, bool):
        yield name


@pytest.mark.parametrize("kind", SUMMED)
def test_every_number_that_is_shown_is_told_of(kind: str, hardest: Loaded) -> None:
    assert hardest.catalogue is not None
    analysis = Analysis(hardest.catalogue, DAY)
    groups, found = set(hardest.catalogue.lane_groups), set()
    for name, text in data_files(analysis, hardest.names, ""):
        if re.fullmatch(rf"data/v1/{kind}/[^/]+\.json", name):
            data = json.loads(text)["computed"] or {}
            data.pop("figures", None)  # by name: test_figures.py
            found |= set(numbers(data, "", groups))
    assert found, "nothing of that kind has a number"
    assert found <= set(FORMULA_OF[kind]), "say which formula it comes from"


def test_each_formula_of_a_shown_number_is_told() -> None:
    needed = {code for table in FORMULA_OF.values() for code in table.values() if code}
    assert needed <= set(TOLD)


def test_an_anchor_that_was_given_stays(hardest: Loaded) -> None:
    assert hardest.catalogue is not None
    page = pages_of(Analysis(hardest.catalogue, DAY), hardest.names).others["computed.md"]
    anchors = re.findall(r' id="(of-[^"]+)"', page)
    assert len(anchors) == len(set(anchors))
    gone = {*GIVEN, *FORMER} - set(anchors)
    assert not gone, "a formula has moved in the code: add its old anchor to FORMER"
    for old, member in FORMER.items():  # inside the fold that is opened for it
        own, told = page.split(f' id="{old}"')[0].rpartition("<details")[2], code_of(member)
        assert place_of(told) in own, old
