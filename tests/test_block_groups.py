"""Blocks whose lane groups swim other sessions, and limits over any seven days, reckoned a second
time.
"""

from __future__ import annotations

from datetime import date, timedelta
from pathlib import Path
from random import Random
from types import SimpleNamespace

import pytest
from plans_world import BLOCK, SECOND_GROUP, analysis, club
from shared import share

from almanac.checks.squad_days import breaches
from almanac.report.block.json import block_json
from almanac.report.block.text import block_text
from almanac.report.block.ways import block_ways
from almanac.site.block_page import block_page


@pytest.fixture(params=["", "groups: [heron-1], "])
def world(request: pytest.FixtureRequest, tmp_path: Path):
    """Two lane groups; the first Monday is for both, or for the first alone."""
    session = f"mon: {{sessions: [{{{request.param}practice: tuesday}}]}}, tue: {{rest: true}}, wed"
    block = BLOCK.replace("mon: {practice: tuesday}, tue: {rest: true}, wed", session, 1)
    assert block != BLOCK
    root = club(tmp_path, block=block)
    own = root / "plans/club.yml"
    own.write_text(own.read_text("utf-8").replace("gear_owned:\n", SECOND_GROUP), "utf-8")
    return request.param, analysis(root)


def test_the_balance_of_each_lane_group_is_told_where_they_differ(world) -> None:
    apart, known = world
    groups = known.blocks["autumn"]
    # six practices of 500 m, of which the second group has five where the first Monday is not its
    # own
    metres = {"heron-1": 3000, "heron-2": 2500 if apart else 3000}
    told, text = block_json(groups), block_text(known.catalogue, groups)
    page = block_page(known, groups, ()).context
    assert told["balance"]["metres"] == 3000
    if apart:
        assert {id: own["balance"]["metres"] for id, own in told["of_groups"].items()} == metres
        assert "Heron, lane 2:\n2,500 m in all" in text and "Heron, lane 1:\n3,000 m in all" in text
        assert [way["groups"] for way in page["ways"]] == [("heron-1",), ("heron-2",)]
        assert [way["weeks"][0][2][0] for way in page["ways"]] == ["1,000", "500"]
        assert [way["sentences"][0].split(" m")[0] for way in page["ways"]] == ["3,000", "2,500"]
        assert len({str(way["figure"]) for way in page["ways"]}) == 2
    else:
        assert "of_groups" not in told and text.count("m in all") == 1
        assert [ids for ids, _ in block_ways(groups)] == [("heron-1", "heron-2")]
        assert len(page["ways"]) == 1


def by_dates(metres: dict[date, int], most: int, length: int) -> list[date]:
    """The first days of all runs of so many days that hold more than ``most``, by the calendar
    alone: each begins after the last one that was told has ended.
    """
    last, found = max(metres), []
    for day in sorted(metres):
        window = [day + timedelta(days=number) for number in range(length)]
        is_past = not found or day >= found[-1] + timedelta(days=length)
        if is_past and window[-1] <= last and sum(metres[own] for own in window) > most:
            found.append(day)
    return found


@pytest.mark.parametrize("seed", share(range(300), 30))
def test_any_seven_days_in_a_row_against_the_calendar(seed: int) -> None:
    random = Random(seed)
    first = date(2026, 9, 7)
    metres = {
        first + timedelta(days=number): random.choice([0, 0, 0, 50, 100, 300])
        for number in range(7 * random.randint(1, 6))
    }
    most, length = random.choice([100, 300, 600]), random.choice([1, 7, 7])
    days = tuple(SimpleNamespace(on=on, metres=own) for on, own in metres.items())
    told = list(breaches(days, lambda run: sum(day.metres for day in run) > most, length))
    assert [run[0].on for run in told] == by_dates(metres, most, length)
    # nothing over the limit goes untold: each such run meets one that is told
    covered = {day.on for run in told for day in run}
    for day in metres:
        run = {day + timedelta(days=number) for number in range(length)}
        if run <= set(metres) and sum(metres[own] for own in run) > most:
            assert run & covered
