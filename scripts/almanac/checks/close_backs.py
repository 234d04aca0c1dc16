"""Rules on swimmers who are too near each other to be seen in time."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.analysis.analysis import Analysis
from almanac.checks.lanes import full_lanes
from almanac.checks.practice_lanes import full_parts
from almanac.checks.rule import Problem, refuses
from almanac.units import show_number


@refuses("gap-short")
def gap_short(analysis: Analysis) -> Iterator[Problem]:
    """Between one swimmer of a lane group and the next lies ``gap_least`` of the policy or more:
    nearer than that they swim on each other.
    """
    catalogue = analysis.catalogue
    least = catalogue.policy.limit("gap_least")
    for name, group in catalogue.lane_groups.items():
        if group.heads > group.lanes and group.gap < least:
            level = catalogue.club.squads[group.squad].level
            message = f"{show_number(group.gap)} s between one swimmer and the next"
            path = ("lane_groups", name, "gap")
            mend = f"{show_number(least)} s or more"
            yield Problem(catalogue.club, path, message, mend, level=level)


@refuses("back-crowded")
def back_crowded(analysis: Analysis) -> Iterator[Problem]:
    """Fast work on the back has room in its lane, by the figures of ``lane-crowded`` and
    ``part-crowded``: nobody sees the feet ahead, or the head that comes.
    """
    for problem, is_unseen in (*full_lanes(analysis), *full_parts(analysis)):
        if is_unseen:
            yield problem
