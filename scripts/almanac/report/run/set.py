"""A set in the data of its run: one part, for every lane group."""

from __future__ import annotations

from collections.abc import Collection, Iterable, Iterator
from typing import Any

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.group_clock import GroupClock
from almanac.arithmetic.run_blocks import run_blocks
from almanac.arithmetic.summary import SetSummary
from almanac.checks.run_days import set_offers
from almanac.model.catalogue import Catalogue
from almanac.model.changes import is_for
from almanac.model.pool import START_END
from almanac.report.run.blocks_json import BlocksOfCrew, ItemsOfPart
from almanac.report.run.items import number
from almanac.report.run.parts import ends_of_reps
from almanac.units import LAND


def crews_of_set(
    catalogue: Catalogue, groups: Iterable[str], meant: Collection[str]
) -> Iterator[dict[str, Any]]:
    """The lane groups, in this order; their lanes are not said."""
    for id in groups:
        group = catalogue.lane_groups[id]
        yield {
            "key": id,
            "group": id,
            "half": "",
            "title": group.title,
            "lanes": [],
            "heads": group.heads,
            "meant": id in meant,
        }


def part_of_set(analysis: Analysis, summary: SetSummary, groups: Iterable[str]) -> dict[str, Any]:
    """The set as the one part of its run; of those lane groups that do something of it."""
    catalogue, swim_set, course = analysis.catalogue, summary.swim_set, summary.course
    those = [group for group in groups if is_for(swim_set.items, group)]
    offers = set_offers(analysis, summary, those)
    items = ItemsOfPart(catalogue, course)
    is_wet = course != LAND
    begins = {
        id(swum): ends_of_reps(catalogue, swum, START_END) if is_wet else ()
        for swum in summary.each
    }
    crews = {}
    for group in those:
        swum, clock = summary.of(group), summary.clocks[group]
        has_home = is_wet and not clock.unfit
        blocks = run_blocks(swum.events, clock)
        writer = BlocksOfCrew(items, begins[id(swum)], offers.crews[0, group], has_home)
        crews[group] = {**_ends(clock, has_home), "blocks": writer.written(blocks)}
    return {
        "stage": 0,
        "number": 1,
        "word": "set",
        "title": swim_set.title,
        "set": swim_set.id,
        "starts_s": 0,
        "items": items.items,
        "crews": crews,
    }


def _ends(clock: GroupClock, has_home: bool) -> dict[str, Any]:
    """When the set is over for a lane group, in seconds from its start, as far as that is known:
    the clock or the last touch, whichever is later.
    """
    if clock.clock is None:
        return {}
    over = clock.clock.value
    touch = clock.last_touch.value if clock.last_touch and has_home else 0.0
    told = {"ends_s": max(over, touch), "clock_over_s": over, "last_touch_s": touch}
    return {key: number(value) for key, value in told.items() if value}
