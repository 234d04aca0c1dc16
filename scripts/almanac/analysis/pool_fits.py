"""What sets and practices ask of the pools that they are done in, and do not get there."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Iterator
from dataclasses import dataclass

from almanac.analysis.pool_starts import asks, crews_in_water, place_of, rules_for
from almanac.arithmetic.crews import Crew
from almanac.arithmetic.part_run import PartRun
from almanac.arithmetic.pool_fit import (
    Misplaced,
    PoolPlace,
    PoolRules,
    misplaced,
)
from almanac.arithmetic.practice import PracticeSummary
from almanac.arithmetic.swum import Swum
from almanac.model.catalogue import Catalogue
from almanac.model.pool import ENDS, Pool
from almanac.model.practice import Practice
from almanac.model.swim_set import SwimSet
from almanac.source.reader import DataPath
from almanac.units import Course


@dataclass(frozen=True)
class PartMisplaced:
    """What a crew asks of the pool in a part of a practice and does not get."""

    run: PartRun
    crew: Crew
    found: Misplaced

    @property
    def path(self) -> DataPath:
        """Where it stands in the practice's file."""
        if self.run.swim_set:
            return (*self.run.path, "set")
        return (*self.run.path, *self.found.path)


@dataclass(frozen=True)
class PoolMisplaced:
    """What a set asks of a pool, and no lane of it gives, whichever end one leaves from."""

    pool: str
    found: tuple[Misplaced, ...]


def practice_fit(
    catalogue: Catalogue, summary: PracticeSummary, drills: frozenset[str]
) -> tuple[PartMisplaced, ...]:
    """What a practice asks of its pool and does not get there, in the lanes that each crew has.
    ``drills`` are those that are ``demanding``.
    """
    practice = summary.practice
    rules = rules_for(catalogue, catalogue.club.squads[practice.squad].level)
    known: dict[tuple[int, tuple[int, ...], str, bool], tuple[Misplaced, ...]] = {}
    found = []
    for run, crew in crews_in_water(summary):
        items = run.swim_set.items if run.swim_set else run.doing.items
        if not asks(items, drills):
            continue
        swum, place = run.of(crew.group), place_of(practice, summary.pool, run, crew)
        key = id(swum), place.lanes, place.end, place.lanes_said
        if key not in known:
            known[key] = misplaced(swum.reps, place, rules)
        found += [PartMisplaced(run, crew, own) for own in known[key]]
    return tuple(found)


def set_fit(
    catalogue: Catalogue, swim_set: SwimSet, ways_in: Callable[[Course], Iterable[Swum]]
) -> tuple[PoolMisplaced, ...]:
    """What a set asks of a pool that it names, and gets in no lane of it from either end. One that
    names none is held against the pools of its course, unless a practice has it: one must do.
    ``ways_in`` gives the ways of swimming it in a course.
    """
    rules, pools = rules_for(catalogue, swim_set.level), catalogue.club.pools
    if swim_set.pools:
        tried = [
            PoolMisplaced(id, _best(ways_in(pools[id].course), pools[id], rules))
            for id in swim_set.pools
        ]
        return tuple(own for own in tried if own.found)
    if any(True for _ in catalogue.users(swim_set, Practice)):
        return ()
    tried = []
    for id, pool in pools.items():
        if pool.course == swim_set.course:
            found = _best(ways_in(pool.course), pool, rules)
            if not found:
                return ()
            tried.append(PoolMisplaced(id, found))
    return tuple(tried[:1])


def _best(ways: Iterable[Swum], pool: Pool, rules: PoolRules) -> tuple[Misplaced, ...]:
    """What is missing where the least is: nothing where a lane and an end have all."""
    ways = tuple(ways)
    tried = (
        tuple(
            one for way in ways for one in misplaced(way.reps, PoolPlace(pool, (lane,), end), rules)
        )
        for end in ENDS
        for lane in _unlike_lanes(pool)
    )
    best: tuple[Misplaced, ...] | None = None
    for found in tried:
        if not found:
            return ()
        if best is None or len(found) < len(best):
            best = found
    return best or ()


def _unlike_lanes(pool: Pool) -> Iterator[int]:
    """A lane of each sort that the pool has."""
    known = set()
    for lane in range(1, pool.lanes + 1):
        sort = tuple(end.lanes.get(str(lane)) for end in pool.ends.values())
        if sort not in known:
            known.add(sort)
            yield lane
