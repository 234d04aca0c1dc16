"""A squad as practices are composed for it, and what it has done."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence

from almanac.analysis.analysis import Analysis
from almanac.arithmetic.block_days import DAYS
from almanac.arithmetic.composing.pieces import PART, SET, TENTHS, Offer
from almanac.arithmetic.composing.table import Done, Limits, Planned, TableGroup, TableSquad
from almanac.arithmetic.watching import watch
from almanac.model.catalogue import Catalogue
from almanac.model.club import LaneGroup
from almanac.report.compose.facts import Places


def squad_of(
    analysis: Analysis, places: Places, id: str, offers: Mapping[str, tuple[Offer, ...]]
) -> TableSquad:
    """The squad with its lane groups, its limits, what it has been taught, and what is offered."""
    catalogue = analysis.catalogue
    squad = catalogue.club.squads[id]
    limits = catalogue.policy.of_level(squad.level)
    return TableSquad(
        id=id,
        title=squad.title,
        level=squad.level,
        groups=tuple(
            TableGroup(name, group.title, group.lanes, group.heads, _gap(catalogue, group))
            for name, group in catalogue.lane_groups.items()
            if group.squad == id
        ),
        limits=Limits(
            fast=int(limits.limit("fast_most")),
            resisted=int(limits.limit("resisted_most")),
            plates=int(limits.limit("plates_most")),
            under=int(limits.limit("under_water_practice_most")),
            under_after_fast=int(TENTHS * catalogue.policy.limit("under_water_after_fast")),
        ),
        taught=frozenset(places.drills[drill] for drill in _taught(analysis, id)),
        minutes=int(
            min(
                limits.limit("practice_minutes_most"),
                catalogue.policy.limit("session_minutes_most"),
            )
        ),
        watch={pool: _watch(catalogue, squad.level, pool) for pool in catalogue.club.waters},
        offers=offers,
    )


def _watch(catalogue: Catalogue, level: str, id: str) -> tuple[int, int]:
    """The fewest adults in a pool, and the most heads to each; 0 where all can stand."""
    own = watch(catalogue.policy, level, catalogue.club.pools[id])
    return own.fewest, own.each


def _gap(catalogue: Catalogue, group: LaneGroup) -> int:
    """The longest time that one swimmer of a lane leaves after another, in tenths."""
    return int(TENTHS * max(group.gap, catalogue.policy.limit("gap_on_back")))


def _taught(analysis: Analysis, squad: str) -> set[str]:
    """The drills that the squad's blocks have had done or ask for, and what these need first. Where
    it has no block nobody knows, and none is held against it.
    """
    catalogue, found = analysis.catalogue, set[str]()
    if not any(block.squad == squad for block in catalogue.blocks.values()):
        return set(catalogue.drills)
    for block in catalogue.blocks.values():
        names = [id for day in block.days for id in day.practices] if block.squad == squad else []
        for id in names:
            summary = analysis.practices.get(id)
            for rep in summary.every_rep if summary else ():
                found |= {piece.drill.id for piece in rep.pieces}
    todo = list(found)
    while todo:
        needs = set(catalogue.drills[todo.pop()].needs_first) - found
        found |= needs
        todo += sorted(needs)
    return found


def practices_of(catalogue: Catalogue, squad: str, place_of: Mapping[str, int]) -> Iterator[Done]:
    """The squad's practices, with the pieces that they hold; ``place_of`` is by their key."""
    for id, practice in sorted(catalogue.practices.items()):
        if practice.squad == squad:
            keys = [f"{SET}/{doing.set}" for _, doing in practice.doings if doing.set]
            keys += [f"{PART}/{id}/{number}" for number in range(len(practice.parts))]
            places = tuple(sorted({place_of[key] for key in keys if key in place_of}))
            yield Done(id, practice.title, places)


def blocks_of(catalogue: Catalogue, squad: str, practices: Sequence[str]) -> Iterator[Planned]:
    """The squad's blocks, with the days of their ``practices``."""
    for id, block in sorted(catalogue.blocks.items()):
        if block.squad == squad:
            days = [
                (7 * number + DAYS.index(name), practices.index(practice))
                for number, week in enumerate(block.weeks)
                for name, day in week.days.items()
                for practice in day.practices
                if practice in practices
            ]
            yield Planned(id, block.title, block.starts.isoformat(), tuple(sorted(days)))
