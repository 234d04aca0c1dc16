"""Entries of which every reference leads somewhere: what names a broken one is left out with it."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from almanac.kinds import IN_CLUB
from almanac.model.catalogue import Key
from almanac.model.club import Club
from almanac.model.entry import Entry

CLUB = ("club", "club")
_MAY_LACK = {*IN_CLUB, "source", "need"}  # a drill is to be judged, whoever it changes for


def closed(entries: Mapping[Key, Entry]) -> dict[Key, Entry]:
    """Without the entries that name one which is not here, and so on until all references lead
    somewhere.

    The club stays, without what it says of them: nothing could be checked without it.
    """
    kept = dict(entries)
    while True:
        lost = [
            key
            for key, entry in kept.items()
            if key != CLUB
            and any(
                ref.kind not in _MAY_LACK and (ref.kind, ref.id) not in kept
                for ref in entry.references()
            )
        ]
        if not lost:
            break
        for key in lost:
            del kept[key]
    club = kept.get(CLUB)
    return {**kept, CLUB: _pruned(club, kept)} if isinstance(club, Club) else kept


def _pruned(club: Club, kept: Mapping[Key, Entry]) -> Club:
    groups = {
        id: replace(
            group,
            tests=tuple(test for test in group.tests if ("benchmark", test.benchmark) in kept),
            assume=tuple(own for own in group.assume if ("benchmark", own.benchmark) in kept),
        )
        for id, group in club.lane_groups.items()
    }
    return replace(
        club,
        lane_groups=groups,
        gear_owned={id: count for id, count in club.gear_owned.items() if ("gear", id) in kept},
        calibrations={
            id: readings for id, readings in club.calibrations.items() if ("gear", id) in kept
        },
    )
