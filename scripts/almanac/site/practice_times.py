"""How long practices take, as the finder reads it, and the lanes that they are given."""

from __future__ import annotations

from almanac.arithmetic.practice import PracticeSummary
from almanac.model.catalogue import Catalogue
from almanac.site.entry_times import Takes, Times, whole_seconds
from almanac.units import COURSES


def times_of_practice(catalogue: Catalogue, summary: PracticeSummary) -> Times:
    """From the start of the slot until each lane group of the squad is done, with talk, changes and
    waits, in the practice's own pool; nothing for other groups and in other pools.
    """
    own = [_takes(summary, group) for group in catalogue.lane_groups]
    nothing: list[Takes] = [[] for _ in own]
    return Times([own if course == summary.pool.course else nothing for course in COURSES.values()])


def _takes(summary: PracticeSummary, group: str) -> Takes:
    if group not in summary.groups:
        return []
    ends = [cell.ends_s for row in summary.sheet for cell in row.cells if cell.group == group]
    known = [own for own in ends if own is not None]
    if not known or len(known) < len(ends):
        return []
    seconds = whole_seconds(max(known))
    return [-seconds if _hangs(summary, group) else seconds]


def _hangs(summary: PracticeSummary, group: str) -> bool:
    return any(run.clocks[group].assumed for run in summary.runs if group in run.clocks)


def lanes_in_use(summary: PracticeSummary) -> int:
    """The lanes that the squad's lane groups take together."""
    return sum(group.lanes for group in summary.groups.values())
