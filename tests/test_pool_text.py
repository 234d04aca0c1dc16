"""What pages say of pools: how deep each end is and who may dive there, what a drill and a set ask
of the water.

Expected depths are those of ``unsafe_world.POOLS``; limits are the program's defaults, each with
its source in ``schemas/policy.json``.
"""

from __future__ import annotations

from dataclasses import replace
from pathlib import Path

import pytest
from unsafe_world import analysis, club, codes, drill, write

from almanac.model.catalogue import Catalogue
from almanac.model.pool import LaneAtEnd
from almanac.report.limit_rows import limits_of_all
from almanac.report.pool_text import EndRow, end_rows, needs_words, set_needs, start_lines

FIRST = "local codes, the pool operator's and the federation's rules come first"
SET = """\
title: Dives
purpose: Quick to the surface, and straight.
goals: [kick-technique]
level: {level}
course: 25m
pools: [home]
review: {{by: head-coach, on: 2026-09-01, again: 2027-09-01}}
items:
  - {{reps: 2, distance: 50, do: back-swim, effort: easy, rest: 1:00, start: {start}}}
"""


@pytest.fixture(scope="module")
def catalogue(tmp_path_factory: pytest.TempPathFactory) -> Catalogue:
    root = club(tmp_path_factory.mktemp("pools") / "club")
    drill(root, "deep-line", mode="underwater", level="performing", under_water="8",
          depth_m="{from: 0.9}",
          dose="{distance: 50, reps: {from: 2, to: 4}, rest: 1:30, most: 8}")  # fmt: skip
    drill(root, "racing-start", mode="wall", start="dive", level="performing")
    for level in ("foundation", "performing"):
        for start in ("dive", "step-in", "push-off"):
            write(root, f"plans/sets/{level}-{start}.yml", SET.format(level=level, start=start))
    return analysis(root).catalogue


def test_each_end_says_how_deep_it_is_and_who_may_dive_there(catalogue: Catalogue) -> None:
    rows = {(row.pool, row.end): row for row in end_rows(catalogue)}
    assert len(rows) == 2 * len(catalogue.club.pools)
    assert rows["Home pool", "deep end"] == EndRow(
        "Home pool",
        "deep end",
        "2 m",
        "0.7 m",
        "yes",
        "off the platform: performing; off the edge: foundation, performing; no starts in lane 4",
    )
    assert rows["Home pool", "shallow end"].dives == "nobody"  # 1 m
    assert rows["Half deep", "turn end"].dives == "nobody"  # 1.1 m
    unmeasured = rows["Somewhere", "start end"]
    assert (unmeasured.depth, unmeasured.platform) == ("not known; the pool 1 to 3 m", "not known")
    assert rows["Without flags", "turn end"].flags == "none"
    assert rows["Without flags", "turn end"].depth == "not known; the pool 2 m"
    assert {row.dives for row in rows.values() if row.depth.startswith("not known")} == {"nobody"}


def test_an_end_tells_edge_from_platform_and_lanes_without_starts(catalogue: Catalogue) -> None:
    pool = catalogue.club.pools["home"]
    deep, shut = pool.ends["start"], {"1": LaneAtEnd(starts=False)}
    own = replace(pool, ends={**pool.ends, "start": replace(deep, edge_m=0.3, lanes=shut)})
    club = replace(catalogue.club, pools={"home": own})
    entries = {**catalogue.entries, ("club", "club"): club}
    row = next(iter(end_rows(replace(catalogue, entries=entries))))
    # 0.7 m is above the 0.4 m of foundation; the edge at 0.3 m is not
    assert row.dives == (
        "off the platform: performing; off the edge: foundation, performing; no starts in lane 1"
    )


def test_limits_of_every_level_are_told_with_value_and_unit(catalogue: Catalogue) -> None:
    told = {says: value for says, value, _ in limits_of_all(catalogue)}
    assert (
        told["The least time from fast work to work under water, be it rest, easy swimming or talk"]
        == "60 s"
    )
    assert not any("multiples" in says for says in told)  # how times are rounded keeps nobody safe


@pytest.mark.parametrize(
    ("id", "words"),
    [
        ("back-float", ""),
        ("turn-work", ""),  # a push from the wall
        ("deep-kick", "1.8 m or deeper"),
        ("standing-wave", "1.2 m at most, where everybody stands"),
        ("under", "1 m or deeper"),  # under_water_depth_least
        ("deep-line", "1 m or deeper"),  # the same, though the drill asks for 0.9
        ("block-start", f"from a dive: 1.83 m or deeper to 6 m out, off 0.4 m at most; {FIRST}"),
        # teaching_depth_least, though the level dives in 1.35 m
        ("racing-start", f"from a dive: 1.83 m or deeper to 6 m out, off 0.75 m at most; {FIRST}"),
        ("low-start", f"backstroke start: 1.83 m or deeper to 6 m out; {FIRST}"),
    ],
)
def test_a_drill_says_what_it_asks_of_the_water(catalogue: Catalogue, id: str, words: str) -> None:
    assert needs_words(catalogue, catalogue.drills[id]) == words


@pytest.mark.parametrize(
    ("id", "asks"),
    [
        ("performing-dive",
         [f"From a dive: 1.35 m or deeper to 6 m out, off 0.75 m at most; {FIRST}."]),
        ("foundation-dive",
         [f"From a dive: 1.83 m or deeper to 6 m out, off 0.4 m at most; {FIRST}."]),
        ("performing-push-off", []),
    ],
)  # fmt: skip
def test_a_set_says_what_its_starts_ask_of_the_water(
    catalogue: Catalogue, id: str, asks: list[str]
) -> None:
    needs = set_needs(catalogue, catalogue.sets[id])
    assert needs == ["Written for Home pool.", *asks]


def test_a_practice_says_how_deep_it_is_at_each_end_that_it_dives_at(tmp_path: Path) -> None:
    root = club(tmp_path / "club")
    dives = (
        "reps: 2, distance: 50, do: back-swim, effort: fast, rest: 2:00, start: dive, team: "
        "relay-of-two"
    )
    assert "start-depth" in codes(root, f"  - {{part: main, items: [{{{dives}}}]}}")
    own = analysis(root)
    assert start_lines(own.catalogue, own.practices["session"]) == [
        f"Main set: from a dive at the {end} end, {depth} m deep to 6 m out, {height} m above the "
        f"water, in lanes 1 to 3; {FIRST}."
        for end, depth, height in (("deep", "2", "0.7"), ("shallow", "1", "0.3"))
    ]
