"""The lanes of a practice in words, where they are otherwise than usual."""

from __future__ import annotations

from collections.abc import Iterator

from almanac.arithmetic.crews import crew_of, usual_lanes
from almanac.arithmetic.practice import PracticeSummary
from almanac.checks.pool_words import lane_words


def lanes_tonight(summary: PracticeSummary) -> Iterator[str]:
    """What is otherwise than usual with the lanes all evening: which are out of use or shared, and
    each lane group that was given lanes or has lost one, where its title does not say them.
    """
    own, groups = summary.practice.lanes, summary.groups
    for lanes, what in ((own.out_of_use, "out of use"), (own.shared, "shared with the public")):
        if lanes:
            yield f"{lane_words(lanes)} {'is' if len(lanes) == 1 else 'are'} {what}"
    usual = usual_lanes(groups)
    for id, group in groups.items():
        lanes = crew_of(id, "", groups, own, {}).lanes
        if (id in own.groups or lanes != usual[id]) and lane_words(lanes) not in group.title:
            yield f"{lane_words(lanes)} for {group.title}"
